import { readdir, readFile, rm, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { eventually, projectText, titleOf } from '../documents/session/world'
import { answer } from '../../../src-main/host/operations'
import type { HostWorld } from './host-world'
import { makeHost, TestCaller } from './host-world'

let world: HostWorld
beforeEach(async () => {
  world = await makeHost()
})
afterEach(() => world.end())

async function file(name: string, title = name): Promise<string> {
  const path = join(world.folder, name)
  await writeFile(path, projectText(title))
  return path
}

describe('an own folder that cannot be written', () => {
  let unlucky: HostWorld
  let place: string
  beforeEach(async () => {
    // A file in the folder's place: it stops root too, whom permissions do not.
    place = join(world.folder, 'own')
    await writeFile(place, '')
    unlucky = await makeHost({ dataFolder: place })
  })
  afterEach(() => unlucky.end())

  const caller = (id: string) => new TestCaller(id)
  const askFor = (as: TestCaller, name: string, payload: unknown = null) =>
    answer(unlucky.host, as, name, payload)

  it('does not keep the program from starting, and every window says so', async () => {
    const session = unlucky.host.session(await unlucky.host.openAtStart())
    expect(session?.keeping).toMatchObject({
      place: 'nowhere',
      problem: null,
      folderProblem: {
        code: 'app/own-folder',
        message: `the program's own folder, ${place}, cannot be written: a file has the name of its folder.`,
      },
    })
    expect(await unlucky.host.openInterrupted()).toEqual([])
    expect(await unlucky.host.recent.list()).toEqual([])
  })

  it('leaves a file alone: it is opened, saved and closed as usual', async () => {
    const path = await file('a.petalyard')
    const id = await unlucky.host.openPath(path)
    const session = unlucky.host.session(id.outcome === 'done' ? id.value : '')
    const kept = await session?.keep({ revision: 1, text: projectText('Changed') })
    expect(kept).toMatchObject({ outcome: 'done', value: { problem: null, savedRevision: 1 } })
    expect(titleOf(await readFile(path, 'utf8'))).toBe('Changed')
    expect(await unlucky.host.close(session?.id ?? '')).toBeNull()
  })

  it('lets what is in memory be saved, saved as and duplicated', async () => {
    const window = caller(unlucky.host.openBlank())
    const text = projectText('Mine')
    expect(await askFor(window, 'keepProject', { revision: 1, text })).toMatchObject({
      outcome: 'refused',
      problem: {
        code: 'app/cannot-keep',
        message:
          "what was changed is only in memory: the program's own folder cannot be written (a file has the name of its folder).",
      },
    })
    expect(await askFor(window, 'duplicateProject', { revision: 1, text })).toMatchObject({ outcome: 'done' })
    expect(unlucky.host.session(window.shown[0] ?? '')?.keeping.name).toBe('Copy of Mine')
    window.place = join(world.folder, 'mine.petalyard')
    expect(await askFor(window, 'saveProjectAs', { revision: 1, text })).toMatchObject({
      outcome: 'done',
      value: { place: 'file', problem: null },
    })
    expect(titleOf(await readFile(window.place, 'utf8'))).toBe('Mine')
  })

  it('is written by itself when it can be: projects, closed ones too, settings and the list', async () => {
    const open = unlucky.host.session(unlucky.host.openBlank())
    await open?.keep({ revision: 1, text: projectText('Open') })
    const closed = unlucky.host.session(unlucky.host.openBlank())
    await closed?.keep({ revision: 1, text: projectText('Closed') })
    expect(await unlucky.host.close(closed?.id ?? '')).toMatchObject({ code: 'app/cannot-keep' })
    // From memory it can be opened again meanwhile.
    const listed = (await unlucky.host.recent.list()).map((entry) => entry.name)
    expect(listed.sort()).toEqual(['Closed', 'Open'])
    await unlucky.host.changeSettings({ theme: 'dark' })
    await rm(place)
    await eventually(() =>
      expect(open?.keeping).toMatchObject({ problem: null, folderProblem: null, savedRevision: 1 }),
    )
    const names = (await readdir(join(place, 'kept'))).sort()
    expect(names).toEqual([`${open?.id}.json`, `${closed?.id}.json`].sort())
    expect(JSON.parse(await readFile(join(place, 'settings.json'), 'utf8'))).toMatchObject({ theme: 'dark' })
    const told = unlucky.announced.filter(({ event, project }) => event === 'keeping' && project === open?.id)
    expect(told.at(-1)?.payload).toMatchObject({ problem: null, folderProblem: null })
  })

  it('is told at the end for what never reached it', async () => {
    const closed = unlucky.host.session(unlucky.host.openBlank())
    await closed?.keep({ revision: 1, text: projectText('Closed') })
    await unlucky.host.close(closed?.id ?? '')
    expect(await unlucky.host.stop()).toMatchObject([{ code: 'app/cannot-keep', where: 'Closed' }])
  })

  it('tells a folder of saved projects that cannot be written in words', async () => {
    const window = caller(unlucky.host.openBlank())
    window.placeToSave = () => Promise.reject(Object.assign(new Error('ENOSPC: x'), { code: 'ENOSPC' }))
    const refused = await askFor(window, 'saveProject', { revision: 1, text: projectText('Mine') })
    expect(refused).toMatchObject({
      problem: { code: 'app/cannot-write', message: 'Mine could not be written: the disk is full.' },
    })
  })
})
