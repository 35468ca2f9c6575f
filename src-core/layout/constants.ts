/** Limits of a blanket. They keep a slip of the finger from asking for a plan that no machine could hold. */

/** Most rows, and most motifs in a row. */
export const MOST_ROWS = 1000
/** Most rings round a centre: 3n(n+1)+1 motifs. */
export const MOST_RINGS = 180
/** Most motifs in one plan. */
export const MOST_MOTIFS = 100_000
/** M26: step for "so much more per motif is so much on the width", in mm (from the model). */
export const SENSITIVITY_STEP = 2
/** Widest gap that a rule may leave between motifs, in mm. */
export const MOST_GAP = 500
/** Blocking stretches a blanket by a factor between these (common practice: a few per cent). */
export const BLOCKING = { least: 0.5, most: 2 } as const

/** M27: an opening narrower than so many stitch widths has no room for one round of sc (from memory). */
export const LEAST_FILLER_STITCHES = 2
/** M27: a filler that overlaps its neighbours by no more than this gives way, in mm (from memory). */
export const FILLER_GIVES = 1
/** M27: openings whose sizes differ by less than this take the same filler, in mm. */
export const SAME_OPENING = 0.1
/** M28: yarn and time of a half motif, as a share of a whole one (from memory). */
export const HALF_SHARE = 0.55
