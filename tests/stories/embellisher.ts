/** What the embellisher's stories in Electron and in a browser have in common. */
import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import type { AppliqueLayout, Project } from '../../shared-types/project'
import { placeOutline } from '../../src-core/geometry/place'
import { distanceToEdge } from '../../src-core/geometry/points'
import { planProject } from '../../src-core/plan'
import { eventually } from '../src-main/documents/session/world'
import { boxOfPoints, readPaths } from '../src-main/paper/read-paths'
import { readPdf } from '../src-main/paper/read-pdf'
import { laidTogether, tilesOf } from '../src-main/paper/template-tiles'
import { Hands } from './hands'

/** The project as the host keeps it. */
export async function kept(page: Page): Promise<Project> {
  const opened = await page.evaluate(() => window.petalyard.currentProject())
  if (opened.outcome !== 'done') throw new Error('there is no project')
  return JSON.parse(opened.value.text) as Project
}

const itemsOf = (project: Project) => (project.layout as AppliqueLayout).items ?? []
export const items = async (page: Page) => itemsOf(await kept(page))

/** Waits until the host keeps so many items, and answers them. */
export async function itemCount(page: Page, count: number) {
  await eventually(async () => expect(await items(page)).toHaveLength(count))
  return items(page)
}

/** Waits until the plan has nothing to mend, or just this. */
export const awaitToMend = (page: Page, ...codes: readonly string[]): Promise<void> =>
  eventually(async () => {
    const told = planProject(await kept(page))
      .findings.filter(({ severity, code }) => severity !== 'note' && code.startsWith('applique/'))
      .map(({ code }) => code)
    expect(told).toEqual(codes)
  })

/** Opens a place that may be open already. */
export async function openPlace(page: Page, name: string): Promise<void> {
  if ((await page.getByRole('button', { name: `Close ${name}` }).count()) > 0) return
  await new Hands(page).go(name)
}

/** From the first start to a panel of 40 × 40 cm with a rim of 20 mm and nothing on it yet. */
export async function startPanel(page: Page, hands: Hands): Promise<void> {
  await hands.press('Start from your own motif')
  await hands.fill('Petals', '5')
  await hands.fill('Tip to opposite dip', '5 cm')
  await hands.fill(/^Cent(er|re) to dip$/, '20 mm')
  await hands.press('Start with this motif')
  await openPlace(page, 'Arrangement')
  await hands.press('Appliqué', 'radio')
  await page.getByText(/Nothing lies on the panel yet/).waitFor()
  await hands.fill('Width', '40 cm')
  await hands.fill('Height', '400 mm')
  await hands.fill('Seam allowance', '2 cm')
  await hands.fill('Minimum gap', '2 mm')
}

/** The middle of the panel on the screen: both dimension lines have their number in their middle. */
export async function middleOnScreen(page: Page): Promise<{ x: number; y: number }> {
  const middle = async (name: string) => {
    // A field where it can be typed, words where the panel follows a drawn outline.
    const field = page.getByRole('textbox', { name, exact: true }).or(page.getByTitle(name, { exact: true }))
    const box = (await field.boundingBox())!
    return { x: box.x + box.width / 2, y: box.y + box.height / 2 }
  }
  const across = await middle('Width of the panel')
  const down = await middle('Height of the panel')
  return { x: across.x, y: down.y }
}

/** Drags the mouse over the map. */
export async function drag(
  page: Page,
  from: { x: number; y: number },
  by: { x: number; y: number },
): Promise<void> {
  await page.mouse.move(from.x, from.y)
  await page.mouse.down()
  for (let step = 1; step <= 8; step++)
    await page.mouse.move(from.x + (by.x * step) / 8, from.y + (by.y * step) / 8)
  await page.mouse.up()
}

/** Takes everything back and answers the names of the steps, the last one first. */
export async function undoAll(page: Page): Promise<string[]> {
  const names: string[] = []
  for (;;) {
    const undo = page.getByRole('button', { name: /^Undo: / })
    if ((await undo.count()) === 0) return names
    names.push(((await undo.getAttribute('aria-label')) ?? '').replace('Undo: ', ''))
    await undo.click()
  }
}

/**
 * Checks a printed template (`reverse`: the mirrored one) against the plan of the project: paper, squares, words, and
 * that every outline is there, corner by corner within 0.1 mm.
 */
export async function checkTemplate(
  file: Uint8Array,
  project: Project,
  paper: readonly [number, number],
  reverse = false,
): Promise<void> {
  const plan = planProject(project)
  const bytes = new Uint8Array(file)
  const read = await readPdf(bytes)
  const paths = await readPaths(bytes)
  for (const { width, height } of read.pages)
    expect([width, height].sort((a, b) => a - b)).toEqual(
      paper.map((side) => expect.closeTo(side, 1) as number),
    )
  expect(read.viewerPreferences).toMatchObject({ PrintScaling: 'None' })
  for (const words of ['50 mm', '1 in', 'Print at 100 %, no scaling'])
    expect(read.pages[0]!.words).toContain(words)
  // By less where that saves a sheet.
  const overlap = Number(/overlap by (\d+) mm/.exec(read.pages[0]!.words)?.[1])
  expect([6, 10]).toContain(overlap)
  const squares = paths[0]!
    .filter(({ points, stroked }) => stroked && points.length === 4)
    .map(({ points }) => boxOfPoints(points))
  for (const side of [50, 25.4])
    expect(
      squares.some(
        ({ left, right, top, bottom }) =>
          Math.abs(right - left - side) < 0.02 && Math.abs(bottom - top - side) < 0.02,
      ),
    ).toBe(true)

  const tiles = tilesOf(read, paths)
  expect(tiles.length).toBeGreaterThan(1)
  const origins = laidTogether(tiles, paths, overlap)
  const accounts = new Map(plan.accounts!.map((account) => [account.id, account]))
  for (const motif of plan.motifs) {
    const outline = placeOutline(accounts.get(motif.motif!)!.outline, motif)
    const seen = new Set<number>()
    for (const [{ window, paths: clipped }, { x, y }] of origins) {
      outline.forEach((point, corner) => {
        const at = { x: x + (reverse ? plan.size.width - point.x : point.x), y: y + point.y }
        if (at.x < window.left || at.x > window.right || at.y < window.top || at.y > window.bottom) return
        const near = clipped.some(
          ({ points, stroked }) =>
            stroked && points.some((a, k) => distanceToEdge(at, a, points[(k + 1) % points.length]!) < 0.1),
        )
        if (near) seen.add(corner)
      })
    }
    expect(seen.size, `item ${motif.label}`).toBe(outline.length)
  }
}
