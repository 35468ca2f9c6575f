/** The story of a seller, the same for every window: from one finished flower to a run of garland kits on paper. */
import { expect } from 'vitest'
import type { Page } from 'playwright-core'
import type { GarlandLayout, Project } from '../../shared-types/project'
import { eventually } from '../src-main/documents/session/world'
import type { ReadPdf } from '../src-main/paper/read-pdf'
import { readPdf } from '../src-main/paper/read-pdf'
import { Hands, sentenceSays } from './hands'

/** Presses a button that exports, and answers what was written. */
export type Export = (press: () => Promise<void>) => Promise<Uint8Array>

export async function keptProject(page: Page): Promise<Project> {
  const opened = await page.evaluate(() => window.petalyard.currentProject())
  if (opened.outcome !== 'done') throw new Error('there is no project')
  return JSON.parse(opened.value.text) as Project
}

const choose = (page: Page, label: string, option: string) =>
  page.getByRole('combobox', { name: label, exact: true }).selectOption({ label: option })

const sequence = (page: Page) =>
  page.getByRole('list', { name: 'Sequence' }).locator('.row .name').allInnerTexts()
const sequenceIs = (page: Page, names: readonly string[]) =>
  eventually(async () => expect(await sequence(page)).toEqual(names))

/** From the first start to a garland with two motifs and beads in three swags. */
export async function makeGarland(page: Page): Promise<void> {
  const hands = new Hands(page)
  // Whatever the machine prefers: this seller sells in euros and packs in grams.
  const wished = { units: 'metric', terms: 'US', currency: 'EUR', paper: 'A4' } as const
  await page.evaluate((change) => window.petalyard.changeSettings(change), wished)
  await hands.press('Start from your own motif')
  await hands.fill('Petals', '6')
  await hands.fill('Tip to tip, across', '68 mm')
  await hands.fill('Dip to dip, across', '44 mm')
  await hands.press('Garland', 'radio')
  await hands.press('in swags', 'radio')
  await hands.fill('Width of the wall', '210 cm')
  await hands.fill('Swags', '3')
  await page.getByText(/six-petal flowers.*hung in 3 swags of 70\scm/).waitFor()
  await hands.press('Start with this motif')
  await sentenceSays(page, /^\d+ six-petal flowers, 40 mm apart, on a cord of chains/)

  // Weighed; a leaf comes to it.
  await hands.go('Motif')
  await hands.fill('Together they weigh', '36 g')
  await page.getByText('More motifs').click()
  await choose(page, 'Add a', 'leaf')
  await hands.fill('Length', '58 mm')
  await hands.fill('Width', '26 mm')
  await hands.fill('Together they weigh', '12 g')

  // The leaf needs a colourway of its own, in a yarn of its own.
  await hands.go('Yarn')
  await hands.press('Add a yarn')
  for (const [name, price] of [
    ['Center yarn', '3.90'],
    ['Petal yarn', '3.90'],
    ['Yarn', '3.90'],
  ] as const) {
    const yarn = page.getByRole('listitem').filter({ has: page.getByText(`Skein band and price of ${name}`) })
    await yarn.getByText(`Skein band and price of ${name}`).click()
    const field = yarn.getByRole('textbox', { name: 'Price of one (EUR)' })
    await field.fill(price)
    await field.press('Enter')
  }
  const moss = page.getByRole('listitem').filter({ has: page.getByText('Skein band and price of Yarn') })
  await moss.getByRole('button', { name: 'Also sold in another size' }).click()
  const cone = moss.getByRole('textbox', { name: 'for (EUR)' })
  await cone.fill('27')
  await cone.press('Enter')
  await hands.fill('Name of Yarn', 'Moss')
  await hands.go('Colors')
  await hands.press('Add a colorway of Leaf')
  await page.getByRole('combobox', { name: /^Yarn of motif in B/ }).selectOption({ label: 'Moss' })

  // The sequence: flower, leaf, bead; put in order by keyboard and by hand.
  await hands.go('Arrangement')
  await choose(page, 'Add to the end', 'Leaf')
  await choose(page, 'Add behind it', 'a bead')
  await hands.fill('Size along the cord', '12 mm')
  await hands.fill('Price of one (EUR)', '0.12')
  await hands.fill('Weight of one', '1.1 g')
  await sequenceIs(page, ['Flower', 'Leaf', 'wooden bead'])
  const rows = page.getByRole('list', { name: 'Sequence' }).locator('.row')
  await rows.nth(2).focus()
  await page.keyboard.press('Alt+ArrowUp')
  await sequenceIs(page, ['Flower', 'wooden bead', 'Leaf'])
  await hands.press('Undo: move wooden bead')
  await page.getByRole('button', { name: 'Redo: move wooden bead' }).waitFor()
  await rows.nth(2).click()
  await dragRow(page, 2, 0)
  await page.getByRole('button', { name: 'Undo: move wooden bead' }).waitFor()
  await sequenceIs(page, ['wooden bead', 'Flower', 'Leaf'])
  await hands.press(/^Mirror it about the middle/, 'checkbox')

  // Both ways: from the wall to the cord, and back.
  await hands.fill('Drop', '110 mm')
  await page.getByLabel('How it hangs').getByText('223.2 cm').waitFor()
  await hands.press(/^the drop from the cord/, 'radio')
  await hands.fill('Cord between the ties', '230 cm')
  await page.getByLabel('How it hangs').getByText('Drop').waitFor()
  await hands.press(/^the cord from the wall/, 'radio')
  await hands.fill('Drop', '110 mm')
  await hands.fill('Distance', '25 mm')
  await eventually(async () => {
    const garland = (await keptProject(page)).layout as GarlandLayout
    expect(garland.swags).toEqual({ count: 3, span: 700, drop: 110 })
    expect(garland.items?.map((part) => part.bead ?? part.motif)).toEqual(['wooden bead', 'm1', 'm2'])
  })
}

/** Drags one row of the sequence to another's place by its handle. */
async function dragRow(page: Page, from: number, to: number): Promise<void> {
  const rows = page.getByRole('list', { name: 'Sequence' }).getByRole('listitem')
  const handle = (await rows.nth(from).locator('.handle').boundingBox())!
  const goal = (await rows.nth(to).boundingBox())!
  await page.mouse.move(handle.x + handle.width / 2, handle.y + handle.height / 2)
  await page.mouse.down()
  await page.mouse.move(handle.x + handle.width / 2, goal.y + goal.height / 2, { steps: 5 })
  await page.mouse.up()
}

/** A run of 25 kits with a hook in each, priced with margin, fees and tax. */
export async function makeKit(page: Page): Promise<void> {
  const hands = new Hands(page)
  await hands.go('Kit')
  await page.getByText(/^A kit is one project put up for somebody else to make/).waitFor()
  await hands.press('Sell it as a kit')
  await hands.fill('Kits in the batch', '25')
  await hands.fill('To spare', '4 %')
  await hands.press('Put something else in')
  const hook = page.getByRole('list', { name: 'Extras' })
  for (const [label, text] of [
    ['Price of one (EUR)', '1.60'],
    ['Weight of one', '9 g'],
  ] as const) {
    await hook.getByRole('textbox', { name: label }).fill(text)
    await hook.getByRole('textbox', { name: label }).press('Enter')
  }
  await hands.fill('Packaging per kit (EUR)', '0.85')
  await hands.fill('It weighs', '38 g')
  await hands.fill('Margin', '40')
  await hands.fill('Marketplace fees', '6.5')
  await hands.fill('Tax on the price', '20')
  await page.getByLabel('Cost and price').getByText('Price with tax').waitFor()
  await eventually(async () => {
    const told = (await page.getByLabel('Cost and price').innerText()).replace(/\s+/g, ' ')
    // The skeins' weights are assumed: nobody entered a band.
    expect(told).toMatch(
      /€\d+\.\d\d \(assumed\) before tax €\d+\.\d\d \(assumed\) and €\d+\.\d\d \(assumed\) tax/,
    )
    expect(told).toMatch(/at \d+ of 25/)
    expect(told).toMatch(/Shipping weight \d+ g/)
  })
  await sentenceSays(page, /sold as 25 kits at €\d+\.\d\d\.$/)
  await page.getByRole('table', { name: 'To buy for the batch' }).getByText(/500 g/).first().waitFor()
}

/** Every sheet and list, each a file of its own, read back. */
export async function printKit(page: Page, exported: Export): Promise<void> {
  const hands = new Hands(page)
  await hands.go('Paper')
  const sheet = async (option: string, what: string): Promise<ReadPdf> => {
    await choose(page, 'Sheets', option)
    await page.getByRole('img', { name: /^Page 1 of \d+/ }).waitFor()
    return readPdf(await exported(() => hands.press(`Export ${what} as PDF`)))
  }
  const isA4 = ({ pages }: ReadPdf) => {
    for (const { width, height } of pages) {
      expect(width).toBeCloseTo(210, 0)
      expect(height).toBeCloseTo(297, 0)
    }
  }
  const wordsOf = ({ pages }: ReadPdf) => pages.map(({ words }) => words).join(' ')

  const card = await sheet('Kit card alone', 'the kit card')
  isA4(card)
  expect(card.pages).toHaveLength(1)
  for (const said of [
    'In this kit',
    'Moss',
    'crochet hook',
    'wooden bead',
    'Hang it from four points',
    'not a toy',
  ])
    expect(wordsOf(card)).toContain(said)
  expect(wordsOf(card)).not.toContain('€')

  const packing = await sheet('Packing list, for the seller', 'the packing list')
  isA4(packing)
  for (const said of ['Winding and cutting', 'To buy for the batch', 'Breaks even', 'Before selling'])
    expect(wordsOf(packing)).toContain(said)

  const labels = await sheet('Labels', 'the labels')
  isA4(labels)
  expect(labels.pages).toHaveLength(1)
  expect(wordsOf(labels)).toContain('Contents: ')
  await page.getByText('25 labels, one for each kit').click()
  const run = await readPdf(await exported(() => hands.press('Export the labels as PDF')))
  expect(wordsOf(run).match(/Crochet kit/g)).toHaveLength(25)

  const putIn = await sheet('Card and list, to put in', 'card and list')
  expect(wordsOf(putIn)).toContain('Along the cord')
  expect(wordsOf(putIn)).not.toContain('To buy for the batch')

  for (const [button, heading] of [
    ['Along the cord (CSV)', 'number,what,colourway'],
    ['Winding and cutting (CSV)', 'kind,what,in one kit'],
    ['Purchases (CSV)', 'what,fibre,dye lot,grams each'],
    ['Materials (CSV)', 'yarn,grams,'],
  ] as const) {
    const text = new TextDecoder().decode(await exported(() => hands.press(button)))
    expect(text.replace(/^\ufeff/, '').startsWith(heading)).toBe(true)
    expect(text.trimEnd().split('\r\n').length).toBeGreaterThan(2)
  }
}
