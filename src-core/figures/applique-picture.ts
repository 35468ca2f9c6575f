/** An appliqué as it will look: every item in its yarns, or in ink with its letter's texture, on the panel. */
import type { PanelAccount, Plan, Point } from '../../shared-types/plan'
import type { SheetStyle } from '../../shared-types/project'
import type { Outline } from '../geometry/points'
import { simplify } from '../geometry/simplify'
import { TOLERANCE } from './detail'
import type { DrawnPlan, FigureItem } from './figure'
import { INK, PAPER, useAt } from './figure'
import { colourwayMarks } from './marks'
import { placedSymbols } from './motif-symbol'
import { panelItems, panelLines } from './panel'

/** Printed mm round the panel for its own line. */
const RIM = 0.4

/** The composition in a box of printed mm; never larger than life. */
export function appliquePicture(
  plan: Plan,
  panel: PanelAccount,
  { width, height, look }: { readonly width: number; readonly height: number; readonly look: SheetStyle },
): DrawnPlan {
  const { size } = plan
  const scale = Math.min(1, (width - 2 * RIM) / size.width, (height - 2 * RIM) / size.height)
  const left = (width - size.width * scale) / 2
  const at = ({ x, y }: Point): Point => ({ x: left + x * scale, y: RIM + y * scale })
  const place = (outline: Outline): Outline => simplify(outline, TOLERANCE.print / scale).map(at)
  const items: FigureItem[] = panelItems(
    panelLines(panel),
    { edge: { fill: PAPER, stroke: INK, width: 0.3 } },
    place,
  )
  const symbolOf = placedSymbols(plan, colourwayMarks(plan), { scale, look })
  const placed = new Map(plan.motifs.map((motif) => [motif.id, motif]))
  for (const id of plan.stacking ?? []) {
    const motif = placed.get(id)
    const symbol = motif && symbolOf(motif)
    if (!symbol) continue
    const { x, y } = at(motif)
    items.push(useAt(symbol, x, y))
  }
  return { width, height: size.height * scale + 2 * RIM, items, scale, left, top: RIM }
}
