/** How many places "in each st to …" goes over. */
import { TRAVELLED, cornerPlaces } from './source'
import type { PlaceTest, Source } from './source'
import { stitchTest } from './taking'
import type { Place, PlacePart, WorkItem } from './tree'
import { keptEdge } from './turning'
import type { Work } from './work'

/** Those before the stitch in the middle of a row that no round has used yet. */
function toMiddle(source: Source, isOne: PlaceTest): number {
  const stitches = source.places.flatMap((place, at) => (isOne(place, at) ? [at] : []))
  const before = stitches.slice(0, Math.floor((stitches.length - 1) / 2))
  return before.filter((at) => source.used[at]! <= TRAVELLED).length
}

/** How many an "each" goes over. */
export function eachCount(
  work: Work,
  source: Source,
  part: PlacePart,
  kind: 'stitch' | 'space',
  test: PlaceTest,
): number {
  const { extent } = part
  const free = source.free(kind, test) - (extent?.to === 'last' ? 0 : keptEdge(work, source, kind, test))
  if (extent?.to === 'last') return Math.max(0, free - extent.count)
  if (extent?.to === 'corner') {
    const corners = cornerPlaces(source)
    const isOne: PlaceTest = (place, at) => place.kind === kind && test(place, at)
    if (source.state.ordered && (corners.size > 0 || !extent.center))
      return Math.max(0, source.untilNext(isOne, (_, at) => corners.has(at)) - (extent.short ?? 0))
    // "To 1 st before the center st" of a row: the one in the middle.
    if (corners.size === 0 && extent.center) return Math.max(0, toMiddle(source, isOne) - (extent.short ?? 0))
    const sides = Math.max(1, corners.size)
    return Math.floor(source.places.filter(isOne).length / sides) - (extent.short ?? 0)
  }
  if (extent?.to === 'named') {
    const ends = stitchTest(work, source, { ...part, noun: extent.noun }).test
    const ahead = source.untilNext(
      (place, at) => place.kind === kind && test(place, at),
      (place, at) => place.kind === 'stitch' && ends(place, at),
    )
    return Math.max(0, ahead - extent.short)
  }
  return free
}

/** "5 bobbles in next 5 sts": so many for so many, one in each; "in each of next 5" says another thing. */
export const oneEach = ({ count }: WorkItem, { parts: [part, ...others] }: Place): boolean =>
  count !== null &&
  count > 2 &&
  others.length === 0 &&
  part?.which === 'next' &&
  !part.each &&
  part.noun.kind === 'stitch' &&
  part.count === count
