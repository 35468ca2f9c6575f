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
