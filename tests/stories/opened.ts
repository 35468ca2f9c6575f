/** A window in a real browser for a story: a folder of its own, the server on it, and the first page, shown. */
import { readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { BrowserContext, BrowserContextOptions, Page } from 'playwright-core'
import type { Project } from '../../shared-types/project'
import { startChromium, startLoopback } from './browser'
import type { Loopback } from './browser'
import { makeFolder, projectRoot } from './desktop'

export interface OpenedWindow {
  /** For the story's files, and for what the program keeps. */
  readonly folder: string
  /** Another one where the story ends it and starts it again. */
  loopback: Loopback
  readonly context: BrowserContext
  readonly page: Page
  close(): Promise<void>
}

interface Wishes extends BrowserContextOptions {
  /** Writes what is opened into the folder; without, the window begins as at a first start. */
  readonly files?: (folder: string) => Promise<string>
  /** What is prepared before the page is there. */
  readonly before?: (page: Page) => Promise<unknown>
}

/** An example in a file of its own, changed where that is wished: what is changed in a window is saved. */
export const example =
  (name: string, change = (project: Project): Project => project, file = `${name}.petalyard`) =>
  async (folder: string): Promise<string> => {
    const text = await readFile(join(projectRoot, 'examples', `${name}.petalyard`), 'utf8')
    return written(change(JSON.parse(text) as Project), file)(folder)
  }

/** Any project in a file. */
export const written =
  (project: object, file = 'opened.petalyard') =>
  async (folder: string): Promise<string> => {
    const path = join(folder, file)
    await writeFile(path, JSON.stringify(project))
    return path
  }

export async function openWindow(wishes: Wishes = {}): Promise<OpenedWindow> {
  const { files, before, ...how } = wishes
  const browser = await startChromium()
  const folder = await makeFolder()
  const loopback = await startLoopback(folder.path, files ? [await files(folder.path)] : [])
  const context = await browser.newContext({
    viewport: { width: 1280, height: 800 },
    reducedMotion: 'reduce',
    ...how,
  })
  const page = await context.newPage()
  await before?.(page)
  const opened: OpenedWindow = {
    folder: folder.path,
    loopback,
    context,
    page,
    close: async () => {
      await context.close()
      await opened.loopback.kill()
      await folder.forget()
    },
  }
  await page.goto(await loopback.nextAddress())
  await page.getByRole('navigation', { name: 'Places of the job' }).waitFor()
  return opened
}
