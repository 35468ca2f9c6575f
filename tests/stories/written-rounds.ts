/** The story of a pasted pattern, the same for every window: one slip is marked, mended, and everything follows. */
import { copyFile } from 'node:fs/promises'
import { join } from 'node:path'
import { expect } from 'vitest'
import type { Page } from 'playwright-core'
import { eventually } from '../src-main/documents/session/world'
import { projectRoot } from './desktop'
import { kept } from './embellisher'
import { Hands, Keys, sentenceSays } from './hands'

/** Our own flower; round 2 has one repeat too many. */
const BLOCK = `Ch 6, join with sl st to form ring.
Rnd 1: With A, ch 1, 12 sc in ring; join with sl st in first sc. (12 sc)
Rnd 2: With B, ch 1, sc in first sc, *ch 4, sk 1 sc, sc in next sc; rep from * 5 more times, ch 4, sk 1 sc; join with sl st in first sc.
Rnd 3: (Sc, hdc, 3 dc, hdc, sc) in each ch-4 sp around; join with sl st in first sc.`

const workOf = (page: Page, number: number) =>
  page.getByRole('textbox', { name: `Round ${number}`, exact: true })

/** Waits until nothing is marked in a round. */
const isRight = (page: Page, number: number) =>
  eventually(async () =>
    expect(await workOf(page, number).getAttribute('aria-invalid'), `round ${number}`).toBeNull(),
  )

/** A copy of an example with a measured flower: the story works on its file. */
export async function copyExample(folder: string): Promise<string> {
  const path = join(folder, 'hedgerow.petalyard')
  await copyFile(join(projectRoot, 'examples', 'hedgerow-baby-throw.petalyard'), path)
  return path
}

/** From the measured motif of an open project to a blanket of written ones. */
export async function writeRounds(page: Page): Promise<void> {
  const hands = new Hands(page)
  await hands.go('Motif')
  await hands.press('written rounds', 'radio')
  await page.getByRole('textbox', { name: /^Paste the rounds/ }).fill(BLOCK)
  await hands.press('Read the rounds')

  // Marked at the right round, at the right words, and nowhere else.
  await workOf(page, 2).waitFor()
  await workOf(page, 2).and(page.locator('[aria-invalid=true]')).waitFor()
  await isRight(page, 1)
  const second = page.getByRole('listitem', { name: 'Rnd 2', exact: true })
  await second.getByRole('button', { name: /^Error/ }).click()
  await eventually(async () => {
    const words = await workOf(page, 2).evaluate((node) => {
      const { value, selectionStart, selectionEnd } = node as HTMLTextAreaElement
      return value.slice(selectionStart, selectionEnd)
    })
    expect(words).toBe('rep from * 5 more times')
  })

  // Mended by typing over what is selected; the counts follow.
  await page.keyboard.type('rep from * 4 more times')
  await second.getByText('uses all 12 sts').waitFor()
  await isRight(page, 2)
  const third = page.getByRole('listitem', { name: 'Rnd 3', exact: true })
  await third.getByText('uses all 6 spaces').waitFor()

  // The round in hand is lit in the chart; a pressed stitch selects its words.
  const chart = page.getByRole('img', { name: /^Chart of/ })
  await eventually(async () => expect(await chart.locator('.lit').count()).toBeGreaterThan(6))
  // Tab leaves the field for what comes next.
  await page.keyboard.press('Tab')
  await page.waitForFunction(() => document.activeElement?.tagName !== 'TEXTAREA')

  // A gauge of one's own: size and yarn follow.
  const summary = page.locator('.summary')
  const before = await summary.innerText()
  await page.locator('summary').filter({ hasText: 'Gauge' }).click()
  await hands.fill('Stitches', '16')
  await hands.fill('Rows', '18')
  await page.waitForFunction(
    (old) => document.querySelector<HTMLElement>('.summary')?.innerText !== old,
    before,
  )

  // By the gauge alone, a blanket.
  await hands.fill('Tip to tip, across', '')
  await hands.fill('Dip to dip, across', '')
  await summary.getByText('from your gauge').waitFor()
  await sentenceSays(page, 'six-petal flowers')
  const opened = await page.evaluate(() => window.petalyard.currentProject())
  expect(opened.outcome).toBe('done')
}

/** A pattern with a stitch of its own and no colours named. */
const PLAIN = `Special stitches: Twin: (Sc, hdc) in same st

Rnd 1: Magic ring, ch 1, 6 sc in ring; join with sl st in first sc. (6 sc)
Rnd 2: Ch 1, *twin in next sc; rep from * around; join with sl st in first sc. (12 sts)
Rnd 3: Ch 1, sc in first st, *ch 4, sk 1 st, sc in next st; rep from * 4 more times, ch 4, sk 1 st; join with sl st in first sc.
Rnd 4: (Sc, hdc, 3 dc, hdc, sc) in each ch-4 sp around; join with sl st in first sc.`

/** From the first dialog of an empty window to a blanket, by a pasted pattern alone. */
export async function startWithRounds(page: Page): Promise<void> {
  const hands = new Hands(page)
  await hands.press('Start from your own motif')
  await hands.press('Start from its written rounds')
  // The gauge is asked for, too.
  await page.getByRole('heading', { name: /^Your (gauge|tension)$/ }).waitFor()
  await hands.fill('Stitches', '20')
  await hands.fill('Rows', '22')
  await page.getByRole('textbox', { name: /^Paste the rounds/ }).fill(PLAIN)
  await hands.press('Read the rounds')
  await workOf(page, 4).waitFor()
  for (const number of [1, 2, 3, 4]) await isRight(page, number)
  await page.getByText('The rounds may use twin.').waitFor()
  await sentenceSays(page, 'six-petal flowers')
  // Nobody wrote of a centre, and nobody is told that it is missing.
  await page
    .getByRole('button', { name: /(note|warning)s?$/ })
    .first()
    .click()
  const findings = await page.getByRole('dialog').innerText()
  expect(findings).not.toMatch(/colour .?centre|no yarn for/i)
  await page.keyboard.press('Escape')
}

/** A page as it is published: our own mat. */
const PAGE = `Meadow Mat
by Ada Birch

Skill level: Easy
Materials: DK cotton (50 g/125 m), 20 m each of yellow (A) and white (B); 4 mm (G-6) hook; a needle
Gauge: Rounds 1 and 2 = 3 in
Finished size: 6" (15 cm) across

Notes
Weave in ends as you go.

${PLAIN}`

const proposed = (page: Page) => page.getByRole('list', { name: 'From the page' })
const motifKept = async (page: Page) => {
  const { motifs, designer } = await kept(page)
  return { motif: motifs?.[0], designer }
}

/** A whole page in the place of the rounds: what it says besides is proposed, and answered by the keyboard alone. */
export async function takeFromPage(page: Page): Promise<void> {
  const hands = new Hands(page)
  await page.locator('summary').filter({ hasText: 'Paste a whole pattern' }).click()
  await page.getByRole('textbox', { name: /^Paste the rounds/ }).fill(PAGE)
  await hands.press('Replace all rounds')
  await proposed(page).waitFor()
  expect(await proposed(page).getByRole('listitem').count()).toBe(10)

  // Nothing is set by pasting alone.
  await eventually(async () => expect((await motifKept(page)).motif).toMatchObject({ page: { terms: 'US' } }))
  expect((await motifKept(page)).motif).not.toMatchObject({ name: 'Meadow Mat' })

  const keys = new Keys(page)
  await proposed(page)
    .getByRole('button', { name: /^Take Gauge by rounds/ })
    .focus()
  await keys.press('Enter')
  await eventually(async () =>
    expect((await motifKept(page)).motif).toMatchObject({ gauge: { rounds: 2, across: 76.2 } }),
  )
  await eventually(async () => expect(await proposed(page).getByRole('listitem').count()).toBe(9))

  // The next one has the keyboard; what was taken is undone as one step.
  await keys.reach(/^Leave Size of the motif/)
  await keys.press('Enter')
  await eventually(async () => expect(await proposed(page).getByRole('listitem').count()).toBe(8))
  await keys.reach('Take all', true)
  await keys.press('Enter')
  await page.getByText('all answered').waitFor()
  await eventually(async () => {
    const { motif, designer } = await motifKept(page)
    expect(motif).toMatchObject({ name: 'Meadow Mat', gauge: { hook: 4 } })
    expect(motif).toMatchObject({
      instructions: expect.stringContaining('Weave in ends as you go.') as string,
    })
    expect(designer).toBe('Ada Birch')
  })
  await keys.reach(/^Undo/, true)
  await keys.press('Enter')
  await eventually(async () => expect(await proposed(page).getByRole('listitem').count()).toBe(8))
  await eventually(async () =>
    expect((await motifKept(page)).motif).not.toMatchObject({ name: 'Meadow Mat' }),
  )
}
