/** What a colour or yarn is called: "A", "MC", "shade 3", "dusty rose", "sparkly yarn", "white No. 10 cotton". */
import { canonicalStitch } from '../stitches/terms'
import type { Reader } from './reader'
import type { ColourItem } from './tree'
import { wordOf } from './words'

export const COLOUR_LETTERS = /^([A-Z]|MC|CC\d?|C[A-H]|[A-Z]\d)$/
/** What is joined without being a colour. */
const NO_COLOUR =
  /^(the|a|an|in|into|to|with|from|at|on|as|and|around|rnd|rnds|round|ring|next|last|first|each|same|motifs?|petals?|pieces?|ends?|squares?|all|both|sl|ss|sc|dc|st|sts|yarn|new|here|wrong|right|smaller|larger|size|hook|ch|any|top|together|sides?|no|nr|number)$/

/** "green", "Dusty rose", "off-white": one to three words that name a colour; passes them. */
function readColourWords(reader: Reader, joins: boolean): string | null {
  const start = reader.at
  return reader.attempt(() => {
    const first = reader.peek()
    if (first?.kind !== 'word' || NO_COLOUR.test(first.key)) return null
    let named = false
    while (reader.at - start < 3) {
      const token = reader.peek()
      if (token?.kind !== 'word' || (reader.at > start && NO_COLOUR.test(token.key))) break
      const parts = token.key.split('-')
      named ||= wordOf(parts[parts.length - 1]!).kinds.has('colour') || wordOf(parts[0]!).kinds.has('shade')
      reader.at++
    }
    // A name that is no plain colour is written large ("Join Meadow with sl st in any sp").
    const large = /^\p{Lu}\p{Ll}/u.test(first.text) && !first.first
    const behind = reader.key()
    const around = ['around', 'between', 'behind'].includes(reader.spelled())
    const goesOn = around || ['with', 'in', 'to', 'at', 'into', ',', ';', ':', '.', ''].includes(behind)
    if (!goesOn || !(named || large)) return null
    if (large && !named && joins && !around && !['with', 'in', 'to', 'into', ','].includes(behind))
      return null
    return reader.words(reader.span(start))
  })
}

export const SHADES = /^(shade|tone|hue|thread|cotton|wool|strand)$/

/** "Shade 3", "thread A": the word before the number or letter of a colour; passes it. */
const passShade = (reader: Reader): boolean =>
  SHADES.test(reader.key()) &&
  (reader.peek(1)?.kind === 'number' || COLOUR_LETTERS.test(reader.peek(1)?.text ?? '')) &&
  ++reader.at > 0

/** "A", "MC", "CC2", "color B", "colour 2", "yarn A", "shade 3", "green"; passes it. */
export function readColourName(reader: Reader, joins = false): string | null {
  return reader.attempt(() => {
    const word = passShade(reader) || reader.skip('color', 'yarn')
    const token = reader.peek()
    if (!token) return word ? '' : null
    if (COLOUR_LETTERS.test(token.text)) {
      reader.at++
      if (/^(C|CC)$/.test(token.text) && reader.peek()?.kind === 'number' && !reader.peek()!.spaced) {
        return token.text + reader.tokens[reader.at++]!.text
      }
      return token.text
    }
    if (word && token.kind === 'number') {
      reader.at++
      return token.text
    }
    // "1st colour", "2nd color".
    if (token.kind === 'ordinal' && reader.peek(1)?.is === 'color') {
      reader.at += 2
      return `${token.text} ${reader.tokens[reader.at - 1]!.text}`
    }
    // "Light color", "the darker shade".
    if (token.kinds.has('shade') && /^(color|shade|yarn|thread)$/.test(reader.key(1))) {
      reader.at += 2
      return token.text.toLowerCase()
    }
    for (const [first, short] of [
      ['main', 'MC'],
      ['contrast', 'CC'],
      ['contrasting', 'CC'],
    ] as const) {
      if (!reader.skipAll(first, 'color')) continue
      return short
    }
    return readColourWords(reader, joins) ?? (word ? '' : null)
  })
}

/** Words that tell one colour from another by no name. */
const ANY_ONE =
  /^(new|next|other|another|different|same|any|the|a|an|your|chosen|of|choice|each|this|that|first|second|third|fourth|fifth|last)$/

/** "sparkly yarn", "second shade", "edging thread": yarn that is told by what it is; '' for its colour. "Petal color": "petal". */
export const readYarn = (reader: Reader): string | null =>
  reader.attempt(() => {
    for (let words = 0; words < 3 && reader.peek()?.kind === 'word'; words++) {
      if (reader.isA('stitch') || reader.isA('into') || reader.sees('with')) return null
      const before = reader.peek(-1)
      const shade = words === 1 && ['shade', 'color'].includes(reader.key()) && before?.kind === 'word'
      const named = shade && !ANY_ONE.test(before.key) ? before.text.toLowerCase() : ''
      const yarn = reader.skip('yarn', 'thread', 'cotton', 'wool', 'shade', 'color')
      if (yarn) return named
      reader.at++
    }
    return null
  })

/** What patterns are worked with. */
const MATERIAL = /^(hook|yarn|cotton|thread|wool|floss|strands?|ply|mm)$|\dmm$/
const LONGEST_MATERIAL = 12

/** "With white No. 10 cotton make 6 ch": what is worked with, up to what is made of it; its colour, '' where it has none. */
export function readMaterial(reader: Reader): string | null {
  return reader.attempt(() => {
    let colour = ''
    let named = false
    for (let words = 0; words < LONGEST_MATERIAL; words++, reader.at++) {
      const token = reader.peek()
      if (!token || /^[,;:()[\]*]$/.test(token.key)) return null
      named ||= MATERIAL.test(token.key) || token.kinds.has('colour')
      if (token.kinds.has('colour')) colour ||= token.text
      const chained = reader.isA('chain') || (token.kind === 'number' && reader.isA('chain', 1))
      const made = token.kinds.has('verb') || token.kind === 'chains' || chained
      if (made && named) return colour
    }
    return null
  })
}

/** "Round 5: indigo, join in any ch-2 sp": a word that the text has used before, alone where a round begins, is its yarn. */
export function readColourFirst(reader: Reader): ColourItem | null {
  const start = reader.at
  const token = reader.peek()
  const before = reader.tokens[start - 1]
  const opens = before === undefined || token?.first === true || before.key === ':'
  if (!opens || token?.kind !== 'word' || wordOf(token.key).known || reader.key(1) !== ',') return null
  if (canonicalStitch(token.key, reader.terms) !== null) return null
  const known = new RegExp(`\\b(?:in|and|or|with|,) ${token.key.replace(/[^\p{L}]/gu, '')}\\b`, 'iu')
  if (!known.test(reader.text.slice(0, token.start))) return null
  reader.at++
  return { type: 'colour', colour: token.text, place: null, stitch: null, ...reader.span(start) }
}
