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
/** A tip lies between this share of the farthest place near it and that place: spikes are more than stitches. */
const NEAR_FARTHEST = 0.99
/** What blur takes from a tip at most, in multiples of the blur; two quarters of a bell lie within its quartiles. */
const MOST_BLUNTED = 0.9
const QUARTILE = 0.674

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

/** The mean of each value of a round and of so many on both sides of it. */
export const evenedOut = (values: ArrayLike<number>, by: number): number[] =>
  Array.from({ length: values.length }, (_, at) => {
    let sum = 0
    for (let i = -by; i <= by; i++) sum += values[(at + i + values.length) % values.length]!
    return sum / (2 * by + 1)
  })

/** The mean of the middle half. */
export function middleMean(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const cut = sorted.length >> 2
  return meanOf(sorted.slice(cut, sorted.length - cut))
}

interface Tip {
  readonly far: number
  readonly at: number
  /** How far it is seen to reach, without what the blur took. */
  readonly seen: number
}

/** The farthest that the reach comes near a tip, over three directions together. */
function farthest(reach: Float64Array, { at }: Pick<Tip, 'at'>, half: number): number {
  let most = 0
  for (let by = -half; by <= half; by++) {
    const far = (reachAt(reach, at + by - 1) + reachAt(reach, at + by) + reachAt(reach, at + by + 1)) / 3
    if (far > most) most = far
  }
  return most
}

/**
 * How much of a narrow tip the blur takes: the line at half the light lies where a strip is 0.67 of the blur to each
 * side (the normal distribution's quartile), in a wedge that much over the slope of its sides. All petals together.
 */
function blunted(
  reach: Float64Array,
  tips: readonly Pick<Tip, 'at'>[],
  sector: number,
  blur: number,
): number {
  const profile = Array.from({ length: Math.floor(sector / 2) }, (_, off) =>
    meanOf(tips.flatMap(({ at }) => [reachAt(reach, at + off), reachAt(reach, at - off)])),
  )
  const top = Math.max(...profile.slice(0, Math.max(2, Math.round(TOP * sector))))
  const widthAt = (depth: number) => {
    const off = profile.findIndex((far) => far < top - depth)
    return off < 0 ? Infinity : (off * 2 * Math.PI * top) / DIRECTIONS
  }
  const slope = (widthAt(5 * blur) - widthAt(2 * blur)) / (3 * blur)
  return Number.isFinite(slope) ? Math.min(MOST_BLUNTED, QUARTILE / Math.max(0.1, slope)) * blur : 0
}

/** Reach and direction (as an index into the reach) of every tip. `blur` in places. */
export function tipsOf({ reach, order, turn }: Symmetry, blur: number): Tip[] {
  const sector = DIRECTIONS / order
  const first = (turn / (2 * Math.PI)) * DIRECTIONS
  const half = Math.max(3, Math.round(TOP * sector))
  const fitted = Array.from({ length: order }, (_, petal) => topAt(reach, first + petal * sector, sector, 1))
  const lost = blunted(reach, fitted, sector, blur)
  return fitted.map((tip) => {
    const most = farthest(reach, tip, half)
    return { at: tip.at, seen: tip.far, far: Math.min(most, Math.max(tip.far, NEAR_FARTHEST * most)) + lost }
  })
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

/** How far above a dip its breadth is taken, and from what breadth on it is open, in multiples of the blur. */
const BREADTH_AT = 1.5
const BROAD = 6
/** From how far off midway on, as a share of what lies between two tips, a dip is elsewhere. */
const ELSEWHERE = 0.1

/** How far from midway between two tips a dip is looked for, as a share of what lies between them: teeth that are flat have theirs at a corner. */
const DIP_ASTRAY = 0.4

/** What the outline itself shows between two tips. */
export interface OpenDip {
  /** How near to the middle it comes: never too near, too far where blur fills a cleft. */
  readonly far: number
  /** It is so wide there that no blur fills it: the line is right. */
  readonly broad: boolean
}

/** The same and its direction, as an index into the reach: that of the dip where it shows one, else midway. */
interface FoundDip extends OpenDip {
  readonly at: number
}

/** The dips of the outline between neighbouring tips. `blur` in places. */
export function openDips(
  { reach, order }: Symmetry,
  tips: readonly { at: number }[],
  blur: number,
): FoundDip[] {
  return tips.map((tip, petal) => {
    const next = tips[(petal + 1) % order]!
    const between = (((next.at - tip.at) % DIRECTIONS) + DIRECTIONS) % DIRECTIONS
    const centre = tip.at + between / 2
    const far = { least: Infinity, at: centre }
    const astray = Math.round(DIP_ASTRAY * between)
    for (let by = -astray; by <= astray; by++) {
      let sum = 0
      for (let i = -1; i <= 1; i++) sum += reachAt(reach, centre + by + i) / 3
      if (sum < far.least) Object.assign(far, { least: sum, at: centre + by })
    }
    let directions = 1
    for (const way of [-1, 1])
      for (let by = 1; by < between / 2; by++) {
        if (reachAt(reach, far.at + way * by) > far.least + BREADTH_AT * blur) break
        directions++
      }
    const breadth = (directions * 2 * Math.PI * far.least) / DIRECTIONS
    // Midway, unless it goes in far more clearly elsewhere.
    const isElsewhere =
      Math.abs(far.at - centre) > ELSEWHERE * between && reachAt(reach, centre) - far.least > BROAD * blur
    return { at: isElsewhere ? far.at : centre, far: far.least, broad: breadth > BROAD * blur }
  })
}
