/**
 * Own flower, colours within the stash, the largest blanket that the stash allows, fifty made, measured again, and the
 * map: by mouse, then by keyboard.
 */
import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { BlanketLayout, Project } from '../../shared-types/project'
import { planProject } from '../../src-core/plan'
import { eventually } from '../src-main/documents/session/world'
import { readPdf } from '../src-main/paper/read-pdf'
import { answerSave, makeFolder, startDesktop } from './desktop'
import type { Desktop } from './desktop'
import { Hands, Keys, sentenceSays } from './hands'

let desktop: Desktop
let folder: Awaited<ReturnType<typeof makeFolder>>

beforeEach(async () => {
  folder = await makeFolder()
  desktop = await startDesktop(folder.path)
})
afterEach(async () => {
  await desktop?.close()
  await folder?.forget()
})

const kept = async (): Promise<Project> => {
  const opened = await desktop.window.evaluate(() => window.petalyard.currentProject())
  if (opened.outcome !== 'done') throw new Error('there is no project')
  return JSON.parse(opened.value.text) as Project
}
const fillOf = (project: Project) => (project.layout as BlanketLayout).cells?.fill
/** The order of the two colourways, when both have been kept. */
const bothColourways = () =>
  eventually(async () => {
    const order = fillOf(await kept())?.colourways ?? []
    expect(order).toHaveLength(2)
    return order
  })
const toBuy = (project: Project) => planProject(project).yarns.map((need) => need.toBuy ?? 0)

/** An own flower, weighed, in two colourways, with some of each yarn on hand. */
async function ownFlower(hands: Hands): Promise<void> {
  await hands.press('Start from your own motif')
  await hands.fill('Petals', '6')
  await hands.fill('Tip to tip, across', '80 mm')
  await hands.fill('Dip to dip, across', '56 mm')
  await hands.fill('Finished width', '60 cm')
  await hands.fill('Finished length', '80 cm')
  await hands.press('Start with this motif')
  await sentenceSays(hands.page, /^\d+ six-petal flowers of /)
  await hands.go('Motif')
  await hands.fill('Together they weigh', '43 g')
  await hands.go('Colors')
  await hands.press('Add a colorway')
  await hands.press(/^One after the other/, 'radio')
  await hands.go('Yarn')
  for (const { name } of (await kept()).yarns!) await hands.fill(`${name} on hand, by weight`, '160 g')
}

/** Marks the first so many in working order from the map, by keys. */
async function markFirst(count: number): Promise<number> {
  const page = desktop.window
  const all = planProject(await kept()).motifs.length
  await page.getByRole('application', { name: `Map of ${all} motifs` }).focus()
  await page.keyboard.press('ArrowRight')
  for (let i = 1; i < count; i++) await page.keyboard.press('.')
  await page.keyboard.press('3')
  await eventually(async () => expect(Object.keys((await kept()).made ?? {})).toHaveLength(count))
  return all
}

/** Where the next export goes. */
async function exportTo(name: string): Promise<string> {
  const path = join(folder.path, name)
  await answerSave(desktop, path)
  return path
}

/** The colour of each made motif. */
function coloursOfMade(project: Project): ReadonlyMap<string, string> {
  const colours = planProject(project).motifs.map(({ id, colourway }) => [id, colourway] as const)
  return new Map(colours.filter(([id]) => project.made?.[id] !== undefined))
}

async function mapSays(path: string, made: number, all: number, joined: number): Promise<void> {
  const { pages } = await readPdf(new Uint8Array(await readFile(path)))
  const words = pages.map((page) => page.words).join(' ')
  expect(words).toContain(`${made} of ${all} motifs made, ${joined} joined.`)
  expect(words).toContain('78 mm')
}

describe('colours from the stash', () => {
  it('by mouse: limits, order, the largest blanket, fifty made, measured again, and the map', async () => {
    const page = desktop.window
    const hands = new Hands(page)
    await ownFlower(hands)
    await hands.go('Colors')
    await hands.press('Stay within the yarn on hand', 'checkbox')
    await eventually(async () => expect(fillOf(await kept())?.withinStash).toBe(true))
    const before = await bothColourways()
    const rows = page.getByRole('list', { name: 'Order of colorways' }).getByRole('listitem')
    const from = (await rows.nth(0).locator('.handle').boundingBox())!
    const to = (await rows.nth(1).boundingBox())!
    await page.mouse.move(from.x + 8, from.y + from.height / 2)
    await page.mouse.down()
    await page.mouse.move(to.x + 8, to.y + to.height / 2 + 4, { steps: 5 })
    await page.mouse.up()
    await eventually(async () => expect(fillOf(await kept())?.colourways).toEqual([...before].reverse()))

    await hands.go('Arrangement')
    await page.getByLabel('Fit to').selectOption('stash')
    const fits = page.getByRole('list', { name: 'What fits best' }).getByRole('button')
    await fits.first().waitFor({ timeout: 60_000 })
    await fits.first().click()
    await eventually(async () => expect(Math.max(...toBuy(await kept()))).toBe(0))
    const project = await kept()
    const { columns = 0, rows: count = 0 } = project.layout as BlanketLayout
    const larger = {
      ...project,
      layout: { ...project.layout, columns: columns + 2, rows: count + 2 } as BlanketLayout,
    }
    expect(Math.max(...toBuy(larger))).toBeGreaterThan(0)

    const all = await markFirst(50)
    const colours = coloursOfMade(await kept())
    await hands.go('Motif')
    await hands.fill('Tip to tip, across', '78 mm')
    await hands.go('Progress')
    await page.getByText(/^New measurements: size /).waitFor()
    await hands.go('Colors')
    await hands.press(/^Row by row/, 'radio')
    await eventually(async () => expect(fillOf(await kept())?.pattern).toBe('rows'))
    expect(coloursOfMade(await kept())).toEqual(colours)
    const path = await exportTo('map.pdf')
    await hands.go('Paper')
    await hands.press('Export the map as PDF')
    await page
      .getByText(/^Exported: map\.pdf/)
      .first()
      .waitFor()
    await mapSays(path, 50, all, 50)
  })

  it('by keyboard: order, a limit, what is made already, measured again, and the map', async () => {
    const page = desktop.window
    await ownFlower(new Hands(page))
    await new Hands(page).go('Colors')
    const keys = new Keys(page)
    const before = await bothColourways()
    await keys.reach(/, number 1 of 2$/)
    await keys.press('Alt+ArrowDown')
    await eventually(async () => expect(fillOf(await kept())?.colourways).toEqual([...before].reverse()))
    await keys.reach('Stay within the yarn on hand')
    await keys.press('Space')
    await eventually(async () => expect(fillOf(await kept())?.withinStash).toBe(true))
    await keys.reach(/ at most$/)
    await keys.type('7')
    await keys.press('Enter')
    await eventually(async () => {
      const project = await kept()
      const [[id, most] = ['', 0]] = Object.entries(fillOf(project)?.most ?? {})
      expect(most).toBe(7)
      expect(planProject(project).counts.byColourway[id]).toBeLessThanOrEqual(7)
    })
    await new Hands(page).go('Arrangement')
    await page.getByLabel('Fit to').focus()
    await page.keyboard.type('motifs')
    await keys.reach('Motifs already made')
    await keys.type('50')
    await keys.press('Enter')
    await page
      .getByRole('button', { name: /left over/ })
      .first()
      .waitFor({ timeout: 60_000 })
    await keys.reach(/left over/)
    await keys.press('Enter')
    await eventually(async () => {
      const motifs = planProject(await kept()).motifs.length
      expect(motifs).toBeLessThanOrEqual(50)
      expect(motifs).toBeGreaterThan(40)
    })
    // What is taken for motifs already made marks them.
    const all = planProject(await kept()).motifs.length
    await eventually(async () => expect(Object.keys((await kept()).made ?? {})).toHaveLength(all))
    const path = await exportTo('keys.pdf')
    const places = page.getByRole('navigation', { name: 'Places of the job' })
    await places.getByRole('button', { name: 'Motif', exact: true }).focus()
    await keys.press('Enter')
    await keys.reach('Tip to tip, across')
    await keys.type('78 mm')
    await keys.press('Enter')
    await eventually(async () => expect((await kept()).motifs?.[0]).toMatchObject({ overTips: 78 }))
    await places.getByRole('button', { name: 'Paper', exact: true }).focus()
    await keys.press('Enter')
    await keys.reach('Export the map as PDF')
    await keys.press('Enter')
    await page
      .getByText(/^Exported: keys\.pdf/)
      .first()
      .waitFor()
    await mapSays(path, all, all, 0)
  })
})
