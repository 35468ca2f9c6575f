/** Ends of thread that lie out beside the motif: no part of its shape. */
import type { FoundMotif } from './motif-mask'
import type { Plane } from './rectify'
import { countOf, regions } from './regions'
import type { Mask } from './regions'

/**
 * What is thinner than `thin` mm and sticks out by itself is thread: at least so `long`, and so many times as long as it
 * is wide. Where there are more than two ends of one thread, and two of another, they are points of the motif (our own choice).
 */
const TAIL = { thin: 1.8, long: 5, slender: 3.5, most: 4 } as const
/** What is cut off thick is rough along its rim; so many mm beyond the thick part still belong to it. */
const RIM = 0.35

/** Steps of a walk over a grid and how far they go, in thirds of a place (Borgefors' 3-4 distance). */
const STRAIGHT = 3
const SLANTED = 4

/** How far each place is from the nearest one that is off (`value` 0) or on (1), in thirds of a place. */
function distanceTo({ width, height, on }: Mask, value: 0 | 1): Uint16Array {
  const far = new Uint16Array(on.length)
  for (let at = 0; at < far.length; at++) far[at] = on[at] === value ? 0 : 60_000
  const relax = (at: number, other: number, step: number) => {
    const by = far[other]! + step
    if (by < far[at]!) far[at] = by
  }
  for (let y = 0; y < height; y++)
    for (let x = 0, at = y * width; x < width; x++, at++) {
      if (x > 0) relax(at, at - 1, STRAIGHT)
      if (y === 0) continue
      relax(at, at - width, STRAIGHT)
      if (x > 0) relax(at, at - width - 1, SLANTED)
      if (x < width - 1) relax(at, at - width + 1, SLANTED)
    }
  for (let y = height - 1; y >= 0; y--)
    for (let x = width - 1, at = y * width + x; x >= 0; x--, at--) {
      if (x < width - 1) relax(at, at + 1, STRAIGHT)
      if (y === height - 1) continue
      relax(at, at + width, STRAIGHT)
      if (x < width - 1) relax(at, at + width + 1, SLANTED)
      if (x > 0) relax(at, at + width - 1, SLANTED)
    }
  return far
}

/** Whether the places of a piece that lie beside the thick part hang together: a thread leaves the motif at one place. */
function leavesOnce(places: Int32Array, thick: Mask, near: number): boolean {
  const { width, height, on } = thick
  const beside = new Uint8Array(on.length)
  for (const at of places) if (on[at - 1] || on[at + 1] || on[at - width] || on[at + width]) beside[at] = 1
  // Stitches part the line where it leaves; as far apart as it is wide they are one place.
  const grown = new Uint8Array(on.length)
  for (let at = 0; at < on.length; at++)
    if (beside[at])
      for (let y = -near; y <= near; y++)
        for (let x = -near; x <= near; x++) {
          const to = at + y * width + x
          if (to >= 0 && to < on.length) grown[to] = 1
        }
  return regions({ width, height, on: grown }, 1).length === 1
}

export interface Tails {
  readonly found: FoundMotif
  readonly count: number
}

/** The motif without the ends of thread that stick out of it; null where there are none, or too many to be any. */
export function withoutTails({ scale }: Plane, found: FoundMotif): Tails | null {
  const { mask } = found
  const { width, height } = mask
  const by = Math.round(((TAIL.thin * scale) / 2) * STRAIGHT)
  const inside = distanceTo(mask, 0)
  const core = { width, height, on: Uint8Array.from(inside, (far) => (far > by ? 1 : 0)) }
  if (countOf(core) === 0) return null
  const rim = by + Math.round(RIM * scale * STRAIGHT)
  const thick = {
    width,
    height,
    on: Uint8Array.from(distanceTo(core, 1), (far, at) => (far <= rim && mask.on[at] ? 1 : 0)),
  }
  const thin = { width, height, on: Uint8Array.from(mask.on, (on, at) => (on && !thick.on[at] ? 1 : 0)) }
  const tails = regions(thin, Math.round(TAIL.long * 0.3 * scale * scale)).filter(({ places }) => {
    let far = 0
    const from = places[0]!
    // Twice to the farthest place: how long it is, straight across.
    let end = from
    for (let turn = 0; turn < 2; turn++) {
      const begin = end
      far = 0
      for (const at of places) {
        const apart = Math.hypot(
          (at % width) - (begin % width),
          Math.floor(at / width) - Math.floor(begin / width),
        )
        if (apart > far) [far, end] = [apart, at]
      }
    }
    const wide = places.length / Math.max(1, far)
    const slender = far >= TAIL.long * scale && far >= TAIL.slender * wide && wide <= TAIL.thin * scale
    return slender && leavesOnce(places, thick, Math.ceil(0.5 * scale))
  })
  if (tails.length === 0 || tails.length > TAIL.most) return null
  const on = mask.on.slice()
  const distance = found.distance.slice()
  for (const { places } of tails)
    for (const at of places) {
      on[at] = 0
      distance[at] = 0
    }
  return { found: { ...found, mask: { width, height, on }, distance }, count: tails.length }
}
