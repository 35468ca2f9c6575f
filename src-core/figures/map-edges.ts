/** What stands along the edges of a map: numbers of rows and places, arrows. */
import type { FigureItem } from './figure'
import { drawPath, drawText, INK, MM_PER_POINT } from './figure'
import { capitalDrop } from './lettering'
import { arrowPath } from './path'
import type { MapRow } from './rows'

const EDGE_TYPE = 8.5
/** Length of a working direction arrow in mm. */
const ARROW = 4.2

/** Which of n labels are printed when they would stand `pitch` mm apart and want `room` mm: every 1st, 2nd, 5th… */
export function labelStep(pitch: number, room: number): number {
  return [1, 2, 5, 10, 20, 50, 100].find((step) => pitch * step >= room) ?? 200
}

const shown = (number: number, step: number): boolean => step === 1 || number === 1 || number % step === 0

/** Row numbers left of a window, at x = 0 to the right-aligned `edge`. */
export function rowNumbers(rows: readonly MapRow[], y: (row: MapRow) => number, edge: number): FigureItem[] {
  const pitch = rows.length > 1 ? Math.abs(y(rows[1]!) - y(rows[0]!)) : Infinity
  const step = labelStep(pitch, 3.6)
  const drop = capitalDrop(EDGE_TYPE)
  return rows
    .filter((row) => shown(row.row, step))
    .map((row) => drawText(String(row.row), edge, y(row) + drop, EDGE_TYPE, { anchor: 'end' }))
}

/** Place numbers above a window. */
export function placeNumbers(
  places: readonly { readonly place: number; readonly x: number }[],
  x: (planX: number) => number,
  baseline: number,
): FigureItem[] {
  const pitch = places.length > 1 ? Math.abs(x(places[1]!.x) - x(places[0]!.x)) : Infinity
  const digits = String(places.length).length
  const step = labelStep(pitch, digits * EDGE_TYPE * 0.5 * MM_PER_POINT + 1.2)
  return places
    .filter(({ place }) => shown(place, step))
    .map((place) => drawText(String(place.place), x(place.x), baseline, EDGE_TYPE, { anchor: 'middle' }))
}

/** Arrows of the working direction, their tails at x (for rows worked to the right). */
export function directionArrows(
  rows: readonly MapRow[],
  y: (row: MapRow) => number,
  x: number,
): FigureItem[] {
  const pitch = rows.length > 1 ? Math.abs(y(rows[1]!) - y(rows[0]!)) : Infinity
  const step = labelStep(pitch, 2)
  const segments = rows
    .filter((row) => row.direction !== null && (step === 1 || shown(row.row, step)))
    .flatMap((row) =>
      row.direction === 'right'
        ? arrowPath(x, y(row), x + ARROW, y(row), 1.4)
        : arrowPath(x + ARROW, y(row), x, y(row), 1.4),
    )
  return segments.length > 0 ? [drawPath(segments, { stroke: INK, width: 0.3, cap: 'round' })] : []
}
