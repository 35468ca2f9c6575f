/** Headings of rounds: "Rnd 3:", "3rd rnd:", "Rnds 4–6:", "Round 4" on a line of its own. */
import type { Square } from './filet'
import type { Reader } from './reader'
import type { Span } from './tokens'
import { isForm, readStitch } from './vocabulary'

export interface Heading {
  readonly kind: 'round' | 'section' | 'definition' | 'part'
  /** First token of the heading, first token after it. */
  readonly from: number
  readonly to: number
  readonly numbers: readonly [number, number] | null
  readonly label: string | null
  readonly span: Span
  /** "How to make a puff:": token at which the name itself begins. */
  readonly called?: number
  /** A stitch by this name is worked in the rounds. */
  readonly worked?: boolean
  /** A space or block of filet is explained. */
  readonly square?: Square
}

const RANGE = new Set(['-', '–', '—', 'to', 'and', '&', 'through'])
const ENDS = new Set([':', '.', '—', '–', '-', ')'])

/** "4", "4-6", "4 and 5", "4, 5 and 6" behind "Rnds". */
function readNumbers(reader: Reader): [number, number] | null {
  const one = !/s$/.test(reader.spelled(-1))
  reader.skip('#')
  const first = reader.number()
  if (first === null) return null
  let last = first
  for (;;) {
    const next = reader.attempt(() => {
      // "R4-R5": the hyphen hangs on the figure.
      const hangs = reader.tokens[reader.at - 1]?.hyphen === true
      const dash = one && reader.peek()?.spaced && reader.peek(1)?.spaced && /^[-–—]$/.test(reader.key())
      if (!hangs && !reader.seesAny(RANGE) && !reader.sees(',')) return null
      if (!hangs) reader.at++
      reader.skip('and')
      if (!reader.skipA('round')) reader.skip('r')
      const number = reader.peek()?.kind === 'number' ? reader.number() : null
      // "Round 1 – 3 ch, …" is one round, which begins with chains.
      const stitch = reader.peek()
      if (stitch && (reader.isA('chain') || reader.isA('stitch') || isForm(stitch))) return null
      // "Round 1 – 6 sc in ring".
      if (dash && reader.attempt(() => readStitch(reader))) return null
      return number !== null && number > last ? number : null
    })
    if (next === null) return [first, last]
    last = next
  }
}

/** "4th round, with white: 1 ch, …": what it is worked with stands before the colon; passes the comma. "Round 5, a shell border: …": what it is; passes all of it. */
function passWith(reader: Reader): boolean {
  if (!reader.sees(',')) return false
  const named = ['a', 'an', 'the'].includes(reader.key(1))
  if (!named && !['with', 'using', 'in', 'working', 'through'].includes(reader.key(1))) return false
  for (let ahead = 2; ahead < 12; ahead++) {
    const token = reader.peek(ahead)
    if (token?.key === ':') return (reader.at += named ? ahead + 1 : 1) > 0
    // "Round 5, with A, through both loops: …".
    if (token?.key === ',' && !named && !token.first) continue
    if (token?.kind !== 'word' || token.first) return false
  }
  return false
}

/** "(RS)", "[leaf]" or up to three plain words between the number and the colon. */
export function readLabel(reader: Reader): string | null {
  const opener = reader.key()
  if ((opener === '(' || opener === '[') && !reader.peek()!.first) {
    const start = reader.at
    const closer = opener === '(' ? ')' : ']'
    const label = reader.attempt(() => {
      reader.at++
      while (reader.peek() && !reader.sees(closer)) {
        if (reader.at - start > 8 || reader.sees('(')) return null
        reader.at++
      }
      // "Round 2 (beg cl, 2 ch) in first dc, …": what goes somewhere is worked.
      if (!reader.skip(closer) || reader.peek()?.kinds.has('into')) return null
      return reader.words(reader.span(start)).slice(1, -1).trim()
    })
    return label
  }
  return null
}

/** "The Leaf – make 2", "Petals, make five" at the end of a line. */
export const readHowMany = (reader: Reader): string | null =>
  reader.attempt(() => {
    if (!reader.skip('-', '–', '—', ',') || reader.peek()?.first) return null
    const start = reader.at
    if (!reader.skip('make', 'work', 'cut')) return null
    const counted = reader.number() !== null || (reader.sees('both') && ++reader.at > 0)
    const ends = reader.peek()?.first ?? true
    return counted && ends ? reader.words(reader.span(start)) : null
  })

const UNITS = new Set(['"', '″', '”', "''", 'cm', 'mm', 'inch', 'inches', 'ins'])

/** A number with a unit of length: `2½" across`, "10 cm", "4 in (10 cm)"; "5 dc in same st" is none. */
export function isMeasure(reader: Reader): boolean {
  if (reader.peek()?.kind !== 'number') return false
  for (let ahead = 1; ahead <= 4; ahead++) {
    const token = reader.peek(ahead)
    if (!token || token.first) return false
    if (UNITS.has(token.key)) return true
    const next = reader.peek(ahead + 1)
    if (token.key === 'in')
      return !next || next.first || next.kind === 'mark' || /^(across|diam|square)/.test(next.key)
    if (token.kind === 'word') return false
  }
  return false
}

/** "Round 2, pink" on a line of its own, "Rnd 1, color A:", "Rnd 2 - white:": passes what it is worked with. */
const passColour = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!reader.skip(',') && !(reader.peek()?.spaced && reader.skip('-', '–', '—'))) return null
    const dash = reader.key(-1) !== ','
    let colour = false
    for (let words = 0; words < 3 && reader.peek()?.kind === 'word' && !reader.peek()!.first; words++) {
      if (reader.isA('instruction') || reader.isA('stitch') || reader.isA('chain')) return null
      colour ||= reader.isA('colour') || reader.sees('color')
      reader.at++
    }
    if (/^[,–—-]$/.test(reader.key(-1))) return null
    if (reader.peek()?.first) return dash ? null : true
    return (colour && reader.skip(':')) || null
  }) === true

function readEnd(reader: Reader, startOfLine: boolean): boolean {
  if (startOfLine && passColour(reader)) return true
  if (reader.skip(':')) {
    reader.skip('-', '–', '—')
    return true
  }
  if (startOfLine && passWith(reader)) return true
  // "Round 2 = 6 x (sc, inc)"; "Rounds 1 and 2 = 3 in" is a gauge.
  if (startOfLine && reader.sees('=')) {
    reader.at++
    if (!isMeasure(reader)) return true
    reader.at--
    return false
  }
  // "… in a ring. 1st round.—6 ch., …" within a line.
  const stopped = reader.sees('.') && [':', '—', '–'].includes(reader.key(1)) && !reader.peek(1)!.spaced
  if (stopped && reader.key(1) === ':') {
    reader.at += 2
    return true
  }
  const dash = stopped || (['—', '–'].includes(reader.key()) && reader.peek()?.spaced === false)
  // "RND 2 → ch 2", "R1 ~ 4ch".
  if (startOfLine && reader.peek()?.kind === 'mark' && /^[~→⇒➔►▶>•·]+$/.test(reader.key())) {
    reader.at++
    return true
  }
  if ((!startOfLine && !dash) || !ENDS.has(reader.key())) return false
  reader.skip('.')
  while (reader.skip('—', '–', '-', ')')) continue
  return true
}

/** "Rounds 2 to 5 start with a standing stitch", "Round 3 is worked behind the petals": said of rounds, and none is worked. */
const SAYS_OF_ROUNDS =
  /^(starts?|begins?|ends?|is|are|uses?|has|have|needs?|should|will|must|may|closes?|finishes|makes|measures?|looks?)$/

export function readRoundHeading(reader: Reader, startOfLine: boolean): Heading | null {
  const from = reader.at
  return reader.attempt((): Heading | null => {
    let numbers: [number, number] | null = null
    const next = reader.skip('next', 'last')
    // "1 rnd.", "2 row:", "3. round:".
    const stop = Number(reader.key(1) === '.')
    const figure = startOfLine && reader.isA('round', 1 + stop) && ENDS.has(reader.key(2 + stop))
    const counted = figure ? reader.number() : null
    if (counted !== null && stop) reader.at++
    const ordinal = next ? null : (counted ?? reader.ordinal() ?? (reader.skip('first') ? 1 : null))
    if (ordinal !== null) {
      let last = ordinal
      const more = reader.attempt(() => {
        if (!reader.seesAny(RANGE)) return null
        reader.at++
        return reader.ordinal()
      })
      if (more !== null) last = more
      if (!reader.skipA('round')) return null
      numbers = [ordinal, last]
    } else {
      const stopped = reader.key(1) === '.' && !reader.peek(1)!.spaced ? 2 : 1
      const compact = /^r$/.test(reader.key()) && reader.peek(stopped)?.kind === 'number'
      if (!reader.isA('round') && !(compact && startOfLine)) return null
      reader.at++
      reader.skip('.')
      if (!next) {
        numbers = readNumbers(reader)
        if (!numbers) return null
      }
    }
    const label = readLabel(reader)
    if (reader.peek()?.first === false && SAYS_OF_ROUNDS.test(reader.peek()!.text)) return null
    if (!readEnd(reader, startOfLine)) {
      // "Round 4" on a line of its own.
      const alone = startOfLine && (reader.peek()?.first ?? false)
      const opens =
        alone ||
        reader.sees('*') ||
        reader.sees('(') ||
        reader.peek()?.kind === 'number' ||
        reader.isA('instruction') ||
        // "ROUND 2 New colour, …": a sentence begins behind the number.
        (reader.peek()?.kind === 'word' && /^\p{Lu}\p{Ll}/u.test(reader.peek()!.text)) ||
        // "R3 Back to normal: 3ch, …".
        (ordinal === null && reader.tokens[from]!.is === 'r' && reader.peek()?.kind === 'word') ||
        reader.attempt(() => readStitch(reader)) !== null
      if (!startOfLine || !opens) return null
      // The stitch that was looked at belongs to the round.
      reader.at = from
      reader.skip('next', 'last')
      if (ordinal !== null) {
        if (reader.ordinal() === null) reader.skip('first')
      }
      while (reader.isA('round') || reader.seesAny(RANGE) || reader.sees('r')) reader.at++
      if (ordinal === null && !next) readNumbers(reader)
      readLabel(reader)
    }
    return { kind: 'round', from, to: reader.at, numbers, label, span: reader.span(from) }
  })
}
