/** Labels on motifs: working numbers and the letters of colourways, readable on whatever yarn they stand. */
import type { MotifAccount, PlacedMotif, Point } from '../../shared-types/plan'
import { DETAIL } from '../../src-core/figures/detail'
import { CAPITAL_HEIGHT, FIGURE_WIDTH } from '../../src-core/figures/lettering'
import { laidOutline } from '../../src-core/figures/motif-parts'
import { halfSeats, seatTowards } from '../../src-core/figures/seats'
import { placePoint } from '../../src-core/geometry/place'
import { contains, reachOf } from '../../src-core/geometry/points'
import { clamp, lieOf } from './pen'
import { write } from './canvas'
import type { Lettering, Pen } from './canvas'
import type { Copy, Placing } from './pen'
import type { MotifKind, Picture } from './picture'
import type { LayerInk } from './yarn-inks'

/** What carries a label. */
type Placed = Copy & Pick<PlacedMotif, 'label' | 'colourway'>

/** Labels: height as a share of the motif, within these CSS pixels; the smallest one in a half motif. */
const LABEL = { share: 0.19, least: 8.5, most: 22, smallest: 6.5 } as const

/** Distance of a leaf's letter from its middle, as a share of its length. */
const LEAF_SEAT = 0.24

/** Of the height of a label: half of a figure, and from the middle of a number to that of the letter below it. */
const FIGURE = CAPITAL_HEIGHT / 2
const LETTER_BELOW = 1.02
/** Between a number and its letter, as a share of both. */
const AIR = 1.4
/** A letter beside its number. */
const LETTER_SIZE = 0.9

/** Where a letter stands, and the layer that it stands on. */
interface LetterSeat extends Point {
  readonly layer: number
}

/** The working number in the middle, and the colourway's letter on a petal below it where there is room. */
export function paintLabels(
  pen: Pen,
  picture: Picture,
  placing: Placing,
  placed: readonly Placed[],
  { account, inks }: MotifKind,
  size: number,
): void {
  const { scale, ratio, x, y } = placing
  const { face } = picture.palette
  const both = size >= DETAIL.letter
  const height = clamp(size * LABEL.share, LABEL.least, LABEL.most) * ratio
  const seats = new Map<number, LetterSeat>()
  pen.setTransform(1, 0, 0, 1, x, y)
  for (const motif of placed) {
    const ink = inks.get(motif.colourway) ?? inks.get('')
    const heart = ink?.layers[ink.layers.length - 1]
    if (!ink || !heart) continue
    const middle = { x: motif.x * scale, y: motif.y * scale }
    write(pen, motif.label, middle, lettering(heart, 600, height, height, face))
    if (!both || !ink.letter) continue
    const lie = lieOf(motif)
    let seat = seats.get(lie)
    if (!seat) seats.set(lie, (seat = letterSeat(account, motif)))
    const { width: across, height: down } = picture.stretch
    const at = { x: middle.x + seat.x * across * scale, y: middle.y + seat.y * down * scale }
    write(pen, ink.letter, at, lettering(ink.layers[seat.layer]!, 400, height * LETTER_SIZE, height, face))
  }
}

/** Share of the room in a half motif that a label may take across (by eye). */
const HALF_ROOM = 1.8

/** Number over letter in the middle of what is there of each half motif, as large as fits. */
export function paintHalfLabels(
  pen: Pen,
  picture: Picture,
  placing: Placing,
  halves: readonly (Placed & { readonly side: 'left' | 'right' })[],
  { account, inks }: MotifKind,
  size: number,
): void {
  const { scale, ratio, x, y } = placing
  const { width, height: down } = picture.stretch
  const wished = clamp(size * LABEL.share, LABEL.least, LABEL.most) * ratio
  pen.setTransform(1, 0, 0, 1, x, y)
  for (const half of halves) {
    const ink = inks.get(half.colourway) ?? inks.get('')
    if (!ink) continue
    const { middle } = halfSeats(account, half, { x: width, y: down })
    const room = HALF_ROOM * middle.room * scale
    const height = Math.min(wished, room / (Math.max(2, half.label.length) * FIGURE_WIDTH))
    if (height < LABEL.smallest * ratio) continue
    const isLettered = size >= DETAIL.letter && ink.letter !== ''
    const lift = isLettered ? (LETTER_BELOW * height) / 2 : 0
    const line = (text: string, off: number, weight: 400 | 600, font: number): void => {
      const place = { x: middle.x / width, y: (middle.y + off / scale) / down }
      const at = { x: (half.x + middle.x) * scale, y: (half.y + middle.y) * scale + off }
      const layer = layerAt(account, { ...half, flipped: false }, place)
      write(pen, text, at, lettering(ink.layers[layer]!, weight, font, height, picture.palette.face))
    }
    line(half.label, -lift, 600, height)
    if (isLettered) line(ink.letter, lift, 400, height * LETTER_SIZE)
  }
}

/** The colourway's letter alone, in the middle. */
export function paintLetter(
  pen: Pen,
  picture: Picture,
  { scale, ratio, x, y }: Placing,
  motif: PlacedMotif,
  { inks }: MotifKind,
  size: number,
): void {
  const ink = inks.get(motif.colourway)
  const heart = ink?.layers[ink.layers.length - 1]
  if (!ink?.letter || !heart) return
  const height = clamp(size * LABEL.share, LABEL.least, LABEL.most) * ratio
  pen.setTransform(1, 0, 0, 1, x, y)
  const at = { x: motif.x * scale, y: motif.y * scale }
  write(pen, ink.letter, at, lettering(heart, 400, height, height, picture.palette.face))
}

/** Letters in a hem of the yarn's own colour: they stay readable where they reach over an edge. */
const lettering = (
  ink: LayerInk,
  weight: 400 | 600,
  size: number,
  height: number,
  face: string,
): Lettering => ({
  ...{ font: `${weight} ${size}px ${face}`, colour: ink.text, hem: ink.fill, hemWidth: height * 0.22 },
})

/** The layer that shows at a place about the centre of a motif as it lies. */
function layerAt({ layers }: MotifAccount, { turn, flipped }: Copy, place: Point): number {
  const shown = layers.findLastIndex(({ outline }) =>
    contains(laidOutline(outline, { turn, flipped, scale: 1 }), place),
  )
  return Math.max(0, shown)
}

/** Where the letter stands, in mm from the centre: on the petal (corner) that points down most, off every line. */
function letterSeat(account: MotifAccount, copy: Copy): LetterSeat {
  const { turn, flipped = false } = copy
  const on = (at: Point): LetterSeat => ({ x: at.x, y: at.y, layer: layerAt(account, copy, at) })
  if (account.shape === 'leaf') {
    // Along the leaf, towards whichever end points down.
    const end = placePoint({ x: 0, y: account.overTips * LEAF_SEAT }, { x: 0, y: 0, turn, flipped })
    return on(end.y >= 0 ? end : { x: -end.x, y: -end.y })
  }
  const across = account.overTips
  const tips = account.shape === 'petals' ? account.anchors.filter(({ kind }) => kind === 'tip') : []
  const lowest = tips
    .map((tip) => placePoint(tip, { x: 0, y: 0, turn, flipped }))
    .reduce((best, tip) => (tip.y > best.y + 1e-6 ? tip : best), { x: 0, y: 0 })
  const edge = lowest.y > 0 ? lowest : { x: 0, y: reachOf(account.outline) }
  const layers = account.layers.map(({ outline }) => laidOutline(outline, { turn, flipped, scale: 1 }))
  const from = LABEL.share * across * FIGURE * (1 + LETTER_SIZE) * AIR
  return on(seatTowards(layers, edge, from, across))
}
