/**
 * How soon the ledger answers a key press in the built window, beside the same presses in an empty project. Needs a
 * Chromium. Times run from the press, as the browser stamps it, until the new number stands in the ledger; and on to
 * the end of the frame in which it can be seen.
 */
import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Browser, CDPSession, Page } from 'playwright-core'
import type { Project } from '../shared-types/project'
import { findChromium } from '../scripts/capabilities.mjs'
import { startChromium, startLoopback } from '../tests/stories/browser'
import { benchProject } from './drawing-page/project'
import { spread } from './measure'
import type { Spread } from './measure'

/** Presses of one field one way and back, and ms from one to the next: a hand that looks, and a key that is held. */
const PRESSES = 12
const PACES = { hand: 250, held: 33 } as const
/** ms. A number that has not come after this long never comes. */
const MOST_WAIT = 10_000

/** Where each field stands, and what it changes. */
const FIELDS = [
  { place: 'Arrangement', label: 'Rows' },
  { place: 'Joins', label: 'Chains between' },
  { place: 'Motif', label: 'Tip to tip' },
] as const

/** ms. `shown`: until the frame with the number is drawn; `busy`: the main thread for each press of a hand. */
interface Response {
  /** The first press in a window that was just opened, the middle one of several windows. */
  readonly first: number
  readonly hand: Spread
  readonly held: Spread
  readonly shown: Spread
  readonly busy: number
}

interface ResponseResult {
  readonly what: string
  readonly response: Response
}

/** What is measured in the page: a press each, with when its number came and was seen. */
interface Answered {
  readonly pressed: number
  /** What the field said after it. */
  readonly value: number
  came: number
  seen: number
}

/** In the page. */
declare const presses: Answered[]

/**
 * Text, since functions in it must not be renamed or wrapped on the way to the page. A press of rows is answered by a
 * ledger that tells as many motifs as they hold, or by one that has gone further; of other fields, by the next change
 * of the ledger, so that these must wait for each other. Where nothing follows from a number, the field answers.
 */
const WATCH = (columns: number | null) => `{
  globalThis.presses = []
  const later = (work) => {
    const channel = new MessageChannel()
    channel.port1.onmessage = work
    channel.port2.postMessage(null)
  }
  const ledger = document.querySelector('.ledger')
  const motifs = () => Number(/Motifs\\s*([\\d,]+)/.exec(ledger.innerText)[1].replaceAll(',', ''))
  const isAnswered = ({ label, step, value }) =>
    label !== 'Rows' || ${columns} === null || (motifs() - value * ${columns}) * step >= 0
  const answered = () => {
    const now = performance.now()
    const open = presses.filter((press) => Number.isNaN(press.came) && isAnswered(press))
    for (const press of open) press.came = now
    requestAnimationFrame(() => later(() => {
      for (const press of open) press.seen = performance.now()
    }))
  }
  addEventListener('keydown', (event) => {
    const step = { ArrowUp: 1, ArrowDown: -1 }[event.key]
    if (!step) return
    const { target } = event
    const before = target.value
    const press = { pressed: event.timeStamp, came: NaN, seen: NaN, value: NaN, step, label: target.labels[0].innerText }
    presses.push(press)
    later(() => {
      press.value = Number(target.value)
      if (${columns === null} && target.value !== before) answered()
    })
  }, { capture: true })
  if (${columns !== null})
    new MutationObserver(answered).observe(ledger, { subtree: true, childList: true, characterData: true })
}`

function project(columns: number, rows: number): Project {
  return {
    ...benchProject({ columns, rows }),
    title: 'Response',
    joining: { rule: 'bridge', bridgeChains: 3 },
  }
}

/** A project in which nothing follows from a number: what the window and the machine take by themselves. */
const EMPTY: Project = {
  format: 'petalyard-project',
  version: 1,
  title: 'Empty',
  layout: { kind: 'blanket', rows: 9 },
}

/** The built window with a project in it, at rest. */
async function openResponsePage(
  browser: Browser,
  wish: Project,
): Promise<{ page: Page; close: () => Promise<void> }> {
  const folder = await mkdtemp(join(tmpdir(), 'petalyard-bench-'))
  const file = join(folder, 'Response.petalyard')
  await writeFile(file, JSON.stringify(wish))
  const loopback = await startLoopback(join(folder, 'own'), [file])
  const context = await browser.newContext({ viewport: { width: 1366, height: 820 } })
  const close = async () => {
    await context.close()
    await loopback.kill()
    await rm(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 })
  }
  try {
    const page = await context.newPage()
    await page.goto(await loopback.nextAddress())
    await page.locator('.ledger').waitFor()
    return { page, close }
  } catch (error) {
    await close()
    throw error
  }
}

async function reachField(page: Page, { place, label }: { place: string; label: string }): Promise<void> {
  const button = page
    .getByRole('navigation', { name: 'Places of the job' })
    .getByRole('button', { name: place, exact: true })
  if ((await button.getAttribute('aria-expanded')) !== 'true') await button.click()
  await page
    .getByRole('textbox', { name: new RegExp(`^${label}`) })
    .first()
    .focus()
  // At rest: everything of the start is drawn, kept and proposed.
  await page.waitForTimeout(2_500)
}

/** Presses a field's arrow keys, there and back, and tells of each when its number came. */
async function press(page: Page, count: number, pace: keyof typeof PACES): Promise<Answered[]> {
  await page.evaluate(() => void presses.splice(0))
  for (const key of ['ArrowUp', 'ArrowDown']) {
    for (let i = 0; i < count; i++) {
      const start = performance.now()
      await page.keyboard.press(key)
      if (pace === 'hand') await answered(page)
      await page.waitForTimeout(Math.max(0, PACES[pace] - (performance.now() - start)))
    }
    await answered(page)
    await page.waitForTimeout(1_000)
  }
  return page.evaluate(() => presses)
}

const answered = (page: Page) =>
  page.waitForFunction(() => presses.every(({ seen }) => !Number.isNaN(seen)), null, { timeout: MOST_WAIT })

/** CPU time of the main thread so far, in ms. */
async function busyTime(session: CDPSession): Promise<number> {
  const { metrics } = (await session.send('Performance.getMetrics')) as {
    metrics: { name: string; value: number }[]
  }
  return (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? NaN) * 1000
}

async function respond(browser: Browser, wish: Project, columns: number | null): Promise<Response> {
  const firsts: number[] = []
  const hand: Answered[] = []
  const held: Answered[] = []
  let busy = 0
  for (const field of columns === null ? FIELDS.slice(0, 1) : FIELDS) {
    // A window of its own for each: only there is a press the first.
    const { page, close } = await openResponsePage(browser, wish)
    try {
      await reachField(page, field)
      await page.evaluate(WATCH(columns))
      await page.keyboard.press('ArrowUp')
      await answered(page)
      firsts.push(await page.evaluate(() => presses[0]!.came - presses[0]!.pressed))
      await page.waitForTimeout(1_000)
      const session = await page.context().newCDPSession(page)
      await session.send('Performance.enable', { timeDomain: 'threadTicks' })
      const before = await busyTime(session)
      hand.push(...(await press(page, PRESSES, 'hand')))
      busy += (await busyTime(session)) - before
      if (field.label === 'Rows') held.push(...(await press(page, PRESSES, 'held')))
    } finally {
      await close()
    }
  }
  return {
    first: spread(firsts).median,
    hand: spread(hand.map(({ pressed, came }) => came - pressed)),
    held: spread(held.map(({ pressed, came }) => came - pressed)),
    shown: spread(hand.map(({ pressed, seen }) => seen - pressed)),
    busy: busy / hand.length,
  }
}

/** The empty project first; null where there is no Chromium. */
export async function benchResponse(): Promise<readonly [ResponseResult, ...ResponseResult[]] | null> {
  if (!findChromium()) return null
  const browser = await startChromium()
  try {
    return [
      { what: 'empty project', response: await respond(browser, EMPTY, null) },
      { what: '300 motifs', response: await respond(browser, project(20, 15), 20) },
      { what: '2,500 motifs', response: await respond(browser, project(50, 50), 50) },
      { what: '10,000 motifs', response: await respond(browser, project(100, 100), 100) },
    ]
  } finally {
    await browser.close()
  }
}

/** The result as lines of text. */
function describeResponse(results: readonly ResponseResult[]): string[] {
  const ms = ({ median, p95 }: Spread) => `${median.toFixed(0)} / ${p95.toFixed(0)} ms`
  return results.map(({ what, response: { first, hand, held, shown, busy } }) =>
    [
      `${what.padEnd(14)} first ${first.toFixed(0)} ms, then ${ms(hand)}, key held ${ms(held)}`,
      `seen ${ms(shown)}, main thread ${busy.toFixed(0)} ms a press (median / 95th percentile)`,
    ].join('; '),
  )
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const results = await benchResponse()
  console.log(results ? describeResponse(results).join('\n') : 'response: no Chromium here, not measured')
}
