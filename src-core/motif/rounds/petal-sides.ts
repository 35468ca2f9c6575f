/** Chains that stand up beside the stitches of a petal in one stitch, however its slip stitches are told. */
import type { WorkedElement, WorkedRound } from '../../notation/worked'
import { carriersOf, isSlip, samePlace } from './ground'

/**
 * Chains that stand up beside stitches in one stitch, each with the stitch that it stands beside: "(ch 3, 2 dc, ch 3,
 * sl st) in same st", and "ch 3, 2 dc in next st, ch 3, sl st in same st" from a slip stitch in the stitch before.
 */
export function petalSides(
  round: WorkedRound,
  onto: WorkedRound | undefined,
): ReadonlyMap<WorkedElement, WorkedElement> {
  const sides = new Map<WorkedElement, WorkedElement>()
  const { elements } = round
  if (!elements.some(isSlip)) return sides
  const { before, behind } = carriersOf(round, onto)
  const places = onto?.places.length ?? 0
  const positions = new Map(elements.map((element, i) => [element, i]))
  /** Whether the chains on the other side of the stitches beside these come back to their place. */
  const returns = (beside: WorkedElement, way: typeof before): boolean => {
    let [last, next] = [beside, way[positions.get(beside) ?? -1]]
    while (next && !isSlip(next) && next !== beside && samePlace(next, beside)) {
      last = next
      next = way[positions.get(next) ?? -1]
    }
    const between = elements[(positions.get(last) ?? 0) + (way === behind ? 1 : -1)]
    return between?.role === 'space' && !!next && isSlip(next) && samePlace(next, beside)
  }
  elements.forEach((element, i) => {
    const [previous, next] = [before[i], behind[i]]
    if (element.role !== 'space' || !previous || !next || isSlip(previous) === isSlip(next)) return
    const [slip, beside, way] = isSlip(previous) ? [previous, next, behind] : [next, previous, before]
    if (beside.into[0]?.kind !== 'stitch') return
    const stands = samePlace(previous, next) || (areNext(slip, beside, places) && returns(beside, way))
    if (stands) sides.set(element, beside)
  })
  return sides
}

/** Whether two elements go into stitches that stand side by side in a round of so many places. */
function areNext(one: WorkedElement, other: WorkedElement, places: number): boolean {
  const [a, b] = [one.into[0], other.into[0]]
  if (a?.kind !== 'stitch' || b?.kind !== 'stitch' || a.round !== b.round) return false
  const apart = Math.abs(a.index - b.index)
  return apart === 1 || (places > 2 && apart === places - 1)
}
