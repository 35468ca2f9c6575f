/** Reads what was typed into a number field: a value in the stored unit, or what is wrong with it, in words. */
import type { UnitSystem } from '../../shared-types/project'
import { readQuantity } from '../../src-core/units/read'
import type { QuantityField } from '../../src-core/units/read'
import type { QuantityKind } from './quantities'
import { writeBound } from './quantities'

export interface FieldRules {
  readonly kind: QuantityKind
  readonly units: UnitSystem
  readonly least?: number | undefined
  readonly most?: number | undefined
  readonly optional?: boolean
}

/** `value` is undefined for an optional field that was emptied. */
export type Reading = { readonly value: number | undefined } | { readonly problem: string }

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

const within = (least: string | null, most: string | null): string => {
  if (least !== null && most !== null) return `from ${least} to ${most}`
  return least !== null ? `at least ${least}` : `at most ${most ?? ''}`
}

/** Reads a field's text by its rules. */
export function readField(text: string, rules: FieldRules): Reading {
  const { kind, units, least, most } = rules
  if (rules.optional && text.trim() === '') return { value: undefined }
  const bare = kind === 'span' && units === 'metric' ? { bare: 'cm' } : {}
  const read = readQuantity(text, { kind: READ_AS[kind], units, ...bare })
  if (!read.ok) return { problem: read.message.charAt(0).toUpperCase() + read.message.slice(1) }
  const { value } = read
  if ((least !== undefined && value < least) || (most !== undefined && value > most)) {
    const told = (bound: number | undefined, side: 'least' | 'most') =>
      bound === undefined ? null : writeBound(bound, kind, units, side)
    return { problem: `It can be ${within(told(least, 'least'), told(most, 'most'))}.` }
  }
  return { value }
}
