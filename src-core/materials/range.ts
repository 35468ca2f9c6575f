import type { Range } from '../../shared-types/plan'

export const NO_RANGE: Range = { low: 0, expected: 0, high: 0 }

/** The same number three times: something that is known exactly. */
export const exactly = (value: number): Range => ({ low: value, expected: value, high: value })

/** `expected` ± a relative half width (0.15 means ±15 %). */
export const spread = (expected: number, half: number): Range => ({
  low: expected * (1 - half),
  expected,
  high: expected * (1 + half),
})

/** `expected` ± an absolute half width; never below zero. */
export const plusMinus = (expected: number, half: number): Range => ({
  low: Math.max(0, expected - half),
  expected,
  high: expected + half,
})

/** A range times a positive factor. */
export const times = (range: Range, factor: number): Range => ({
  low: range.low * factor,
  expected: range.expected * factor,
  high: range.high * factor,
})

/** Bounds add up as they stand: errors of one scale or one maker's hand do not cancel out. */
export const add = (left: Range, right: Range): Range => ({
  low: left.low + right.low,
  expected: left.expected + right.expected,
  high: left.high + right.high,
})
