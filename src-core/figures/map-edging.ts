/** The edging on a map or a picture, under the motifs: as a band, or as the stitches that print can show. */
import type { Point } from '../../shared-types/plan'
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

  /** All of it, about the top left of a view; of stitches those that are `seen`. */
  items(view: Point, seen: (x: number, y: number) => boolean): FigureItem[] {
    const { ground, scale, shapes } = this
    const { plan, style, edge, inner } = ground
    if (!plan.edging) return []
    const line = (width: number) => (points: readonly Point[]) =>
      drawPath(polygonPath(points.map(({ x, y }) => ({ x: x * scale, y: y * scale }))), {
        ...{ stroke: INK, width },
      })
    const items = [
      ...edgingBand(plan, shapes, edge, {
        ...{ scale, style, seen },
        picot: (fill) => this.picot(fill),
        lined: shapes === null,
      }),
      ...(shapes ? [] : edge.map(line(EDGE.band))),
      // What it begins at: where the yarn is as light as the paper, nothing else tells it from the openings inside.
      ...inner.map(line(EDGE.inner)),
    ]
    return [{ kind: 'group', matrix: translation(-view.x * scale, -view.y * scale), items }]
  }

  private picot(fill: Colour): FigureSymbol {
    let symbol = this.picots.get(fill)
    if (!symbol) this.picots.set(fill, (symbol = picotSymbol(this.shapes!.picot * this.scale, fill)))
    return symbol
  }
}

/** The lines that an edging begins at, with no more corners than print can show at the largest scale of a map. */
export const innerLines = ({ plan }: Pick<MapGround, 'plan'>): MapGround['inner'] =>
  plan.edging ? plan.edgingLines.map((line) => simplify(line, TOLERANCE.edging)) : []
