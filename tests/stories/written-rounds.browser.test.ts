import { AxeBuilder } from '@axe-core/playwright'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { startChromium, startLoopback } from './browser'
import type { Loopback } from './browser'
import { makeFolder } from './desktop'
import { copyExample, startWithRounds, writeRounds } from './written-rounds'

let browser: Browser
let context: BrowserContext
let folder: Awaited<ReturnType<typeof makeFolder>>
let loopback: Loopback
let page: Page

beforeAll(async () => {
  browser = await startChromium()
  folder = await makeFolder()
  loopback = await startLoopback(folder.path, [await copyExample(folder.path)])
  context = await browser.newContext({ viewport: { width: 1280, height: 800 }, reducedMotion: 'reduce' })
  page = await context.newPage()
  await page.goto(await loopback.nextAddress())
  await page.getByRole('navigation', { name: 'Places of the job' }).waitFor()
})
afterAll(async () => {
  await browser?.close()
  await loopback?.kill()
  await folder?.forget()
})

describe('written rounds in a browser', () => {
  it('are pasted, marked, mended, and planned', () => writeRounds(page))

  it.each(['light', 'dark'] as const)('are accessible in the %s theme', async (colorScheme) => {
    await page.emulateMedia({ colorScheme })
    const { violations } = await new AxeBuilder({ page }).analyze()
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([])
  })
})

describe('a project that begins with written rounds', () => {
  it('asks for the gauge, takes a pasted pattern, and misses no colour', async () => {
    const empty = await makeFolder()
    const fresh = await startLoopback(empty.path, [])
    const window = await context.newPage()
    try {
      await window.goto(await fresh.nextAddress())
      await window.getByRole('navigation', { name: 'Places of the job' }).waitFor()
      await startWithRounds(window)
    } finally {
      await window.close()
      await fresh.kill()
      await empty.forget()
    }
  })
})
