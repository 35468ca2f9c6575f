/** Where a round begins, and what "the same" place is. */
import { WORKED } from './source'
import type { PlaceTest } from './source'
import { missing, placed, sourceFor, WORKING } from './taking'
import type { PlacePart } from './tree'
import { baseSource, report, sourceOf, targetAt } from './work'
import type { Target, Work } from './work'

/** Where the round begins: in the first stitch of the round before, where it was joined, or in its last loop. */
export function beginningTarget(work: Work): Target | null {
  if (work.first) return work.first
  if (work.base.kind === 'ring') return targetAt(work, null, { kind: 'ring', round: -2, index: 0 })
  // "In back loops of R5: 3ch, 1tr in same st" stands in that round.
  const scoped = work.scope.round === null ? undefined : work.history.get(work.scope.round)
  const source = scoped ? sourceOf(work, scoped) : baseSource(work)
  if (!source || source.places.length === 0) return null
  const test: PlaceTest = () => true
  // Where a stitch closed the last loop, the hook stands in that loop.
  const hanging = source.state.endsInSpace ? source.lastSpace() : -1
  const index = hanging >= 0 ? hanging : source.find('stitch', 'first', test, source.start)
  return index < 0 ? null : placed(work, source, index, null, WORKING)
}

/**
 * "3 ch, 3 dtr in next dc … 3 dtr in last dc, 3 ch, ss in same dc as joining ss": "next" was the one behind the joining,
 * so the stitch of the joining is the one that nothing else was worked in.
 */
function closesAtJoining(work: Work, part: PlacePart): void {
  const source = baseSource(work)
  if (!source?.state.ordered || !source.state.joined || !JOINING.test(wordsOf(work, part))) return
  const left = source.places.flatMap(({ kind }, at) =>
    kind === 'stitch' && source.used[at]! < WORKED ? [at] : [],
  )
  if (left.length === 1 && left[0]! === source.total('stitch') - 1) source.used[left[0]] = WORKED
}

const JOINING = /\bjoining\b/i
const wordsOf = ({ tree }: Work, { start, end }: PlacePart): string => tree.text.slice(start, end)

/** "In the same st", "in same sp as joining": where the last stitch went, or where the round began. */
export function sameTarget(work: Work, part: PlacePart): Target {
  const closes = part.asBeginning && work.beginningDone
  if (closes) closesAtJoining(work, part)
  const target = closes ? (work.first ?? work.last) : (work.last ?? beginningTarget(work))
  if (target) return target
  // "Working behind Rnd 2 in back lps of Rnd 1, ch 3, dc in same st": the first one of that round.
  const scoped = sourceFor(work, part)
  const first = scoped ? scoped.find('stitch', 'first', () => true, scoped.start) : -1
  if (scoped && first >= 0) return placed(work, scoped, first, null, WORKING)
  const source = baseSource(work)
  if (source?.state.unknown) return missing(work, source, 'stitch', part)
  report(work, 'rounds/no-last-stitch', part, {}, 'once')
  work.open = true
  return targetAt(work, null, { kind: 'unknown', round: -2, index: -1 })
}
