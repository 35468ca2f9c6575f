/**
 * What is marked on the map: selected motifs, the one that the keyboard is on, those a finding points at, and
 * what is wrong where it is wrong.
 */
import type { PlacedMotif, Point } from '../../shared-types/plan'
import { reachOf } from '../../src-core/geometry/points'
import type { Outline } from '../../src-core/geometry/points'
import type { OwnJoin } from '../../src-core/figures/join-marks'
import type { Camera, Viewport } from './camera'
import { toPlan, toScreen } from './camera'
import { paintItems, typeIn } from './canvas'
import type { Pen } from './canvas'
import { DETAIL } from '../../src-core/figures/detail'
import { drawPath, hemmedLine } from '../../src-core/figures/figure'
import { TICK_BESIDE, tickItems } from '../../src-core/figures/made-ticks'
import type { MadeTick } from '../../src-core/figures/made-ticks'
import type { FigureItem, Paint } from '../../src-core/figures/figure'
import { circlePath, polygonPath } from '../../src-core/figures/path'
import { keptHalf } from '../../src-core/figures/motif-parts'
import { halfSeats, seatBeside } from '../../src-core/figures/seats'
import type { PlacedPiece } from '../../src-core/layout/placed'
import { faint } from './palette'
import type { Palette } from './palette'
import { clamp, layOf } from './pen'
import { kindOf, kindOfPiece } from './picture'
import type { MotifKind, Picture } from './picture'

export interface Marks {
  readonly selection: ReadonlySet<string>
  readonly focus: string | null
  /** Join points of the motif that the keyboard is on: in view at every zoom, whatever else is shown. */
  readonly own: readonly OwnJoin[]
  readonly flagged: ReadonlySet<string>
  /** Motifs that changed along with what was painted. */
  readonly changed: ReadonlySet<string>
  /** Motifs whose colour is fixed. */
  readonly fixed: ReadonlySet<string>
  /** Motifs that are made, and those of them that are joined. */
  readonly made: ReadonlySet<string>
  readonly joined: ReadonlySet<string>
  /** The motif under the pointer. */
  readonly hover: string | null
  /** Motifs that are too near to something, or not where they may be. */
  readonly warned: ReadonlySet<string>
  /** What lies where it should not: parts of motifs, in mm on the plan. */
  readonly faults: readonly Outline[]
}

/** CSS pixels between a motif's tips and a ring round it. */
const RING_OFF = 3
/** The ring of the motif that the keyboard is on, and those of what a finding points at or what changed along. */
const FOCUSED = { width: 2.5 } as const
const RINGED = { width: 2, dash: [4, 3] } as const
/** Share of the warning tone over what lies wrong. */
const FAULT = 0.45

/** Draws the marks in CSS pixels, on a screen of `ratio` device pixels each. */
export function paintMarks(
  pen: Pen,
  picture: Picture,
  camera: Camera,
  viewport: Viewport,
  marks: Marks,
  ratio: number,
): void {
  const { selection, flagged, changed, fixed, made, joined, focus, hover, warned, faults, own } = marks
  const isBare =
    [selection, flagged, changed, fixed, made].every(({ size }) => size === 0) &&
    !focus &&
    !hover &&
    warned.size === 0 &&
    faults.length === 0 &&
    own.length === 0
  if (isBare) return
  const { palette } = picture
  const from = toPlan(camera, { x: 0, y: 0 })
  const to = toPlan(camera, { x: viewport.width, y: viewport.height })
  const radii = new Map<MotifKind, number>()
  pen.lineJoin = 'round'
  const draw = (items: readonly FigureItem[]): void => paintItems(pen, items, typeIn(palette))
  if (faults.length > 0) draw(faultItems(faults, camera, palette.warning))
  const rings: FigureItem[] = []
  let focused: FigureItem[] = []
  const ring = ({ x, y }: Point, radius: number, paint: Paint & { width: number }): FigureItem[] =>
    hemmedLine(circlePath(x, y, radius), paint, palette.paper, 2)
  const ticks: MadeTick[] = []
  const pins: (Point & { readonly reach: number })[] = []
  const box = { left: from.x, top: from.y, right: to.x, bottom: to.y }
  const { additions } = picture
  const seen: readonly (readonly [PlacedMotif | PlacedPiece, MotifKind | null | undefined])[] = [
    ...picture.hit.meeting(box).map((index) => {
      const motif = picture.motifs[index]!
      return [motif, kindOf(picture, motif)] as const
    }),
    ...(additions?.hit.meeting(box) ?? []).map((index) => {
      const piece = additions!.pieces[index]!
      return [piece, kindOfPiece(picture, piece)] as const
    }),
  ]
  for (const [motif, kind] of seen) {
    if (!kind) continue
    const at = toScreen(camera, motif)
    let radius = radii.get(kind)
    if (radius === undefined) radii.set(kind, (radius = ringRadius(kind, picture, camera)))
    const isSelected = selection.has(motif.id)
    if (warned.has(motif.id) && !isSelected)
      contour(pen, picture, kind, camera, motif, { colour: palette.warning, width: 2, ratio })
    if (isSelected || hover === motif.id)
      markOne(pen, picture, kind, camera, motif, { isSelected, isWarned: warned.has(motif.id), ratio })
    const ringed = flagged.has(motif.id) ? palette.warning : changed.has(motif.id) ? palette.ink : null
    if (ringed) rings.push(...ring(at, radius - 1, { ...RINGED, stroke: ringed }))
    const reach = radius - RING_OFF
    if (fixed.has(motif.id)) {
      const room = clamp(reach * PIN.share, PIN.least, PIN.most)
      pins.push({ ...onHalf(picture, kind, camera, motif, -PIN.up * reach, room), reach })
    }
    if (made.has(motif.id)) {
      const isHalf = 'side' in motif && motif.side !== undefined
      const own = isHalf ? onHalf(picture, kind, camera, motif, HALF_TICK * reach, TICK.least) : at
      ticks.push({ ...own, reach, isJoined: joined.has(motif.id), ...(isHalf && { place: () => own }) })
    }
    if (focus === motif.id) focused = ring(at, radius + 1, { ...FOCUSED, stroke: palette.accent })
  }
  if (pins.length > 0) draw(pinItems(pins, palette))
  draw(tickItems(ticks, TICK, palette.markDark, palette.markLight, TICK_BESIDE))
  draw([...focused, ...rings, ...ownJoinItems(picture, camera, own)])
}

/** Radius of a selected motif's own join points: a share of the motif, within these CSS pixels. */
const OWN_JOIN = { share: 0.05, least: 2, most: 5.5 } as const

/** Filled where the motif joins into others, open where later ones join into it: as in the hand. */
function ownJoinItems({ main, palette }: Picture, camera: Camera, own: readonly OwnJoin[]): FigureItem[] {
  const { accent, paper } = palette
  const size = (main?.account.overTips ?? 0) * camera.scale
  const radius = clamp(size * OWN_JOIN.share, OWN_JOIN.least, OWN_JOIN.most)
  return own.flatMap(({ hosts, ...join }) => {
    const { x, y } = toScreen(camera, join)
    return [
      drawPath(circlePath(x, y, radius + 1.5), { fill: paper }),
      hosts
        ? drawPath(circlePath(x, y, radius - 0.75), { fill: paper, stroke: accent, width: 1.5 })
        : drawPath(circlePath(x, y, radius), { fill: accent }),
    ]
  })
}

function markOne(
  pen: Pen,
  picture: Picture,
  kind: MotifKind,
  camera: Camera,
  motif: PlacedMotif,
  { isSelected, isWarned, ratio }: { isSelected: boolean; isWarned: boolean; ratio: number },
): void {
  const { palette } = picture
  const size = kind.account.overTips * camera.scale
  if (size < DETAIL.marks) {
    const { x, y } = toScreen(camera, motif)
    const fill = isSelected ? palette.accent : palette.quiet
    paintItems(pen, [drawPath(circlePath(x, y, Math.max(1.5, size * 0.3)), { fill })], typeIn(palette))
    return
  }
  if (isSelected) {
    // A hair of paper under the accent keeps it apart from yarn of a like colour.
    contour(pen, picture, kind, camera, motif, { colour: palette.paper, width: 5, ratio })
  }
  const colour = isSelected ? (isWarned ? palette.warning : palette.accent) : palette.ink
  contour(pen, picture, kind, camera, motif, { colour, width: isSelected ? 2.5 : 1.5, ratio })
}

/** Strokes the outline of a placed motif; `width` in CSS pixels. */
function contour(
  pen: Pen,
  picture: Picture,
  kind: MotifKind,
  camera: Camera,
  motif: PlacedMotif | PlacedPiece,
  { colour, width, ratio }: { colour: string; width: number; ratio: number },
): void {
  const side = 'side' in motif ? motif.side : undefined
  const cut = side && { half: keptHalf({ side }), turn: motif.turn }
  const path = kind.artist.at(camera.scale * ratio, cut).layers[0]
  if (!path) return
  pen.save()
  const { x, y } = toScreen(camera, motif)
  pen.transform(...layOf(picture.stretch, cut ? { ...motif, turn: 0 } : motif, camera.scale), x, y)
  pen.strokeStyle = colour
  pen.lineWidth = width / camera.scale
  pen.stroke(path)
  pen.restore()
}

function faultItems(faults: readonly Outline[], camera: Camera, colour: string): FigureItem[] {
  const path = faults.flatMap((outline) => polygonPath(outline.map((point) => toScreen(camera, point))))
  return [drawPath(path, { fill: faint(colour, FAULT), stroke: colour, width: 1 })]
}

/** Of the mark of a fixed colour: its way up from the middle and its size as shares of the motif, and its least and largest radius (CSS pixels). */
const PIN = { up: 0.62, share: 0.16, least: 1.6, most: 6 } as const

/** Marks of fixed colours, pins' heads: dark with a light middle and a light hem, so that they read on any yarn. */
function pinItems(
  pins: readonly (Point & { readonly reach: number })[],
  { ink, paper }: Palette,
): FigureItem[] {
  const heads = pins.map(({ x, y, reach }) => ({
    ...{ x, y, radius: clamp(reach * PIN.share, PIN.least, PIN.most) },
  }))
  const discs = (fill: string, sized: (radius: number) => number): FigureItem =>
    drawPath(
      heads.flatMap(({ x, y, radius }) => circlePath(x, y, sized(radius))),
      { fill },
    )
  return [
    discs(paper, (radius) => radius + 1.5),
    discs(ink, (radius) => radius),
    discs(paper, (radius) => radius * 0.4),
  ]
}

/** How far above the middle of a half its tick stands, as a share of the motif: over its number. */
const HALF_TICK = 0.62

/** Where a mark stands so far above the middle; on a half within its outline, below the middle where that is less than 0. */
function onHalf(
  picture: Picture,
  { account }: MotifKind,
  camera: Camera,
  motif: PlacedMotif | PlacedPiece,
  up: number,
  radius: number,
): Point {
  const side = 'side' in motif ? motif.side : undefined
  if (!side) {
    const { x, y } = toScreen(camera, motif)
    return { x, y: y - Math.abs(up) }
  }
  const { width, height } = picture.stretch
  const seats = halfSeats(account, { turn: motif.turn, side }, { x: width, y: height })
  const at = seatBeside(seats, Math.abs(up) / camera.scale, radius / camera.scale, up < 0 ? 1 : -1)
  return toScreen(camera, { x: motif.x + at.x, y: motif.y + at.y })
}

/** CSS pixels: of the ground that a tick stands on. */
const TICK = { least: 4, most: 10 } as const

function ringRadius({ account }: MotifKind, { stretch }: Picture, camera: Camera): number {
  return reachOf(account.outline) * Math.max(stretch.width, stretch.height) * camera.scale + RING_OFF
}
