/** One motif with its measures on dimension lines and its petals numbered, as a sheet or a window shows it. */
import type { Anchor, MotifAccount } from '../../shared-types/plan'
import type { Hand, UnitSystem } from '../../shared-types/project'
import { formatLength } from '../units/format'
import type { Figure, FigureItem, MeasureText } from './figure'
import { drawPath, drawText, INK, MM_PER_POINT, PAPER, QUIET_INK, useAt } from './figure'
import { workingArrow } from './join-detail'
import { CAPITAL_HEIGHT } from './lettering'
import type { ColourwayMark } from './marks'
import { motifSymbol, printedOutline } from './motif-symbol'
import { arrowHead, boundsOf, circlePath, linePath, polygonPath, rectanglePath } from './path'

const TYPE = 9.5
const DIMENSION_GAP = 7.5

/** What a dimension line says and how far it reaches from the centre line, in plan mm. */
export interface Dimension {
  readonly words: string
  readonly from: number
  readonly to: number
  readonly length: number
}

/** The measures of a motif across its middle: tip to tip and between petals, or what its shape is measured by. */
export function motifDimensions(motif: MotifAccount): Dimension[] {
  const across = (words: string, length: number): Dimension => ({
    words,
    length,
    from: -length / 2,
    to: length / 2,
  })
  if (motif.shape === 'petals') {
    return [across('between petals', motif.overValleys), across('tip to tip', motif.overTips)]
  }
  if (motif.shape === 'round') return [across('across', motif.overTips)]
  if (motif.shape === 'straight') {
    return [across('side to side', motif.overValleys), across('point to point', motif.overTips)]
  }
  return [across('width', boundsOf(motif.outline).width)]
}

/** A horizontal dimension line with ticks and its words on a white ground in the middle. */
function dimensionLine(x1: number, x2: number, y: number, words: string, measure: MeasureText): FigureItem[] {
  const middle = (x1 + x2) / 2
  const width = measure(words, TYPE, 'regular') + 3
  const inside = width < x2 - x1 - 6
  const drop = (TYPE * CAPITAL_HEIGHT * MM_PER_POINT) / 2
  const ends = [...arrowHead(x1, y, -1, 0, 1.5), ...arrowHead(x2, y, 1, 0, 1.5)]
  const line = inside
    ? [...linePath(x1, y, middle - width / 2, y), ...linePath(middle + width / 2, y, x2, y)]
    : linePath(x1, y, x2, y)
  return [
    drawPath([...line, ...ends], { stroke: INK, width: 0.25 }),
    inside
      ? drawText(words, middle, y + drop, TYPE, { anchor: 'middle' })
      : drawText(words, x2 + 2.5, y + drop, TYPE),
  ]
}

const extension = (x: number, from: number, to: number): FigureItem =>
  drawPath(linePath(x, from, x, to), { stroke: QUIET_INK, width: 0.18, dash: [0.9, 0.9] })

const numbered = (motif: MotifAccount): Anchor[] =>
  motif.anchors.filter((anchor) => anchor.kind === 'tip' || anchor.kind === 'corner')

export interface MotifFigureOptions {
  readonly width: number
  /** Largest printed size of the motif in mm; it is never larger than life. */
  readonly across: number
  readonly units: UnitSystem
  readonly hand: Hand
  readonly mark: ColourwayMark | null
  readonly look: 'ink' | 'colour'
  readonly measure: MeasureText
}

/** The motif about the middle of the figure's width, dimension lines below it. */
export function motifFigure(
  motif: MotifAccount,
  options: MotifFigureOptions,
): Figure & { readonly scale: number } {
  const box = boundsOf(motif.outline)
  const scale = Math.min(1, options.across / Math.max(box.width, box.height, 1))
  const centre = { x: options.width / 2, y: -box.y * scale + 1 }
  const bottom = centre.y + (box.y + box.height) * scale
  const look = options.look === 'ink' ? 'plain' : 'colour'
  const symbol = motifSymbol(motif, { scale, turn: 0, look, mark: options.mark, disc: 0 })
  const items: FigureItem[] = [useAt(symbol, centre.x, centre.y)]
  if (look === 'plain') items.push(...sections(motif, scale, centre))
  items.push(...petalNumbers(motif, scale, centre, look === 'colour'))
  if (motif.shape !== 'leaf') items.push(...workingArrow(centre.x, centre.y, 2.6, options.hand))
  const dimensions = motifDimensions(motif)
  dimensions.forEach((dimension, i) => {
    const y = bottom + DIMENSION_GAP * (i + 1)
    const x1 = centre.x + dimension.from * scale
    const x2 = centre.x + dimension.to * scale
    const words = `${dimension.words} ${formatLength(dimension.length, options.units)}`
    items.push(extension(x1, centre.y, y + 1.5), extension(x2, centre.y, y + 1.5))
    items.push(...dimensionLine(x1, x2, y, words, options.measure))
  })
  const height = bottom + DIMENSION_GAP * dimensions.length + 3
  return { width: options.width, height, items, scale }
}

/** The borders between colours, as thin lines. */
function sections(motif: MotifAccount, scale: number, centre: { x: number; y: number }): FigureItem[] {
  return motif.layers
    .slice(0, -1)
    .map((layer) =>
      drawPath(
        polygonPath(
          printedOutline(layer.outline, 0, scale).map((p) => ({ x: p.x + centre.x, y: p.y + centre.y })),
        ),
        { stroke: INK, width: 0.2 },
      ),
    )
}

function petalNumbers(
  motif: MotifAccount,
  scale: number,
  centre: { x: number; y: number },
  onDisc: boolean,
): FigureItem[] {
  const drop = (TYPE * CAPITAL_HEIGHT * MM_PER_POINT) / 2
  return numbered(motif).flatMap((anchor): FigureItem[] => {
    const reach = Math.hypot(anchor.x, anchor.y) * scale || 1
    const share = Math.max(0.6, (reach - 5) / reach) * scale * 1
    const x = centre.x + anchor.x * share
    const y = centre.y + anchor.y * share
    const number = drawText(String(anchor.petal), x, y + drop, TYPE, { anchor: 'middle' })
    return onDisc
      ? [drawPath(circlePath(x, y, 2.3), { fill: PAPER, stroke: INK, width: 0.15 }), number]
      : [number]
  })
}

/** A bar of a known length, for judging a drawing's scale on any paper. */
export function scaleBar(length: number, scale: number, words: string): Figure {
  const width = length * scale
  return {
    width,
    height: 6,
    items: [
      drawPath(rectanglePath(0, 0, width / 2, 1.2), { fill: INK }),
      drawPath(rectanglePath(0, 0, width, 1.2), { stroke: INK, width: 0.2 }),
      drawText(words, 0, 5, 8),
    ],
  }
}
