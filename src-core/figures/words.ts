/** Words for people that figures and the project sentence share. English; numbers up to twenty-four in words. */

const NUMERALS = [
  'no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve',
  'thirteen', 'fourteen', 'fifteen', 'sixteen', 'seventeen', 'eighteen', 'nineteen', 'twenty', 'twenty-one',
  'twenty-two', 'twenty-three', 'twenty-four',
] as const // prettier-ignore

/** A count in words where it is small enough, else in figures. */
export const numeral = (count: number): string => NUMERALS[count] ?? String(count)

/** "1 row", "2 rows". */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count.toLocaleString('en')} ${count === 1 ? one : many}`

/** First letter large. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** Parts of an enumeration: "a", "a and b", "a, b and c". */
export function listed(parts: readonly string[]): string {
  if (parts.length < 2) return parts.join('')
  return `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`
}
