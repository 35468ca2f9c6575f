/** Gauges as pages tell them: a swatch, what the first rounds measure, or the size of one motif. */
import type { StitchGauge, Terms } from '../../shared-types/project'
import { readNumberAt } from '../units/numerals'
import { MM_PER_INCH } from '../units/quantity'
import type { Millimetres } from '../units/quantity'
import { canonicalStitch, stitchAbbreviation } from '../stitches/terms'
import { lengthsIn, rounded, smallNumber } from './quantities'

/** Names of stitches, the longest first; plurals are met by `canonicalStitch`. */
const STITCH =
  /(?<![\p{L}\d])(half[ -]double[ -]crochets?|half[ -]trebles?(?: crochets?)?|(?:single|double|treble|triple)[ -]crochets?|double[ -]trebles?(?: crochets?)?|trebles?|hdc|htr|dtr|sc|dc|tr)(?![\p{L}\d])/giu
const COUNT = '(\\d+(?:[.,]\\d+)?(?:[ ]?[½¼¾])?(?:[ ]\\d/\\d)?)'
const COUNTED = new RegExp(`${COUNT}(?:\\s*(?:-|–|to)\\s*${COUNT})?\\s*`, 'gu')
const PLAIN_STITCHES = /^(sts?|stitches|stitch)(?![\p{L}])/iu
const ROWS = /^(rows?|rnds?|rounds?|rds?)(?![\p{L}])/iu

/** "4 sts per inch", "to the cm": one of the unit. */
const PER_UNIT = /\b(?:per|to the|to an|each|in an)\s+(inch|in|cm)\b/i

interface Counts {
  readonly stitches: number | null
  readonly stitch: string | null
  readonly rows: { readonly count: number; readonly over: Millimetres | null } | null
}

const numberOf = (text: string): number => readNumberAt(text.replace(',', '.'), true)?.value ?? 0

/** The stitch a word names, in the words of the terms; null where they have none. */
function stitchIn(words: string, terms: Terms): string | null {
  for (const [name] of words.matchAll(STITCH)) {
    const plain = name.replace(/-/g, ' ').replace(/s$/i, '')
    const key = canonicalStitch(plain, terms) ?? canonicalStitch(name, terms)
    if (key) return stitchAbbreviation(key, terms)
  }
  return null
}

/** The length that holds for what is counted at `at`: the next one behind it, else the first one of all. */
function lengthFor(text: string, at: number): Millimetres | null {
  const all = lengthsIn(text).filter(({ start, end }) => !isHook(text, start, end))
  const one = PER_UNIT.exec(text)
  if (all.length === 0 && one) return one[1]!.toLowerCase() === 'cm' ? 10 : MM_PER_INCH
  return (all.find(({ start }) => start >= at) ?? all[0])?.value ?? null
}

/** A length that is the size of a hook: "with 5 mm hook". */
const isHook = (text: string, start: number, end: number): boolean =>
  /^[^,.;]{0,12}\bhook/i.test(text.slice(end)) ||
  /\b(hook|using|with)\s*(size)?[ (]*$/i.test(text.slice(0, start))

function countsIn(text: string, terms: Terms): Counts {
  let [stitches, stitch, rows]: [number | null, string | null, Counts['rows']] = [null, null, null]
  for (const match of text.matchAll(COUNTED)) {
    const end = match.index + match[0].length
    const behind = text.slice(end)
    const named = STITCH.exec(behind)
    STITCH.lastIndex = 0
    const isStitch = named?.index === 0
    const value = match[2] ? (numberOf(match[1]!) + numberOf(match[2])) / 2 : numberOf(match[1]!)
    if (stitches === null && (isStitch || PLAIN_STITCHES.test(behind))) {
      stitches = value
      stitch = isStitch ? stitchIn(named[0], terms) : null
    } else if (rows === null && ROWS.test(behind)) rows = { count: value, over: lengthFor(text, end) }
  }
  return { stitches, stitch: stitch ?? stitchIn(text, terms), rows }
}

/** "16 dc = 4 in", "18 sts and 20 rows to 10 cm over dc": a swatch; null where a text tells none. */
export function swatchIn(text: string, terms: Terms): StitchGauge | null {
  const { stitches, stitch, rows } = countsIn(text, terms)
  const at = stitches === null ? 0 : text.search(COUNTED)
  const over = lengthFor(text, at)
  if (stitches === null || over === null || stitches <= 0) return null
  const per = rows && rows.over !== null ? (rows.count * over) / rows.over : null
  return {
    ...(stitch && { stitch }),
    stitches,
    ...(per !== null && per > 0 && { rows: rounded(per) }),
    over: rounded(over),
  }
}

const ROUND = '(?:rnds?|rds?|rounds?|r)\\.?'
const NUMBERED = new RegExp(
  `(?<![\\p{L}\\d])${ROUND}\\s*(\\d{1,3})(?:(?:\\s*(?:[-–—,&]|to|through|thru|and)\\s*)+(?:${ROUND}\\s*)?(\\d{1,3})(?!\\s*(?:["″”]|in\\b|ins\\b|inch|cm|mm)))*`,
  'iu',
)
const FIRST = /\b(?:first|after|at end of)\s+(\w+)\s+(?:rnds?|rds?|rounds?)\b/i
const COUNTED_ROUNDS = /^\W*(\w+)\s+(?:rnds?|rds?|rounds?)\b/i
const NTH = /\b(?:after|at end of)\s+(\d{1,3})(?:st|nd|rd|th)\s+(?:rnd|rd|round)\b/i

/** How many rounds from the first on a text measures; null where it measures none, or not from the first on. */
function roundsIn(text: string): number | null {
  const nth = NTH.exec(text)
  if (nth) return Number(nth[1])
  const first = FIRST.exec(text) ?? COUNTED_ROUNDS.exec(text)
  const count = first && smallNumber(first[1]!)
  if (count) return count
  const found = NUMBERED.exec(text)
  if (!found) return null
  const from = Number(found[1])
  const to = found[2] === undefined ? from : Number(found[2])
  // "Rnds 2-4" alone are a width of the work, not its size.
  return to > from && from !== 1 ? null : to
}

const CORNERS = /\bcorner[ -]to[ -](?:opposite )?corner|\bdiagonal/i

/** "Rounds 1 to 3 measure 12 cm corner to corner": the gauge of rounds goes from side to side, so this is none. */
export const isOverCorners = (text: string): boolean => CORNERS.test(text) && roundsIn(text) !== null

/** "Rounds 1 and 2 = 3 in": what the first rounds measure across, the trade's own gauge (M3). */
export function roundsGaugeIn(text: string): StitchGauge | null {
  const rounds = roundsIn(text)
  const across = lengthFor(text, 0)
  return rounds !== null && rounds > 0 && across !== null ? { rounds, across: rounded(across) } : null
}
