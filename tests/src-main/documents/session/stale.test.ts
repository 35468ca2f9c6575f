import { readdir, readFile, utimes, writeFile } from 'node:fs/promises'
import { basename } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { machineFiles, replaceFile } from '../../../../src-main/documents'
import type { WriteFailure } from '../../../../src-main/documents'
import { removeStaleStaging } from '../../../../src-main/documents/session/stale'
import { asidePath } from '../../../../src-main/documents/staging-name'
import { World } from './world'

let world: World
beforeEach(async () => {
  world = await World.make()
})
afterEach(() => world.end())

it('removes old staging files of one project, and nothing else', async () => {
  const names = [
    '.a.petalyard.0123456789ab.new',
    '.a.petalyard.0123456789ab.new.123456',
    '.a.petalyard.0123456789ab.old',
    '.b.petalyard.0123456789ab.new',
    '.a.petalyard.notes.new',
    'a.petalyard',
    'a.petalyard~',
  ]
  const old = new Date(Date.now() - 120_000)
  for (const name of names) {
    await writeFile(world.path(name), '')
    await utimes(world.path(name), old, old)
  }
  await writeFile(world.path('.a.petalyard.ffffffffffff.new'), '')
  await removeStaleStaging(world.folder, 'a.petalyard', Date.now())
  const left = await readdir(world.folder)
  expect(left.filter((name) => name.includes('petalyard')).sort()).toEqual([
    '.a.petalyard.ffffffffffff.new',
    '.a.petalyard.notes.new',
    '.b.petalyard.0123456789ab.new',
    'a.petalyard',
    'a.petalyard~',
  ])
})

it('knows those of a long name, whose own is shortened', async () => {
  const name = `${'x'.repeat(240)}.petalyard`
  const staging = asidePath(world.path(name), 'new')
  expect(Buffer.byteLength(basename(staging))).toBeLessThan(240)
  for (const path of [staging, asidePath(world.path(`y${name}`), 'new')]) {
    await writeFile(path, '')
    const old = new Date(Date.now() - 120_000)
    await utimes(path, old, old)
  }
  await removeStaleStaging(world.folder, name, Date.now())
  expect((await readdir(world.folder)).filter((each) => each.endsWith('.new'))).toHaveLength(1)
})

/** As a system answers that lets a file be written beside another, and not in its place; `all`: to nothing be renamed. */
async function keptBeside(name: string, content: string, all = false): Promise<string> {
  const held = () => Promise.reject(Object.assign(new Error('held'), { code: 'EIO' }))
  const rename = (from: string, to: string) =>
    all || to === world.path(name) ? held() : machineFiles.rename(from, to)
  const bytes = new TextEncoder().encode(content)
  const failure = await replaceFile(world.path(name), bytes, {
    backup: false,
    files: { ...machineFiles, rename },
  }).catch((error: unknown) => error)
  return (failure as WriteFailure).keptAt ?? ''
}

it.each([false, true])('what a person was told to find stays until it is saved (copied: %s)', async (all) => {
  await writeFile(world.path('a.petalyard'), 'old')
  const kept = await keptBeside('a.petalyard', 'precious', all)
  const old = new Date(Date.now() - 120_000)
  await utimes(kept, old, old)
  await removeStaleStaging(world.folder, 'a.petalyard', Date.now())
  expect(await readFile(kept, 'utf8')).toBe('precious')
  await removeStaleStaging(world.folder, 'b.petalyard', Date.now())
  await writeFile(world.path('a.petalyard'), 'precious')
  // Only the file beside which it was kept says that it is saved.
  await writeFile(world.path('b.petalyard'), 'precious')
  await removeStaleStaging(world.folder, 'b.petalyard', Date.now())
  expect(await readFile(kept, 'utf8')).toBe('precious')
  await removeStaleStaging(world.folder, 'a.petalyard', Date.now())
  expect((await readdir(world.folder)).filter((name) => name.endsWith('petalyard')).sort()).toEqual([
    'a.petalyard',
    'b.petalyard',
  ])
  expect((await readdir(world.folder)).filter((name) => name.startsWith('.'))).toEqual([])
})
