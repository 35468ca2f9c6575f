/** The corners of the sheet to a fraction of a pixel: a line fitted to each of its edges, and where they meet. */
import type { Corners } from './homography'
import { LIGHT_OF_BYTE } from './picture'
import type { Picture, Spot } from './picture'
import { crossing } from './regions'

/** Cuts across each edge when it is measured, and how much of it they leave out at both ends (rounded or bent corners). */
const CUTS = 120
const LEFT_OUT = 0.08
/** Width of the lines averaged along the edge, in pixels: three of them a pixel apart. */
const ALONG = [-1, 0, 1]

export interface SheetEdges {
  readonly corners: Corners
  /** How far the edge's points lie from their lines, rms in pixels. */
  readonly stray: number
  /** Standard deviation of the blur across the edges, in pixels (median). */
  readonly blur: number
  /** Share of the cuts that found their line. */
  readonly found: number
}

interface Cut {
  readonly spot: Spot
  readonly blur: number
  /** Where the light changes most elsewhere on the same cut. */
  readonly other: Spot | null
}

const isInside = ({ width, height }: Picture, { x, y }: Spot): boolean =>
  x >= 0 && y >= 0 && x <= width - 1 && y <= height - 1

/**
 * Adds lightness along a line of places, (x, y) being the first and (dx, dy) the way to the next. Bilinear; pixel centres
 * lie at whole numbers, outside the nearest counts. Nothing is handed to and fro: this is done half a million times.
 */
function addAlong(
  { width, height, data }: Picture,
  x: number,
  y: number,
  dx: number,
  dy: number,
  values: Float64Array,
): void {
  const [right, bottom] = [width - 1.001, height - 1.001]
  const next = width > 1 ? 4 : 0
  const below = height > 1 ? 4 * width : 0
  for (let at = 0; at < values.length; at += 3) {
    const left = Math.min(right, Math.max(0, x))
    const top = Math.min(bottom, Math.max(0, y))
    const column = left | 0
    const row = top | 0
    const u = left - column
    const v = top - row
    const p = 4 * (row * width + column)
    const q = p + below
    const w0 = (1 - u) * (1 - v)
    const w1 = u * (1 - v)
    const w2 = (1 - u) * v
    const w3 = u * v
    const red = LIGHT_OF_BYTE[data[p]!]! * w0 + LIGHT_OF_BYTE[data[p + next]!]! * w1 + LIGHT_OF_BYTE[data[q]!]! * w2 + LIGHT_OF_BYTE[data[q + next]!]! * w3 // prettier-ignore
    const green = LIGHT_OF_BYTE[data[p + 1]!]! * w0 + LIGHT_OF_BYTE[data[p + next + 1]!]! * w1 + LIGHT_OF_BYTE[data[q + 1]!]! * w2 + LIGHT_OF_BYTE[data[q + next + 1]!]! * w3 // prettier-ignore
    const blue = LIGHT_OF_BYTE[data[p + 2]!]! * w0 + LIGHT_OF_BYTE[data[p + next + 2]!]! * w1 + LIGHT_OF_BYTE[data[q + 2]!]! * w2 + LIGHT_OF_BYTE[data[q + next + 2]!]! * w3 // prettier-ignore
    values[at]! += Math.cbrt(red / 3)
    values[at + 1]! += Math.cbrt(green / 3)
    values[at + 2]! += Math.cbrt(blue / 3)
    x += dx
    y += dy
  }
}

/** Where the light changes most on a cut of ±reach pixels across the edge at `middle`; null where it hardly does. */
function cutAt(picture: Picture, middle: Spot, along: Spot, reach: number): Cut | null {
  const step = Math.max(0.5, reach / 60)
  const count = 2 * Math.round(reach / step) + 1
  const across = { x: -along.y, y: along.x }
  const values = new Float64Array(3 * count)
  if (!isInside(picture, middle)) return null
  for (const by of ALONG)
    addAlong(
      picture,
      middle.x + by * along.x - ((count - 1) / 2) * step * across.x,
      middle.y + by * along.y - ((count - 1) / 2) * step * across.y,
      step * across.x,
      step * across.y,
      values,
    )
  const slopes = new Float64Array(count)
  for (let at = 2; at < count - 2; at++) {
    let sum = 0
    for (let c = 0; c < 3; c++) {
      const slope =
        2 * values[3 * (at + 2) + c]! +
        values[3 * (at + 1) + c]! -
        values[3 * (at - 1) + c]! -
        2 * values[3 * (at - 2) + c]!
      sum += slope * slope
    }
    slopes[at] = Math.sqrt(sum) / 10
  }
  let top = 0
  for (let at = 1; at < count; at++) if (slopes[at]! > slopes[top]!) top = at
  if (top < 3 || top > count - 4) return null
  const spotAt = (place: number): Spot => {
    const off = (place - (count - 1) / 2) * step
    return { x: middle.x + off * across.x, y: middle.y + off * across.y }
  }
  // The middle of the peak down to half its height.
  let sum = 0
  let weight = 0
  const half = slopes[top]! / 2
  for (let by = 0; top + by < count && slopes[top + by]! > half; by++) {
    sum += (slopes[top + by]! - half) * (top + by)
    weight += slopes[top + by]! - half
  }
  for (let by = 1; top - by >= 0 && slopes[top - by]! > half; by++) {
    sum += (slopes[top - by]! - half) * (top - by)
    weight += slopes[top - by]! - half
  }
  let change = 0
  const [low, high] = [Math.max(0, top - 8), Math.min(count - 1, top + 8)]
  for (let c = 0; c < 3; c++) change += (values[3 * high + c]! - values[3 * low + c]!) ** 2
  return {
    spot: spotAt(sum / weight),
    other: otherPeak(slopes, top, spotAt),
    // A blurred step of height h rises by h / (σ √(2π)) at its middle.
    blur: (Math.sqrt(change) / (slopes[top]! * Math.sqrt(2 * Math.PI))) * step,
  }
}

/** The least of the steepest slope that a second one on the same cut has. */
const OTHER = 0.3

/** The second steepest place of a cut, behind a hollow that parts it from the steepest one. */
function otherPeak(slopes: Float64Array, top: number, spotAt: (place: number) => Spot): Spot | null {
  let best = -1
  for (const way of [-1, 1]) {
    let least = slopes[top]!
    for (let at = top + way; at > 2 && at < slopes.length - 3; at += way) {
      least = Math.min(least, slopes[at]!)
      const isPeak = slopes[at]! >= slopes[at - 1]! && slopes[at]! > slopes[at + 1]!
      if (isPeak && least < slopes[at]! / 2 && (best < 0 || slopes[at]! > slopes[best]!)) best = at
    }
  }
  return best >= 0 && slopes[best]! > OTHER * slopes[top]! ? spotAt(best) : null
}

interface Line {
  readonly from: Spot
  readonly to: Spot
  readonly stray: number
  readonly kept: number
}

/** The line through points, by least squares across it, points far off counting less and less (Tukey's biweight). */
export function fitLine(points: readonly Spot[]): Line | null {
  if (points.length < 8) return null
  let weights = points.map(() => 1)
  let line: Line | null = null
  for (let round = 0; round < 12; round++) {
    const total = weights.reduce((sum, weight) => sum + weight, 0)
    if (total < 4) return line
    const mx = points.reduce((sum, { x }, at) => sum + weights[at]! * x, 0) / total
    const my = points.reduce((sum, { y }, at) => sum + weights[at]! * y, 0) / total
    let xx = 0
    let xy = 0
    let yy = 0
    points.forEach(({ x, y }, at) => {
      xx += weights[at]! * (x - mx) ** 2
      xy += weights[at]! * (x - mx) * (y - my)
      yy += weights[at]! * (y - my) ** 2
    })
    const turn = Math.atan2(2 * xy, xx - yy) / 2
    const [ux, uy] = [Math.cos(turn), Math.sin(turn)]
    const off = points.map(({ x, y }) => (x - mx) * -uy + (y - my) * ux)
    const sizes = off.map(Math.abs).sort((a, b) => a - b)
    const scale = Math.max(0.15, 1.4826 * sizes[Math.floor(sizes.length / 2)]!)
    weights = off.map((by) => Math.max(0, 1 - (by / (4.685 * scale)) ** 2) ** 2)
    const kept = off.filter((by) => Math.abs(by) < 3 * scale)
    line = {
      from: { x: mx, y: my },
      to: { x: mx + ux, y: my + uy },
      stray: Math.sqrt(kept.reduce((sum, by) => sum + by * by, 0) / kept.length),
      kept: kept.length / points.length,
    }
  }
  return line
}

/** The corners once more, from lines fitted to cuts of ±reach pixels across each edge; of one side by its second lines. */
function oncemore(
  picture: Picture,
  corners: Corners,
  reach: number,
  cuts: number,
  other = -1,
): SheetEdges | null {
  const lines: Line[] = []
  const blurs: number[] = []
  for (let side = 0; side < 4; side++) {
    const from = corners[side]!
    const to = corners[(side + 1) % 4]!
    const length = Math.hypot(to.x - from.x, to.y - from.y)
    const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length }
    const seen = Array.from({ length: cuts }, (_, at) => {
      const t = LEFT_OUT + ((1 - 2 * LEFT_OUT) * (at + 0.5)) / cuts
      return cutAt(
        picture,
        { x: from.x + t * (to.x - from.x), y: from.y + t * (to.y - from.y) },
        along,
        reach,
      )
    }).filter((cut) => cut !== null)
    const spots = seen.map((cut) => (side === other ? cut.other : cut.spot)).filter((spot) => spot !== null)
    const line = fitLine(spots)
    if (!line) return null
    lines.push({ ...line, kept: (line.kept * spots.length) / cuts })
    blurs.push(...seen.map(({ blur }) => blur))
  }
  const met = lines.map((line, side) => {
    const before = lines[(side + 3) % 4]!
    return crossing(before.from, before.to, line.from, line.to)
  })
  if (met.some((spot) => spot === null)) return null
  blurs.sort((a, b) => a - b)
  return {
    corners: met as unknown as Corners,
    stray: Math.max(...lines.map(({ stray }) => stray)),
    blur: blurs[Math.floor(blurs.length / 2)]!,
    found: Math.min(...lines.map(({ kept }) => kept)),
  }
}

/** How far off rough corners may be, as a share of the picture's longer side: two places of the search and the blur. */
const ROUGH = 1 / 120

/** Reaches of the cuts, as a share of the sheet's diagonal, and how many they are. A card is small: what is a part of a sheet's edge is nearly nothing of its own. */
const PASSES = [
  { share: 0.02, cuts: CUTS / 2 },
  { share: 0.01, cuts: CUTS / 2 },
  { share: 0.006, cuts: CUTS },
] as const

/** Corners to a fraction of a pixel from rough ones, of one side by its second lines at first; null where an edge cannot be made out. */
export function fineCorners(picture: Picture, about: Corners, other = -1): SheetEdges | null {
  const size = Math.hypot(about[2].x - about[0].x, about[2].y - about[0].y)
  const rough = ROUGH * Math.max(picture.width, picture.height)
  let edges: SheetEdges | null = null
  for (const [pass, { share, cuts }] of PASSES.entries()) {
    const reach = Math.max(6, share * size, pass === 0 ? rough : 0)
    edges = oncemore(picture, edges?.corners ?? about, reach, cuts, pass === 0 ? other : -1)
    if (!edges) return null
  }
  return edges
}

/** The corners where each side in turn is the second line along it: the first may be a seam of the table, or a shadow. */
export const otherCorners = (picture: Picture, about: Corners): SheetEdges[] =>
  [0, 1, 2, 3].map((side) => fineCorners(picture, about, side)).filter((edges) => edges !== null)

/** How far to each side of a line its blur is looked for, in pixels, and which of its cuts counts: the sharper ones. */
const ROUND_REACH = 8
const SHARP = 0.25

/**
 * Standard deviation of the blur across a closed line in a picture, in pixels: where no sheet has edges to tell it by,
 * those of the motif must do. Yarn is fuzzy besides, so that the sharper quarter of its edge speaks for the lens.
 */
export function blurRound(picture: Picture, line: readonly Spot[]): number {
  const blurs = line
    .map((spot, at) => {
      const next = line[(at + 1) % line.length]!
      const before = line[(at + line.length - 1) % line.length]!
      const length = Math.hypot(next.x - before.x, next.y - before.y)
      const along = { x: (next.x - before.x) / length, y: (next.y - before.y) / length }
      return length > 0 ? cutAt(picture, spot, along, ROUND_REACH) : null
    })
    .filter((cut) => cut !== null)
    .map(({ blur }) => blur)
    .sort((a, b) => a - b)
  return blurs[Math.floor(SHARP * blurs.length)] ?? 0
}
