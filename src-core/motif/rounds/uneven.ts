/**
 * M16: motifs whose petals are not alike (two kinds of petals, a heart, a clover with its stem, an oval) are drawn as
 * they are: the envelope of their rounds, smoothed, with every tip and dip where it stands.
 */
import type { Anchor, Point } from '../../../shared-types/plan'
import type { Hand } from '../../../shared-types/project'
import type { Millimetres, Radians } from '../../units/quantity'
import { unevenAnchors } from '../anchors'
import { LEAST_LOBE, OUTLINE_POINTS, PETALS } from '../constants'
import { extremesOf } from '../extremes'
import type { Extremes } from '../extremes'
import { UNEVEN } from './constants'
import { at, mean } from './ground'
import { unlikeness } from './profile'

const TURN = 2 * Math.PI

/** A farthest or nearest place of an outline. */
interface Extreme {
  readonly angle: Radians
  readonly radius: Millimetres
}

export interface Uneven {
  readonly tips: readonly Extreme[]
  /** The dip that follows each tip. */
  readonly dips: readonly Extreme[]
  /** Radius at even steps, from 12 o'clock. */
  readonly radii: Float64Array
}

/** A running mean over so much of the way around takes the corners off single stitches. */
const SMOOTHED = 1 / 120

function smoothed(radii: Float64Array): Float64Array {
  const count = radii.length
  const reach = Math.round((SMOOTHED * count) / 2)
  return radii.map((_, i) => {
    let sum = 0
    for (let k = -reach; k <= reach; k++) sum += radii[(i + k + count) % count]!
    return sum / (2 * reach + 1)
  })
}

/** Told by number, petals have one tip each, where the shallow dips in the tops of wide ones can be told from those between. */
function told(radii: Float64Array, least: Millimetres, asked: number | null): Extremes {
  const found = extremesOf(radii, least)
  let fewer = found
  for (let deep = least; asked !== null && fewer.tips.length > asked; deep *= DEEPER)
    fewer = extremesOf(radii, deep * DEEPER)
  return fewer.tips.length === asked ? fewer : found
}
const DEEPER = 1.2

/**
 * The envelope as it is, `asked` petals being worked (null: not told); null where they are alike, or where it has too
 * few or too many tips for a motif with petals.
 */
export function unevenOf(envelope: Float64Array, asked: number | null): Uneven | null {
  if (unlikeness(envelope, asked) <= UNEVEN.unlike) return null
  const radii = smoothed(envelope)
  const middle = mean([...radii])
  const found = told(radii, LEAST_LOBE * middle, asked)
  const extreme = (i: number): Extreme => ({ angle: (i / radii.length) * TURN, radius: radii[i]! })
  const [tips, dips] = [found.tips.map(extreme), found.dips.map(extreme)]
  if (tips.length < PETALS.least || tips.length > PETALS.most) return null
  const reach = tips.map(({ radius }) => radius)
  const depth = dips.map(({ radius }) => radius)
  const even = TURN / tips.length
  const apart = tips.map(({ angle }, i) => {
    const next = tips[(i + 1) % tips.length]!.angle + (i + 1 === tips.length ? TURN : 0)
    return Math.abs(next - angle - even) / even
  })
  const alike =
    (asked === null || asked === tips.length) &&
    Math.min(...reach) >= (1 - UNEVEN.reach) * Math.max(...reach) &&
    Math.min(...depth) >= (1 - UNEVEN.cleft) * Math.max(...depth) &&
    Math.max(...apart) <= UNEVEN.apart
  return alike ? null : { tips, dips, radii }
}

/** How far two sides of a heart may differ: in direction, and as a share in reach; how deep its cleft is (by eye). */
const HEART: { readonly turn: Radians; readonly reach: number; readonly cleft: number } = {
  turn: Math.PI / 7,
  reach: 0.15,
  cleft: 0.6,
}

/**
 * The dip between the humps of a heart: the deepest of three, with the point opposite; where it is hardly deeper than the
 * others, both humps have to be alike. Null for other figures.
 */
function cleftOf({ tips, dips }: Uneven): Radians | null {
  if (tips.length !== 3) return null
  const deepest = dips.reduce((best, dip, i) => (dip.radius < dips[best]!.radius ? i : best), 0)
  const after = <T>(list: readonly T[], step: number): T => list[(deepest + step) % 3]!
  const cleft = after(dips, 0)
  const off = ({ angle }: Extreme): Radians => {
    const way = (((angle - cleft.angle) % TURN) + TURN) % TURN
    return way > Math.PI ? way - TURN : way
  }
  const areAlike = (one: Extreme, other: Extreme): boolean =>
    Math.abs(off(one) + off(other)) < HEART.turn && Math.abs(one.radius / other.radius - 1) < HEART.reach
  const [before, behind, point] = [after(tips, 0), after(tips, 1), after(tips, 2)]
  const sides = [after(dips, 1), after(dips, 2)] as const
  const isDeep = cleft.radius < HEART.cleft * Math.min(...sides.map(({ radius }) => radius))
  const isOpposite = Math.PI - Math.abs(off(point)) < HEART.turn
  return isOpposite && (isDeep || areAlike(before, behind)) ? cleft.angle : null
}

/** Outline and places to join at, the farthest tip at 12 o'clock. */
export function unevenShape(
  uneven: Uneven,
  hand: Hand,
): {
  outline: Point[]
  anchors: Anchor[]
  turn: Radians
  tip: Millimetres
  valley: Millimetres
  /** Direction of a heart's cleft. */
  cleft: Radians | null
} {
  const { tips, dips, radii } = uneven
  const cleft = cleftOf(uneven)
  const first = tips.reduce((best, tip, i) => (tip.radius > tips[best]!.radius * 1.005 ? i : best), 0)
  const turn = -tips[first]!.angle
  const sign = hand === 'left' ? 1 : -1
  const radiusAt = (angle: Radians): Millimetres => {
    const step = (angle / TURN) * radii.length
    const low = Math.floor(step)
    const at = (i: number) => radii[((i % radii.length) + radii.length) % radii.length]!
    return at(low) + (at(low + 1) - at(low)) * (step - low)
  }
  /** Working direction is clockwise for left-handers alone. */
  const placed = (angle: Radians): Point => at(radiusAt(angle), sign * (angle + turn))
  const count = Math.max(OUTLINE_POINTS, 2 * Math.round((OUTLINE_POINTS * 1.5) / 2))
  const angles = Array.from({ length: count }, (_, i) => sign * (i / count) * TURN - turn)
  const inOrder = tips.map((_, k) => (first + k) % tips.length)
  const petals = inOrder.map((k) => {
    const tip = tips[k]!
    const next = (k + 1) % tips.length
    const before = dips[(k - 1 + dips.length) % dips.length]!
    const dip = dips[k]!
    const between = (a: Radians, b: Radians): Radians => {
      const way = (((b - a) % TURN) + TURN) % TURN
      return a + way / 2
    }
    return {
      tip: placed(tip.angle),
      shoulders: [placed(between(before.angle, tip.angle)), placed(between(tip.angle, dip.angle))] as const,
      valley: placed(tips.length > 1 && next >= 0 ? dip.angle : tip.angle),
    }
  })
  return {
    outline: angles.map(placed),
    anchors: unevenAnchors(petals),
    turn,
    tip: tips[first]!.radius,
    valley: Math.min(...dips.map(({ radius }) => radius)),
    cleft: cleft === null ? null : sign * (cleft + turn),
  }
}
