/**
 * What a person types into a number field: numbers with units and fractions, sums of them, both decimal
 * signs. The answer is in the stored unit, or says what could not be read; nothing is guessed.
 */
import type { UnitSystem } from '../../shared-types/project'
import { findingOf, said } from '../findings/finding'
import type { Said } from '../findings/finding'
import { formatBound, formatMass, formatNumber, formatYarnLength } from './format'
import { meansCurrency } from './currency'
import { readNumberAt } from './numerals'
import { workOutSum } from './sums'
import type { Term } from './sums'
import { KIND_WORDS, QUANTITY_KINDS, UNIT_NAMES } from './unit-names'
import type { QuantityKind } from './unit-names'

export type { QuantityKind } from './unit-names'

export interface QuantityField {
  readonly kind: QuantityKind
  readonly units: UnitSystem
  /** Unit of a number without one; left out: mm or in, g or oz, m or yd, min, degrees, %. */
  readonly bare?: string
  /** Of money: three letters; left out, any one is read. */
  readonly currency?: string
  /** Bounds in the stored unit, both allowed themselves. */
  readonly least?: number
  readonly most?: number
}

type ReadQuantity =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly code: string; readonly message: string }

/** Longer texts are no number that anybody typed. */
const LONGEST_TEXT = 200

const BARE: Readonly<Record<UnitSystem, Readonly<Partial<Record<QuantityKind, string>>>>> = {
  metric: { length: 'mm', mass: 'g', yarnLength: 'm' },
  imperial: { length: 'in', mass: 'oz', yarnLength: 'yd' },
}

/** One spelling for every sign: true minus, times, primes, blanks of all kinds; no stop after "in.". */
const tidy = (text: string): string =>
  text
    .replace(/[\s\u00a0\u2000-\u200a\u202f]+/g, ' ')
    .replace(/[−–—]/g, '-')
    .replace(/[×·⋅∙✕]/g, '*')
    .replace(/÷/g, '/')
    .replace(/⁄/g, '/')
    .replace(/[′’‘`´]/g, "'")
    .replace(/[″“”]|''/g, '"')
    .replace(/(\p{L})\.(?!\d)/gu, '$1')
    .trim()

const CURRENCY = /[A-Z]{0,3}\p{Sc}|(?<![A-Za-z])[A-Z]{3}(?![A-Za-z])/gu

/** Money without its currency, which must be the field's own where that is known. */
function withoutCurrency(text: string, currency: string | undefined): string | Failure {
  const named = new Set(text.match(CURRENCY) ?? [])
  if (named.size > 1) return said('numbers/two-currencies', { text })
  const [other] = [...named].filter((name) => currency !== undefined && !meansCurrency(name, currency))
  if (other !== undefined) return said('numbers/other-currency', { word: other, currency: currency ?? '' })
  return text.replace(CURRENCY, ' ').replace(/ +/g, ' ').trim()
}

type Failure = Said

type Token =
  | { readonly type: 'number'; readonly value: number }
  | { readonly type: 'unit'; readonly name: string; readonly size: number }
  | { readonly type: 'sign'; readonly sign: string }

/** Units where a person may leave the blank out: 12in, 4' 2", 30°. */
const WORD = /^(?:\p{L}+|["'°%])/u

function unitOf(word: string, kind: QuantityKind): Token | Failure {
  const name = word.toLowerCase()
  const size = Object.hasOwn(UNIT_NAMES[kind], name) ? UNIT_NAMES[kind][name] : undefined
  if (size !== undefined) return { type: 'unit', name, size }
  const other = QUANTITY_KINDS.find((candidate) => Object.hasOwn(UNIT_NAMES[candidate], name))
  const expected = KIND_WORDS[kind]
  return other
    ? { code: 'numbers/other-unit', values: { word, other: KIND_WORDS[other], expected } }
    : { code: 'numbers/unknown-unit', values: { word, expected } }
}

/** "1-1/2" is one and a half to some and a subtraction to others; "8-6/2" is none of that. */
function hasDashedFraction(text: string): boolean {
  const [, above, below] = /\d-(\d+)\/(\d+)/.exec(text) ?? []
  return above !== undefined && below !== undefined && Number(above) < Number(below)
}

function tokensOf(text: string, kind: QuantityKind): Token[] | Failure {
  const tokens: Token[] = []
  for (let at = 0; at < text.length;) {
    const rest = text.slice(at)
    const blank = /^ /.test(rest)
    const sign = /^[-+*/()]/.exec(rest)?.[0]
    const word = WORD.exec(rest)?.[0]
    const last = tokens.at(-1)
    const number = readNumberAt(rest, last?.type !== 'sign' || last.sign !== '/')
    if (blank) at++
    else if (sign !== undefined) {
      tokens.push({ type: 'sign', sign })
      at += sign.length
    } else if (number) {
      if (!Number.isFinite(number.value)) return said('numbers/divided-by-zero')
      tokens.push({ type: 'number', value: number.value })
      at += number.length
    } else if (word !== undefined) {
      const token = unitOf(word, kind)
      if ('code' in token) return token
      tokens.push(token)
      at += word.length
    } else return { code: 'numbers/unreadable', values: { text } }
  }
  return tokens
}

/**
 * Writes tokens as a sum over named terms. A number takes the unit behind it, smaller units may follow
 * without a sign (4' 2", 2 h 30 min), and a unit behind a bracket multiplies it.
 */
function sumOf(tokens: readonly Token[]): { sum: string; terms: Term[] } | null {
  const terms: Term[] = []
  let sum = ''
  const name = (term: Term): string => `t${terms.push(term) - 1}`
  for (let at = 0; at < tokens.length;) {
    const token = tokens[at]
    if (token?.type === 'sign') {
      sum += token.sign === '-' || token.sign === '+' ? ` ${token.sign} ` : token.sign
      at++
    } else if (token?.type === 'unit') {
      const before = tokens[at - 1]
      if (before?.type !== 'sign' || before.sign !== ')') return null
      sum += `*${name({ value: token.size, dimension: 1 })}`
      at++
    } else {
      let value = 0
      let smallest = Infinity
      let parts = 0
      for (;;) {
        const number = tokens[at]
        const unit = tokens[at + 1]
        if (number?.type !== 'number' || unit?.type !== 'unit' || unit.size >= smallest) break
        value += number.value * unit.size
        smallest = unit.size
        parts++
        at += 2
      }
      if (parts === 0) {
        const number = tokens[at]
        if (number?.type !== 'number') return null
        sum += name({ value: number.value, dimension: 0 })
        at++
      } else sum += name({ value, dimension: 1 })
      if (tokens[at]?.type === 'number') return null
    }
  }
  return { sum, terms }
}

function worth(text: string, field: QuantityField): number | Failure {
  const { kind, units } = field
  const unreadable: Failure = { code: 'numbers/unreadable', values: { text } }
  if (hasDashedFraction(text)) return { code: 'numbers/dashed-fraction', values: { text } }
  const tokens = tokensOf(text, kind)
  if ('code' in tokens) return tokens

  const bare = field.bare ?? BARE[units][kind]
  let unitless = bare === undefined ? 1 : (UNIT_NAMES[kind][bare] ?? 1)
  const last = tokens.at(-1)
  const unitCount = tokens.filter((token) => token.type === 'unit').length
  // One unit at the very end holds for the whole: "3 + 4 cm" is seven centimetres.
  const forAll = unitCount === 1 && last?.type === 'unit' && tokens.length > 1 ? last : null
  if (forAll) unitless = forAll.size
  const sum = sumOf(forAll ? tokens.slice(0, -1) : tokens)
  if (!sum) return unreadable
  const result = workOutSum(sum.sum, sum.terms)
  if (result === 'unreadable') return unreadable
  if (result === 'mixed') return { code: 'numbers/mixed', values: { text } }
  if (result === 'divided-by-zero') return said('numbers/divided-by-zero')
  const hasUnits = unitCount > 0 && !forAll
  if (result.dimension !== (hasUnits ? 1 : 0)) {
    return { code: 'numbers/wrong-dimension', values: { text, expected: KIND_WORDS[kind] } }
  }
  return hasUnits ? result.value : result.value * unitless
}

function outOfBounds(value: number, field: QuantityField): Failure | null {
  const { least, most } = field
  if (least !== undefined && value < least)
    return { code: 'numbers/too-small', values: { least: toldBound(least, field, 'least') } }
  if (most !== undefined && value > most)
    return { code: 'numbers/too-large', values: { most: toldBound(most, field, 'most') } }
  return null
}

/** A bound in the unit of who types. */
function toldBound(bound: number, { kind, units }: QuantityField, side: 'least' | 'most'): string {
  if (units === 'imperial') {
    if (kind === 'length') return formatBound(bound, units, side)
    if (kind === 'mass') return formatMass(bound, units)
    if (kind === 'yarnLength') return formatYarnLength(bound, units)
  }
  return `${formatNumber(bound, 3)}${STORED_UNIT[kind]}`
}

const STORED_UNIT: Readonly<Record<QuantityKind, string>> = {
  length: ' mm',
  mass: ' g',
  yarnLength: ' m',
  money: '',
  count: '',
  angle: '°',
  time: ' min',
  percent: ' %',
}

const failed = (failure: Failure): ReadQuantity => {
  const { message } = findingOf(failure, '')
  return { ok: false, code: failure.code, message }
}

/**
 * Reads a quantity into its stored unit (mm, g, m, min, degrees, %, plain numbers). Units in the text win
 * over the field's own; sums, brackets and fractions are worked out. A failure carries its code and words.
 */
export function readQuantity(text: string, field: QuantityField): ReadQuantity {
  if (text.length > LONGEST_TEXT) return failed(said('numbers/too-long'))
  const tidied = tidy(text)
  const plain = field.kind === 'money' ? withoutCurrency(tidied, field.currency) : tidied
  if (typeof plain !== 'string') return failed(plain)
  if (plain === '') return failed({ code: 'numbers/empty', values: { expected: KIND_WORDS[field.kind] } })
  const value = worth(plain, field)
  if (typeof value !== 'number') return failed(value)
  if (!Number.isFinite(value)) return failed({ code: 'numbers/unreadable', values: { text: tidied } })
  if (field.kind === 'count' && Math.abs(value - Math.round(value)) > 1e-9) {
    return failed({ code: 'numbers/not-whole', values: { received: formatNumber(value, 3) } })
  }
  const result = field.kind === 'count' ? Math.round(value) : value
  const outside = outOfBounds(result, field)
  return outside ? failed(outside) : { ok: true, value: result }
}
