/** What stands before the rounds: where a section ends, and the ring or chain that everything begins with. */
import { listsAbbreviations } from './abbreviation-lists'
import { readFoundation } from './foundation'
import type { Heading } from './round-headings'
import type { Reader } from './reader'
import type { Token } from './tokens'
import type { Item } from './tree'
import { usualChains } from './usual-chains'

export interface Body {
  readonly items: Item[]
  readonly broken: boolean
}

/** Whether a line makes a ring and nothing else: "Make an adjustable ring."; "MR: magic ring" explains one. */
function makesRing(reader: Reader, at: number, limit: number): boolean {
  const outer = { at: reader.at, end: reader.end }
  reader.at = at
  reader.end = limit
  const made = readFoundation(reader) !== null
  const next = reader.peek()
  Object.assign(reader, outer)
  return made && (!next || next.first || /^[.;,!]$/.test(next.key))
}

const BEGINS_RING = new Set([
  'ch',
  'make',
  'begin',
  'start',
  'starting',
  'beg',
  'with',
  'using',
  'magic',
  'work',
])

/** Words of a line that makes a ring without naming it, at most. */
const LONGEST_RING = 10

/** "Make an adjustable ring.", "Ch 4, join with sl st to form a ring." as a line of its own: the work begins. */
function makesRingAt(tokens: readonly Token[], at: number, opens = tokens[at]!.first): boolean {
  const first = tokens[at]!
  const begins = BEGINS_RING.has(first.is) || first.kind === 'chains' || tokens[at + 1]?.kinds.has('chain')
  if (!opens || !begins) return false
  let chained = first.kind === 'chains'
  for (let index = at; index < tokens.length && (index === at || !tokens[index]!.first); index++) {
    const { is, kinds } = tokens[index]!
    if (index > at && (is === 'ring' || is === 'circle')) return true
    // "Commence with 8 ch., join."
    if (chained && index - at < LONGEST_RING && (is === 'join' || is === 'close')) return true
    chained ||= kinds.has('chain')
  }
  return false
}

/** "Make 24ch.", "With A, ch 18.": a line that makes a chain and nothing else, with a stop behind it or not. */
function makesChainAt(tokens: readonly Token[], at: number, stopped = true): boolean {
  let to = at + 1
  while (to < tokens.length && !tokens[to]!.first && to - at < LONGEST_RING) to++
  const line = tokens.slice(at, to)
  if ((stopped && line.at(-1)?.key !== '.') || !(tokens[to]?.first ?? true)) return false
  const counted = line.some(({ kind }) => kind === 'number' || kind === 'chains')
  const chains = line.filter(({ kinds, kind }) => kinds.has('chain') || kind === 'chains').length
  return counted && chains === 1 && (BEGINS_RING.has(line[0]!.is) || line[1]!.kinds.has('chain'))
}

/** "1.", "1)", "STEP 1:", "1. To begin," at the start of a line: the token behind it. */
function behindStep(tokens: readonly Token[], from: number): number {
  let at = from
  if (/^(step|stage)$/.test(tokens[at]!.key) || tokens[at]!.key === '(') at++
  const numbered = tokens[at]?.kind === 'number' && /^[.):–—-]$/.test(tokens[at + 1]?.key ?? '')
  if (numbered) at += 2
  else if (at > from) return from
  const begins = at
  while (TO_BEGIN.test(tokens[at]?.key ?? '')) at++
  if (at > begins) at = tokens[at]?.key === ',' ? at + 1 : begins
  return tokens[at] && !(at > from && tokens[at]!.first) ? at : from
}
const TO_BEGIN = /^(to|begin|start|first|firstly)$/

/** Where a section or definition that begins at `from` ends: a blank line, or a line that makes the ring. */
export function sectionEnd(reader: Reader, from: number, limit: number): number {
  for (let index = from; index < limit; index++) {
    const { paragraph, first } = reader.tokens[index]!
    // "Hook 4 mm. Start with an adjustable ring.", "Hook 3 mm. 4ch, join with ss to form a ring."
    if (index > from && reader.tokens[index - 1]!.key === '.') {
      const { is, kind } = reader.tokens[index]!
      const chains = kind === 'chains' || (kind === 'number' && reader.tokens[index + 1]?.kinds.has('chain'))
      const chained = chains && makesRingAt(reader.tokens, index, true)
      if (chained || (BEGINS_RING.has(is) && makesRing(reader, index, limit))) return index
    }
    if (first && makesChainAt(reader.tokens, index)) return index
    const behind = first ? behindStep(reader.tokens, index) : index
    if (
      (paragraph && index > from) ||
      (first && (makesRingAt(reader.tokens, behind, true) || makesRing(reader, behind, limit)))
    )
      return index
  }
  return limit
}

/** Signs behind which a line is at its end. */
const ENDS = /^[.!?:;)\]]$/

const MAKES_RING = /^(ring|circle|join|close)$/

/** "Ch 4 at the beginning of a row = dc + ch 1.": chains of all rounds, in a sentence that makes none. */
function isSaidOfAll(reader: Reader, from: number, to: number, item: Item): boolean {
  let start = from
  for (let at = from; at < to; at++) {
    const ends = at + 1 === to || /^[.;]$/.test(reader.tokens[at]!.key)
    if (!ends) continue
    const sentence = reader.tokens.slice(start, at + 1)
    const holds = item.start >= sentence[0]!.start && item.start < reader.tokens[at]!.end
    if (holds)
      return !sentence.some(({ is }) => MAKES_RING.test(is)) && usualChains(reader, start, at + 1).length > 0
    start = at + 1
  }
  return false
}

/** The lines before a round, each by itself: asterisks and brackets of a list are none of the work. */
export function readPreamble(
  reader: Reader,
  from: number,
  to: number,
  readBody: (reader: Reader, from: number, to: number) => Body,
): Body {
  const items: Item[] = []
  for (let start = from, at = from + 1; at <= to; at++) {
    const token = at < to ? reader.tokens[at]! : null
    const behindStop = ENDS.test(reader.tokens[at - 1]!.key)
    // "Pocket tray, small", and right below it "Ch 9".
    const { tokens } = reader
    const begins = token?.first && (makesChainAt(tokens, at, false) || makesRingAt(tokens, at))
    const ends = !token || token.paragraph || begins || (token.first && behindStop)
    if (!ends) continue
    if (!listsAbbreviations(reader, start, at))
      for (const item of readBody(reader, behindStep(reader.tokens, start), at).items)
        if (item.type !== 'chain' || !isSaidOfAll(reader, start, at, item)) items.push(item)
    start = at
  }
  return { items, broken: false }
}

/** Without any heading: a round for each line that ends like one (a stop, a bracket, "join"). */
export function looseRounds(tokens: readonly Token[], titles: readonly Heading[]): [number, number][] {
  const ends = new Set(titles.map(({ to }) => to))
  const parts: [number, number][] = []
  let from = 0
  for (let index = 1; index <= tokens.length; index++) {
    const token = tokens[index]
    if (token && !token.first) continue
    const last = tokens[index - 1]!.key
    let joined = false
    for (let back = index - 1; back >= from && index - back <= 8; back--)
      joined ||= tokens[back]!.key === 'join'
    const title = ends.has(index)
    if (token && !title && !token.paragraph && !['.', ')', ']'].includes(last) && !joined) continue
    parts.push([from, index])
    from = index
  }
  return parts
}

/** The stop that ends a sentence, or where the line ends. */
export function sentenceEnd(tokens: readonly Token[], from: number, limit: number): number {
  const line = lineEnd(tokens, from, limit)
  let at = from
  while (at < line && tokens[at]!.key !== '.') at++
  return at
}

/** First token of the next line. */
export function lineEnd(tokens: readonly Token[], from: number, limit: number): number {
  let at = from + 1
  while (at < limit && !tokens[at]!.first) at++
  return Math.min(at, limit)
}
