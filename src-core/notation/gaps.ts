/** Work between stitches: "in sp between next 2 dc", "between groups", and a bare "sp" where a round has no chains. */
import { FREE } from './source'
import type { Source } from './source'
import { missing, nowhere, sourceFor } from './taking'
import type { PlacePart } from './tree'
import { baseSource, spend, targetAt } from './work'
import type { Target, Work } from './work'

/** Gaps that a part of a place names, used up in order. */
export function gapTargets(work: Work, part: PlacePart): Target[] {
  const source = sourceFor(work, part)
  if (!source) return [nowhere(work, part)]
  const take = (): Target => {
    spend(work, part)
    const index =
      part.noun.kind === 'gap' && part.noun.of === 'group' ? source.nextGroupGap() : source.nextGap()
    if (index < 0) return missing(work, source, 'gap', part)
    source.takeGap(index)
    return targetAt(work, source, { kind: 'gap', round: source.state.index, index })
  }
  if (part.which !== 'each') return Array.from({ length: part.count }, take)
  const targets: Target[] = []
  const most = source.gapUsed.length
  for (let count = 0; count < most; count++) {
    const before = source.overGaps
    const target = take()
    if (source.overGaps > before) {
      source.overGaps = before
      break
    }
    targets.push(target)
  }
  return targets
}

/** Whether all gaps between groups are worked in but the one before the stitch where the round began. */
export function leavesLastGap({
  places,
  gapUsed,
  gapsTaken,
  gaps,
  groupsBesideGaps: groups,
}: Source): boolean {
  if (!groups || gapsTaken !== gaps - 1 || gapUsed.at(-1) !== FREE) return false
  // Where chains lie between groups, these are the gaps.
  const chained = places.some(({ kind }, at) => {
    const [before, behind] = [places[at - 1], places[at + 1]]
    return kind === 'space' && before !== undefined && behind !== undefined && before.group !== behind.group
  })
  // A beginning chain that is told apart from its group stands beside no gap.
  return !chained && groups.indexOf(groups[0]!, 1) > 0
}

const opensBetweenGroups = (source: Source): boolean =>
  !source.has('space', 'between groups', ({ group }) => !source.isGroup(group))

/** "2 dc in each sp around" over a round without chains: between its groups, or else between its stitches. */
export function betweenStitches(work: Work, part: PlacePart): Target[] | null {
  const { noun } = part
  if (noun.kind !== 'space' || noun.chains !== null || noun.corner || part.round) return null
  const source = baseSource(work)
  if (!source?.state.ordered || source.state.unknown) return null
  // "2 tr in next gap" where chains lie within the groups alone.
  const words = work.tree.text.slice(part.nounSpan.start, part.nounSpan.end)
  if (source.total('space') > 0 && !(/\bgaps?$/i.test(words) && opensBetweenGroups(source))) return null
  const begun = work.elements.every(({ role }) => role === 'beginning' || role === 'travel')
  if (
    source.total('stitch') < 2 ||
    (part.which === 'same' && !(begun && work.first?.place.kind === 'stitch'))
  )
    return null
  const of = source.has('stitch', 'grouped', ({ group }) => source.isGroup(group)) ? 'group' : 'stitch'
  const gap = { kind: 'gap', of } as const
  if (part.which !== 'same') return gapTargets(work, { ...part, noun: gap })
  const targets = gapTargets(work, { ...part, which: 'next', noun: gap })
  moveBeginning(work, targets[0]!)
  return targets
}

/** "Ch 3, dc in same sp": the chain stands between two stitches as well, and in none. */
function moveBeginning(work: Work, target: Target): void {
  const beginning = work.elements.find(({ role }) => role === 'beginning')
  if (beginning?.standing) {
    beginning.into = [target.place]
    beginning.group = target.group
  }
  const { first } = work
  if (first?.source && first.place.index >= 0) first.source.used[first.place.index] = FREE
  work.first = target
}
