/**
 * What is marked on the map: selected motifs, the one that the keyboard is on, those a finding points at, and
 * what is wrong where it is wrong.
 */
import type { PlacedMotif, Point } from '../../shared-types/plan'
import { reachOf } from '../../src-core/geometry/points'
import type { Outline } from '../../src-core/geometry/points'
import { radians } from '../../src-core/units/quantity'
import type { OwnJoin } from '../../src-core/figures/join-marks'
import type { Camera, Viewport } from './camera'
import { toPlan, toScreen } from './camera'
import type { Pen } from './canvas'
import { DETAIL } from '../../src-core/figures/detail'
import { keptHalf } from '../../src-core/figures/motif-parts'
import type { PlacedPiece } from '../../src-core/layout/placed'
import { clamp } from './pen'
import { kindOf } from './picture'
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
  /** The motif under the pointer. */
  readonly hover: string | null
  /** Motifs that are too near to something, or not where they may be. */
  readonly warned: ReadonlySet<string>
  /** What lies where it should not: parts of motifs, in mm on the plan. */
  readonly faults: readonly Outline[]
}

/** CSS pixels between a motif's tips and a ring round it. */
const RING_OFF = 3
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
  const { selection, flagged, changed, fixed, focus, hover, warned, faults, own } = marks
  const isBare =
    [selection, flagged, changed, fixed].every(({ size }) => size === 0) &&
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
  paintFaults(pen, faults, camera, palette.warning)
  const rings: { readonly at: Point; readonly radius: number; readonly colour: string }[] = []
  const box = { left: from.x, top: from.y, right: to.x, bottom: to.y }
  const { additions } = picture
  const seen: readonly (readonly [PlacedMotif | PlacedPiece, MotifKind | null | undefined])[] = [
    ...picture.hit.meeting(box).map((index) => {
      const motif = picture.motifs[index]!
      return [motif, kindOf(picture, motif)] as const
    }),
    ...(additions?.hit.meeting(box) ?? []).map((index) => {
      const piece = additions!.pieces[index]!
      return [piece, piece.kind === 'filler' ? picture.filler : picture.main] as const
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
    if (flagged.has(motif.id)) rings.push({ at, radius: radius - 1, colour: palette.warning })
    else if (changed.has(motif.id)) rings.push({ at, radius: radius - 1, colour: palette.ink })
    if (fixed.has(motif.id)) pin(pen, at, radius - RING_OFF, palette.ink, palette.paper)
    if (focus === motif.id) ring(pen, at, radius + 1, palette.accent, palette.paper, 2.5)
  }
  if (rings.length > 0) {
    pen.setLineDash([4, 3])
    for (const { at, radius, colour } of rings) ring(pen, at, radius, colour, palette.paper, 2)
    pen.setLineDash([])
  }
  if (own.length > 0) paintOwnJoins(pen, picture, camera, own)
}

/** Radius of a selected motif's own join points: a share of the motif, within these CSS pixels. */
const OWN_JOIN = { share: 0.05, least: 2, most: 5.5 } as const

/** Filled where the motif joins into others, open where later ones join into it: as in the hand. */
function paintOwnJoins(pen: Pen, picture: Picture, camera: Camera, own: readonly OwnJoin[]): void {
  const { main, palette } = picture
  const size = (main?.account.overTips ?? 0) * camera.scale
  const radius = clamp(size * OWN_JOIN.share, OWN_JOIN.least, OWN_JOIN.most)
  for (const { x, y, hosts } of own) {
    const at = toScreen(camera, { x, y })
    pen.beginPath()
    pen.arc(at.x, at.y, radius + 1.5, 0, 2 * Math.PI)
    pen.fillStyle = palette.paper
    pen.fill()
    pen.beginPath()
    pen.arc(at.x, at.y, hosts ? radius - 0.75 : radius, 0, 2 * Math.PI)
    pen.fillStyle = hosts ? palette.paper : palette.accent
    pen.fill()
    if (!hosts) continue
    pen.strokeStyle = palette.accent
    pen.lineWidth = 1.5
    pen.stroke()
  }
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
    const at = toScreen(camera, motif)
    pen.fillStyle = isSelected ? palette.accent : palette.quiet
    pen.beginPath()
    pen.arc(at.x, at.y, Math.max(1.5, size * 0.3), 0, 2 * Math.PI)
    pen.fill()
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
  place(pen, picture, camera, cut ? { ...motif, turn: 0 } : motif)
  pen.strokeStyle = colour
  pen.lineWidth = width / camera.scale
  pen.stroke(path)
  pen.restore()
}

function paintFaults(pen: Pen, faults: readonly Outline[], camera: Camera, colour: string): void {
  if (faults.length === 0) return
  pen.beginPath()
  for (const outline of faults) {
    outline.forEach((point, i) => {
      const at = toScreen(camera, point)
      if (i === 0) pen.moveTo(at.x, at.y)
      else pen.lineTo(at.x, at.y)
    })
    pen.closePath()
  }
  pen.fillStyle = colour
  pen.globalAlpha = FAULT
  pen.fill()
  pen.globalAlpha = 1
  pen.strokeStyle = colour
  pen.lineWidth = 1
  pen.stroke()
}

function ring(pen: Pen, at: Point, radius: number, colour: string, under: string, width: number): void {
  pen.beginPath()
  pen.arc(at.x, at.y, radius, 0, 2 * Math.PI)
  pen.strokeStyle = under
  pen.lineWidth = width + 2
  pen.stroke()
  pen.strokeStyle = colour
  pen.lineWidth = width
  pen.stroke()
}

/** Of the mark of a fixed colour: its way up from the middle and its size as shares of the motif, and its least and largest radius (CSS pixels). */
const PIN = { up: 0.62, share: 0.16, least: 1.6, most: 6 } as const

/** The mark of a fixed colour, a pin's head: dark with a light middle and a light hem, so that it reads on any yarn. */
function pin(pen: Pen, { x, y }: Point, reach: number, ink: string, paper: string): void {
  const radius = Math.min(PIN.most, Math.max(PIN.least, reach * PIN.share))
  for (const [size, fill] of [
    [radius + 1.5, paper],
    [radius, ink],
    [radius * 0.4, paper],
  ] as const) {
    pen.beginPath()
    pen.arc(x, y - reach * PIN.up, size, 0, 2 * Math.PI)
    pen.fillStyle = fill
    pen.fill()
  }
}

function ringRadius({ account }: MotifKind, { stretch }: Picture, camera: Camera): number {
  return reachOf(account.outline) * Math.max(stretch.width, stretch.height) * camera.scale + RING_OFF
}

function place(pen: Pen, { stretch }: Picture, camera: Camera, motif: PlacedMotif): void {
  const at = toScreen(camera, motif)
  const { width, height } = stretch
  const across = motif.flipped ? -1 : 1
  const cos = Math.cos(radians(motif.turn)) * camera.scale
  const sin = Math.sin(radians(motif.turn)) * camera.scale
  pen.transform(across * cos * width, across * sin * height, -sin * width, cos * height, at.x, at.y)
}
