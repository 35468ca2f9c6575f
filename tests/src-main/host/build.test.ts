import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { builtIn, updatedPage } from '../../../src-main/host/build'
import { answer, runExport } from '../../../src-main/host/operations'
import { CONTENT_SECURITY_POLICY } from '../../../src-main/host/static-files'
import { projectText } from '../documents/session/world'
import type { HostWorld } from './host-world'
import { makeHost, TestCaller } from './host-world'

let onDisk: string
let world: HostWorld

beforeEach(async () => {
  onDisk = 'first'
  world = await makeHost({ build: async () => onDisk })
})
afterEach(() => world.end())

describe('a program whose files were replaced while it runs', () => {
  it('tells every window once, and makes no paper with workers of another build', async () => {
    const ids = [world.host.openBlank(), world.host.openBlank()]
    expect(await world.host.build.isReplaced()).toBe(false)
    onDisk = 'second'
    const caller = new TestCaller(ids[0]!)
    const text = projectText('Throw')
    const refusal = { outcome: 'refused', problem: { code: 'app/updated' } }
    expect(await answer(world.host, caller, 'previewPage', { text, page: 1 })).toMatchObject(refusal)
    caller.target = { where: 'here', write: () => Promise.reject(new Error('nothing is to be written')) }
    const { signal } = new AbortController()
    const exported = runExport(world.host, caller, { kind: 'map', text }, () => undefined, signal)
    expect(await exported).toMatchObject(refusal)
    const font = { name: 'a.ttf', data: Buffer.from('a').toString('base64'), face: null }
    expect(await answer(world.host, caller, 'addFont', font)).toMatchObject(refusal)
    expect(world.announced.filter(({ event }) => event === 'updated').map(({ project }) => project)).toEqual(
      ids,
    )
  })

  it('goes on keeping and saving', async () => {
    const id = world.host.openBlank()
    onDisk = 'second'
    const caller = new TestCaller(id)
    caller.place = join(world.folder, 'Throw.petalyard')
    const kept = await answer(world.host, caller, 'keepProject', { revision: 1, text: projectText('Throw') })
    expect(kept).toMatchObject({ outcome: 'done' })
    const saved = await answer(world.host, caller, 'saveProject', {
      revision: 2,
      text: projectText('Throw 2'),
    })
    expect(saved).toMatchObject({
      outcome: 'done',
      value: { place: 'file', savedRevision: 2, problem: null },
    })
  })

  it('works as before once they are those that it was started from again', async () => {
    const caller = new TestCaller(world.host.openBlank())
    onDisk = 'second'
    expect(await world.host.build.isReplaced()).toBe(true)
    onDisk = 'first'
    const page = await answer(world.host, caller, 'previewPage', { text: projectText('Throw'), page: 1 })
    expect(page).toMatchObject({ outcome: 'done' })
  })
})

describe('what stands on the disk', () => {
  it('is named by the marks of the builds, also where one is missing', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'petalyard-build-'))
    try {
      const parts = [join(folder, 'main'), join(folder, 'renderer')]
      for (const part of parts) await mkdir(part)
      await writeFile(join(parts[0]!, '.built-from'), 'aaaa')
      expect(await builtIn(parts)).toBe('aaaa gone')
      await writeFile(join(parts[1]!, '.built-from'), 'bbbb')
      expect(await builtIn(parts)).toBe('aaaa bbbb')
    } finally {
      await rm(folder, { recursive: true })
    }
  })

  it('is told instead of the window by a page that its policy allows', () => {
    expect(CONTENT_SECURITY_POLICY).toContain("default-src 'none'")
    expect(updatedPage()).toContain('<h1>Petalyard was updated while it ran.</h1>')
    expect(updatedPage()).not.toMatch(/<script|<style|style=|src=|href=/)
  })
})
