/** What motifs lie on or hang from, in the colours of the window: the panel of an appliqué, the cord of a garland. */
import type { GarlandAccount, Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { cordItems, cordNumbers } from '../../src-core/figures/cord'
import type { CordLook } from '../../src-core/figures/cord'
import { MM_PER_POINT } from '../../src-core/figures/figure'
import type { FigureItem } from '../../src-core/figures/figure'
import { capitalDrop } from '../../src-core/figures/lettering'
import { panelItems, panelLines } from '../../src-core/figures/panel'
import type { PanelLines, PanelLook } from '../../src-core/figures/panel'
import type { HitMap } from '../../src-core/geometry/hit'
import { remembered } from '../../src-core/memo'
import { faint } from './palette'
import type { Palette } from './palette'
import { clamp } from './pen'
import type { Placing } from './pen'
import type { Picture } from './picture'
import { layerInk } from './yarn-inks'
import type { LayerInk } from './yarn-inks'

type PanelPicture = { readonly kind: 'panel' } & PanelLines

interface CordPicture {
  readonly kind: 'cord'
  readonly garland: GarlandAccount
  readonly ink: LayerInk
}

export type GroundPicture = PanelPicture | CordPicture

/** The ground of a plan; the same object as before where it is the same. */
export function groundOf(
  project: Project,
  { panel, garland }: Plan,
  palette: Palette,
  known: GroundPicture | null | undefined,
): GroundPicture | null {
  if (panel) {
    const lines = panelLines(panel)
    const isSame = known?.kind === 'panel' && known.edge === lines.edge && known.inner === lines.inner
    return isSame ? known : { kind: 'panel', ...lines }
  }
  if (!garland) return null
  const ink = layerInk(project.yarns?.find(({ id }) => id === garland.cord.yarn)?.colour, palette.bare)
  const isSame = known?.kind === 'cord' && known.garland === garland && known.ink === ink
  return isSame ? known : { kind: 'cord', garland, ink }
}

/** A cord of chains as a band, in mm, never thinner than so many CSS pixels. */
const CORD = { width: 3, least: 1.6, rim: 0.7 } as const
/** CSS pixels, and in small pictures no more than so many mm: radius of a hook, the piece of a tie that is shown. */
const HOOK = { most: 3.5, mm: 16 } as const
const TIE = { most: 34, mm: 110 } as const
/** CSS pixels that the wall's line goes on beside the hooks. */
const WALL = 14
/** Least radius of a bead in CSS pixels. */
const LEAST_BEAD = 1.5
/** Share of the hairline's colour in the band of the seam allowance. */
const ALLOWANCE = 0.42
/** Numbers along a cord, in CSS pixels: their type, their distance below things, the room that each takes. */
const NUMBER = { type: 11.5, off: 4.7, room: 17 } as const
/** A place that something is fastened by: radius and hem in CSS pixels. */
const FASTENED = { share: 1.2, least: 0.9, most: 2.6, hem: 1.2 } as const

const panelLook = ({ ink, quiet, hairline }: Palette, ratio: number): PanelLook => ({
  edge: { stroke: ink, width: 1.25 * ratio },
  seam: { stroke: quiet, width: ratio, dash: [5 * ratio, 3.5 * ratio] },
  allowance: faint(hairline, ALLOWANCE),
})

function cordLook(
  yarn: LayerInk,
  { ink, paper, quiet }: Palette,
  { scale, ratio }: Size,
  isFastened: boolean,
): CordLook {
  const width = Math.max(CORD.least * ratio, CORD.width * scale)
  const strand = (stroke: string, wide: number) => ({ stroke, width: wide, cap: 'round' }) as const
  const line = { fill: paper, stroke: ink, width: ratio }
  return {
    strands: [strand(yarn.line, width + 2 * CORD.rim * ratio), strand(yarn.fill, width)],
    loops: strand(yarn.line, Math.max(ratio, width * 0.5)),
    tie: Math.min(TIE.most * ratio, TIE.mm * scale),
    hook: { radius: Math.min(HOOK.most * ratio, HOOK.mm * scale), ...line },
    bead: { least: LEAST_BEAD * ratio, ...line },
    wall: { beyond: WALL * ratio, stroke: quiet, width: ratio, dash: [2 * ratio, 4 * ratio] },
    fastenings: isFastened
      ? {
          radius: clamp((FASTENED.share * scale) / ratio, FASTENED.least, FASTENED.most) * ratio,
          paints: [{ stroke: paper, width: FASTENED.hem * ratio }, { fill: ink }],
        }
      : undefined,
  }
}

/** The number of each thing on the cord below it. */
function numbersBelow(
  garland: GarlandAccount,
  hit: HitMap,
  { ink }: Palette,
  { scale, ratio }: Size,
): FigureItem[] {
  const size = (NUMBER.type * ratio) / MM_PER_POINT
  const off = NUMBER.off * ratio + 2 * capitalDrop(size)
  // Motifs by their places among the motifs: beads have none.
  let motifs = 0
  const boxes = garland.items.map(({ motif }) => (motif === '' ? null : hit.boxOf(motifs++)))
  const look = { size, weight: 'bold', colour: ink, room: NUMBER.room * ratio } as const
  return cordNumbers(garland, look, scale, ({ x, y, extent }, place) => {
    const box = boxes[place]
    const [middle, bottom] = box ? [(box.left + box.right) / 2, box.bottom] : [x, y + extent / 2]
    return { x: middle * scale, y: bottom * scale + off }
  })
}

type Size = Pick<Placing, 'scale' | 'ratio'>

/** What lies under the motifs and over them, in device pixels from the plan's origin. */
interface GroundItems {
  readonly under: readonly FigureItem[]
  readonly over: readonly FigureItem[]
}

/** Scales for which the items are kept: the map's own, the whole, one between. */
const KEPT = 3

const itemsAt = remembered(
  (
    ground: GroundPicture,
    palette: Palette,
    hit: HitMap | null,
    showJoins: boolean,
    scale: number,
    ratio: number,
  ): GroundItems => {
    const size = { scale, ratio }
    if (ground.kind === 'panel')
      return {
        under: panelItems(ground, panelLook(palette, ratio), (outline) =>
          outline.map(({ x, y }) => ({ x: x * scale, y: y * scale })),
        ),
        over: [],
      }
    const { garland, ink } = ground
    const { under, over } = cordItems(garland, cordLook(ink, palette, size, showJoins), size)
    return { under, over: hit ? [...over, ...numbersBelow(garland, hit, palette, size)] : over }
  },
  KEPT,
)

/** The items of a picture's ground at a scale. */
export const groundItems = (
  ground: GroundPicture,
  { palette, hit, showLabels, showJoins }: Picture,
  { scale, ratio }: Placing,
): GroundItems => itemsAt(ground, palette, showLabels ? hit : null, showJoins, scale, ratio)
