/**
 * Lines in more than one script or direction: which font each piece is set in, and where it stands (UAX #9, the
 * Unicode Bidirectional Algorithm, by bidi-js).
 */
import bidiFactory from 'bidi-js'
import { everyCharacter, fontFor } from '../../../../src-core/letters/printable'
import { scriptOf } from '../../../../src-core/letters/scripts'
import { spelled } from '../legible'
import type { ChosenFont } from './chosen'

/** A piece of a line in one font, script and direction. */
export interface Piece {
  /** In the order in which it is read. */
  readonly text: string
  /** Null for the face of paper. */
  readonly font: ChosenFont | null
  readonly isRightToLeft: boolean
}

interface Line {
  /** In the order in which they are read. */
  readonly pieces: readonly Piece[]
  /** Numbers of the pieces from left to right. */
  readonly order: readonly number[]
}

const bidi = bidiFactory()

/** Embeddings and overrides could disguise a name: only isolates and marks are followed. */
const DISGUISES = /[\u202a-\u202e]/g
const MARKS = /[\u200e\u200f\u061c\u2066-\u2069]/g

/** Each font by what it covers, those of the wanted weight first. */
const byWeight = (fonts: readonly ChosenFont[], isBold: boolean): readonly ChosenFont[] => [
  ...fonts.filter((font) => font.isBold === isBold),
  ...fonts.filter((font) => font.isBold !== isBold),
]

/** Units of the text as it is printed, each with its font and script. */
function fontsOf(text: string, fonts: readonly ChosenFont[]) {
  const covers = fonts.map((font) => font.covers)
  let printed = ''
  const units: { readonly font: ChosenFont | null; readonly script: string }[] = []
  for (const { text: character, bare, has } of everyCharacter(text.replace(DISGUISES, ''))) {
    const font = bare === '' || has ? null : (fonts[fontFor(bare, covers)] ?? null)
    // Joiners stay where a font follows them.
    const shown =
      bare === '' ? (character.match(MARKS) ?? []).join('') : font ? character : has ? bare : spelled(bare)
    const script = (font && scriptOf(bare)) ?? ''
    for (let i = 0; i < shown.length; i++) units.push({ font, script })
    printed += shown
  }
  return { printed, units }
}

/** The pieces of a line as it is read and as it stands; the direction of the whole is that of its first letter. */
export function setLine(text: string, chosen: readonly ChosenFont[], isBold: boolean): Line {
  // Spaces behind a line stay behind it, whichever way it goes: they only part it from what is read next.
  const shown = text.trimEnd()
  const { printed, units } = fontsOf(shown, byWeight(chosen, isBold))
  const embedding = bidi.getEmbeddingLevels(printed)
  const places = new Array<number>(printed.length)
  bidi.getReorderedIndices(printed, embedding).forEach((index, place) => (places[index] = place))
  const pieces: (Piece & { readonly place: number })[] = []
  for (let from = 0, to: number; from < printed.length; from = to) {
    const isRightToLeft = embedding.levels[from]! % 2 === 1
    const step = isRightToLeft ? -1 : 1
    const { font, script } = units[from]!
    to = from + 1
    while (
      to < printed.length &&
      embedding.levels[to] === embedding.levels[from] &&
      places[to] === places[to - 1]! + step &&
      units[to]!.font === font &&
      (units[to]!.script === script || units[to]!.script === '')
    )
      to++
    const read = printed.slice(from, to).replace(MARKS, '')
    if (read !== '') pieces.push({ text: read, font, isRightToLeft, place: places[from]! })
  }
  const behind = text.slice(shown.length)
  if (behind !== '') pieces.push({ text: behind, font: null, isRightToLeft: false, place: Infinity })
  const order = pieces.map((_, i) => i).sort((a, b) => pieces[a]!.place - pieces[b]!.place)
  return { pieces, order }
}

const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' })

/** Signs that stand in a line from right to left, as they are printed from left to right: "(" becomes ")". */
export function mirrored(text: string): string {
  const characters = [...graphemes.segment(text)].map(({ segment }) => segment)
  return characters
    .reverse()
    .map((each) => bidi.getMirroredCharacter(each) ?? each)
    .join('')
}
