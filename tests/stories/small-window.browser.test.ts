/** A small window in a real browser: the map has the room, keys and buttons say the same, names are those of files. */
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { eventually } from '../src-main/documents/session/world'
import { Hands } from './hands'
import type { OpenedWindow } from './opened'
import { example, openWindow } from './opened'

const SIZE = { width: 1024, height: 700 } as const

let opened: OpenedWindow
let page: Page

beforeAll(async () => {
  opened = await openWindow({
    viewport: SIZE,
    acceptDownloads: true,
    files: example('market-stall-throw', (project) => ({ ...project, title: '' }), 'throw.json'),
  })
  page = opened.page
})
afterAll(() => opened?.close())

const said = (): Promise<string> =>
  page.evaluate(() =>
    document.querySelector('body > #app > [aria-live], #app [aria-live="polite"]')!.textContent!.trim(),
  )
const says = (words: string | RegExp): Promise<void> =>
  eventually(async () => expect(await said()).toMatch(words))

const mapHeight = async (): Promise<number> => (await page.getByRole('application').boundingBox())!.height

describe('a window of 1024 × 700', () => {
  it('gives the map half of its height, two keys away, and calls the project by its file', async () => {
    expect(await page.title()).toBe('throw – Petalyard')
    expect(await page.getByRole('textbox', { name: 'Title' }).getAttribute('placeholder')).toBe('throw')
    await page
      .getByRole('heading', { level: 1, name: 'throw, a Petalyard project' })
      .waitFor({ state: 'attached' })
    expect(await mapHeight()).toBeGreaterThanOrEqual(SIZE.height / 2)

    await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur())
    await page.keyboard.press('Tab')
    await page.keyboard.press('Enter')
    expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-roledescription'))).toBe(
      'map',
    )

    const hands = new Hands(page)
    await hands.go('Paper')
    const downloading = page.waitForEvent('download')
    await hands.press('Export the map as PDF')
    expect((await downloading).suggestedFilename()).toBe('throw map.pdf')
    await hands.press('Close Paper')
  })

  it('fits the map anew when the sentence grows a line', async () => {
    const middle = page.locator('.middle')
    const height = async (): Promise<number> => (await middle.boundingBox())!.height
    const room = await height()
    const zoom = page.getByRole('button', { name: 'Show all' })
    // The number on the dimension line stands beside the middle of what is drawn.
    const number = page.locator('.stage .number.upright')
    const place = async (): Promise<number> => (await number.boundingBox())!.y
    const before = await place()
    await page.evaluate(() => {
      document.querySelector<HTMLElement>('p.sentence')!.style.paddingBottom = '160px'
    })
    await eventually(async () => expect(await height()).toBeLessThan(room - 60))
    await eventually(async () => expect(await place()).not.toBeCloseTo(before, 0))
    expect(await zoom.textContent()).toContain('100')
    const box = (await number.boundingBox())!
    const stage = (await page.locator('.stage').boundingBox())!
    expect(box.y).toBeGreaterThan(stage.y)
    expect(box.y + box.height).toBeLessThan(stage.y + stage.height)
    await page.evaluate(() => document.querySelector<HTMLElement>('p.sentence')!.removeAttribute('style'))
    await eventually(async () => expect(await height()).toBeCloseTo(room, 0))
    await eventually(async () => expect(await place()).toBeCloseTo(before, 0))
  })

  it('says the same of an act by key and by button', async () => {
    await page.getByRole('application').focus()
    await page.keyboard.press('ArrowRight')
    await page.keyboard.press('Shift+Space')
    await says(/^14 motifs selected/)
    await page.keyboard.press('Escape')
    await page.keyboard.press('ArrowRight')
    await page.getByRole('button', { name: 'Select its row' }).click()
    await says(/^14 motifs selected/)

    await page.getByRole('application').focus()
    await page.keyboard.press('b')
    await says(/^Painted 1[34] motifs/)
    await page.keyboard.press('Control+z')
    await says(/^Undone: paint 1[34] motifs/)
    await page.getByRole('button', { name: /^Redo: paint/ }).click()
    await says(/^Redone: paint 1[34] motifs/)
    await page.getByRole('button', { name: /^Undo: paint/ }).click()
    await says(/^Undone: paint 1[34] motifs/)
  })
})
