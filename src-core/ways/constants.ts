/** Constants of the ways to a size. */
export const WAYS = {
  /** mm: half a hook size, as yarn hooks are sold (common practice, no source). */
  hookStep: 0.5,
  /** mm: the same of steel hooks for thread (common practice, no source). */
  threadHookStep: 0.25,
  /** Share by which a gauge can be met on purpose, tighter or looser with the same hook (common practice, no source). */
  gauge: 0.06,
  /** Share by which blocking stretches without force (common practice, no source). */
  blocking: 0.04,
  /** Rounds of edging more that are tried in any case, with whatever goes with them (ours). */
  edgingSteps: 4,
  /** And at most: a wider border is no remedy for a size any more (ours). */
  edgingRounds: 16,
  /** The longest joining chain that is tried (ours). */
  chains: 6,
  /** Share by which the outline of what is cut out is tried larger and smaller, in so many steps, and those kept (ours). */
  outlineReach: 0.12,
  outlineTries: 16,
  outlines: 6,
  /** Outlines of a triangle that are looked at for a point of one motif (ours: all that are tried, about). */
  outlinesPointed: 60,
  /** Motifs by which an outline is tried larger and smaller at least where a size is asked of it (ours). */
  outlinePitches: 1.5,
  /** mm: a second thing is changed only where one alone does not come as near as this (ours). */
  near: 1,
  /** Ways that are planned of each kind (ours). */
  each: 2,
  /** The same where something is made: some of them take it away (ours). */
  eachBegun: 6,
  /** Ways that are offered (ours). */
  offered: 12,
} as const
