/** Sizes as pages tell them: of one motif, or of the whole blanket. Millimetres. */
import type { Millimetres } from '../units/quantity'
import type { Found } from './quantities'
import { lengthsIn, rounded } from './quantities'

/** What a page measures: 'across' without saying from where to where. */
export type SizeOf = 'across' | 'sideToSide' | 'pointToPoint' | 'length' | 'width'

export type ToldSize =
  | {
      readonly of: 'motif'
      readonly sizes: readonly (readonly [SizeOf, Millimetres])[]
      readonly blocked: boolean | null
    }
  | { readonly of: 'whole'; readonly width: Millimetres; readonly height: Millimetres }

/** mm. What is larger both ways is no motif (ours). */
const LARGEST_MOTIF = 500
/** A square told by both sides: they differ by no more than this (ours). */
const ALIKE = 0.03

const BY_WORDS: readonly (readonly [RegExp, SizeOf])[] = [
  [/\b(point|corner|tip)s?[ -]to[ -](?:opposite )?(point|corner|tip)|\bdiagonal/i, 'pointToPoint'],
  [/\b(side|edge|flat)[ -]to[ -](?:opposite )?(side|edge|flat)|\bsquare\b/i, 'sideToSide'],
  [/\b(long|in length|tall|high)\b/i, 'length'],
  [/\b(wide|in width)\b/i, 'width'],
]

const whatOf = (words: string): SizeOf => BY_WORDS.find(([sign]) => sign.test(words))?.[1] ?? 'across'

const blockedIn = (text: string): boolean | null =>
  /\bbefore blocking|unblocked/i.test(text) ? false : /\bafter blocking|blocked/i.test(text) ? true : null

/** Words that name one motif: what its size is told of. */
export const MOTIF_WORDS =
  /\b(motifs?|squares?|hexagons?|octagons?|triangles?|flowers?|circles?|blocks?|medallions?|hearts?|lea(?:f|ves)|stars?|rounds?|snowflakes?|coasters?|granny)\b/i

/** `3" wide x 2 3/4" tall`, "14 x 10 cm": by its words, else the longer one is the length. */
function pairOf(text: string, one: Found, other: Found): (readonly [SizeOf, Millimetres])[] {
  const isOf = (words: string, of: SizeOf) => whatOf(words) === of
  const between = text.slice(one.end, other.start)
  const behind = text.slice(other.end)
  const isWideFirst = isOf(between, 'width') || isOf(behind, 'length')
  const isLongFirst = isOf(between, 'length') || isOf(behind, 'width') || one.value >= other.value
  const [length, width] = !isWideFirst && isLongFirst ? [one, other] : [other, one]
  return [
    ['length', rounded(length.value)],
    ['width', rounded(width.value)],
  ]
}

/** Whether a size tells how long and how wide a motif is: of one that is as long as wide it says nothing. */
export const isLongAndWide = (size: ToldSize): boolean =>
  size.of === 'motif' && ['length', 'width'].every((name) => size.sizes.some(([of]) => of === name))

/** "Flower 9 cm across; leaf 5 cm long": the first of several things that are told of; the text where it is one. */
export function firstOfSeveral(text: string): string {
  const parts = [...text.matchAll(/[^;,]+/g)].filter(([part]) => lengthsIn(part).length > 0)
  const named = parts.map(([part]) => MOTIF_WORDS.exec(part)?.[0].toLowerCase().replace(/s$/, ''))
  const at = named.findIndex((name, i) => i > 0 && name !== undefined && name !== named[0])
  return named[0] === undefined || at < 0 ? text : text.slice(0, parts[at]!.index).replace(/[\s;,]+$/, '')
}

/** The size that a text tells; null where it tells none, or one of neither a motif nor a blanket. */
export function sizeIn(text: string): ToldSize | null {
  const lengths = lengthsIn(text)
  const [first, second] = lengths
  if (!first) return null
  const isPair = second !== undefined && /\b(x|by)\b|×/i.test(text.slice(first.start, second.end))
  if (isPair) {
    const [width, height] = [rounded(first.value), rounded(second.value)]
    if (Math.min(width, height) >= LARGEST_MOTIF) return { of: 'whole', width, height }
    if (Math.abs(width - height) <= ALIKE * width)
      return { of: 'motif', sizes: [['sideToSide', width]], blocked: blockedIn(text) }
    return { of: 'motif', sizes: pairOf(text, first, second), blocked: blockedIn(text) }
  }
  // A range, or sizes of several things, is for a person to choose from.
  const sizes = lengths.map(({ value, start, end }, i): readonly [SizeOf, Millimetres] => {
    const until = lengths[i + 1]?.start ?? text.length
    const from = lengths[i - 1]?.end ?? 0
    const behind = text.slice(end, until)
    const before = text.slice(from, start)
    return [whatOf(behind) === 'across' && i === 0 ? whatOf(before) : whatOf(behind), rounded(value)]
  })
  const named = new Set(sizes.map(([of]) => of))
  if (named.size < sizes.length || sizes.some(([, value]) => value >= LARGEST_MOTIF)) return null
  return { of: 'motif', sizes, blocked: blockedIn(text) }
}
