/**
 * Yarn as grey as a shadow: what is darker than the paper, in its colour, may be paper in shadow. But a shadow falls to
 * one side, and is lighter the farther from what throws it; where it is as dark all round what was found, and as dark
 * farther out, that is the motif going on.
 */
import { boundary, evenPoints } from './contour'
import type { Evened } from './light'
import type { Plane } from './rectify'
import type { Mask } from './regions'
import type { Millimetres } from '../units/quantity'

/** How far outside the line it is looked, nearer and farther. */
const NEAR: Millimetres = 1.8
const FAR: Millimetres = 2.8
/** Nearly all places there are darker than this share of paper. */
const DARK = 0.92
const NEARLY_ALL = 0.85
/** And by the farther ones it is lighter by no more than this, as a share: shadows of motifs lighten by a fifth. */
const LIGHTER = 0.1

/** Light so many mm outside a mask, as a share of that of paper, in rising order. */
export function lightOutside(
  { width, height, scale, ground }: Plane,
  ratio: Float32Array,
  mask: Mask,
  far: number,
) {
  const line = evenPoints(boundary(mask), scale)
  const n = line.length
  const found: number[] = []
  line.forEach((point, at) => {
    const [before, after] = [line[(at + n - 1) % n]!, line[(at + 1) % n]!]
    const length = Math.hypot(after.x - before.x, after.y - before.y) || 1
    // Outwards: to the left of a line that runs clockwise as seen.
    const x = Math.round(point.x + (far * scale * (after.y - before.y)) / length)
    const y = Math.round(point.y - (far * scale * (after.x - before.x)) / length)
    const place = y * width + x
    if (x < 0 || y < 0 || x >= width || y >= height || mask.on[place] || !ground[place]) return
    const [red, green, blue] = [ratio[3 * place]!, ratio[3 * place + 1]!, ratio[3 * place + 2]!]
    found.push(0.2126 * red + 0.7152 * green + 0.0722 * blue)
  })
  return found.sort((a, b) => a - b)
}

/** Whether what lies round a mask is as dark as no shadow is that the motif throws: all round, and as far as is looked. */
export function isDarkRound(plane: Plane, { ratio }: Evened, mask: Mask): boolean {
  const [near, far] = [NEAR, FAR].map((each) => lightOutside(plane, ratio, mask, each)) as [
    number[],
    number[],
  ]
  if (near.length === 0 || far.length === 0) return false
  const at = (values: number[], share: number) => values[Math.floor(share * (values.length - 1))]!
  return (
    at(near, NEARLY_ALL) < DARK && at(far, NEARLY_ALL) < DARK && at(far, 0.5) < (1 + LIGHTER) * at(near, 0.5)
  )
}
