/**
 * Where one colour of a motif meets another, the lens mixes them, and what lies between yellow and blue is grey: no more
 * than a shadow. Such a seam parts a motif in two. It is dark, and all of it is near to both.
 */
import type { Millimetres } from '../units/quantity'
import type { Evened } from './light'
import type { Plane } from './rectify'
import { regions } from './regions'
import type { Region } from './regions'

/** The most that a seam is wide. */
const WIDE: Millimetres = 1.2
/** A seam is darker than this share of paper. */
const DARK = 0.92

/** The pieces of what stands out, of at least `least` places, where a seam parts two of them with it as one. */
export function piecesOf(plane: Plane, { ratio }: Evened, on: Uint8Array, least: number): Region[] {
  const { width, height, ground, scale } = plane
  const pieces = regions({ width, height, on }, least)
  if (pieces.length < 2) return pieces
  const isDark = (at: number) =>
    0.2126 * ratio[3 * at]! + 0.7152 * ratio[3 * at + 1]! + 0.0722 * ratio[3 * at + 2]! < DARK
  const steps = Math.max(2, Math.round(WIDE * scale))
  // How many pieces each place beside them is near to.
  const near = new Uint8Array(on.length)
  const reached = new Int32Array(on.length)
  pieces.forEach(({ places }, piece) => {
    let front: Iterable<number> & { readonly length: number } = places
    for (let step = 0; step < steps && front.length > 0; step++) {
      const next: number[] = []
      for (const at of front)
        for (const to of [at - 1, at + 1, at - width, at + width]) {
          if (to < 0 || to >= on.length || on[to] || !ground[to] || reached[to] === piece + 1 || !isDark(to))
            continue
          reached[to] = piece + 1
          near[to]!++
          next.push(to)
        }
      front = next
    }
  })
  const joined = on.slice()
  let seams = 0
  for (let at = 0; at < joined.length; at++)
    if (near[at]! > 1) {
      joined[at] = 1
      seams++
    }
  return seams === 0 ? pieces : regions({ width, height, on: joined }, least)
}
