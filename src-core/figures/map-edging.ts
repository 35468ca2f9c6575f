/** The edging on a printed map, under the motifs: as a band between two lines, or as the stitches that print can show. */
import type { Point } from '../../shared-types/plan'
import { simplify } from '../geometry/simplify'
import { TOLERANCE } from './detail'
import { edgingBand } from './edging-band'
import type { EdgingShapes } from './edging-shapes'
import type { Colour, FigureItem, FigureSymbol } from './figure'
import { drawPath, INK, PAPER } from './figure'
import type { MapGround } from './map-ground'
import { EDGE, LEAST_STITCH, picotSymbol } from './map-symbols'
import { lineOn, paperColour } from './marks'
import { polygonPath } from './path'

/** Draws the edging of a plan at one scale. */
export class EdgingPainter {
  /** The written rounds where their stitches are large enough; else null. */
  readonly shapes: EdgingShapes | null
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
    const { ground, scale } = this
    const band = this.shapes ? this.stitches(view, seen) : this.band()
    const lines = ground.inner.map((line) =>
      polygonPath(line.map(({ x, y }) => ({ x: x * scale, y: y * scale }))),
    )
    // What it begins at: where the yarn is as light as the paper, nothing else tells it from the openings inside.
    const inner = lines.map((path) => drawPath(path, { stroke: INK, width: EDGE.inner }))
    const moved = this.shapes ? inner : [...band, ...inner]
    return [
      ...(this.shapes ? band : []),
      { kind: 'group', matrix: [1, 0, 0, 1, -view.x * scale, -view.y * scale], items: moved },
    ]
  }

  private band(): FigureItem[] {
    const { ground, scale } = this
    const filled = ground.plan.round ? [] : edgingBand(ground.plan, null, ground.edge, scale, ground.style)
    const outer = ground.edge.map((line) =>
      drawPath(polygonPath(line.map(({ x, y }) => ({ x: x * scale, y: y * scale }))), {
        ...{ stroke: INK, width: EDGE.band },
      }),
    )
    return [...filled, ...outer]
  }

  /** The rounds as they are, from the outermost: their outlines, fans and picots. */
  private stitches(view: Point, seen: (x: number, y: number) => boolean): FigureItem[] {
    const { scale, shapes } = this
    const at = ({ x, y }: Point): Point => ({ x: (x - view.x) * scale, y: (y - view.y) * scale })
    const rounds = shapes?.rounds ?? []
    const last = rounds.length - 1
    return rounds.flatMap(({ outlines, fans, picots, yarn }, i) => {
      const fill = this.colourOf(yarn)
      const stroke = lineOn(fill)
      return [
        ...outlines.map((line) => drawPath(polygonPath(line.map(at)), { fill, stroke, width: EDGE.outline })),
        ...fans
          .filter(([first]) => seen(first![0].x, first![0].y))
          .map((fan) =>
            drawPath(
              fan.flatMap(([foot, top]) => polygonPath([at(foot), at(top)], false)),
              { stroke, width: EDGE.stitch },
            ),
          ),
        ...picots
          .filter(({ x, y }) => seen(x, y))
          .map(({ x, y, angle }): FigureItem => {
            const [cos, sin, place] = [Math.cos(angle), Math.sin(angle), at({ x, y })]
            return { kind: 'use', symbol: this.picot(fill), matrix: [cos, sin, -sin, cos, place.x, place.y] }
          }),
        // Inside of it the paper lies open.
        ...(i === last ? this.open(at) : []),
      ]
    })
  }

  private open(at: (point: Point) => Point): FigureItem[] {
    const { plan, inner } = this.ground
    if (plan.round || inner.length === 0) return []
    return [drawPath(inner.flatMap((line) => polygonPath(line.map(at))), { fill: PAPER })] // prettier-ignore
  }

  private picot(fill: Colour): FigureSymbol {
    let symbol = this.picots.get(fill)
    if (!symbol) this.picots.set(fill, (symbol = picotSymbol(this.shapes!.picot * this.scale, fill)))
    return symbol
  }

  private colourOf(yarn: string | undefined): Colour {
    const { style, plan } = this.ground
    if (style === 'ink') return PAPER
    return paperColour(plan.settled.yarns.find(({ id }) => id === yarn)?.colour)
  }
}

/** The lines that an edging begins at, with no more corners than print can show at the largest scale of a map. */
export const innerLines = ({ plan }: Pick<MapGround, 'plan'>): MapGround['inner'] =>
  plan.edging ? plan.edgingLines.map((line) => simplify(line, TOLERANCE.edging)) : []
