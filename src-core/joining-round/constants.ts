/** Bounds of the joining round in words. */

/** Steps of a round that are told one by one; a longer one is told by its places (ours). */
export const LONGEST_ROUND = 1_000

/** A tip's stitches stand within this share of the way to the next tip, on both sides (ours). */
export const NEAR_TIP = 1 / 4
/** A loop or picot within this share of the way to the next tip is the one at the tip (ours). */
export const AT_TIP = 1 / 8
/** What reaches so much of the way out is at the tip (ours). */
export const REACHES = 0.94
