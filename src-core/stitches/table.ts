/**
 * The stitch table (M1), keyed by the US abbreviation. Everything relative is in stitch widths `w`,
 * so that one table serves every yarn.
 */

export const STITCH_KEYS = ['ch', 'sl st', 'sc', 'hdc', 'dc', 'tr', 'dtr', 'trtr'] as const
export type StitchKey = (typeof STITCH_KEYS)[number]

interface StitchFacts {
  /** Height of one stitch in stitch widths; for a chain its length, lying or standing. */
  readonly relativeHeight: number
  /** Stitches that each flat round adds, or null where no round is worked in it. */
  readonly flatIncrease: number | null
  /** Loops of yarn in one stitch: what its yarn is counted by (M40). */
  readonly loops: number
  /** Width of its top in stitch widths. */
  readonly topWidth: number
  /** Chains that stand for one at the beginning of a round (M6). */
  readonly beginningChains: number
  /** Whether those chains count as the first stitch unless the text says otherwise (M6). */
  readonly beginningCounts: boolean
}

/** Stitches that a flat disc adds per round, over 2π: the height that follows from it, in stitch widths. */
const fromFlatDisc = (added: number): number => added / (2 * Math.PI)

/**
 * Heights: the flat-disc rule (a disc stays flat when each round adds 2πh/w stitches) with the published
 * increases sc 6, dc 12 (§flat-circle); hdc 8.7 from rows of sc : hdc : dc as 1 : 1.45 : 1.91 (§windchilde);
 * tr and dtr fitted between published 15 and 16 per round and the beginning chains; trtr by the same step as from
 * tr to dtr (from memory); sl st from memory.
 * Loops reproduce §windchilde's yarn per stitch within 6 %.
 * Beginning chains: §turning-chains (sc 1, hdc 2, dc 3, tr 4, dtr 5, trtr 6; all count but sc;
 * whether ch 2 counts for hdc varies by designer, the model takes it as not counting).
 */
export const STITCHES: Readonly<Record<StitchKey, StitchFacts>> = {
  ch: {
    relativeHeight: 1,
    flatIncrease: null,
    loops: 1,
    topWidth: 1,
    beginningChains: 0,
    beginningCounts: false,
  },
  'sl st': {
    relativeHeight: 0.3,
    flatIncrease: null,
    loops: 1,
    topWidth: 1,
    beginningChains: 0,
    beginningCounts: false,
  },
  sc: {
    relativeHeight: fromFlatDisc(6),
    flatIncrease: 6,
    loops: 2,
    topWidth: 1,
    beginningChains: 1,
    beginningCounts: false,
  },
  hdc: {
    relativeHeight: fromFlatDisc(8.7),
    flatIncrease: 8,
    loops: 3,
    topWidth: 1,
    beginningChains: 2,
    beginningCounts: false,
  },
  dc: {
    relativeHeight: fromFlatDisc(12),
    flatIncrease: 12,
    loops: 4,
    topWidth: 1,
    beginningChains: 3,
    beginningCounts: true,
  },
  tr: {
    relativeHeight: fromFlatDisc(17),
    flatIncrease: 16,
    loops: 6,
    topWidth: 1,
    beginningChains: 4,
    beginningCounts: true,
  },
  dtr: {
    relativeHeight: fromFlatDisc(22),
    flatIncrease: 20,
    loops: 8,
    topWidth: 1,
    beginningChains: 5,
    beginningCounts: true,
  },
  trtr: {
    relativeHeight: fromFlatDisc(27),
    flatIncrease: 24,
    loops: 10,
    topWidth: 1,
    beginningChains: 6,
    beginningCounts: true,
  },
}

/** Tops of stitches made of several, in stitch widths (from memory); a V-stitch adds the chains in it. */
export const COMPOUND_TOP_WIDTH = {
  cluster: 1.3,
  puff: 1.3,
  popcorn: 1.3,
  bobble: 1.3,
  'V-stitch': 2,
} as const

/**
 * Legs of bunches whose size neither their name nor the text tells (common practice, no source): designers differ,
 * so it is noted wherever it is taken.
 */
export const USUAL_BUNCH = {
  cluster: { stitch: 'dc', legs: 3 },
  puff: { stitch: 'hdc', legs: 3 },
  popcorn: { stitch: 'dc', legs: 5 },
  bobble: { stitch: 'dc', legs: 5 },
} as const satisfies Record<string, { readonly stitch: StitchKey; readonly legs: number }>

/** Length of one chain in a free cord, in stitch widths (from memory): nothing holds it open. */
export const FREE_CHAIN_LENGTH = 0.92

/** Yarn in one loop, in stitch widths: fitted to §windchilde (M40). */
export const YARN_PER_LOOP = 5.2

/** The stitch's height in stitch widths before any gauge is known. */
export const relativeHeight = (stitch: StitchKey): number => STITCHES[stitch].relativeHeight

/** Whether a text is a key of the table (US abbreviation, exactly as written there). */
export const isStitchKey = (text: string): text is StitchKey =>
  (STITCH_KEYS as readonly string[]).includes(text)
