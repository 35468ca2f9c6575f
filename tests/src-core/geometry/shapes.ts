/** Outlines for tests: random simple polygons from a seed, and plain shapes. */
import type { Outline } from '../../../src-core/geometry/points'
import { polar } from '../../../src-core/geometry/points'

/** A small generator for tests alone (mulberry32): numbers in [0, 1). */
export function testRandom(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

/** A star-shaped outline with `count` points between `low` and `high` mm from the centre. */
export function randomOutline(random: () => number, count: number, low = 10, high = 50): Outline {
  return Array.from({ length: count }, (_, i) =>
    polar(low + (high - low) * random(), ((i + 0.1 + 0.8 * random()) / count) * 2 * Math.PI),
  )
}

/** A regular polygon with a corner at 12 o'clock. */
export const regular = (corners: number, radius: number): Outline =>
  Array.from({ length: corners }, (_, i) => polar(radius, (i / corners) * 2 * Math.PI))
