/** What a figure is by its outline alone: a heart, a triangle or a block. Its tip is above, its middle at 0. */
import type { FigureForm } from '../../../shared-types/plan'
import type { Outline } from '../../geometry/points'
import type { Millimetres } from '../../units/quantity'

/** Levels at which an outline is looked at. */
const LEVELS = 40
/**
 * A heart as shares of its width or height: how deep its cleft is at least and looked for, how far from the middle at
 * most, how wide a hump is beside it; how narrow its point is, and how far down it is widest (by eye).
 */
const HEART = { cleft: 0.04, deepest: 0.5, aside: 0.12, hump: 0.15, point: 0.3, widest: 2 / 3 } as const
/** A triangle has one side so narrow, against the other. */
const TRIANGLE = 0.25
/** Where the narrow and the wide end of a figure are looked at, as a share of its height. */
const NEAR_END = 0.08

const boxOf = (outline: Outline) => {
  const [xs, ys] = [outline.map(({ x }) => x), outline.map(({ y }) => y)]
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) }
}

/** Where a level cuts an outline. */
function cutsAt(outline: Outline, y: Millimetres): number[] {
  return outline
    .flatMap((a, i) => {
      const b = outline[(i + 1) % outline.length]!
      if (a.y > y === b.y > y) return []
      return [a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)]
    })
    .sort((one, other) => one - other)
}

const widthAt = (outline: Outline, y: Millimetres): Millimetres => {
  const cuts = cutsAt(outline, y)
  return cuts.length > 1 ? cuts.at(-1)! - cuts[0]! : 0
}

/** Whether a figure runs out into a point below, and is widest above. */
function isPointed(outline: Outline): boolean {
  const { left, right, top, bottom } = boxOf(outline)
  const high = bottom - top
  const levels = Array.from({ length: LEVELS - 1 }, (_, i) => top + ((i + 1) / LEVELS) * high)
  const widths = levels.map((y) => widthAt(outline, y))
  const isNarrow = widthAt(outline, bottom - NEAR_END * high) <= HEART.point * (right - left)
  return isNarrow && widths.indexOf(Math.max(...widths)) <= HEART.widest * LEVELS
}

/** How far down the cleft between two humps reaches; null where there is none. */
export function cleftOf(outline: Outline): Millimetres | null {
  const { left, right, top, bottom } = boxOf(outline)
  const [wide, high] = [right - left, bottom - top]
  let cleft: Millimetres = top
  for (let i = 1; i < LEVELS * HEART.deepest; i++) {
    const y = top + (i / LEVELS) * high
    const [from, one, two, to, more] = cutsAt(outline, y)
    if (to === undefined || more !== undefined) continue
    const isMiddle = Math.abs((one! + two!) / 2 - (left + right) / 2) < HEART.aside * wide
    if (isMiddle && Math.min(one! - from!, to - two!) > HEART.hump * wide) cleft = y
  }
  return cleft - top >= HEART.cleft * high ? cleft : null
}

/** How surely the rows of a piece end in two humps: two stand on one row, or stitches of the last one rise and fall. */
export type Humps = 'two' | 'may-be' | 'none'

/** What a piece in rows is, as it has grown. */
export function formOfRows(outline: Outline, humps: Humps): FigureForm {
  if (humps !== 'none' && isPointed(outline) && (humps === 'two' || cleftOf(outline) !== null)) return 'heart'
  const { top, bottom } = boxOf(outline)
  const high = bottom - top
  const [above, below] = [top + NEAR_END * high, bottom - NEAR_END * high].map((y) => widthAt(outline, y))
  return Math.min(above!, below!) < TRIANGLE * Math.max(above!, below!) ? 'triangle' : 'block'
}
