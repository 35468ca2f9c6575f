/** Rules of thumb of kits (the bounds of their fields: fields/kit.ts), each with where it comes from. */
export const KIT_CONSTANTS = {
  /** Share of what is wound that is lost in winding (from memory). */
  windingLoss: 0.02,
} as const
