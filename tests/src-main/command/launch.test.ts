/** The command line as people start it: built when needed, several starts at once, files from where they stand. */
import { execFile } from 'node:child_process'
import { cp, mkdir, mkdtemp, readdir, readFile, realpath, symlink, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { beforeAll, describe, expect, it } from 'vitest'

const root = fileURLToPath(new URL('../../..', import.meta.url))
const COPIED = [
  'shared-types',
  'src-core',
  'src-main',
  'scripts',
  'command.config.ts',
  'package.json',
  'package-lock.json',
  'tsconfig.json',
]

interface Ended {
  readonly code: number
  readonly out: string
  readonly err: string
}

function start(program: string, args: string[], cwd: string): Promise<Ended> {
  // Settings of an npm that runs these tests must not reach the one that they start.
  const env = Object.fromEntries(
    Object.entries(process.env).filter(([name]) => !/^(npm_|INIT_CWD)/i.test(name)),
  )
  return new Promise((resolve) => {
    execFile(program, args, { cwd, env }, (error, out, err) => {
      const code = error ? (typeof error.code === 'number' ? error.code : -1) : 0
      resolve({ code, out, err })
    })
  })
}

describe('the command line in a copy that was never built', () => {
  let home = ''
  let elsewhere = ''
  const petalyard = (...args: string[]) =>
    start('npm', ['--prefix', home, 'run', '--silent', 'petalyard', '--', ...args], elsewhere)

  beforeAll(async () => {
    home = await realpath(await mkdtemp(join(tmpdir(), 'petalyard-home-')))
    elsewhere = await realpath(await mkdtemp(join(tmpdir(), 'petalyard-work-')))
    for (const name of COPIED) await cp(join(root, name), join(home, name), { recursive: true })
    await symlink(await realpath(join(root, 'node_modules')), join(home, 'node_modules'))
    await mkdir(join(home, 'examples'), { recursive: true })
    await writeFile(
      join(home, 'examples', 'launch-sample.petalyard'),
      '{"format":"petalyard-project","version":1,"title":"Sample","notes":"One sentence. Another."}',
    )
  })

  const builds = async () => (await readdir(join(home, 'out', 'command'))).length

  it('builds itself silently, once, though four start at once', async () => {
    const all = await Promise.all(Array.from({ length: 4 }, () => petalyard('--version')))
    const { version } = JSON.parse(await readFile(join(root, 'package.json'), 'utf8')) as { version: string }
    expect(all).toEqual(Array.from({ length: 4 }, () => ({ code: 0, out: `${version}\n`, err: '' })))
    expect(await builds()).toBe(1)
  })

  it('takes file names from where it was called', async () => {
    const ended = await petalyard('example', 'launch-sample', '--out', 'mine.petalyard')
    expect(ended).toEqual({ code: 0, out: 'Wrote mine.petalyard: Sample\n', err: '' })
    expect(await readFile(join(elsewhere, 'mine.petalyard'), 'utf8')).toContain('Sample')
  })

  it('hands on exit codes and keeps standard output clean', async () => {
    const ended = await petalyard('exampel')
    expect(ended).toEqual({
      code: 2,
      out: '',
      err: "petalyard: unknown command 'exampel' (Did you mean example?)\n",
    })
  })

  it('builds anew after a change of the sources', async () => {
    const manifest = join(home, 'package.json')
    await writeFile(
      manifest,
      (await readFile(manifest, 'utf8')).replace(/"version": ".*?"/, '"version": "9.8.7"'),
    )
    expect((await petalyard('--version')).out).toBe('9.8.7\n')
    expect(await builds()).toBe(2)
  })

  it('leaves quietly when its reader has seen enough', async () => {
    const ended = await start(
      'sh',
      ['-c', `node ${home}/scripts/petalyard.mjs example --help | head -c 5`],
      elsewhere,
    )
    expect(ended).toEqual({ code: 0, out: 'Usage', err: '' })
  })

  it('says in one line when it cannot be built', async () => {
    await writeFile(join(home, 'src-main', 'command', 'main.ts'), 'const = broken')
    const ended = await petalyard('--version')
    expect(ended.code).toBe(70)
    expect(ended.out).toBe('')
    expect(ended.err).toMatch(/^petalyard: the command line could not be built or started: .+\n$/)
  })
})
