/** The way of the work over a map that is not worked row by row: a line from each motif to the next. */
import type { Plan, Point } from '../../shared-types/plan'
import { remembered } from '../memo'
import type { FigureItem, Path } from './figure'
import { drawPath, INK, PAPER } from './figure'
import { arrowHead, linePath } from './path'
import { mapRows, workedByRows } from './rows'

/** From one motif to the next in the order of work, in plan mm. */
export interface WorkStep {
  readonly from: Point
  readonly to: Point
}

/** A step is drawn up to so many times the shortest one: longer lines lead through half the map. */
const LONGEST = 3
/** The line is drawn where it shows this share of all steps: fewer would be a heap of sticks (judged on prints). */
const FOLLOWED = 0.8

/** Distance from a point to a line between two points. */
function distanceTo(point: Point, { from, to }: WorkStep): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y]
  const along = ((point.x - from.x) * dx + (point.y - from.y) * dy) / (dx * dx + dy * dy || 1)
  const t = Math.min(1, Math.max(0, along))
  return Math.hypot(from.x + t * dx - point.x, from.y + t * dy - point.y)
}

const lengthOf = ({ from, to }: WorkStep): number => Math.hypot(to.x - from.x, to.y - from.y)

/** Every step from a motif to the next by their working numbers; none where rows say the order already. */
const stepsOf = remembered((plan: Plan): readonly WorkStep[] => {
  if (workedByRows(mapRows(plan))) return []
  const inOrder = [...plan.motifs].sort((a, b) => Number(a.label) - Number(b.label))
  return inOrder.slice(1).map((to, i) => ({ from: inOrder[i]!, to }))
})

/**
 * The steps that a line can show without running through the number of another motif, which stands so many plan mm
 * about its middle. Where too few are left, as in an order by colour, there is no line to follow: none.
 */
export function workPath(plan: Plan, clear: number): readonly WorkStep[] {
  const steps = stepsOf(plan)
  const shortest = steps.reduce((least, step) => Math.min(least, lengthOf(step)), Infinity)
  const shown = steps.filter((step) => {
    const length = lengthOf(step)
    if (length > LONGEST * shortest) return false
    // Nothing stands between two that lie as near as any.
    if (length < 1.01 * shortest) return true
    return plan.motifs.every(
      (motif) => motif === step.from || motif === step.to || distanceTo(motif, step) > clear,
    )
  })
  return shown.length >= FOLLOWED * steps.length ? shown : []
}

/** mm on paper: width of the line, of the paper on either side of it, length of its arrow heads, room before a number. */
const LINE = { width: 0.4, hem: 0.3, head: 1.1, clear: 0.3 } as const

/** The line, from the edge of each number to that of the next; `at` places a point on paper, `disc` is their radius. */
export function workPathItems(
  steps: readonly WorkStep[],
  at: (point: Point) => Point,
  disc: number,
): FigureItem[] {
  const path: Path = steps.flatMap((step) => {
    const [from, to] = [at(step.from), at(step.to)]
    const [dx, dy] = [to.x - from.x, to.y - from.y]
    const length = Math.hypot(dx, dy)
    if (length <= 2 * disc + LINE.head + LINE.clear) return []
    const on = (far: number): [number, number] => [from.x + (dx / length) * far, from.y + (dy / length) * far]
    const end = on(length - disc - LINE.clear)
    return [...linePath(...on(disc), ...end), ...arrowHead(...end, dx, dy, LINE.head)]
  })
  if (path.length === 0) return []
  return [
    drawPath(path, { stroke: PAPER, width: LINE.width + 2 * LINE.hem, cap: 'round' }),
    drawPath(path, { stroke: INK, width: LINE.width, cap: 'round' }),
  ]
}
