/** "Multiple of 6 sts + 1, plus 1 ch for the base": over how many stitches a pattern is worked; none of them are made. */
import type { Reader } from './reader'
import type { NoteItem } from './tree'

const NAMES = /^(multiples?|divisible)$/
/** Words before it, at most. */
const MOST = 7

/** Whether a word says over how many stitches a pattern goes. */
export const isMultiple = (key: string): boolean => NAMES.test(key)

/** Passes the sentence, where it begins at the cursor and makes no chain itself ("ch a multiple of 6"). */
export const readMultiple = (reader: Reader): NoteItem | null => {
  const start = reader.at
  const before = reader.tokens[start - 1]
  if (before && !reader.peek()?.first && !/^[.!:)]$/.test(before.key)) return null
  let ahead = 0
  while (ahead < MOST && reader.peek(ahead)?.kind === 'word' && !isMultiple(reader.spelled(ahead))) ahead++
  if (!isMultiple(reader.spelled(ahead)) || (reader.isA('chain') && ahead > 0)) return null
  while (reader.peek() && !reader.sees('.') && !(reader.at > start && reader.peek()!.first)) reader.at++
  return { type: 'note', effect: null, ...reader.span(start) }
}
