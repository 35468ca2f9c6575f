/** The dashed lines down both ends of a round's map: there it is joined to itself. For paper and window alike. */
import type { Plan } from '../../shared-types/plan'
import type { Millimetres } from '../units/quantity'
import type { Bounds, FigureItem } from './figure'
import { drawPath, INK } from './figure'
import { linePath } from './path'

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

/** Dashes of the lines at which the map of a round is closed, in printed mm. */
const CLOSING = { dash: 1.6, gap: 1.2, width: 0.3 } as const

/** The lines at which the map of a round is closed, within a window of it. */
export const closingLines = (plan: Plan, view: Bounds, scale: number): FigureItem[] =>
  closingDashes(plan, CLOSING.dash / scale, CLOSING.gap / scale)
    .filter(
      ({ x, from, to }) =>
        x >= view.x && x <= view.x + view.width && to >= view.y && from <= view.y + view.height,
    )
    .map(({ x, from, to }) => {
      const at = (x - view.x) * scale
      return drawPath(linePath(at, (from - view.y) * scale, at, (to - view.y) * scale), {
        stroke: INK,
        width: CLOSING.width,
      })
    })
