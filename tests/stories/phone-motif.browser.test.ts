/** Rounds and chart of the motif on the page for a phone: by touch and by keyboard, without a network. */
import { execFile } from 'node:child_process'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { promisify } from 'node:util'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { GOOD_PRACTICE, violationsOf } from './access'
import { startChromium } from './browser'
import { makeFolder, projectRoot } from './desktop'

let browser: Browser
let phone: BrowserContext
let page: Page
let folder: Awaited<ReturnType<typeof makeFolder>>
const trouble: string[] = []

beforeAll(async () => {
  browser = await startChromium()
  folder = await makeFolder()
  const file = join(folder.path, 'page.html')
  const example = join(projectRoot, 'examples', 'dovecote-runner.petalyard')
  const command = [join(projectRoot, 'scripts', 'petalyard.mjs'), 'page', example, '--out', file]
  await promisify(execFile)(process.execPath, command)
  phone = await browser.newContext({
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    isMobile: true,
    offline: true,
  })
  page = await phone.newPage()
  page.on('pageerror', (error) => trouble.push(error.message))
  page.on('console', (message) => message.type() === 'error' && trouble.push(message.text()))
  await page.goto(pathToFileURL(file).href)
})
afterAll(async () => {
  await phone?.close()
  await folder?.forget()
  await browser?.close()
})

describe('the motif on the page for a phone', () => {
  it('unfolds by touch and folds by keyboard', async () => {
    const chart = page.getByRole('img', { name: /^Symbol chart of rounds 1–4/ })
    const summary = page.getByText('Eight-petal rosette: rounds and chart')
    expect(await chart.isVisible()).toBe(false)
    await summary.tap()
    await chart.waitFor()
    const box = (await chart.boundingBox())!
    expect(box.width).toBeGreaterThan(300)
    expect(box.height).toBeGreaterThan(200)
    await summary.press('Enter')
    await chart.waitFor({ state: 'hidden' })
    await summary.press('Enter')
    await chart.waitFor()
  })

  it('keeps nobody out, light and dark, and is no wider than the phone', async () => {
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme })
      expect(await violationsOf(page, GOOD_PRACTICE), colorScheme).toEqual([])
    }
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390)
    expect(trouble).toEqual([])
  })
})
