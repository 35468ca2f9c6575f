/** A save that is killed before any of its calls to the file system, and the order of these calls. */
import { execFile } from 'node:child_process'
import { existsSync } from 'node:fs'
import { mkdir, mkdtemp, readdir, rm, utimes, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'vite'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { KeptProjects } from '../../../../src-main/documents/session/kept'
import { OwnFolder } from '../../../../src-main/documents/session/own-folder'
import { projectFiles, writeAtomically } from '../../../../src-main/documents/session/project-files'
import { projectText, titleOf } from './texts'

const here = (name: string) => fileURLToPath(new URL(name, import.meta.url))

/** What is saved, in order: the first of them is in the file before each run. */
const TITLES = ['On disk', 'First', 'Second', 'Third']

let root: string
/** As one script, so that it starts at once. */
let script: string
beforeAll(async () => {
  root = await mkdtemp(join(tmpdir(), 'petalyard-killed-'))
  await build({
    configFile: false,
    logLevel: 'error',
    ssr: { noExternal: true, target: 'node' },
    build: {
      ssr: true,
      outDir: root,
      minify: false,
      rolldownOptions: {
        input: { saves: here('saves.ts') },
        output: { format: 'cjs', entryFileNames: '[name].cjs' },
      },
    },
  })
  script = join(root, 'saves.cjs')
}, 60_000)
afterAll(() => rm(root, { recursive: true, force: true }))

interface Run {
  readonly own: string
  readonly path: string
  /** The last title of which it was told that it is kept or saved. */
  readonly told: string
  /** What it asked of the file system that changes something, in order, by the names of the files. */
  readonly calls: readonly string[]
  readonly isKilled: boolean
}

let runs = 0

/** Keeps and saves, killed before the call of this number, or when half of it is done; 0 for not at all. */
async function save(dieAt: number, isHalfDone = false): Promise<Run> {
  const folder = join(root, `run-${++runs}`)
  const [own, path] = [join(folder, 'own'), join(folder, 'files', 'throw.petalyard')]
  await mkdir(dirname(path), { recursive: true })
  await writeFile(path, projectText('On disk'))
  const env = { ...process.env, CALL_TO_DIE_AT: String(dieAt), CALL_IN_HALF: isHalfDone ? '1' : '' }
  return new Promise((resolve) => {
    const words = ['--require', here('calls.cjs'), script, own, path]
    execFile(process.execPath, words, { env }, (error, stdout, stderr) => {
      const told = ['On disk', ...stdout.split('\n')].filter((line) => line !== '').at(-1)!
      const calls = stderr.split('\n').filter((line) => line !== '')
      resolve({ own, path, told, calls, isKilled: error?.signal === 'SIGKILL' })
    })
  })
}

/** What the next start would open: what was kept, where it is newer than the file, else the file. */
async function reopened({ own, path }: Run, where: string) {
  const kept = new KeptProjects(new OwnFolder(own, { writeAtomically }), { now: Date.now })
  await kept.start()
  const file = await projectFiles.open(path)
  if (!file.ok) throw new Error(`${where}: ${file.problem.message}`)
  const backup = existsSync(`${path}~`) ? await projectFiles.open(`${path}~`) : null
  if (backup?.ok === false) throw new Error(`${where}: ${backup.problem.message}`)
  const [entry] = await kept.interrupted()
  const isNewer = entry && entry.savedRevision < entry.revision
  await kept.stop()
  return { opened: titleOf(isNewer ? entry.text : file.text), file: titleOf(file.text) }
}

/** How many are looked at side by side. */
const AT_ONCE = 4

describe('a save that is killed', () => {
  it('before any of its calls loses nothing that was told as kept, and breaks no file', async () => {
    const { calls } = await unkilled()
    // Two saves, each with its lock, its staging file, a backup, and what is kept beside them.
    expect(calls.length).toBeGreaterThan(30)
    await lookAtEach(calls.map((call, at) => ({ call, number: at + 1, isHalfDone: false })))
  }, 180_000)

  it('halfway through anything that it writes or copies breaks no file either', async () => {
    const { calls } = await unkilled()
    const writing = calls.flatMap((call, at) =>
      /^(write|writeFile|copyFile) /.test(call) ? [{ call, number: at + 1, isHalfDone: true }] : [],
    )
    expect(new Set(writing.map(({ call }) => call.split(' ')[0]))).toEqual(
      new Set(['write', 'writeFile', 'copyFile']),
    )
    await lookAtEach(writing)
  }, 180_000)
})

async function unkilled(): Promise<Run> {
  const whole = await save(0)
  expect(whole).toMatchObject({ told: 'Third', isKilled: false })
  return whole
}

interface Kill {
  readonly call: string
  readonly number: number
  readonly isHalfDone: boolean
}

/** Kills a save at each of these, and looks what the next start finds. */
async function lookAtEach(kills: readonly Kill[]): Promise<void> {
  const look = async ({ call, number, isHalfDone }: Kill): Promise<void> => {
    const run = await save(number, isHalfDone)
    expect([number, run.isKilled]).toEqual([number, true])
    const where = `${number}: ${isHalfDone ? 'within' : 'before'} ${call}`
    const { opened, file } = await reopened(run, where)
    expect(TITLES, where).toContain(file)
    // What was told stands there, or already what was on its way.
    expect(TITLES.indexOf(opened), where).toBeGreaterThanOrEqual(TITLES.indexOf(run.told))
    await cleared(run)
  }
  const next = kills.values()
  await Promise.all(
    Array.from({ length: AT_ONCE }, async () => {
      for (const kill of next) await look(kill)
    }),
  )
}

/** What lay half written beside files is gone once it is old, and a file can be saved at once. */
async function cleared({ own, path }: Run): Promise<void> {
  const kept = new KeptProjects(new OwnFolder(own, { writeAtomically }), { now: Date.now })
  const old = new Date(Date.now() - 120_000)
  for (const folder of [join(own, 'kept'), own])
    for (const name of await readdir(folder)) await utimes(join(folder, name), old, old)
  await kept.start()
  await kept.stop()
  const names = [...(await readdir(own)), ...(await readdir(join(own, 'kept')))]
  expect(names.filter((name) => name.startsWith('.'))).toEqual([])
  expect(await kept.alone(path, () => Promise.resolve('at once'))).toBe('at once')
}

describe('a power cut', () => {
  it('finds what replaces a file on the disk before it does, and its folder told before the save is', async () => {
    const { calls, path, own } = await save(0)
    const renames = calls.flatMap((call, at) => {
      const [name, from, to] = call.split(' ')
      return name === 'rename' ? [{ from: from!, to: to!, at }] : []
    })
    for (const file of [path, `${path}~`, join(own, 'kept', 'one.json')]) {
      const of = renames.filter(({ to }) => to === file)
      expect(of.length, file).toBeGreaterThan(0)
      for (const { from, at } of of) {
        // write-file-atomic writes under a name of its own first.
        const sources = [from, ...renames.filter(({ to }) => to === from).map((each) => each.from)]
        const synced = calls.findLastIndex(
          (call, i) => i < at && sources.some((each) => call === `fsync ${each}`),
        )
        const written = calls.findLastIndex(
          (call, i) =>
            i < at &&
            sources.some((each) => new RegExp(`^(write|copyFile \\S+) ?`).test(call) && call.endsWith(each)),
        )
        expect(synced, `${file}: synced before it is renamed`).toBeGreaterThan(written)
        expect(written, `${file}: written`).toBeGreaterThanOrEqual(0)
        const folder = calls.findIndex((call, i) => i > at && call === `fsync ${dirname(file)}`)
        expect(folder, `${file}: its folder after that`).toBeGreaterThan(at)
      }
    }
  }, 60_000)
})
