import { readFile } from 'node:fs/promises'
import type { Page } from 'playwright-core'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { planProject } from '../../src-core/plan'
import { eventually } from '../src-main/documents/session/world'
import { violationsInThemes, violationsOf, WCAG } from './access'
import {
  awaitToMend,
  checkTemplate,
  drag,
  itemCount,
  items,
  kept,
  middleOnScreen,
  openPlace,
  startPanel,
} from './embellisher'
import { Hands, Keys } from './hands'
import type { OpenedWindow } from './opened'
import { openWindow, written } from './opened'

let opened: OpenedWindow
let page: Page
let hands: Hands

async function enter(viewport: { width: number; height: number }, project?: object) {
  opened = await openWindow({ viewport, ...(project ? { files: written(project) } : {}) })
  page = opened.page
  hands = new Hands(page)
}
beforeEach(() => enter({ width: 1280, height: 800 }))
const leave = () => opened.close()
afterEach(leave)

/** Looks for what keeps somebody out (WCAG 2.2 A and AA), by machine. */
async function checkAccess(where: string): Promise<void> {
  expect(await violationsOf(page, WCAG), where).toEqual([])
}

async function checkThemes(where: string): Promise<void> {
  expect(await violationsInThemes(page, WCAG), where).toEqual([])
}

/** The window never grows beyond itself, whatever is opened in it. */
const overflow = () =>
  page.evaluate(() => document.documentElement.scrollHeight - document.documentElement.clientHeight)

const chooseFile = (text: string, name = 'bag.svg') =>
  page
    .getByLabel('Choose an SVG file')
    .setInputFiles({ name, mimeType: 'image/svg+xml', buffer: Buffer.from(text) })

describe('somebody who lays blossoms on a bag, in a browser', () => {
  it('takes the panel from a drawing, lays a row along a drawn line, and gets the template', async () => {
    await startPanel(page, hands)
    await hands.press('Outline', 'radio')
    await hands.press('SVG file', 'radio')
    // What is hostile is refused in a line, and the panel stays.
    for (const [text, words] of [
      ['<svg onload="alert(1)"><path d="M0 0H9V9Z"/></svg>', 'contains a program'],
      ['<!DOCTYPE svg [<!ENTITY a "b">]><svg><path d="&a;"/></svg>', 'declares entities'],
      ['<svg><path d="M0 0L1e999 0"/></svg>', 'not a place on a panel'],
      [`<svg>${'<g>'.repeat(30_000)}`, 'more elements'],
    ] as const) {
      await chooseFile(text)
      await page.getByRole('alert').filter({ hasText: words }).waitFor()
    }
    await eventually(async () => expect(planProject(await kept(page)).size.width).toBe(400))

    await chooseFile(
      '<svg width="340mm" height="360mm" viewBox="0 0 680 720"><path id="front" d="M0 0H680L650 600Q644 720 520 720H160Q36 720 30 600Z"/></svg>',
    )
    await page.getByText('front: 340 × 360 mm, shown on the map.').waitFor()
    await hands.press('Take it as the panel')
    await eventually(async () =>
      expect(planProject(await kept(page)).size).toMatchObject({ width: 340, height: 360 }),
    )

    await page.getByText('Place a row along a line').click()
    await hands.press('Draw a line')
    const middle = await middleOnScreen(page)
    await drag(page, { x: middle.x - 110, y: middle.y - 40 }, { x: 220, y: 80 })
    await page.getByText(/^A line of /).waitFor()
    await hands.fill('Items', '3')
    await checkAccess('a row that is thought over')
    await hands.press('Place 3 items')
    const row = await itemCount(page, 3)
    // In line, and the middle one in the middle of the panel.
    expect(Math.abs((row[0]!.x! + row[2]!.x!) / 2 - row[1]!.x!)).toBeLessThan(0.6)
    expect(Math.abs(row[1]!.x! - 170)).toBeLessThan(1.5)
    await awaitToMend(page)

    await hands.go('Paper')
    await hands.press('A4', 'radio')
    await page.getByRole('img', { name: /^Page 1 of \d+: Template/ }).waitFor()
    await checkAccess('the template')
    const downloaded = page.waitForEvent('download')
    await hands.press('Export the template as PDF')
    const file = await readFile(await (await downloaded).path())
    await checkTemplate(file, await kept(page), [210, 297])
  })

  it('nothing in it keeps anybody out, in the light and the dark theme', async () => {
    await leave()
    await enter({ width: 1920, height: 1080 })
    await startPanel(page, hands)
    await checkThemes('an empty panel')
    await hands.press('Place one')
    await page.getByRole('textbox', { name: 'From the left' }).waitFor()
    await checkThemes('an item in the hand')
    for (const shape of ['Circle', 'Ellipse', 'Outline']) {
      await hands.press(shape, 'radio')
      await checkThemes(shape)
    }
    await hands.press('SVG file', 'radio')
    await chooseFile(
      '<svg viewBox="0 0 300 300"><rect id="a" width="300" height="280"/><rect id="b" width="40" height="40"/></svg>',
    )
    await page.getByText(/does not say how large it is/).waitFor()
    await checkThemes('an SVG file')
    await hands.press('Cancel')
    for (const arranger of [
      'Place a wreath',
      'Place a row along a line',
      'Place a corner spray',
      'Scatter',
    ]) {
      await page.getByText(arranger, { exact: true }).click()
      await page.getByRole('button', { name: 'Cancel' }).waitFor()
      await checkThemes(arranger)
    }
    await hands.press('Cancel')
    await page.getByText('Align, spread, mirror').click()
    await checkThemes('together')
    expect(await overflow()).toBe(0)
  }, 240_000)

  it('opens a file whose outline is hostile, says so, and runs and loses nothing of it', async () => {
    await leave()
    const path = '<svg onload="document.title = 1"><script>document.title = 2</script></svg>'
    const layout = { kind: 'applique', panel: { shape: 'outline', path, allowance: 10 }, items: [] }
    const project = { format: 'petalyard-project', version: 1, title: 'Bag', layout }
    await enter({ width: 1280, height: 800 }, project)
    await page.getByText('There is no panel to place anything on.').waitFor()
    await hands.press('To the panel')
    await page
      .getByText(/^This is part of a document \(tags, quotes or entities\)/)
      .first()
      .waitFor()
    expect(await page.title()).toBe('Bag (opened) – Petalyard')
    expect((await kept(page)).layout).toEqual(layout)
    await page.getByRole('textbox', { name: 'Path data in mm' }).fill('M 0 0 H 300 V 200 H 0 Z')
    await page.getByRole('textbox', { name: 'Path data in mm' }).blur()
    await page.getByText('There is no panel to place anything on.').waitFor({ state: 'hidden' })
    await eventually(async () => expect(planProject(await kept(page)).size.width).toBe(300))
  })

  it('is done by keys alone: lay, move, rotate, stack, mirror, place a wreath', async () => {
    await startPanel(page, hands)
    const keys = new Keys(page)
    await keys.reach('Place one')
    await keys.press('Enter')
    await itemCount(page, 1)
    await keys.reach('Place one')
    await keys.press('Enter')
    await itemCount(page, 2)
    await page.getByRole('application').focus()
    const before = (await items(page))[1]!
    await keys.press('Shift+ArrowDown')
    await keys.press('{')
    await eventually(async () => expect((await items(page))[1]!.y).toBeGreaterThan(before.y! + 9))
    await eventually(async () => expect(planProject(await kept(page)).stacking).toEqual(['1,2', '1,1']))
    await keys.press('Control+d')
    await itemCount(page, 3)
    await keys.press('Delete')
    await itemCount(page, 2)
    await keys.press(',')
    await openPlace(page, 'Arrangement')
    await keys.reach('Place a wreath', true)
    await keys.press('Enter')
    await keys.reach('Items')
    await keys.type('9')
    await keys.press('Enter')
    await keys.reach('Place 9 items')
    await keys.press('Enter')
    await itemCount(page, 11)
    await page.getByRole('button', { name: 'Undo: place a wreath of 9 items' }).waitFor()
  })
})
