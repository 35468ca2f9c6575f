/** The line round the motif, to a fraction of a place. */
import { homography, mapped, sheetCorners } from './homography'
import type { Corners } from './homography'
import type { Evened } from './light'
import type { FoundMotif } from './motif-mask'
import type { Spot } from './picture'
import type { Plane } from './rectify'
import type { SheetSize } from './sheet-sizes'

/** Distance between points of the line, in mm. */
const SPACING = 0.4

/** The outer line round a mask, along the sides of its places, clockwise as seen. */
export function boundary({ width, height, on }: FoundMotif['mask']): Spot[] {
  const start = on.indexOf(1)
  if (start < 0) return []
  const isOn = (x: number, y: number) =>
    x >= 0 && y >= 0 && x < width && y < height && on[y * width + x] === 1
  // Walks along corners of places, the mask on its right hand: right, down, left, up.
  const moves = [
    { x: 1, y: 0 },
    { x: 0, y: 1 },
    { x: -1, y: 0 },
    { x: 0, y: -1 },
  ]
  // Places ahead to the left and to the right of a corner, by direction.
  const ahead = [
    [
      { x: 0, y: -1 },
      { x: 0, y: 0 },
    ],
    [
      { x: 0, y: 0 },
      { x: -1, y: 0 },
    ],
    [
      { x: -1, y: 0 },
      { x: -1, y: -1 },
    ],
    [
      { x: -1, y: -1 },
      { x: 0, y: -1 },
    ],
  ] as const
  let x = start % width
  let y = Math.floor(start / width)
  const from = { x, y }
  let direction = 0
  const line: Spot[] = []
  do {
    line.push({ x: x - 0.5, y: y - 0.5 })
    x += moves[direction]!.x
    y += moves[direction]!.y
    const [left, right] = ahead[direction]!
    if (isOn(x + left.x, y + left.y)) direction = (direction + 3) % 4
    else if (!isOn(x + right.x, y + right.y)) direction = (direction + 1) % 4
  } while ((x !== from.x || y !== from.y) && line.length < 8 * on.length)
  return line
}

/** The outer line round a mask of a plane, roughly, as it runs in the picture. */
export function onPicture(
  mask: FoundMotif['mask'],
  { scale, left, top }: Plane,
  size: SheetSize,
  corners: Corners,
): Spot[] {
  const matrix = homography(sheetCorners(size), corners)
  return evenPoints(boundary(mask), 2 * scale).map(({ x, y }) =>
    mapped(matrix, { x: left + x / scale, y: top + y / scale }),
  )
}

/** Points at equal distances along a closed line, each the mean of the line over as much. */
export function evenPoints(line: readonly Spot[], spacing: number): Spot[] {
  const n = line.length
  const lengths = new Float64Array(n + 1)
  for (let at = 0; at < n; at++) {
    const to = line[(at + 1) % n]!
    lengths[at + 1] = lengths[at]! + Math.hypot(to.x - line[at]!.x, to.y - line[at]!.y)
  }
  const count = Math.max(12, Math.round(lengths[n]! / spacing))
  const sums = Array.from({ length: count }, () => ({ x: 0, y: 0, count: 0 }))
  for (let at = 0; at < n; at++) {
    const sum = sums[Math.min(count - 1, Math.floor((lengths[at]! / lengths[n]!) * count))]!
    sum.x += line[at]!.x
    sum.y += line[at]!.y
    sum.count++
  }
  return sums.filter((sum) => sum.count > 0).map((sum) => ({ x: sum.x / sum.count, y: sum.y / sum.count }))
}

/** Colour at a place between those of the plane. */
export function colourAt(
  { width, height }: Plane,
  ratio: Float32Array,
  x: number,
  y: number,
  into: Float64Array,
): void {
  const left = Math.min(width - 2, Math.max(0, Math.floor(x)))
  const top = Math.min(height - 2, Math.max(0, Math.floor(y)))
  const u = Math.min(1, Math.max(0, x - left))
  const v = Math.min(1, Math.max(0, y - top))
  const at = 3 * (top * width + left)
  const below = at + 3 * width
  for (let c = 0; c < 3; c++)
    into[c] =
      (ratio[at + c]! * (1 - u) + ratio[at + 3 + c]! * u) * (1 - v) +
      (ratio[below + c]! * (1 - u) + ratio[below + 3 + c]! * u) * v
}

/**
 * The line moved to where the light is halfway between the motif inside and the ground outside (a lens blurs both
 * alike); where the ground is too near another petal the line stays. `reach` in places, about twice the blur.
 */
function refined(
  plane: Plane,
  { ratio }: Evened,
  found: FoundMotif,
  points: readonly Spot[],
  reach: number,
): Spot[] {
  const colour = new Float64Array(3)
  const steps = 2 * Math.ceil(reach * 2) + 1
  const along = Array.from({ length: steps }, (_, at) => (at - (steps - 1) / 2) / 2)
  const n = points.length
  const moved = points.map((point, at) => {
    const before = points[(at + n - 2) % n]!
    const after = points[(at + 2) % n]!
    const length = Math.hypot(after.x - before.x, after.y - before.y)
    if (length === 0) return 0
    // Outwards: to the left of a line that runs clockwise as seen.
    const normal = { x: (after.y - before.y) / length, y: -(after.x - before.x) / length }
    const values = along.map((off) => {
      colourAt(plane, ratio, point.x + off * normal.x, point.y + off * normal.y, colour)
      return [colour[0]!, colour[1]!, colour[2]!] as const
    })
    const third = Math.max(2, Math.floor(steps / 4))
    const mean = (part: readonly (readonly number[])[], c: number) =>
      part.reduce((sum, each) => sum + each[c]!, 0) / part.length
    const inner = [0, 1, 2].map((c) => mean(values.slice(0, third), c))
    const outer = [0, 1, 2].map((c) => mean(values.slice(-third), c))
    const far = { x: point.x + reach * normal.x, y: point.y + reach * normal.y }
    const outside = found.distance[Math.round(far.y) * plane.width + Math.round(far.x)] ?? 0
    if (outside > found.level) return null
    const span = inner.reduce((sum, value, c) => sum + (value - outer[c]!) ** 2, 0)
    if (span < 1e-4) return null
    const shares = values.map(
      (value) => value.reduce((sum, each, c) => sum + (each - outer[c]!) * (inner[c]! - outer[c]!), 0) / span,
    )
    let best: number | null = null
    for (let i = 0; i + 1 < steps; i++) {
      if (shares[i]! < 0.5 || shares[i + 1]! >= 0.5) continue
      const off = along[i]! + (0.5 * (shares[i]! - 0.5)) / (shares[i]! - shares[i + 1]!)
      if (best === null || Math.abs(off) < Math.abs(best)) best = off
    }
    return best
  })
  const usual = moved.filter((by) => by !== null).sort((a, b) => a - b)
  const middle = usual[usual.length >> 1] ?? 0
  return points.map((point, at) => {
    const before = points[(at + n - 2) % n]!
    const after = points[(at + 2) % n]!
    const length = Math.hypot(after.x - before.x, after.y - before.y) || 1
    const by = moved[at] ?? middle
    return {
      x: point.x + (by * (after.y - before.y)) / length,
      y: point.y - (by * (after.x - before.x)) / length,
    }
  })
}

/** The line round the motif in places of the plane, and how it moved when it was refined. */
export function contourOf(plane: Plane, evened: Evened, found: FoundMotif, blur: number): Spot[] {
  const spacing = SPACING * plane.scale
  const rough = evenPoints(boundary(found.mask), spacing)
  return refined(plane, evened, found, rough, Math.max(2.5, 0.5 * plane.scale, 2.5 * blur))
}
