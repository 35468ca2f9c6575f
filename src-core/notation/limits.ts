/**
 * The most of everything that a text can ask for. Whatever is typed is held against this one table
 * (`amounts.ts`), so that no typed number decides how long reading takes or how much memory it needs.
 * All are ours: far beyond what is printed, and within what is read in well under a second.
 */
export const LIMITS = {
  /** Characters of one text: a whole book of patterns is shorter. */
  characters: 400_000,
  /** Rounds of one text: the largest blankets worked in the round have some two hundred. */
  rounds: 500,
  /** The number that a round may have: the last row of a very long scarf. */
  roundNumber: 10_000,
  /** Stitches of one round, and what may be asked for at once: a doily may have some hundreds. */
  stitches: 20_000,
  /** Stitches and chains of all rounds of one text: what is placed, drawn and kept. Blankets in the round stay below. */
  worked: 50_000,
  /** How often a part is repeated. */
  repeats: 5_000,
  /** Chains in a row: the foundation of a large blanket has some hundreds. */
  chains: 5_000,
  /** Legs of a cluster, stitches of a shell, chains of a picot: print knows about a dozen. */
  size: 100,
  /** A figure anywhere in the text, in prose too: a number with more digits counts nothing. */
  figure: 1e9,
  /** Steps of work for one text: far more than any pattern needs. */
  steps: 400_000,
} as const
