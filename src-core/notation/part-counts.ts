/** Counts within a round, which tell of a part of it: "29 sc, turn and …", "3 sps, 2 blks, 3 sps". */
import type { CountEntry, CountItem } from './tree'
import type { Work } from './work'

/** "… in each ch to the end (29 sc), turn and …": counted before more of the round is worked. */
export function isMidway({ elements }: Work, { start }: CountItem, wanted: number): boolean {
  const standing = elements.filter((element) => element.standing)
  const before = standing.filter(({ span }) => span.start < start).length
  return before === wanted && before < standing.length
}

const unitOf = ({ words }: CountEntry): string => words.replace(/^\S+\s*/, '').toLowerCase()

/** "(3 sps) … (2 blks) … (3 sps)" along a row: all of a kind come to what is made of it. */
export function comesTogether(
  counts: readonly CountItem[],
  entry: CountEntry,
  made: readonly number[],
): boolean {
  const alike = counts.flatMap(({ entries }) => entries).filter((each) => unitOf(each) === unitOf(entry))
  return alike.length > 1 && made.includes(alike.reduce((sum, { count }) => sum + count, 0))
}
