/** Whose work is in the program, from the lists of its builds. */
import { mkdir, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { licencesIn } from '../../../src-main/host/licences'
import { answer } from '../../../src-main/host/operations'
import type { HostWorld } from './host-world'
import { LICENCES, makeHost, TestCaller } from './host-world'

let world: HostWorld
beforeEach(async () => {
  world = await makeHost()
})
afterEach(() => world.end())

const entry = (name: string) => ({ name, version: '1.0.0', licence: 'MIT', text: `text of ${name}` })

it('is one list of all that was built, each package once, by name', async () => {
  const folders = ['main', 'renderer'].map((name) => join(world.folder, name))
  const lists = [
    ['zod', 'konva'],
    ['zod', 'flatbush'],
  ]
  for (const [index, folder] of folders.entries()) {
    await mkdir(folder)
    await writeFile(join(folder, 'licences.json'), JSON.stringify(lists[index]!.map(entry)))
  }
  expect(await licencesIn(folders)).toEqual(['flatbush', 'konva', 'zod'].map(entry))
})

it('is what the window gets', async () => {
  const caller = new TestCaller(world.host.openBlank())
  expect(await answer(world.host, caller, 'licences', null)).toEqual({ outcome: 'done', value: LICENCES })
})

it('says why the licences of the browser in it cannot be shown', async () => {
  const caller = new TestCaller(world.host.openBlank())
  expect(await answer(world.host, caller, 'showEngineLicences', null)).toEqual({
    outcome: 'done',
    value: null,
  })
  caller.cannotShow = 'no program is set for pages'
  expect(await answer(world.host, caller, 'showEngineLicences', null)).toMatchObject({
    outcome: 'refused',
    problem: {
      code: 'app/cannot-show',
      message: 'The system cannot show its licenses: no program is set for pages.',
    },
  })
})
