/** What every drawing of an appliqué's template needs, worked out once: outlines in place, marks, stacking. */
import type { Anchor, MotifAccount, PlacedMotif, Plan, Point } from '../../shared-types/plan'
import { placeOutline, placePoint } from '../geometry/place'
import type { Outline } from '../geometry/points'
import type { SheetStyle } from '../../shared-types/project'
import { numberedPlaces } from '../motif/numbering'
import { panelLines } from './panel'
import type { PanelLines } from './panel'
import { boundsOf } from './path'
import type { Bounds } from './figure'
import type { ColourwayMark } from './marks'

export interface TemplateItem {
  readonly id: string
  readonly label: string
  readonly name: string
  /** Where it lies on the paper: mirrored with everything else on a reversed template. */
  readonly outline: Outline
  readonly bounds: Bounds
  readonly centre: Point
  /** Where petal 1 (corner 1, the tip, the start) ends. */
  readonly first: Point
  readonly flipped: boolean
  /** Parts in place, the outermost first. */
  readonly layers: MotifAccount['layers']
  /** Its colourway; null where it has none. */
  readonly mark: ColourwayMark | null
  readonly look: SheetStyle
  /** Something lies on it. */
  readonly covered: boolean
}

export interface TemplateGround extends PanelLines {
  readonly width: number
  readonly height: number
  /** From the lowest to the topmost. */
  readonly items: readonly TemplateItem[]
  /** Seen from the back. */
  readonly reverse: boolean
}

/** The anchor that petals are counted from. */
const firstAnchor = (account: MotifAccount): Anchor | undefined =>
  numberedPlaces(account)[0]?.anchor ?? account.anchors[0]

/** How the items of a template are told apart. */
interface TemplateLook {
  readonly marks: readonly ColourwayMark[]
  readonly style: SheetStyle
}

/** Outlines alone. */
const BARE: TemplateLook = { marks: [], style: 'ink' }

/** Number and colourway letter of an item: "3 B". */
export const itemWords = ({ label, mark }: Pick<TemplateItem, 'label' | 'mark'>): string =>
  [label, mark?.code ?? ''].filter(Boolean).join(' ')

/** Prepares the plan of an appliqué; null for another plan. */
export function templateGround(
  plan: Plan,
  reverse: boolean,
  { marks, style }: TemplateLook = BARE,
): TemplateGround | null {
  const { panel, size } = plan
  if (!panel) return null
  const { edge, inner } = panelLines(panel)
  const onPaper = (point: Point): Point => (reverse ? { x: size.width - point.x, y: point.y } : point)
  const lay = (outline: Outline): Outline => outline.map(onPaper)
  const accounts = new Map(plan.accounts.map((account) => [account.id, account]))
  const placed = new Map(plan.motifs.map((motif) => [motif.id, motif]))
  const covered = new Set((plan.overlaps ?? []).map(({ below }) => below))
  const item = (motif: PlacedMotif): TemplateItem[] => {
    const account = accounts.get(motif.motif ?? '')
    if (!account) return []
    const outline = lay(placeOutline(account.outline, motif))
    return [
      {
        id: motif.id,
        label: motif.label,
        name: account.name,
        outline,
        bounds: boundsOf(outline),
        centre: onPaper(motif),
        first: onPaper(placePoint(firstAnchor(account) ?? { x: 0, y: 0 }, motif)),
        flipped: motif.flipped === true,
        covered: covered.has(motif.id),
        layers: account.layers.map(({ slot, outline: part }) => ({
          slot,
          outline: lay(placeOutline(part, motif)),
        })),
        mark: marks.find(({ id }) => id !== '' && id === motif.colourway) ?? null,
        look: style,
      },
    ]
  }
  return {
    width: size.width,
    height: size.height,
    edge: lay(edge),
    inner: inner.map(lay),
    items: (plan.stacking ?? []).flatMap((id) => {
      const motif = placed.get(id)
      return motif ? item(motif) : []
    }),
    reverse,
  }
}
