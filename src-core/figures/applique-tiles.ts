/** An appliqué at full size, cut into sheets that overlap, with ticks and marks to lay them together by. */
import { edgesCross } from '../geometry/edges'
import { contains } from '../geometry/points'
import type { Outline } from '../geometry/points'
import type { TemplateGround } from './applique-ground'
import { templateItems } from './applique-marks'
import type { Bounds, Figure, FigureItem, MeasureText } from './figure'
import { drawPath, INK, QUIET_INK } from './figure'
import { panelItems } from './panel'
import type { PanelLook } from './panel'
import { crossPath, diamondPath, linePath, rectanglePath } from './path'
import { cropTicks, sheetKey } from './sheet-marks'

/** Printed mm that two neighbouring sheets both show (trade practice: 5 to 10 mm). */
const TEMPLATE_OVERLAP = 10
/** Room round the window of a sheet for the crop ticks. */
const TICKS = 5
const CROP = { paint: { stroke: INK, width: 0.25 }, from: 0.5, to: TICKS - 0.5 } as const
/** Beyond the panel's edge, so that its line prints whole. */
const RIM = 3

export interface TemplateTile {
  /** Both from 1, from the top left. */
  readonly row: number
  readonly column: number
  /** What it shows, in mm of the panel. */
  readonly view: Bounds
}

export interface TemplateTiling {
  readonly columns: number
  readonly rows: number
  readonly overlap: number
  /** Sheets with anything on them. */
  readonly tiles: readonly TemplateTile[]
  /** Every place of a sheet, those with nothing on them too. */
  readonly places: readonly TemplateTile[]
}

/** How many windows of `room` mm, overlapping, cover a length, and how long each of them then is. */
function split(length: number, room: number): { count: number; view: number } {
  const total = length + 2 * RIM
  if (total <= room) return { count: 1, view: total }
  const count = Math.ceil((total - TEMPLATE_OVERLAP) / (room - TEMPLATE_OVERLAP) - 1e-9)
  return { count, view: (total - TEMPLATE_OVERLAP) / count + TEMPLATE_OVERLAP }
}

/** Cuts the panel for a room on each sheet in mm. Sheets are of one size; empty ones are left out. */
export function tileTemplate(ground: TemplateGround, width: number, height: number): TemplateTiling {
  const across = split(ground.width, width - 2 * TICKS)
  const down = split(ground.height, height - 2 * TICKS)
  const places: TemplateTile[] = []
  for (let j = 0; j < down.count; j++)
    for (let i = 0; i < across.count; i++)
      places.push({
        row: j + 1,
        column: i + 1,
        view: {
          x: -RIM + i * (across.view - TEMPLATE_OVERLAP),
          y: -RIM + j * (down.view - TEMPLATE_OVERLAP),
          width: across.view,
          height: down.view,
        },
      })
  const lines = [ground.edge, ...ground.inner, ...ground.items.map((item) => item.outline)]
  const tiles = places.filter(
    ({ view }) =>
      lines.some((line) => shows(view, line)) ||
      ground.items.some(({ centre }) => contains(cornersOf(view), centre)),
  )
  return { columns: across.count, rows: down.count, overlap: TEMPLATE_OVERLAP, tiles, places }
}

const cornersOf = ({ x, y, width, height }: Bounds): Outline => [
  { x, y },
  { x: x + width, y },
  { x: x + width, y: y + height },
  { x, y: y + height },
]

/** Whether any of a closed line lies in a view. */
function shows(view: Bounds, line: Outline): boolean {
  const corners = cornersOf(view)
  return line.some((a, i) => {
    if (contains(corners, a)) return true
    const b = line[(i + 1) % line.length]!
    return corners.some((c, k) => edgesCross(a, b, c, corners[(k + 1) % 4]!))
  })
}

/** One sheet at full size: its window on the panel, and the ticks round it. */
export function templateTileFigure(
  ground: TemplateGround,
  tiling: TemplateTiling,
  tile: TemplateTile,
  measure: MeasureText,
): Figure {
  const { view } = tile
  const { width, height } = view
  const diamonds = markPlaces(tiling, tile)
  const taken = diamonds.map(({ x, y }): Bounds => ({
    x: view.x + x - DIAMOND,
    y: view.y + y - DIAMOND,
    width: 2 * DIAMOND,
    height: 2 * DIAMOND,
  }))
  const items: FigureItem[] = [
    {
      kind: 'group',
      matrix: [1, 0, 0, 1, TICKS - view.x, TICKS - view.y],
      items: [
        {
          kind: 'group',
          clip: rectanglePath(view.x, view.y, width, height),
          items: [...groundLines(ground), ...templateItems(ground, view, measure, taken)],
        },
      ],
    },
    ...joinMarks(tiling, tile),
  ]
  return { width: width + 2 * TICKS, height: height + 2 * TICKS, items }
}

/** The panel at full size. */
const PANEL: PanelLook = {
  edge: { stroke: INK, width: 0.4 },
  seam: { stroke: INK, width: 0.2, dash: [3, 1.5] },
}

/** The folds through the middle of the panel, its seam line and its edge. */
function groundLines(ground: TemplateGround): FigureItem[] {
  const { width, height } = ground
  const folds = [linePath(width / 2, 0, width / 2, height), linePath(0, height / 2, width, height / 2)]
  const paint = { stroke: QUIET_INK, width: 0.15, dash: [6, 1.5, 0.8, 1.5] }
  return [...folds.map((fold) => drawPath(fold, paint)), ...panelItems(ground, PANEL)]
}

/** Where the middles of the overlaps lie in a sheet's window: upright ones and level ones. */
function overlaps(tiling: TemplateTiling, { row, column, view }: TemplateTile) {
  const half = tiling.overlap / 2
  return {
    upright: [...(column > 1 ? [half] : []), ...(column < tiling.columns ? [view.width - half] : [])],
    level: [...(row > 1 ? [half] : []), ...(row < tiling.rows ? [view.height - half] : [])],
  }
}

/** Where diamonds stand along a side: sheets of a row and of a column are of one size, so that they meet. */
const MARKS = [0.25, 0.75] as const
/** Half of a diamond, in mm. */
const DIAMOND = 3

/** The middles of the diamonds that a sheet shares with its neighbours, from the corner of its window. */
function markPlaces(tiling: TemplateTiling, tile: TemplateTile): { x: number; y: number }[] {
  const { upright, level } = overlaps(tiling, tile)
  return [
    ...upright.flatMap((x) => MARKS.map((share) => ({ x, y: tile.view.height * share }))),
    ...level.flatMap((y) => MARKS.map((share) => ({ x: tile.view.width * share, y }))),
  ]
}

/** Crop ticks in the middle of each overlap, and a diamond on it that the two sheets share. */
function joinMarks(tiling: TemplateTiling, tile: TemplateTile): FigureItem[] {
  const { width, height } = tile.view
  const { upright, level } = overlaps(tiling, tile)
  return [
    ...cropTicks(
      { x: TICKS, y: TICKS, width, height },
      { xs: upright.map((x) => TICKS + x), ys: level.map((y) => TICKS + y) },
      CROP,
    ),
    ...markPlaces(tiling, tile).flatMap(({ x, y }) => diamond(TICKS + x, TICKS + y)),
  ]
}

const diamond = (x: number, y: number): FigureItem[] => [
  drawPath(diamondPath(x, y, DIAMOND), { stroke: INK, width: 0.25 }),
  drawPath(crossPath(x, y, DIAMOND), { stroke: INK, width: 0.12 }),
]

/** The whole panel in small with its sheets, the current one filled. */
export function templateKey(
  ground: TemplateGround,
  tiling: TemplateTiling,
  current: TemplateTile,
  width: number,
  height: number,
): Figure {
  const printed = new Set(tiling.tiles)
  const sheets = tiling.places.map((place) => {
    const box = cutBox(tiling, place)
    return {
      area: { ...box, x: box.x + RIM, y: box.y + RIM },
      name: printed.has(place) ? tileName(place) : '',
      isHere: place.row === current.row && place.column === current.column,
    }
  })
  const size = { width: ground.width + 2 * RIM, height: ground.height + 2 * RIM }
  return sheetKey(sheets, size, { width, height })
}

/** "2·3": row 2, column 3. */
export const tileName = ({ row, column }: TemplateTile): string => `${row}·${column}`

/** What is left of a sheet when every overlap is cut in its middle. */
export function cutBox(tiling: TemplateTiling, { row, column, view }: TemplateTile): Bounds {
  const half = tiling.overlap / 2
  const left = column > 1 ? half : 0
  const top = row > 1 ? half : 0
  return {
    x: view.x + left,
    y: view.y + top,
    width: view.width - left - (column < tiling.columns ? half : 0),
    height: view.height - top - (row < tiling.rows ? half : 0),
  }
}
