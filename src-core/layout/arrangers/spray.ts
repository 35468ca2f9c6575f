/** A corner spray: items that fan out of a corner, one more on every arc. */
import type { Point } from '../../../shared-types/plan'
import { polar } from '../../geometry/points'
import { degrees, radians } from '../../units/quantity'
import type { Degrees, Millimetres } from '../../units/quantity'
import { roundTurn, wholeCount } from './arranged'
import type { ArrangedItem } from './arranged'

interface SprayOptions {
  readonly count: number
  /** Where the stems would meet. */
  readonly corner: Point
  /** The middle of the spray, clockwise from 12 o'clock: 135 out of a top left corner. */
  readonly toward: Degrees
  /** How wide it opens; left out: 70. */
  readonly opening?: Degrees
  /** From the corner to the first item, and from arc to arc. */
  readonly first: Millimetres
  readonly step: Millimetres
  /** Added to every turn; at 0 an item's 12 o'clock faces away from the corner. */
  readonly turn?: Degrees
}

/** Opening of a spray that leaves the sides of a square corner free (ours, chosen by eye). */
export const SPRAY_OPENING: Degrees = 70

/** Arc by arc from the corner: one item, two, three… The last arc spreads what is left over the same opening. */
export function cornerSpray(options: SprayOptions): ArrangedItem[] {
  const { corner, toward, opening = SPRAY_OPENING, first, step, turn = 0 } = options
  if (!(first >= 0 && step > 0 && Number.isFinite(first + step + toward + opening))) return []
  const items: ArrangedItem[] = []
  const count = wholeCount(options.count)
  for (let arc = 0; items.length < count; arc++) {
    const on = Math.min(arc + 1, count - items.length)
    const radius = first + arc * step
    for (let i = 0; i < on; i++) {
      const share = on === 1 ? 0 : i / (on - 1) - 0.5
      const angle = radians(toward + share * opening)
      const { x, y } = polar(radius, angle)
      items.push({ x: corner.x + x, y: corner.y + y, turn: roundTurn(degrees(angle) + turn) })
    }
  }
  return items
}
