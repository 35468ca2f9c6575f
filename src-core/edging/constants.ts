/** Every number of this room with its unit and where it comes from. */
export const EDGING = {
  /** Stitches of a loop, or from corner to corner, up to which a multiple is looked for (ours: far above any shell). */
  probes: 48,
  /** Loops that come out in a row, each as many stitches after the last, from which on a multiple is taken as found (ours). */
  inARow: 3,
  /** Change of a side, as a share, up to which each side by itself is brought to the multiple (common practice, no source). */
  bySide: 0.05,
  /** Stitches up to which a loop is read as it is; a longer one repeats what a short one shows (ours). */
  readWhole: 400,
  /** Stitch widths that a line is simplified by before its tips and dips are looked for (ours). */
  smooth: 0.6,
  /** Radians from which on a tip or dip is one: 25° (ours). */
  turn: (25 * Math.PI) / 180,
  /** Corners of a line at which a plain round is worked longer; with more of them it is nearly round (ours). */
  corners: { least: 3, most: 8 },
  /** Radians from which on a corner has a stitch in its middle: 80° (common practice). */
  sharp: (80 * Math.PI) / 180,
  /** Radians up to which a turn is worked as the corner that it is: 120°; a sharper point is rounded off (ours). */
  sharpest: (2 * Math.PI) / 3,
  /** Times as much as the least of them up to which tips and dips are taken for one shape (ours). */
  alike: 1.06,
  /** mm. An edge that comes as near to the straight line along its tips touches it (ours: far less than a stitch is tall). */
  onLine: 0.5,
  /** Stitches across up to which a dip too deep for any stitch is closed by tall ones into both sides (common practice). */
  cleft: 2,
  /** Places for each stitch at which the depth of a dip is looked at, where rows fill it (ours). */
  dipSamples: 16,
  /** Share of a motif's diameter over which turns the same way are one tip (ours). */
  oneTip: 0.35,
} as const

/** An example of a round that is told from corner to corner, as either terms write it. */
export const FROM_CORNER_TO_CORNER = {
  US: '3 sc in corner, sc in each st to next corner',
  UK: '3 dc in corner, dc in each st to next corner',
} as const
