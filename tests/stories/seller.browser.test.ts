import { readFile } from 'node:fs/promises'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { GOOD_PRACTICE, violationsInThemes } from './access'
import { startChromium, startLoopback } from './browser'
import type { Loopback } from './browser'
import { makeFolder } from './desktop'
import { makeGarland, makeKit, printKit } from './seller'

let browser: Browser
let context: BrowserContext
let folder: Awaited<ReturnType<typeof makeFolder>>
let loopback: Loopback
let page: Page

beforeAll(async () => {
  browser = await startChromium()
  folder = await makeFolder()
  loopback = await startLoopback(folder.path)
  context = await browser.newContext({ viewport: { width: 1280, height: 800 }, reducedMotion: 'reduce' })
  page = await context.newPage()
  await page.goto(await loopback.nextAddress())
  await page.getByRole('navigation', { name: 'Places of the job' }).waitFor()
})
afterAll(async () => {
  await context?.close()
  await loopback?.kill()
  await folder?.forget()
})

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
