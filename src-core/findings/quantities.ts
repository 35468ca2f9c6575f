/** Numbers with units as values of findings: each system of units tells them its own way. */
import type { InUnits } from '../../shared-types/finding'
import type { UnitSystem } from '../../shared-types/project'
import type { FieldFacts } from '../fields/field'
import {
  formatBound,
  formatFineLength,
  formatLength,
  formatMass,
  formatNumber,
  formatRough,
} from '../units/format'
import { GRAMS_PER_OUNCE, METRES_PER_YARD } from '../units/quantity'
import type { Grams, Millimetres } from '../units/quantity'
import { writeBound, writeQuantity } from '../units/written'

const inBoth = (tell: (units: UnitSystem) => string): InUnits => ({
  metric: tell('metric'),
  imperial: tell('imperial'),
})

/** A length as a ruler shows it: "78 mm", "3⅛ in". */
export const lengthValue = (mm: Millimetres): InUnits => inBoth((units) => formatLength(mm, units))

/** A length that was worked out, and that no tape shows to a tenth: "116 mm". */
export const roughValue = (mm: Millimetres): InUnits => inBoth((units) => formatRough(mm, units))

/** A width of stitches or a small gap, which eighths of an inch would hide: "4.2 mm", "0.17 in". */
export const fineLengthValue = (mm: Millimetres): InUnits => inBoth((units) => formatFineLength(mm, units))

/** The most that may be entered. */
export const mostValue = (mm: Millimetres): InUnits => inBoth((units) => formatBound(mm, units, 'most'))

/** Two bounds; told in eighths of an inch, either of them may be entered as it is told. */
export const boundValues = ({
  least,
  most,
}: {
  readonly least: Millimetres
  readonly most: Millimetres
}) => ({
  least: inBoth((units) => formatBound(least, units, 'least')),
  most: mostValue(most),
})

/** A number of a field and its bounds, each as the field writes it. */
export const quantityValues = (value: number, { kind, least = 0, most = Infinity }: FieldFacts) => ({
  received: inBoth((units) => writeQuantity(value, kind, units)),
  least: inBoth((units) => writeBound(least, kind, units, 'least')),
  most: inBoth((units) => writeBound(most, kind, units, 'most')),
})

export const massValue = (grams: Grams): InUnits => inBoth((units) => formatMass(grams, units))

/** How heavy a fabric is: "56 g/m²", "1.7 oz/sq yd". */
export const fabricValue = (gramsPerSquareMetre: number): InUnits => ({
  metric: `${formatNumber(gramsPerSquareMetre)} g/m²`,
  imperial: `${formatNumber((gramsPerSquareMetre * METRES_PER_YARD ** 2) / GRAMS_PER_OUNCE, 1)} oz/sq yd`,
})

/** What a gauge is counted over: 10 cm, or 4 in (common practice, CYC's standards: "over 4 inches (10 cm)"). */
export const SWATCH_WORDS: InUnits = { metric: '10 cm', imperial: '4 in' }
