import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Project } from '../../shared-types/project'
import { planProject } from '../../src-core/plan'
import { eventually } from '../src-main/documents/session/world'
import { answerSave, makeFolder, startDesktop } from './desktop'
import type { Desktop } from './desktop'
import {
  checkTemplate,
  drag,
  itemCount,
  items,
  kept,
  middleOnScreen,
  startPanel,
  awaitToMend,
  undoAll,
} from './embellisher'
import { Hands, sentenceSays } from './hands'

/** mm of an arrow key where lengths are told in inches, as they are to begin with under Electron's locale here. */
const NUDGE = 25.4 / 16

let desktop: Desktop
let folder: Awaited<ReturnType<typeof makeFolder>>

beforeAll(async () => {
  folder = await makeFolder()
  desktop = await startDesktop(folder.path)
})
afterAll(async () => {
  await desktop?.close()
  await folder?.forget()
})

describe('somebody who lays blossoms on a cushion', () => {
  let done: Project

  it('gets from the first start to a panel with blossoms where they are wanted', async () => {
    const page = desktop.window
    const hands = new Hands(page)
    await startPanel(page, hands)
    // What is entered is kept within a second: the last field is the last to be there.
    await eventually(async () =>
      expect((await kept(page)).layout).toMatchObject({ clearance: 2, panel: { allowance: 20 } }),
    )
    expect(planProject(await kept(page)).size).toMatchObject({ width: 400, height: 400 })

    // One blossom: in the middle, then dragged, nudged by keys, and placed by numbers.
    await hands.press('Place one')
    expect((await itemCount(page, 1))[0]).toMatchObject({ x: 200, y: 200, turn: 0 })
    const middle = await middleOnScreen(page)
    await drag(page, middle, { x: -80, y: 40 })
    await page.getByRole('button', { name: 'Undo: move 1 item' }).waitFor()
    await eventually(async () => expect((await items(page))[0]!.x).toBeLessThan(195))
    const dragged = (await items(page))[0]!
    // To the left and down, twice as far across as down: the drawing has one scale for both.
    expect(Math.abs((200 - dragged.x!) / (dragged.y! - 200) - 2)).toBeLessThan(0.1)
    await page.getByRole('application').focus()
    for (const key of ['ArrowRight', 'ArrowRight', 'ArrowUp']) await page.keyboard.press(key)
    await eventually(async () => expect((await items(page))[0]!.x).toBeCloseTo(dragged.x! + 2 * NUDGE, 2))
    expect((await items(page))[0]!.y).toBeCloseTo(dragged.y! - NUDGE, 2)
    await hands.press('Close Arrangement')
    await hands.fill('From the left', '150 mm')
    await hands.fill('From the top', '20 cm')
    await hands.fill('Rotated', '15')
    await eventually(async () => expect((await items(page))[0]).toMatchObject({ x: 150, y: 200, turn: 15 }))
    await page.getByLabel('Distances of item 1').getByText('lies alone').waitFor()
    await page
      .getByLabel('Distances of item 1')
      .getByText(/(1\d\d(\.\d)? mm|[45]\.\d\d in)/)
      .waitFor()
  })

  it('mirrors it, and lays a wreath round the pair', async () => {
    const page = desktop.window
    const hands = new Hands(page)
    await hands.go('Arrangement')
    await page.getByText('Align, spread, mirror').click()
    await hands.press('Left and right')
    expect((await itemCount(page, 2))[1]).toMatchObject({ x: 250, y: 200, turn: 345 })
    await awaitToMend(page)

    await page.getByText('Place a wreath').click()
    await hands.fill('Items', '12')
    const ledger = page.getByRole('region', { name: 'Ledger' })
    await ledger.getByText('+12').waitFor()
    // Nothing is kept of it yet.
    expect(await items(page)).toHaveLength(2)
    await hands.press('Place 12 items')
    const wreath = (await itemCount(page, 14)).slice(2)
    for (const { x, y } of wreath) expect(Math.hypot(x! - 200, y! - 200)).toBeCloseTo(150, 1)
    await awaitToMend(page)
    await sentenceSays(page, /14 /)
  })

  it('scatters more where there is room, at a distance and by a seed', async () => {
    const page = desktop.window
    const hands = new Hands(page)
    await page.getByText('Scatter', { exact: true }).click()
    await hands.fill('Apart at least', '3 mm')
    await hands.fill('At most', '3')
    await hands.press('Scatter anew')
    await hands.press(/^Place [123] items?$/)
    await page.getByRole('button', { name: /^Undo: scatter [123] items?$/ }).waitFor()
    await eventually(async () => expect((await items(page)).length).toBeGreaterThan(14))
    await awaitToMend(page)
    expect(planProject(await kept(page)).clearances!.items).toBeGreaterThanOrEqual(1.99)
  })

  it('is told of a collision where it is, and mends it', async () => {
    const page = desktop.window
    const hands = new Hands(page)
    const list = page.getByRole('list', { name: 'Items on the panel' })
    await list.getByRole('button').nth(1).click()
    await hands.press('Close Arrangement')
    await hands.fill('From the left', '170 mm')
    await awaitToMend(page, 'applique/overlap')
    await page
      .getByLabel('Distances of item 2')
      .getByText(/^on\s+item 1/)
      .waitFor()
    await page.getByText('Item 1 (Flower) and item 2 (Flower) overlap.').first().waitFor()
    await hands.go('Arrangement')
    await eventually(async () => expect(await list.getByText('to fix').count()).toBe(2))
    await hands.press('Close Arrangement')
    await hands.fill('From the left', '25 cm')
    await awaitToMend(page)
    done = await kept(page)
  })

  it('prints the template at full size, and the one for the back', async () => {
    const page = desktop.window
    const hands = new Hands(page)
    const path = join(folder.path, 'template.pdf')
    await answerSave(desktop, path)
    await hands.go('Paper')
    await hands.press('A4', 'radio')
    await page.getByRole('img', { name: /^Page 1 of \d+: Template/ }).waitFor()
    await hands.press('Export the template as PDF')
    await page
      .getByText(/^Exported: template\.pdf/)
      .first()
      .waitFor()
    const front = await readFile(path)
    await checkTemplate(front, done, [210, 297])

    await hands.press('Letter', 'radio')
    await hands.press('the back, mirrored', 'radio')
    await page.getByRole('img', { name: /^Page 1 of \d+: Template from the back/ }).waitFor()
    await hands.press('Export the template as PDF')
    await eventually(async () => expect((await readFile(path)).equals(front)).toBe(false))
    await checkTemplate(await readFile(path), done, [215.9, 279.4], true)
  })

  it('takes everything back by name to the very start, and does it again', async () => {
    const page = desktop.window
    const names = await undoAll(page)
    expect(names.filter((name) => name.startsWith('start'))).toEqual([])
    for (const name of [
      'make it into an appliqué',
      'place a wreath of 12 items',
      'mirror 1 item left to right',
      'move item 2',
    ])
      expect(names).toContain(name)
    // The drag, and three nudges that follow each other as one step.
    expect(names.filter((name) => name === 'move 1 item')).toHaveLength(2)
    for (;;) {
      const redo = page.getByRole('button', { name: /^Redo: / })
      if ((await redo.count()) === 0) break
      await redo.click()
    }
    await eventually(async () => expect((await kept(page)).layout).toEqual(done.layout))
  })
})
