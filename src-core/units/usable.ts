/**
 * Numbers from a project file may be anything finite. A measure outside these limits is no measure of yarn
 * work in any of the stored units (mm, g, m, counts), and dividing by it would only breed infinities.
 */
const USABLE_LIMITS = { low: 1e-3, high: 1e9 } as const

/** Whether a number can be calculated with as a measure above zero. */
export const isUsable = (value: number | undefined): value is number =>
  value !== undefined && value >= USABLE_LIMITS.low && value <= USABLE_LIMITS.high

/** The same with zero allowed: prices, allowances, stashes. */
export const isUsableOrZero = (value: number | undefined): value is number =>
  value !== undefined && value >= 0 && value <= USABLE_LIMITS.high
