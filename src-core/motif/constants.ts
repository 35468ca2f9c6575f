/** Constants of measured motifs. Everything here is ours to choose or common practice; no standard backs it. */

/** Fewest and most petals that can be planned. */
export const PETALS = { least: 3, most: 24 } as const

/** Sizes that are taken for a slip of the finger outside of these bounds, in mm. */
export const MOTIF_SIZE = { least: 3, most: 3000 } as const

/** Between-petals measure as a share of tip to tip where only the latter was measured (from memory). */
export const DEFAULT_VALLEY_SHARE = 0.68

/** Width of a leaf as a share of its length where only the latter was measured (from memory). */
export const DEFAULT_LEAF_WIDTH_SHARE = 0.5

/** Smallest share of tip to tip that a between-petals measure may have: below it petals are mere spokes. */
export const LEAST_VALLEY_SHARE = 0.1

/** Petals stand out from the valleys by at least this share of the radius; less is a scalloped round (ours). */
export const LEAST_LOBE = 0.03

/** Most points of a traced outline: eight to the centimetre round a flower of 40 cm (ours). */
export const TRACE_POINTS = 1000

/** M4: how far the next motif may be off once one is measured, as a share (from memory). */
export const MEASURED_SPREAD = 0.03

/**
 * Fullness of a drawn petal: the power of the cosine between valley (0) and tip (1). At 1 a petal is a cosine
 * lobe; smaller is fuller. Sizes do not depend on it, tips and valleys being exact (ours, chosen by eye).
 */
export const PETAL_POWER = 0.85

/** Points on a whole outline; divisible by 4 and 6, so that circles touch exactly in rows and honeycombs. */
export const OUTLINE_POINTS = 144

/** M18: growth in blocking of cotton lace in thread (§freevintagecrochet: +2 to +11 %). */
export const THREAD_LACE_GROWTH = 0.06
/** The most that blocking made of what was measured (the same: +2 to +11 %). */
export const MOST_GROWTH = 0.11
/** A cotton counts as thread from this many metres in 100 g on (§yardage: class 0 has 483 m and more). */
export const THREAD_METRES_PER_100_G = 483

/**
 * M30: spaces that are counted round a motif (ours): with fewer there is none for every side, and more than that are
 * found sooner by the clock.
 */
export const SPACES = { least: 3, most: 24 } as const
/** How far each may lie from where it would stand if all were spread evenly, as a share of the way between two (ours). */
export const EVEN_SPACES = 0.25
/** A neighbour that lies no farther from the middle of a space than this share of the way between two meets it there (ours). */
export const AT_SPACE = 0.25 + 1e-6
