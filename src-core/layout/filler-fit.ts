/**
 * M27: fillers in one kind of opening: where they stand and how they are rotated, which of the motifs round them they
 * are joined to, by how much they overlap them or fall short of them, and what stays open beside them.
 */
import polylabel from 'polylabel'
import type { Anchor, MotifAccount, Point } from '../../shared-types/plan'
import {
  contains,
  directionOf,
  distance,
  distanceToEdge,
  moveOutline,
  nearestShare,
  polar,
  reachOf,
  scaleOutline,
  signedArea,
  turnOutline,
  turnPoint,
} from '../geometry/points'
import type { Outline } from '../geometry/points'
import { COARSE, grow, sharedArea, union } from '../geometry/polygons'
import { degrees, radians } from '../units/quantity'
import type { Degrees, Millimetres, Radians } from '../units/quantity'
import { ALONG_SIDE, FILLER_GIVES } from './constants'
import { facingPoints } from './facing-points'
import { CLOSED, LEAST_ACROSS } from './holes'
import type { OpeningKind } from './holes'
import { outlineAt } from './lattice'
import type { Lattice } from './lattice'
import { LEAST_SIDES } from './opening-kinds'
import { middleOf, roomsIn } from './rooms'
import type { Room } from './rooms'

/** Where a filler meets one of the motifs round it. */
export interface Contact {
  /** Index in the opening's `around`. */
  readonly motif: number
  /** Place of the filler that is joined; null for a round one, which can be joined anywhere. */
  readonly anchor: Anchor | null
  /** From the middle of the filler, and from the middle of the motif, to where they meet. */
  readonly direction: Radians
  readonly fromMotif: Radians
  /** Where on the motif they meet, about its middle, as it lies. */
  readonly at: Point
  /** Length of the side of the filler that lies along a side of the motif, all of it; left out where they meet at a point. */
  readonly along?: Millimetres
}

export interface FillerFit {
  /** Where it stands, about the first motif round the opening. */
  readonly middle: Point
  /** Of the largest circle that fits there. */
  readonly room: Millimetres
  readonly turn: Degrees
  /** With the motifs that it is joined to. */
  readonly contacts: readonly Contact[]
  /** Half of what it measures where it faces the motifs round it. */
  readonly radius: Millimetres
  /** By how much it reaches too far into the motifs round it, and the widest gap that its joins bridge. */
  readonly overlap: Millimetres
  readonly bridge: Millimetres
  /** How far it is to the motifs that it is not joined to, by their index in `around`. */
  readonly beyond: readonly { readonly motif: number; readonly gap: Millimetres }[]
}

/** The fillers in an opening. */
export interface OpeningFit {
  readonly fits: readonly FillerFit[]
  /** Radius of the largest circle that fits into what stays open. */
  readonly open: Millimetres
}

/** Half of what a filler measures where it can face its neighbours: to its tips, or to its sides and corners. */
export const fillerRadii = (filler: MotifAccount): readonly Millimetres[] =>
  filler.shape === 'straight' ? [filler.overValleys / 2, filler.overTips / 2] : [filler.overTips / 2]

/**
 * The fillers of an opening. One that just fits would be joined to what it comes within `reach` of; a smaller one
 * bridges what is left there. One stands in the middle where it is joined all round; else one in each lobe where it is
 * joined to three motifs or more; else one where it is joined most often.
 */
export function fitFillers(
  kind: OpeningKind,
  filler: MotifAccount,
  lattice: Lattice,
  reach: Millimetres,
): OpeningFit {
  const outlines = kind.around.map((at) => moveOutline(outlineAt(lattice, at), at.x, at.y))
  const one = fitIn(middleOf(kind), kind, filler, outlines, reach)
  const fits = one.beyond.length === 0 ? [one] : fitsInRooms(one, kind, filler, outlines, reach)
  const shapes = fits.map(({ turn, middle }) =>
    moveOutline(turnOutline(filler.outline, radians(turn)), middle.x, middle.y),
  )
  const bridge = fits.reduce((most, fit) => Math.max(most, fit.bridge), 0)
  return {
    fits,
    open: openBeside(shapes, outlines, kind.radius, bridge),
  }
}

function fitsInRooms(
  one: FillerFit,
  kind: OpeningKind,
  filler: MotifAccount,
  outlines: readonly Outline[],
  reach: Millimetres,
): FillerFit[] {
  const radius = Math.min(...fillerRadii(filler))
  const all = roomsIn(kind, radius).map((room) =>
    distance(room.middle, one.middle) === 0 ? one : fitIn(room, kind, filler, outlines, reach),
  )
  const kept: FillerFit[] = []
  for (const fit of all) {
    if (fit.contacts.length < LEAST_SIDES) continue
    // Two that lie on each other, or are joined to the same motifs, are one.
    const isApart = kept.every(
      (other) =>
        distance(other.middle, fit.middle) >= 2 * (radius - FILLER_GIVES) &&
        joinedOf(other) !== joinedOf(fit),
    )
    if (isApart) kept.push(fit)
  }
  if (kept.length > 0) return kept
  return [all.reduce((most, fit) => (fit.contacts.length > most.contacts.length ? fit : most), one)]
}

const joinedOf = ({ contacts }: FillerFit): string => contacts.map(({ motif }) => motif).join(' ')

/** A filler in one room of an opening; `around`: the motifs round it, about the first of them. */
function fitIn(
  { middle, radius: room }: Room,
  kind: OpeningKind,
  filler: MotifAccount,
  around: readonly Outline[],
  reach: Millimetres,
): FillerFit {
  // About the middle of the filler.
  const outlines = around.map((outline) => moveOutline(outline, -middle.x, -middle.y))
  const most = reach + Math.max(0, room - Math.min(...fillerRadii(filler)))
  const half = reachOf(filler.outline)
  const far = outlines.map((outline) => distance(nearestOn(outline, { x: 0, y: 0 }), { x: 0, y: 0 }) - half)
  // What no rotation joins is not to decide which one joins the others best.
  const faced = outlines.flatMap((_, motif) => (far[motif]! <= most ? [motif] : []))
  const near = faced.map((motif) => outlines[motif]!)
  const facing = facingAnchors(filler)
  const { turn, met } =
    alongSides(filler, facing, near, reach) ??
    (facing.length > 0 ? bestTurn(filler, facing, near) : asItLies(filler, near))
  // One that faces none of them still hangs on the nearest.
  const bound = Math.max(most, Math.min(...met.map(({ gap }) => gap)))
  const joined = met.flatMap((meeting, i) => (meeting.gap <= bound ? [{ meeting, motif: faced[i]! }] : []))
  const contacts = joined.map(({ meeting: { anchor, place, at }, motif }): Contact => {
    const { x, y } = kind.around[motif]!
    const own = { x: at.x + middle.x - x, y: at.y + middle.y - y }
    const along = alongSide(filler, anchor, radians(turn), outlines[motif]!)
    const meets = { motif, anchor, direction: directionOf(place), fromMotif: directionOf(own), at: own }
    return along > 0 ? { ...meets, along } : meets
  })
  const reached = new Set(contacts.map(({ motif }) => motif))
  const gapTo = (motif: number): Millimetres => met[faced.indexOf(motif)]?.gap ?? far[motif]!
  return {
    ...{ middle, room, turn, contacts },
    radius: fillerRadii(filler)[met.some(({ anchor }) => anchor?.kind === 'corner') ? 1 : 0]!,
    bridge: joined.reduce((most, { meeting }) => Math.max(most, meeting.gap), 0),
    overlap: overlapOf(turnOutline(filler.outline, radians(turn)), outlines),
    beyond: outlines.flatMap((_, motif) => (reached.has(motif) ? [] : [{ motif, gap: gapTo(motif) }])),
  }
}

/** How far out on a side it is held against a motif, its middle being 0 and its corners 1: there it is, and not round the corner (ours). */
const ALONG = [-0.9, 0, 0.9] as const

/**
 * M27: the length of the side of a filler that the motif beside it follows from one end to the other, as the side of an
 * octagon does; 0 where they meet at a corner or touch at a point, as a circle does.
 */
function alongSide(
  filler: MotifAccount,
  anchor: Anchor | null,
  turn: Radians,
  outline: Outline,
): Millimetres {
  if (filler.shape !== 'straight' || anchor?.kind !== 'side') return 0
  const side = filler.anchors.filter(({ kind, petal }) => kind === 'side' && petal === anchor.petal)
  const [first, last] = [side[0], side.at(-1)]
  if (!first || !last || first === last) return 0
  const [one, other, middle] = [first, last, anchor].map((each) => turnPoint(each, turn)) as [
    Point,
    Point,
    Point,
  ]
  // Its places lie at its quarters.
  const half = { x: other.x - one.x, y: other.y - one.y }
  const gaps = ALONG.map((share) =>
    gapOf({ x: middle.x + share * half.x, y: middle.y + share * half.y }, outline),
  )
  const length = 2 * Math.hypot(half.x, half.y)
  return Math.max(...gaps) - Math.min(...gaps) <= ALONG_SIDE * length ? length : 0
}

/** From a place to an outline; below zero within it. */
function gapOf(place: Point, outline: Outline): Millimetres {
  const far = distance(place, nearestOn(outline, place))
  return contains(outline, place) ? -far : far
}

/** A place of the filler and the nearest one of a motif, about the middle of the opening. */
interface Meeting {
  readonly anchor: Anchor | null
  readonly place: Point
  readonly at: Point
  /** Between the two; below zero where the place lies within the motif. */
  readonly gap: Millimetres
}

function meetingOf(anchor: Anchor | null, place: Point, outline: Outline): Meeting {
  return meetingAt(anchor, place, outline, nearestOn(outline, place))
}

function meetingAt(anchor: Anchor | null, place: Point, outline: Outline, at: Point): Meeting {
  const far = distance(place, at)
  return { anchor, place, at, gap: contains(outline, place) ? -far : far }
}

/** A round filler needs no rotation: it meets every motif where that comes nearest. */
function asItLies(filler: MotifAccount, outlines: readonly Outline[]) {
  const radius = filler.overTips / 2
  const met = facingPoints(outlines).map((at, i) =>
    meetingAt(null, polar(radius, directionOf(at)), outlines[i]!, at),
  )
  return { turn: 0, met }
}

/**
 * The places by which a filler can face its neighbours: its tips; of a straight-sided one the middles of its sides, or
 * its corners; none of a round one.
 */
export function facingAnchors(filler: MotifAccount): Anchor[][] {
  if (filler.shape === 'round') return []
  const { anchors } = filler
  const corners = anchors.filter(({ kind }) => kind === 'corner')
  const sides = anchors.filter(({ kind, id }) => kind === 'side' && id.endsWith('-2'))
  const tips = anchors.filter(({ kind }) => kind === 'tip')
  const ways = (filler.shape === 'straight' ? [sides, corners] : [tips]).filter(({ length }) => length > 0)
  return ways.length > 0 ? ways : [[...anchors]]
}

/** A filler all of whose sides lie along those of the motifs round it lies so, where it comes within reach; else null. */
function alongSides(
  filler: MotifAccount,
  [sides]: readonly (readonly Anchor[])[],
  outlines: readonly Outline[],
  reach: Millimetres,
) {
  if (filler.shape !== 'straight' || !sides || sides.length !== outlines.length) return null
  const turn = pointedTurn(sides, outlines, (2 * Math.PI) / sides.length)
  const met = meet(sides, turn, outlines)
  const isAlong = met.every(
    ({ anchor, gap }, i) => Math.abs(gap) <= reach && alongSide(filler, anchor, turn, outlines[i]!) > 0,
  )
  return isAlong ? { turn: toldTurn(turn), met } : null
}

/** Rotations tried within the angle between two places of the filler. */
const STEPS = 24
/** A rotation is better than another when it saves this much, in mm. */
const BETTER: Millimetres = 0.05
/** Rotations are told to this many degrees. */
const TURN_GRID: Degrees = 1e-4

/**
 * The rotation in which every motif is met most closely: the one that points the places as near as can be at
 * the nearest points of the motifs, unless another one does better. A straight-sided filler meets them with its sides
 * or with its corners, and in neither case may what it does not meet them with reach into them.
 */
function bestTurn(filler: MotifAccount, facing: readonly Anchor[][], outlines: readonly Outline[]) {
  let best: { turn: Radians; met: Meeting[]; off: Millimetres } | null = null
  for (const anchors of facing) {
    const period = (2 * Math.PI) / anchors.length
    const pointed = pointedTurn(anchors, outlines, period)
    const turns = [pointed, ...Array.from({ length: STEPS }, (_, i) => (i * period) / STEPS)]
    for (const turn of turns) {
      const met = meet(anchors, turn, outlines)
      const apart = met.reduce((most, { gap }) => Math.max(most, Math.abs(gap)), 0)
      if (best && apart >= best.off - BETTER) continue
      const off =
        filler.shape === 'straight'
          ? Math.max(apart, depthOf(turnOutline(filler.outline, turn), outlines))
          : apart
      if (!best || off < best.off - BETTER) best = { turn, met, off }
    }
  }
  const { turn, met } = best!
  return { turn: toldTurn(turn), met }
}

const toldTurn = (turn: Radians): Degrees => Math.round(degrees(turn) / TURN_GRID) * TURN_GRID

/** How deep a corner of a filler lies in a motif, or a motif's point in the filler. */
function depthOf(shape: Outline, outlines: readonly Outline[]): Millimetres {
  const within = (points: Outline, outline: Outline): Millimetres =>
    points.reduce(
      (most, point) =>
        contains(outline, point) ? Math.max(most, distance(point, nearestOn(outline, point))) : most,
      0,
    )
  return outlines.reduce((most, outline) => Math.max(most, within(shape, outline), within(outline, shape)), 0)
}

/** The rotation that points evenly spaced places along the directions of the motifs, from 0 up to their angle. */
function pointedTurn(anchors: readonly Anchor[], outlines: readonly Outline[], period: Radians): Radians {
  const base = directionOf(anchors[0]!)
  let x = 0
  let y = 0
  for (const at of facingPoints(outlines)) {
    const direction = directionOf(at)
    const phase = (2 * Math.PI * (direction - base)) / period
    x += Math.cos(phase)
    y += Math.sin(phase)
  }
  const turn = (Math.atan2(y, x) * period) / (2 * Math.PI)
  return Math.abs(turn) < TURN_STEP ? 0 : (turn + period) % period
}

/** Openings are found on a grid of a hundredth of a millimetre: rotations less than this are none. */
const TURN_STEP: Radians = 0.002

/** Which place of the filler is joined to which motif: the nearest first, none twice while there are others. */
function meet(anchors: readonly Anchor[], turn: Radians, outlines: readonly Outline[]): Meeting[] {
  const pairs = anchors.flatMap((anchor) => {
    const place = turnPoint(anchor, turn)
    return outlines.map((outline, motif) => ({ motif, ...meetingOf(anchor, place, outline) }))
  })
  pairs.sort((a, b) => a.gap - b.gap || a.motif - b.motif)
  const found = new Map<number, Meeting>()
  const taken = new Set<Anchor | null>()
  for (const pair of pairs) {
    if (found.has(pair.motif) || taken.has(pair.anchor)) continue
    found.set(pair.motif, pair)
    taken.add(pair.anchor)
  }
  return outlines.map((_, motif) => found.get(motif) ?? pairs.find((pair) => pair.motif === motif)!)
}

function nearestOn(outline: Outline, point: Point): Point {
  let best = outline[0]!
  let least = Infinity
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length]!
    const far = distanceToEdge(point, a, b)
    // Of equals the first: two petals that face the opening alike.
    if (far >= least - 1e-6) return
    least = far
    const share = nearestShare(point, a, b)
    best = { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share }
  })
  return best
}

/** Area in mm² that rounding alone can make. */
const NO_AREA = 1e-3
/** Steps of the search for the overlap: each halves what is not known. */
const HALVINGS = 14

/** By how much a filler reaches too far: its reach less that of the largest one of its shape that has room. */
function overlapOf(shape: Outline, outlines: readonly Outline[]): Millimetres {
  const meets = (share: number): boolean => sharedArea([scaleOutline(shape, share)], outlines) > NO_AREA
  if (!meets(1)) return 0
  let free = 0
  let full = 1
  for (let i = 0; i < HALVINGS; i++) {
    const share = (free + full) / 2
    if (meets(share)) full = share
    else free = share
  }
  return (1 - free) * reachOf(shape)
}

/** Radius of the largest circle beside fillers in their opening of so much radius. */
function openBeside(
  shapes: readonly Outline[],
  outlines: readonly Outline[],
  radius: Millimetres,
  bridge: Millimetres,
): Millimetres {
  const by = bridge / 2 + CLOSED
  let largest = bridge / 2
  const grown = [...shapes, ...outlines].flatMap((outline) => grow([outline], by, COARSE))
  for (const contour of union(grown)) {
    if (signedArea(contour) >= 0) continue
    const ring = contour.map((point): [number, number] => [point.x, point.y])
    ring.push(ring[0]!)
    const pole = polylabel([ring], 0.01)
    const own = pole.distance + by
    if (2 * own >= LEAST_ACROSS) largest = Math.max(largest, own)
  }
  return Math.min(radius, largest)
}
