/**
 * The edge of a large blanket from that of a small one: between a corner and the next it repeats with every column
 * (every so many, where motifs alternate) along the top and the bottom, and with every two rows along the sides.
 */
import type { Point } from '../../shared-types/plan'
import { distance } from '../geometry/points'
import type { Outline } from '../geometry/points'
import type { Millimetres } from '../units/quantity'
import type { Laid, Placement } from './blanket'

/** Counts of the smallest blanket that shows how its edge repeats, and the places that show it. */
export const REPEATING = { columns: 5, rows: 6, column: 2, row: 3 } as const

/** How exactly a corner must lie where the repeat wants it. */
const SAME_POINT: Millimetres = 0.01
/** Corners that differ by less lie equally far out. */
const LEVEL: Millimetres = 0.001

/** The four stretches of the edge that repeat, clockwise: the first corner, and the same one further on. */
export type Side = readonly [from: number, to: number]

/**
 * The closed edge of a blanket with so many repeats of columns and of rows more than `small`, or null where the edge of
 * `small` does not repeat (as in separate pieces).
 */
export function repeatEdge(
  ring: Outline,
  small: Laid,
  columns: number,
  doubleRows: number,
  step: { readonly columns: number; readonly rows: number } = { columns: 1, rows: 2 },
): Outline | null {
  const { column, row } = REPEATING
  const rows = [1, row, row + step.rows, Math.max(...small.placements.map((each) => each.row))] as const
  const at = (r: number) => small.placements.filter((each) => each.row === r).sort((a, b) => a.x - b.x)
  const [top, upper, lower, bottom] = rows.map(at) as [Placement[], Placement[], Placement[], Placement[]]
  const across: Millimetres = top[column - 1 + step.columns]!.x - top[column - 1]!.x
  const down: Millimetres = lower[0]!.y - upper[0]!.y
  const sides = [
    sideOf(ring, top[column - 1], { x: 0, y: -1 }, { x: across, y: 0 }),
    sideOf(ring, upper.at(-1), { x: 1, y: 0 }, { x: 0, y: down }),
    sideOf(ring, bottom[column - 1 + step.columns], { x: 0, y: 1 }, { x: -across, y: 0 }),
    sideOf(ring, lower[0], { x: -1, y: 0 }, { x: 0, y: -down }),
  ]
  if (sides.some((side) => side === null)) return null
  const stretches = sides as Side[]
  const start = stretches[0]![0]
  const from = (i: number): number => (i - start + ring.length) % ring.length
  const stops = stretches.flat().map(from)
  if (stops.some((stop, i) => i > 0 && stop <= stops[i - 1]!)) return null
  const steps = [
    { times: columns, x: across, y: 0 },
    { times: doubleRows, x: 0, y: down },
    { times: columns, x: -across, y: 0 },
    { times: doubleRows, x: 0, y: -down },
  ]
  const line: Point[] = []
  let shift = { x: 0, y: 0 }
  const take = (a: number, b: number): void => {
    for (let i = a; i < b; i++) {
      const { x, y } = ring[(start + i) % ring.length]!
      line.push({ x: x + shift.x, y: y + shift.y })
    }
  }
  steps.forEach(({ times, x, y }, side) => {
    const [a, b] = [stops[2 * side]!, stops[2 * side + 1]!]
    for (let i = 0; i < times; i++) {
      take(a, b)
      shift = { x: shift.x + x, y: shift.y + y }
    }
    take(a, stops[2 * side + 2] ?? ring.length)
  })
  return line
}

/** Where the edge of a motif lies farthest out, and the same corner of the one `step` further on. */
export function sideOf(ring: Outline, motif: Placement | undefined, out: Point, step: Point): Side | null {
  if (!motif) return null
  const far = ({ x, y }: Point): number => x * out.x + y * out.y
  const along = ({ x, y }: Point): number => x * step.x + y * step.y
  const halfWay = along(step) / 2
  let from = -1
  ring.forEach((point, i) => {
    // Of its own stretch: no farther along the side than half of a step.
    if (Math.abs(along(point) - along(motif)) > halfWay) return
    if (far(point) < far(motif)) return
    const best = ring[from]
    const ahead = best ? far(point) - far(best) : Infinity
    if (ahead > LEVEL || (ahead > -LEVEL && along(point) < along(best!))) from = i
  })
  const corner = ring[from]
  if (!corner) return null
  const next = { x: corner.x + step.x, y: corner.y + step.y }
  const to = ring.findIndex((point) => distance(point, next) < SAME_POINT)
  return to < 0 ? null : [from, to]
}
