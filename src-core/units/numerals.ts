/** Numbers as people write them: both decimal signs, grouped thousands, mixed and typographic fractions. */

const VULGAR_FRACTIONS: Readonly<Record<string, number>> = {
  '½': 1 / 2,
  '⅓': 1 / 3,
  '⅔': 2 / 3,
  '¼': 1 / 4,
  '¾': 3 / 4,
  '⅕': 1 / 5,
  '⅖': 2 / 5,
  '⅗': 3 / 5,
  '⅘': 4 / 5,
  '⅙': 1 / 6,
  '⅚': 5 / 6,
  '⅛': 1 / 8,
  '⅜': 3 / 8,
  '⅝': 5 / 8,
  '⅞': 7 / 8,
}

const VULGAR = `[${Object.keys(VULGAR_FRACTIONS).join('')}]`

/** Both signs: the last one is the decimal sign, the other groups. */
const BOTH = /^\d{1,3}(?:(?:,\d{3})+\.\d+|(?:\.\d{3})+,\d+)$/
/** Groups alone: spaces, commas (also a single one, as this program prints them), or dots when there are several. */
const GROUPS = /^(?:\d{1,3}(?: \d{3})+(?:[.,]\d+)?|[1-9]\d{0,2}(?:,\d{3})+|[1-9]\d{0,2}(?:\.\d{3}){2,})$/
const PLAIN = /^(?:\d+(?:[.,]\d+)?|[.,]\d+)$/

/**
 * The value of one numeral, or null if it is none. "9,5" and "9.5" are nine and a half; "1,250" is twelve
 * hundred and fifty, the way numbers are printed here, but "1.250" and "0,125" have decimals.
 */
export function readNumeral(text: string): number | null {
  if (BOTH.test(text)) {
    const decimal = text.lastIndexOf(',') > text.lastIndexOf('.') ? ',' : '.'
    return Number(text.replaceAll(decimal === ',' ? '.' : ',', '').replace(decimal, '.'))
  }
  if (GROUPS.test(text)) {
    const spaced = text.includes(' ')
    return Number(spaced ? text.replaceAll(' ', '').replace(',', '.') : text.replace(/[.,]/g, ''))
  }
  return PLAIN.test(text) ? Number(text.replace(',', '.')) : null
}

const NUMERAL = /^(?:\d{1,3}(?: \d{3})+(?![\d]| ?\/)(?:[.,]\d+)?|[\d.,]*\d)/
const MIXED = /^ (\d+)\/(\d+)(?![\d.,])/
const FRACTION = /^(\d+)\/(\d+)(?![\d.,])/
const AFTER_WHOLE = new RegExp(`^ ?(${VULGAR})`)
const ALONE = new RegExp(`^(${VULGAR})`)

interface ReadNumber {
  readonly value: number
  /** Characters that it takes up. */
  readonly length: number
}

const share = (above: string | undefined, below: string | undefined): number => Number(above) / Number(below)

/**
 * The number that a text begins with, fractions included ("12 1/2", "3⅛", "½"), or null. A plain "1/2" is
 * read as one number only where `fractions` allows it, since it may stand in the middle of a sum.
 */
export function readNumberAt(text: string, fractions: boolean): ReadNumber | null {
  const alone = ALONE.exec(text)
  if (alone) return { value: VULGAR_FRACTIONS[alone[1] ?? ''] ?? 0, length: alone[0].length }
  const fraction = fractions ? FRACTION.exec(text) : null
  if (fraction) return { value: share(fraction[1], fraction[2]), length: fraction[0].length }
  const numeral = NUMERAL.exec(text)?.[0]
  if (numeral === undefined) return null
  const whole = readNumeral(numeral)
  if (whole === null) return null
  const rest = text.slice(numeral.length)
  if (Number.isInteger(whole)) {
    const vulgar = AFTER_WHOLE.exec(rest)
    if (vulgar) {
      const value = whole + (VULGAR_FRACTIONS[vulgar[1] ?? ''] ?? 0)
      return { value, length: numeral.length + vulgar[0].length }
    }
    const mixed = MIXED.exec(rest)
    if (mixed) return { value: whole + share(mixed[1], mixed[2]), length: numeral.length + mixed[0].length }
  }
  return { value: whole, length: numeral.length }
}
