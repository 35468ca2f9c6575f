import { spawn } from 'node:child_process'
import { readdir, readFile, rm, utimes, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { KeptProjects } from '../../../../src-main/documents/session/kept'
import { OwnFolder } from '../../../../src-main/documents/session/own-folder'
import type { KeptEntry } from '../../../../src-main/documents/session/kept'
import { writeAtomically } from '../../../../src-main/documents/session/project-files'
import { projectText, World } from './world'

let world: World
beforeEach(async () => {
  world = await World.make()
})
afterEach(() => world.end())

const entry = (more: Partial<KeptEntry> = {}): KeptEntry => ({
  id: 'one',
  path: null,
  stamp: null,
  title: 'Throw',
  revision: 3,
  savedRevision: 3,
  changedAt: '2026-01-02T03:04:05.000Z',
  holder: null,
  text: projectText('Throw'),
  ...more,
})

const otherRun = (isProcessAlive?: (pid: number) => boolean, now = Date.now) =>
  new KeptProjects(new OwnFolder(world.folder, { writeAtomically }), {
    now,
    ...(isProcessAlive ? { isProcessAlive } : {}),
  })

describe('the own folder', () => {
  it('gives back what was put in, the newest first', async () => {
    await world.kept.put(entry())
    await world.kept.put(entry({ id: 'two', changedAt: '2026-01-03T00:00:00.000Z' }))
    expect((await world.kept.list()).map((each) => each.id)).toEqual(['two', 'one'])
    expect(await world.kept.get('one')).toEqual({ ...entry(), format: 'petalyard-kept' })
  })

  it('passes over a damaged entry and leaves it where it is', async () => {
    await world.kept.put(entry())
    const damaged = join(world.folder, 'kept', 'bad.json')
    await writeFile(damaged, '{"format":"petalyard-kept"')
    expect(await world.kept.list()).toHaveLength(1)
    expect(await readFile(damaged, 'utf8')).toBe('{"format":"petalyard-kept"')
  })

  it('takes no id that could be a path', async () => {
    await expect(world.kept.put(entry({ id: '../../etc/x' }))).rejects.toThrow('not an id')
    expect(await world.kept.get('../settings')).toBeNull()
  })

  it('discards into a bin that is emptied after 30 days', async () => {
    await world.kept.put(entry())
    await world.kept.discard('one')
    expect(await world.kept.list()).toEqual([])
    const bin = join(world.folder, 'bin')
    expect(await readdir(bin)).toEqual(['one.json'])
    const days = (count: number) => new Date(Date.now() - count * 24 * 3_600_000)
    await utimes(join(bin, 'one.json'), days(29), days(29))
    await otherRun().start()
    expect(await readdir(bin)).toEqual(['one.json'])
    await utimes(join(bin, 'one.json'), days(31), days(31))
    await otherRun().start()
    expect(await readdir(bin)).toEqual([])
  })
})

describe('entries of a run that ended', () => {
  it('are interrupted when the run shows no sign of life', async () => {
    await world.kept.put(entry({ holder: 'a-run-long-gone' }))
    expect(await world.kept.interrupted()).toHaveLength(1)
  })

  it('are not interrupted when they were closed, or are open here', async () => {
    await world.kept.put(entry({ id: 'closed', holder: null }))
    await world.kept.put(entry({ id: 'here', holder: world.kept.run }))
    expect(await world.kept.interrupted()).toEqual([])
  })

  it('belong to another run while its process lives and its sign is fresh', async () => {
    await world.kept.put(entry({ holder: world.kept.run }))
    const other = otherRun()
    await other.start()
    expect(await other.interrupted()).toEqual([])
    await other.stop()
    const later = otherRun(
      () => true,
      () => Date.now() + 60_000,
    )
    expect(await later.interrupted()).toHaveLength(1)
  })

  it('are not interrupted when they are open here, even where the sign of life is gone', async () => {
    await world.kept.put(entry({ holder: world.kept.run }))
    await rm(join(world.folder, 'running', world.kept.run))
    expect(await world.kept.interrupted()).toEqual([])
  })

  it('are interrupted where their run is named by a path, and what stands there stays', async () => {
    const file = join(world.folder, 'settings.json')
    await writeFile(file, String(process.pid))
    await world.kept.put(entry({ holder: '../settings.json' }))
    expect(await world.kept.interrupted()).toHaveLength(1)
    await writeFile(file, '{}')
    expect(await world.kept.interrupted()).toHaveLength(1)
    expect(await readFile(file, 'utf8')).toBe('{}')
  })

  it('are interrupted at once when their process is dead, however fresh its sign', async () => {
    await world.kept.put(entry({ holder: world.kept.run }))
    expect(await otherRun(() => false).interrupted()).toHaveLength(1)
  })
})

describe('a run that was stopped for longer than its sign of life is believed', () => {
  const HOUR = 3_600_000

  /** The same folder, as a run whose clock is `later` ms ahead sees it: the other one shows no sign of life. */
  async function takenOver() {
    await world.kept.put(entry({ holder: world.kept.run }))
    let ahead = 0
    const now = () => Date.now() + ahead
    const sleeper = new KeptProjects(new OwnFolder(world.folder, { writeAtomically }), { now })
    await sleeper.start()
    await sleeper.put(entry({ id: 'nap', title: 'Before the nap', holder: sleeper.run }))
    ahead = HOUR
    const other = otherRun(() => true, now)
    await other.start()
    const found = (await other.interrupted()).find(({ id }) => id === 'nap')!
    await other.put({ ...found, title: 'Taken over', revision: 9, holder: other.run })
    return { sleeper, other }
  }

  it('leaves the entry to the one that took it over, and keeps its own beside it', async () => {
    const { sleeper, other } = await takenOver()
    const mine = entry({ id: 'nap', title: 'After the nap', holder: sleeper.run })
    expect(await sleeper.put(mine)).toEqual({ ok: true })
    expect(sleeper.isBeside('nap')).toBe(true)
    await sleeper.put({ ...mine, title: 'And on', revision: 4 })
    const titles = (await other.list()).map(({ title }) => title).sort()
    expect(titles).toEqual(['And on', 'Taken over', 'Throw'])
    // Closing its own does not take the other one away.
    await sleeper.remove('nap')
    expect((await other.list()).map(({ title }) => title).sort()).toEqual(['Taken over', 'Throw'])
    await sleeper.stop()
    await other.stop()
  })

  it('does not remove what was taken over', async () => {
    const { sleeper, other } = await takenOver()
    await sleeper.remove('nap')
    expect((await other.get('nap'))?.title).toBe('Taken over')
    await sleeper.stop()
    await other.stop()
  })

  it('goes on as before where nobody took it over', async () => {
    let ahead = 0
    const sleeper = new KeptProjects(new OwnFolder(world.folder, { writeAtomically }), {
      now: () => Date.now() + ahead,
    })
    await sleeper.start()
    await sleeper.put(entry({ holder: sleeper.run }))
    ahead = HOUR
    await sleeper.put(entry({ title: 'After the nap', holder: sleeper.run }))
    expect(sleeper.isBeside('one')).toBe(false)
    expect((await sleeper.get('one'))?.title).toBe('After the nap')
    await sleeper.stop()
  })
})

describe('a process killed while it writes', () => {
  it('leaves a whole entry, the old or the new, and staging files that a later start clears away', async () => {
    // Writes entries as fast as it can, telling each revision that is on the disk, until it is killed.
    const script = `
      import { KeptProjects } from ${JSON.stringify(moduleUrl('src-main/documents/session/kept.ts'))}
      import { writeAtomically } from ${JSON.stringify(moduleUrl('src-main/documents/session/project-files.ts'))}
      import { OwnFolder } from ${JSON.stringify(moduleUrl('src-main/documents/session/own-folder.ts'))}
      const own = new OwnFolder(${JSON.stringify(world.folder)}, { writeAtomically })
      const kept = new KeptProjects(own, { now: Date.now })
      await kept.start()
      const filler = 'x'.repeat(200_000)
      for (let revision = 1; ; revision++) {
        const text = JSON.stringify({ format: 'petalyard-project', version: 1, title: 'T' + revision, notes: filler })
        await kept.put({ id: 'one', path: null, stamp: null, title: 'T' + revision, revision,
          savedRevision: revision, changedAt: new Date().toISOString(), holder: kept.run, text })
        process.stdout.write(revision + '\\n')
      }`
    for (let round = 0; round < 5; round++) {
      const told = await runAndKill(script, 60 + round * 35)
      const found = await world.kept.get('one')
      expect(found?.revision).toBeGreaterThanOrEqual(told)
      expect(JSON.parse(found?.text ?? '')).toMatchObject({ title: `T${found?.revision}` })
      expect(await world.kept.interrupted()).toHaveLength(1)
    }
    const folder = join(world.folder, 'kept')
    const old = new Date(Date.now() - 120_000)
    for (const name of await readdir(folder)) await utimes(join(folder, name), old, old)
    await otherRun().start()
    expect(await readdir(folder)).toEqual(['one.json'])
  })
})

const moduleUrl = (path: string) => new URL(`../../../../${path}`, import.meta.url).href

/** Runs a module until it has written something and `ms` have passed, kills it; the last number it told. */
function runAndKill(script: string, ms: number): Promise<number> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ['--import', 'tsx', '--input-type=module', '-e', script], {
      cwd: new URL('../../../..', import.meta.url),
    })
    let told = ''
    let said = ''
    let timer: NodeJS.Timeout | undefined
    child.stdout.on('data', (data: Buffer) => {
      told += data.toString()
      timer ??= setTimeout(() => child.kill('SIGKILL'), ms)
    })
    child.stderr.on('data', (data: Buffer) => (said += data.toString()))
    child.on('exit', () => {
      clearTimeout(timer)
      const lines = told.slice(0, told.lastIndexOf('\n')).split('\n')
      if (told === '') reject(new Error(said))
      else resolve(Number(lines.at(-1)))
    })
  })
}
