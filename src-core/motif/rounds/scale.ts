/** M15: a measured round rules from there on: what is located so far grows or shrinks with it. */
import type { LocatedElement, LocatedRound } from './ground'

/** A located round times `factor`, about the motif's centre. */
export function scaleRound(round: LocatedRound, factor: number): LocatedRound {
  const scale = <P extends { x: number; y: number }>(p: P): P => ({ ...p, x: p.x * factor, y: p.y * factor })
  const moved = (entry: LocatedElement): LocatedElement => ({
    ...entry,
    base: scale(entry.base),
    top: scale(entry.top),
    chain: entry.chain.map(scale),
    ...(entry.feet && { feet: entry.feet.map(scale) }),
    ...(entry.behindUpTo !== undefined && { behindUpTo: entry.behindUpTo * factor }),
    ...(entry.end && { end: scale(entry.end) }),
  })
  return {
    ...round,
    seats: round.seats.map((seat) => ({
      ...seat,
      point: scale(seat.point),
      foot: scale(seat.foot),
      arch: seat.arch && {
        ...seat.arch,
        from: scale(seat.arch.from),
        to: scale(seat.arch.to),
        length: seat.arch.length * factor,
        chord: seat.arch.chord * factor,
      },
    })),
    elements: round.elements.map(moved),
    asides: round.asides.map(moved),
    edge: round.edge.map(scale),
    radius: round.radius * factor,
    length: round.length * factor,
    extra: round.extra * factor,
    petals: round.petals.map((petal) => ({ ...petal, edge: petal.edge * factor })),
  }
}
