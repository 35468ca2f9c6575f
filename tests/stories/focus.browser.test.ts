/** The keyboard in a real window: every stop of Tab is seen with its ring, none is a trap, and none loses its place. */
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { eventually } from '../src-main/documents/session/world'
import { amissIn, smallIn, walk } from './focus'
import { Hands } from './hands'
import type { OpenedWindow } from './opened'
import { example, openWindow } from './opened'

let opened: OpenedWindow
let page: Page
let hands: Hands

beforeAll(async () => {
  opened = await openWindow({ files: example('market-stall-throw') })
  page = opened.page
  hands = new Hands(page)
})
afterAll(() => opened?.close())

/** What has the keyboard, by its name. */
const focused = (): Promise<string> =>
  page.evaluate(() => {
    const node = document.activeElement
    return (node?.getAttribute('aria-roledescription') ?? node?.textContent ?? '').trim()
  })
const isOn = (words: RegExp): Promise<void> => eventually(async () => expect(await focused()).toMatch(words))

const places = () => page.getByRole('navigation', { name: 'Places of the job' })

describe('every stop of Tab (WCAG 2.2, 2.4.7 and 2.4.11)', () => {
  it.each(['Motif', 'Arrangement', 'Joins', 'Colors', 'Yarn', 'Progress', 'Kit', 'Paper'])(
    'is seen with its ring in %s, with all of it unfolded',
    async (place) => {
      await hands.go(place)
      await page.getByRole('heading', { name: place, level: 2 }).waitFor()
      await page.evaluate(() => {
        for (const fold of document.querySelectorAll('details')) fold.open = true
      })
      const stops = await walk(page)
      expect(amissIn(stops)).toEqual([])
      expect(smallIn(stops)).toEqual([])
      expect(stops.length).toBeGreaterThan(3)
    },
  )

  it('is seen with its ring in the settings', async () => {
    await page.getByRole('application').focus()
    await page.keyboard.press('Control+,')
    await page.getByRole('dialog', { name: 'Settings' }).waitFor()
    const stops = await walk(page)
    expect(amissIn(stops)).toEqual([])
    expect(smallIn(stops)).toEqual([])
    await page.keyboard.press('Escape')
  })

  it.each(['light', 'dark'] as const)('is seen with its ring in help, keys and menu, %s', async (theme) => {
    await page.evaluate((wished) => window.petalyard.changeSettings({ theme: wished }), theme)
    await page.locator(`html[data-theme=${theme}]`).waitFor({ state: 'attached' })
    const amiss: string[] = []
    for (const [name, key] of [
      ['How to…', 'F1'],
      ['Keys', '?'],
    ] as const) {
      await page.getByRole('application').focus()
      await page.keyboard.press(key)
      await page.getByRole('dialog', { name }).waitFor()
      const stops = await walk(page)
      amiss.push(...amissIn(stops), ...smallIn(stops))
      await page.keyboard.press('Escape')
    }
    await page.getByRole('button', { name: 'Menu' }).click()
    const entries = await walk(page)
    expect(entries.some(({ name }) => name.includes('Settings'))).toBe(true)
    amiss.push(...amissIn(entries), ...smallIn(entries))
    await page.keyboard.press('Escape')
    expect(amiss).toEqual([])
  })
})

describe('the keyboard goes back', () => {
  it('to what opened a dialog, also after a click on its plain text', async () => {
    await page.getByRole('application').focus()
    await page.keyboard.press('?')
    await page.getByRole('dialog', { name: 'Keys' }).getByRole('heading', { name: 'Keys', level: 2 }).click()
    await page.keyboard.press('Escape')
    await isOn(/^map$/)
  })

  it('to the list of places when one is closed, by its button or by Escape', async () => {
    await hands.go('Yarn')
    await page.getByRole('button', { name: 'Close Yarn' }).press('Enter')
    await isOn(/^Yarn/)
    await places().getByRole('button', { name: 'Joins' }).press('Enter')
    await page.locator('#place-panel input').first().focus()
    await page.keyboard.press('Escape')
    await isOn(/^Joins/)
  })
})

describe('where the system forces its colors', () => {
  it('still shows what is chosen, which place is open, and the yarns', async () => {
    await page.emulateMedia({ forcedColors: 'active' })
    await hands.go('Arrangement')
    const ground = (selector: string): Promise<string> =>
      page
        .locator(selector)
        .first()
        .evaluate((node) => getComputedStyle(node).backgroundColor)
    const chosen = await ground('#place-panel label.chosen')
    expect(chosen).not.toBe(await ground('#place-panel label:not(.chosen)'))
    expect(await ground('nav button.open')).not.toBe(await ground('nav button:not(.open)'))
    const bars = await page
      .locator('.ledger .bar .lacking')
      .evaluateAll((all) => all.map((node) => getComputedStyle(node).backgroundColor))
    expect(new Set(bars).size).toBeGreaterThan(1)
    await page.emulateMedia({ forcedColors: 'none' })
  })
})
