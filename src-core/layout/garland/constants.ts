/** Rules of thumb of a garland (the bounds of its fields: fields/garland.ts): each with its unit and where it comes from. */

/** Share by which a cord of chains gives under load (common practice, no source). */
export const CORD_GIVES = { low: 0.05, high: 0.1 } as const

/** Places that a motif hangs by: one lets it spin (common practice). */
export const HANGS_BY = 2

/** Chains between the two petals that a flower hangs by (common practice). */
export const CHAINS_BETWEEN = 3

/** Chains under this share of the distance between two petals bend the flower: worth a note (by eye). */
export const BENDING_SHARE = 0.4

/** mm². Outlines that share less than this touch and do not overlap. */
export const TOUCHING_AREA = 0.01

/** Pairs of outlines that are looked at for collisions; more only on a garland that collides everywhere. */
export const MOST_COLLISIONS = 2000

/** mm. A wished length this near to the one that follows is the same. */
export const SAME_LENGTH = 0.5

/** Points of the drawn line in each swag. */
export const LINE_POINTS = 48
