/** Pictures and several editions saved from a real browser, by keyboard. */
import { readFile } from 'node:fs/promises'
import { unzipSync } from 'fflate'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { readPng } from '../src-main/paper/read-png'
import { violationsOf, WCAG } from './access'
import { Hands } from './hands'
import type { OpenedWindow } from './opened'
import { example, openWindow } from './opened'

let opened: OpenedWindow
let page: Page

beforeAll(async () => {
  opened = await openWindow({ files: example('orchard-wall-throw'), acceptDownloads: true })
  page = opened.page
})
afterAll(() => opened?.close())

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
