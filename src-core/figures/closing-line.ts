/** The dashed lines down both ends of a round's map: there it is joined to itself. For paper and window alike. */
import type { Plan } from '../../shared-types/plan'
import type { Millimetres } from '../units/quantity'

/** One dash, in plan mm. */
interface Dash {
  readonly x: Millimetres
  readonly from: Millimetres
  readonly to: Millimetres
}

/** The dashes, so long and so far apart in plan mm; none where nothing is joined in the round. */
export function closingDashes({ round, size }: Plan, dash: Millimetres, gap: Millimetres): Dash[] {
  if (!round) return []
  const inset = (round.map - round.circumference) / 4
  const count = Math.ceil(size.height / (dash + gap))
  return [inset, round.map - inset].flatMap((x) =>
    Array.from({ length: count }, (_, i): Dash => {
      const from = i * (dash + gap)
      return { x, from, to: Math.min(size.height, from + dash) }
    }),
  )
}
