/**
 * Numbers from a project file may be anything finite. A measure outside these limits is no measure of yarn
 * work in any of the stored units (mm, g, m, counts), and dividing by it would only breed infinities.
 */
export const USABLE = { least: 1e-3, most: 1e9 } as const
export const USABLE_OR_ZERO = { least: 0, most: USABLE.most } as const

/** Whether a number can be calculated with as a measure above zero. */
export const isUsable = (value: number | undefined): value is number =>
  value !== undefined && value >= USABLE.least && value <= USABLE.most

/** The same with zero allowed: prices, allowances, stashes. */
export const isUsableOrZero = (value: number | undefined): value is number =>
  value !== undefined && value >= 0 && value <= USABLE_OR_ZERO.most
