/** One motif as a symbol: a symbol for each motif, colourway and turn, so that textures keep their direction. */
import type { MotifAccount, PlacedHalf, Point } from '../../shared-types/plan'
import { halfOutline } from '../geometry/half'
import { simplify } from '../geometry/simplify'
import type { Bounds, FigureItem, FigureSymbol } from './figure'
import { drawPath, INK, PAPER } from './figure'
import type { ColourwayMark } from './marks'
import { luminance, UNKNOWN_COLOUR } from './marks'
import { discItems, RING_WIDTH } from './number-disc'
import { boundsOf, polygonPath, turnAndScale } from './path'
import { textureItems } from './textures'

type MotifLook = 'ink' | 'colour' | 'plain'

/** Factors across and down the whole work. */
export interface Stretch {
  readonly x: number
  readonly y: number
}

/** The half of a motif that lies left or right of the vertical through its centre. */
type Half = 'left' | 'right'

/** The part that a half motif is: the one away from the edge at which it stands. */
export const keptHalf = ({ side }: Pick<PlacedHalf, 'side'>): Half => (side === 'left' ? 'right' : 'left')

interface MotifSymbolOptions {
  /** Printed mm per plan mm. */
  readonly scale: number
  readonly turn: number
  readonly look: MotifLook
  readonly mark: ColourwayMark | null
  /** How blocking stretches the whole work across and down; 1 where it does not. */
  readonly stretch?: Stretch
  /** Which half of the motif is drawn, as it lies; both where it is left out. */
  readonly half?: Half | undefined
  /** Radius of the white disc under the number, in printed mm; 0 for none. */
  readonly disc: number
  /** Parts that are shown as rings round the disc, the outermost first. */
  readonly rings?: readonly string[] | undefined
}

/** Line widths of the outline in printed mm, for motifs from small to large: hairlines of 0.18 mm survive copying. */
const outlineWidth = (across: number): number => Math.min(0.32, Math.max(0.18, across * 0.022))

/** The largest distance from the true outline that a simplified one may have on paper, in mm. */
const PRINT_TOLERANCE = 0.015

/** The outline of a motif at its printed size, turned, with no more corners than print can show. */
export function printedOutline(
  outline: readonly Point[],
  turn: number,
  scale: number,
  stretch: Stretch = { x: 1, y: 1 },
): Point[] {
  const turned = turnAndScale(simplify(outline, PRINT_TOLERANCE / scale), turn, scale)
  if (stretch.x === 1 && stretch.y === 1) return turned
  return turned.map((p) => ({ x: p.x * stretch.x, y: p.y * stretch.y }))
}

/** The printed outline of what is drawn: of the whole motif, or of one half. */
function shown(outline: readonly Point[], options: MotifSymbolOptions): readonly Point[] {
  const printed = printedOutline(outline, options.turn, options.scale, options.stretch)
  return options.half ? halfOutline(printed, options.half) : printed
}

/** The colours of some parts in a colourway. */
export const slotColours = (mark: ColourwayMark | null, slots: readonly string[]): string[] =>
  slots.map((slot) => mark?.slots.find((each) => each.slot === slot)?.colour ?? UNKNOWN_COLOUR)

function colourItems(motif: MotifAccount, options: MotifSymbolOptions, width: number): FigureItem[] {
  const colours = new Map(options.mark?.slots.map((slot) => [slot.slot, slot.colour]))
  const items: FigureItem[] = []
  motif.layers.forEach((layer, i) => {
    const path = polygonPath(shown(layer.outline, options))
    const fill = colours.get(layer.slot) ?? UNKNOWN_COLOUR
    const below = colours.get(motif.layers[i - 1]?.slot ?? '') ?? PAPER
    const stroke = Math.max(luminance(fill), luminance(below)) < 0.06 ? '#9a9a9a' : INK
    items.push(drawPath(path, i === 0 ? { fill } : { fill, stroke, width: width * 0.6 }))
  })
  return items
}

/** The symbol of a motif about its centre. */
export function motifSymbol(motif: MotifAccount, options: MotifSymbolOptions): FigureSymbol {
  const { scale, turn, look, mark, disc, rings = [] } = options
  const outline = shown(motif.outline, options)
  const path = polygonPath(outline)
  const box = boundsOf(outline)
  const across = motif.overTips * scale
  const width = outlineWidth(across)
  const items: FigureItem[] = []
  if (look === 'colour') items.push(...colourItems(motif, options, width))
  if (look !== 'colour') items.push(drawPath(path, { fill: PAPER }))
  if (look === 'ink' && mark) {
    const texture = textureItems(mark.texture, box, across)
    if (texture.length > 0) items.push({ kind: 'group', clip: path, items: texture })
  }
  items.push(drawPath(path, { stroke: INK, width }))
  if (disc > 0) items.push(...discItems(0, 0, disc, slotColours(mark, rings)))
  const reach = Math.max(disc, 0) + rings.length * RING_WIDTH + 0.075
  const bounds = union(boundsOf(outline, width / 2), disc > 0 ? reach : 0)
  const name = [motif.id, mark?.id ?? '', turn, look, options.half ?? (disc > 0 ? 'numbered' : 'bare')].join(
    '/',
  )
  return { id: `${name}@${scale.toFixed(4)}`, bounds, items }
}

function union(box: Bounds, radius: number): Bounds {
  const left = Math.min(box.x, -radius)
  const top = Math.min(box.y, -radius)
  const right = Math.max(box.x + box.width, radius)
  const bottom = Math.max(box.y + box.height, radius)
  return { x: left, y: top, width: right - left, height: bottom - top }
}

/** Makes motif symbols at one scale and gives the same object for the same motif, colourway and turn. */
export class MotifSymbols {
  private readonly made = new Map<string, FigureSymbol>()

  constructor(
    private readonly motif: MotifAccount,
    private readonly marks: ReadonlyMap<string, ColourwayMark>,
    private readonly options: Pick<MotifSymbolOptions, 'scale' | 'look' | 'disc' | 'rings' | 'stretch'>,
  ) {}

  /** The symbol for a colourway and a turn in degrees; halves carry no number. */
  get(colourway: string, turn: number, half?: Half): FigureSymbol {
    const key = `${colourway}|${turn}|${half ?? ''}`
    const found = this.made.get(key)
    if (found) return found
    const mark = this.marks.get(colourway) ?? null
    const disc = half ? 0 : this.options.disc
    const symbol = motifSymbol(this.motif, { ...this.options, disc, turn, mark, half })
    this.made.set(key, symbol)
    return symbol
  }
}
