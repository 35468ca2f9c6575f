/** Chains at the beginning of which only some stand for a stitch: "5 chain (3 of these stand for a treble)". */
import type { Reader } from './reader'

/** Tokens between the chains and what is said of them, at most. */
const NEAR = 6

/** How many chains there are besides those that the words from `from` to `to` speak of; null where they speak of all. */
export function chainsBesides(reader: Reader, from: number, to: number): number | null {
  const at = reader.at
  reader.at = from
  const some = readSome(reader)
  const told = some !== null && reader.at <= to
  reader.at = at
  if (!told) return null
  for (let back = from - 1; back >= Math.max(0, from - NEAR); back--) {
    const token = reader.tokens[back]!
    const chained = [reader.tokens[back + 1], reader.tokens[back - 1]].some((next) => next?.is === 'ch')
    if (token.kind !== 'chains' && !(token.kind === 'number' && chained)) continue
    return token.value > some ? token.value - some : null
  }
  return null
}

/** "3 of these", "of which 3", "the first 3 ch": how many of them; passes it. */
function readSome(reader: Reader): number | null {
  reader.skip('the', 'of')
  const which = reader.skip('which', 'these')
  if (which) reader.skip('the')
  const first = reader.skip('first')
  const some = reader.number()
  reader.skipA('chain')
  const of = reader.skip('of') && ['these', 'which', 'them', 'the'].includes(reader.key())
  return which || first || of ? some : null
}

/** What a bracket right behind the chains of a beginning holds. */
const BARE =
  /^(1|one|1st|first) \S+( (,|and|\+|&) (\d+ ch|ch \d+|ch-\d+|\d+-ch))?$|^\S+ \+ (\d+ ch|ch \d+|ch-\d+|\d+-ch)$/

/** Whether a bracket that opens before `start` stands right behind chains. */
export const isBehindChain = (reader: Reader, start: number): boolean => {
  const bracket = reader.tokens[start - 1]?.key
  // "3 ch. (1 tr.)".
  const stop = reader.tokens[start - 2]?.key === '.' ? 1 : 0
  const before = reader.tokens[start - 2 - stop]
  const number = before?.kind === 'number' && reader.tokens[start - 3 - stop]?.is === 'ch'
  return (bracket === '(' || bracket === '[') && (before?.is === 'ch' || before?.kind === 'chains' || number)
}

/** "1 tr", "1 tr., 3 ch.": one stitch and perhaps the chains besides. */
export const isOneStitch = (words: readonly string[]): boolean =>
  BARE.test(words.filter((word) => word !== '.').join(' '))

/** Whether something stands before a bracket in which the chains of a round are explained. */
export const isBehindGroup = (reader: Reader, start: number): boolean =>
  /^[([]$/.test(reader.tokens[start - 1]?.key ?? '') && start > 1
