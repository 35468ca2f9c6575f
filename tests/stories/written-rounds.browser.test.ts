import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { SMALLEST_SIZE } from '../../src-main/desktop/window-place'
import { eventually } from '../src-main/documents/session/world'
import { violationsOf } from './access'
import type { OpenedWindow } from './opened'
import { openWindow } from './opened'
import { copyExample, startWithRounds, takeFromPage, writeRounds } from './written-rounds'

let opened: OpenedWindow
let page: Page

beforeAll(async () => {
  opened = await openWindow({ files: copyExample })
  page = opened.page
})
afterAll(() => opened?.close())

describe('written rounds in a browser', () => {
  it('are pasted, marked, mended, and planned', () => writeRounds(page))

  it('keep their words in view in the smallest window', async () => {
    await page.setViewportSize(SMALLEST_SIZE)
    const editor = page.getByRole('main', { name: /^Rounds of/ })
    const round = editor.getByRole('listitem', { name: 'Rnd 3', exact: true })
    await round.scrollIntoViewIfNeeded()
    await eventually(async () => {
      const room = (await editor.boundingBox())!
      for (const part of [round, editor.getByRole('textbox', { name: 'Round 3', exact: true })]) {
        const box = (await part.boundingBox())!
        expect(box.x).toBeGreaterThanOrEqual(room.x)
        expect(box.x + box.width).toBeLessThanOrEqual(room.x + room.width + 1)
      }
    })
    // What it makes and uses is a line of words, not a list of them.
    const [makes, uses] = await Promise.all(
      ['makes 42 sts', 'uses all 6 spaces'].map((words) => round.getByText(words).boundingBox()),
    )
    expect(uses!.y - makes!.y).toBeLessThan(makes!.height * 2)
    expect(await violationsOf(page)).toEqual([])
    await page.setViewportSize({ width: 1280, height: 800 })
  })

  it('come with a page whose other words are proposed, and stay in reach in the smallest window', async () => {
    await takeFromPage(page)
    await page.setViewportSize(SMALLEST_SIZE)
    const list = page.getByRole('list', { name: 'From the page' })
    const take = list.getByRole('button', { name: /^Take Instructions: Notes/ })
    await take.scrollIntoViewIfNeeded()
    const [box, room] = [(await take.boundingBox())!, (await list.boundingBox())!]
    expect(box.x + box.width).toBeLessThanOrEqual(room.x + room.width + 1)
    expect(box.y + box.height).toBeLessThanOrEqual(room.y + room.height + 1)
    expect(await violationsOf(page)).toEqual([])
    if (process.env.PICTURES) await page.screenshot({ path: `${process.env.PICTURES}/small.png` })
    await page.setViewportSize({ width: 1280, height: 800 })
    if (process.env.PICTURES) await page.screenshot({ path: `${process.env.PICTURES}/wide.png` })
  })

  it.each(['light', 'dark'] as const)('are accessible in the %s theme', async (colorScheme) => {
    await page.emulateMedia({ colorScheme })
    expect(await violationsOf(page)).toEqual([])
  })
})

describe('a project that begins with written rounds', () => {
  it('asks for the gauge, takes a pasted pattern, and misses no colour', async () => {
    const fresh = await openWindow()
    try {
      await startWithRounds(fresh.page)
    } finally {
      await fresh.close()
    }
  })
})
