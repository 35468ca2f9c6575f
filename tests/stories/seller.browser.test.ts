import { readFile } from 'node:fs/promises'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { GOOD_PRACTICE, violationsInThemes } from './access'
import type { OpenedWindow } from './opened'
import { openWindow } from './opened'
import { makeGarland, makeKit, printKit } from './seller'

let opened: OpenedWindow
let page: Page

beforeAll(async () => {
  opened = await openWindow()
  page = opened.page
})
afterAll(() => opened?.close())

const remarks = () => violationsInThemes(page, GOOD_PRACTICE)

describe('a seller of garland kits, in a browser', () => {
  it('makes the garland, the kit, its sheets and lists', async () => {
    await makeGarland(page)
    await makeKit(page)
    await printKit(page, async (press) => {
      const downloaded = page.waitForEvent('download')
      await press()
      const path = await (await downloaded).path()
      await page
        .getByText(/^Exported: /)
        .first()
        .waitFor()
      return new Uint8Array(await readFile(path))
    })
  })

  it('no place breaks a rule that a machine can check, in the light and the dark theme', async () => {
    for (const place of ['Motif', 'Arrangement', 'Joins', 'Colors', 'Yarn', 'Kit', 'Paper']) {
      const button = page.getByRole('navigation').getByRole('button', { name: place, exact: true })
      if ((await button.getAttribute('aria-expanded')) !== 'true') await button.click()
      await page.getByRole('heading', { name: place, level: 2 }).waitFor()
      if (place === 'Arrangement')
        await page.getByRole('list', { name: 'Sequence' }).locator('.row').first().click()
      expect(await remarks(), place).toEqual([])
    }
    await page.getByRole('button', { name: /apart: change the spacing$/ }).click()
    await page.getByRole('dialog', { name: 'Change the spacing' }).waitFor()
    expect(await remarks(), 'sentence').toEqual([])
    await page.keyboard.press('Escape')
  })
})
