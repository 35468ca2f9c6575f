/**
 * Quantities in words, for window, paper and command line alike. Every number carries its unit; inches come
 * as the nearest eighth, the way a tape measure is read.
 */
import type { Range } from '../../shared-types/plan'
import type { UnitSystem } from '../../shared-types/project'
import { writeMoney, writeNumber } from './language'
import { GRAMS_PER_OUNCE, METRES_PER_YARD, MM_PER_INCH } from './quantity'
import type { Grams, Metres, Millimetres, Minutes } from './quantity'

/** Without what sums are off by in their last digits, so that halves are rounded alike whichever way they came about. */
const exact = (value: number): number => (Number.isFinite(value) ? Number(value.toPrecision(12)) : value)

/** A number with at most `digits` decimals, thousands grouped, no trailing zeros, a true minus sign. */
export function formatNumber(value: number, digits = 0): string {
  const given = exact(value)
  const rounded = Math.abs(given) < 0.5 * 10 ** -digits ? 0 : given
  return writeNumber(rounded, digits).replace('-', '−')
}

const EIGHTHS = ['', '⅛', '¼', '⅜', '½', '⅝', '¾', '⅞']

/** Inches to the nearest eighth, without the unit: "38⅜", "¼", "0". */
export function formatEighths(mm: Millimetres): string {
  const eighths = Math.round(exact((Math.abs(mm) / MM_PER_INCH) * 8))
  const whole = Math.floor(eighths / 8)
  const sign = mm < 0 && eighths > 0 ? '−' : ''
  const fraction = EIGHTHS[eighths % 8]
  return sign + (whole > 0 || !fraction ? formatNumber(whole) : '') + fraction
}

/** Shorter lengths would be no eighth at all. */
const LEAST_EIGHTH = MM_PER_INCH / 16

/**
 * A length on its own: "78 mm", "97.5 cm", "3⅛ in". Metric lengths from 300 mm on are told in cm; what is shorter
 * than a tape shows, in decimals of an inch.
 */
export function formatLength(mm: Millimetres, units: UnitSystem): string {
  if (units === 'imperial') {
    const isFine = mm !== 0 && Math.abs(mm) < LEAST_EIGHTH
    return isFine ? `${formatNumber(mm / MM_PER_INCH, 3)} in` : `${formatEighths(mm)} in`
  }
  return Math.abs(mm) >= FROM_CM ? `${formatNumber(mm / 10, 1)} cm` : `${formatNumber(mm, 1)} mm`
}

/** Tenths of a mm are told of what is shorter. */
const ROUGH_FROM = 20

/** A length that nobody knows to a tenth of a mm: "131 mm", "8.4 mm", "5⅛ in". */
export const formatRough = (mm: Millimetres, units: UnitSystem): string =>
  formatLength(units === 'metric' && Math.abs(mm) >= ROUGH_FROM ? Math.round(mm) : mm, units)

/**
 * A length of a motif as it is told: as it was measured, to a tenth of a mm; one that was worked out, which no tape shows
 * so fine, to a whole one.
 */
export const asMeasured = (mm: Millimetres): Millimetres =>
  Math.abs(mm) < ROUGH_FROM || Math.abs(10 * mm - Math.round(10 * mm)) < 1e-6 ? mm : Math.round(mm)

/** The same in words. */
export const formatMeasure = (mm: Millimetres, units: UnitSystem): string =>
  formatLength(units === 'metric' ? asMeasured(mm) : mm, units)

/** Metric lengths from here on are told in cm. */
const FROM_CM = 300

/**
 * How the lengths of one column are told: all of them in one unit, that of the longest. "24 mm" over "180 mm", but
 * "2.4 cm" over "180 cm".
 */
export function lengthsIn(units: UnitSystem, lengths: readonly Millimetres[]): (mm: Millimetres) => string {
  const inCm = lengths.some((mm) => Math.abs(mm) >= FROM_CM)
  if (units === 'imperial' || !inCm)
    return (mm) => (units === 'imperial' ? formatLength(mm, units) : `${formatNumber(mm, 1)} mm`)
  return (mm) => `${formatNumber(mm / 10, 1)} cm`
}

/** A width of stitches or a small gap: "4.2 mm", "0.17 in". */
export const formatFineLength = (mm: Millimetres, units: UnitSystem): string =>
  units === 'imperial' ? `${formatNumber(mm / MM_PER_INCH, 2)} in` : `${formatNumber(mm, 1)} mm`

/** A bound on a length. In eighths of an inch it is rounded inwards: what is told can be entered. */
export function formatBound(mm: Millimetres, units: UnitSystem, side: 'least' | 'most'): string {
  if (units === 'metric') return formatLength(mm, units)
  const eighths = (mm / MM_PER_INCH) * 8
  // A bound that is a whole eighth stays itself, whatever binary fractions make of it.
  const inward = side === 'least' ? Math.ceil(eighths - 1e-9) : Math.floor(eighths + 1e-9)
  return formatLength((inward / 8) * MM_PER_INCH, units)
}

/** A size: "97.5 × 68.6 cm", "38⅜ × 27 in". */
export function formatSize(width: Millimetres, height: Millimetres, units: UnitSystem): string {
  if (units === 'imperial') return `${formatEighths(width)} × ${formatEighths(height)} in`
  return `${formatNumber(width / 10, 1)} × ${formatNumber(height / 10, 1)} cm`
}

/** Decimals in which a mass is shown, in the unit that it is shown in. */
const massDigits = (value: number, units: UnitSystem): number =>
  units === 'imperial' ? (Math.abs(value) < 0.95 ? 2 : 1) : Math.abs(value) < 20 ? 1 : 0

/** How far a side is off, beside a size: in its unit, "4.9 cm", "1⅞ in". */
export const formatOff = (mm: Millimetres, units: UnitSystem): string =>
  units === 'imperial' ? formatLength(mm, units) : `${formatNumber(mm / 10, 1)} cm`

/** A mass: "4.3 g", "386 g", "13.6 oz", "0.24 oz". */
export function formatMass(grams: Grams, units: UnitSystem): string {
  const value = units === 'imperial' ? grams / GRAMS_PER_OUNCE : grams
  return `${formatNumber(value, massDigits(value, units))} ${units === 'imperial' ? 'oz' : 'g'}`
}

/** Whether a mass is more than nothing as it is shown. */
export const isMassShown = (grams: Grams, units: UnitSystem): boolean =>
  units === 'imperial' ? grams / GRAMS_PER_OUNCE >= 0.005 : grams >= 0.05

/** A sum beside its parts: what is shown of them added up, so that whoever adds them up comes to the same. */
const sumShown = (parts: readonly number[], unit: number, digits: (value: number) => number): number =>
  parts.reduce((total, part) => {
    const scale = 10 ** digits(part / unit)
    return total + Math.round(exact((part / unit) * scale)) / scale
  }, 0) * unit

/** The sum of masses that stand beside it, in grams: "502 g" and "1,204 g" are 1,706 g, whatever was cut off them. */
export const totalMass = (parts: readonly Grams[], units: UnitSystem): Grams =>
  sumShown(parts, units === 'imperial' ? GRAMS_PER_OUNCE : 1, (value) => massDigits(value, units))

/** Whether so many grams vanish in how a mass of `of` grams is shown: 390 g are enough for 390.3 g. */
export const isBeneathShown = (grams: Grams, of: Grams): boolean => grams < (Math.abs(of) < 20 ? 0.05 : 0.5)

const yarnDigits = (value: number): number => (Math.abs(value) < 20 ? 1 : 0)

/** A length of yarn: "12.4 m", "967 m", "1,057 yd". */
export function formatYarnLength(metres: Metres, units: UnitSystem): string {
  const value = units === 'imperial' ? metres / METRES_PER_YARD : metres
  return `${formatNumber(value, yarnDigits(value))} ${units === 'imperial' ? 'yd' : 'm'}`
}

/** As `totalMass`, of lengths of yarn, in metres. */
export const totalYarnLength = (parts: readonly Metres[], units: UnitSystem): Metres =>
  sumShown(parts, units === 'imperial' ? METRES_PER_YARD : 1, yarnDigits)

/** A range of masses: "410 g (380–445)"; one number where low and high round to it. */
export function formatMassRange(range: Range, units: UnitSystem): string {
  return formatRange(range, (value) => formatMass(value, units))
}

/**
 * A range of any quantity, told by `format` ("value unit"). The bounds drop a unit that all three share:
 * "410 g (380–445)", but "9 h (7 h 30 min – 11 h)".
 */
export function formatRange(range: Range, format: (value: number) => string): string {
  const bare = (words: string) => words.replace(/ .*$/, '')
  const unit = (words: string) => words.slice(bare(words).length)
  const [low, expected, high] = [format(range.low), format(range.expected), format(range.high)]
  if (low === expected && high === expected) return expected
  const oneUnit = unit(low) === unit(expected) && unit(high) === unit(expected)
  return `${expected} (${oneUnit ? `${bare(low)}–${bare(high)}` : `${low} – ${high}`})`
}

/** A time: "45 min", "43 h", "2 h 30 min" (minutes are dropped from ten hours on). */
export function formatMinutes(minutes: Minutes): string {
  const total = Math.round(minutes)
  if (total < 60) return `${total} min`
  if (total >= 600) return `${formatNumber(Math.round(total / 60))} h`
  const rest = total % 60
  return rest === 0 ? `${Math.floor(total / 60)} h` : `${Math.floor(total / 60)} h ${rest} min`
}

/** An amount of money: "€31.20", "SEK 310". Unknown currency codes are told as they are. */
export function formatMoney(amount: number, currency: string): string {
  try {
    return writeMoney(amount, currency || 'EUR')
  } catch {
    return `${formatNumber(amount, 2)} ${currency}`.trim()
  }
}
