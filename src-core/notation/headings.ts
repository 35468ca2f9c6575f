/** Headings: "Rnd 3:", "3rd rnd:", "Rnds 4–6:", "Edging:", and the sections that hold no rounds. */
import type { Reader } from './reader'
import type { Span } from './tokens'
import { readStitch } from './vocabulary'
import { wordOf } from './words'

export interface Heading {
  readonly kind: 'round' | 'section' | 'definition' | 'part'
  /** First token of the heading, first token after it. */
  readonly from: number
  readonly to: number
  readonly numbers: readonly [number, number] | null
  readonly label: string | null
  readonly span: Span
}

const RANGE = new Set(['-', '–', '—', 'to', 'and', '&', 'through'])
const ENDS = new Set([':', '.', '—', '–', '-', ')'])
const SECTIONS = new Set([
  'materials',
  'yarn',
  'hook',
  'gauge',
  'tension',
  'notes',
  'note',
  'abbreviations',
  'special stitches',
  'special stitch',
  'special stitches used',
  'special terms',
  'stitch guide',
  'stitches used',
  'finished size',
  'size',
  'finishing',
  'pattern',
  'instructions',
  'terms',
  'colours',
  'colors',
  'designer',
  'title',
  'you will need',
  'notions',
  'skill level',
  'measurements',
  'special abbreviations',
  'pattern notes',
  'yarn colours',
  'yarn colors',
])

/** "4", "4-6", "4 and 5", "4, 5 and 6" behind "Rnds". */
function readNumbers(reader: Reader): [number, number] | null {
  const first = reader.number()
  if (first === null) return null
  let last = first
  for (;;) {
    const next = reader.attempt(() => {
      // "R4-R5": the hyphen hangs on the figure.
      const hangs = reader.tokens[reader.at - 1]?.hyphen === true
      if (!hangs && !reader.seesAny(RANGE) && !reader.sees(',')) return null
      if (!hangs) reader.at++
      reader.skip('and')
      if (!reader.skipA('round')) reader.skip('r')
      const number = reader.peek()?.kind === 'number' ? reader.number() : null
      return number !== null && number > last ? number : null
    })
    if (next === null) return [first, last]
    last = next
  }
}

/** "(RS)", "[leaf]" or up to three plain words between the number and the colon. */
function readLabel(reader: Reader): string | null {
  const opener = reader.key()
  if (opener === '(' || opener === '[') {
    const start = reader.at
    const closer = opener === '(' ? ')' : ']'
    const label = reader.attempt(() => {
      reader.at++
      while (reader.peek() && !reader.sees(closer)) {
        if (reader.at - start > 8 || reader.sees('(')) return null
        reader.at++
      }
      return reader.skip(closer) ? reader.words(reader.span(start)).slice(1, -1).trim() : null
    })
    return label
  }
  return null
}

function readEnd(reader: Reader, startOfLine: boolean): boolean {
  if (reader.skip(':')) {
    reader.skip('-', '–', '—')
    return true
  }
  const dash = ['—', '–'].includes(reader.key()) && reader.peek()?.spaced === false
  if ((!startOfLine && !dash) || !ENDS.has(reader.key())) return false
  reader.skip('.')
  while (reader.skip('—', '–', '-', ')')) continue
  return true
}

function readRoundHeading(reader: Reader): Heading | null {
  const from = reader.at
  const startOfLine = reader.peek()!.first
  return reader.attempt((): Heading | null => {
    let numbers: [number, number] | null = null
    const next = reader.skip('next', 'last')
    const ordinal = next ? null : (reader.ordinal() ?? (reader.skip('first') ? 1 : null))
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
      const compact = /^r$/.test(reader.key()) && reader.peek(1)?.kind === 'number'
      if (!reader.isA('round') && !(compact && startOfLine)) return null
      reader.at++
      reader.skip('.')
      if (!next) {
        numbers = readNumbers(reader)
        if (!numbers) return null
      }
    }
    const label = readLabel(reader)
    if (!readEnd(reader, startOfLine)) {
      const opens =
        reader.sees('*') ||
        reader.sees('(') ||
        reader.peek()?.kind === 'number' ||
        reader.isA('instruction') ||
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

/** "(make 2)" behind a title; an abbreviation in brackets explains a stitch. */
const bracketOf = (bracket: string | null): boolean =>
  bracket === null || /\b(make|work|cut|rs|ws|optional|both|worked|side)\b|\d/i.test(bracket)

/** Forms of stitches by whose names nothing is called. */
const WORKED_FORMS: ReadonlySet<string> = new Set(['plain', 'together', 'increase'])

/** Whether the rest of a line says where something is worked. */
function saysWhere(reader: Reader): boolean {
  for (let at = reader.at; at < reader.tokens.length; at++) {
    const token = reader.tokens[at]!
    if (token.first) return false
    if (token.kinds.has('where')) return true
  }
  return false
}

/** Whether the words of a line stand for a part ("LEAF", "Second motif"): no stitch, no instruction. */
function isTitle(reader: Reader, from: number): boolean {
  const at = reader.at
  reader.at = from
  const before = reader.tokens[from - 1]
  const ends = before === undefined || reader.tokens[from]!.paragraph || /^[.)\]:!]$/.test(before.key)
  const stitch = readStitch(reader)
  // "Popcorn edging" names a part; "sc2tog around" and "popcorn in each st" are worked.
  const named = stitch !== null && !WORKED_FORMS.has(stitch.form) && reader.tokens[from]!.key.length > 3
  const plain = stitch === null || (named && !saysWhere(reader))
  reader.at = at
  const first = reader.tokens[from]!
  return (
    ends && plain && first.kind === 'word' && !first.kinds.has('instruction') && !first.kinds.has('round')
  )
}

/**
 * "Edging:", "Special stitches:", "Shell:" at the start of a line, or behind one another where special stitches are
 * explained (`inline`). The name of a section may stand on a line of its own without a colon.
 */
function readLabelHeading(reader: Reader, inline: boolean): Heading | null {
  const from = reader.at
  if (!reader.peek()!.first && !inline) return null
  return reader.attempt((): Heading | null => {
    const words: string[] = []
    while (reader.peek() && words.length < 5 && ['word', 'number', 'chains'].includes(reader.peek()!.kind)) {
      if (reader.at > from && reader.peek()!.first) break
      words.push(reader.spelled())
      reader.at++
    }
    if (words.length === 0) return null
    const named = reader.at
    const bracket = readLabel(reader)
    if (!reader.skip(':', '=')) {
      const alone = reader.tokens[from]!.first && (reader.peek()?.first ?? true)
      if (!alone) return null
      const section = SECTIONS.has(words.join(' '))
      if (!section && (!bracketOf(bracket) || !isTitle(reader, from))) return null
      const label = reader.words({ ...reader.span(from), end: reader.tokens[named - 1]!.end }).trim()
      const kind = section ? 'section' : 'part'
      return { kind, from, to: reader.at, numbers: null, label, span: reader.span(from) }
    }
    const equals = reader.tokens[reader.at - 1]!.key === '='
    const to = reader.at
    const name = words.join(' ')
    const label = reader.words(reader.span(from)).replace(/[:=]$/, '').trim()
    const make = (kind: Heading['kind']): Heading => ({
      kind,
      from,
      to,
      numbers: null,
      label,
      span: reader.span(from),
    })
    if (SECTIONS.has(name)) return make('section')
    // "Center:" on a line of its own: what follows is that part.
    if (!equals && (reader.peek()?.first ?? false) && bracketOf(bracket) && isTitle(reader, from)) {
      const part = reader.words({ ...reader.span(from), end: reader.tokens[named - 1]!.end }).trim()
      return { kind: 'part', from, to, numbers: null, label: part, span: reader.span(from) }
    }
    reader.at = from
    const stitch = readStitch(reader)
    const whole = stitch !== null && reader.at === named
    reader.at = to
    const special = whole && stitch.form !== 'plain' && stitch.form !== 'together'
    const abbreviation =
      bracket !== null && /^[\p{L}\d -]{1,12}$/u.test(bracket) && !/^(rs|ws)$/i.test(bracket)
    if (special || equals || (abbreviation && !words.some((word) => wordOf(word).kinds.has('round'))))
      return make('definition')
    return make('round')
  })
}

/** A heading may stand behind these within a line. */
const FREE_BEHIND = new Set(['.', ')', ']', ';', ':', '!'])
/** Sections in which every label is a stitch that the text explains. */
const EXPLAINS = /^(special|stitch(es)?|abbreviations)\b/

/** Every heading of the text, in order. */
export function findHeadings(reader: Reader): Heading[] {
  const headings: Heading[] = []
  let special = false
  for (let index = 0; index < reader.tokens.length; index++) {
    const token = reader.tokens[index]!
    const before = reader.tokens[index - 1]?.key ?? '.'
    reader.at = index
    const free = token.first || FREE_BEHIND.has(before)
    const inline = special && !token.first && (before === ':' || before === '.' || before === ';')
    const heading = free ? (readRoundHeading(reader) ?? readLabelHeading(reader, inline)) : null
    if (!heading) continue
    const section = heading.kind === 'section' ? (heading.label ?? '').toLowerCase() : null
    if (heading.kind === 'round' && heading.numbers === null && special && !token.kinds.has('round')) {
      headings.push({ ...heading, kind: 'definition' })
    } else headings.push(heading)
    if (heading.kind === 'part') special = false
    else if (section !== null) special = EXPLAINS.test(section)
    else if (heading.kind === 'round' && heading.numbers !== null) special = false
    index = heading.to - 1
  }
  return headings
}
