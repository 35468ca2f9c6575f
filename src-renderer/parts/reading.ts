/** Reads what was typed into a number field: a value in the stored unit, or what is wrong with it, in words. */
import type { UnitSystem } from '../../shared-types/project'
import { readQuantity } from '../../src-core/units/read'
import type { QuantityField } from '../../src-core/units/read'
import type { QuantityKind } from '../../src-core/units/written'
import { writeBound, writeQuantity } from '../../src-core/units/written'

interface FieldRules {
  readonly kind: QuantityKind
  readonly units: UnitSystem
  readonly least?: number | undefined
  readonly most?: number | undefined
  /** Out of reach itself: a number has to stay under it. */
  readonly under?: number | undefined
  /** The same below: it has to be more than this. */
  readonly above?: number | undefined
  /** What those two are: "side to side". */
  readonly than?: string | undefined
  readonly optional?: boolean
  /** Of money: the project's. */
  readonly currency?: string | undefined
  /** What stands in the field: a bare number is in the unit that it shows. */
  readonly shown?: string | undefined
  /** Of a weight of yarn: g in a whole ball, where "3 balls" can be said for it. */
  readonly ball?: number | undefined
}

/** `value` is undefined for an optional field that was emptied. */
type Reading = { readonly value: number | undefined } | { readonly problem: string }

/** How each kind of field is read; a span is a length whose bare numbers are cm or in. */
const READ_AS: Readonly<Record<QuantityKind, QuantityField['kind']>> = {
  length: 'length',
  span: 'length',
  place: 'length',
  mass: 'mass',
  'yarn-length': 'yarnLength',
  count: 'count',
  number: 'money',
  percent: 'percent',
  degrees: 'angle',
  minutes: 'time',
  money: 'money',
}

const range = (least: string | null, most: string | null): string => {
  if (least !== null && most !== null) return `from ${least} to ${most}`
  return least !== null ? `at least ${least}` : `at most ${most ?? ''}`
}

/** "6 skeins" in a field for skeins is six: what is counted may be named. */
const withoutNoun = (text: string): string =>
  text.replace(/(\d)\s*(ball|skein|hank|kit|motif|petal|row|round|chain|swag)s?\s*$/i, '$1')

/** "3 balls", "2 1/2 skeins": whole yarn as it is sold. */
const AS_SOLD = /^(.*\d[^a-z]*)(?:ball|skein|hank)s?\s*$/i

/** Reads a field's text by its rules. */
export function readField(text: string, rules: FieldRules): Reading {
  const { kind, units, currency, ball } = rules
  if (rules.optional && text.trim() === '') return { value: undefined }
  const sold = kind === 'mass' && ball ? AS_SOLD.exec(text)?.[1] : undefined
  if (sold !== undefined) {
    const balls = readField(sold, { kind: 'number', units, least: 0 })
    return 'problem' in balls ? balls : within({ value: (balls.value ?? 0) * ball! }, rules)
  }
  const inCm = kind === 'span' || (kind === 'length' && / cm$/.test(rules.shown ?? ''))
  const bare = inCm && units === 'metric' ? { bare: 'cm' } : {}
  const isNumber = kind === 'number' || kind === 'count'
  const read = readQuantity(isNumber ? withoutNoun(text) : text, {
    kind: READ_AS[kind],
    units,
    ...bare,
    ...(currency !== undefined && kind === 'money' && { currency }),
  })
  if (!read.ok) {
    const message = kind === 'number' ? read.message.replace('an amount of money', 'a number') : read.message
    return { problem: message.charAt(0).toUpperCase() + message.slice(1) }
  }
  return within(read, rules)
}

/** mm. Below this somebody who typed a bare number more likely meant centimetres (ours). */
const TINY = 15

/** Whether a bare number was taken for millimetres that may have been meant as centimetres. */
export function mayMeanCm(text: string, value: number | undefined, rules: FieldRules): value is number {
  const { kind, units, shown } = rules
  if (kind !== 'length' || units !== 'metric' || / cm$/.test(shown ?? '')) return false
  return value !== undefined && value > 0 && value < TINY && !/[\p{L}"″”'′]/u.test(text)
}

/** What was read, where it keeps to its bounds. */
function within(
  { value }: { readonly value: number },
  { kind, units, least, most, under, above, than }: FieldRules,
): Reading {
  const told = (bound: number): string =>
    `${than === undefined ? '' : `${than}, `}${writeQuantity(bound, kind, units)}`
  if (under !== undefined && value >= under && (least === undefined || value >= least)) {
    return { problem: `It must be less than ${told(under)}.` }
  }
  if (above !== undefined && value <= above && (most === undefined || value <= most))
    return { problem: `It must be more than ${told(above)}.` }
  if ((least !== undefined && value < least) || (most !== undefined && value > most)) {
    const limit = (bound: number | undefined, side: 'least' | 'most') =>
      bound === undefined ? null : writeBound(bound, kind, units, side)
    return { problem: `It can be ${range(limit(least, 'least'), limit(most, 'most'))}.` }
  }
  return { value }
}
