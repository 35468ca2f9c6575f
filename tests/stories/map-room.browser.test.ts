/** The map in a small window: it has room, a few presses of Tab lead to it, and it goes on showing the whole. */
import type { Page } from 'playwright-core'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { OpenedWindow } from './opened'
import { example, openWindow } from './opened'

let opened: OpenedWindow
let page: Page

beforeEach(async () => {
  opened = await openWindow({ viewport: { width: 1024, height: 700 }, files: example('market-stall-throw') })
  page = opened.page
})
afterEach(() => opened.close())

/** Height of the room that the drawing has, in CSS pixels. */
const roomOfMap = async (): Promise<number> => (await page.getByRole('application').boundingBox())!.height

describe('the map at 1024 × 700', () => {
  it('has more than half of the height, also beside an open place', async () => {
    expect(await roomOfMap()).toBeGreaterThan(420)
    const places = page.getByRole('navigation', { name: 'Places of the job' })
    await places.getByRole('button', { name: 'Arrangement' }).click()
    await page.getByRole('heading', { name: 'Arrangement' }).waitFor()
    expect(await roomOfMap()).toBeGreaterThan(400)
  })

  it('stands beside places that keep to their width', async () => {
    const panel = page.locator('#place-panel')
    const beyond = () => panel.evaluate((node) => node.scrollWidth - node.clientWidth)
    const places = page.getByRole('navigation', { name: 'Places of the job' })
    for (const place of await places.getByRole('button').all()) {
      await place.click()
      await panel.waitFor()
      expect(await beyond(), await place.innerText()).toBeLessThanOrEqual(0)
    }
    await places.getByRole('button', { name: 'Arrangement' }).click()
    await page.getByLabel('Fit to').selectOption({ label: 'motifs already made' })
    const piles = page.getByRole('group', { name: /^Of each/ })
    await piles.waitFor()
    expect(await beyond(), 'piles').toBeLessThanOrEqual(0)
    expect(await piles.evaluate((node) => node.scrollWidth - node.clientWidth)).toBeLessThanOrEqual(0)
  })

  it('lies above its legend, which hides no row of it at any zoom', async () => {
    const legend = page.getByRole('list', { name: 'Marks on the map' })
    for (let i = 0; i < 4; i++) {
      const [marks, map] = [
        (await legend.boundingBox())!,
        (await page.getByRole('application').boundingBox())!,
      ]
      expect(map.y + map.height).toBeLessThanOrEqual(marks.y + 0.5)
      await page.getByRole('button', { name: 'Zoom in' }).click()
    }
  })

  it('is reached with two keys from the top', async () => {
    await page.keyboard.press('Tab')
    const link = page.getByRole('button', { name: 'Skip to the map' })
    expect(await link.evaluate((node) => node === document.activeElement)).toBe(true)
    expect((await link.boundingBox())!.width).toBeGreaterThan(80)
    await page.keyboard.press('Enter')
    const map = page.getByRole('application')
    expect(await map.evaluate((node) => node === document.activeElement)).toBe(true)
    await page.keyboard.press('ArrowDown')
    await page.getByRole('heading', { name: /^Motif \d+ row/ }).waitFor()
  })

  it('goes on showing the whole when its room shrinks, whichever motif was taken before', async () => {
    await page.setViewportSize({ width: 1280, height: 800 })
    const zoom = page.getByRole('button', { name: 'Show all' })
    await page.getByRole('application').focus()
    for (let row = 1; row <= 18; row++) await page.keyboard.press('ArrowDown')
    await page.getByRole('heading', { name: /row 17\b/ }).waitFor()
    // The sentence breaks over more lines, and the map gets lower.
    await page.setViewportSize({ width: 1024, height: 700 })
    await expect.poll(() => zoom.innerText()).toBe('100 %')
    const before = await roomOfMap()
    await page.evaluate(() => document.querySelector('p.sentence')!.append(' and so on'.repeat(20)))
    await expect.poll(roomOfMap).toBeLessThan(before)
    await expect.poll(() => zoom.innerText()).toBe('100 %')
  })
})
