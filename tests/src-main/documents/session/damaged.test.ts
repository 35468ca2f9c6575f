import { writeFile } from 'node:fs/promises'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { projectFiles } from '../../../../src-main/documents/session/project-files'
import { projectText, World } from './world'

let world: World
beforeEach(async () => {
  world = await World.make()
})
afterEach(() => world.end())

const told = async (path: string): Promise<string> => {
  const read = await projectFiles.open(path)
  return read.ok ? '' : read.problem.message
}

it('a damaged file names the copy beside it that can be read, and no other', async () => {
  const path = world.path('cut.petalyard')
  await writeFile(path, projectText('Cut').slice(0, 30))
  expect(await told(path)).not.toContain('~')
  await writeFile(`${path}~`, '{')
  expect(await told(path)).not.toContain('~')
  await writeFile(`${path}~`, projectText('Before'))
  expect(await told(path)).toContain('The version before stands beside it as ‘cut.petalyard~’')
})

it('a value that cannot be right is told by its name', async () => {
  const path = world.path('text.petalyard')
  await writeFile(path, projectText('Text', { motifs: [{ id: 'a', kind: 'rounds', minutes: 'many' }] }))
  expect(await told(path)).toContain(
    "The minutes for a motif (1st motif): found the text 'many', expected a number.",
  )
})
