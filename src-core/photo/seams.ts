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

/** What a seam parts stands out from paper by this at least, in Oklab: shadows with a tint of their own do not. */
const STANDING_OUT = 0.06

/** The pieces of what stands out, of at least `least` places, where a seam parts two of them with it as one. */
export function piecesOf(
  plane: Plane,
  { ratio }: Evened,
  distance: Float32Array,
  on: Uint8Array,
  least: number,
): Region[] {
  const { width, height, ground, scale } = plane
  const pieces = regions({ width, height, on }, least)
  const isDark = (at: number) =>
    0.2126 * ratio[3 * at]! + 0.7152 * ratio[3 * at + 1]! + 0.0722 * ratio[3 * at + 2]! < DARK
  // Nor does paper that a camera makes brighter than it is beside what is dark.
  const isYarn = (piece: Region) =>
    usualOf(piece, distance, 0.5) >= STANDING_OUT &&
    2 * piece.places.filter(isDark).length > piece.places.length
  const parted = pieces.length < 2 ? [] : pieces.filter(isYarn)
  if (parted.length < 2) return pieces
  const steps = Math.max(2, Math.round(WIDE * scale))
  // How many pieces each place beside them is near to.
  const near = new Uint8Array(on.length)
  const reached = new Int32Array(on.length)
  parted.forEach(({ places }, piece) => {
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

/** How far the places of a piece are from paper, but for this share of them that is nearer. */
export function usualOf({ places }: Region, distance: Float32Array, share: number): number {
  const some: number[] = []
  for (let index = 0; index < places.length; index += 5) some.push(distance[places[index]!]!)
  return some.length === 0 ? 0 : Float32Array.from(some).sort()[Math.floor(share * some.length)]!
}
