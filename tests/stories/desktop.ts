/** Starts the real desktop app for a story: built from the sources, with a data folder of its own. */
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { _electron } from 'playwright-core'
import type { ElectronApplication, Page } from 'playwright-core'
import { findElectron } from '../../scripts/capabilities.mjs'
import { buildDesktop, buildWindow } from '../../scripts/window-build.mjs'

export const projectRoot = fileURLToPath(new URL('../..', import.meta.url))

export interface Desktop {
  readonly app: ElectronApplication
  /** The first window, loaded. */
  readonly window: Page
  readonly folder: string
  close(): Promise<void>
  /** Ends the process at once, as a power cut would. */
  kill(): Promise<void>
}

/** Where the next file that is saved or exported goes: the dialog is answered with it. */
export async function answerSave({ app }: Desktop, filePath: string): Promise<void> {
  await app.evaluate(({ dialog }, path) => {
    dialog.showSaveDialog = (async () => ({
      canceled: false,
      filePath: path,
    })) as unknown as typeof dialog.showSaveDialog
  }, filePath)
}

/** A folder for one story's data; removed by `forget`. */
export async function makeFolder(): Promise<{ readonly path: string; forget(): Promise<void> }> {
  const path = await mkdtemp(join(tmpdir(), 'petalyard-story-'))
  return { path, forget: () => rm(path, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 }) }
}

let built: Promise<unknown> | undefined

/** Builds what is missing; sources are looked at once, not at every start. */
export const build = (): Promise<unknown> => (built ??= buildWindow().then(buildDesktop))

/** What starts the app: a packed program that `PETALYARD_PACKED` names, or Electron with the folder of the sources. */
async function programToStart(): Promise<{ readonly executablePath: string; readonly args: string[] }> {
  const packed = process.env.PETALYARD_PACKED
  if (packed) return { executablePath: packed, args: [] }
  const electron = findElectron()
  if (!electron) throw new Error('there is no Electron binary')
  await build()
  return { executablePath: electron, args: [projectRoot] }
}

/**
 * Only tests run as root, which the sandbox of the system refuses. Without a graphics card Chromium imitates one, which
 * costs a fifth of the processor time of every story; all that we draw is drawn in software just the same.
 */
const ON_TEST_MACHINES = ['--no-sandbox', '--disable-gpu', '--disable-software-rasterizer']

/** Longer than any start takes; what waits longer is lost by the driver (ms). */
const START = 45_000

/** Builds what is missing and starts the app on the data in `folder`, with files to open. */
export async function startDesktop(folder: string, files: readonly string[] = []): Promise<Desktop> {
  try {
    return await startOnce(folder, files)
  } catch (error) {
    // A program that does not start fails again.
    if (!(error instanceof Error) || !['TimeoutError', 'LostWindow'].includes(error.name)) throw error
    return startOnce(folder, files)
  }
}

/** Longer than the driver takes to hear of a window that has long been loaded (ms), and how often that is asked. */
const HEARD = 8_000
const ASKED = 400

/**
 * On a busy machine the driver now and then loses a window that opens while it connects ("Cannot read properties of
 * undefined (reading '_object')" within it), and would wait for it to the end: the program itself knows that it is there.
 */
async function unlessLost(app: ElectronApplication, first: Promise<Page>): Promise<Page> {
  let isOver = false
  const over = () => (isOver = true)
  first.then(over, over)
  for (let loaded = 0; loaded * ASKED < HEARD;) {
    await Promise.race([first, new Promise((resolve) => setTimeout(resolve, ASKED))])
    if (isOver) return first
    const isLoaded = app.evaluate(({ BrowserWindow }) =>
      BrowserWindow.getAllWindows().some(
        ({ webContents }) => webContents.getURL() && !webContents.isLoading(),
      ),
    )
    loaded = (await Promise.race([first.then(() => false), isLoaded.catch(() => false)])) ? loaded + 1 : 0
  }
  throw Object.assign(new Error('the driver lost the window'), { name: 'LostWindow' })
}

async function startOnce(folder: string, files: readonly string[]): Promise<Desktop> {
  const { executablePath, args } = await programToStart()
  const app = await _electron.launch({
    executablePath,
    args: [...args, `--user-data-dir=${folder}`, ...ON_TEST_MACHINES, ...files],
    cwd: projectRoot,
    timeout: START,
  })
  const kill = async (): Promise<void> => {
    const child = app.process()
    const ended = new Promise((resolve) => child.once('exit', resolve))
    child.kill('SIGKILL')
    await ended
  }
  try {
    const window = await unlessLost(app, app.firstWindow({ timeout: START }))
    await window.waitForFunction(() => 'petalyard' in globalThis, undefined, { timeout: START })
    return { app, window, folder, close: () => app.close(), kill }
  } catch (error) {
    await kill()
    throw error
  }
}
