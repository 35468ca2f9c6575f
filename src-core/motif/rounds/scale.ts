/** Located rounds moved as a whole: scaled by a measure, or seen from the other side. */
import type { Point } from '../../../shared-types/plan'
import type { Radians } from '../../units/quantity'
import type { Arch } from './arch'
import type { LocatedElement, LocatedRound } from './ground'

type Move = <P extends Point>(point: P) => P

/** Every point of a round moved, its arches as `bend` has them. */
function moved(round: LocatedRound, move: Move, bend: (arch: Arch) => Arch): LocatedRound {
  const element = (entry: LocatedElement): LocatedElement => ({
    ...entry,
    base: move(entry.base),
    top: move(entry.top),
    chain: entry.chain.map(move),
    ...(entry.feet && { feet: entry.feet.map(move) }),
    ...(entry.end && { end: move(entry.end) }),
  })
  return {
    ...round,
    seats: round.seats.map((seat) => ({
      ...seat,
      point: move(seat.point),
      foot: move(seat.foot),
      arch: seat.arch && bend(seat.arch),
    })),
    elements: round.elements.map(element),
    asides: round.asides.map(element),
    edge: round.edge.map(move),
  }
}

/** M15: a located round times `factor`, about the motif's centre. */
export function scaleRound(round: LocatedRound, factor: number): LocatedRound {
  const scale: Move = (p) => ({ ...p, x: p.x * factor, y: p.y * factor })
  const grown = moved(round, scale, (arch) => ({
    ...arch,
    from: scale(arch.from),
    to: scale(arch.to),
    length: arch.length * factor,
    chord: arch.chord * factor,
  }))
  const lifted = (entry: LocatedElement): LocatedElement =>
    entry.behindUpTo === undefined ? entry : { ...entry, behindUpTo: entry.behindUpTo * factor }
  return {
    ...grown,
    elements: grown.elements.map(lifted),
    asides: grown.asides.map(lifted),
    radius: round.radius * factor,
    length: round.length * factor,
    extra: round.extra * factor,
    petals: round.petals.map((petal) => ({ ...petal, edge: petal.edge * factor })),
  }
}

/** A located round as it is seen when the work is turned over: worked the other way round. */
export function mirrorRound(round: LocatedRound): LocatedRound {
  const mirror: Move = (p) => ({ ...p, x: -p.x })
  const angle = (own: Radians): Radians => (own === 0 ? 0 : 2 * Math.PI - own)
  const turned = moved(round, mirror, (arch) => ({ ...arch, from: mirror(arch.to), to: mirror(arch.from) }))
  return {
    ...turned,
    seats: turned.seats.map((seat) => ({ ...seat, angle: angle(seat.angle) })),
    edge: [...turned.edge].reverse(),
    cornerAngles: round.cornerAngles.map(angle),
    stackedAt: round.stackedAt.map(angle),
  }
}
