/** The paper in a real browser: the page as it is printed, small and large, and the sheets that are sent to print. */
import { readFile } from 'node:fs/promises'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { eventually } from '../src-main/documents/session/world'
import { readPdf } from '../src-main/paper/read-pdf'
import { violationsOf, WCAG } from './access'
import { Hands } from './hands'
import type { OpenedWindow } from './opened'
import { example, openWindow } from './opened'

let opened: OpenedWindow
let page: Page

beforeAll(async () => {
  opened = await openWindow({
    files: example('market-stall-throw'),
    viewport: { width: 1024, height: 700 },
    acceptDownloads: true,
    // The dialog stands open until the story closes it.
    before: (shown) =>
      shown.addInitScript(() => {
        window.print = () => document.documentElement.setAttribute('data-printing', 'yes')
      }),
  })
  page = opened.page
})
afterAll(() => opened?.close())

const shown = (): Promise<string> =>
  page.evaluate(async () => {
    const opened = await window.petalyard.currentProject()
    const text = opened.outcome === 'done' ? opened.value.text : ''
    const answer = await window.petalyard.previewPage({ text, page: 1 })
    return answer.outcome === 'done' ? answer.value.svg : ''
  })

describe('the paper', () => {
  it('is shown in the letters that are printed, and fills the middle when it is enlarged', async () => {
    const hands = new Hands(page)
    await hands.go('Paper')
    await page.getByRole('img', { name: /^Page 1 of \d+: Overview/ }).waitFor()
    const svg = await shown()
    expect(svg).not.toContain('<text')
    expect(svg).toMatch(/<path id="word-1" d="M/)

    await page.getByRole('button', { name: 'Enlarge the page' }).press('Enter')
    const large = page.getByRole('group', { name: 'Page, large' })
    await large.waitFor()
    expect(await large.evaluate((node) => node === document.activeElement)).toBe(true)
    const middle = (await page.locator('.middle').boundingBox())!
    const box = (await large.boundingBox())!
    expect(box.width).toBeCloseTo(middle.width, 0)
    expect(box.height).toBeGreaterThan(middle.height - 70)

    for (const theme of ['light', 'dark'] as const) {
      await page.evaluate((next) => window.petalyard.changeSettings({ theme: next }), theme)
      await page.locator(`html[data-theme=${theme}]`).waitFor()
      expect(await violationsOf(page, WCAG)).toEqual([])
    }
    const picture = large.getByRole('img')
    await page.keyboard.press('PageDown')
    await large.getByRole('img', { name: /^Page 2 of/ }).waitFor()
    await page.keyboard.press('End')
    await large.getByRole('img', { name: /^Page (\d+) of \1:/ }).waitFor()
    await page.keyboard.press('Home')
    await large.getByRole('img', { name: /^Page 1 of/ }).waitFor()
    const whole = (await picture.boundingBox())!
    expect(whole.height).toBeLessThan(box.height)
    await page.keyboard.press('+')
    await eventually(async () =>
      expect((await picture.boundingBox())!.width).toBeGreaterThan(whole.width * 1.2),
    )
    await page.keyboard.press('0')

    // The pages follow the project while it is changed, and the window stays as quick.
    await page.getByRole('radio', { name: 'Letter' }).check({ force: true })
    await eventually(async () => {
      const { width, height } = (await picture.boundingBox())!
      expect(width / height).toBeCloseTo(215.9 / 279.4, 2)
    })
    await page.getByRole('radio', { name: 'A4' }).check({ force: true })

    await large.focus()
    await page.keyboard.press('Escape')
    await large.waitFor({ state: 'detached' })
    await eventually(async () =>
      expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Enlarge the page'),
    )
    expect(await page.getByRole('heading', { name: 'Paper' }).count()).toBe(1)
  })

  it('prints the pages of the PDF, one to a sheet and as large as they are', async () => {
    const downloading = page.waitForEvent('download')
    await page.getByRole('button', { name: 'Export the map as PDF' }).click()
    const file = await readPdf(new Uint8Array(await readFile(await (await downloading).path())))
    await page.getByText(/^Exported: .*\.pdf in your downloads, \d+ pages\.$/).waitFor()

    for (const way of ['key', 'button'] as const) {
      if (way === 'key') await page.keyboard.press('Control+p')
      else await page.locator('.ledger').getByRole('button', { name: 'Print the map…' }).click()
      await page.locator('html[data-printing]').waitFor({ timeout: 20_000 })
      // Emulates the dialog, and tells the page that it was closed.
      const printed = await readPdf(new Uint8Array(await page.pdf({ preferCSSPageSize: true })))
      expect(printed.pages).toHaveLength(file.pages.length)
      for (const sheet of printed.pages) {
        expect(sheet.width).toBeCloseTo(210, 0)
        expect(sheet.height).toBeCloseTo(297, 0)
      }
      await page.getByText(`Sent to print: ${file.pages.length} pages.`).waitFor()
      expect(await page.locator('.print-sheets').count()).toBe(0)
      await page.evaluate(() => document.documentElement.removeAttribute('data-printing'))
    }
    // The map is as it was.
    expect((await page.getByRole('application').boundingBox())!.width).toBeGreaterThan(300)
  })
})
