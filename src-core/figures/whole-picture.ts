/** The whole of what is planned as one drawing, as large as it is printed at most: for a picture, or for a phone. */
import type { Plan } from '../../shared-types/plan'
import type { SheetStyle } from '../../shared-types/project'
import { mapSize } from '../layout/placed'
import { byKind } from '../plans/layouts'
import { appliquePicture } from './applique-picture'
import type { DrawnPlan, FigureItem } from './figure'
import { drawPath, drawText, INK, PAPER } from './figure'
import { garlandFigure } from './garland'
import { capitalDrop } from './lettering'
import { MapPainter } from './map'
import { mapGround } from './map-ground'
import { overviewMap, overviewScale } from './overview-map'
import { circlePath } from './path'

/** Room around a map for the numbers along its edges, in mm. */
const EDGES = 30
/** A box that never binds, in mm. */
const BOUNDLESS = 1e5
/** A garland is drawn at this share of its size: flowers as large as those of a blanket. */
const GARLAND_SCALE = 0.4
/** A panel is drawn as large as it is. */
const PANEL_SCALE = 1
/** Of things on a cord and a panel: points, and mm across the disc that a number stands on. */
const NUMBER = { size: 9, disc: 5.4 } as const

interface PictureChoice {
  readonly look: SheetStyle
  /** Writes the numbers of things on a cord and of items on a panel; maps have theirs anyway. */
  readonly numbered?: boolean
  /** What it looks like, with nothing that a map says about it: the cord and the edging in their yarns. */
  readonly plain?: boolean
}

/** The drawing of a plan that has something placed. */
export function wholePicture(
  plan: Plan,
  { look, numbered = false, plain = false }: PictureChoice,
): DrawnPlan {
  const box = (scale: number) => ({ width: plan.size.width * scale, height: BOUNDLESS, look }) as const
  const own = byKind(plan, {
    blanket: () => null,
    garland: ({ garland }) =>
      garland &&
      garlandFigure(plan, garland, {
        ...box(GARLAND_SCALE),
        numbered,
        cordInYarn: plain && look === 'colour',
      }),
    applique: ({ panel }) => {
      const picture = panel && appliquePicture(plan, panel, box(PANEL_SCALE))
      return picture && numbered ? withNumbers(plan, picture) : picture
    },
  })
  if (own) return own
  const ground = mapGround(plan, look)
  const scale = overviewScale(ground, BOUNDLESS, BOUNDLESS)
  const size = mapSize(plan)
  if (plain) {
    const [width, height] = [size.width * scale, size.height * scale]
    return { width, height, items: new MapPainter(ground, scale).plain(), scale, left: 0, top: 0 }
  }
  const { figure, left, top } = overviewMap(ground, size.width * scale + EDGES, size.height * scale + EDGES)
  return { ...figure, scale, left, top }
}

/** The number of each item on its middle. */
function withNumbers(plan: Plan, picture: DrawnPlan): DrawnPlan {
  const { left, top, scale } = picture
  const numbers = plan.motifs.flatMap(({ x, y, label }): FigureItem[] => {
    const at = { x: left + x * scale, y: top + y * scale }
    return [
      drawPath(circlePath(at.x, at.y, NUMBER.disc / 2), { fill: PAPER, stroke: INK, width: 0.2 }),
      drawText(label, at.x, at.y + capitalDrop(NUMBER.size), NUMBER.size, { anchor: 'middle' }),
    ]
  })
  return { ...picture, items: [...picture.items, ...numbers] }
}
