import { readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Progress } from '../../../shared-types/bridge'
import { answer, OPERATIONS, runExport } from '../../../src-main/host/operations'
import { makeBridge } from '../../../src-main/host/surface'
import { projectText, titleOf } from '../documents/session/world'
import type { HostWorld } from './host-world'
import { makeHost, TestCaller } from './host-world'

let world: HostWorld
let caller: TestCaller
beforeEach(async () => {
  world = await makeHost()
  caller = new TestCaller(world.host.openBlank())
})
afterEach(() => world.end())

const ask = (name: string, payload: unknown = null) => answer(world.host, caller, name, payload)
const text = projectText('Changed')

describe('messages that no window of ours would send', () => {
  const deep = `${'{"a":'.repeat(50_000)}1${'}'.repeat(50_000)}`
  it.each([
    ['no such operation', 'format-disk', null],
    ['a name from the prototype', 'constructor', null],
    ['another one', '__proto__', null],
    ['a payload where none belongs', 'currentProject', { path: '/etc/passwd' }],
    ['no payload where one belongs', 'keepProject', null],
    ['a wrong type', 'keepProject', { revision: '1', text }],
    ['a fraction', 'keepProject', { revision: 1.5, text }],
    ['a negative number', 'keepProject', { revision: -1, text }],
    ['no number', 'keepProject', { revision: NaN, text }],
    ['an unknown field', 'keepProject', { revision: 1, text, path: '/tmp/x' }],
    ['a path to save to', 'saveProjectAs', { revision: 1, text, path: '/tmp/x' }],
    ['a huge text', 'keepProject', { revision: 1, text: 'x'.repeat(16_000_001) }],
    ['a list', 'openRecent', ['kept-one']],
    ['an endless id', 'openRecent', { id: 'x'.repeat(1_000) }],
    ['an unknown setting', 'changeSettings', { homepage: 'https://example.org' }],
    ['a wrong setting', 'changeSettings', { theme: 'purple' }],
    ['an endless name for the menu', 'showEditState', { undo: 'x'.repeat(10_000), redo: null }],
  ])('%s is refused', async (_, name, payload) => {
    expect(await ask(name, payload)).toMatchObject({
      outcome: 'refused',
      problem: { code: 'app/bad-message' },
    })
    expect(world.host.session(caller.projectId)?.revision).toBe(0)
  })

  it('a text nested 50,000 deep is refused before anything reads it', async () => {
    const refused = await ask('keepProject', { revision: 1, text: deep })
    expect(refused).toMatchObject({ outcome: 'refused', problem: { code: 'app/cannot-open' } })
  })

  it('a project that is closed is refused', async () => {
    await world.host.close(caller.projectId)
    expect(await ask('currentProject')).toMatchObject({ problem: { code: 'app/bad-message' } })
  })

  it('what throws inside becomes a refusal with its reason', async () => {
    caller.chooseProject = () => Promise.reject(new Error('no dialog here'))
    expect(await ask('openProject')).toMatchObject({
      outcome: 'refused',
      problem: { code: 'app/failed', message: "'openProject' did not work: no dialog here." },
    })
  })
})

describe('an export', () => {
  it.each([
    ['blanket', {}, / map$/],
    ['blanket', { sheets: ['card', 'map'] }, / card and map$/],
    ['blanket', { sheets: ['map'] }, / map$/],
    ['garland', { sheets: ['card', 'map'] }, / card and list$/],
    ['applique', { sheets: ['card', 'map'] }, / card and template$/],
    ['garland', { sheets: ['packing'] }, / packing list$/],
    ['applique', {}, / template$/],
    ['applique', { sheets: ['map'], reverse: true }, / mirrored template$/],
    ['applique', { sheets: ['labels'], reverse: true }, / labels$/],
  ] as const)('of a %s is called by what it is: %j', async (kind, choice, name) => {
    let called = ''
    caller.placeToExport = async (suggested?: string) => {
      called = suggested ?? ''
      return null
    }
    const project = JSON.stringify({ format: 'petalyard-project', version: 1, layout: { kind } })
    const payload = { kind: 'map', text: project, ...choice }
    const ended = await runExport(world.host, caller, payload, () => undefined, new AbortController().signal)
    expect(ended).toEqual({ outcome: 'cancelled' })
    expect(called).toMatch(name)
  })
})

it('every operation has its function on the surface, and every function its operation', () => {
  const nothing = () => () => undefined
  const surface = makeBridge({
    invoke: async () => ({ outcome: 'cancelled' }),
    listen: nothing,
    runExport: () => ({ finished: Promise.resolve({ outcome: 'cancelled' }), cancel: () => undefined }),
    onBeforeClose: nothing,
  })
  const operations = Object.keys(surface).filter((name) => !/^on[A-Z]/.test(name) && name !== 'exportProject')
  expect(operations.sort()).toEqual(Object.keys(OPERATIONS).sort())
})

describe('saving', () => {
  it('asks where, for a project without a file, and remembers it', async () => {
    caller.place = join(world.folder, 'named.petalyard')
    const saved = await ask('saveProject', { revision: 1, text })
    expect(saved).toMatchObject({ outcome: 'done', value: { name: 'named', place: 'file' } })
    expect(titleOf(await readFile(caller.place, 'utf8'))).toBe('Changed')
    const [entry] = await world.host.recent.list()
    expect(entry).toMatchObject({ name: 'Changed', where: expect.stringMatching(/^named\.petalyard in /) })
  })

  it('changes nothing when the user cancels', async () => {
    expect(await ask('saveProject', { revision: 1, text })).toEqual({ outcome: 'cancelled' })
    expect(await ask('saveProjectAs', { revision: 1, text })).toEqual({ outcome: 'cancelled' })
    expect(world.host.session(caller.projectId)?.path).toBeNull()
  })

  it('does not save into a file that is open in another window', async () => {
    const path = join(world.folder, 'a.petalyard')
    await writeFile(path, projectText('Other'))
    await world.host.openPath(path)
    caller.place = path
    const refused = await ask('saveProjectAs', { revision: 1, text })
    expect(refused).toMatchObject({ outcome: 'refused', problem: { code: 'app/open-elsewhere' } })
    expect(titleOf(await readFile(path, 'utf8'))).toBe('Other')
  })
})

describe('opening from a window', () => {
  it('shows the chosen file, an example, an empty project, a duplicate', async () => {
    const path = join(world.folder, 'a.petalyard')
    await writeFile(path, projectText('Chosen'))
    caller.chosen = { path }
    expect(await ask('openProject')).toEqual({ outcome: 'done', value: null })
    await ask('newProject', { from: 'example', name: 'throw' })
    await ask('newProject', { from: 'blank' })
    await ask('duplicateProject', { revision: 1, text: projectText('Original') })
    const titles = caller.shown.map((id) => titleOf(world.host.session(id)?.text ?? ''))
    expect(titles).toEqual(['Chosen', 'Example throw', '', 'Copy of Original'])
    await ask('duplicateProject', { revision: 1, text: projectText(' ') })
    expect(titleOf(world.host.session(caller.shown.at(-1)!)?.text ?? '')).toBe('Copy of Untitled')
  })

  it('shows a duplicate as a new plan: nothing made, nothing weighed meanwhile, all else as it is', async () => {
    const plan = {
      motifs: [
        { id: 'm1', kind: 'measured', outline: 'round', across: 80, weighed: { motifs: 10, grams: 62 } },
      ],
      yarns: [{ id: 'y1', onHandBalls: 4 }, { id: 'y2' }],
      layout: { kind: 'blanket', motif: 'm1', columns: 3, rows: 3 },
    }
    const begun = {
      yarns: [{ id: 'y1', onHandBalls: 4, onHandAt: 2, left: { grams: 120, at: 2 } }, { id: 'y2' }],
      made: { '1,1': '2026-11-30', '1,2': '' },
      joined: { '1,1': '2026-11-30' },
    }
    await ask('duplicateAsPlan', { revision: 1, text: projectText('Throw', { ...plan, ...begun }) })
    const copy: unknown = JSON.parse(world.host.session(caller.shown.at(-1)!)?.text ?? '')
    expect(copy).toEqual({ ...(JSON.parse(projectText('Copy of Throw', plan)) as object) })
  })

  it('takes from another project without opening it', async () => {
    caller.chosen = { name: 'other', text: projectText('Other', { yarns: [{ id: 'y1' }] }) }
    const taken = await ask('takeFromProject')
    expect(taken).toMatchObject({ outcome: 'done', value: { name: 'Other' } })
    expect(caller.shown).toEqual([])
    expect(world.host.openIds).toHaveLength(1)
  })
})

describe('printing', () => {
  it('says how the dialog was closed, and why nothing was printed', async () => {
    expect(await ask('printSheets', { paper: 'Letter' })).toEqual({ outcome: 'done', value: null })
    expect(caller.printedOn).toEqual(['Letter'])
    caller.printed = 'cancelled'
    expect(await ask('printSheets', { paper: 'A4' })).toEqual({ outcome: 'cancelled' })
    caller.printed = { reason: 'no printer was found' }
    expect(await ask('printSheets', { paper: 'A4' })).toMatchObject({
      problem: { code: 'app/cannot-print', message: 'nothing was printed: no printer was found.' },
    })
    expect(await ask('printSheets', { paper: 'A0' })).toMatchObject({ problem: { code: 'app/bad-message' } })
  })
})

describe('exporting', () => {
  const written: Uint8Array[] = []
  const run = (
    payload: unknown,
    signal: AbortSignal,
    onProgress: (progress: Progress) => void = () => undefined,
  ) => runExport(world.host, caller, payload, onProgress, signal)
  beforeEach(() => {
    written.length = 0
    caller.target = {
      where: 'map.pdf in Documents',
      write: async (bytes) => {
        written.push(bytes)
        return { ok: true }
      },
    }
  })

  it('tells its progress and where the file went', async () => {
    const told: Progress[] = []
    const made = await run({ kind: 'map', text, paper: 'A4' }, new AbortController().signal, (each) =>
      told.push(each),
    )
    expect(made).toMatchObject({ outcome: 'done', value: { where: 'map.pdf in Documents', pages: 20 } })
    expect(told.map((each) => each.done)).toEqual(Array.from({ length: 20 }, (_, index) => index + 1))
    expect(written).toHaveLength(1)
  })

  it('writes nothing when it is cancelled on the way', async () => {
    const control = new AbortController()
    const ended = await run(
      { kind: 'map', text },
      control.signal,
      (each) => each.done === 3 && control.abort(),
    )
    expect(ended).toEqual({ outcome: 'cancelled' })
    expect(written).toEqual([])
  })

  it('refuses requests of the wrong shape, and projects that are none', async () => {
    const { signal } = new AbortController()
    expect(await run({ kind: 'film', text }, signal)).toMatchObject({ problem: { code: 'app/bad-message' } })
    expect(await run({ kind: 'map', text, pages: ['../x'] }, signal)).toMatchObject({
      problem: { code: 'app/bad-message' },
    })
    expect(await run({ kind: 'map', text: '{}' }, signal)).toMatchObject({
      problem: { code: 'app/cannot-open' },
    })
    expect(written).toEqual([])
  })
})
