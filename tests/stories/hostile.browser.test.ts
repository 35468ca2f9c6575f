/** What nobody means to type, or to open, in a browser. */
import { readFile } from 'node:fs/promises'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from 'vitest'
import { eventually } from '../src-main/documents/session/world'
import type { Loopback } from './browser'
import { startChromium, startLoopback } from './browser'
import { makeFolder } from './desktop'
import {
  endlessFile,
  harmKept,
  isThereAgain,
  oddFile,
  offersWaysOn,
  showsOddFile,
  typeNonsense,
  writtenFile,
} from './hostile'

let browser: Browser
let context: BrowserContext
let folder: Awaited<ReturnType<typeof makeFolder>>
let own: Awaited<ReturnType<typeof makeFolder>>
let loopback: Loopback | null = null

beforeAll(async () => {
  browser = await startChromium()
})
afterAll(() => browser?.close())
beforeEach(async () => {
  folder = await makeFolder()
  own = await makeFolder()
  context = await browser.newContext()
})
afterEach(async () => {
  await context.close()
  await loopback?.kill()
  loopback = null
  await folder.forget()
  await own.forget()
})

async function start(files: readonly string[] = []): Promise<Page> {
  await loopback?.kill()
  loopback = await startLoopback(own.path, files)
  const page = await context.newPage()
  await page.goto(await loopback.nextAddress())
  return page
}

it('whatever is typed into the written rounds leaves the project open, and it opens again', async () => {
  const page = await start([await writtenFile(folder.path)])
  await typeNonsense(page)
  await page.close()
  await isThereAgain(await start())
}, 90_000)

it('a file with odd numbers opens without them, and one with a number that is none is refused', async () => {
  await showsOddFile(await start([await oddFile(folder.path)]))
  const endless = await endlessFile(folder.path)
  const before = await readFile(endless, 'utf8')
  await start([endless])
  await eventually(async () => expect(loopback?.said()).toMatch(/joining\.bridgeChains/))
  expect(await readFile(endless, 'utf8')).toBe(before)
}, 90_000)

it('a kept project that cannot be read is offered with its text, beside every other way on', async () => {
  const first = await start()
  const title = first.getByRole('textbox', { name: 'Title' })
  await title.fill('Kept')
  await title.press('Enter')
  await eventually(async () =>
    expect(await first.locator('header .kept').innerText()).toMatch(/kept in the app/),
  )
  await loopback?.kill()
  const text = await harmKept(own.path)
  const page = await start()
  await offersWaysOn(page, text)
  const downloaded = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save a copy', exact: true }).click()
  expect(await readFile(await (await downloaded).path(), 'utf8')).toBe(text)
}, 90_000)
