/** Pictures and several editions saved from a real browser, by keyboard. */
import { copyFile, readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { unzipSync } from 'fflate'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { readPng } from '../src-main/paper/read-png'
import { violationsOf, WCAG } from './access'
import type { Loopback } from './browser'
import { startChromium, startLoopback } from './browser'
import { makeFolder, projectRoot } from './desktop'
import { Hands } from './hands'

let browser: Browser
let context: BrowserContext
let folder: Awaited<ReturnType<typeof makeFolder>>
let loopback: Loopback
let page: Page

beforeAll(async () => {
  browser = await startChromium()
  folder = await makeFolder()
  const file = join(folder.path, 'orchard-wall-throw.petalyard')
  await copyFile(join(projectRoot, 'examples', 'orchard-wall-throw.petalyard'), file)
  loopback = await startLoopback(folder.path, [file])
  context = await browser.newContext({
    viewport: { width: 1280, height: 800 },
    reducedMotion: 'reduce',
    acceptDownloads: true,
  })
  page = await context.newPage()
  await page.goto(await loopback.nextAddress())
  await page.getByRole('application').waitFor()
})
afterAll(async () => {
  await context?.close()
  await loopback?.kill()
  await folder?.forget()
})

async function saved(): Promise<{ name: string; bytes: Uint8Array }> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save the picture…' }).press('Enter'),
  ])
  return { name: download.suggestedFilename(), bytes: new Uint8Array(await readFile(await download.path())) }
}

it('saves the whole on white, and a motif on nothing', async () => {
  const hands = new Hands(page)
  await hands.go('Paper')
  await page.locator('summary').filter({ hasText: 'Save a picture' }).press('Enter')
  const width = page.getByLabel('Width in pixels')
  await width.fill('640')
  await width.press('Enter')
  const whole = await saved()
  expect(whole.name).toBe('orchard-wall-throw picture.png')
  const picture = readPng(whole.bytes)
  expect([picture.width, picture.at(0, 0)]).toEqual([640, { colour: '#ffffff', alpha: 255 }])
  await page.getByText(/^Exported: orchard-wall-throw picture\.png in your downloads\.$/).waitFor()

  await page.getByLabel('Picture of').selectOption({ label: 'Motif: Layered six-petal flower' })
  await page.getByLabel('Shown in').selectOption({ label: 'B Pink blossom' })
  await page.getByLabel('Nothing').check()
  expect(await violationsOf(page, WCAG)).toEqual([])
  const motif = await saved()
  expect(motif.name).toBe('orchard-wall-throw motif.png')
  expect(readPng(motif.bytes).at(0, 0).alpha).toBe(0)
})

it('saves a chart as SVG, and says why a picture is too large', async () => {
  await page.getByLabel('Picture of').selectOption({ label: 'Chart: Leaf' })
  await page.getByLabel('SVG').check()
  const chart = await saved()
  expect(chart.name).toBe('orchard-wall-throw chart.svg')
  expect(new TextDecoder().decode(chart.bytes)).toContain('<title>Leaf: symbol chart</title>')
  const width = page.getByLabel('Width in pixels')
  await width.fill('12000')
  await width.press('Enter')
  await page.getByRole('button', { name: 'Save the picture…' }).press('Enter')
  await page.getByText(/pixels are too many; it can be [\d,]+ pixels wide/).waitFor()
})

it('saves several editions in one ZIP, and says how many', async () => {
  await page.locator('summary').filter({ hasText: 'Several editions' }).press('Enter')
  const group = page.getByRole('group', { name: 'Stitch names' }).getByRole('checkbox')
  await group.nth(1).press('Space')
  await page.getByRole('checkbox', { name: 'Black ink' }).press('Space')
  await page.getByRole('button', { name: 'Save 1 PDF in a ZIP…' }).waitFor()
  await page.getByRole('checkbox', { name: 'Left-handed' }).press('Space')
  await page.getByRole('checkbox', { name: 'Right-handed' }).press('Space')
  const [download] = await Promise.all([
    page.waitForEvent('download', { timeout: 120_000 }),
    page.getByRole('button', { name: 'Save 2 PDFs in a ZIP…' }).press('Enter'),
  ])
  expect(download.suggestedFilename()).toBe('orchard-wall-throw editions.zip')
  const files = unzipSync(new Uint8Array(await readFile(await download.path())))
  expect(Object.keys(files)).toEqual([
    'Orchard wall throw-us-right-a4-ink.pdf',
    'Orchard wall throw-us-left-a4-ink.pdf',
  ])
  // They stay ticked for the next time.
  await page.getByRole('button', { name: 'Save 2 PDFs in a ZIP…' }).waitFor()
  expect(await page.getByRole('checkbox', { name: 'Left-handed' }).isChecked()).toBe(true)
  expect(await violationsOf(page, WCAG)).toEqual([])
})
