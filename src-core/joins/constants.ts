/** M30, M32: constants of meeting points. None is backed by a standard. */

/** Reach: so many stitch widths … */
export const REACH_STITCHES = 1.5
/** … or this share of the smaller tip-to-tip measure, whichever is more. */
export const REACH_SHARE = 0.08
/** A node is over-stretched beyond so many stitch widths … */
export const STRETCH_STITCHES = 1
/** … or this share of tip to tip, whichever is more. */
export const STRETCH_SHARE = 0.06
/** From this many petals several tips per neighbour come within reach. */
export const MANY_PETALS = 16
/** M32: openings of a child's blanket are pointed out from this diameter on, in mm (from the model; no limit from memory is printed). */
export const CHILD_OPENING = 25
/** Distances that agree to this many mm are ties, which the order of motifs decides. */
export const TIE = 1e-6
/** A filler that meets a motif no farther from one of its tips is joined to that tip, in mm (from memory). */
export const FILLER_AT_TIP = 2
/** Sewn or bridged at a single point a seam still takes this much length, in mm (from memory). */
export const POINT_SEAM = 10
