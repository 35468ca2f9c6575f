/** Lengths and masses among the words of a page. Millimetres and grams, as everywhere. */
import { wordOf } from '../notation/words'
import { readNumberAt } from '../units/numerals'
import type { Grams, Metres, Millimetres } from '../units/quantity'
import { UNIT_NAMES } from '../units/unit-names'

export interface Found<Value extends number = number> {
  readonly value: Value
  /** Offsets in the words that were searched. */
  readonly start: number
  readonly end: number
}

type Units = Readonly<Record<string, number>>

/** Units that patterns give measures in; a bare "m" or "'" is something else as often as not. */
const MEASURES = /^(mm|millimet(?:re|er)s?|cm|centimet(?:re|er)s?|in|ins|inch|inches|ft|feet|")$/
const only = (units: Units, names: RegExp): Units =>
  Object.fromEntries(Object.entries(units).filter(([name]) => names.test(name)))

const LENGTHS = only(UNIT_NAMES.length, MEASURES)
const YARN_LENGTHS = only(UNIT_NAMES.yarnLength, /^(m|met(re|er)s?|yds?|yards?)$/)

/** "4 in.", `4"`, "4-inch", "10cm"; a sign for inches as typed or as printed. */
const UNIT = /^[ \t]?[-–]?[ \t]?(\p{L}+|["″”“]|''|′′)\.?/u

/** A number with its fraction, also as "2-1/2" and "2 ½". */
function numberAt(text: string): { value: number; length: number } | null {
  const dashed = /^(\d+)[-–](\d)\/(\d{1,2})(?!\d)/.exec(text)
  if (dashed)
    return { value: Number(dashed[1]) + Number(dashed[2]) / Number(dashed[3]), length: dashed[0].length }
  return readNumberAt(text, true)
}

function unitAt(text: string, units: Units): { size: number; length: number } | null {
  const [all = '', word = ''] = UNIT.exec(text) ?? []
  const size = units[/\p{L}/u.test(word) ? word.toLowerCase() : '"']
  return all !== '' && size !== undefined ? { size, length: all.length } : null
}

/** Everything with one of the units, in order; numbers of a pair ("4 x 6 in", "3-4 in") take the unit behind it. */
function findAll<Value extends number>(text: string, units: Units): Found<Value>[] {
  const found: Found<Value>[] = []
  let open: { value: number; start: number; end: number }[] = []
  for (let at = 0; at < text.length;) {
    const before = text[at - 1] ?? ' '
    const number =
      /[\d½⅓⅔¼¾⅛⅜⅝⅞.]/.test(text[at]!) && !/[\p{L}\d]/u.test(before) ? numberAt(text.slice(at)) : null
    if (!number) {
      at++
      continue
    }
    const end = at + number.length
    const unit = unitAt(text.slice(end), units)
    const linked = open.length > 0 && /^[ \t]*(x|×|by|to|[-–])[ \t]*$/i.test(text.slice(open.at(-1)!.end, at))
    if (!linked) open = []
    if (unit) {
      for (const one of [...open, { value: number.value, start: at, end: end + unit.length }])
        found.push({ ...one, value: (one.value * unit.size) as Value })
      open = []
    } else open.push({ value: number.value, start: at, end })
    at = end + (unit?.length ?? 0)
  }
  return found
}

/** The same measure once more in other units: "[10 cm]", "(4 in)", "/4 in", "or 10 cm". */
const AGAIN = /^[ \t]*([[(]|\/|or\b)[ \t]*(?:approx\.?|about|ca\.?)?[ \t]*$/i

function withoutDoubles<Value extends number>(text: string, all: readonly Found<Value>[]): Found<Value>[] {
  const kept: Found<Value>[] = []
  let bracket = -1
  all.forEach((one, i) => {
    const before = all[i - 1]
    const between = before ? text.slice(before.end, one.start) : ''
    if (before && AGAIN.test(between) && !text.slice(0, before.start).endsWith('(')) {
      bracket = /[[(]/.test(between) ? closing(text, one.start) : one.end
      // "4 x 4 in (10 x 10 cm)": both of the bracket are told again.
      return
    }
    if (one.start < bracket) return
    kept.push(one)
  })
  return kept
}

const closing = (text: string, from: number): number => {
  const at = text.slice(from).search(/[\])]/)
  return at < 0 ? text.length : from + at
}

/** Lengths of a text in mm; what is only another measure told in other units counts once. */
export const lengthsIn = (text: string): Found<Millimetres>[] =>
  withoutDoubles(text, findAll<Millimetres>(text, LENGTHS))

export const massesIn = (text: string): Found<Grams>[] => findAll<Grams>(text, UNIT_NAMES.mass)

export const yarnLengthsIn = (text: string): Found<Metres>[] => findAll<Metres>(text, YARN_LENGTHS)

/** A small number in figures or in a word; null where it is neither. */
export const smallNumber = (word: string): number | null =>
  /^\d{1,3}$/.test(word) ? Number(word) : wordOf(word.toLowerCase()).value || null

/** Tidied for the file: no tails of converted inches. */
export const rounded = (value: number, digits = 2): number => Number(value.toFixed(digits))
