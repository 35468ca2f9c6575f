/** Save As onto a name that another project has. */
import { mkdir, readFile, rmdir, writeFile } from 'node:fs/promises'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { projectText, World } from './world'

let world: World
beforeEach(async () => {
  world = await World.make()
})
afterEach(() => world.end())

const read = (path: string) => readFile(path, 'utf8')

it('another project is replaced only where a copy of it can be kept', async () => {
  const session = world.session()
  const mine = { revision: 1, text: projectText('Mine') }
  const other = world.path('other.petalyard')
  await writeFile(other, 'precious')
  await mkdir(`${other}~`)
  const refused = await session.saveTo(other, mine)
  expect(refused).toMatchObject({ outcome: 'refused', problem: { code: 'app/cannot-write' } })
  expect(JSON.stringify(refused)).toContain('no copy of it can be kept at')
  expect(await read(other)).toBe('precious')
  expect(session.path).toBeNull()
  await rmdir(`${other}~`)
  expect(await session.saveTo(other, mine)).toMatchObject({ outcome: 'done' })
  expect(await read(`${other}~`)).toBe('precious')
})
