/** The panel of an appliqué, on its template, in small and in the window: seam allowance, seam line, edge. */
import type { PanelAccount } from '../../shared-types/plan'
import { clockwise } from '../geometry/polygons'
import type { Outline } from '../geometry/points'
import { remembered } from '../memo'
import type { Colour, FigureItem, Paint, Path } from './figure'
import { drawPath } from './figure'
import { polygonPath } from './path'

export interface PanelLines {
  readonly edge: Outline
  /** What the seam allowance leaves; empty without one. */
  readonly inner: readonly Outline[]
}

/** The lines of a panel. */
export const panelLines = remembered(({ outline, allowance, inner }: PanelAccount): PanelLines => ({
  edge: outline,
  inner: allowance > 0 ? inner : [],
}))

export interface PanelLook {
  readonly edge: Paint
  /** The seam line is not drawn without. */
  readonly seam?: Paint
  /** Colour of what the seam takes. */
  readonly allowance?: Colour
}

/** What lies between an outline and those inside it, which run the other way round. */
export const bandPath = (outline: Outline, inner: readonly Outline[]): Path =>
  [clockwise(outline), ...inner.map((hole) => [...clockwise(hole)].reverse())].flatMap((edge) =>
    polygonPath(edge),
  )

/** A panel, each of its lines put in its place on the drawing. */
export function panelItems(
  { edge, inner }: PanelLines,
  { edge: line, seam, allowance }: PanelLook,
  place: (outline: Outline) => Outline = (outline) => outline,
): FigureItem[] {
  const [around, within] = [place(edge), seam ? inner.map(place) : []]
  return [
    ...(allowance && within.length > 0 ? [drawPath(bandPath(around, within), { fill: allowance })] : []),
    ...within.map((outline) => drawPath(polygonPath(outline), seam!)),
    drawPath(polygonPath(around), line),
  ]
}
