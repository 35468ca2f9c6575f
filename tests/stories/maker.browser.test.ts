import { readFile } from 'node:fs/promises'
import type { Page } from 'playwright-core'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { eventually } from '../src-main/documents/session/world'
import { GOOD_PRACTICE, violationsInThemes } from './access'
import { Keys, sentenceSays } from './hands'
import type { OpenedWindow } from './opened'
import { openWindow } from './opened'

let opened: OpenedWindow
let page: Page

beforeEach(async () => {
  opened = await openWindow()
  page = opened.page
})
afterEach(() => opened.close())

const project = async () => {
  const opened = await page.evaluate(() => window.petalyard.currentProject())
  if (opened.outcome !== 'done') throw new Error('there is no project')
  return JSON.parse(opened.value.text) as { motifs: { petals?: number; overTips?: number }[] }
}

describe('a maker without a mouse', () => {
  it('gets from the first start to an exported map by keyboard alone', async () => {
    const keys = new Keys(page)
    await keys.reach('Start from your own motif')
    await keys.press('Enter')
    await keys.reach('Petals')
    await keys.type('5')
    await keys.reach('Tip to opposite dip')
    await keys.type('3 in')
    await keys.reach(/^Cent(er|re) to dip$/)
    await keys.type('31 mm')
    await keys.reach('Start with this motif')
    await keys.press('Enter')
    await sentenceSays(page, 'five-petal flowers')
    await keys.reach('Arrangement', true)
    await keys.reach('Paper')
    await keys.press('Enter')
    await page.getByRole('img', { name: /^Page 1 of \d+/ }).waitFor()
    await keys.reach('Export the map as PDF')
    const downloaded = page.waitForEvent('download')
    await keys.press('Enter')
    const path = await (await downloaded).path()
    expect((await readFile(path)).subarray(0, 5).toString()).toBe('%PDF-')
    expect(keys.actions).toBeLessThan(25)
    expect((await project()).motifs[0]).toMatchObject({
      petals: 5,
      overTips: expect.closeTo(2 * (76.2 - 31), 6),
    })
  })

  it('walks the map with arrow keys, paints with letters, and takes it back', async () => {
    const keys = new Keys(page)
    await keys.reach(/^Map of /)
    await keys.press('ArrowRight')
    await keys.press('ArrowRight')
    await keys.press('Shift+ArrowDown')
    const said = page.getByText(/^motif \d+, row 2, motif \d+, colorway/)
    await said.waitFor({ state: 'attached' })
    await keys.press('b')
    await page.getByRole('button', { name: 'Undo: paint 2 motifs' }).waitFor()
    await keys.press('Control+z')
    await page.getByRole('button', { name: 'Redo: paint 2 motifs' }).waitFor()
    await keys.press('Control+y')
    await page.getByRole('button', { name: 'Undo: paint 2 motifs' }).waitFor()
    await keys.press('?')
    await page.getByRole('dialog', { name: 'Keys' }).waitFor()
    await keys.press('Escape')
    await page.getByRole('dialog', { name: 'Keys' }).waitFor({ state: 'detached' })
  })

  it('reads the map as a table and paints in it', async () => {
    await page.getByRole('button', { name: 'As a table' }).click()
    const rows = page.getByRole('row')
    await eventually(async () => expect(await rows.count()).toBeGreaterThan(20))
    await page.getByRole('combobox', { name: 'Colorway of motif 1', exact: true }).selectOption({ index: 1 })
    await page.getByRole('button', { name: 'Undo: paint 1 motif' }).waitFor()
  })

  it('is told beside the field what cannot be read, and the last good value stays', async () => {
    await page.getByRole('button', { name: 'Motif', exact: true }).click()
    const field = page.getByRole('textbox', { name: 'Tip to tip, across', exact: true }).first()
    const before = await field.inputValue()
    await field.fill('12 apples')
    await page
      .getByRole('alert')
      .filter({ hasText: `${before} is kept` })
      .waitFor()
    await field.press('Escape')
    await eventually(async () => expect(await field.inputValue()).toBe(before))
  })
})

const remarks = () => violationsInThemes(page, GOOD_PRACTICE)

describe('for everybody, in the light and the dark theme', () => {
  it('no place breaks a rule that a machine can check', async () => {
    expect(await remarks()).toEqual([])
    for (const place of ['Motif', 'Arrangement', 'Joins', 'Colors', 'Yarn', 'Kit', 'Paper']) {
      await page.getByRole('navigation').getByRole('button', { name: place, exact: true }).click()
      await page.getByRole('heading', { name: place, level: 2 }).waitFor()
      expect(await remarks(), place).toEqual([])
    }
    await page.getByRole('button', { name: 'As a table' }).click()
    expect(await remarks(), 'table').toEqual([])
  })

  it('no dialog breaks a rule that a machine can check', async () => {
    await page.getByRole('button', { name: 'Start from your own motif' }).click()
    await page.getByRole('dialog', { name: 'Start' }).waitFor()
    expect(await remarks(), 'start').toEqual([])
    await page.keyboard.press('Escape')
    for (const entry of ['Settings…', 'Keys', 'How to…', 'Take a Motif or Yarn from…', 'About Petalyard']) {
      await page.getByRole('button', { name: 'Menu', exact: true }).click()
      await page.getByRole('dialog', { name: 'Menu' }).getByRole('button', { name: entry }).click()
      await page.locator('dialog[open]').waitFor()
      expect(await remarks(), entry).toEqual([])
      // However far Tab goes, the title and Close stay in view.
      for (let press = 0; press < 20; press++) await page.keyboard.press('Tab')
      const [scrolled, top] = await page
        .locator('dialog[open]')
        .evaluate((node) => [node.scrollTop, node.querySelector('h2')!.getBoundingClientRect().top])
      expect([entry, scrolled, top! > 0]).toEqual([entry, 0, true])
      await page.keyboard.press('Escape')
      await page.locator('dialog[open]').waitFor({ state: 'detached' })
    }
    await page.getByRole('button', { name: /change the size$/ }).click()
    await page.getByRole('dialog', { name: 'Change the size' }).waitFor()
    expect(await remarks(), 'sentence').toEqual([])
  })
})
