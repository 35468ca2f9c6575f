/** What nobody means to type, or to open: the same stories for every window. */
import { readdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { eventually } from '../src-main/documents/session/world'
import { Hands, sentence } from './hands'

/** Each stops the reading at a number that no hand works: one of them took the memory of the page. */
const TYPED = [
  'Rnd 2: dec in next 0 sts.',
  'sc2tog next 0',
  'dc 12345678901 tog.',
  'ch 5 (counts as dc, ch 12345678901)',
  'ch-12345678901 picot',
  'dc99999999tog,',
] as const

const MOTIFS = [
  {
    ...{ id: 'm', name: 'Twelve', kind: 'rounds', minutes: 10, foundation: { ring: 'magic' } },
    rounds: [{ work: '12 sc in ring; join with sl st in first sc.' }, { work: '2 sc in each st around.' }],
    measured: { across: 60 },
  },
]
const LAYOUT = { kind: 'blanket', arrangement: 'straight-rows', motif: 'm', columns: 4, rows: 3 }
const written = (title: string, more: object = {}) => ({
  ...{ format: 'petalyard-project', version: 1, title, units: 'metric', terms: 'US' },
  ...{ gauge: { stitch: 'sc', stitches: 20, rows: 22, over: 100 }, motifs: MOTIFS, layout: LAYOUT },
  ...more,
})

async function fileOf(folder: string, name: string, text: string): Promise<string> {
  const path = join(folder, `${name}.petalyard`)
  await writeFile(path, text)
  return path
}

/** A project of written rounds. */
export const writtenFile = (folder: string) => fileOf(folder, 'typed', JSON.stringify(written('Typed into')))

/** A valid file in which numbers mean nothing, and names are those of programs. */
export const oddFile = (folder: string) => {
  const odd = written('Odd numbers', {
    gauge: { stitch: 'sc', stitches: 0.1, rows: 22, over: 100 },
    layout: { ...LAYOUT, blocking: { width: 1e300 }, cells: { fill: { pattern: 'one', colourways: ['c'] } } },
    yarns: [{ id: 'y', name: 'Straw' }],
    colourways: [{ id: 'c', motif: 'm', yarns: { NAME: 'y' } }],
  })
  return fileOf(folder, 'odd', JSON.stringify(odd).replace('"NAME"', '"__proto__"'))
}

/** A file with a number that is none. */
export const endlessFile = (folder: string) => {
  const text = JSON.stringify(written('Endless', { joining: { rule: 'bridge', bridgeChains: 7 } }))
  return fileOf(folder, 'endless', text.replace('"bridgeChains":7', '"bridgeChains":1.8e308'))
}

const placesOf = (page: Page) => page.getByRole('navigation', { name: 'Places of the job' })
const roundOf = (page: Page, number: number) =>
  page.getByRole('textbox', { name: `Round ${number}`, exact: true })

/** Types each text into a round: every time the document stays open, says what is wrong, and goes on. */
export async function typeNonsense(page: Page): Promise<void> {
  const hands = new Hands(page)
  await placesOf(page).waitFor()
  await hands.go('Motif')
  const round = roundOf(page, 2)
  await round.waitFor()
  for (const text of TYPED) {
    await round.fill(text)
    await eventually(async () => expect(await round.getAttribute('aria-invalid'), text).toBe('true'))
    // The findings of the ledger follow when the plan does.
    await eventually(async () =>
      expect(await page.locator('.ledger .findings').innerText(), text).toMatch(/\berrors?\b/),
    )
    expect(await sentence(page), text).toContain('12')
  }
  await round.fill('2 sc in each st around.')
  await eventually(async () => expect(await round.getAttribute('aria-invalid')).toBeNull())
  await round.fill(TYPED.at(-1)!)
  const header = page.locator('header .kept')
  await eventually(async () => expect(await header.innerText()).toMatch(/a moment ago/))
  await eventually(async () => expect(await round.getAttribute('aria-invalid')).toBe('true'))
  // Longer than a change waits before it is kept.
  await page.waitForTimeout(1_500)
}

/** After another start: the project with the text that was typed last, as it was left. */
export async function isThereAgain(page: Page): Promise<void> {
  await placesOf(page).waitFor()
  await new Hands(page).go('Motif')
  await eventually(async () => expect(await roundOf(page, 2).inputValue()).toBe(TYPED.at(-1)))
}

/** Opens without what was refused: the size is that of twelve motifs, and somebody says what is wrong. */
export async function showsOddFile(page: Page): Promise<void> {
  await placesOf(page).waitFor()
  await eventually(async () =>
    expect(await page.locator('.ledger .findings').innerText()).toMatch(/\b(?:errors?|warnings?)\b/),
  )
  const words = await page.locator('.ledger').innerText()
  expect(words).not.toMatch(/NaN|Infinity|e\+|\d{7}/)
  expect(await sentence(page)).not.toMatch(/NaN|Infinity|e\+|\d{7}/)
}

/** Harms every kept project of an own folder, as a later version or a bad disk would. */
export async function harmKept(folder: string): Promise<string> {
  const kept = join(folder, 'projects', 'kept')
  let text = ''
  for (const name of await readdir(kept)) {
    const path = join(kept, name)
    const entry = JSON.parse(await readFile(path, 'utf8')) as { text: string }
    text = JSON.stringify({ ...(JSON.parse(entry.text) as object), version: 99 })
    await writeFile(path, JSON.stringify({ ...entry, text }))
  }
  return text
}

/** Says why a project cannot be shown, and offers its text, the others and the examples, of which one opens. */
export async function offersWaysOn(page: Page, text: string): Promise<void> {
  await page.getByRole('alert').first().waitFor()
  await page.getByText('The text of this project').first().click()
  expect(await page.getByRole('textbox', { name: 'The text of this project' }).inputValue()).toBe(text)
  await page.getByRole('heading', { name: 'Go on with another project' }).waitFor()
  await page.getByRole('heading', { name: 'Or with an example' }).waitFor()
  for (const name of ['Save a copy', 'Try again', 'Open a project', 'New project'])
    expect(await page.getByRole('button', { name, exact: true }).isVisible(), name).toBe(true)
}
