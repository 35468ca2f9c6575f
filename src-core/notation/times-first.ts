/** How often told before what is worked: "six times: sc, inc", "6 x (sc, inc)", "go round like this six times: …; then …". */
import type { SequenceReader } from './clauses'
import { readChains } from './nouns'
import { readPlace } from './places'
import type { Reader } from './reader'
import type { Item, StarItem } from './tree'
import { isWork, starOf } from './whole-repeats'

/** "Work", "do this", "repeat the following", "go round like this": before how often; passes it. Whether it points at a sentence. */
function passOrder(reader: Reader): boolean {
  const start = reader.at
  if (!reader.skip('work', 'make', 'do', 'rep', 'go', 'proceed', 'continue')) return false
  const words = ['this', 'these', 'the', 'next', 'steps', 'sequence', 'on', 'around', 'round', 'all', 'in']
  while (reader.skip(...words, 'like', 'way', 'manner', 'so', 'thus', 'as', 'follows', 'instructions'))
    continue
  return /\b(like this|as follows|(this|the same) (way|manner)|like so|thus|the following)\b/i.test(
    reader.words(reader.span(start)),
  )
}

/** The token that closes the bracket at the cursor; null where none does. */
function closing(reader: Reader): number | null {
  let open = 0
  for (let ahead = 0; reader.peek(ahead); ahead++) {
    if (/^[([{]$/.test(reader.key(ahead))) open++
    if (/^[)\]}]$/.test(reader.key(ahead)) && --open === 0) return reader.at + ahead
  }
  return null
}

/** "(dc, ch 1) in ring": the bracket at the cursor, as often as is told before it. */
function readBracket(reader: Reader, sequence: SequenceReader, close: number): readonly Item[] {
  const start = reader.at
  const items = readUpTo(reader, sequence, close, start + 1)
  reader.at = close + 1
  const place = readPlace(reader)
  if (!place) return items
  const alone = { times: null, around: false, toCorner: false, lastCount: 0 } as const
  const bracket = reader.tokens[start]!.key
  return [{ type: 'group', bracket, items, place, ...alone, ...reader.span(start) }]
}

function readUpTo(reader: Reader, sequence: SequenceReader, end: number, from = reader.at): readonly Item[] {
  const outer = reader.end
  reader.at = from
  reader.end = end
  const items = sequence(reader, 'close')
  reader.end = outer
  return items
}

/** Up to the next comma or stop. */
function behindPhrase(reader: Reader): number {
  let ahead = 0
  while (reader.peek(ahead) && !/^[,;.:([{)\]}*–—]$/.test(reader.key(ahead))) ahead++
  return reader.at + ahead
}

/** What is worked so often: a bracket, behind a sign the one phrase, else all up to the stop. */
function readTimed(reader: Reader, sequence: SequenceReader, sign: boolean): readonly Item[] {
  const close = /^[([{]$/.test(reader.key()) ? closing(reader) : null
  if (close !== null) return readBracket(reader, sequence, close)
  if (reader.peek()?.kind === 'mark') return []
  return sign ? readUpTo(reader, sequence, behindPhrase(reader)) : sequence(reader, 'clause')
}

/** "Into each st work 2 times 1 dc and 1 ch", "… twice dc, ch 1;": a bracket, else stitches up to what is no chain. */
function readInPlace(reader: Reader, sequence: SequenceReader): readonly Item[] {
  const close = /^[([{]$/.test(reader.key()) ? closing(reader) : null
  if (close !== null) return readBracket(reader, sequence, close)
  let end = behindPhrase(reader)
  const { at } = reader
  reader.at = end
  if (reader.skip(',') && readChains(reader) !== null && /^[.;(]?$/.test(reader.key())) end = reader.at
  reader.at = at
  return readUpTo(reader, sequence, end)
}

/** "…; then 1 dc in the 1-ch sp": whether the sentence that is repeated goes on behind its semicolon; passes that. */
const passOn = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!reader.skip(';')) return null
    while (reader.skip('and', 'then', ',')) continue
    return !reader.seesAny(CLOSING) || null
  }) === true
const CLOSING = new Set(['join', 'ss', 'sl', 'slip', 'finish', 'fasten', 'end', 'ending', 'close', 'unite'])

/**
 * "Three times 2 ch., miss 2 tr., 1 tr. on the next tr.;": how often stands first, and goes for all up to the stop;
 * "6 x (sc, inc)", "work 6 times: (sc, inc)" for the bracket, "6 x inc" for that stitch.
 */
export const readTimesFirst = (reader: Reader, sequence: SequenceReader, placed = false): StarItem | null => {
  const start = reader.at
  const opens =
    placed ||
    reader.at === 0 ||
    reader.peek(-1) === undefined ||
    /^([,;.:=*)–—-]|and|then|r)$/.test(reader.key(-1))
  return !opens && !reader.peek()?.first
    ? null
    : reader.attempt(() => {
        const points = passOrder(reader)
        const figure = reader.number()
        const worded = figure === null ? reader.valueOf('how-often') : null
        const amount = figure ?? worded
        if (amount === null) return null
        if (worded !== null) reader.at++
        const sign = worded === null && reader.isA('times-sign') && !reader.sees('times')
        if (sign) reader.at++
        else if (worded === null && !reader.skip('times')) return null
        const sentence = reader.skip(':') && points
        reader.skip(',')
        while (reader.skipA('verb')) continue
        if (reader.sees('more')) return null
        const said = reader.span(start)
        const part = () => (placed ? readInPlace(reader, sequence) : readTimed(reader, sequence, sign))
        const body = [...part()]
        while (sentence && passOn(reader)) body.push(...part())
        const works =
          body.filter(isWork).length > 0 && !body.some(({ type }) => type === 'star' || type === 'join')
        return works ? starOf(body, { amount, said: 'in-all' }, said) : null
      })
}
