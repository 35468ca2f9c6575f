/**
 * Paints a part of a picture on a canvas: edging, motifs, join marks, labels. Motifs share one path for each
 * layer; colours are set once for each colourway, and what is too small to be seen is not drawn.
 */
import type { MotifAccount, Point } from '../../shared-types/plan'
import { placePoint } from '../../src-core/geometry/place'
import { reachOf } from '../../src-core/geometry/points'
import type { Box } from '../../src-core/geometry/points'
import { keptHalf } from '../../src-core/figures/motif-symbol'
import { radians } from '../../src-core/units/quantity'
import type { MotifArt } from './motif-art'
import { paintForeground, paintGround } from './ground-painter'
import { kindOf } from './picture'
import type { MotifKind, Picture } from './picture'
import type { ColourwayInk, Inks, LayerInk } from './yarn-inks'

/** What of a canvas the painter uses. */
export type Pen = Pick<
  CanvasRenderingContext2D,
  | 'setTransform'
  | 'fill'
  | 'stroke'
  | 'beginPath'
  | 'moveTo'
  | 'lineTo'
  | 'closePath'
  | 'arc'
  | 'rect'
  | 'clip'
  | 'save'
  | 'restore'
  | 'clearRect'
  | 'fillText'
  | 'strokeText'
  | 'fillStyle'
  | 'strokeStyle'
  | 'lineWidth'
  | 'lineJoin'
  | 'lineCap'
  | 'font'
  | 'textAlign'
  | 'textBaseline'
  | 'globalAlpha'
  | 'setLineDash'
>

/** How the canvas lies on the plan: device pixels per mm, and where the plan's origin falls, in device pixels. */
export interface Placing {
  readonly scale: number
  readonly x: number
  readonly y: number
  /** Device pixels per CSS pixel. */
  readonly ratio: number
}

/** From which size of a motif on screen (CSS pixels, tip to tip) things are drawn. */
export const DETAIL = {
  contour: 16,
  joins: 10,
  petals: 30,
  rounds: 48,
  number: 30,
  letter: 56,
} as const

/** Join marks: radius as a share of the motif, within these CSS pixels. */
const JOIN_MARK = { share: 0.034, least: 0.9, most: 5 } as const
/** Contours: width as a share of the motif, within these CSS pixels. */
const CONTOUR = { share: 0.012, least: 0.7, most: 1.6 } as const

/** Labels: height as a share of the motif, within these CSS pixels. */
const LABEL = { share: 0.19, least: 8.5, most: 22 } as const

/** Distance of a leaf's letter from its middle, as a share of its length. */
const LEAF_SEAT = 0.24

const clamp = (value: number, least: number, most: number) => Math.min(most, Math.max(least, value))

/** Paints everything of `picture` that meets `box` (mm). The canvas is taken to be clear there. */
export function paintMap(pen: Pen, picture: Picture, placing: Placing, box: Box): void {
  const { main, ranks } = picture
  if (!main && !picture.ground) return
  const indices = picture.hit.meeting(box)
  if (picture.ground) paintGround(pen, picture.ground, placing, picture.palette)
  if (ranks) paintPile(pen, picture, placing, indices, ranks)
  else if (main) paintBlanket(pen, picture, main, placing, box, indices)
  if (picture.ground) paintForeground(pen, picture.ground, placing, picture)
  pen.setTransform(1, 0, 0, 1, 0, 0)
}

function paintBlanket(
  pen: Pen,
  picture: Picture,
  main: MotifKind,
  placing: Placing,
  box: Box,
  indices: readonly number[],
): void {
  const style = styleOf(main, placing, picture.showLabels)
  const { size } = style
  paintEdging(pen, picture, placing)
  paintAdditions(pen, picture, placing, box, { ...style, numbered: false })
  paintMotifs(pen, picture, placing, indices, main, style)
  if (picture.showJoins && size >= DETAIL.joins) paintJoins(pen, picture, placing, box, size)
  if (picture.showLabels && size >= DETAIL.number) paintLabels(pen, picture, placing, indices, main, size)
}

/** One after the other from the lowest: what lies above covers lines and number of what lies below. */
function paintPile(
  pen: Pen,
  picture: Picture,
  placing: Placing,
  indices: readonly number[],
  ranks: readonly number[],
): void {
  const styles = new Map<MotifKind, Style>()
  for (const index of [...indices].sort((a, b) => ranks[a]! - ranks[b]!)) {
    const motif = picture.motifs[index]!
    const kind = kindOf(picture, motif)
    if (!kind) continue
    let style = styles.get(kind)
    if (!style) styles.set(kind, (style = styleOf(kind, placing, picture.showLabels)))
    const ink = kind.inks.get(motif.colourway) ?? kind.inks.get('')
    paintCopies(pen, picture, placing, [motif], ink, style)
    if (picture.showLabels && style.size >= DETAIL.number)
      paintLabels(pen, picture, placing, [index], kind, style.size)
  }
}

/** How many paths `paintMap` draws for a number of motifs: what a frame costs. */
export function paintCost(picture: Picture, scale: number, motifs: number): number {
  let most = 0
  for (const { account } of picture.kinds.values()) {
    const size = account.overTips * scale
    const each = account.layers.length * (size >= DETAIL.contour ? 2 : 1) + (size >= DETAIL.petals ? 2 : 0)
    most = Math.max(most, each)
  }
  return motifs * most
}

/** A copy of a motif: a placed motif, a filler or the whole that a half motif is cut from. */
interface Copy {
  readonly x: number
  readonly y: number
  readonly turn: number
  readonly flipped?: boolean
}

/** What copies of one motif are drawn with. */
interface Style {
  readonly art: MotifArt
  /** CSS pixels, tip to tip. */
  readonly size: number
  /** Numbers stand in the middle: the innermost round is left out. */
  readonly numbered: boolean
}

const styleOf = ({ account, artist }: MotifKind, { scale, ratio }: Placing, numbered: boolean): Style => ({
  art: artist.at(scale),
  size: (account.overTips * scale) / ratio,
  numbered,
})

function paintMotifs(
  pen: Pen,
  picture: Picture,
  placing: Placing,
  indices: readonly number[],
  { inks }: MotifKind,
  style: Style,
): void {
  for (const [colourway, members] of byColourway(picture, inks, indices)) {
    const copies = members.map((index) => picture.motifs[index]!)
    paintCopies(pen, picture, placing, copies, inks.get(colourway), style)
  }
}

/** Fillers in the openings, and half motifs cut off at the sides. */
function paintAdditions(pen: Pen, picture: Picture, placing: Placing, box: Box, style: Style): void {
  const { plan, filler, main } = picture
  const within = ({ x, y }: Copy, reach: number) =>
    x > box.left - reach && x < box.right + reach && y > box.top - reach && y < box.bottom + reach
  if (filler) {
    const own = styleOf(filler, placing, false)
    const seen = plan.fillers.filter((one) => within(one, filler.account.overTips))
    for (const colourway of new Set(seen.map((one) => one.colourway))) {
      const copies = seen.filter((one) => one.colourway === colourway)
      paintCopies(pen, picture, placing, copies, filler.inks.get(colourway) ?? filler.inks.get(''), own)
    }
  }
  if (!main) return
  const reach = main.account.overTips * Math.max(picture.stretch.width, picture.stretch.height)
  for (const half of plan.halves) {
    if (!within(half, reach)) continue
    const ink = main.inks.get(half.colourway) ?? main.inks.get('')
    pen.save()
    pen.setTransform(placing.scale, 0, 0, placing.scale, placing.x, placing.y)
    pen.beginPath()
    pen.rect(keptHalf(half) === 'right' ? half.x : half.x - reach, half.y - reach, reach, 2 * reach)
    pen.clip()
    paintCopies(pen, picture, placing, [half], ink, { ...style, numbered: false })
    pen.restore()
  }
}

function paintCopies(
  pen: Pen,
  picture: Picture,
  placing: Placing,
  copies: readonly Copy[],
  ink: ColourwayInk | undefined,
  { art, size, numbered }: Style,
): void {
  if (!ink || copies.length === 0) return
  const { scale, ratio } = placing
  const matrices = new Map<number, Matrix>()
  pen.lineJoin = 'round'
  pen.lineCap = 'round'
  const width = (clamp(size * CONTOUR.share, CONTOUR.least, CONTOUR.most) * ratio) / scale
  const each = (draw: () => void) => {
    for (const copy of copies) {
      const key = lieOf(copy)
      let m = matrices.get(key)
      if (!m) matrices.set(key, (m = matrixOf(picture.stretch, copy, scale)))
      pen.setTransform(m.a, m.b, m.c, m.d, copy.x * scale + placing.x, copy.y * scale + placing.y)
      draw()
    }
  }
  art.layers.forEach((path, layer) => {
    const { fill, line } = ink.layers[layer]!
    const lines = layer === 0 ? art.petalLines : null
    const rings = layer === art.layers.length - 1 ? art.centreLines : null
    pen.fillStyle = fill
    pen.strokeStyle = line
    pen.lineWidth = width
    const contour = size >= DETAIL.contour
    const petals = size >= DETAIL.petals && lines !== null
    // The working number stands where the innermost round would be.
    const rounds = size >= DETAIL.rounds && rings !== null && !numbered
    each(() => {
      pen.fill(path)
      if (contour) pen.stroke(path)
      if (petals) pen.stroke(lines)
      if (rounds) pen.stroke(rings)
    })
  })
}

/** Indices by colourway, always in the same order: pieces painted at different times must fit together. */
function byColourway(picture: Picture, inks: Inks, indices: readonly number[]): Map<string, number[]> {
  const groups = new Map<string, number[]>()
  for (const id of inks.keys()) groups.set(id, [])
  for (const index of indices) {
    const { colourway } = picture.motifs[index]!
    groups.get(inks.has(colourway) ? colourway : '')?.push(index)
  }
  return groups
}

interface Matrix {
  readonly a: number
  readonly b: number
  readonly c: number
  readonly d: number
}

/** A number for each way to lie: turns are degrees within a few whole ones. */
const lieOf = ({ turn, flipped }: Copy): number => (flipped ? turn + 1e6 : turn)

/** Mirrored where its wrong side is up, then turned, then stretched as by blocking, then scaled. */
function matrixOf({ width, height }: Picture['stretch'], { turn, flipped }: Copy, scale: number): Matrix {
  const across = flipped ? -1 : 1
  const cos = Math.cos(radians(turn))
  const sin = Math.sin(radians(turn))
  return {
    a: across * cos * width * scale,
    b: across * sin * height * scale,
    c: -sin * width * scale,
    d: cos * height * scale,
  }
}

/** A band outside the line, half hidden under the tips that it is worked into. */
function paintEdging(pen: Pen, picture: Picture, { scale, x, y, ratio }: Placing): void {
  const { edging } = picture
  if (!edging || edging.line.length < 3) return
  const trace = () =>
    edging.line.forEach((point, i) => (i === 0 ? pen.moveTo(point.x, point.y) : pen.lineTo(point.x, point.y)))
  const far = 10 * edging.height
  const { width, height } = picture.plan.size
  pen.save()
  pen.setTransform(scale, 0, 0, scale, x, y)
  pen.beginPath()
  pen.rect(-far, -far, width + 2 * far, height + 2 * far)
  trace()
  pen.closePath()
  pen.clip('evenodd')
  pen.lineJoin = 'round'
  pen.beginPath()
  trace()
  pen.closePath()
  pen.strokeStyle = edging.ink.line
  pen.lineWidth = 2 * edging.height
  pen.stroke()
  pen.strokeStyle = edging.ink.fill
  pen.lineWidth = Math.max(0, 2 * (edging.height - (CONTOUR.least * ratio) / scale))
  pen.stroke()
  pen.restore()
}

function paintJoins(pen: Pen, picture: Picture, placing: Placing, box: Box, size: number): void {
  const { scale, ratio } = placing
  const radius = clamp(size * JOIN_MARK.share, JOIN_MARK.least, JOIN_MARK.most) * ratio
  const margin = (radius + ratio) / scale
  pen.setTransform(1, 0, 0, 1, placing.x, placing.y)
  pen.fillStyle = picture.palette.ink
  pen.beginPath()
  for (const { x, y } of picture.joins) {
    if (x < box.left - margin || x > box.right + margin || y < box.top - margin || y > box.bottom + margin)
      continue
    pen.moveTo(x * scale + radius, y * scale)
    pen.arc(x * scale, y * scale, radius, 0, 2 * Math.PI)
  }
  if (size >= DETAIL.petals) {
    // A hem of paper keeps ink apart from yarn as dark as itself.
    pen.strokeStyle = picture.palette.paper
    pen.lineWidth = 1.5 * ratio
    pen.stroke()
  }
  pen.fill()
}

/** The working number in the middle, and the colourway's letter on a petal below it where there is room. */
function paintLabels(
  pen: Pen,
  picture: Picture,
  placing: Placing,
  indices: readonly number[],
  { account, inks }: MotifKind,
  size: number,
): void {
  const { scale, ratio, x, y } = placing
  const both = size >= DETAIL.letter
  const height = clamp(size * LABEL.share, LABEL.least, LABEL.most) * ratio
  const seats = new Map<number, Point>()
  pen.textAlign = 'center'
  pen.textBaseline = 'middle'
  pen.lineJoin = 'round'
  pen.setTransform(1, 0, 0, 1, x, y)
  for (const index of indices) {
    const motif = picture.motifs[index]!
    const ink = inks.get(motif.colourway) ?? inks.get('')
    const heart = ink?.layers[ink.layers.length - 1]
    if (!ink || !heart) continue
    const middle = { x: motif.x * scale, y: motif.y * scale }
    write(pen, motif.label, middle, heart, `600 ${height}px ${picture.palette.face}`, height)
    if (!both || !ink.letter) continue
    const lie = lieOf(motif)
    let seat = seats.get(lie)
    if (!seat) seats.set(lie, (seat = letterSeat(account, motif)))
    const at = { x: middle.x + seat.x * scale, y: middle.y + seat.y * scale }
    write(pen, ink.letter, at, ink.layers[0]!, `400 ${height * 0.9}px ${picture.palette.face}`, height)
  }
}

/** Letters with a hem in the yarn's own colour: they stay readable where they reach over an edge. */
function write(pen: Pen, text: string, at: Point, ink: LayerInk, font: string, height: number): void {
  pen.font = font
  pen.strokeStyle = ink.fill
  pen.lineWidth = height * 0.22
  pen.strokeText(text, at.x, at.y)
  pen.fillStyle = ink.text
  pen.fillText(text, at.x, at.y)
}

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
