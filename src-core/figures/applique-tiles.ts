/** The sheets of a template: each window at full size, with ticks and marks to lay them together by. */
import type { TemplateGround } from './applique-ground'
import { templateItems } from './applique-marks'
import type { Bounds, Figure, FigureItem, MeasureText } from './figure'
import { drawPath, INK, QUIET_INK } from './figure'
import { RIM, TICKS } from './applique-windows'
import type { Span, TemplateTile, TemplateTiling } from './applique-windows'
import { panelItems } from './panel'
import type { PanelLook } from './panel'
import { crossPath, diamondPath, linePath, rectanglePath } from './path'
import { cropTicks, sheetKey } from './sheet-marks'

const CROP = { paint: { stroke: INK, width: 0.25 }, from: 0.5, to: TICKS - 0.5 } as const

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

/** The windows beside one that are printed. */
function neighbours({ tiles }: TemplateTiling, { row, column }: TemplateTile) {
  const at = (r: number, c: number): TemplateTile | undefined =>
    tiles.find((tile) => tile.row === r && tile.column === c)
  return {
    left: at(row, column - 1),
    right: at(row, column + 1),
    above: at(row - 1, column),
    below: at(row + 1, column),
  }
}

/** Where the middles of the overlaps lie in a window: upright ones and level ones, each with whom it is shared. */
function overlaps(tiling: TemplateTiling, tile: TemplateTile) {
  const half = tiling.overlap / 2
  const { left, right, above, below } = neighbours(tiling, tile)
  const { width, height } = tile.view
  return {
    upright: [
      ...(left ? [{ at: half, other: left }] : []),
      ...(right ? [{ at: width - half, other: right }] : []),
    ],
    level: [
      ...(above ? [{ at: half, other: above }] : []),
      ...(below ? [{ at: height - half, other: below }] : []),
    ],
  }
}

/** Where diamonds stand along what two windows share of a side; in the middle where that is short. */
const MARKS = [0.25, 0.75] as const
/** Half of a diamond, in mm. */
const DIAMOND = 3
/** mm of a shared side that two diamonds need. */
const TWO_MARKS = 40

/** Places of the diamonds along a side that two windows share, from the beginning of the first. */
function along(from: number, length: number, other: Span): number[] {
  const low = Math.max(from, other.from)
  const shared = Math.min(from + length, other.from + other.length) - low
  return (shared < TWO_MARKS ? [0.5] : MARKS).map((share) => low + shared * share - from)
}

/** The middles of the diamonds that a window shares with its neighbours, from its corner. */
function markPlaces(tiling: TemplateTiling, tile: TemplateTile): { x: number; y: number }[] {
  const { upright, level } = overlaps(tiling, tile)
  const { x, y, width, height } = tile.view
  return [
    ...upright.flatMap(({ at, other: { view } }) =>
      along(y, height, { from: view.y, length: view.height }).map((place) => ({ x: at, y: place })),
    ),
    ...level.flatMap(({ at, other: { view } }) =>
      along(x, width, { from: view.x, length: view.width }).map((place) => ({ x: place, y: at })),
    ),
  ]
}

/** Crop ticks in the middle of each overlap, and a diamond on it that the two sheets share. */
function joinMarks(tiling: TemplateTiling, tile: TemplateTile): FigureItem[] {
  const { width, height } = tile.view
  const { upright, level } = overlaps(tiling, tile)
  return [
    ...cropTicks(
      { x: TICKS, y: TICKS, width, height },
      { xs: upright.map(({ at }) => TICKS + at), ys: level.map(({ at }) => TICKS + at) },
      CROP,
    ),
    ...markPlaces(tiling, tile).flatMap(({ x, y }) => diamond(TICKS + x, TICKS + y)),
  ]
}

const diamond = (x: number, y: number): FigureItem[] => [
  drawPath(diamondPath(x, y, DIAMOND), { stroke: INK, width: 0.25 }),
  drawPath(crossPath(x, y, DIAMOND), { stroke: INK, width: 0.12 }),
]

/** The whole panel in small with its windows, those of the current sheet filled. */
export function templateKey(
  ground: TemplateGround,
  tiling: TemplateTiling,
  current: readonly TemplateTile[],
  width: number,
  height: number,
): Figure {
  const printed = new Set(tiling.tiles)
  const here = new Set(current)
  const sheets = tiling.places.map((place) => {
    const box = cutBox(tiling, place)
    return {
      area: { ...box, x: box.x + RIM, y: box.y + RIM },
      name: printed.has(place) ? tileName(place) : '',
      isHere: here.has(place),
    }
  })
  const size = { width: ground.width + 2 * RIM, height: ground.height + 2 * RIM }
  return sheetKey(sheets, size, { width, height })
}

/** "2·3": row 2, column 3. */
export const tileName = ({ row, column }: TemplateTile): string => `${row}·${column}`

/** What is left of a window when every overlap is cut in its middle. */
export function cutBox(tiling: TemplateTiling, tile: TemplateTile): Bounds {
  const half = tiling.overlap / 2
  const { left, right, above, below } = neighbours(tiling, tile)
  const { x, y, width, height } = tile.view
  return {
    x: x + (left ? half : 0),
    y: y + (above ? half : 0),
    width: width - (left ? half : 0) - (right ? half : 0),
    height: height - (above ? half : 0) - (below ? half : 0),
  }
}
