/** Words for people that figures and the project sentence share. English; numbers up to twenty-four in words. */
import type { Lie } from '../../shared-types/plan'
import { formatNumber } from '../units/format'
import { plural } from '../units/language'

export { plural }

const NUMERALS = [
  'no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve',
  'thirteen', 'fourteen', 'fifteen', 'sixteen', 'seventeen', 'eighteen', 'nineteen', 'twenty', 'twenty-one',
  'twenty-two', 'twenty-three', 'twenty-four',
] as const // prettier-ignore

/** A count in words where it is small enough, else in figures. */
export const numeral = (count: number): string => NUMERALS[count] ?? String(count)

/** "1 row", "2 rows", "1,200 rows". */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${formatNumber(count)} ${plural(count, one, many)}`

/** "one row", "two rows": a count in words where it is small enough. */
export const numbered = (count: number, one: string, many = `${one}s`): string =>
  `${numeral(count)} ${plural(count, one, many)}`

/** "11 rows of up to 22": what stands of something that is cut out. */
export const rowsOfUpTo = (lengths: readonly number[], one = 'row', many = `${one}s`): string =>
  `${counted(lengths.length, one, many)} of up to ${formatNumber(Math.max(0, ...lengths))}`

/** "a square", "an octagon". */
export const oneOf = (word: string): string => `${/^[aeio]/i.test(word) ? 'an' : 'a'} ${word}`

/** First letter large. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

const LAST_DIGITS = ['th', 'st', 'nd', 'rd']
/** "1st", "12th", "23rd": as stitches are counted in patterns. */
export function ordinal(n: number): string {
  const isTeen = n % 100 > 10 && n % 100 < 14
  return `${n}${(isTeen ? undefined : LAST_DIGITS[n % 10]) ?? 'th'}`
}

/** Parts of an enumeration: "a", "a and b", "a, b and c". */
export function listed(parts: readonly string[], last: 'and' | 'or' = 'and'): string {
  if (parts.length < 2) return parts.join('')
  return `${parts.slice(0, -1).join(', ')} ${last} ${parts.at(-1)}`
}

/** How a round lies, in the words of the trade. */
export const LIE_WORDS: Readonly<Record<Lie, string>> = {
  flat: 'lies flat',
  'may-cup': 'may cup',
  cups: 'cups',
  'may-ruffle': 'may ruffle',
  ruffles: 'ruffles',
}
