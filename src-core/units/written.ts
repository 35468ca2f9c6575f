/** What a number field holds: how it is written and nudged. Stored units are mm, g, m, min, degrees. */
import type { UnitSystem } from '../../shared-types/project'
import {
  formatBound,
  formatLength,
  formatMass,
  formatMinutes,
  formatNumber,
  formatYarnLength,
} from './format'
import { GRAMS_PER_OUNCE, METRES_PER_YARD, MM_PER_INCH } from './quantity'

export type QuantityKind =
  | 'length'
  /** Blankets and rooms: a bare number is cm or in. */
  | 'span'
  /** Where something lies: finer than a ruler shows, in mm or decimals of an inch throughout. */
  | 'place'
  | 'mass'
  | 'yarn-length'
  | 'count'
  | 'number'
  | 'percent'
  | 'degrees'
  | 'minutes'
  | 'money'

const MM_PER_CM = 10

/** The quantity as the field shows it, with its unit. */
export function writeQuantity(value: number, kind: QuantityKind, units: UnitSystem): string {
  switch (kind) {
    case 'length':
      return formatLength(value, units)
    case 'span':
      return units === 'imperial' ? formatLength(value, units) : `${formatNumber(value / MM_PER_CM, 1)} cm`
    case 'place':
      return units === 'imperial'
        ? `${formatNumber(value / MM_PER_INCH, 2)} in`
        : `${formatNumber(value, 1)} mm`
    case 'mass':
      return writeMass(value, units)
    case 'yarn-length':
      return formatYarnLength(value, units)
    case 'percent':
      return `${formatNumber(value, 1)} %`
    case 'degrees':
      return `${formatNumber(value, 1)}°`
    case 'minutes':
      return formatMinutes(value)
    case 'money':
      return writeMoney(value)
    default:
      return formatNumber(value, kind === 'count' ? 0 : 3).replaceAll(',', '')
  }
}

/** An amount that is no whole one has both its decimals, as on a price tag. */
function writeMoney(amount: number): string {
  const whole = formatNumber(amount, 2)
  return /\.\d$/.test(whole) ? `${whole}0` : whole
}

/** A bound as the field tells it: what it says can be entered, also where it is rounded to eighths of an inch. */
export function writeBound(
  value: number,
  kind: QuantityKind,
  units: UnitSystem,
  side: 'least' | 'most',
): string {
  const inEighths = units === 'imperial' && (kind === 'length' || kind === 'span')
  return inEighths ? formatBound(value, units, side) : writeQuantity(value, kind, units)
}

/** Small masses are weighed to a tenth or better, and shown so. */
function writeMass(grams: number, units: UnitSystem): string {
  if (units === 'imperial') return `${formatNumber(grams / GRAMS_PER_OUNCE, 2)} oz`
  return grams < 20 ? `${formatNumber(grams, 2)} g` : formatMass(grams, units)
}

/** How far one press of an arrow key moves the value, in stored units. */
function nudgeOf(value: number, kind: QuantityKind, units: UnitSystem): number {
  const imperial = units === 'imperial'
  switch (kind) {
    case 'length':
      return imperial ? MM_PER_INCH / 8 : 1
    case 'span':
      return imperial ? MM_PER_INCH / 2 : MM_PER_CM
    case 'place':
      return imperial ? MM_PER_INCH / 16 : 1
    case 'mass':
      return imperial ? GRAMS_PER_OUNCE / 10 : Math.abs(value) < 20 ? 0.1 : 1
    case 'yarn-length':
      return imperial ? METRES_PER_YARD : 1
    case 'money':
      return 0.1
    default:
      return 1
  }
}

/** Rounding that takes the dust of binary fractions off, and nothing that a ruler or a scale could show. */
const dusted = (value: number): number => Math.round(value * 1e6) / 1e6

/** The value moved by `steps` presses of an arrow key. */
export const nudged = (value: number, steps: number, kind: QuantityKind, units: UnitSystem): number =>
  dusted(value + steps * nudgeOf(value, kind, units))
