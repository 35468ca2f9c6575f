/**
 * M14: an edging of scallops leaves a motif the shape that the rounds before it made. Petals make a shape of their own
 * where they outweigh what carries them, told by geometry alone: how far they reach, against its corners or its size.
 */
import type { Millimetres, Radians } from '../../units/quantity'
import { LEAST_LOBE, PETALS } from '../constants'
import { CORNER_LOOP, LONG_LOOP, POINT_LOOP, SCALLOPS, UNEVEN } from './constants'
import { mean } from './ground'
import type { LocatedRound } from './ground'
import { amplitudeOf, envelope } from './profile'

const TURN = 2 * Math.PI

/** Straight sides that an edging goes round. */
export interface EdgedSides {
  readonly sides: number
  /** Half side to side, over the scallops, as neighbours meet them. */
  readonly apothem: Millimetres
  /** How far the corners reach, over the scallops. */
  readonly corner: Millimetres
  /** Direction of a corner. */
  readonly phase: Radians
}

/** Where corners and middles of sides are looked for: so much of a side to both sides of where they stand. */
const LOOKED = 1 / 6

/** What is farthest about each of `count` directions, the first at `from`, as `measured` there. */
function farthestAt(
  radii: Float64Array,
  count: number,
  from: Radians,
  within: number,
  measured: (radius: Millimetres, off: Radians) => number = (radius) => radius,
): number[] {
  const step = TURN / radii.length
  const reach = Math.floor((within * radii.length) / count)
  return Array.from({ length: count }, (_, k) => {
    const middle = Math.round(from / step + (k * radii.length) / count)
    let most = -Infinity
    for (let off = -reach; off <= reach; off++) {
      const own = radii[(((middle + off) % radii.length) + radii.length) % radii.length]!
      most = Math.max(most, measured(own, off * step))
    }
    return most
  })
}

/** Half side to side and the corners of what has its corners in these directions: the mean of all its sides. */
function sidesOf(radii: Float64Array, sides: number, phase: Radians): Omit<EdgedSides, 'sides' | 'phase'> {
  const outward = (radius: Millimetres, off: Radians): Millimetres => radius * Math.cos(off)
  return {
    apothem: mean(farthestAt(radii, sides, phase + Math.PI / sides, LOOKED, outward)),
    corner: mean(farthestAt(radii, sides, phase, LOOKED)),
  }
}

const hasPetals = ({ petals }: LocatedRound): boolean => petals.length >= PETALS.least

/** Whether a round between corners and scallops is as plain as what it stands on: no petals, no loops. */
const isPlain = (located: LocatedRound): boolean =>
  !hasPetals(located) &&
  located.round.elements.every(({ role, count }) => role !== 'space' || count < LONG_LOOP)

/**
 * The straight sides that the last rounds edge with scallops, which leave them as they are; null where there are no
 * sides, or what stands on them is petals. `radii`: the envelope of all rounds; `width`: that of a stitch.
 */
export function edgedSides(
  located: readonly LocatedRound[],
  radii: Float64Array,
  width: Millimetres,
): EdgedSides | null {
  const at = located.findLastIndex(({ corners }) => corners > 0)
  const base = located[at]
  const edging = located.slice(at + 1)
  const [first, scallops] = [edging.findIndex(hasPetals), edging.findLast(hasPetals)]
  if (!base || !scallops || !edging.slice(0, first).every(isPlain)) return null
  const [sides, count] = [base.corners, scallops.petals.length]
  const phase = base.cornerAngles[0] ?? 0
  const had = sidesOf(envelope(located.slice(0, at + 1)), sides, phase)
  const has = sidesOf(radii, sides, phase)
  const regular = 1 / Math.cos(Math.PI / sides)
  // Corners drawn out into points are those of a star.
  if (had.corner - regular * had.apothem > CORNER_LOOP * POINT_LOOP.from * width) return null
  const [before, now] = [had, has].map((each) => (each.corner / each.apothem - 1) / (regular - 1)) as [
    number,
    number,
  ]
  const { least, most } = SCALLOPS.corners
  // A disc that increases have made a polygon is round again under anything that outweighs its corners.
  const isDisc = base.around < 2 * sides * Math.tan(Math.PI / sides) - 1e-9
  if (now < (isDisc ? STACKED : 1) * least || now > most) return null
  // One or two on each side are an edging where they leave corners blunter than they found them.
  const areFew = count <= SCALLOPS.toSide * sides
  if (count < sides || (areFew && (before > most || now > before))) return null
  const isRuled = count === sides || amplitudeOf(radii, sides) >= amplitudeOf(radii, count)
  const areShallow = has.apothem - had.apothem <= SCALLOPS.deep * had.apothem
  return isRuled || (!areFew && areShallow) ? { sides, ...has, phase } : null
}

/** So much farther have those corners of a disc to stand out that increases have made a polygon. */
const STACKED = 1.5

/** Radius of a round motif that its last round edges with many small scallops, over these; null for petals. */
export function edgedRound(located: readonly LocatedRound[], radii: Float64Array): Millimetres | null {
  const count = located.at(-1)?.petals.length ?? 0
  if (count < PETALS.least) return null
  const tips = farthestAt(radii, count, 0, 1 / 2)
  const dips = farthestAt(radii, count, 0, 1 / 2, (radius) => -radius)
  const [tip, depth] = [mean(tips), mean(tips) + mean(dips)]
  const areAlike = Math.min(...tips) >= (1 - UNEVEN.reach) * Math.max(...tips)
  const areSmall = count >= SCALLOPS.many && depth <= SCALLOPS.shallow * tip
  return areAlike && (areSmall || depth < LEAST_LOBE * tip) ? tip : null
}
