import { mkdir, mkdtemp, readdir, readFile, rm, stat, utimes, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { KeptProjects } from '../../../../src-main/documents/session/kept'
import { OwnFolder } from '../../../../src-main/documents/session/own-folder'
import { writeAtomically } from '../../../../src-main/documents/session/project-files'

let parent: string
let folder: string
let changes: (string | null)[]
/** The next writes fail with this reason. */
let fault: string | null
let own: OwnFolder

beforeEach(async () => {
  parent = await mkdtemp(join(tmpdir(), 'petalyard-own-'))
  folder = join(parent, 'projects')
  changes = []
  fault = null
  own = new OwnFolder(folder, {
    writeAtomically: async (path, text) =>
      fault === null ? writeAtomically(path, text) : { ok: false, reason: fault },
    onChange: () => changes.push(own.problem),
  })
})
afterEach(() => rm(parent, { recursive: true, force: true }))

const read = (name: string) => readFile(join(folder, name), 'utf8')

describe('a folder that cannot be made', () => {
  // A file in its place stands for every folder that cannot be written: it stops root too.
  beforeEach(() => writeFile(folder, ''))

  it('is told, with what is in its way', async () => {
    await own.make()
    expect(own.problem).toBe('a file has the name of its folder')
    expect(changes).toEqual(['a file has the name of its folder'])
  })

  it('gives back what was to be written, and has it once there is room', async () => {
    await own.make()
    await own.make('kept')
    expect(await own.write(own.at('settings.json'), 'dark')).toMatchObject({ ok: false })
    expect(await own.write(own.at('kept', 'one.json'), 'One')).toMatchObject({ ok: false })
    expect(await own.read(own.at('settings.json'))).toBe('dark')
    expect(await own.names('kept')).toEqual(['one.json'])
    await own.tryAgain()
    expect(own.problem).not.toBeNull()
    await rm(folder)
    await own.tryAgain()
    expect(own.problem).toBeNull()
    expect(changes.at(-1)).toBeNull()
    expect(await read('settings.json')).toBe('dark')
    expect(await read('kept/one.json')).toBe('One')
    expect(own.isWaiting(own.at('settings.json'))).toBe(false)
  })

  it('forgets what was removed meanwhile', async () => {
    await own.write(own.at('one.json'), 'One')
    await own.remove(own.at('one.json'))
    await rm(folder)
    await own.make()
    await own.tryAgain()
    expect(await readdir(folder)).toEqual([])
  })

  it('lets the kept projects start, be put, listed and taken away', async () => {
    const kept = new KeptProjects(own, { now: Date.now })
    await kept.start()
    expect(kept.trouble).toBe('a file has the name of its folder')
    const entry = {
      id: 'one',
      path: null,
      stamp: null,
      title: 'Throw',
      revision: 1,
      savedRevision: 1,
      changedAt: '2026-01-02T03:04:05.000Z',
      holder: null,
      text: '{}',
    }
    expect(await kept.put(entry)).toMatchObject({ ok: false })
    expect(await kept.list()).toMatchObject([{ title: 'Throw' }])
    expect(await kept.unwritten()).toMatchObject([{ title: 'Throw' }])
    await kept.discard('one')
    expect(await kept.list()).toEqual([])
    await kept.stop()
  })
})

describe('a folder that was full for a while', () => {
  beforeEach(() => own.make())

  it('has the newest text, however the tries and the writes cross', async () => {
    const path = own.at('one.json')
    fault = 'the disk is full'
    await own.write(path, 'Old')
    fault = null
    await Promise.all([own.tryAgain(), own.write(path, 'New'), own.tryAgain()])
    await own.tryAgain()
    expect(await read('one.json')).toBe('New')
    expect(await own.read(path)).toBe('New')
  })

  it('counts as full while anything waits, even where something small found room', async () => {
    fault = 'the disk is full'
    await own.write(own.at('large.json'), 'large')
    fault = null
    await own.write(own.at('small.json'), 'small')
    expect(own.problem).toBe('the disk is full')
    await own.tryAgain()
    expect(own.problem).toBeNull()
    expect(await read('large.json')).toBe('large')
  })

  it('has no older text wait whose write fails while a newer one waits its turn', async () => {
    await own.make()
    let fail = (): void => {}
    const slow = new OwnFolder(folder, {
      writeAtomically: (path, text) =>
        text === 'Newer'
          ? writeAtomically(path, text)
          : new Promise((resolve) => (fail = () => resolve({ ok: false, reason: 'the disk is full' }))),
    })
    const older = slow.write(slow.at('one.json'), 'Older')
    const newer = slow.write(slow.at('one.json'), 'Newer')
    await vi.waitFor(async () => {
      fail()
      expect(await Promise.race([older, null])).toMatchObject({ ok: false })
    })
    expect(slow.isWaiting(slow.at('one.json'))).toBe(false)
    expect(await newer).toEqual({ ok: true })
    expect(await slow.read(slow.at('one.json'))).toBe('Newer')
    expect(slow.isWaiting(slow.at('one.json'))).toBe(false)
  })

  it('holds what was asked for last, however long each write takes', async () => {
    await own.make()
    let letGo = () => {}
    // As long as it takes: another file may need any time on a busy disk.
    const held = new Promise<void>((resolve) => (letGo = resolve))
    const slow = new OwnFolder(folder, {
      writeAtomically: async (path, text) => {
        if (text === 'first') await held
        return writeAtomically(path, text)
      },
    })
    const [one, two] = [slow.at('one.json'), slow.at('two.json')]
    void slow.write(one, 'first')
    void slow.write(one, 'second')
    void slow.write(one, 'third')
    // Another file does not wait for that one.
    await slow.write(two, 'other')
    await expect(read('one.json')).rejects.toThrow()
    letGo()
    await slow.done()
    expect(await read('one.json')).toBe('third')
    void slow.write(one, 'first')
    await slow.remove(one)
    await expect(read('one.json')).rejects.toThrow()
  })

  it('is not found to have room while nothing can be written, although nothing waits', async () => {
    await own.make()
    fault = 'the disk is full'
    await own.write(own.at('one.json'), 'One')
    await own.remove(own.at('one.json'))
    await own.tryAgain()
    expect(own.problem).toBe('the disk is full')
  })

  it('is found to have room again where nothing waits, and nothing is left of that', async () => {
    await own.attempt(() => Promise.reject(Object.assign(new Error('full'), { code: 'ENOSPC' })))
    expect(own.problem).toBe('the disk is full')
    await own.tryAgain()
    expect(own.problem).toBeNull()
    expect(await readdir(folder)).toEqual([])
  })

  it('is made anew where somebody removed it', async () => {
    await rm(folder, { recursive: true })
    expect(await own.write(own.at('one.json'), 'One')).toEqual({ ok: true })
    expect(await read('one.json')).toBe('One')
  })
})

describe('a folder that belongs to somebody else', () => {
  beforeEach(async () => {
    await mkdir(folder)
    const { uid } = await stat(folder)
    vi.spyOn(process, 'geteuid').mockReturnValue(uid + 1)
  })
  afterEach(() => void vi.restoreAllMocks())

  it('is said, and nothing is written into it', async () => {
    const kept = new KeptProjects(own, { now: Date.now })
    await own.make()
    await kept.start()
    expect(own.problem).toBe('it belongs to somebody else')
    expect(changes).toEqual(['it belongs to somebody else'])
    expect(await own.write(own.at('settings.json'), 'dark')).toEqual({
      ok: false,
      reason: 'it belongs to somebody else',
    })
    await own.tryAgain()
    await kept.stop()
    expect(await readdir(folder)).toEqual([])
    // What was to be written is here, and goes into it once it is ours.
    expect(await own.read(own.at('settings.json'))).toBe('dark')
    vi.restoreAllMocks()
    await own.tryAgain()
    expect(own.problem).toBeNull()
    expect(await read('settings.json')).toBe('dark')
  })
})

it('a sign of life is renewed without being written anew: on a full disk it would end up empty', async () => {
  const kept = new KeptProjects(own, { now: Date.now })
  await mkdir(join(folder, 'running'), { recursive: true })
  const sign = join(folder, 'running', kept.run)
  await writeFile(sign, '1')
  const old = new Date(Date.now() - 60_000)
  await utimes(sign, old, old)
  await kept.start()
  expect(await readFile(sign, 'utf8')).toBe('1')
  expect((await stat(sign)).mtimeMs).toBeGreaterThan(old.getTime())
  await kept.stop()
})

describe('a folder that is there', () => {
  it('is for nobody else on the machine, also one that an earlier version made', async () => {
    await mkdir(join(folder, 'kept'), { recursive: true, mode: 0o755 })
    await own.make()
    await own.make('kept')
    await own.make('bin')
    for (const name of ['', 'kept', 'bin'])
      expect((await stat(join(folder, name))).mode & 0o077, name).toBe(0)
  })

  it('and was removed while the program runs is made again by the next write', async () => {
    await own.make()
    await own.make('kept')
    await rm(folder, { recursive: true })
    expect(await own.write(own.at('kept', 'one.json'), 'One')).toEqual({ ok: true })
    expect(await read('kept/one.json')).toBe('One')
    expect(own.problem).toBeNull()
    expect((await stat(folder)).mode & 0o077).toBe(0)
  })
})
