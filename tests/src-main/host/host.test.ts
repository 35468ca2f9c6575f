import { readFile, readlink, rm, symlink, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { projectFiles, writeAtomically } from '../../../src-main/documents/session/project-files'
import { eventually, NEVER, projectText, titleOf } from '../documents/session/world'
import { answer } from '../../../src-main/host/operations'
import type { HostWorld } from './host-world'
import { makeHost, TestCaller } from './host-world'

let world: HostWorld
beforeEach(async () => {
  world = await makeHost()
})
afterEach(() => world.end())

async function opened(
  outcome: Promise<{ outcome: string; value?: string }> | { outcome: string; value?: string },
) {
  const settled = await outcome
  expect(settled.outcome).toBe('done')
  return world.host.session(settled.value ?? '')
}

async function file(name: string, title = name): Promise<string> {
  const path = join(world.folder, name)
  await writeFile(path, projectText(title))
  return path
}

/** Another run on the same data, as after this one was killed: its sign of life is gone. */
async function nextRun(): Promise<HostWorld> {
  await rm(join(world.folder, 'running'), { recursive: true })
  return makeHost({ dataFolder: world.folder })
}

describe('a link to a file', () => {
  it('saves where it was opened when the link to it leads elsewhere by then', async () => {
    const [first, second] = [await file('first.petalyard'), await file('second.petalyard')]
    const link = join(world.folder, 'link.petalyard')
    await symlink(first, link)
    const session = await opened(world.host.openPath(link))
    await rm(link)
    await symlink(second, link)
    await session?.save({ revision: 1, text: projectText('Saved') })
    expect(titleOf(await readFile(first, 'utf8'))).toBe('Saved')
    expect(titleOf(await readFile(second, 'utf8'))).toBe('second.petalyard')
    expect(await readlink(link)).toBe(second)
  })

  it('opens no link that leads in a circle', async () => {
    const [link, other] = [join(world.folder, 'a.petalyard'), join(world.folder, 'b.petalyard')]
    await symlink(link, other)
    await symlink(other, link)
    const refused = await world.host.openPath(link)
    expect(refused).toMatchObject({ outcome: 'refused', problem: { code: 'app/cannot-open' } })
    expect(JSON.stringify(refused)).toContain('its links lead in a circle')
    expect(await readlink(link)).toBe(other)
  })
})

describe('the first start', () => {
  it('shows an example ready to touch', async () => {
    expect(world.host.settings.isFirstStart).toBe(true)
    const session = world.host.session(await world.host.openAtStart())
    expect(session?.opened()).toMatchObject({ origin: 'example', keeping: { place: 'nowhere' } })
  })

  it('takes units, terms and paper from the place', () => {
    const session = world.host.session(world.host.openBlank())
    expect(JSON.parse(session?.text ?? '')).toMatchObject({ units: 'metric', terms: 'UK', currency: 'GBP' })
  })
})

describe('opening', () => {
  it('opens a file once: a second time answers with the project that is open', async () => {
    const path = await file('a.petalyard')
    const first = await opened(world.host.openPath(path))
    const second = await opened(world.host.openPath(join(world.folder, '.', 'a.petalyard')))
    expect(second).toBe(first)
    expect(world.host.openIds).toHaveLength(1)
  })

  it('calls a project without a title by its file, on paper too, and takes what is handed over by its name', async () => {
    const untitled = await opened(world.host.openPath(await file('throw.json', '')))
    expect(untitled?.keeping.name).toBe('throw')
    const caller = new TestCaller(untitled!.id)
    const shown = await answer(world.host, caller, 'previewPage', { text: untitled!.text, page: 1 })
    expect(shown).toMatchObject({ value: { title: 'Overview of throw' } })
    const handedOver = await opened(world.host.openText(projectText(''), 'garland.petalyard', 'file'))
    expect(titleOf(handedOver!.text)).toBe('garland')
    const titled = await opened(world.host.openText(projectText('My own'), 'garland.petalyard', 'file'))
    expect(titleOf(titled!.text)).toBe('My own')
  })

  it('finds a file changed that somebody else wrote while it was read', async () => {
    const path = await file('a.petalyard')
    const quick = await makeHost({
      files: {
        ...projectFiles,
        open: async (where) => {
          const read = await projectFiles.open(where)
          await writeFile(path, projectText('Theirs'))
          return read
        },
      },
    })
    const id = await quick.host.openPath(path)
    const session = quick.host.session(id.outcome === 'done' ? id.value : '')!
    expect(titleOf(session.text)).toBe('a.petalyard')
    expect(await session.save({ revision: 1, text: projectText('Mine') })).toMatchObject({
      problem: { code: 'app/changed-on-disk' },
    })
    expect(titleOf(await readFile(path, 'utf8'))).toBe('Theirs')
    await quick.end()
  })

  it('refuses what is no project, with its words', async () => {
    const path = join(world.folder, 'x.petalyard')
    await writeFile(path, 'hello')
    const refused = await world.host.openPath(path)
    expect(refused).toMatchObject({ outcome: 'refused', problem: { code: 'app/cannot-open' } })
    expect(await readFile(path, 'utf8')).toBe('hello')
  })

  it('keeps a text that came without a place in the own folder at once', async () => {
    const session = await opened(world.host.openText(projectText('From a browser'), 'x', 'file'))
    expect(session?.keeping).toMatchObject({ place: 'app', revision: 1, savedRevision: 1 })
    expect(await world.host.recent.list()).toMatchObject([{ name: 'From a browser', place: 'app' }])
  })

  it('refuses examples and recent entries that there are not', async () => {
    expect(await world.host.openExample('nobody')).toMatchObject({ problem: { code: 'app/unknown-example' } })
    for (const id of ['kept-none', 'kept-../../x', 'file-none', '/etc/passwd'])
      expect(await world.host.openRecent(id)).toMatchObject({ problem: { code: 'app/unknown-recent' } })
  })
})

describe('after a run that was cut off', () => {
  it('reopens what had no file', async () => {
    const session = world.host.session(world.host.openBlank())
    await session?.keep({ revision: 7, text: projectText('Half done') })
    const next = await nextRun()
    const [id] = await next.host.openInterrupted()
    expect(next.host.session(id ?? '')?.opened()).toMatchObject({
      origin: 'recovered',
      nextRevision: 8,
      keeping: { name: 'Half done', place: 'app' },
    })
    await next.host.stop()
  })

  it('reopens a file with what it did not have yet, and saves it', async () => {
    const path = await file('a.petalyard')
    const session = await opened(world.host.openPath(path))
    await session?.keep({ revision: 1, text: projectText('Newer') })
    const next = await nextRun()
    const [id] = await next.host.openInterrupted()
    const again = next.host.session(id ?? '')
    expect(titleOf(again?.text ?? '')).toBe('Newer')
    expect(titleOf(await readFile(path, 'utf8'))).toBe('a.petalyard')
    expect(again?.keeping.disk).toBe('same')
    await next.host.stop()
    expect(titleOf(await readFile(path, 'utf8'))).toBe('Newer')
  })

  it('asks when the file was changed by somebody else meanwhile', async () => {
    const path = await file('a.petalyard')
    const session = await opened(world.host.openPath(path))
    await session?.keep({ revision: 1, text: projectText('Mine') })
    const next = await nextRun()
    await writeFile(path, projectText('Theirs'))
    const [id] = await next.host.openInterrupted()
    expect(next.host.session(id ?? '')?.keeping.disk).toBe('changed')
    await next.host.stop()
    expect(titleOf(await readFile(path, 'utf8'))).toBe('Theirs')
  })

  it('offers what cannot be read with its text, and writes it over nothing', async () => {
    const path = await file('a.petalyard')
    const session = await opened(world.host.openPath(path))
    await session?.keep({ revision: 1, text: projectText('Mine') })
    const kept = join(world.folder, 'kept', `${session?.id ?? ''}.json`)
    const entry = JSON.parse(await readFile(kept, 'utf8')) as { text: string }
    const harmed = JSON.stringify({ ...(JSON.parse(entry.text) as object), version: 99 })
    await writeFile(kept, JSON.stringify({ ...entry, text: harmed }))
    const next = await nextRun()
    const [id] = await next.host.openInterrupted()
    const again = next.host.session(id ?? '')
    const told = again?.opened()
    expect(told).toMatchObject({ unreadable: { severity: 'error' }, keeping: { name: 'a' } })
    expect(told?.text).toBe(harmed)
    await next.host.stop()
    expect(titleOf(await readFile(path, 'utf8'))).toBe('a.petalyard')
    const last = await makeHost({ dataFolder: world.folder })
    // A copy of it can be saved, as it is.
    const copy = join(world.folder, 'copy.petalyard')
    const [listed] = await last.host.recent.list()
    const offered = last.host.session(await last.host.openAtStart())
    expect(offered?.opened().unreadable).toBeDefined()
    expect(await last.host.openRecent(listed?.id ?? '')).toMatchObject({ outcome: 'done' })
    const change = { text: offered?.text ?? '', revision: offered?.opened().nextRevision ?? 0 }
    expect(await offered?.saveTo(copy, change)).toMatchObject({ outcome: 'done' })
    expect(await readFile(copy, 'utf8')).toBe(told?.text)
    await last.host.stop()
  })

  it('reopens a saved file from the file itself', async () => {
    const path = await file('a.petalyard')
    const session = await opened(world.host.openPath(path))
    await session?.save({ revision: 1, text: projectText('Saved') })
    const next = await nextRun()
    const [id] = await next.host.openInterrupted()
    expect(next.host.session(id ?? '')?.opened()).toMatchObject({
      origin: 'file',
      keeping: { place: 'file' },
    })
    await next.host.stop()
  })

  it('gives the newer content when the same file is opened by hand', async () => {
    const path = await file('a.petalyard')
    const session = await opened(world.host.openPath(path))
    await session?.keep({ revision: 1, text: projectText('Newer') })
    const next = await nextRun()
    const again = await next.host.openPath(path)
    expect(again.outcome === 'done' && titleOf(next.host.session(again.value)?.text ?? '')).toBe('Newer')
    await next.host.stop()
  })
})

describe('two runs at once', () => {
  it('do not take projects from each other', async () => {
    const session = world.host.session(world.host.openBlank())
    await session?.keep({ revision: 1, text: projectText('Mine') })
    const other = await makeHost({ dataFolder: world.folder })
    expect(await other.host.openInterrupted()).toEqual([])
    const [entry] = await other.host.recent.list()
    const id = entry?.id ?? ''
    expect(await other.host.openRecent(id)).toMatchObject({ problem: { code: 'app/open-elsewhere' } })
    expect(await other.host.forgetRecent(id)).toMatchObject({ problem: { code: 'app/open-elsewhere' } })
    await other.host.stop()
  })
})

describe('later starts', () => {
  it('go on with what was open last', async () => {
    const path = await file('a.petalyard')
    await world.host.openPath(path)
    await world.host.stop()
    const next = await makeHost({ dataFolder: world.folder })
    const session = next.host.session(await next.host.openAtStart())
    expect(session?.path).toBe(path)
    await next.host.stop()
  })
})

it('tells every window of changed settings and of the list', async () => {
  const [a, b] = [world.host.openBlank(), world.host.openBlank()]
  await world.host.changeSettings({ theme: 'dark' })
  const told = world.announced.filter((each) => each.event === 'settings').map((each) => each.project)
  expect(told.sort()).toEqual([a, b].sort())
  await opened(world.host.openPath(await file('a.petalyard')))
  await eventually(() => expect(world.announced.some((each) => each.event === 'recent')).toBe(true))
})

it('takes changes of the house style field by field, so that two at once both hold', async () => {
  await Promise.all([
    world.host.changeSettings({ house: { name: 'Larkspur Yarns' } }),
    world.host.changeSettings({ house: { address: 'Arbroath', name: undefined } }),
    world.host.changeSettings({ theme: 'dark' }),
  ])
  const kept = { theme: 'dark', house: { name: 'Larkspur Yarns', address: 'Arbroath', accent: '', logo: '' } }
  expect(world.host.settings.current).toMatchObject(kept)
  await world.host.stop()
  const next = await makeHost({ dataFolder: world.folder })
  expect(next.host.settings.current).toMatchObject(kept)
  await next.host.stop()
})

describe('the project that opens at the next start', () => {
  const pause = () => new Promise((resolve) => setTimeout(resolve, 5))
  const nextName = async () => {
    const next = await nextRun()
    const session = next.host.session(await next.host.openAtStart())
    const name = session?.keeping.name
    await next.host.stop()
    return name
  }

  it('is the file that was worked on, not the copy of it that was closed', async () => {
    const session = await opened(world.host.openPath(await file('Throw.petalyard')))
    await session?.keep({ revision: 1, text: projectText('Throw') })
    await pause()
    const copy = await opened(world.host.openText(projectText('Copy of Throw'), 'x', 'duplicate'))
    await pause()
    await world.host.close(copy?.id ?? '')
    await session?.keep({ revision: 2, text: projectText('Throw') })
    await world.host.stop()
    expect(await nextName()).toBe('Throw')
  })

  it('is the one that was looked at last, changed or not, with a file or without', async () => {
    const kept = world.host.session(world.host.openBlank())
    await kept?.keep({ revision: 1, text: projectText('Garland') })
    await pause()
    const copy = await opened(world.host.openText(projectText('Copy of Garland'), 'x', 'duplicate'))
    await world.host.close(copy?.id ?? '')
    await pause()
    world.host.use(kept?.id ?? '')
    await world.host.stop()
    expect(await nextName()).toBe('Garland')
  })

  it('a file that was taken off the list while it was open stays off it', async () => {
    const session = await opened(world.host.openPath(await file('Throw.petalyard')))
    const [entry] = await world.host.recent.list()
    await world.host.forgetRecent(entry?.id ?? '')
    await world.host.close(session?.id ?? '')
    expect(await world.host.recent.list()).toEqual([])
  })
})

describe('a run that was cut off between the file and the own folder', () => {
  it('knows what it wrote there for its own, and saves on', async () => {
    const path = await file('a.petalyard')
    const cut = await makeHost({
      dataFolder: world.folder,
      pace: NEVER,
      // The file is written whole; the program ends before anything else is.
      files: {
        ...projectFiles,
        write: async (...words) => {
          await projectFiles.write(...words)
          return new Promise<never>(() => undefined)
        },
      },
    })
    const id = await cut.host.openPath(path)
    const session = cut.host.session(id.outcome === 'done' ? id.value : '')
    await session?.keep({ revision: 1, text: projectText('First') })
    void session?.save({ revision: 2, text: projectText('Second') })
    await eventually(async () => expect(titleOf(await readFile(path, 'utf8'))).toBe('Second'))

    const next = await nextRun()
    const [found] = await next.host.openInterrupted()
    const again = next.host.session(found ?? '')
    expect(again?.keeping).toMatchObject({ disk: 'same', problem: null, revision: 2, savedRevision: 2 })
    expect(titleOf(again?.text ?? '')).toBe('Second')
    expect(await again?.save({ revision: 3, text: projectText('Third') })).toMatchObject({ outcome: 'done' })
    // What somebody else wrote is still told.
    await writeFile(path, projectText('Theirs'))
    expect(await again?.checkDisk()).toBe('changed')
    await next.host.stop()
  })

  it('has the newest text in the own folder before the file has it', async () => {
    const path = await file('a.petalyard')
    const order: string[] = []
    const own = await makeHost({
      dataFolder: world.folder,
      pace: NEVER,
      writeAtomically: async (target, text) => {
        if (target.includes('kept')) order.push(`own ${titleOf((JSON.parse(text) as { text: string }).text)}`)
        return writeAtomically(target, text)
      },
      files: {
        ...projectFiles,
        write: async (target, text, options) => {
          order.push(`file ${titleOf(text)}`)
          return projectFiles.write(target, text, options)
        },
      },
    })
    const id = await own.host.openPath(path)
    const session = own.host.session(id.outcome === 'done' ? id.value : '')
    // The second change is taken over while the first is saved.
    const saving = session?.save({ revision: 1, text: projectText('First') })
    const keeping = session?.keep({ revision: 2, text: projectText('Second') })
    await Promise.all([saving, keeping])
    await session?.keep({ revision: 3, text: projectText('Third') })
    // The fourth while the file is looked at that shall get the third.
    const settling = session?.settle()
    await Promise.all([settling, session?.keep({ revision: 4, text: projectText('Fourth') })])
    await own.host.stop()
    const saved = order.filter((each) => each.startsWith('file ')).map((each) => each.slice('file '.length))
    expect(saved.at(-1)).toBe('Fourth')
    for (const title of saved) {
      expect(order).toContain(`own ${title}`)
      expect(order.indexOf(`own ${title}`)).toBeLessThan(order.indexOf(`file ${title}`))
    }
  })
})
