/** The edging on a map or a picture, under the motifs: as a band, or as the stitches that print can show. */
import type { Point } from '../../shared-types/plan'
import { clipOutline } from '../geometry/clip'
import { simplify } from '../geometry/simplify'
import { TOLERANCE } from './detail'
import { edgingBand } from './edging-band'
import type { EdgingShapes } from './edging-shapes'
import type { Colour, FigureItem, FigureSymbol } from './figure'
import { drawPath, INK, translation } from './figure'
import type { MapGround } from './map-ground'
import { EDGE, LEAST_STITCH, picotSymbol } from './map-symbols'
import { polygonPath } from './path'

/** Draws the edging of a plan at one scale. */
export class EdgingPainter {
  /** The written rounds where their stitches are large enough; else null. */
  private readonly shapes: EdgingShapes | null
  private readonly picots = new Map<Colour, FigureSymbol>()

  constructor(
    private readonly ground: MapGround,
    private readonly scale: number,
  ) {
    // Stitches that print cannot show are drawn as the band that they make.
    const isFine = (ground.shapes?.width ?? 0) * scale >= LEAST_STITCH
    this.shapes = isFine ? ground.shapes : null
  }

  /** What a window has of it, about its top left; of stitches those that are `seen`. Without a size all of it. */
  items(
    view: Point & { readonly width?: number; readonly height?: number },
    seen: (x: number, y: number) => boolean,
  ): FigureItem[] {
    const { ground, scale, shapes } = this
    const { plan, style, edge, inner } = ground
    if (!plan.edging) return []
    const cut = cutTo(view, BEYOND / scale)
    const line = (width: number) => (outline: readonly Point[]) => {
      const points = cut(outline)
      return points.length < 2
        ? []
        : [
            drawPath(polygonPath(points.map(({ x, y }) => ({ x: x * scale, y: y * scale }))), {
              ...{ stroke: INK, width },
            }),
          ]
    }
    const items = [
      ...edgingBand(plan, shapes, edge, {
        ...{ scale, style, seen, cut },
        picot: (fill) => this.picot(fill),
        lined: shapes === null,
      }),
      ...(shapes ? [] : edge.flatMap(line(EDGE.band))),
      // What it begins at: where the yarn is as light as the paper, nothing else tells it from the openings inside.
      ...inner.flatMap(line(EDGE.inner)),
    ]
    return [{ kind: 'group', matrix: translation(-view.x * scale, -view.y * scale), items }]
  }

  private picot(fill: Colour): FigureSymbol {
    let symbol = this.picots.get(fill)
    if (!symbol) this.picots.set(fill, (symbol = picotSymbol(this.shapes!.picot * this.scale, fill)))
    return symbol
  }
}

/** mm printed. Lines that a cut adds run so far beyond the window that shows none of them. */
const BEYOND = 2

/** Cuts outlines to a window and so much round it: a sheet of a large map shows a small part of a long edge. */
function cutTo(
  { x, y, width, height }: Point & { readonly width?: number; readonly height?: number },
  by: number,
): (outline: readonly Point[]) => readonly Point[] {
  if (width === undefined || height === undefined) return (outline) => outline
  const box = { left: x - by, top: y - by, right: x + width + by, bottom: y + height + by }
  return (outline) => clipOutline(outline, box)
}

/** The lines that an edging begins at, with no more corners than print can show at the largest scale of a map. */
export const innerLines = ({ plan }: Pick<MapGround, 'plan'>): MapGround['inner'] =>
  plan.edging ? plan.edgingLines.map((line) => simplify(line, TOLERANCE.edging)) : []
