/** What the dimension lines of a plan measure. */
import type { Plan } from '../../shared-types/plan'
import { edgingCorners } from '../../src-core/figures/edging-corners'
import type { Measured } from './dimension-frame'

/** A blanket and a panel as a whole, a round once round; a garland from its first hook to its last, and how deep its cord hangs. */
export function measuredOf(plan: Plan): Measured {
  const { size, panel, garland, round } = plan
  // Once round, from where the round closes to where it closes again.
  if (round) {
    const inset = (round.map - round.circumference) / 2
    return { across: [inset, round.map - inset], down: [0, size.height], withHandles: false }
  }
  const whole = { across: [0, size.width], down: [0, size.height] } as const
  const hasNumbers = edgingCorners(plan).corners.length > 0
  if (!garland) return { ...whole, withHandles: panel?.shape !== 'outline', hasNumbers }
  const { hooks, line, swags } = garland
  const [first, last] = [hooks[0], hooks.at(-1)]
  if (!first || !last) return { ...whole, withHandles: false }
  const lowest = line.reduce((most, { y }) => Math.max(most, y), first.y)
  return {
    across: [first.x, last.x],
    down: swags && lowest > first.y ? [first.y, lowest] : whole.down,
    withHandles: false,
  }
}
