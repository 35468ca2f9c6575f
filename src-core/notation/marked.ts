/** What an asterisk marks, named in words, and amounts in brackets behind it. */
import type { Reader } from './reader'
import { passThis } from './this-part'

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

/** "* to *", "*-*", "*...*": passes what stands between the two. */
export const passUpTo = (reader: Reader): boolean => {
  const at = reader.at
  while (reader.skip('.', '…')) continue
  return reader.at > at || reader.skip('-', '–', '—', 'to', 'and')
}

/** "Do the part between the stars", "work everything between * and *": what stood there, which its amount counts in all; passes it. */
export const passPartBetween = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!reader.skip('do', 'work', 'make', 'crochet', 'follow')) return null
    while (reader.skip('the', 'all', 'st')) continue
    reader.skip('part', 'bit', 'section', 'everything', 'instructions', 'sequence', 'what', 'stuff', 'group')
    reader.skip('is')
    if (!reader.skip('between', 'within', 'inside')) return null
    while (reader.skip('the', 'two')) continue
    if (reader.skip('stars', 'asterisks')) return true
    return reader.skip('*') && passUpTo(reader) && reader.skip('*') ? true : null
  }) === true

/** "Do that bit", "work this sequence", "perform these steps": what the two asterisks hold; passes it. */
export const passDoThis = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!reader.skip('do', 'work', 'perform') && !reader.skipAll('carry', 'out')) return null
    return (reader.seesAny(POINTS) && passThis(reader)) || null
  }) === true
const POINTS = new Set(['this', 'that', 'it', 'these', 'those', 'the', 'so'])

/** What stands whole between two brackets: "(12 times)". */
export const inBrackets = <Read>(reader: Reader, read: () => Read | null): Read | null =>
  reader.attempt(() => {
    const closer = reader.skip('(') ? ')' : reader.skip('[') ? ']' : null
    const found = closer === null ? null : read()
    return found !== null && reader.skip(closer!) ? found : null
  })

/** The mark of a repeat that the text sets none for. */
export const UNMARKED = ''
