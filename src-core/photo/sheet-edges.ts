/** The corners of the sheet to a fraction of a pixel: a line fitted to each of its edges, and where they meet. */
import type { Corners } from './homography'
import { lightAt } from './picture'
import type { Picture, Spot } from './picture'
import { crossing } from './regions'

/** Cuts across each edge, and how much of it they leave out at both ends (rounded or bent corners). */
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
}

const isInside = ({ width, height }: Picture, { x, y }: Spot): boolean =>
  x >= 0 && y >= 0 && x <= width - 1 && y <= height - 1

/** Where the light changes most on a cut of ±reach pixels across the edge at `middle`; null where it hardly does. */
function cutAt(picture: Picture, middle: Spot, along: Spot, reach: number): Cut | null {
  const step = Math.max(0.5, reach / 60)
  const count = 2 * Math.round(reach / step) + 1
  const across = { x: -along.y, y: along.x }
  const values = new Float64Array(3 * count)
  const light = new Float64Array(3)
  if (!isInside(picture, middle)) return null
  for (let at = 0; at < count; at++) {
    const off = (at - (count - 1) / 2) * step
    for (const by of ALONG) {
      lightAt(
        picture,
        middle.x + off * across.x + by * along.x,
        middle.y + off * across.y + by * along.y,
        light,
      )
      for (let c = 0; c < 3; c++) values[3 * at + c]! += Math.cbrt(light[c]! / 3)
    }
  }
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
  const off = (sum / weight - (count - 1) / 2) * step
  let change = 0
  const [low, high] = [Math.max(0, top - 8), Math.min(count - 1, top + 8)]
  for (let c = 0; c < 3; c++) change += (values[3 * high + c]! - values[3 * low + c]!) ** 2
  return {
    spot: { x: middle.x + off * across.x, y: middle.y + off * across.y },
    // A blurred step of height h rises by h / (σ √(2π)) at its middle.
    blur: (Math.sqrt(change) / (slopes[top]! * Math.sqrt(2 * Math.PI))) * step,
  }
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

/** The corners once more, from lines fitted to cuts of ±reach pixels across each edge. */
function oncemore(picture: Picture, corners: Corners, reach: number): SheetEdges | null {
  const lines: Line[] = []
  const blurs: number[] = []
  for (let side = 0; side < 4; side++) {
    const from = corners[side]!
    const to = corners[(side + 1) % 4]!
    const length = Math.hypot(to.x - from.x, to.y - from.y)
    const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length }
    const cuts = Array.from({ length: CUTS }, (_, at) => {
      const t = LEFT_OUT + ((1 - 2 * LEFT_OUT) * (at + 0.5)) / CUTS
      return cutAt(
        picture,
        { x: from.x + t * (to.x - from.x), y: from.y + t * (to.y - from.y) },
        along,
        reach,
      )
    }).filter((cut) => cut !== null)
    const line = fitLine(cuts.map(({ spot }) => spot))
    if (!line) return null
    lines.push({ ...line, kept: (line.kept * cuts.length) / CUTS })
    blurs.push(...cuts.map(({ blur }) => blur))
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

/** Corners to a fraction of a pixel from rough ones; null where an edge cannot be made out. */
export function fineCorners(picture: Picture, about: Corners): SheetEdges | null {
  const size = Math.hypot(about[2].x - about[0].x, about[2].y - about[0].y)
  let edges: SheetEdges | null = { corners: about, stray: 0, blur: 0, found: 0 }
  const rough = ROUGH * Math.max(picture.width, picture.height)
  // A card is small: what is a part of a sheet's edge is nearly nothing of its own.
  for (const least of [
    { share: 0.02, pixels: rough },
    { share: 0.01, pixels: 0 },
    { share: 0.006, pixels: 0 },
  ]) {
    const reach = Math.max(6, least.share * size, least.pixels)
    const next: SheetEdges | null = oncemore(picture, edges.corners, reach)
    if (!next) return null
    edges = next
  }
  return edges
}

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
