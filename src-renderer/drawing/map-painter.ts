/**
 * Paints a part of a picture on a canvas: edging, motifs, join marks, labels. Motifs share one path for each
 * layer; colours are set once for each colourway, and what is too small to be seen is not drawn.
 */
import type { Plan } from '../../shared-types/plan'
import type { Box } from '../../src-core/geometry/points'
import { DETAIL } from '../../src-core/figures/detail'
import { cornerPlates } from '../../src-core/figures/edging-corners'
import { drawPath, MM_PER_POINT } from '../../src-core/figures/figure'
import type { FigureItem } from '../../src-core/figures/figure'
import { picotLoop } from '../../src-core/figures/edging-shapes'
import { closingDashes } from '../../src-core/figures/closing-line'
import { linePath, polygonPath } from '../../src-core/figures/path'
import { remembered } from '../../src-core/memo'
import { keptHalf } from '../../src-core/figures/motif-parts'
import { mapSize } from '../../src-core/layout/placed'
import type { MotifArt } from './motif-art'
import { groundItems } from './ground'
import { paintHalfLabels, paintLabels, paintLetter } from './label-painter'
import { paintJoins, paintPairs } from './joins-painter'
import { kindOf, kindOfPiece } from './picture'
import type { EdgingStretch, MotifKind, Picture } from './picture'
import type { Palette } from './palette'
import { clamp, layOf, lieOf } from './pen'
import { paintItems, trace, typeIn } from './canvas'
import type { Pen } from './canvas'
import type { Copy, Lay, Placing } from './pen'
import type { ColourwayInk, Inks } from './yarn-inks'

/** Contours: width as a share of the motif, within these CSS pixels. */
const CONTOUR = { share: 0.012, least: 0.7, most: 1.6 } as const

/** Paints everything of `picture` that meets `box` (mm). The canvas is taken to be clear there. */
export function paintMap(pen: Pen, picture: Picture, placing: Placing, box: Box): void {
  const { main, ranks } = picture
  if (!main && !picture.ground) return
  const indices = picture.hit.meeting(box)
  const ground = picture.ground && groundItems(picture.ground, picture, placing)
  if (ground) paintList(pen, ground.under, placing, picture.palette)
  if (ranks) paintPile(pen, picture, placing, indices, ranks)
  else if (main) paintBlanket(pen, picture, main, placing, box, indices)
  if (ground) paintList(pen, ground.over, placing, picture.palette)
  pen.setTransform(1, 0, 0, 1, 0, 0)
}

/** A draw list in device pixels from the plan's origin. */
function paintList(pen: Pen, items: readonly FigureItem[], { x, y, ratio }: Placing, palette: Palette): void {
  pen.setTransform(1, 0, 0, 1, x, y)
  paintItems(pen, items, typeIn(palette, TYPE_HEM * ratio))
}

/** CSS pixels of the hem round the type of a list. */
const TYPE_HEM = 3

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
  const kinds = byKind(picture, main, indices).map(([kind, own]) => ({
    ...{ kind, own },
    style: kind === main ? style : styleOf(kind, placing, picture.showLabels),
  }))
  for (const { kind, own, style } of kinds) paintMotifs(pen, picture, placing, own, kind, style)
  paintClosing(pen, picture, placing)
  if (picture.showJoins && size >= DETAIL.joins) paintJoins(pen, picture, placing, box, size)
  if (picture.showJoins) paintPairs(pen, picture, placing, size)
  for (const { kind, own, style } of kinds)
    if (picture.showLabels && style.size >= DETAIL.number)
      paintLabels(
        pen,
        picture,
        placing,
        own.map((index) => picture.motifs[index]!),
        kind,
        style.size,
      )
  if (picture.showLabels) labelAdditions(pen, picture, placing, box)
  if (picture.showCorners) paintCorners(pen, picture, placing)
}

/** The motifs of a blanket by kind: all of one, where it has but one. */
function byKind(
  picture: Picture,
  main: MotifKind,
  indices: readonly number[],
): (readonly [MotifKind, readonly number[]])[] {
  if (picture.kinds.size < 2) return [[main, indices]]
  const groups = new Map([...picture.kinds.values()].map((kind) => [kind, [] as number[]]))
  for (const index of indices) groups.get(kindOf(picture, picture.motifs[index]!) ?? main)?.push(index)
  return [...groups]
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
    if (!picture.showLabels || style.size < DETAIL.number) continue
    // Along a cord numbers stand below, where they have room: see their ground.
    if (picture.ground?.kind === 'cord') paintLetter(pen, picture, placing, motif, kind, style.size)
    else paintLabels(pen, picture, placing, [motif], kind, style.size)
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
  const { plan, fillers, main } = picture
  const within = ({ x, y }: Copy, reach: number) =>
    x > box.left - reach && x < box.right + reach && y > box.top - reach && y < box.bottom + reach
  for (const [motif, filler] of fillers) {
    const own = styleOf(filler, placing, picture.showLabels)
    const seen = plan.fillers.filter((one) => one.motif === motif && within(one, filler.account.overTips))
    for (const colourway of new Set(seen.map((one) => one.colourway))) {
      const copies = seen.filter((one) => one.colourway === colourway)
      paintCopies(pen, picture, placing, copies, filler.inks.get(colourway) ?? filler.inks.get(''), own)
    }
  }
  if (!main) return
  const reach = main.account.overTips * Math.max(picture.stretch.width, picture.stretch.height)
  for (const half of plan.halves) {
    if (!within(half, reach)) continue
    const kind = kindOf(picture, half) ?? main
    const ink = kind.inks.get(half.colourway) ?? kind.inks.get('')
    const art = kind.artist.at(placing.scale, { half: keptHalf(half), turn: half.turn })
    paintCopies(pen, picture, placing, [{ ...half, turn: 0 }], ink, { ...style, art })
  }
}

/** Numbers and letters of the half motifs and fillers that meet a box, where they have room. */
function labelAdditions(pen: Pen, picture: Picture, placing: Placing, box: Box): void {
  const { additions } = picture
  for (const index of additions?.hit.meeting(box) ?? []) {
    const piece = additions!.pieces[index]!
    const kind = kindOfPiece(picture, piece)
    if (!kind) continue
    const { side } = piece
    const { size } = styleOf(kind, placing, true)
    if (size < DETAIL.number) continue
    if (side) paintHalfLabels(pen, picture, placing, [{ ...piece, side }], kind, size)
    else paintLabels(pen, picture, placing, [piece], kind, size)
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
  const matrices = new Map<number, Lay>()
  pen.lineJoin = 'round'
  pen.lineCap = 'round'
  const width = (clamp(size * CONTOUR.share, CONTOUR.least, CONTOUR.most) * ratio) / scale
  const each = (draw: () => void) => {
    for (const copy of copies) {
      const key = lieOf(copy)
      let m = matrices.get(key)
      if (!m) matrices.set(key, (m = layOf(picture.stretch, copy, scale)))
      pen.setTransform(...m, copy.x * scale + placing.x, copy.y * scale + placing.y)
      draw()
    }
  }
  art.layers.forEach((path, layer) => {
    const { fill, line } = ink.layers[layer]!
    const lines = layer === 0 ? art.petals : null
    const rings = layer === art.layers.length - 1 ? art.rounds : null
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

/** A band outside the line, half hidden under the tips that it is worked into. */
function paintEdging(pen: Pen, picture: Picture, placing: Placing): void {
  for (const stretch of picture.edging?.stretches ?? []) paintStretch(pen, picture, stretch, placing)
  paintDips(pen, picture, placing)
}

/** What a levelling edging fills, under the motifs. */
function paintDips(pen: Pen, { edging, palette }: Picture, { scale, x, y }: Placing): void {
  if (!edging || edging.dips.length === 0) return
  pen.save()
  pen.setTransform(scale, 0, 0, scale, x, y)
  paintItems(pen, [drawPath(edgingPath(edging.dips), { fill: edging.ink.fill })], typeIn(palette))
  pen.restore()
}

function paintStretch(
  pen: Pen,
  { edging, plan, palette }: Picture,
  { lines, within }: EdgingStretch,
  { scale, x, y, ratio }: Placing,
): void {
  if (!edging) return
  const { ink, height, shapes } = edging
  const path = edgingPath(lines)
  const far = 10 * height
  const size = mapSize(plan)
  pen.save()
  pen.setTransform(scale, 0, 0, scale, x, y)
  pen.beginPath()
  if (within === 'outside') pen.rect(-far, -far, size.width + 2 * far, size.height + 2 * far)
  else if (within !== 'holes')
    pen.rect(within.left, within.top, within.right - within.left, within.bottom - within.top)
  trace(pen, path)
  pen.clip('evenodd')
  if (shapes && (shapes.of.width * scale) / ratio >= STITCHES.least) {
    paintItems(pen, edgingStitches(shapes, ratio / scale), typeIn(palette))
    pen.restore()
    return
  }
  const inner = Math.max(0, 2 * (height - (CONTOUR.least * ratio) / scale))
  const band = [
    drawPath(path, { stroke: ink.line, width: 2 * height }),
    drawPath(path, { stroke: ink.fill, width: inner }),
  ]
  paintItems(pen, band, typeIn(palette))
  pen.restore()
}

/**
 * CSS pixels: width of a stitch from which on an edging is drawn stitch by stitch (by eye); lines round its rounds, of
 * the stitches in its fans, of its picots and of what is lighter in them.
 */
const STITCHES = { least: 1.2, outline: 1, stitch: 0.6, picot: 2.4, core: 1 } as const

/** Its written rounds, from the outermost, with lines of so many mm to a CSS pixel. */
const edgingStitches = remembered(
  ({ of, inks }: NonNullable<NonNullable<Picture['edging']>['shapes']>, mm: number): FigureItem[] => {
    const loop = picotLoop(of.picot)
    return of.rounds.flatMap(({ outlines, fans, picots }, i) => {
      const { fill, line } = inks[i]!
      const all = outlines.flatMap((each) => polygonPath(each))
      const stitches = fans.flatMap((fan) => fan.flatMap((each) => polygonPath(each, false)))
      const loops = picots.flatMap(({ x, y, angle }) => {
        const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
        return polygonPath(
          loop.map((at) => ({ x: x + at.x * cos - at.y * sin, y: y + at.x * sin + at.y * cos })),
        )
      })
      return [
        drawPath(all, { fill, stroke: line, width: STITCHES.outline * mm }),
        drawPath(stitches, { stroke: line, width: STITCHES.stitch * mm }),
        drawPath(loops, { stroke: line, width: STITCHES.picot * mm }),
        drawPath(loops, { stroke: fill, width: STITCHES.core * mm }),
      ]
    })
  },
)

/** CSS pixels: the dashed lines at which the map of a round is closed. */
const CLOSING = { dash: 6, gap: 4, width: 1.4 } as const

/** Where a round closes its map is joined to itself, from end to end. */
function paintClosing(pen: Pen, { plan, palette }: Picture, { scale, x, y, ratio }: Placing): void {
  if (!plan.round) return
  const mm = ratio / scale
  const items = closingDashes(plan, CLOSING.dash * mm, CLOSING.gap * mm).map(({ x: at, from, to }) =>
    drawPath(linePath(at, from, at, to), { stroke: palette.ink, width: CLOSING.width * mm }),
  )
  pen.save()
  pen.setTransform(scale, 0, 0, scale, x, y)
  paintItems(pen, items, typeIn(palette))
  pen.restore()
}

/** CSS pixels: the type of the numbers of corners, and the line round them. */
const CORNER = { type: 11, line: 1 } as const

/** Corners of the edging with their numbers and the stitches between them, at every zoom. */
function paintCorners(pen: Pen, { plan, palette }: Picture, { scale, x, y, ratio }: Placing): void {
  const { ink, paper } = palette
  const type = (CORNER.type * ratio) / MM_PER_POINT
  pen.setTransform(1, 0, 0, 1, x, y)
  const look = { scale, type, ink, paper, line: CORNER.line * ratio, left: 0, top: 0, isBeside: true }
  paintItems(pen, cornerPlates(plan, look), typeIn(palette, ratio))
}

const edgingPath = remembered((lines: Plan['edgingLines']) => lines.flatMap((line) => polygonPath(line)))
