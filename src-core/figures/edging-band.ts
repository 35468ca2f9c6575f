/** The edging of a blanket as a band in its yarns, as it looks: what is inside of it stays to be seen through. */
import type { Plan, Point } from '../../shared-types/plan'
import type { SheetStyle } from '../../shared-types/project'
import { OPEN_ENDS } from '../edging/open-ends'
import { contains, signedArea } from '../geometry/points'
import type { EdgingShapes } from './edging-shapes'
import type { Colour, FigureItem } from './figure'
import { drawPath, INK, PAPER } from './figure'
import { paperColour } from './marks'
import { polygonPath } from './path'

/** mm on paper: the line round each round. */
const LINE = 0.2

type Outline = readonly Point[]

/** A round of the edging by the outlines that end it. */
interface Band {
  readonly outlines: readonly Outline[]
  readonly yarn?: string | undefined
}

const turned = (line: Outline, isForward: boolean): Outline =>
  signedArea(line) > 0 === isForward ? line : [...line].reverse()

/**
 * The rounds of an edging from the outermost, each over the one before; without written rounds the whole as one
 * band along its `border`. `scale` is printed mm for each plan mm.
 */
export function edgingBand(
  plan: Plan,
  shapes: EdgingShapes | null,
  border: readonly Outline[],
  scale: number,
  look: SheetStyle,
): FigureItem[] {
  const { edging, edgingLines, settled } = plan
  if (!edging) return []
  const closed = plan.round ? edgingLines.slice(OPEN_ENDS) : edgingLines
  const panels = closed.filter((line) => signedArea(line) > 0)
  const bands: readonly Band[] = shapes?.rounds ?? [{ outlines: border, yarn: edging.yarn }]
  const colourOf = (id: string | undefined): Colour =>
    look === 'ink' ? PAPER : paperColour(settled.yarns.find((yarn) => yarn.id === id)?.colour)
  const path = (line: Outline) => polygonPath(line.map(({ x, y }) => ({ x: x * scale, y: y * scale })))
  // Filled where lines of one direction are left over (the non-zero rule): what the edging begins at runs backwards.
  const inside = closed.flatMap((line) => path([...line].reverse()))
  // What levels the edge fills its dips, under the motifs.
  const dips = (plan.edgingDips ?? []).flatMap(path)
  const filled =
    dips.length > 0
      ? [drawPath(dips, { fill: colourOf(edging.yarn), stroke: colourOf(edging.yarn), width: LINE })]
      : []
  const rounds = bands.flatMap(({ outlines, yarn }): FigureItem[] => {
    const isInHole = (line: Outline): boolean => panels.some((panel) => contains(panel, line[0]!))
    const drawn = outlines.filter(({ length }) => length > 2)
    if (drawn.length === 0) return []
    const outside = drawn.flatMap((line) => path(turned(line, !isInHole(line))))
    return [
      drawPath([...outside, ...inside], { fill: colourOf(yarn) }),
      drawPath(outside, { stroke: INK, width: LINE }),
    ]
  })
  return [...rounds, ...filled]
}
