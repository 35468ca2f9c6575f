/** The edging of a blanket as one line round the map. */
import type { Plan, Point } from '../../shared-types/plan'
import { halfOutline } from '../geometry/half'
import { signedArea } from '../geometry/points'
import { grow } from '../geometry/polygons'
import type { Stretch } from './motif-symbol'
import { keptHalf, printedOutline } from './motif-symbol'
import { outerRadius, simplify } from './path'
import type { MapRow } from './rows'

/** Motifs from which on a blanket counts as large. */
const LARGE = 600

/** Motifs that can stand at the edge: the first and last row and the ends of every row. */
function edgeMotifs(rows: readonly MapRow[]) {
  return rows.flatMap((row, index) =>
    index === 0 || index === rows.length - 1
      ? row.motifs
      : [row.motifs[0]!, ...(row.motifs.length > 1 ? [row.motifs.at(-1)!] : [])],
  )
}

/**
 * The outer line of the edging in plan mm: the motifs at the edge grown by a bridge and shrunk again, so that
 * dips narrower than the bridge are spanned (a following edging spans hardly anything), plus the edging's height.
 * Empty when the plan has no edging.
 */
export function edgingLine(plan: Plan, rows: readonly MapRow[], stretch: Stretch): Point[] {
  if (!plan.edging || !plan.motif || rows.length === 0) return []
  const { outline } = plan.motif
  const tip = outerRadius(outline)
  // The line is drawn small: on a large blanket it needs no more detail than the print can show.
  const detail = tip / (plan.motifs.length > LARGE ? 40 : 200)
  const coarse = simplify(outline, detail)
  const turned = new Map<number, Point[]>()
  const outlines = edgeMotifs(rows).map((motif) => {
    const shape = turned.get(motif.turn) ?? printedOutline(coarse, motif.turn, 1, stretch)
    turned.set(motif.turn, shape)
    return shape.map((p) => ({ x: p.x + motif.x, y: p.y + motif.y }))
  })
  for (const half of plan.halves) {
    const kept = halfOutline(printedOutline(coarse, half.turn, 1, stretch), keptHalf(half))
    outlines.push(kept.map((p) => ({ x: p.x + half.x, y: p.y + half.y })))
  }
  const bridge = plan.edging.style === 'follow' ? tip * 0.15 : tip * 1.2
  const closed = grow(grow(outlines, bridge, detail), plan.edging.height - bridge, detail)
  let largest: readonly Point[] = []
  for (const candidate of closed) {
    if (Math.abs(signedArea(candidate)) > Math.abs(signedArea(largest))) largest = candidate
  }
  return simplify(largest, detail / 2)
}
