/** Where an arrow key goes from a motif. */
import type { Plan } from '../../shared-types/plan'
import type { Direction } from './scene'

const TOWARDS: Record<Direction, readonly [number, number]> = {
  left: [-1, 0],
  right: [1, 0],
  up: [0, -1],
  down: [0, 1],
}
/** How much more a step aside counts than a step ahead. */
const ASIDE = 2

/**
 * The nearest motif in a direction, or the same one at the border; the first motif where there is no place yet.
 * Along a row it stays in the row; up and down go to the very next row, to the one that lies least aside. On a
 * panel there are no rows.
 */
export function stepFrom(plan: Plan, id: string | null, direction: Direction): string | null {
  const own = plan.motifs.find((motif) => motif.id === id)
  if (!own) return plan.motifs[0]?.id ?? null
  const [ux, uy] = TOWARDS[direction]
  const hasRows = plan.panel === undefined
  let best = own.id
  let least = Infinity
  for (const motif of plan.motifs) {
    if (motif === own || (hasRows && motif.row !== own.row + uy)) continue
    const ahead = (motif.x - own.x) * ux + (motif.y - own.y) * uy
    if (ahead <= 0) continue
    const aside = Math.abs((motif.x - own.x) * uy) + Math.abs((motif.y - own.y) * ux)
    const cost = ahead + ASIDE * aside
    // Of two that lie equally far, the first: arithmetic must not let the way down wander.
    if (cost < least - 1e-6) {
      least = cost
      best = motif.id
    }
  }
  return best
}
