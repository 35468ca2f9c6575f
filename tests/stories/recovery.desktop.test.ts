import { readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { runs } from '../runs'
import { projectText, titleOf } from '../src-main/documents/session/world'
import type { Desktop } from './desktop'
import { makeFolder, startDesktop } from './desktop'

/** In each place; `npm run faults` asks for more. */
const KILLS = Number(process.env.PETALYARD_KILLS ?? runs(10))
const TIME = 60_000 + KILLS * 10_000
/** What a kill may cost at most (ms). */
const LOSS = 3_000
const EDIT_EVERY = 40

let desktop: Desktop | null = null
let folder: Awaited<ReturnType<typeof makeFolder>>

beforeAll(async () => {
  folder = await makeFolder()
})
afterAll(async () => {
  await desktop?.kill()
  await folder?.forget()
})

/** Edits without pause, as a hand would, handing over at the pace of the window; tells each edit's time. */
async function editOnAndOn(page: Page, everyMs: number): Promise<void> {
  await page.evaluate(async (pace) => {
    const opened = await window.petalyard.currentProject()
    if (opened.outcome !== 'done') throw new Error(opened.outcome)
    let revision = opened.value.nextRevision
    const project = JSON.parse(opened.value.text) as object
    // One edit is handed over before the clock runs: on a busy machine the first one may take its time.
    const first = JSON.stringify({ ...project, title: String(Date.now()) })
    await window.petalyard.keepProject({ revision: revision++, text: first })
    const hand = { edit: Date.now(), at: 0 }
    Object.assign(globalThis, { hand })
    setInterval(() => {
      hand.edit = Date.now()
    }, pace)
    setInterval(() => {
      const text = JSON.stringify({ ...project, title: String(hand.edit), notes: 'x'.repeat(30_000) })
      void window.petalyard.keepProject({ revision: revision++, text })
    }, 300)
  }, everyMs)
}

/** Ends the process after a while that a generator with a seed chooses, so that every run tries other moments. */
function* moments(seed: number): Generator<number> {
  for (let state = seed; ;) {
    state = (state * 1_103_515_245 + 12_345) % 2 ** 31
    yield 350 + (state % 900)
  }
}

const pause = moments(7)

/**
 * Edits and kills, over and over, each time going on in what was reopened. Whatever moment the kill hits, the
 * edit that reopens must be younger than `LOSS`.
 */
async function killWhileEditing(
  place: 'app' | 'file',
  files: readonly string[],
  kills: number,
): Promise<void> {
  desktop = await startDesktop(folder.path, files)
  for (let kill = 1; kill <= kills; kill++) {
    await editOnAndOn(desktop.window, EDIT_EVERY)
    await new Promise((resolve) => setTimeout(resolve, pause.next().value as number))
    const killedAt = Date.now()
    await desktop.kill()
    desktop = await startDesktop(folder.path)
    const opened = await desktop.window.evaluate(() => window.petalyard.currentProject())
    if (opened.outcome !== 'done') throw new Error(`kill ${kill}: the project did not open`)
    expect(killedAt - Number(titleOf(opened.value.text)), `kill ${kill}`).toBeLessThan(LOSS)
    expect(opened.value.keeping, `kill ${kill}`).toMatchObject({ place, disk: 'same' })
    expect(desktop.app.windows(), `kill ${kill}`).toHaveLength(1)
  }
  await desktop.close()
  desktop = null
}

it(
  `killed ${KILLS} times while editing, a project without a file reopens with all but the last seconds`,
  async () => {
    await killWhileEditing('app', [], KILLS)
  },
  TIME,
)

it(
  `killed ${KILLS} times while editing, a project in a file reopens with all but the last seconds`,
  async () => {
    const path = join(folder.path, 'Months of work.petalyard')
    await writeFile(path, projectText('0'))
    await killWhileEditing('file', [path], KILLS)
    // Closed in peace at last: the file has everything, and nothing waits to be recovered.
    expect(Date.now() - Number(titleOf(await readFile(path, 'utf8')))).toBeLessThan(30_000)
    desktop = await startDesktop(folder.path)
    const listed = await desktop.window.evaluate(() => window.petalyard.listRecent())
    expect(listed.outcome === 'done' && listed.value.some((entry) => entry.interrupted)).toBe(false)
  },
  TIME,
)
