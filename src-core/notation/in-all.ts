/** Counts told in all, behind whatever was worked, or as what a repeat goes on to. */
import type { Reader } from './reader'
import { isWorked } from './count-sentences'
import { readCounts } from './stated'
import type { CountItem, Item } from './tree'

/** "2 dc in every space; 32 dc in all", "…, making 16 loops in all". */
export const readInAll = (reader: Reader): CountItem | null =>
  reader.attempt(() => {
    reader.skip('make')
    const from = reader.at
    let end = from
    while (
      end < reader.end &&
      end - from < 6 &&
      !(reader.tokens[end]!.is === 'in' && reader.tokens[end + 1]?.is === 'all')
    )
      end++
    if (reader.tokens[end]?.is !== 'in' || reader.tokens[end + 1]?.is !== 'all') return null
    const behind = reader.tokens[end + 2]
    if (behind && !behind.first && !/^[.;,)\]]$/.test(behind.key)) return null
    const counts = readCounts(reader, end, false)
    reader.at = end + 2
    return counts && { ...counts, ...reader.span(from) }
  })

/** Words of a sentence around the figure that say nothing of their own. */
const HAVING = new Set('there you we are have has got made totals total in all a of is now'.split(' '))
const REACHED = new Set('are have has been made worked in total all altogether round around now'.split(' '))
/** "making 7 loops", "giving you 24 sts", "to give 24 sts", "so you have 24 sts". */
const GIVES = /^(making|makes|giving|gives|leaving|creating|forming)$/
const LONGEST = 16

const passHaving = (reader: Reader): void => {
  while (reader.seesAny(HAVING) || /^(you|we|there)['’](ve|s)$/.test(reader.spelled())) reader.at++
}

/** "until", "till": what goes on up to a count; passes all before the figure. */
const passUntil = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!reader.skip('until', 'till')) return null
    passHaving(reader)
    return reader.peek()?.kind === 'number' || reader.isA('number') || null
  }) === true

const passGiving = (reader: Reader): boolean =>
  reader.attempt(() => {
    // "…, which makes six shells".
    if (reader.skip('which') && !GIVES.test(reader.spelled())) return null
    if (GIVES.test(reader.spelled())) reader.at++
    else if (reader.skip('to')) {
      if (!/^(give|make|form|leave)$/.test(reader.spelled())) return null
      reader.at++
    } else if (reader.skip('so')) reader.skip('that')
    else if (!reader.skip('for', '=') && !(reader.key(-1) === 'total' && reader.skip('of'))) return null
    passHaving(reader)
    return reader.peek()?.kind === 'number' || reader.isA('number') || null
  }) === true

/** The count in words up to the end of the phrase. */
const readReachedCount = (reader: Reader): CountItem | null =>
  reader.attempt(() => {
    const from = reader.at
    let end = from
    while (
      end < reader.end &&
      end - from < LONGEST &&
      !/^([.;,:!()[\]]|and|then)$/.test(reader.key(end - from))
    )
      end++
    let last = end
    while (last > from + 1 && REACHED.has(reader.tokens[last - 1]!.is)) last--
    const counts = readCounts(reader, last, false)
    reader.at = end
    return counts
  })

/** "until seven more spokes are made besides the first", "till you have 7 more": as often as there is room; passes it. */
export const passUntilMore = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!passUntil(reader) || reader.number() === null || !reader.skip('more', 'other')) return null
    for (let words = 0; words < LONGEST && reader.peek(); words++, reader.at++) {
      if (/^[.,;:!()[\]–—]$/.test(reader.key()) || reader.peek()!.first) return true
      if (reader.peek()!.kind !== 'word' || reader.isA('into')) return null
    }
    return true
  }) === true

/** Whether a count up to which something is repeated stands at the cursor: "until you have 7 loops"; passes nothing. */
export function untilAhead(reader: Reader): boolean {
  const { at } = reader
  const found = passUntil(reader) && readReachedCount(reader) !== null
  reader.at = at
  return found
}

/** "…; rep from * until you have 7 loops", "… around, making 7 loops": what there is behind it. */
const readReached = (reader: Reader, items: readonly Item[]): CountItem | null =>
  reader.attempt(() => {
    const until = passUntil(reader)
    if (!until && !(isWorked(items.slice(-1)) && passGiving(reader))) return null
    // Asked for last: it may go back through all of a long text.
    const last = items.findLast(({ type }) => type !== 'note' && type !== 'statement')
    if (!last || last.type === 'repeat-round') return null
    const counts = readReachedCount(reader)
    return counts && (until ? { ...counts, until: true } : counts)
  })

/** A count in words behind what is worked. */
export const readTold = (reader: Reader, items: readonly Item[]): CountItem | null =>
  items.length > 0 ? (readReached(reader, items) ?? readInAll(reader)) : null
