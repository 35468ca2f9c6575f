/** Numbers of this room, with unit and source. */
export const PROGRESS = {
  /** Used over planned beyond which the weighing is more likely wrong than the plan (as in materials; from memory). */
  rateLimits: { low: 0.7, high: 1.4 },
  /** Degrees along the rim of a round motif by which a join is still in the same stitch: half of one of 36 (ours). */
  sameJoint: 5,
  /** Days of the log, up to the last one, that the pace of a work follows from (ours). */
  paceDays: 28,
  /** Grams: less than any kitchen scale shows (ours). Sums of many motifs are not held against their last digit. */
  tolerance: 1e-6,
} as const
