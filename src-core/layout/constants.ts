/** Limits of a blanket besides those of its fields (fields/blanket.ts). They keep a slip of the finger from asking for a plan that no machine could hold. */

/** Most motifs in one plan. */
export const MOST_MOTIFS = 100_000
/** M26: step for "so much more per motif is so much on the width", in mm (from the model). */
export const SENSITIVITY_STEP = 2

/** M27: an opening narrower than so many stitch widths has no room for one round of sc (from memory). */
export const LEAST_FILLER_STITCHES = 2
/** M27: a filler that overlaps its neighbours by no more than this gives way, in mm (from memory). */
export const FILLER_GIVES = 1
/** M27: a side of a filler whose gap to the motif beside it differs by no more than this share of its length lies along it (ours). */
export const ALONG_SIDE = 0.05
/** M27: openings whose sizes differ by less than this take the same filler, in mm. */
export const SAME_OPENING = 0.1
/** M28: yarn and time of a half motif, as a share of a whole one (from memory). */
export const HALF_SHARE = 0.55

/** M32: a blanket that is this large may be for a baby, in mm (common practice, no source). */
export const BABY_SIZE = { least: 550, width: 920, height: 1150 } as const

/** Fewest motifs in a row that is joined in the round: two would meet on both sides of each other. */
export const LEAST_ROUND = 3

/** How many lattices are remembered: straight and offset rows with and without the last change. */
export const LATTICES_KEPT = 6
