/** The overview of an assembly map: the whole of it in a box, with numbers along its edges and the frames of its sheets. */
import { mapSize } from '../layout/placed'
import type { Bounds, Figure, FigureItem } from './figure'
import { drawPath, drawText, INK } from './figure'
import { MapPainter } from './map'
import type { MapGround } from './map-ground'
import { directionArrows, placeNumbers, rowNumbers } from './map-edges'
import { rectanglePath } from './path'
import type { MapRow } from './rows'

/** Room round the map for row and place numbers and for arrows, in printed mm. */
const ROW_NUMBERS = 9
const PLACE_NUMBERS = 7
const ARROWS = 8.5
/** Motifs are printed no larger than this across: a small project does not fill the sheet with one flower. */
const LARGEST_MOTIF = 40

interface OverviewMap {
  readonly figure: Figure
  readonly scale: number
  /** Where the plan's top left stands in the figure. */
  readonly left: number
  readonly top: number
  /** Whether the motifs carry their working numbers. */
  readonly numbered: boolean
  readonly painter: MapPainter
}

const edgeRoom = (ground: MapGround) => ({
  left: ROW_NUMBERS,
  right: ground.byRows ? ARROWS : 0,
  top: ground.places.length > 0 ? PLACE_NUMBERS : 1,
})

/** The scale at which the whole plan fits a box of printed mm, numbers along the edges included. */
export function overviewScale(ground: MapGround, width: number, height: number): number {
  const { left, right, top } = edgeRoom(ground)
  const size = mapSize(ground.plan)
  return Math.max(
    1e-4,
    Math.min(
      (width - left - right) / Math.max(size.width, 1),
      (height - top) / Math.max(size.height, 1),
      LARGEST_MOTIF / Math.max(2 * ground.tip, 1),
    ),
  )
}

/**
 * The whole map within a box. `frames` are areas of the plan (mm) that are printed on sheets of their own, drawn
 * over the motifs, which then carry no numbers.
 */
export function overviewMap(
  ground: MapGround,
  width: number,
  height: number,
  frames: readonly { readonly area: Bounds; readonly name: string }[] = [],
): OverviewMap {
  const scale = overviewScale(ground, width, height)
  const painter = new MapPainter(ground, scale)
  const { left, right, top } = edgeRoom(ground)
  const size = mapSize(ground.plan)
  const drawn = { width: size.width * scale, height: size.height * scale }
  const x0 = left + Math.max(0, (width - left - right - drawn.width) / 2)
  const y = (row: MapRow): number => top + row.y * scale
  const items: FigureItem[] = [
    ...placeNumbers(ground.places, (x) => x0 + x * scale, top - 3),
    ...rowNumbers(ground.rows, y, x0 - 3.4),
    ...(ground.byRows ? directionArrows(ground.rows, y, x0 + drawn.width + 3.2) : []),
    {
      kind: 'group',
      matrix: [1, 0, 0, 1, x0, top],
      // Frames would run through the numbers, which stand on the sheets.
      items: painter.window({ x: 0, y: 0, width: size.width, height: size.height }, frames.length === 0),
    },
  ]
  for (const { area, name } of frames) {
    const box = {
      x: x0 + area.x * scale,
      y: top + area.y * scale,
      width: area.width * scale,
      height: area.height * scale,
    }
    items.push(
      drawPath(rectanglePath(box.x, box.y, box.width, box.height), { stroke: INK, width: 0.5 }),
      ...sheetPlate(name, box.x + box.width / 2, box.y + box.height / 2),
    )
  }
  return {
    figure: { width, height: top + drawn.height + 0.5, items },
    scale,
    left: x0,
    top,
    numbered: painter.number !== null,
    painter,
  }
}

/** The name of a sheet on a white plate, readable over any texture; a bare number would be taken for that of a corner. */
function sheetPlate(name: string, x: number, y: number): FigureItem[] {
  const width = 3.2 + name.length * 2.2
  return [
    drawPath(rectanglePath(x - width / 2, y - 3.2, width, 6.4), {
      fill: '#ffffff',
      stroke: INK,
      width: 0.25,
    }),
    drawText(name, x, y + 1.4, 11, { anchor: 'middle', weight: 'bold' }),
  ]
}
