/** How a motif among those of the join detail is lettered: where the numbers of its petals stand, and how large its own is. */
import { FIGURE_WIDTH, labelAt, SMALLEST_TYPE, TYPE_STEP } from './lettering'
import type { MotifLabel } from './lettering'
import { MM_PER_POINT } from './figure'

/** Type of the numbers of petals (points). */
export const PETAL_TYPE = 8.5
/** Of the number of a motif: as large as there is room for, up to this. */
const LARGEST_LABEL = 11

/** An arrow from a join point towards the middle of a motif: mm at most, and its share of the way there. */
const ARROW = { most: 4.4, share: 0.24 } as const
/** A number keeps this far from the end of the arrow: mm at most, and its share of the way to the middle. */
const BEHIND = { most: 3, share: 0.2 } as const
/** Where a number may stand on its way to the tip. */
const SHARE = { least: 0.5, most: 0.72 } as const
/** Half a number, and what is left free round it, in mm. */
const ROUND_NUMBER = (PETAL_TYPE * FIGURE_WIDTH * MM_PER_POINT) / 2 + 0.7

/** How far an arrow reaches from a join point so far (mm) from the middle of the motif that it points into. */
export const arrowReach = (away: number): number => Math.min(ARROW.most, ARROW.share * away)

/** Where the number of a petal stands: its share of the way to a tip so far away (mm), clear of an arrow there. */
export function numberShare(away: number): number {
  const behind = arrowReach(away) + Math.min(BEHIND.most, BEHIND.share * away)
  return Math.min(SHARE.most, Math.max(SHARE.least, (away - behind) / away))
}

/** The largest label inside a ring of numbers of this radius (mm); null where the smallest type is too large. */
export function labelWithin(ring: number, digits: number, letters: number): MotifLabel | null {
  for (let size = LARGEST_LABEL; size >= SMALLEST_TYPE; size -= TYPE_STEP) {
    const label = labelAt(digits, size, letters)
    if (label.disc + ROUND_NUMBER <= ring) return label
  }
  return null
}

/** The label in the smallest type, where it has to stand all the same. */
export const smallestLabel = (digits: number, letters: number): MotifLabel =>
  labelAt(digits, SMALLEST_TYPE, letters)
