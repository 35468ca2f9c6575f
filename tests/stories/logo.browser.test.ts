/** A logo that somebody was sent: what it is made of is drawn, and nothing else of it happens. */
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { decode } from 'fast-png'
import type { Locator } from 'playwright-core'
import { expect, it } from 'vitest'
import { eventually } from '../src-main/documents/session/world'
import { browserAnew } from './anew'
import { startLoopback } from './browser'

const story = browserAnew()

const svg = (content: string, before = '') =>
  `${before}<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="90" height="30">${content}</svg>`
const RECT = '<rect width="90" height="30" fill="#ff0000"/>'
const tenfold = Array.from({ length: 12 }, (_, i) => {
  const uses = `<use href="#u${i}"/>`.repeat(10)
  return `<g id="u${i + 1}">${uses}</g>`
}).join('')

const HOSTILE: readonly (readonly [string, string, RegExp])[] = [
  [
    'ten times ten times ten …',
    svg(`<g id="u0">${RECT}</g>${tenfold}<use href="#u12"/>`),
    /too many parts, or too many effects/,
  ],
  [
    'filters over filters',
    svg(
      `<filter id="f">${'<feFlood/>'.repeat(2_000)}</filter>` +
        '<rect width="90" height="30" filter="url(#f)"/>'.repeat(2_000),
    ),
    /too many parts, or too many effects/,
  ],
  ['too many shapes', svg(RECT.repeat(60_000)), /too many parts, or too many effects/],
  [
    'words that stand for words',
    svg('<desc>&b;</desc>', '<!DOCTYPE svg [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;">]>'),
    /declares entities/,
  ],
  ['groups in groups', svg('<g>'.repeat(50_000) + '</g>'.repeat(50_000)), /too deep in each other/],
  ['no SVG', 'just words', /cannot be read/],
]

it('an SVG as logo is drawn without its scripts and what it names, and none keeps the window waiting', async () => {
  const asked: string[] = []
  const elsewhere = createServer(({ url = '' }, answer) => {
    asked.push(url)
    answer.end()
  })
  await new Promise<void>((resolve) => elsewhere.listen(0, '127.0.0.1', resolve))
  const there = `http://127.0.0.1:${(elsewhere.address() as AddressInfo).port}`
  try {
    story.loopback = await startLoopback(story.folder.path)
    const page = await story.context.newPage()
    await page.goto(await story.loopback.nextAddress())
    await page.getByRole('button', { name: 'Menu', exact: true }).click()
    await page.getByRole('dialog', { name: 'Menu' }).getByRole('button', { name: 'Settings…' }).click()
    const dialog = page.locator('dialog[open]')
    const chooser = dialog.getByLabel('Picture of the logo')
    const take = (text: string) =>
      chooser.setInputFiles({ name: 'logo.svg', mimeType: 'image/svg+xml', buffer: Buffer.from(text) })

    await take(
      svg(
        `${RECT}<script>globalThis.ran = true; fetch('${there}/script')</script>` +
          `<image width="9" height="9" href="${there}/image"/><use xlink:href="${there}/use#a"/>` +
          `<style>@import url('${there}/style'); @font-face { font-family: a; src: url('${there}/font') }</style>` +
          `<text font-family="a" y="9">a</text><rect onload="globalThis.ran = true" width="1" height="1" fill="#f00"/>`,
        `<?xml version="1.0"?><?xml-stylesheet href="${there}/sheet"?>`,
      ),
    )
    const logo = dialog.getByRole('img', { name: 'Your logo' })
    await logo.waitFor()
    let kept = await addressOf(logo)
    expect(kept).toMatch(/^data:image\/png;base64,/)
    const bytes = Buffer.from(kept.split(',')[1]!, 'base64')
    expect(bytes.toString('latin1')).not.toContain(there)
    const { width, height, data, channels } = decode(bytes)
    expect(width / height).toBeCloseTo(3, 1)
    const middle = (Math.round(height / 2) * width + Math.round(width / 2)) * channels
    expect([...data.slice(middle, middle + 3)]).toEqual([255, 0, 0])

    for (const [name, text, words] of HOSTILE) {
      await take(text)
      const alert = dialog.getByRole('alert')
      await eventually(async () => expect(await alert.innerText(), name).toMatch(words))
      // The window answers, and the logo is the one before.
      expect(await addressOf(logo), name).toBe(kept)
      await dialog.getByRole('button', { name: 'Remove the logo' }).click()
      await eventually(async () => expect(await logo.count(), name).toBe(0))
      await take(svg(RECT))
      await logo.waitFor()
      kept = await addressOf(logo)
      expect(await alert.count(), name).toBe(0)
    }
    expect(await page.evaluate(() => 'ran' in globalThis)).toBe(false)
    expect(asked).toEqual([])
  } finally {
    elsewhere.close()
  }
}, 120_000)

const addressOf = async (image: Locator): Promise<string> => (await image.getAttribute('src')) ?? ''
