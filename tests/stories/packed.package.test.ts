/**
 * The packed program as it is shipped, its fuses set: a driver cannot attach to its main process, so it is looked at
 * through the port of Chromium's own inspector.
 */
import { spawn } from 'node:child_process'
import type { ChildProcess } from 'node:child_process'
import { existsSync } from 'node:fs'
import { readdir, readFile, rename, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { chromium } from 'playwright-core'
import type { Browser, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { FUSES, readFuses } from '../../packing/fuses.mjs'
import { copyPacked, packedProgram } from '../../scripts/dist-program.mjs'
import { fusesModule } from '../../scripts/dist-tools.mjs'
import { eventually, titleOf } from '../src-main/documents/session/world'
import { makeFolder, projectRoot } from './desktop'

/** Those that stand between a stranger and the main process, in every Electron since the oldest that works. */
const ALWAYS_THERE = [
  ...['RunAsNode', 'EnableCookieEncryption', 'EnableNodeOptionsEnvironmentVariable'],
  ...['EnableNodeCliInspectArguments', 'EnableEmbeddedAsarIntegrityValidation', 'OnlyLoadAppFromAsar'],
]

let home: Awaited<ReturnType<typeof makeFolder>>
let program: string
let folder: Awaited<ReturnType<typeof makeFolder>>
let started: ChildProcess[] = []
let browser: Browser | null = null
beforeAll(async () => {
  home = await makeFolder()
  program = copyPacked(join(home.path, 'program'))
})
afterAll(() => home.forget())
beforeEach(async () => {
  folder = await makeFolder()
  started = []
})
afterEach(async () => {
  await browser?.close()
  browser = null
  for (const child of started) if (child.exitCode === null) child.kill('SIGKILL')
  await folder.forget()
})

/** Starts the program, and collects what it says. */
function start(words: readonly string[], env: Readonly<Record<string, string>> = {}) {
  const child = spawn(
    program,
    // Only tests run as root, which the sandbox of the system refuses.
    [`--user-data-dir=${join(folder.path, 'data')}`, '--no-sandbox', ...words],
    // What is shipped opens no port for an inspector, but for these tests.
    { cwd: folder.path, env: { ...process.env, PETALYARD_INSPECT: 'yes', ...env } },
  )
  started.push(child)
  const all = { child, said: '', ended: new Promise<number | null>((done) => child.once('exit', done)) }
  for (const stream of [child.stdout, child.stderr])
    stream.on('data', (data: Buffer) => (all.said += data.toString()))
  return all
}

/** The windows, as soon as there is one; the port is told where the data is kept. */
async function windows(): Promise<readonly Page[]> {
  if (!browser) {
    const told = join(folder.path, 'data', 'DevToolsActivePort')
    const [port] = (await eventually(() => readFile(told, 'utf8'))).split('\n')
    browser = await eventually(() =>
      chromium.connectOverCDP(`http://127.0.0.1:${port}`, { noDefaults: true }),
    )
  }
  return browser.contexts().flatMap((context) => context.pages())
}

async function shown(number: number): Promise<Page> {
  const page = await eventually(async () => {
    const all = await windows()
    expect(all.length).toBeGreaterThan(number)
    return all[number]!
  })
  await page.waitForFunction(() => 'petalyard' in globalThis)
  return page
}

async function project(name: string): Promise<string> {
  const path = join(folder.path, `${name}.petalyard`)
  const example = await readFile(join(projectRoot, 'examples', 'slate-roof-lap-blanket.petalyard'), 'utf8')
  await writeFile(path, JSON.stringify({ ...(JSON.parse(example) as object), title: name }))
  return path
}

describe('the fuses of what is shipped', () => {
  it('are set as they should be', async () => {
    const read = await readFuses(fusesModule(), packedProgram())
    expect(Object.keys(read)).toEqual(expect.arrayContaining(ALWAYS_THERE))
    for (const [name, isOn] of Object.entries(read)) expect([name, isOn]).toEqual([name, FUSES[name]])
  })

  it('let no variable and no switch run other code or open the main process', async () => {
    const ran = join(folder.path, 'ran')
    const script = join(folder.path, 'script.cjs')
    await writeFile(script, `require('node:fs').writeFileSync(${JSON.stringify(ran)}, '')`)
    const app = start(['--remote-debugging-port=0', '--inspect=0', script], {
      ELECTRON_RUN_AS_NODE: '1',
      NODE_OPTIONS: `--require=${script}`,
    })
    // It is the program that comes up, and takes the script for a file to open.
    const page = await shown(0)
    expect(page.url()).toBe('app://petalyard/index.html')
    expect(existsSync(ran)).toBe(false)
    expect(app.said).not.toContain('Debugger listening')
  })
})

it('opens its windows to no inspector, whatever switch it is started with', async () => {
  start(['--remote-debugging-port=0', '--remote-debugging-address=0.0.0.0', '--remote-allow-origins=*'], {
    PETALYARD_INSPECT: '',
  })
  const data = join(folder.path, 'data')
  // It runs: it has said so in its own folder, which it does before its first window.
  await eventually(async () => expect(await readdir(join(data, 'projects', 'running'))).not.toEqual([]))
  await new Promise((resolve) => setTimeout(resolve, 2_000))
  expect(existsSync(join(data, 'DevToolsActivePort'))).toBe(false)
})

describe('the packed program', () => {
  it('opens files by its command, saves them, and gives a second start to the first', async () => {
    const [first, second] = [await project('Hedgerow'), await project('Orchard')]
    const app = start(['--remote-debugging-port=0', first])
    const page = await shown(0)
    const title = page.getByRole('textbox', { name: 'Title' })
    await eventually(async () => expect(await title.inputValue()).toBe('Hedgerow'))
    expect(await page.evaluate(() => 'require' in globalThis)).toBe(false)
    await title.fill('Hedgerow in June')
    await title.press('Enter')
    await eventually(async () => expect(titleOf(await readFile(first, 'utf8'))).toBe('Hedgerow in June'))

    // Fonts and pictures of paper are read from what is packed, in a worker.
    const previewed = await page.evaluate(async () => {
      const opened = await window.petalyard.currentProject()
      const text = opened.outcome === 'done' ? opened.value.text : ''
      return window.petalyard.previewPage({ text, page: 1 })
    })
    expect(previewed).toMatchObject({ outcome: 'done', value: { page: 1 } })

    // As a file manager opens it while the program runs.
    const again = start([second])
    expect(await again.ended).toBe(0)
    const other = await shown(1)
    await eventually(async () =>
      expect(await other.getByRole('textbox', { name: 'Title' }).inputValue()).toBe('Orchard'),
    )
    app.child.kill('SIGTERM')
    expect(await app.ended).toBe(0)
  })

  it('says that it was updated when another takes its place, keeps everything, and opens nothing of the other', async () => {
    const first = await project('Hedgerow')
    const app = start(['--remote-debugging-port=0', first])
    const page = await shown(0)
    const title = page.getByRole('textbox', { name: 'Title' })
    await eventually(async () => expect(await title.inputValue()).toBe('Hedgerow'))

    // As a package manager puts it there: under another name first. Its content could not even be read.
    const archive = join(home.path, 'program', 'resources', 'app.asar')
    const former = await readFile(archive)
    const put = async (bytes: Uint8Array) => {
      await writeFile(`${archive}.new`, bytes)
      await rename(`${archive}.new`, archive)
    }
    await put(Buffer.alloc(former.length - 1, 'another'))
    try {
      await page.getByRole('alert').filter({ hasText: 'Petalyard was updated while it ran.' }).waitFor()
      await title.fill('Hedgerow in June')
      await title.press('Enter')
      await eventually(async () => expect(titleOf(await readFile(first, 'utf8'))).toBe('Hedgerow in June'))
      await page.evaluate(() => window.petalyard.newProject({ from: 'blank' }))
      const other = await eventually(async () => {
        const all = await windows()
        expect(all.length).toBe(2)
        return all[1]!
      })
      await other.getByRole('heading', { name: 'Petalyard was updated while it ran.' }).waitFor()
      app.child.kill('SIGTERM')
      expect(await app.ended).toBe(0)
    } finally {
      await put(former)
    }
  })
})
