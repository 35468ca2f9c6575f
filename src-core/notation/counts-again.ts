/** Counts that stand once more behind the rounds: "STITCH COUNTS / Rnd 1 | 8 hdc", "…, join. Round 6: 60 sc, Round 7: 68 sc". */
import { lineEnd } from './preamble'
import type { Reader } from './reader'
import type { Heading } from './round-headings'
import { readCounts } from './stated'
import type { CountItem, RoundNode } from './tree'

/** All that stands on the line behind a heading, as counts; null where anything else is told. */
function readLine(reader: Reader, from: number, to: number): CountItem | null {
  let end = Math.min(to, lineEnd(reader.tokens, from, to))
  while (end > from && /^[.,;|]$/.test(reader.tokens[end - 1]!.key)) end--
  reader.at = from
  while (reader.at < end && /^[|–—-]$/.test(reader.key())) reader.at++
  return reader.at < end ? reader.attempt(() => readCounts(reader, end, true)) : null
}

/**
 * Holds a round that is worked already to counts that are told under its number again; false where the heading opens a
 * round of its own.
 */
export function isCountAgain(
  reader: Reader,
  rounds: RoundNode[],
  part: string | null,
  { numbers }: Heading,
  from: number,
  to: number,
): boolean {
  if (!numbers || numbers[0] !== numbers[1] || from >= to) return false
  const [number] = numbers
  const isList = /\bcounts?\b/i.test(part ?? '')
  const at = rounds.findLastIndex(
    (round) =>
      (round.part === part || isList) &&
      round.numbers &&
      round.numbers[0] <= number &&
      number <= round.numbers[1],
  )
  const round = rounds[at]
  const found = reader.findings.length
  const counts = round ? readLine(reader, from, to) : null
  reader.findings.length = found
  if (!round || !counts) return false
  const one = round.numbers![0] === round.numbers![1]
  const entries = one
    ? counts.entries
    : counts.entries.map((entry) => ({ ...entry, round: entry.round ?? number }))
  rounds[at] = { ...round, items: [...round.items, { ...counts, entries }] }
  return true
}
