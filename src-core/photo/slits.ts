/**
 * Clefts that go on. Where petals bulge or lie against each other, the cleft narrows to less than the lens can show,
 * and opens again behind. Its width is known all the same, from the light that is missing: where that never comes to
 * nothing, the petals do not touch and the dip lies behind the narrow; where it nearly does, only a hand can tell.
 */
import type { Millimetres } from '../units/quantity'

/** Widths from which a slit is open, and up to which it is shut: what closed ones show in pictures of two renderers. */
const OPEN: Millimetres = 0.12
const SHUT: Millimetres = 0.015
/** From what share on of the barest place behind a dip it is ground, where a shadow on light yarn may look like some. */
const BARE = 0.6
/** The least that a space behind the narrow is wide. */
const SPACE: Millimetres = 0.25
/** How far it goes on at least behind the dip as it was fitted: mm, multiples of the blur, a share of its distance. */
const BEHIND = { length: 1 as Millimetres, blurs: 2.5, share: 0.04 } as const
/** How far from its end, in multiples of the blur, a space is as wide as it is. */
const END_BLURS = 3

export interface Slit {
  /** Distance of its end from the middle, in places. */
  readonly far: number
  /** The light is seen all along; else petals may touch on the way. */
  readonly open: boolean
}

/** Widths in millimetres, each the mean of itself and its neighbours. */
const smoothed = (width: readonly number[], scale: number): Millimetres[] =>
  width.map((each, at) => ((width[at - 1] ?? each) + each + (width[at + 1] ?? each)) / 3 / scale)

/**
 * The slit that goes on from a dip towards the middle; null where there is none. `far` and `width` as measured along
 * the cleft, from near the middle outwards, `dip` and `blur` in places, `scale` places per mm; `barest` how much of the
 * barest place of each is ground, where shadows look like it: a fold between petals that lie against each other is as
 * long as a slit, but nowhere as dark as the ground.
 */
export function slitBehind(
  far: readonly number[],
  width: readonly number[],
  dip: number,
  blur: number,
  scale: number,
  barest?: readonly number[],
): Slit | null {
  const smooth = smoothed(width, scale)
  const first = far.findIndex((each) => each >= dip)
  if (first < 0) return null
  const least = Math.max(BEHIND.length * scale, BEHIND.blurs * blur, BEHIND.share * dip)
  const endUnder = (bound: Millimetres): number => {
    let at = first
    while (at > 0 && smooth[at]! >= bound) at--
    return at
  }
  const end = endUnder(OPEN)
  if (dip - far[end]! > least) {
    const isBare = !barest || far.some((each, at) => at >= end && each < dip - least && barest[at]! > BARE)
    return { far: endOf(far, smooth, end, END_BLURS * blur), open: isBare }
  }
  const last = endUnder(SHUT)
  const behind = smooth.slice(last, end + 1)
  const space = Math.max(...behind)
  if (dip - far[last]! <= least || space < SPACE) return null
  return { far: endOf(far, smooth, last, END_BLURS * blur), open: false }
}

/**
 * The least width of a space behind petals that touch, and how far behind the dip it begins at most: as a share of it,
 * and in mm, or as far as a blur smears the contact of two petals. What hangs together for longer than a stitch or two
 * is one piece, whatever space lies behind.
 */
const CLOSED_OFF: Millimetres = 0.6
const NEAR = { share: 0.25, length: 6 as Millimetres, blurs: 6 } as const

/**
 * The end of a space that petals close off which touch in front of it; null where there is none. Stitches may be all
 * that closes it, and whether they do nobody can see in a photo. Told as for a slit.
 */
export function spaceBehind(
  far: readonly number[],
  width: readonly number[],
  dip: number,
  blur: number,
  scale: number,
  barest?: readonly number[],
): number | null {
  const smooth = smoothed(width, scale)
  const first = far.findIndex((each) => each >= dip)
  const near = Math.min(NEAR.share * dip, Math.max(NEAR.length * scale, NEAR.blurs * blur))
  let at = first
  while (at > 0 && smooth[at]! >= OPEN) at--
  while (at > 0 && smooth[at]! < OPEN && far[at]! > dip - near) at--
  if (at <= 0 || smooth[at]! < OPEN) return null
  let last = at
  while (last > 0 && smooth[last]! >= OPEN) last--
  const isSpace = far.some(
    (_, place) =>
      place > last && place <= at && smooth[place]! >= CLOSED_OFF && (!barest || barest[place]! > BARE),
  )
  return isSpace ? endOf(far, smooth, last, END_BLURS * blur) : null
}

/** Where a space ends: the lens smears its end, which lies where half of its width is seen. */
function endOf(far: readonly number[], smooth: readonly number[], from: number, reach: number): number {
  let widest = 0
  for (let at = from; at < far.length && far[at]! - far[from]! <= reach; at++)
    widest = Math.max(widest, smooth[at]!)
  let at = from
  while (at < far.length - 1 && smooth[at]! < widest / 2) at++
  return far[at]!
}
