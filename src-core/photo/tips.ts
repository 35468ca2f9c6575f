/** How far tips reach, each by itself. */
import { leastSquares } from './light'
import { DIRECTIONS } from './symmetry'
import type { Symmetry } from './symmetry'

/** Share of a petal's sector on each side of its tip from which the tip is fitted. */
const TOP = 0.15
/** How far from its even place a tip is looked for, as a share of the sector. */
const ASTRAY = 0.2
/** A pointed fit is taken where it leaves this share of the round one's residue. */
const POINTED = 0.75

export const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, each) => sum + each, 0) / Math.max(1, values.length)

export const spreadOf = (values: readonly number[]): number => {
  const mean = meanOf(values)
  return Math.sqrt(meanOf(values.map((each) => (each - mean) ** 2)))
}

const reachAt = (reach: Float64Array, at: number): number =>
  reach[((Math.round(at) % DIRECTIONS) + DIRECTIONS) % DIRECTIONS]!

/**
 * The height of a top (or, upside down, of a hollow) about a direction: a parabola, or one with a point where that
 * fits better, through the reach nearby, so that single stitches even out.
 */
function topAt(
  reach: Float64Array,
  centre: number,
  sector: number,
  sign: 1 | -1,
): { far: number; at: number } {
  const smooth = Math.max(1, Math.round(0.08 * sector))
  let best = { far: -Infinity, at: centre }
  for (let by = -Math.round(ASTRAY * sector); by <= ASTRAY * sector; by++) {
    let sum = 0
    for (let i = -smooth; i <= smooth; i++) sum += sign * reachAt(reach, centre + by + i)
    if (sum > best.far + 1e-9) best = { far: sum, at: centre + by }
  }
  const half = Math.max(3, Math.round(TOP * sector))
  const offs = Array.from({ length: 2 * half + 1 }, (_, at) => at - half)
  const values = offs.map((off) => reachAt(reach, best.at + off))
  const fit = (rows: number[][]) => {
    const found = leastSquares(
      rows,
      values,
      rows.map(() => 1),
    )
    const residue = rows.reduce(
      (sum, row, at) => sum + (values[at]! - row.reduce((all, by, i) => all + by * found[i]!, 0)) ** 2,
      0,
    )
    return { found, residue }
  }
  const round = fit(offs.map((off) => [1, off / half, (off / half) ** 2]))
  const pointed = fit(offs.map((off) => [1, off / half, (off / half) ** 2, Math.abs(off / half)]))
  if (pointed.residue < POINTED * round.residue && sign * pointed.found[3]! < 0)
    return { far: pointed.found[0]!, at: best.at }
  const [flat, slope, bend] = round.found as [number, number, number]
  const off = sign * bend < 0 ? Math.max(-1, Math.min(1, -slope / (2 * bend))) : 0
  return { far: flat + slope * off + bend * off * off, at: best.at + off * half }
}

/** Reach and direction (as an index into the reach) of every tip. */
export function tipsOf({ reach, order, turn }: Symmetry): { far: number; at: number }[] {
  const sector = DIRECTIONS / order
  const first = (turn / (2 * Math.PI)) * DIRECTIONS
  return Array.from({ length: order }, (_, petal) => topAt(reach, first + petal * sector, sector, 1))
}

/** The middles of straight or shallow sides, between the tips. */
export function hollowsOf({ reach, order, turn }: Symmetry): number[] {
  const sector = DIRECTIONS / order
  const first = (turn / (2 * Math.PI)) * DIRECTIONS
  return Array.from(
    { length: order },
    (_, petal) => topAt(reach, first + (petal + 0.5) * sector, sector, -1).far,
  )
}
