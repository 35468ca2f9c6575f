/**
 * M24, best rotation: of all turns of the motif, and of every other row against the rest, the one that holds, with
 * the most join points, then the smallest gap to bridge, then the smallest openings.
 */
import type { Holds } from '../../shared-types/plan'
import type { Degrees, Millimetres } from '../units/quantity'
import type { BlanketCounts } from './blanket'
import { bestFirst } from './trials'
import type { Trial, Trials } from './trials'

export interface RotationScore extends Holds {
  readonly turn: Degrees
  readonly alternateTurn: Degrees
  /** Join points of the whole blanket, and joins in them: a point of three motifs is worth two. */
  readonly points: number
  readonly meetings: number
  readonly spread: Millimetres
  readonly opening: Millimetres
}

export interface BestRotation {
  readonly now: RotationScore
  readonly best: RotationScore
}

const told = ({ joins, opening, period: _, ...rest }: Trial): RotationScore => ({
  ...rest,
  meetings: joins,
  opening: opening(),
})

/** The best rotation of a blanket's motif, and what the present one comes to; both with the numbers of the whole. */
export function bestRotation(trials: Trials, counts: BlanketCounts): BestRotation {
  const now = trials.exactly(counts)
  const { turn, alternateTurn } = trials.bestOfAll(counts)
  const [best] = bestFirst([now, trials.exactly({ ...counts, turn, alternateTurn })])
  return { now: told(now), best: told(best ?? now) }
}
