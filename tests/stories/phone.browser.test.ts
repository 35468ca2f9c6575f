/** The page for a phone: exported from the window, used on a phone without a network, its marks brought home. */
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { eventually } from '../src-main/documents/session/world'
import { GOOD_PRACTICE, violationsOf } from './access'
import { startChromium } from './browser'
import { Hands } from './hands'
import type { OpenedWindow } from './opened'
import { example, openWindow } from './opened'

const PHONE = {
  viewport: { width: 390, height: 844 },
  hasTouch: true,
  isMobile: true,
  deviceScaleFactor: 2,
} as const

let opened: OpenedWindow
let window: Page
let phone: BrowserContext
let page: Page
let address: string
const trouble: string[] = []

beforeAll(async () => {
  opened = await openWindow({ files: example('market-stall-throw'), acceptDownloads: true })
  window = opened.page
  phone = await (await startChromium()).newContext({ ...PHONE, offline: true })
  page = await phone.newPage()
  page.on('pageerror', (error) => trouble.push(error.message))
  page.on('console', (message) => message.type() === 'error' && trouble.push(message.text()))
  page.on('request', (request) => request.url().startsWith('file:') || trouble.push(request.url()))
})
afterAll(async () => {
  await phone?.close()
  await opened?.close()
})

const progress = () => page.getByRole('status').first().textContent()
const home = () => page.getByLabel('Your marks as text').inputValue()
const shownAcross = async (): Promise<number> =>
  Number((await page.locator('#whole').getAttribute('viewBox'))!.split(' ')[2])
/** Where a motif stands on the screen. */
const placeOf = (label: string): Promise<{ x: number; y: number }> =>
  page.evaluate((wanted) => {
    const texts = [...document.querySelectorAll('#drawing text[font-weight]')]
    const { left, top, width, height } = texts
      .find(({ textContent }) => textContent === wanted)!
      .getBoundingClientRect()
    return { x: left + width / 2, y: top + height / 2 }
  }, label)

describe('the page for a phone', () => {
  it('is exported from the window as one file', async () => {
    const hands = new Hands(window)
    await hands.go('Paper')
    const [download] = await Promise.all([
      window.waitForEvent('download'),
      window.getByRole('button', { name: 'Page for a phone' }).click(),
    ])
    expect(download.suggestedFilename()).toBe('market-stall-throw for a phone.html')
    const path = join(opened.folder, 'page.html')
    await download.saveAs(path)
    address = pathToFileURL(path).href
  })

  it('shows by touch how a motif is joined, and marks it', async () => {
    await page.goto(address)
    expect(await progress()).toBe('0 of 238 motifs made')
    const { x, y } = await placeOf('3')
    await page.touchscreen.tap(x, y)
    const card = page.locator('#card')
    await card.getByRole('heading', { name: 'Motif 3' }).waitFor()
    expect(await card.textContent()).toMatch(/row 1, motif 3 · C · Chard/)
    expect(await card.getByRole('listitem').allTextContents()).toEqual(
      expect.arrayContaining([expect.stringMatching(/^Petal \d: join to 2, /)]),
    )
    await card
      .getByRole('img', { name: 'Motif 3 and what is round it; places where it is joined are ringed' })
      .waitFor()
    await card.getByLabel('Made').tap()
    expect(await progress()).toBe('1 of 238 motifs made')
    await card.getByRole('button', { name: 'Next to make' }).tap()
    await card.getByRole('heading', { name: 'Motif 4' }).waitFor()
  })

  it('zooms with two fingers about what is under them, and comes back to the whole', async () => {
    const whole = await shownAcross()
    await page.evaluate(() => scrollTo(0, 0))
    const box = (await page.locator('#map').boundingBox())!
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
    const session = await phone.newCDPSession(page)
    const touch = (type: string, apart: number | null) =>
      session.send('Input.dispatchTouchEvent', {
        type: type as 'touchStart',
        touchPoints: apart === null ? [] : [-apart, apart].map((dx, id) => ({ x: x + dx, y, id })),
      })
    await touch('touchStart', 30)
    for (const apart of [40, 60, 90]) await touch('touchMove', apart)
    await touch('touchEnd', null)
    await eventually(async () => expect((await shownAcross()) / whole).toBeCloseTo(1 / 3, 1))
    await page.getByRole('button', { name: 'Whole map' }).tap()
    expect(await shownAcross()).toBeCloseTo(whole)
  })

  it('is worked by keyboard alone', async () => {
    await page.getByRole('application').focus()
    await page.keyboard.press('ArrowDown')
    await page.locator('#card').getByRole('heading', { name: 'Motif 25' }).waitFor()
    await page.keyboard.press('Space')
    expect(await progress()).toBe('2 of 238 motifs made')
    await page.keyboard.press('+')
    await page.keyboard.press('0')
    const row = page.getByText('Row 3: 0 of 14 made')
    await row.focus()
    await page.keyboard.press('Enter')
    await page.getByRole('checkbox', { name: /^29 · row 3, motif 1 · D/ }).press('Space')
    await page.getByText('Row 3: 1 of 14 made').waitFor()
  })

  it('keeps marks when it is opened again, and has nothing that keeps somebody out, light and dark', async () => {
    expect(await home()).toBe('1,3 2,4 3,1')
    await page.reload()
    expect(await progress()).toBe('3 of 238 motifs made')
    expect(await home()).toBe('1,3 2,4 3,1')
    await page.getByRole('button', { name: 'Next to make' }).tap()
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme })
      expect(await violationsOf(page, GOOD_PRACTICE), colorScheme).toEqual([])
    }
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(PHONE.viewport.width)
    expect(trouble).toEqual([])
  })

  it('brings its marks home as a text', async () => {
    const hands = new Hands(window)
    await hands.go('Progress')
    await window.getByText('Marks from a phone').click()
    const marks = window.getByLabel('Marks from the phone')
    await marks.fill('7,99')
    await window.getByText('Not in this project: “7,99”.').waitFor()
    await marks.fill(await home())
    await window.getByText('3 new marks, 0 marks already here.').waitFor()
    await window.getByRole('button', { name: 'Mark these as made' }).click()
    await window.getByText('3 of 238 motifs made').first().waitFor()
  })

  it('brings home a mark of the project that was taken away on the phone', async () => {
    const hands = new Hands(window)
    await hands.go('Paper')
    const [download] = await Promise.all([
      window.waitForEvent('download'),
      window.getByRole('button', { name: 'Page for a phone' }).click(),
    ])
    const path = join(opened.folder, 'begun.html')
    await download.saveAs(path)
    await page.goto(pathToFileURL(path).href)
    await page.getByRole('button', { name: 'Clear your marks' }).tap()
    expect(await progress()).toBe('3 of 238 motifs made')
    await page.getByRole('application').focus()
    await page.keyboard.press('ArrowDown')
    const { x, y } = await placeOf('3')
    await page.touchscreen.tap(x, y)
    await page.locator('#card').getByLabel('Made').tap()
    expect(await home()).toBe('marks 2: 2,4 3,1 -1,3')
    await hands.go('Progress')
    await window.getByLabel('Marks from the phone').fill(await home())
    await window.getByText('0 new marks, 1 mark to take away, 2 marks already here.').waitFor()
    await window.getByRole('button', { name: 'Take over these marks' }).click()
    await window.getByText('2 of 238 motifs made').first().waitFor()
  })
})
