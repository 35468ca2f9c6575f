/** The line of the order of work on maps without rows of numbers, and the marks of joins on dark ground: read back from the PDF. */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { mapGround } from '../../../src-core/figures/map-ground'
import { MapPainter } from '../../../src-core/figures/map'
import { planProject } from '../../../src-core/plan'
import { renderMap } from '../../../src-main/paper/index'
import { DATE, flowers, VERSION } from './projects'
import { readPaths } from './read-paths'
import type { ReadPath } from './read-paths'
import { readPdf } from './read-pdf'
import type { ReadText } from './read-pdf'

const example = (name: string): Project =>
  JSON.parse(readFileSync(new URL(`../../../examples/${name}.petalyard`, import.meta.url), 'utf8')) as Project

const SENTENCE = 'The line with arrows leads from each number to the next.'
const LINE_WIDTH = 0.4
/** Points of a step in the path: its two ends, then the three of its arrow head. */
const STEP = 5

type Point = ReadPath['points'][number]
const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y)

/** The overview as it is read: where the working numbers stand, and the steps of the line between them. */
async function readOverview(project: Project) {
  const plan = planProject(project)
  const bytes = await renderMap(plan, { date: DATE, version: VERSION, style: 'ink', pages: [1] })
  const [page] = (await readPdf(bytes)).pages
  const [paths] = await readPaths(bytes)
  const lines = paths!.filter(
    ({ width, stroked, points }) =>
      stroked && Math.abs(width - LINE_WIDTH) < 0.01 && points.length % STEP === 0,
  )
  const points = lines.flatMap((line) => [...line.points])
  const steps = Array.from({ length: points.length / STEP }, (_, i) =>
    points.slice(i * STEP, i * STEP + STEP),
  )
  // The number of a row stands at the left, with none of its letters below it.
  const letters = page!.texts.filter(({ text }) => /^[A-Z]$/.test(text))
  const isOverLetter = ({ x, y, width }: ReadText): boolean =>
    letters.some((letter) => letter.y > y && letter.y - y < 5 && Math.abs(letter.x - x - width / 2) < 3)
  const numbers = new Map(
    page!.texts
      .filter((text) => /^\d+$/.test(text.text) && isOverLetter(text))
      .map(({ text, x, y, width }) => [Number(text), { x: x + width / 2, y }] as const),
  )
  return { plan, words: page!.words, numbers, steps }
}

describe('the line of the order of work', () => {
  it.each(['lantern-table-mat', 'hearthstone-hexagon'])(
    'leads over the overview of %s from each number to the next',
    async (name) => {
      const { plan, words, numbers, steps } = await readOverview(example(name))
      expect(numbers.size).toBe(plan.motifs.length)
      expect(words).toContain(SENTENCE)
      const nearest = (point: Point): number =>
        [...numbers].reduce((best, each) => (apart(each[1], point) < apart(best[1], point) ? each : best))[0]
      const followed = steps.map(([from, to]) => [nearest(from!), nearest(to!)] as const)
      for (const [from, to] of followed) expect(to).toBe(from + 1)
      expect(new Set(followed.map(([from]) => from)).size).toBe(plan.motifs.length - 1)
      // The head of each arrow is at the later one.
      for (const [, to, left, tip, right] of steps) {
        expect(apart(tip!, to!)).toBeLessThan(0.01)
        for (const side of [left, right]) expect(apart(side!, tip!)).toBeLessThan(1.6)
      }
    },
  )

  it('runs through no number of another motif', async () => {
    const { numbers, steps } = await readOverview(example('lantern-table-mat'))
    expect(steps.length).toBeGreaterThan(0)
    for (const [from, to] of steps)
      for (let share = 0.1; share < 0.95; share += 0.05) {
        const at = { x: from!.x + share * (to!.x - from!.x), y: from!.y + share * (to!.y - from!.y) }
        for (const place of numbers.values()) expect(apart(place, at)).toBeGreaterThan(1.5)
      }
  })

  it('is left out where rows have arrows, and where colours decide and it would be a heap of sticks', async () => {
    for (const order of ['there-and-back', 'colourway'] as const) {
      const { words, steps } = await readOverview(flowers({}, { order }))
      expect(words).not.toContain(SENTENCE)
      expect(steps).toHaveLength(0)
    }
    const plan = planProject(flowers({}, { order: 'centre' }))
    expect(new MapPainter(mapGround(plan, 'ink'), 0.15).workPath.length).toBeGreaterThan(0)
  })
})

describe('the marks of join points', () => {
  it('have paper round their ink, so that they are seen on dark motifs', async () => {
    const plan = planProject(example('hearthstone-hexagon'))
    const bytes = await renderMap(plan, { date: DATE, version: VERSION, style: 'ink', pages: [1] })
    const [paths] = await readPaths(bytes)
    const dots = paths!.filter(
      ({ points, stroked }) => stroked && points.length === 2 && apart(points[0]!, points[1]!) < 1e-4,
    )
    const two = plan.joins.filter(({ members, stretched }) => members.length === 2 && !stretched)
    const widths = [...new Set(dots.map(({ width }) => width.toFixed(3)))].map(Number).sort((a, b) => a - b)
    expect(widths).toHaveLength(2)
    expect(widths[1]! - widths[0]!).toBeGreaterThan(0.25)
    expect(dots.filter(({ width }) => Math.abs(width - widths[0]!) < 0.001)).toHaveLength(two.length)
  })
})
