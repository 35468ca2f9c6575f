/** Names of units as people write them, with their size in the stored unit of each kind of quantity. */
import { GRAMS_PER_OUNCE, METRES_PER_YARD, MM_PER_INCH } from './quantity'

export const QUANTITY_KINDS = [
  'length',
  'mass',
  'yarnLength',
  'money',
  'count',
  'angle',
  'time',
  'percent',
] as const
export type QuantityKind = (typeof QUANTITY_KINDS)[number]

type Names = Readonly<Record<string, number>>

const named = (units: readonly (readonly [size: number, ...names: string[]])[]): Names =>
  Object.fromEntries(units.flatMap(([size, ...names]) => names.map((name) => [name, size])))

const LENGTH: Names = named([
  [1, 'mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'],
  [10, 'cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters'],
  [1000, 'm', 'metre', 'metres', 'meter', 'meters'],
  [MM_PER_INCH, 'in', 'ins', 'inch', 'inches', '"'],
  [12 * MM_PER_INCH, 'ft', 'foot', 'feet', "'"],
  [1000 * METRES_PER_YARD, 'yd', 'yds', 'yard', 'yards'],
])

const YARN_LENGTH: Names = Object.fromEntries(
  Object.entries(LENGTH).map(([name, millimetres]) => [name, millimetres / 1000]),
)

/** Size of each unit in the kind's stored unit: mm, g, m, min, degrees, %; money and counts have none. */
export const UNIT_NAMES: Readonly<Record<QuantityKind, Names>> = {
  length: LENGTH,
  yarnLength: YARN_LENGTH,
  // 1 lb = 16 oz (international yard and pound agreement of 1959).
  mass: named([
    [1, 'g', 'gr', 'gram', 'grams', 'gramme', 'grammes'],
    [1000, 'kg', 'kilo', 'kilos', 'kilogram', 'kilograms'],
    [GRAMS_PER_OUNCE, 'oz', 'ozs', 'ounce', 'ounces'],
    [16 * GRAMS_PER_OUNCE, 'lb', 'lbs', 'pound', 'pounds'],
  ]),
  time: named([
    [1 / 60, 's', 'sec', 'second', 'seconds'],
    [1, 'min', 'mins', 'minute', 'minutes'],
    [60, 'h', 'hr', 'hrs', 'hour', 'hours'],
  ]),
  angle: named([[1, '°', 'deg', 'degree', 'degrees']]),
  percent: named([[1, '%', 'percent']]),
  money: {},
  count: {},
}

/** What a kind is called in a message. */
export const KIND_WORDS: Readonly<Record<QuantityKind, string>> = {
  length: 'a length',
  mass: 'a weight',
  yarnLength: 'a length of yarn',
  money: 'an amount of money',
  count: 'a whole number',
  angle: 'an angle',
  time: 'a time',
  percent: 'a percentage',
}
