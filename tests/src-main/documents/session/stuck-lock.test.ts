/** A lock that nobody can take away: as in an own folder that can only be read by now, which does not hold root. */
import { readFile, readdir, writeFile } from 'node:fs/promises'
import { createHash } from 'node:crypto'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import type * as Files from 'node:fs/promises'
import { titleOf, World } from './world'

vi.mock('node:fs/promises', async (original) => {
  const real = await original<typeof Files>()
  const rename = (from: string, to: string) =>
    from.includes('/saving/')
      ? Promise.reject(Object.assign(new Error('EROFS: read-only file system'), { code: 'EROFS' }))
      : real.rename(from, to)
  return { ...real, rename }
})

let world: World
beforeEach(async () => {
  world = await World.make()
})
afterEach(() => world.end())

it('of a run that was killed, in a folder that can only be read, keeps nobody from saving', async () => {
  const session = await world.sessionOnFile('held.petalyard')
  const path = world.path('held.petalyard')
  const name = createHash('sha256').update(path).digest('hex').slice(0, 40)
  await writeFile(join(world.folder, 'saving', name), 'a-run-that-is-gone 1')
  const text = JSON.stringify({ ...JSON.parse(await readFile(path, 'utf8')), title: 'Saved all the same' })
  expect(await session.save({ revision: 1, text })).toMatchObject({ outcome: 'done' })
  expect(titleOf(await readFile(path, 'utf8'))).toBe('Saved all the same')
  expect(await readdir(join(world.folder, 'saving'))).toEqual([name])
}, 5_000)
