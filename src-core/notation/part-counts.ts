/** Counts within a round, which tell of a part of it: "29 sc, turn and …", "3 sps, 2 blks, 3 sps". */
import type { CountEntry, CountItem } from './tree'
import type { Work } from './work'

/** "… in each ch to the end (29 sc), turn and …": counted before more of the round is worked. */
export function isMidway({ elements }: Work, { start, entries }: CountItem, wanted: number): boolean {
  const standing = elements.filter((element) => element.standing)
  const before = standing.filter(({ span }) => span.start < start).length
  // "D c in 8th ch from hook (1 sp), * …": the first of them, under the chains that were skipped.
  const isFirst = wanted === 1 && entries.length === 1 && entries[0]!.noun.kind === 'space'
  if (isFirst && before > 0 && before <= 2 && before < standing.length) return true
  return before === wanted && before < standing.length
}

const unitOf = ({ words }: CountEntry): string => words.replace(/^\S+\s*/, '').toLowerCase()

interface Sum {
  readonly entries: number
  readonly count: number
}

/** Of each unit how often it is counted, and what that comes to: worked out once for a round. */
const sums = new WeakMap<readonly CountItem[], ReadonlyMap<string, Sum>>()
function sumsOf(counts: readonly CountItem[]): ReadonlyMap<string, Sum> {
  const known = sums.get(counts)
  if (known) return known
  const found = new Map<string, Sum>()
  for (const { entries } of counts)
    for (const entry of entries) {
      const unit = unitOf(entry)
      const before = found.get(unit) ?? { entries: 0, count: 0 }
      found.set(unit, { entries: before.entries + 1, count: before.count + entry.count })
    }
  sums.set(counts, found)
  return found
}

/** "(3 sps) … (2 blks) … (3 sps)" along a row: all of a kind come to what is made of it. */
export function comesTogether(
  counts: readonly CountItem[],
  entry: CountEntry,
  made: readonly number[],
): boolean {
  const alike = sumsOf(counts).get(unitOf(entry))
  return alike !== undefined && alike.entries > 1 && made.includes(alike.count)
}
