/** The edging of a blanket in its yarns, as it looks: what is inside of it stays to be seen through. */
import type { Plan, Point } from '../../shared-types/plan'
import type { SheetStyle } from '../../shared-types/project'
import { OPEN_ENDS } from '../edging/open-ends'
import { contains, signedArea } from '../geometry/points'
import { simplify } from '../geometry/simplify'
import { remembered } from '../memo'
import { TOLERANCE } from './detail'
import type { DrawnRound, EdgingShapes } from './edging-shapes'
import type { Colour, FigureItem, FigureSymbol } from './figure'
import { drawPath, PAPER } from './figure'
import { EDGE } from './map-symbols'
import { lineOn, paperColour } from './marks'
import { polygonPath } from './path'

type Outline = readonly Point[]

/** A round of the edging by the outlines that end it. */
type Band = Pick<DrawnRound, 'outlines'> & Partial<DrawnRound>

/** How an edging is drawn. */
export interface BandLook {
  /** Printed mm for each plan mm. */
  readonly scale: number
  readonly style: SheetStyle
  /** Which of the stitches of fans and of the picots are drawn. */
  readonly seen: (x: number, y: number) => boolean
  /** The border is lined by the caller: a second line under that one would only be heavy. */
  readonly lined?: boolean
  /** The part of an outline that is drawn; left out: all of it. */
  readonly cut?: (outline: Outline) => Outline
  /** The picot in a colour. */
  readonly picot: (fill: Colour) => FigureSymbol
}

const turned = (line: Outline, isForward: boolean): Outline =>
  signedArea(line) > 0 === isForward ? line : reversed(line)

// Every sheet of a large map asks for the same lines.
const reversed = remembered((line: Outline): Outline => [...line].reverse())
const thinned = remembered((line: Outline, near: number): Outline => simplify(line, near), 2)

/**
 * The rounds of an edging from the outermost, each over the one before, with the stitches of its fans and its picots;
 * without written rounds the whole as one band along its `border`.
 */
export function edgingBand(
  plan: Plan,
  shapes: EdgingShapes | null,
  border: readonly Outline[],
  { scale, style, seen, picot, cut = (outline) => outline, lined = false }: BandLook,
): FigureItem[] {
  const { edging, edgingLines, settled } = plan
  if (!edging) return []
  const closed = plan.round ? edgingLines.slice(OPEN_ENDS) : edgingLines
  const panels = closed.filter((line) => signedArea(line) > 0)
  const bands: readonly Band[] = shapes?.rounds ?? [{ outlines: border, yarn: edging.yarn }]
  const colourOf = (id: string | undefined): Colour =>
    style === 'ink' ? PAPER : paperColour(settled.yarns.find((yarn) => yarn.id === id)?.colour)
  const at = ({ x, y }: Point): Point => ({ x: x * scale, y: y * scale })
  // No more corners than print can show, nor than the band has elsewhere: large blankets have tens of thousands.
  const near = Math.max(TOLERANCE.print / scale, TOLERANCE.edging)
  const path = (line: Outline) => {
    const shown = cut(thinned(line, near))
    return shown.length > 2 ? polygonPath(shown.map(at)) : []
  }
  // Filled where lines of one direction are left over (the non-zero rule): what the edging begins at runs backwards.
  const inside = closed.flatMap((line) => path(reversed(line)))
  // What levels the edge fills its dips, under the motifs.
  const dips = (plan.edgingDips ?? []).flatMap(path)
  const filled =
    dips.length > 0
      ? [drawPath(dips, { fill: colourOf(edging.yarn), stroke: colourOf(edging.yarn), width: EDGE.outline })]
      : []
  const rounds = bands.flatMap(({ outlines, yarn, fans = [], picots = [] }): FigureItem[] => {
    const isInHole = (line: Outline): boolean => panels.some((panel) => contains(panel, line[0]!))
    const drawn = outlines.filter(({ length }) => length > 2)
    if (drawn.length === 0) return []
    const outside = drawn.flatMap((line) => path(turned(line, !isInHole(line))))
    const fill = colourOf(yarn)
    const stroke = lineOn(fill)
    const stitches = fans
      .filter(([first]) => seen(first![0].x, first![0].y))
      .map((fan) => fan.flatMap(([foot, top]) => polygonPath([at(foot), at(top)], false)))
    const loops = picots.filter(({ x, y }) => seen(x, y))
    return [
      drawPath([...outside, ...inside], { fill }),
      ...(lined ? [] : [drawPath(outside, { stroke, width: EDGE.outline })]),
      ...stitches.map((each) => drawPath(each, { stroke, width: EDGE.stitch })),
      ...loops.map(({ x, y, angle }): FigureItem => {
        const [cos, sin, place] = [Math.cos(angle), Math.sin(angle), at({ x, y })]
        return { kind: 'use', symbol: picot(fill), matrix: [cos, sin, -sin, cos, place.x, place.y] }
      }),
    ]
  })
  return [...rounds, ...filled]
}
