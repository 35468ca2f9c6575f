/** What an asterisk marks, named in words, and amounts in brackets behind it. */
import type { Reader } from './reader'

/** "between the stars", "between asterisks". */
export const MARKS = ['stars', 'asterisks']

/** "repeat what is between …", "repeat the part between …", "repeat instructions between …". */
export const passWhatIsMarked = (reader: Reader): boolean =>
  reader.attempt(() => {
    while (reader.skip('the', 'all', 'instructions', 'directions', 'what', 'that', 'part', 'section', 'st'))
      continue
    while (reader.skip('is', 'stands', 'given', 'written')) continue
    return reader.sees('between') || null
  }) === true

/** What stands whole between two brackets: "(12 times)". */
export const inBrackets = <Read>(reader: Reader, read: () => Read | null): Read | null =>
  reader.attempt(() => {
    const closer = reader.skip('(') ? ')' : reader.skip('[') ? ']' : null
    const found = closer === null ? null : read()
    return found !== null && reader.skip(closer!) ? found : null
  })

/** The mark of a repeat that the text sets none for. */
export const UNMARKED = ''
