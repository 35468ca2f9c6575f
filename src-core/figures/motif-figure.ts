/** One motif with its measures on dimension lines and its petals numbered, as a sheet or a window shows it. */
import type { MotifAccount } from '../../shared-types/plan'
import type { Hand, Terms, UnitSystem } from '../../shared-types/project'
import { stands } from '../motif/forms'
import { numberedPlaces } from '../motif/numbering'
import { layingOfAccount, rulerWords } from '../motif/ruler'
import type { Laying, Readings } from '../motif/ruler'
import { formatMeasure } from '../units/format'
import { arrowEnd, dimensionPath } from './dimension-line'
import type { Figure, FigureItem, MeasureText } from './figure'
import { drawPath, drawText, INK, MM_PER_POINT, PAPER, QUIET_INK, useAt } from './figure'
import { workingArrow } from './join-detail'
import { capitalDrop } from './lettering'
import type { ColourwayMark } from './marks'
import { printedOutline } from './motif-parts'
import { motifSymbol } from './motif-symbol'
import { discItems } from './number-disc'
import { boundsOf, circlePath, linePath, polygonPath } from './path'

const TYPE = 9.5
const DIMENSION_GAP = 7.5
const ARROW = arrowEnd(1.5)
const LINE = { stroke: INK, width: 0.25 } as const
/** Radii of the paper under the number of a petal, on colours and in ink. */
const [DISC, BARE_DISC] = [2.3, 1.9]

/** A measure through the centre of a motif, in plan mm. */
export interface Dimension {
  readonly words: string
  readonly length: number
  /** Where the two ends lie on the drawing: at its left and right, at its top and bottom, or on a circle alone. */
  readonly shown: 'across' | 'down' | 'circle'
  /** Where its line begins and ends beside the centre (above or left of it below 0). */
  readonly span: readonly [number, number]
  /** Of a flower: which number of the ruler it is. */
  readonly reading?: { readonly laying: Laying; readonly part: keyof Readings }
}

/** The measures of a motif, the inner ones first: dip to dip and tip to tip, or what its shape is measured by. */
export function motifDimensions(motif: MotifAccount, terms: Terms): Dimension[] {
  const through = (length: number): Pick<Dimension, 'length' | 'span'> => ({
    length,
    span: [-length / 2, length / 2],
  })
  if (motif.shape === 'round') return [{ words: 'across', ...through(motif.overTips), shown: 'across' }]
  if (motif.shape === 'leaf') {
    const { width, height } = boundsOf(motif.outline)
    return [
      { words: 'width', ...through(width), shown: 'across' },
      { words: stands(motif) ? 'height' : 'length', ...through(height), shown: 'down' },
    ]
  }
  if (motif.shape === 'straight') {
    // A hexagon has a corner at 12 o'clock, squares and octagons stand on a side.
    const pointed = motif.petals === 6
    return [
      { words: 'side to side', ...through(motif.overValleys), shown: 'across' },
      { words: 'point to point', ...through(motif.overTips), shown: pointed ? 'down' : 'circle' },
    ]
  }
  const laying = layingOfAccount(motif)
  const words = rulerWords(laying, terms)
  const lead = { words: words.lead, reading: { laying, part: 'lead' } } as const
  const second = { words: words.second, reading: { laying, part: 'second' } } as const
  const [tip, dip] = [motif.overTips / 2, motif.overValleys / 2]
  if (laying !== 'across') {
    // The first tip is at 12 o'clock, and a dip right under it.
    const end = laying === 'opposite' ? dip : 0
    return [
      { ...second, length: dip, shown: 'circle', span: [0, dip] },
      { ...lead, length: tip + end, shown: 'down', span: [-tip, end] },
    ]
  }
  // The first tip is at 12 o'clock: the last lies opposite, and dips lie at 3 and 9
  // o'clock when they are two more than a multiple of four.
  return [
    { ...second, ...through(motif.overValleys), shown: motif.petals % 4 === 2 ? 'across' : 'circle' },
    { ...lead, ...through(motif.overTips), shown: 'down' },
  ]
}

/** A horizontal dimension line with its words in a gap in the middle, or, where it is short, from `beside` on. */
function lineAcross(
  x1: number,
  x2: number,
  y: number,
  words: string,
  measure: MeasureText,
  beside: number,
): FigureItem[] {
  const middle = (x1 + x2) / 2
  const width = measure(words, TYPE, 'regular') + 3
  const inside = width < x2 - x1 - 6
  const drop = capitalDrop(TYPE)
  const gap = inside ? ([middle - width / 2 - x1, middle + width / 2 - x1] as const) : null
  return [
    drawPath(dimensionPath({ x: x1, y }, { x: x2, y }, { end: ARROW, gap }), LINE),
    inside
      ? drawText(words, middle, y + drop, TYPE, { anchor: 'middle' })
      : drawText(words, beside, y + drop, TYPE),
  ]
}

/** A vertical dimension line, its words on two lines in a gap in the middle or, where it is short, below it. */
function lineDown(x: number, y1: number, y2: number, words: readonly [string, string]): FigureItem[] {
  const line = TYPE * 1.25 * MM_PER_POINT
  const middle = (y1 + y2) / 2
  const inside = y2 - y1 > 2 * line + 10
  const gap = inside ? ([middle - line - 1 - y1, middle + line + 1 - y1] as const) : null
  const top = inside ? middle - 0.3 * line : y2 + 1.2 * line
  return [
    drawPath(dimensionPath({ x, y: y1 }, { x, y: y2 }, { end: ARROW, gap }), LINE),
    drawText(words[0], x, top, TYPE, { anchor: 'middle' }),
    drawText(words[1], x, top + line, TYPE, { anchor: 'middle' }),
  ]
}

const QUIET_LINE = { stroke: QUIET_INK, width: 0.18, dash: [0.9, 0.9] } as const

const extension = (x1: number, y1: number, x2: number, y2: number): FigureItem =>
  drawPath(linePath(x1, y1, x2, y2), QUIET_LINE)

interface MotifFigureOptions {
  readonly width: number
  /** Largest printed size of the motif in mm; it is never larger than life. */
  readonly across: number
  readonly units: UnitSystem
  readonly terms: Terms
  readonly hand: Hand
  readonly mark: ColourwayMark | null
  readonly look: 'ink' | 'colour'
  readonly measure: MeasureText
}

/** mm. The dimension line at the right stands so far from the motif, further where its words are wide, with as much air. */
const ASIDE = 11
const WORDS_AIR = 2.5
/** Least room for the dimension line at the right of the motif. */
const RIGHT_ROOM = 20

/** The motif in the middle of the figure's width, with dimension lines below it and at its right. */
export function motifFigure(
  motif: MotifAccount,
  options: MotifFigureOptions,
): Figure & { readonly scale: number } {
  const box = boundsOf(motif.outline)
  const dimensions = motifDimensions(motif, options.terms)
  const upright = dimensions
    .filter(({ shown }) => shown === 'down')
    .map(({ words }) => options.measure(words, TYPE, 'regular') / 2)
  const aside = Math.max(ASIDE, ...upright.map((half) => half + WORDS_AIR))
  const right = upright.length > 0 ? Math.max(RIGHT_ROOM, ...upright.map((half) => aside + half)) : 0
  const room = Math.min(options.across, options.width - right)
  // A circle over the corners of a square is wider than the square itself.
  const widest = 2 * Math.max(...dimensions.map((line) => (line.shown === 'circle' ? line.span[1] : 0)))
  const scale = Math.min(
    1,
    room / Math.max(box.width, 1),
    (options.width - right) / Math.max(widest, 1),
    options.across / Math.max(box.height, 1),
  )
  const centre = { x: (options.width - right) / 2, y: 0 }
  const rim = (widest / 2) * scale
  centre.y = Math.max(-box.y * scale, rim) + 1
  const bottom = centre.y + Math.max((box.y + box.height) * scale, rim)
  const look = options.look === 'ink' ? 'plain' : 'colour'
  const symbol = motifSymbol(motif, { scale, turn: 0, look, mark: options.mark, disc: 0 })
  const items: FigureItem[] = [useAt(symbol, centre.x, centre.y)]
  if (look === 'plain') items.push(...sections(motif, scale, centre))
  if (motif.shape !== 'leaf') items.push(...workingArrow(centre.x, centre.y, 2.6, options.hand))
  const measured: FigureItem[] = []
  let y = bottom
  // Clear of the extension lines of every dimension below it.
  const level = dimensions.flatMap((line) => (line.shown === 'down' ? [] : [line.span[1] * scale]))
  const beside = centre.x + Math.max(0, ...level) + 2.5
  for (const line of dimensions) {
    const { words, length, shown, span } = line
    const [from, to] = span.map((mm) => mm * scale) as [number, number]
    const told = formatMeasure(length, options.units)
    if (shown === 'down') {
      const [top, end] = [centre.y + from, centre.y + to]
      const x = centre.x + Math.max((box.x + box.width) * scale, rim) + aside
      measured.push(extension(centre.x, top, x + 1.5, top), extension(centre.x, end, x + 1.5, end))
      measured.push(...lineDown(x, top, end, [words, told]))
      continue
    }
    if (shown === 'circle') measured.push(drawPath(circlePath(centre.x, centre.y, to), QUIET_LINE))
    y += DIMENSION_GAP
    const [x1, x2] = [centre.x + from, centre.x + to]
    measured.push(extension(x1, centre.y, x1, y + 1.5), extension(x2, centre.y, x2, y + 1.5))
    measured.push(...lineAcross(x1, x2, y, `${words} ${told}`, options.measure, beside))
  }
  // The numbers stand on paper of their own, over the extension lines that run between the petals.
  items.push(...measured.filter(({ kind }) => kind !== 'text'))
  items.push(...petalNumbers(motif, scale, centre, look === 'colour'))
  items.push(...measured.filter(({ kind }) => kind === 'text'))
  return { width: options.width, height: y + 3, items, scale }
}

/** The borders between colours, as thin lines. */
function sections(motif: MotifAccount, scale: number, centre: { x: number; y: number }): FigureItem[] {
  return motif.layers.slice(0, -1).map((layer) =>
    drawPath(
      polygonPath(
        printedOutline(layer.outline, { turn: 0, scale }).map((p) => ({
          x: p.x + centre.x,
          y: p.y + centre.y,
        })),
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
  return numberedPlaces(motif).flatMap(({ anchor, number }): FigureItem[] => {
    const reach = Math.hypot(anchor.x, anchor.y) * scale || 1
    const share = Math.max(0.6, (reach - 5) / reach) * scale
    const x = centre.x + anchor.x * share
    const y = centre.y + anchor.y * share
    const text = drawText(String(number), x, y + capitalDrop(TYPE), TYPE, { anchor: 'middle' })
    // In ink the borders between colours would run through it.
    const ground = onDisc
      ? discItems(x, y, DISC, [])
      : [drawPath(circlePath(x, y, BARE_DISC), { fill: PAPER })]
    return [...ground, text]
  })
}
