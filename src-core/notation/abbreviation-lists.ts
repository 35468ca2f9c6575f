/** "Ch, chain; s c, single crochet; sl st, slip stitch": abbreviations told in a sentence, without a heading. */
import type { Reader } from './reader'
import { readStitch } from './vocabulary'

const TELLS = /^([,=:–—-]|for|means|is|stands|as)$/
/** Pairs of a name and what it is short for. */
const LEAST = 2

/** Whether stitches stand between two tokens with their names once more behind each, in other words. */
export function listsAbbreviations(reader: Reader, from: number, to: number): boolean {
  const outer = { at: reader.at, end: reader.end }
  reader.end = to
  let pairs = 0
  for (let at = from; at < to && pairs < LEAST; at++) {
    reader.at = at
    const short = readStitch(reader)
    const behind = reader.at
    if (!short) continue
    if (reader.at >= to || !TELLS.test(reader.spelled())) continue
    reader.at++
    while (reader.skip('for', 'a')) continue
    const long = readStitch(reader)
    if (long?.stitch !== short.stitch || long.form !== short.form) continue
    const said = (name: string) => name.toLowerCase().replace(/[^a-z]/g, '')
    if (said(long.name) === said(short.name) || long.name.length <= short.name.length) continue
    pairs++
    at = behind
  }
  Object.assign(reader, outer)
  return pairs >= LEAST
}
