/** Limits and defaults of kits, each with its unit and where it comes from. */
export const KIT_CONSTANTS = {
  /** Share of what is wound that is lost in winding (from memory). */
  windingLoss: 0.02,
  /** g. Steps that bundles are wound up to when none are given (ours). */
  windTo: 1,
  /** Most kits in one run (ours). */
  mostKits: 100_000,
  /** %. Most spares (ours). */
  mostSpares: 500,
  /** g. Steps of winding: from a good scale to a whole cone (ours). */
  windSteps: { least: 0.1, most: 1000 },
  /** g. Packs of yarn, from a sample skein to a pallet cone (ours). */
  pack: { least: 0.1, most: 25_000 },
  /** %. Highest tax (ours). */
  mostTax: 1000,
} as const
