/**
 * The window of a laptop at 200 %, where 1440 × 900 are 720 × 450 CSS pixels (WCAG 2.2, 1.4.4 and 1.4.10), and narrower:
 * nothing is cut off, nothing lies under something else, and all of it is reached.
 */
import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { eventually } from '../src-main/documents/session/world'
import { GOOD_PRACTICE, violationsInThemes } from './access'
import { Hands } from './hands'
import type { OpenedWindow } from './opened'
import { example, openWindow } from './opened'

const PLACES = ['Motif', 'Arrangement', 'Joins', 'Colors', 'Yarn', 'Progress', 'Kit', 'Paper'] as const
const SIZES = {
  'of a laptop at 200 %': { width: 720, height: 450 },
  'of a small laptop at 150 %': { width: 853, height: 480 },
  'as narrow as a phone': { width: 360, height: 640 },
  'of 1280 × 1024 at 400 %': { width: 320, height: 256 },
} as const

let opened: OpenedWindow
let page: Page

beforeAll(async () => {
  opened = await openWindow({
    viewport: SIZES['of a laptop at 200 %'],
    files: example('market-stall-throw'),
  })
  page = opened.page
})
afterAll(() => opened?.close())

/** After scrolling to it, a pointer in its middle meets it, and all of it is inside the window. */
const isMet = (target: Locator): Promise<boolean> =>
  target.evaluate((node) => {
    node.scrollIntoView({ block: 'center', inline: 'center' })
    // Of words that break over lines, those on the first.
    const { left, right, top, bottom } = node.getClientRects()[0]!
    const met = document.elementFromPoint((left + right) / 2, (top + bottom) / 2)
    return node.contains(met) && left >= 0 && right <= innerWidth + 1
  })

/** Pairs of parts of the frame that lie over one another, and what is cut off at the side. */
const amiss = (): Promise<readonly string[]> =>
  page.evaluate(() => {
    const parts = ['.frame > header', 'nav', 'section.panel', '.middle', 'aside.hand', '.ledger']
      .map((selector) => [selector, document.querySelector(selector)?.getBoundingClientRect()] as const)
      .filter(([, box]) => box)
    const over = parts.flatMap(([name, a], i) =>
      parts
        .slice(i + 1)
        .filter(([, b]) => a!.left < b!.right - 1 && b!.left < a!.right - 1)
        .filter(([, b]) => a!.top < b!.bottom - 1 && b!.top < a!.bottom - 1)
        .map(([other]) => `${name} over ${other}`),
    )
    const beyond = [...document.querySelectorAll<HTMLElement>('.frame *, dialog *')]
      .filter(
        (node) => node.clientWidth > 0 && !node.closest('.unseen, .skip, .lines, table, [role=application]'),
      )
      .filter((node) => !node.matches('input, select, textarea'))
      .filter((node) => getComputedStyle(node).overflowX !== 'visible')
      .filter((node) => node.scrollWidth > node.clientWidth + 1)
      .map((node) => `${node.tagName} ${node.className} is cut`)
    const wide = document.documentElement.scrollWidth > innerWidth ? ['the window is wider than it is'] : []
    return [...over, ...beyond, ...wide]
  })

const button = (name: string | RegExp): Locator => page.getByRole('button', { name }).first()

describe.each(Object.entries(SIZES))('a window %s', (_, size) => {
  it('has every part of itself beside the others, in every place', async () => {
    const hands = new Hands(page)
    await page.setViewportSize(size)
    for (const place of PLACES) {
      await hands.go(place)
      await page.getByRole('heading', { name: place, level: 2 }).waitFor()
      await eventually(async () => expect([place, await amiss()]).toEqual([place, []]))
    }
    await hands.press('Close Paper')
    await eventually(async () => expect(await amiss()).toEqual([]))
  })

  it('can be reached with a pointer from its first word to its last button', async () => {
    const places = page.getByRole('navigation', { name: 'Places of the job' })
    const wanted: readonly Locator[] = [
      ...(await page.locator('p.sentence .part').all()),
      ...(await places.getByRole('button').all()),
      button('Menu'),
      button('As a table'),
      button('Zoom in'),
      page.getByText('Mark made', { exact: true }),
      button(/^\d+ notes?$/),
      button('6 yarns'),
      button('Print the map…'),
      page.getByRole('application'),
    ]
    for (const one of wanted) expect([String(one), await isMet(one)]).toEqual([String(one), true])
  })

  it('keeps a drawing that can be worked on', async () => {
    const { width, height } = (await page.getByRole('application').boundingBox())!
    expect(width).toBeGreaterThanOrEqual(Math.min(500, size.width - 2))
    expect(height).toBeGreaterThanOrEqual(200)
  })
})

describe('at 200 %', () => {
  it('opens the yarns of the ledger, and says in it what a change would come to', async () => {
    await page.setViewportSize(SIZES['of a laptop at 200 %'])
    const ledger = page.getByRole('region', { name: 'Ledger' })
    await button('6 yarns').click()
    expect(await isMet(ledger.getByText('Garlic', { exact: true }))).toBe(true)
    await button('Hide yarns').click()
    await page.locator('p.sentence .part').first().focus()
    await page.keyboard.press('ArrowUp')
    await ledger
      .getByText(/^\+[\d.]+ (g|skeins?) \w+$/)
      .first()
      .waitFor()
    await page.keyboard.press('Escape')
  })

  it('shows all commands of the menu, and every dialog to its end', async () => {
    const hands = new Hands(page)
    await hands.press('Menu')
    expect(await isMet(button(/^Settings/))).toBe(true)
    await hands.press(/^Settings/)
    for (const dialog of ['Settings', 'How to…', 'Keys'] as const) {
      if (dialog !== 'Settings') {
        await hands.press('Menu')
        await page.locator('.menu').getByRole('button', { name: dialog }).click()
      }
      const shown = page.getByRole('dialog', { name: dialog })
      await shown.waitFor()
      await eventually(async () => expect([dialog, await amiss()]).toEqual([dialog, []]))
      expect([dialog, await isMet(shown.locator('.body > :last-child > :last-child'))]).toEqual([
        dialog,
        true,
      ])
      await shown.getByRole('button', { name: 'Close', exact: true }).click()
    }
  })

  it('asks for an own motif, and reads written rounds, with what is next in view', async () => {
    const fresh = await openWindow({ viewport: SIZES['of a laptop at 200 %'] })
    const [before, hands] = [page, new Hands(fresh.page)]
    page = fresh.page
    try {
      await hands.press('Start from your own motif')
      // What comes while a button is pressed can move it from under the mouse: the pictures are waited for.
      await page.getByText(/\d motifs? makes? /).waitFor()
      for (const name of ['Start with this motif', 'Start from its written rounds'])
        expect([name, await isMet(button(name))]).toEqual([name, true])
      expect(await amiss()).toEqual([])
      await hands.press('Start from its written rounds')
      await page
        .getByRole('textbox', { name: /^Paste the rounds/ })
        .fill(
          'Rnd 1: Ch 1, 12 sc in a ring, sl st to first sc. (12 sc)\nRnd 2: Ch 1, 2 sc in each st around. (24 sc)',
        )
      expect(await isMet(button('Read the rounds'))).toBe(true)
      await hands.press('Read the rounds')
      const round = page.getByRole('textbox', { name: 'Round 2', exact: true })
      await round.waitFor()
      expect(await isMet(round)).toBe(true)
      expect(await isMet(button('Add a round'))).toBe(true)
      expect(await amiss()).toEqual([])
    } finally {
      page = before
      await fresh.close()
    }
  })

  it('keeps nobody out', async () => {
    expect(await violationsInThemes(page, GOOD_PRACTICE)).toEqual([])
    await new Hands(page).go('Arrangement')
    expect(await violationsInThemes(page, GOOD_PRACTICE)).toEqual([])
  })
})
