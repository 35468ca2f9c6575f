/** What kind of motif an outline is: petals, round, or straight-sided. */
import { areaOf, countOf, hullOf } from './regions'
import type { Mask } from './regions'
import { CLEAR, DIRECTIONS } from './symmetry'
import type { Petalled } from './lobes'
import type { Symmetry } from './symmetry'

export type PhotoKind = 'petals' | 'round' | 'square' | 'hexagon' | 'octagon' | 'other'

/** How much of its hull an outline without hollows fills. */
const SOLID = 0.955
/** Most unevenness of a round outline, as a share of its radius (rms). */
const ROUND = 0.022
/** Most rms distance of straight sides from straight, as a share of the mean reach. */
const STRAIGHT = 0.03

/** The least that the middle of a straight side is of its apothem. */
const UNBROKEN = 0.965

const SIDED = { 4: 'square', 6: 'hexagon', 8: 'octagon' } as const

/** The mean reach over all petals by direction from the tip, both flanks together: tip first, dip last. */
export function profileOf({ reach, order, turn }: Symmetry, count = 61): number[] {
  const sector = DIRECTIONS / order
  const first = (turn / (2 * Math.PI)) * DIRECTIONS
  return Array.from({ length: count }, (_, at) => {
    const off = (0.5 * sector * at) / (count - 1)
    const values: number[] = []
    for (let petal = 0; petal < order; petal++)
      for (const side of [-1, 1]) {
        const index = Math.round(first + petal * sector + side * off)
        values.push(reach[((index % DIRECTIONS) + DIRECTIONS) % DIRECTIONS]!)
      }
    values.sort((a, b) => a - b)
    // The middle half: one bent petal does not count.
    const kept = values.slice(values.length >> 2, values.length - (values.length >> 2))
    return kept.reduce((sum, each) => sum + each, 0) / kept.length
  })
}

/** rms distance of a profile from a straight side with its corner as far out as it is, as a share of the mean. */
function straightness(profile: readonly number[], order: number): number {
  const half = Math.PI / order
  const count = profile.length
  const apothems = profile
    .map((reach, at) => reach * Math.cos(half - (half * at) / (count - 1)))
    .slice(Math.round(count * 0.3))
  const apothem = apothems.reduce((sum, each) => sum + each, 0) / apothems.length
  return Math.sqrt(apothems.reduce((sum, each) => sum + (each / apothem - 1) ** 2, 0) / apothems.length)
}

/** Whether the middle of the sides lies deeper than they: a dip, where petals part that are straight for the rest. */
function isParted(profile: readonly number[], order: number): boolean {
  const half = Math.PI / order
  const count = profile.length
  const side = profile.slice(Math.round(count * 0.3), Math.round(count * 0.8))
  const first = Math.round(count * 0.3)
  const apothem =
    side.reduce((sum, reach, at) => sum + reach * Math.cos(half - (half * (first + at)) / (count - 1)), 0) /
    side.length
  return Math.min(...profile.slice(-4)) < UNBROKEN * apothem
}

/** Tells kinds apart by hollows, depth and straightness. */
export function kindOf(symmetry: Petalled, mask: Mask): PhotoKind {
  const solid = countOf(mask) / areaOf(hullOf(mask))
  const { order } = symmetry
  const even = Math.hypot(symmetry.rest, order === 0 ? 0 : symmetry.depth)
  const clear = order > 0 && (symmetry.share > CLEAR || symmetry.stands)
  if (
    even < ROUND &&
    solid > SOLID &&
    !clear &&
    (order === 0 || ![6, 8].includes(order) || symmetry.depth < 0.012)
  )
    return 'round'
  if (order === 0) return 'other'
  // Corners do not take turns.
  const sides = symmetry.within ? null : SIDED[order as keyof typeof SIDED]
  if (sides && solid > SOLID) {
    const profile = profileOf(symmetry)
    const corner = profile[0]! / profile.at(-1)!
    const full = 1 / Math.cos(Math.PI / order)
    // Corners of crochet are rounded, but they stand out at least half as far as drawn ones.
    if (straightness(profile, order) < STRAIGHT * (full - 1) * 4 + 0.004 && corner > 1 + 0.5 * (full - 1))
      return isParted(profile, order) ? 'petals' : sides
  }
  return 'petals'
}
