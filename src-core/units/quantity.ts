/**
 * Branded quantities at no run-time cost. A plain number may become any of them, one of them never another:
 * `const grams: Grams = length` does not compile.
 */
export type Quantity<Unit extends string> = number & { readonly __unit?: Unit }

export type Millimetres = Quantity<'mm'>
export type Metres = Quantity<'m'>
export type Grams = Quantity<'g'>
export type Minutes = Quantity<'min'>
export type Degrees = Quantity<'deg'>
export type Radians = Quantity<'rad'>

/** 1 in = 25.4 mm exactly (international yard and pound agreement of 1959). */
export const MM_PER_INCH = 25.4
/** 1 yd = 0.9144 m exactly (same agreement). */
export const METRES_PER_YARD = 0.9144
/** 1 oz avoirdupois = 28.349523125 g exactly (same agreement). */
export const GRAMS_PER_OUNCE = 28.349523125

/** Degrees to radians. */
export const radians = (degrees: Degrees): Radians => (degrees * Math.PI) / 180
/** Radians to degrees. */
export const degrees = (angle: Radians): Degrees => (angle * 180) / Math.PI
