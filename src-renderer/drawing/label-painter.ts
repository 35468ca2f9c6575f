/** Labels on motifs: working numbers and the letters of colourways, readable on whatever yarn they stand. */
import type { MotifAccount, PlacedMotif, Point } from '../../shared-types/plan'
import { DETAIL } from '../../src-core/figures/detail'
import { placePoint } from '../../src-core/geometry/place'
import { reachOf } from '../../src-core/geometry/points'
import { clamp, lieOf } from './pen'
import { write } from './canvas'
import type { Lettering, Pen } from './canvas'
import type { Copy, Placing } from './pen'
import type { MotifKind, Picture } from './picture'
import type { LayerInk } from './yarn-inks'

/** Labels: height as a share of the motif, within these CSS pixels. */
const LABEL = { share: 0.19, least: 8.5, most: 22 } as const

/** Distance of a leaf's letter from its middle, as a share of its length. */
const LEAF_SEAT = 0.24

/** The working number in the middle, and the colourway's letter on a petal below it where there is room. */
export function paintLabels(
  pen: Pen,
  picture: Picture,
  placing: Placing,
  indices: readonly number[],
  { account, inks }: MotifKind,
  size: number,
): void {
  const { scale, ratio, x, y } = placing
  const { face } = picture.palette
  const both = size >= DETAIL.letter
  const height = clamp(size * LABEL.share, LABEL.least, LABEL.most) * ratio
  const seats = new Map<number, Point>()
  pen.setTransform(1, 0, 0, 1, x, y)
  for (const index of indices) {
    const motif = picture.motifs[index]!
    const ink = inks.get(motif.colourway) ?? inks.get('')
    const heart = ink?.layers[ink.layers.length - 1]
    if (!ink || !heart) continue
    const middle = { x: motif.x * scale, y: motif.y * scale }
    write(pen, motif.label, middle, lettering(heart, 600, height, height, face))
    if (!both || !ink.letter) continue
    const lie = lieOf(motif)
    let seat = seats.get(lie)
    if (!seat) seats.set(lie, (seat = letterSeat(account, motif)))
    const at = { x: middle.x + seat.x * scale, y: middle.y + seat.y * scale }
    write(pen, ink.letter, at, lettering(ink.layers[0]!, 400, height * 0.9, height, face))
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

/** Where the letter stands, in mm from the centre: in the middle of the petal (corner) that points down most. */
function letterSeat(account: MotifAccount, { turn, flipped = false }: Copy): Point {
  const inner = account.layers[1] ? reachOf(account.layers[1].outline) : account.overValleys * 0.16
  const tips = account.anchors.filter(({ kind }) => kind === 'tip')
  const radius = (inner + account.overTips / 2) / 2
  if (account.shape === 'leaf') {
    // Along the leaf, towards whichever end points down.
    const end = placePoint({ x: 0, y: account.overTips * LEAF_SEAT }, { x: 0, y: 0, turn, flipped })
    return end.y >= 0 ? end : { x: -end.x, y: -end.y }
  }
  if (account.shape !== 'petals' || tips.length === 0)
    return { x: 0, y: (inner + account.overValleys / 2) / 2 }
  const lowest = tips
    .map((tip) => placePoint(tip, { x: 0, y: 0, turn, flipped }))
    .reduce((best, tip) => (tip.y > best.y + 1e-6 ? tip : best))
  const length = Math.hypot(lowest.x, lowest.y) || 1
  return { x: (lowest.x / length) * radius, y: (lowest.y / length) * radius }
}
