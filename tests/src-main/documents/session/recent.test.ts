import { rm } from 'node:fs/promises'
import { basename } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { projectFiles, writeAtomically } from '../../../../src-main/documents/session/project-files'
import { RecentProjects } from '../../../../src-main/documents/session/recent'
import { projectText, World } from './world'

let world: World
let recent: RecentProjects
beforeEach(async () => {
  world = await World.make()
  recent = new RecentProjects(world.folder, world.kept, writeAtomically)
})
afterEach(() => world.end())

async function file(name: string): Promise<string> {
  await projectFiles.write(world.path(name), projectText(name), { backup: false })
  return world.path(name)
}

it('lists files and kept projects together, the newest first, and gives no path away', async () => {
  const path = await file('throw.petalyard')
  await recent.remember(path, '2026-01-01T00:00:00.000Z', '')
  const session = world.session()
  await session.keep({ revision: 1, text: projectText('Garland') })
  const entries = await recent.list()
  expect(entries.map((entry) => [entry.name, entry.place])).toEqual([
    ['Garland', 'app'],
    ['throw', 'file'],
  ])
  expect(JSON.stringify(entries)).not.toContain(world.folder)
  expect(recent.pathOf(entries[1]?.id ?? '')).toBe(path)
})

it('knows no path for an id that is not on the list', () => {
  expect(recent.pathOf('/etc/passwd')).toBeNull()
  expect(recent.pathOf('file-0')).toBeNull()
})

it('does not show a file that is away, but remembers it', async () => {
  const path = await file('throw.petalyard')
  await recent.remember(path, '2026-01-01T00:00:00.000Z', '')
  await rm(path)
  expect(await recent.list()).toEqual([])
  await file('throw.petalyard')
  expect(await recent.list()).toHaveLength(1)
})

it('remembers twelve, over a restart too, each once', async () => {
  for (let index = 0; index < 14; index++)
    await recent.remember(await file(`${index}.petalyard`), `2026-01-01T00:00:${10 + index}.000Z`, '')
  await recent.remember(world.path('13.petalyard'), '2026-01-02T00:00:00.000Z', '')
  const again = new RecentProjects(world.folder, world.kept, writeAtomically)
  await again.load()
  const names = (await again.list()).map((entry) => entry.name)
  expect(names).toHaveLength(12)
  expect(names[0]).toBe('13')
  await again.forgetFile((await again.list())[0]?.id ?? '')
  expect((await again.list())[0]?.name).toBe('12')
})

it('shows a file once while its own entry holds nothing more, and apart while it does', async () => {
  const session = await world.sessionOnFile('throw.petalyard')
  await recent.remember(world.path('throw.petalyard'), '2026-01-01T00:00:00.000Z', '')
  await session.save({ revision: 1, text: projectText('Saved') })
  expect(await recent.list()).toHaveLength(1)
  await session.keep({ revision: 2, text: projectText('Unsaved') })
  expect((await recent.list()).map((entry) => entry.id)).toContain('kept-one')
})

it('names a file by the title of its project, and says beside it how the file is called where that differs', async () => {
  const at = '2026-01-01T00:00:00.000Z'
  await recent.remember(await file('Untitled.petalyard'), at, 'Market bag')
  await recent.remember(await file('throw.petalyard'), at, 'throw')
  const again = new RecentProjects(world.folder, world.kept, writeAtomically)
  await again.load()
  const folder = basename(world.folder)
  expect((await again.list()).map(({ name, where }) => [name, where]).sort()).toEqual([
    ['Market bag', `Untitled.petalyard in ${folder}`],
    ['throw', folder],
  ])
})

it('says of two that would read the same when each was changed', async () => {
  for (const [index, title] of ['Garland', 'Garland', 'Throw'].entries())
    await world.session({ id: `n${index}` }).keep({ revision: 1, text: projectText(title) })
  const entries = await recent.list()
  const garlands = entries.filter(({ name }) => name === 'Garland')
  expect(garlands).toHaveLength(2)
  for (const { where } of garlands)
    expect(where).toMatch(/^Petalyard's own folder, changed \w{3} \d{1,2}, \d{4}, \d{2}:\d{2}$/)
  expect(entries.find(({ name }) => name === 'Throw')?.where).toBe("Petalyard's own folder")
})
