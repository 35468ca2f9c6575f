/** `npm start` where no Electron can be had, or no display: the same window in the browser, in one line. */
import { spawn } from 'node:child_process'
import { chmod, cp, mkdir, readdir, readFile, stat, symlink, writeFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Loopback } from './browser'
import { startChromium, watchLoopback } from './browser'
import { makeFolder, projectRoot } from './desktop'
import { eventually, projectText } from '../src-main/documents/session/world'

let folder: Awaited<ReturnType<typeof makeFolder>>
let started: Loopback | null = null

beforeEach(async () => {
  folder = await makeFolder()
})
afterEach(async () => {
  await started?.stop()
  started = null
  await folder.forget()
})

/** Runs `npm start` with what the machine is said to have. */
function start(env: NodeJS.ProcessEnv, words: readonly string[] = [], root = projectRoot): Loopback {
  const without = { ...process.env }
  for (const name of ['ELECTRON_OVERRIDE_DIST_PATH', 'DISPLAY', 'WAYLAND_DISPLAY', 'INIT_CWD'])
    delete without[name]
  started = watchLoopback(
    spawn(process.execPath, [join(root, 'scripts', 'start.mjs'), ...words], {
      cwd: root,
      env: { ...without, PETALYARD_DATA: folder.path, ...env },
    }),
  )
  return started
}

/** A stand-in for the command that opens the user's browser: it writes down its process, and stays. */
async function fakeBrowser(): Promise<{ readonly path: string; readonly log: string }> {
  const path = join(folder.path, 'bin')
  const log = join(folder.path, 'opened')
  await mkdir(path)
  await writeFile(
    join(path, 'xdg-open'),
    `#!/bin/sh\necho $$ > '${log}.new'; mv '${log}.new' '${log}'; sleep 30\n`,
  )
  await chmod(join(path, 'xdg-open'), 0o755)
  return { path: `${path}:${process.env.PATH}`, log }
}

/** The arguments of every process of this machine, as all its users can read them. */
async function argumentsOfAll(): Promise<Map<number, readonly string[]>> {
  const ids = (await readdir('/proc')).filter((name) => /^\d+$/.test(name))
  const words = ids.map((id) => readFile(`/proc/${id}/cmdline`, 'utf8').catch(() => ''))
  return new Map(
    (await Promise.all(words)).map((text, at) => [Number(ids[at]), text.split('\0').slice(0, -1)]),
  )
}

/** The project as it is right after `npm ci`: Electron's package is there, its binary was never fetched. */
async function freshlyInstalled(): Promise<string> {
  const copy = join(folder.path, 'fresh')
  const modules = join(projectRoot, 'node_modules')
  await mkdir(join(copy, 'node_modules'), { recursive: true })
  for (const name of await readdir(projectRoot))
    if (!['.git', 'node_modules', 'scripts'].includes(name))
      await symlink(join(projectRoot, name), join(copy, name))
  await cp(join(projectRoot, 'scripts'), join(copy, 'scripts'), { recursive: true })
  for (const name of await readdir(modules))
    if (name !== 'electron') await symlink(join(modules, name), join(copy, 'node_modules', name))
  const binary = /[/\\]electron[/\\](dist|path\.txt)/
  const electron = join(copy, 'node_modules', 'electron')
  await cp(join(modules, 'electron'), electron, { recursive: true, filter: (path) => !binary.test(path) })
  return copy
}

describe('npm start', () => {
  it('says on one line what it cannot open, whatever that is called or holds', async () => {
    const evil = '\u001b]0;pwn\u0007\u009b31m\u202e'
    const file = join(folder.path, `a${evil}\nPetalyard is at http: b.petalyard`)
    await writeFile(file, projectText('Harbor').replace('{', `{"units":${JSON.stringify(`${evil}\nx`)},`))
    const loopback = start({ PETALYARD_OPEN: 'no', PETALYARD_DATA: join(folder.path, `own${evil}`) }, [
      file,
      `${file}.none`,
    ])
    await loopback.nextAddress()
    expect(loopback.said()).not.toMatch(/[^\P{Cc}\n]|[\u2028-\u202e\u2066-\u2069]/u)
    expect(loopback.said().match(/^petalyard: .*(cannot be right|no such file)/gm)).toHaveLength(2)
    expect(loopback.said().match(/^Petalyard is at/gm)).toHaveLength(1)
  })

  it('without a display says so in one line and opens the browser with an address that works', async () => {
    const { path, log } = await fakeBrowser()
    const loopback = start({ PATH: path })
    const address = await loopback.nextAddress()
    expect(loopback.said()).toContain(
      'There is no display here, so Petalyard opens in your browser instead.\n',
    )
    await eventually(async () => expect(await readFile(log, 'utf8')).toMatch(/^\d+\n$/))
    const launcher = Number(await readFile(log, 'utf8'))
    // What everybody on the machine can read, of every process: the address that lets in is nowhere.
    const token = address.split('=')[1] ?? ''
    expect(token).toHaveLength(43)
    const everything = await argumentsOfAll()
    expect([...everything.values()].filter((words) => words.join(' ').includes(token))).toEqual([])
    const given = everything.get(launcher)?.at(-1) ?? ''
    expect(given).toMatch(/^file:\/\/.*\/petalyard\.html$/)
    const file = fileURLToPath(given)
    expect((await stat(file)).mode & 0o777).toBe(0o600)
    expect((await stat(dirname(file))).mode & 0o777).toBe(0o700)
    const browser = await startChromium()
    const page = await browser.newPage()
    const amiss: string[] = []
    page.on('console', (line) => line.type() === 'error' && amiss.push(line.text()))
    page.on('pageerror', (error) => amiss.push(String(error)))
    page.on(
      'response',
      (answer) => answer.status() >= 400 && amiss.push(`${answer.status()} ${answer.url()}`),
    )
    await page.goto(given)
    await page.waitForFunction(() => 'petalyard' in globalThis)
    // Of no further use, and nowhere any more.
    await eventually(async () => expect(await stat(dirname(file)).catch(() => null)).toBeNull())
    expect(await page.evaluate(() => location.href)).not.toContain(token)
    process.kill(launcher)
    await page.getByRole('application').waitFor()
    expect(amiss).toEqual([])
    expect(await page.evaluate(() => window.petalyard.facts())).toMatchObject({ value: { host: 'browser' } })
    await page.close()
  })

  it('cut off from the download of Electron, falls back within seconds', async () => {
    const cutOff = {
      DISPLAY: ':77',
      ELECTRON_MIRROR: 'http://127.0.0.1:9/',
      electron_config_cache: join(folder.path, 'cache'),
      PETALYARD_OPEN: 'no',
    }
    const loopback = start(cutOff, [], await freshlyInstalled())
    await loopback.nextAddress()
    expect(loopback.said()).toContain('Electron could not be fetched (its download cannot be reached)')
    expect(loopback.said()).not.toMatch(/\n\s+at /)
  })

  it('with an Electron that does not run, falls back too', async () => {
    const broken = join(folder.path, 'electron')
    await mkdir(broken)
    await writeFile(join(broken, 'electron'), '#!/bin/sh\nexit 1\n')
    await chmod(join(broken, 'electron'), 0o755)
    const loopback = start({ DISPLAY: ':77', ELECTRON_OVERRIDE_DIST_PATH: broken, PETALYARD_OPEN: 'no' })
    await loopback.nextAddress()
    expect(loopback.said()).toContain('Electron does not run on this machine, so Petalyard opens')
  })

  it('opens a file that is named from where it was called', async () => {
    await writeFile(join(folder.path, 'throw.petalyard'), projectText('Named'))
    const loopback = start({ PETALYARD_OPEN: 'no', INIT_CWD: folder.path }, ['throw.petalyard'])
    const browser = await startChromium()
    const page = await browser.newPage()
    await page.goto(await loopback.nextAddress())
    await page.waitForFunction(() => 'petalyard' in globalThis)
    expect(await page.evaluate(() => window.petalyard.currentProject())).toMatchObject({
      value: { origin: 'file', keeping: { name: 'throw' } },
    })
    await page.close()
  })
})
