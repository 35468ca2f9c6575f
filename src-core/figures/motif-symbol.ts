/** One motif as a symbol: a symbol for each motif, colourway and turn, so that textures keep their direction. */
import type { MotifAccount, PlacedMotif, Plan } from '../../shared-types/plan'
import type { Bounds, FigureItem, FigureSymbol } from './figure'
import { drawPath, INK, PAPER } from './figure'
import type { ColourwayMark } from './marks'
import { lineOn, UNKNOWN_COLOUR } from './marks'
import { printedOutline } from './motif-parts'
import type { Lay } from './motif-parts'
import { discItems, RING_WIDTH } from './number-disc'
import { boundsOf, polygonPath } from './path'
import { textureItems } from './textures'

type MotifLook = 'ink' | 'colour' | 'plain'

interface MotifSymbolOptions extends Lay {
  readonly look: MotifLook
  readonly mark: ColourwayMark | null
  /** Radius of the white disc under the number, in printed mm; 0 for none. */
  readonly disc: number
  /** Parts that are shown as rings round the disc, the outermost first. */
  readonly rings?: readonly string[] | undefined
}

/** Line widths of the outline in printed mm, for motifs from small to large: hairlines of 0.18 mm survive copying. */
const outlineWidth = (across: number): number => Math.min(0.32, Math.max(0.18, across * 0.022))

/** The colours of some parts in a colourway. */
export const slotColours = (mark: ColourwayMark | null, slots: readonly string[]): string[] =>
  slots.map((slot) => mark?.slots.find((each) => each.slot === slot)?.colour ?? UNKNOWN_COLOUR)

function colourItems(motif: MotifAccount, options: MotifSymbolOptions, width: number): FigureItem[] {
  const colours = new Map(options.mark?.slots.map((slot) => [slot.slot, slot.colour]))
  const items: FigureItem[] = []
  motif.layers.forEach((layer, i) => {
    const path = polygonPath(printedOutline(layer.outline, options))
    const fill = colours.get(layer.slot) ?? UNKNOWN_COLOUR
    const below = colours.get(motif.layers[i - 1]?.slot ?? '') ?? PAPER
    items.push(drawPath(path, i === 0 ? { fill } : { fill, stroke: lineOn(fill, below), width: width * 0.6 }))
  })
  return items
}

/** The symbol of a motif about its centre. */
export function motifSymbol(motif: MotifAccount, options: MotifSymbolOptions): FigureSymbol {
  const { scale, turn, look, mark, disc, rings = [] } = options
  const outline = printedOutline(motif.outline, options)
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

/** How a copy of a motif lies, and which half of it is there. */
type CopyLay = Pick<Lay, 'flipped' | 'half'>

/** Makes motif symbols at one scale and gives the same object for the same motif, colourway and lie. */
export class MotifSymbols {
  private readonly made = new Map<string, FigureSymbol>()

  constructor(
    private readonly motif: MotifAccount,
    private readonly marks: ReadonlyMap<string, ColourwayMark>,
    private readonly options: Pick<MotifSymbolOptions, 'scale' | 'look' | 'disc' | 'rings' | 'stretch'>,
  ) {}

  /** The symbol for a colourway and a turn in degrees; halves carry no number. */
  get(colourway: string, turn: number, { flipped, half }: CopyLay = {}): FigureSymbol {
    const key = JSON.stringify([colourway, turn, flipped, half])
    const found = this.made.get(key)
    if (found) return found
    const mark = this.marks.get(colourway) ?? null
    const disc = half ? 0 : this.options.disc
    const symbol = motifSymbol(this.motif, { ...this.options, disc, turn, mark, flipped, half })
    this.made.set(key, symbol)
    return symbol
  }
}

/** The symbols of everything that a plan of several motifs places, each by its own motif. */
export function placedSymbols(
  { accounts = [] }: Pick<Plan, 'accounts'>,
  marks: readonly ColourwayMark[],
  options: Pick<MotifSymbolOptions, 'scale' | 'look'>,
): (placed: PlacedMotif) => FigureSymbol | undefined {
  const byId = new Map(marks.map((mark) => [mark.id, mark]))
  const symbols = new Map(
    accounts.map((account) => [account.id, new MotifSymbols(account, byId, { ...options, disc: 0 })]),
  )
  return ({ motif = '', colourway, turn, flipped }) => symbols.get(motif)?.get(colourway, turn, { flipped })
}
