/** What the dimension lines of a plan measure. */
import type { Plan } from '../../shared-types/plan'
import type { Measured } from './dimension-frame'

/** A blanket and a panel as a whole; a garland from its first hook to its last, and how deep its cord hangs. */
export function measuredOf({ size, panel, garland }: Plan): Measured {
  const whole = { across: [0, size.width], down: [0, size.height] } as const
  if (!garland) return { ...whole, withHandles: panel?.shape !== 'outline' }
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
