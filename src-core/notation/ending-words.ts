/** How the last repeat ends, in words: "ending last rep at **", "ending with ch 3, dc in first sc". */
import type { SequenceReader } from './clauses'
import { readNoun } from './nouns'
import type { Reader } from './reader'
import type { Item, RepeatEnding } from './tree'
import { NO_NAME } from './tree'

/** Token where "on last rep" begins, if it comes soon; what is left out stands before it. */
function lastRepAhead(reader: Reader): number {
  for (let ahead = 1; ahead < 10; ahead++) {
    if (!['on', 'at', 'in'].includes(reader.key(ahead))) continue
    let named = ahead + 1
    // "omitting dc at the end of the last rep".
    while (['the', 'end', 'of'].includes(reader.key(named))) named++
    if (reader.key(named) === 'last' && ['rep', 'times'].includes(reader.key(named + 1)))
      return reader.at + ahead
  }
  return reader.end
}

/** Sets the cursor behind the last token that ends there. */
function passBehind(reader: Reader, end: number): void {
  while (reader.at > 0 && reader.tokens[reader.at - 1]!.end > end) reader.at--
}

/** "omitting last 3 sts": stitches that are named by their number alone. */
function readLastStitches(reader: Reader): Item[] | null {
  const start = reader.at
  return reader.attempt(() => {
    const count = reader.number() ?? 1
    if (!reader.skipA('stitch')) return null
    const span = reader.span(start)
    return [{ type: 'work', count, stitch: { ...NO_NAME, ...span }, place: null, ...span }]
  })
}

/** "ending last rep at **", "ending with ch 3, dc in first sc", "omitting last ch 2 on final rep". */
export function readEnding(
  reader: Reader,
  sequence: SequenceReader,
): { atDouble: boolean; ending: RepeatEnding | null } | null {
  const start = reader.at
  return reader.attempt(() => {
    while (reader.skip(',', ';', '.', '(', 'and', '-', '–', '—')) continue
    const bracketed = reader.tokens[reader.at - 1]?.key === '('
    const omit = reader.skip('omit', 'leaving')
    // "ending ch 1, sc in last sp": the "with" may be left out behind "ending", which stands for nothing else.
    const terse = reader.sees('ending')
    if (!omit && !reader.skip('ending', 'end', 'finish')) return null
    const lastRep = reader.attempt(() => {
      reader.skip('on')
      reader.skip('the')
      if (!reader.skip('last', 'each')) return null
      return reader.skip('rep', 'times', 'one') ? true : null
    })
    if (reader.skip('at')) {
      reader.skip('the')
      if (!reader.skip('**')) return null
      if (bracketed) reader.skip(')')
      return { atDouble: true, ending: null }
    }
    if (omit) {
      reader.skip('out', 'off')
      reader.skip('the')
      reader.skip('last')
      const outer = reader.end
      reader.end = lastRepAhead(reader)
      const items = readLastStitches(reader) ?? sequence(reader, 'clause').slice(0, 1)
      if (items.length > 0) passBehind(reader, items[0]!.end)
      reader.end = outer
      if (items.length === 0) return null
      if (reader.skip('on', 'at', 'in')) {
        while (reader.skip('the', 'end', 'of')) continue
        reader.skip('last')
        reader.skip('rep', 'times')
      }
      if (bracketed) reader.skip(')')
      return { atDouble: false, ending: { mode: 'omit', items, ...reader.span(start) } as RepeatEnding }
    }
    if (!reader.skip('with', 'by', 'in') && !lastRep && !terse) return null
    const items = sequence(reader, 'clause')
    if (items.every((item) => item.type === 'note')) return null
    const instead = reader.attempt(() => {
      reader.skip(',')
      return reader.skipAll('instead', 'of') || reader.skipAll('in', 'place', 'of') ? true : null
    })
    if (instead) {
      reader.skip('the')
      reader.skip('last')
      const replaced = sequence(reader, 'clause')
      if (replaced.length === 0) readNoun(reader)
    }
    if (bracketed) reader.skip(')')
    const mode = instead || lastRep ? 'replace' : 'append'
    return { atDouble: false, ending: { mode, items, ...reader.span(start) } as RepeatEnding }
  })
}
