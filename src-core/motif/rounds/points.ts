/**
 * A round along both sides of the points that the round before worked back along chains (a star): it keeps them, each
 * stitch outward from the side that it stands on.
 */
import type { Point } from '../../../shared-types/plan'
import type { WorkedElement, WorkedRound } from '../../notation/worked'
import type { ResolvedGauge } from '../../stitches/gauge'
import { CORNERS } from './constants'
import { heightOf, isUpright, topWidth } from './ground'
import type { LocatedElement, LocatedRound } from './ground'
import { lineThrough, standAlong } from './ribbon'
import type { Standing } from './ribbon'
import type { Stood } from './stand'

/** Chains between stitches take so much room for each along a side, in stitch widths (by eye). */
const CHAIN = 0.75

/** Whether a round goes up and down points: it has more stitches than those have on the side that was worked. */
export function goesAroundPoints(round: WorkedRound, onto: LocatedRound | null): boolean {
  if (!onto || round.onto !== onto.round.index) return false
  const { elements, stitches } = onto.round
  const worked = new Set(
    elements.flatMap(({ into: [place] }) =>
      place?.kind === 'chain' && place.round === onto.round.index ? [place.index] : [],
    ),
  )
  return worked.size >= CORNERS.least && round.stitches > stitches
}

/** Where each stitch begins: what is told to stand on a point there, what comes before it along the point's free side. */
function feetOf(onto: LocatedRound, standing: readonly Stood[]): Point[] {
  const stemOf = new Map<number, LocatedElement>()
  const byIndex = new Map(onto.elements.map((entry) => [entry.element.index, entry]))
  for (const { index, into } of onto.round.elements) {
    const [place] = into
    const stem = place?.kind === 'chain' && place.round === onto.round.index ? byIndex.get(place.index) : null
    if (stem) stemOf.set(index, stem)
  }
  /** The point whose worked side a stitch goes into. */
  const pointOf = ({ element }: Stood): LocatedElement | undefined => {
    const [place] = element.into
    const isTold = place?.kind === 'stitch' && place.round === onto.round.index
    return isTold ? stemOf.get(onto.round.places[place.index]?.element ?? -1) : undefined
  }
  const isFree = ({ element: { into } }: Stood): boolean =>
    into[0]?.kind === 'unknown' || into[0]?.kind === 'gap'
  const feet = standing.map(({ base }) => base)
  for (let from = 0; from < standing.length; from++) {
    let to = from
    while (to < standing.length && isFree(standing[to]!)) to++
    const stem = to > from && to < standing.length ? pointOf(standing[to]!) : undefined
    if (stem)
      for (let i = from; i < to; i++) {
        const share = (i - from + 0.5) / (to - from)
        feet[i] = {
          x: stem.base.x + (stem.top.x - stem.base.x) * share,
          y: stem.base.y + (stem.top.y - stem.base.y) * share,
        }
      }
    from = to
  }
  return feet
}

/** What stands on points, outward from their sides. */
export function standAroundPoints(
  round: WorkedRound,
  onto: LocatedRound,
  stood: readonly Stood[],
  gauge: ResolvedGauge,
): Stood[] {
  const byElement = new Map(stood.map((entry) => [entry.element, entry]))
  const standing = round.elements.flatMap((element) =>
    isUpright(element) ? (byElement.get(element) ?? []) : [],
  )
  const feet = feetOf(onto, standing)
  const isNew = (i: number): boolean =>
    i === 0 || Math.hypot(feet[i]!.x - feet[i - 1]!.x, feet[i]!.y - feet[i - 1]!.y) > 1e-6
  const line = lineThrough(
    feet.filter((_, i) => isNew(i)),
    true,
  )
  let stop = -1
  const arcs = new Map(
    standing.map((entry, i) => {
      if (isNew(i)) stop++
      return [entry.element, line.arcs[stop]!]
    }),
  )
  const parts = round.elements.flatMap((element): (Standing & { element: WorkedElement })[] => {
    const at = arcs.get(element)
    if (at !== undefined)
      return [{ element, width: topWidth(element, gauge), height: heightOf(element, gauge), at }]
    if (element.role !== 'space') return []
    return [{ element, width: CHAIN * element.count * gauge.width, height: 0, at: null }]
  })
  const placed = standAlong(line, parts, gauge.width)
  const tops = new Map(parts.map(({ element }, i) => [element, placed[i]!.top]))
  return standing.map((entry, i) => ({
    ...entry,
    base: feet[i]!,
    top: tops.get(entry.element)!,
    petal: -1,
  }))
}
