/** The first hour of a stranger in a small window: what is to be done next stands in view, and nothing is cut off. */
import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { eventually } from '../src-main/documents/session/world'
import { Hands } from './hands'
import type { OpenedWindow } from './opened'
import { openWindow } from './opened'

const SIZE = { width: 1024, height: 700 } as const

let opened: OpenedWindow
let page: Page

beforeAll(async () => {
  opened = await openWindow({ viewport: SIZE, locale: 'en-GB' })
  page = opened.page
})
afterAll(() => opened?.close())

/** What a pointer in the middle of it would hit is it: it is neither scrolled away nor covered. */
async function isInView(target: Locator): Promise<boolean> {
  return target.evaluate((node) => {
    const { x, y, width, height } = node.getBoundingClientRect()
    const corners = [
      [x + 3, y + 3],
      [x + width - 3, y + height - 3],
      [x + width / 2, y + height / 2],
    ] as const
    return corners.every(([left, top]) => node.contains(document.elementFromPoint(left, top)))
  })
}
const seen = (name: string): Promise<void> =>
  eventually(async () =>
    expect([name, await isInView(page.getByRole('button', { name, exact: true }))]).toEqual([name, true]),
  )

/** Boxes of the frame that are wider inside than they are, and texts that end in "…". */
const cut = (within: string): Promise<readonly string[]> =>
  page.evaluate((selector) => {
    const all = [...document.querySelectorAll<HTMLElement>(`${selector}, ${selector} *`)]
    return all
      .filter((node) => node.clientWidth > 0 && getComputedStyle(node).overflowX !== 'visible')
      .filter((node) => !node.matches('.unseen, input, select, textarea'))
      .filter((node) => node.scrollWidth > node.clientWidth + 1)
      .map((node) => `${node.tagName} ${node.className}: ${node.textContent!.trim().slice(0, 60)}`)
  }, within)

const DAISY = `With a 4 mm hook, make a magic ring.
Rnd 1: Ch 1, 12 sc in ring, sl st to first sc. (12 sc)
Rnd 2: *Ch 3, 2 dc in same st, ch 3, sl st in same st, sl st in next 2 sts; rep from * 5 more times. (6 petals)
Fasten off.`

describe('the first hour, in a window of 1024 × 700', () => {
  it('shows both ways to begin at once, and what Tab reaches is under neither', async () => {
    await page.getByRole('button', { name: 'Start from your own motif' }).click()
    await seen('Start with this motif')
    await seen('Start from its written rounds')
    const field = page.getByRole('textbox', { name: 'Finished length' })
    await field.focus()
    await eventually(async () => expect(await isInView(field)).toBe(true))
    expect(await cut('dialog')).toEqual([])
  })

  it('reads pasted rounds by a button in view, and leads from a rule of thumb to the gauge', async () => {
    const hands = new Hands(page)
    await hands.press('Start from its written rounds')
    await page.getByText('Nothing is arranged yet.').first().waitFor()
    expect(await page.getByRole('region', { name: 'Ledger' }).innerText()).not.toMatch(/0 × 0|warning/)
    await page.getByRole('textbox', { name: /^Paste the rounds/ }).fill(DAISY)
    await seen('Read the rounds')
    await hands.press('Read the rounds')
    await hands.press(/^Enter your (gauge|tension)$/)
    const stitches = page.getByRole('textbox', { name: 'Stitches', exact: true })
    await eventually(async () => expect(await isInView(stitches)).toBe(true))
    await hands.fill('Stitches', '18')
    await hands.fill('Rows', '20')
    await page
      .getByText(/from your (gauge|tension)$/)
      .first()
      .waitFor()
  })

  it('brings the blanket to its size by a button that stands in full', async () => {
    const hands = new Hands(page)
    await hands.go('Arrangement')
    await hands.fill('Target width', '120 cm')
    await hands.fill('Target height', '150 cm')
    const name = /^Change to \d+ motifs in a row/
    // Far off the size, the same stands over the map.
    await page.getByRole('region', { name: 'Target size' }).getByRole('button', { name }).waitFor()
    const change = page.locator('#place-panel').getByRole('button', { name })
    await change.scrollIntoViewIfNeeded()
    expect(await isInView(change)).toBe(true)
    expect(await cut('#place-panel')).toEqual([])
    await change.click()
    await change.waitFor({ state: 'detached' })
    await page.getByRole('button', { name: /^Undo: change to/ }).waitFor()
  })

  it('deals colors out as the stash goes before any is entered, and says where it is', async () => {
    const hands = new Hands(page)
    await hands.go(/^Colou?rs$/)
    await hands.press(/^Add a colou?rway$/)
    await hands.press(/^As the stash goes/, 'radio')
    await page.getByText(/^How much yarn is on hand .* is not known yet/).waitFor()
    expect(await page.getByRole('region', { name: 'Ledger' }).innerText()).not.toMatch(/warning/)
    await hands.press('Enter yarn on hand')
    await page.getByRole('heading', { name: 'Yarn', level: 2 }).waitFor()
  })

  it('takes names longer than its places are wide, and cuts none of them in the ledger', async () => {
    const hands = new Hands(page)
    const long = 'Donaudampfschifffahrtsgesellschaftskapitänsmützenblau'
    await page
      .getByRole('textbox', { name: /^Name of/ })
      .first()
      .fill(long)
    await page.keyboard.press('Enter')
    const ledger = page.getByRole('region', { name: 'Ledger' })
    await ledger.getByText(long).waitFor()
    for (const place of [/^Colou?rs$/, 'Yarn', 'Joins', 'Arrangement']) {
      await hands.go(place)
      await page.evaluate(() => {
        for (const fold of document.querySelectorAll('details')) fold.open = true
      })
      await eventually(async () =>
        expect([String(place), await cut('#place-panel')]).toEqual([String(place), []]),
      )
    }
    expect(await cut('.ledger')).toEqual([])
    expect(await cut('nav')).toEqual([])
  })
})
