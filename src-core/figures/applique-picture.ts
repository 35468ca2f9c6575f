/** An appliqué as it will look: every item in its yarns, or in ink with its letter's texture, on the panel. */
import type { MotifAccount, PanelAccount, Plan, Point } from '../../shared-types/plan'
import type { SheetStyle } from '../../shared-types/project'
import { simplify } from '../geometry/simplify'
import type { Figure, FigureItem, FigureSymbol } from './figure'
import { drawPath, INK, PAPER, useAt } from './figure'
import { colourwayMarks } from './marks'
import { motifSymbol } from './motif-symbol'
import { polygonPath } from './path'

/** Printed mm round the panel for its own line. */
const RIM = 0.4

const mirror = (outline: readonly Point[]): Point[] => outline.map(({ x, y }) => ({ x: -x, y }))

/** A motif with its wrong side up. */
const flip = (account: MotifAccount): MotifAccount => ({
  ...account,
  outline: mirror(account.outline),
  layers: account.layers.map((layer) => ({ ...layer, outline: mirror(layer.outline) })),
})

/** The composition in a box of printed mm; never larger than life. */
export function appliquePicture(
  plan: Plan,
  panel: PanelAccount,
  { width, height, look }: { readonly width: number; readonly height: number; readonly look: SheetStyle },
): Figure & { readonly scale: number } {
  const { size } = plan
  const scale = Math.min(1, (width - 2 * RIM) / size.width, (height - 2 * RIM) / size.height)
  const left = (width - size.width * scale) / 2
  const at = ({ x, y }: Point): Point => ({ x: left + x * scale, y: RIM + y * scale })
  const edge = polygonPath(simplify(panel.outline, 0.015 / scale).map(at))
  const items: FigureItem[] = [drawPath(edge, { fill: PAPER, stroke: INK, width: 0.3 })]
  const marks = new Map(colourwayMarks(plan).map((mark) => [mark.id, mark]))
  const accounts = new Map((plan.accounts ?? []).map((account) => [account.id, account]))
  const symbols = new Map<string, FigureSymbol>()
  const placed = new Map(plan.motifs.map((motif) => [motif.id, motif]))
  for (const id of plan.stacking ?? []) {
    const motif = placed.get(id)
    const account = accounts.get(motif?.motif ?? '')
    if (!motif || !account) continue
    const key = JSON.stringify([account.id, motif.colourway, motif.turn, motif.flipped])
    const mark = marks.get(motif.colourway) ?? null
    const shown = motif.flipped ? flip(account) : account
    const symbol = symbols.get(key) ?? motifSymbol(shown, { scale, turn: motif.turn, look, mark, disc: 0 })
    symbols.set(key, symbol)
    const { x, y } = at(motif)
    items.push(useAt(symbol, x, y))
  }
  return { width, height: size.height * scale + 2 * RIM, items, scale }
}
