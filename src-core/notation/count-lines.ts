/** Counts on a line of their own, or behind signs: "✔ 24 dc, 8 on each side", "… // 26 dc", "Check: 24 dc". */
import { passCountLabel } from './count-labels'
import { readTold } from './in-all'
import type { Reader } from './reader'
import { remainderAhead } from './remainders'
import { isWorked } from './count-sentences'
import { readCounts } from './stated'
import { readSum } from './told-sentences'
import type { CountItem, Item } from './tree'

/** Signs that say themselves that what was worked is counted. */
const TICKS = /[✓✔☑✅√∑Σ→➔➜➤👉🧮#=»]|\/\/|\|\||>>|::/u
/** Signs that may stand before a count as before anything else; brackets and stops are none. */
const SIGNS = /^[/|¦~»>•·●▪■◦‣*★†_:#+–—\p{S}\uFE0F]+$/u
const WORKED = new Set<Item['type']>(['work', 'group', 'star', 'placed', 'evenly', 'repeat-round', 'join'])
/** Notes behind the end of a round that may stand before its count. */
const MOST_NOTES = 6
/** Words of the longest count on a line (ours). */
const LONGEST = 24

/** Passes signs; what kind the plainest of them is, null where there is none. */
function passSigns(reader: Reader): 'tick' | 'sign' | null {
  const start = reader.at
  while (reader.peek()?.kind === 'mark' && SIGNS.test(reader.key()) && reader.at - start < 6) {
    if (reader.at > start && reader.peek()!.first) break
    reader.at++
  }
  if (reader.at === start) return null
  const signs = reader.tokens.slice(start, reader.at).map(({ key }) => key)
  return TICKS.test(signs.join('')) ? 'tick' : 'sign'
}

/** Whether a count behind such signs can be told of what stands before it. */
const follows = (items: readonly Item[], told: boolean): boolean =>
  told ? items.some(({ type }) => WORKED.has(type)) : isWorked(items.slice(-MOST_NOTES))

/** A count that has its line, or what is left of it, for itself; null for anything else. */
function readCountLine(reader: Reader, items: readonly Item[]): CountItem | null {
  const opens = reader.peek()
  if (!opens || (!opens.first && (opens.kind !== 'mark' || !SIGNS.test(opens.key)))) return null
  const start = reader.at
  return reader.attempt((): CountItem | null => {
    const signs = passSigns(reader)
    if (!opens.first && !signs) return null
    const from = reader.at
    if (reader.peek()?.first && from > start) return null
    passCountLabel(reader)
    const labelled = reader.at > from
    while (reader.skip(':', '!')) continue
    if (reader.peek()?.kind !== 'number' && !reader.isA('number')) return null
    const told = signs === 'tick' || labelled
    if (!follows(items, told)) return null
    const begins = reader.at
    let end = begins + 1
    while (end < reader.end && end - begins < LONGEST && !reader.tokens[end]!.first) end++
    const stop = reader.tokens.slice(begins, end).findIndex(({ key }) => /^[.!([]$/.test(key))
    let last = end
    while (
      last > begins &&
      reader.tokens[last - 1]!.kind === 'mark' &&
      !/^[)\]]$/.test(reader.tokens[last - 1]!.key)
    )
      last--
    const counts =
      readCounts(reader, last, told || signs !== null, true) ??
      (stop > 0 ? readCounts(reader, begins + stop, told || signs !== null, true) : null)
    if (!counts) return null
    while (reader.at < end && reader.peek()?.kind === 'mark' && !/^[([]$/.test(reader.key())) reader.at++
    return { ...counts, ...reader.span(start) }
  })
}

/** What a round comes to, told behind what is worked: in a sentence, in all, or on a line of its own. */
export const readComesTo = (reader: Reader, items: readonly Item[]): CountItem | null =>
  items.length === 0 || remainderAhead(reader)
    ? null
    : (readCountLine(reader, items) ?? readSum(reader, items))

/** The same, or what a repeat goes on to. */
export const readSaid = (reader: Reader, items: readonly Item[]): CountItem | null =>
  remainderAhead(reader) ? null : (readTold(reader, items) ?? readComesTo(reader, items))
