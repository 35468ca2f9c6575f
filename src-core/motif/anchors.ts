/**
 * Anchors: the places of a motif where a join can be made, with addresses in words. Petals, corners and sides
 * are numbered in working direction from 12 o'clock: counter-clockwise seen from the right side for
 * right-handers, clockwise for left-handers.
 */
import type { Anchor, AnchorKind, FigureForm, Point } from '../../shared-types/plan'
import type { Hand } from '../../shared-types/project'
import { directionOf, polar } from '../geometry/points'
import type { Millimetres, Radians } from '../units/quantity'

/** Sign of a step in working direction, angles being clockwise. */
export const workingSign = (hand: Hand): 1 | -1 => (hand === 'left' ? 1 : -1)

/** How far along a side that has several neighbours a place lies, as a fraction; null where it has one. */
function partOf(id: string): string | null {
  const [, place, of, quarter] = /-(\d+)\/(\d+)\.(\d)$/.exec(id)?.map(Number) ?? []
  if (place === undefined || of === undefined || quarter === undefined) return null
  const [share, whole] = [4 * (place - 1) + quarter, 4 * of]
  const common = [4 * of, 2 * of, of, 4, 2].find((each) => share % each === 0 && whole % each === 0) ?? 1
  return `${share / common}/${whole / common}`
}

/** Places of one petal or side are told apart by the last number of their id. */
export const placeIn = (id: string): number => Number(id.slice(id.lastIndexOf('-') + 1))

/** A place of a motif with petals or corners in words, its petal counted as `number` of `count`. */
export function addressOf({ kind, id }: Pick<Anchor, 'id' | 'kind'>, number: number, count: number): string {
  switch (kind) {
    case 'tip':
      return `petal ${number}`
    case 'shoulder':
      return `${placeIn(id) === 1 ? 'first' : 'second'} shoulder of petal ${number}`
    case 'valley':
      return `between petals ${number} and ${(number % count) + 1}`
    case 'corner':
      return `corner ${number}`
    case 'side':
      if (partOf(id)) return `side ${number}, ${partOf(id)} of the way along`
      return `place ${placeIn(id)} of side ${number}`
  }
}

function anchor(
  kind: AnchorKind,
  id: string,
  petal: number,
  at: Point,
  address: string,
  outward: Radians = directionOf(at),
): Anchor {
  return { id, kind, petal, x: at.x, y: at.y, outward: polar(1, outward), address }
}

/** Tips, shoulders and valleys of a motif with petals; `flank` is the point halfway between tip and valley. */
export function petalAnchors(
  petals: number,
  tip: Millimetres,
  valley: Millimetres,
  flankRadius: Millimetres,
  hand: Hand,
): Anchor[] {
  const sign = workingSign(hand)
  const step = (2 * Math.PI) / petals
  const anchors: Anchor[] = []
  for (let k = 1; k <= petals; k++) {
    const angle = sign * (k - 1) * step
    const own = (kind: AnchorKind, id: string, at: Point): Anchor =>
      anchor(kind, id, k, at, addressOf({ kind, id }, k, petals))
    anchors.push(
      own('tip', `tip-${k}`, polar(tip, angle)),
      own('shoulder', `shoulder-${k}-1`, polar(flankRadius, angle - (sign * step) / 4)),
      own('shoulder', `shoulder-${k}-2`, polar(flankRadius, angle + (sign * step) / 4)),
      own('valley', `valley-${k}`, polar(valley, angle + (sign * step) / 2)),
    )
  }
  return anchors
}

/** One petal of a motif whose petals are not alike, in working direction. */
interface UnevenPetal {
  readonly tip: Point
  readonly shoulders: readonly [Point, Point]
  /** Between it and the next one. */
  readonly valley: Point
}

/** Tips, shoulders and valleys where they stand. */
export function unevenAnchors(petals: readonly UnevenPetal[]): Anchor[] {
  return petals.flatMap(({ tip, shoulders, valley }, i) => {
    const k = i + 1
    const own = (kind: AnchorKind, id: string, at: Point): Anchor =>
      anchor(kind, id, k, at, addressOf({ kind, id }, k, petals.length))
    return [
      own('tip', `tip-${k}`, tip),
      own('shoulder', `shoulder-${k}-1`, shoulders[0]),
      own('shoulder', `shoulder-${k}-2`, shoulders[1]),
      own('valley', `valley-${k}`, valley),
    ]
  })
}

/** Shares of a side at which a straight-sided motif can be joined besides its corners. */
const SIDE_PLACES = [1 / 4, 1 / 2, 3 / 4] as const

/** Corners and three places on each side; side k follows corner k in working direction. */
export function sidedAnchors(corners: readonly Point[], hand: Hand): Anchor[] {
  const count = corners.length
  const sign = workingSign(hand)
  const inOrder = Array.from({ length: count }, (_, k) => corners[(((sign * k) % count) + count) % count]!)
  const anchors: Anchor[] = []
  inOrder.forEach((corner, k) => {
    const next = inOrder[(k + 1) % count]!
    const middle = { x: (corner.x + next.x) / 2, y: (corner.y + next.y) / 2 }
    const own = (kind: AnchorKind, id: string, at: Point, outward?: Radians): Anchor =>
      anchor(kind, id, k + 1, at, addressOf({ kind, id }, k + 1, count), outward)
    anchors.push(own('corner', `corner-${k + 1}`, corner))
    SIDE_PLACES.forEach((share, place) => {
      const at = { x: corner.x + (next.x - corner.x) * share, y: corner.y + (next.y - corner.y) * share }
      anchors.push(own('side', `side-${k + 1}-${place + 1}`, at, directionOf(middle)))
    })
  })
  return anchors
}

/**
 * Corners of a square, and along each side what `count` neighbours beside each other meet it with: their three places,
 * and their corners between them.
 */
export function sharedSideAnchors(corners: readonly Anchor[], count: number): Anchor[] {
  return corners.flatMap((corner, k) => {
    const next = corners[(k + 1) % corners.length]!
    const outward = directionOf({ x: corner.x + next.x, y: corner.y + next.y })
    const places = Array.from({ length: 4 * count - 1 }, (_, i) => {
      const share = (i + 1) / (4 * count)
      const id = `side-${corner.petal}-${Math.floor(i / 4) + 1}/${count}.${(i % 4) + 1}`
      const at = { x: corner.x + (next.x - corner.x) * share, y: corner.y + (next.y - corner.y) * share }
      const address = addressOf({ kind: 'side', id }, corner.petal, corners.length)
      return anchor('side', id, corner.petal, at, address, outward)
    })
    return [corner, ...places]
  })
}

/** The middle of a straight side, or of what one of several neighbours along it meets. */
export const isMiddle = ({ kind, id }: Anchor): boolean => kind === 'side' && /(?:-|\.)2$/.test(id)

/** Where the corners of two neighbours along a side meet it. */
export const isBetween = ({ kind, id }: Anchor): boolean => kind === 'side' && id.endsWith('.4')

/** Places of a round motif in the given directions (radians, clockwise from 12 o'clock), told by the clock. */
export function roundAnchors(radius: Millimetres, directions: readonly Radians[], hand: Hand): Anchor[] {
  const sign = workingSign(hand)
  const turn = (angle: Radians) => (((sign * angle) % (2 * Math.PI)) + 2 * Math.PI + 1e-9) % (2 * Math.PI)
  return [...directions]
    .sort((a, b) => turn(a) - turn(b))
    .map((angle, i) =>
      anchor('side', `place-${i + 1}`, i + 1, polar(radius, angle), `place at ${clock(angle)}`, angle),
    )
}

/** Twelve places round the clock. */
export const CLOCK_DIRECTIONS: readonly Radians[] = Array.from({ length: 12 }, (_, i) => (i * Math.PI) / 6)

/** What the ends of figures are called that are no leaves, the upper one first. */
const ENDS: Readonly<Record<FigureForm, readonly [string, string]>> = {
  oval: ['first end', 'second end'],
  heart: ['cleft', 'point'],
  block: ['top edge', 'bottom edge'],
  triangle: ['top', 'bottom'],
  'half-circle': ['middle of the curve', 'middle of the straight edge'],
  'half-hexagon': ['middle of the outer edge', 'middle of the straight edge'],
  'half-octagon': ['middle of the outer edge', 'middle of the straight edge'],
  'quarter-circle': ['middle of the curve', 'corner'],
}

/** Tip, stem end and the widest places of a leaf, or of another figure with a length and a width. */
export function leafAnchors(
  length: Millimetres,
  width: Millimetres,
  widest: Millimetres,
  hand: Hand,
  form?: FigureForm,
): Anchor[] {
  const first = workingSign(hand)
  const east = Math.PI / 2
  const [above, below] = form ? ENDS[form] : ['tip', 'stem end']
  return [
    anchor('tip', 'tip-1', 1, { x: 0, y: -length / 2 }, above),
    anchor('shoulder', 'shoulder-1', 1, { x: (first * width) / 2, y: widest }, 'first side', first * east),
    anchor('tip', 'tip-2', 2, { x: 0, y: length / 2 }, below),
    anchor('shoulder', 'shoulder-2', 2, { x: (-first * width) / 2, y: widest }, 'second side', -first * east),
  ]
}

/** A direction as an hour of the clock, to the nearest half: "3 o'clock", "half past 4". */
export function clock(angle: Radians): string {
  const halves = ((Math.round((angle / (2 * Math.PI)) * 24) % 24) + 24) % 24
  const hour = Math.floor(halves / 2) || 12
  return halves % 2 === 0 ? `${hour} o'clock` : `half past ${hour}`
}
