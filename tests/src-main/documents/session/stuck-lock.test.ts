/** A lock that nobody can take away: as in an own folder that can only be read by now, which does not hold root. */
import { createHash } from 'node:crypto'
import { readdir, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { FileLocks } from '../../../../src-main/documents/session/file-locks'
import { World } from './world'

let world: World
beforeEach(async () => {
  world = await World.make()
})
afterEach(() => world.end())

it('of a run that was killed, in a folder that can only be read, keeps nobody from saving', async () => {
  const path = world.path('held.petalyard')
  const name = createHash('sha256').update(path).digest('hex').slice(0, 40)
  await writeFile(join(world.folder, 'saving', name), 'a-run-that-is-gone 1')
  const locks = new FileLocks(world.own, {
    now: Date.now,
    run: 'this-run',
    isAlive: () => Promise.resolve(false),
    move: () => Promise.reject(Object.assign(new Error('EROFS: read-only file system'), { code: 'EROFS' })),
  })
  expect(await locks.alone(path, (isHeld) => isHeld())).toBe(true)
  expect(await readdir(join(world.folder, 'saving'))).toEqual([name])
}, 15_000)
