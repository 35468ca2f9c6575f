/** Two runs of the program on one data folder: what one of them has open, and what one left that was killed. */
import { readdir, readFile, rm, utimes, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { KeptProjects } from '../../../src-main/documents/session/kept'
import { OwnFolder } from '../../../src-main/documents/session/own-folder'
import { writeAtomically } from '../../../src-main/documents/session/project-files'
import { NEVER, projectText, titleOf } from '../documents/session/world'
import type { HostWorld } from './host-world'
import { makeHost } from './host-world'

let world: HostWorld
beforeEach(async () => {
  world = await makeHost({ pace: NEVER })
})
afterEach(() => world.end())

async function file(name: string): Promise<string> {
  const path = join(world.folder, name)
  await writeFile(path, projectText('On disk'))
  return path
}

/** A file opened in the first run, with a change that only the own folder has. */
async function changed(name: string): Promise<string> {
  const path = await file(name)
  const opened = await world.host.openPath(path)
  const session = opened.outcome === 'done' ? world.host.session(opened.value) : null
  await session?.keep({ revision: 1, text: projectText('Changed') })
  return path
}

const otherHost = () => makeHost({ dataFolder: world.folder, pace: NEVER })

it('a file that another run has changed opens as it is on the disk, and that run keeps its change', async () => {
  const path = await changed('throw.petalyard')
  const other = await otherHost()
  const opened = await other.host.openPath(path)
  expect(opened.outcome).toBe('done')
  const text = opened.outcome === 'done' ? other.host.session(opened.value)!.text : ''
  expect(titleOf(text)).toBe('On disk')
  await other.host.stop()
  expect(await world.host.stop()).toEqual([])
  expect(titleOf(await readFile(path, 'utf8'))).toBe('Changed')
})

it('what a killed run left is opened by one run, and by no third one while that lives', async () => {
  await changed('throw.petalyard')
  await rm(join(world.folder, 'running'), { recursive: true })
  const next = await otherHost()
  expect(await next.host.openInterrupted()).toHaveLength(1)
  const third = new KeptProjects(new OwnFolder(world.folder, { writeAtomically }), { now: Date.now })
  expect(await third.interrupted()).toEqual([])
  await next.host.stop()
})

it('half written files that a killed run left beside a file go when it is opened, once they are old', async () => {
  const path = await file('throw.petalyard')
  const [old, fresh, others] = ['0', '1', '2'].map(
    (digit, at) => `.${at === 2 ? 'shawl' : 'throw'}.petalyard.${digit.repeat(12)}.new`,
  ) as [string, string, string]
  for (const name of [old, fresh, others]) await writeFile(join(world.folder, name), 'half')
  const before = new Date(Date.now() - 120_000)
  for (const name of [old, others]) await utimes(join(world.folder, name), before, before)
  expect((await world.host.openPath(path)).outcome).toBe('done')
  const left = (await readdir(world.folder)).filter((name) => name.endsWith('.new'))
  expect(left.sort()).toEqual([others, fresh].sort())
})
