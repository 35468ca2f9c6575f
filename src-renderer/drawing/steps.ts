/** Where an arrow key goes from a motif. */
import type { Plan } from '../../shared-types/plan'
import { pieceAt, placedPieces } from '../../src-core/layout/placed'
import { drawnAs } from '../kinds/drawn'
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
 * panel there are no rows. Half motifs stand in their rows. From a filler the way goes along the fillers beside
 * it, and up and down to the motifs next to it.
 */
export function stepFrom(plan: Plan, id: string | null, direction: Direction): string | null {
  const own = pieceAt(plan, id)
  if (!own) return plan.motifs[0]?.id ?? null
  const [ux, uy] = TOWARDS[direction]
  const { hasRows } = drawnAs(plan)
  const fromFiller = own.kind === 'filler'
  const toFiller = fromFiller && uy === 0
  let best = own.id
  let least = Infinity
  for (const motif of placedPieces(plan)) {
    if (motif === own || (motif.kind === 'filler') !== toFiller) continue
    if (hasRows && (!fromFiller || toFiller) && motif.row !== own.row + uy) continue
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

/** What comes before or after something in the order of its working numbers; the same one at either end. */
export function stepInOrder(plan: Plan, id: string | null, by: 1 | -1): string | null {
  const pieces = [...placedPieces(plan)].sort((a, b) => Number(a.label) - Number(b.label))
  const at = pieces.findIndex((piece) => piece.id === id)
  if (at < 0) return pieces[0]?.id ?? null
  return pieces[Math.min(pieces.length - 1, Math.max(0, at + by))]!.id
}
