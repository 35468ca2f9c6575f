/** How many stitches a side of a cornered round has: what its words say, not what its length would take. */
import type { WorkedElement, WorkedRound } from '../../notation/worked'
import type { Corner } from './corners'

/** A side of a round as it is counted. */
export interface SideCount {
  /** Stitches, and chains between them; a corner that is a stitch belongs to one of its sides. */
  readonly stitches: number
  /** Chains of the loop at a corner; 0 where it is a stitch. */
  readonly corner: number
}

/** Sides of a round may differ by so many: it begins and ends in one of them, and corners of two stitches have no middle. */
const UNEVEN = 2

const placesOf = ({ role, standing, count }: WorkedElement): number => {
  if (role === 'space') return count
  return standing ? 1 : 0
}

/** The stitches of each side where all have as many; null where they differ. */
export function sideCount(round: WorkedRound, corners: readonly Corner[]): SideCount | null {
  const places = new Map(corners.map(({ element }) => [element.index, element]))
  const loops = [...places.values()].filter(({ role }) => role === 'space')
  const sides: number[] = []
  let before = 0
  for (const element of round.elements) {
    const isCorner = places.has(element.index)
    if (isCorner) sides.push(0)
    const own = isCorner && element.role === 'space' ? 0 : placesOf(element)
    if (sides.length === 0) before += own
    else sides[sides.length - 1]! += own
  }
  if (sides.length !== corners.length || sides.length === 0) return null
  // What comes before the first corner belongs to the side behind the last.
  sides[sides.length - 1]! += before
  const all = sides.reduce((sum, each) => sum + each, 0)
  const isEven = all % sides.length === 0 && Math.max(...sides) - Math.min(...sides) <= UNEVEN
  const chains = new Set(loops.map(({ count }) => count))
  if (!isEven || all === 0 || chains.size > 1 || (loops.length > 0 && loops.length < corners.length))
    return null
  return { stitches: all / sides.length, corner: [...chains][0] ?? 0 }
}
