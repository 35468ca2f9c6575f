/** Limits and defaults of a garland: each with its unit and where it comes from. */

/** mm. Limits that keep a slip of the finger from asking for a cord round the town (ours). */
export const GARLAND_LIMITS = {
  length: { least: 10, most: 1_000_000 },
  ties: { least: 0, most: 100_000 },
  gap: { least: 0, most: 100_000 },
  spacing: { least: 0, most: 100_000 },
  /** Centres cannot lie on one spot. */
  centres: { least: 1, most: 100_000 },
  bead: { least: 0.5, most: 1000 },
  swags: { least: 1, most: 1000 },
  span: { least: 10, most: 100_000 },
  drop: { least: 0, most: 100_000 },
  chains: { least: 0, most: 200 },
  by: { least: 1, most: 2 },
  items: { least: 1, most: 10_000 },
} as const

/** Most things on one cord. */
export const MOST_ITEMS = GARLAND_LIMITS.items.most

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
