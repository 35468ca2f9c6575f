/**
 * What a finished round comes to, told in a sentence of its own: "The hexagon now has 7 dc on each of its 6 sides",
 * "12 tr with 12 little 1-ch spaces between them", "5 petals with 6 sts in each". Nothing in it is worked; counts of
 * the whole round are held to, counts of a part of it are passed.
 */
import { LONGEST_COUNT } from './count-sentences'
import { readNoun } from './nouns'
import { readPlace } from './places'
import type { Reader } from './reader'
import { isWorked } from './count-sentences'
import { readCountSentence } from './stated'
import type { CountEntry, CountItem, Item } from './tree'
import { readStitch } from './vocabulary'

/** What a finished round does with its counts. */
const HAS =
  /^(has|have|had|having|counts?|counted|gives?|makes?|are|is|be|comes?|numbers?|leaves|holds?|contains?|bears|got|shows?|forms?|it['’]s|that['’]s|there['’]s)$/
/** Words that do something, so that the sentence is an instruction all the same. */
const DOES = new Set('rep from next same skip join turn ch'.split(' '))
/** What a count behind it is a part of. */
const PART = /^(each|every|per|apiece|sides?|edges?|corners?|a|between)$/
const WHOLE_OR_PART = /^(each|every|them|all|total|both|between)$/
const STOP = /^[.!?;]$/
/** Words between a figure and what it counts: "12 little 1-ch spaces" (ours). */
const MOST_DESCRIBING = 3

const isNumber = (reader: Reader, at: number): boolean => {
  const token = reader.tokens[at]
  return token !== undefined && !token.hyphen && (token.kind === 'number' || token.kinds.has('number'))
}

/** Where the sentence at the cursor ends: its stop, a new line or a bracket. */
function endOf(reader: Reader): number {
  let end = reader.at
  while (end < reader.end && end - reader.at < 2 * LONGEST_COUNT) {
    const { key, first } = reader.tokens[end]!
    if (STOP.test(key) || key === '(' || key === '[' || (first && end > reader.at)) break
    end++
  }
  return end
}

/** "1 sc in each of last 3 sts", "2 dc in each remaining st": a figure that opens what is worked. */
const isWork = (reader: Reader): boolean => {
  const { at } = reader
  reader.number()
  const part = readStitch(reader) && !reader.sees('between') ? readPlace(reader)?.parts[0] : undefined
  reader.at = at
  return part?.noun.kind === 'stitch' || part?.noun.kind === 'space'
}

/** Whether words name what has the counts, and say that it has them: no stitch, chain or verb opens them. */
function isTold(reader: Reader, end: number): boolean {
  const tokens = reader.tokens.slice(reader.at, end)
  if (tokens.some(({ is, kinds }) => DOES.has(is) || kinds.has('into'))) {
    // "6 sts in each", "8 on each side": what stands behind is a part, no place to work in.
    const places = tokens.filter(({ kinds }) => kinds.has('into'))
    const parts = places.every((place) => WHOLE_OR_PART.test(tokens[tokens.indexOf(place) + 1]?.is ?? ''))
    if (!parts || tokens.some(({ is }) => DOES.has(is))) return false
  }
  if (isNumber(reader, reader.at)) return !isWork(reader)
  // "Now 24 tr are made."
  if (/^(are|been)$/.test(tokens.at(-2)?.key ?? '') && tokens.at(-1)!.is === 'made') return true
  const [first] = tokens
  if (!first || first.kind !== 'word' || first.kinds.has('verb') || first.kinds.has('stitch')) return false
  const has = tokens.slice(0, 9).findIndex(({ text }) => HAS.test(text.toLowerCase()))
  // "In each of remaining 6 loops make …".
  if (first.kinds.has('into') && tokens[has]?.key === 'make') return false
  return has >= 0 && tokens.some((_, at) => at > has && isNumber(reader, reader.at + at))
}

/** The counts of the whole round in a sentence. */
function entriesIn(reader: Reader, end: number): CountEntry[] {
  const entries: CountEntry[] = []
  const opens = reader.tokens.slice(reader.at, reader.at + 4)
  // "Each side now has 14 dc and 11 ch-1 spaces."
  if (opens.some(({ is }) => is === 'each' || is === 'every' || is === 'per')) return entries
  while (reader.at < end) {
    const entry = isNumber(reader, reader.at) ? reader.attempt(() => readEntry(reader, end)) : null
    if (entry) entries.push(entry)
    else reader.at++
  }
  return entries
}

/** "12 tr", "12 little 1-ch spaces", "5 petals"; null where they are of a part ("7 dc on each side"). */
function readEntry(reader: Reader, end: number): CountEntry | null {
  const start = reader.at
  const count = reader.number()
  if (count === null) return null
  let noun: CountEntry['noun'] | null = null
  for (let words = 0; !noun && words <= MOST_DESCRIBING && reader.at < end; words++) {
    const named = reader.attempt(() => {
      const found = readNoun(reader)
      return found?.kind === 'stitch' || found?.kind === 'space' ? found : null
    })
    if (named) noun = named
    else if (reader.isA('counted')) {
      noun = { kind: 'own', chain: 0, of: 0, words: reader.key() }
      reader.at++
    } else if (reader.peek()!.kind === 'word' && reader.peek()!.kinds.size === 0) reader.at++
    else return null
  }
  if (!noun || reader.at > end) return null
  const span = reader.span(start)
  for (let at = reader.at; at < end && !/^(,|and|&|with|plus)$/.test(reader.tokens[at]!.is); at++)
    if (PART.test(reader.tokens[at]!.is) && reader.tokens[at + 1]?.is !== 'them') return null
  return { count, noun, words: reader.words(span), ...span }
}

/** What a round comes to, behind its end: counts one after the other, or told in a sentence. */
export const readSum = (reader: Reader, items: readonly Item[]): CountItem | null =>
  readCountSentence(reader, items) ?? readToldSentence(reader, items)

/** A sentence behind the end of a round that tells what it comes to; null where anything in it is worked. */
const readToldSentence = (reader: Reader, items: readonly Item[]): CountItem | null => {
  const before = reader.tokens[reader.at - 1]
  const opens = before !== undefined && (/^[.!?)\]]$/.test(before.key) || reader.peek()?.first === true)
  if (!opens || !isWorked(items)) return null
  return reader.attempt(() => {
    const start = reader.at
    const end = endOf(reader)
    if (end - start < 3 || !isTold(reader, end)) return null
    const entries = entriesIn(reader, end)
    reader.at = end
    return { type: 'count', entries, ...reader.span(start) }
  })
}
