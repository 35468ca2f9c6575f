/** Where the line of an edging turns: the corners of the whole, and the tips and dips along it. */
import type { Point } from '../../shared-types/plan'
import { distance, signedArea } from '../geometry/points'
import type { Outline } from '../geometry/points'
import { simplify } from '../geometry/simplify'
import type { Millimetres, Radians } from '../units/quantity'
import { EDGING } from './constants'
import type { MarkKind } from './marks'

/** A place on a line at which it turns. */
export interface LinePlace {
  readonly kind: MarkKind
  /** Along the line from its first point. */
  readonly along: Millimetres
  /** Clockwise: outward tips are positive. */
  readonly turn: Radians
  /** Of a tip or dip: what a line beside it at a height of 1 is longer for it, below zero in a dip. */
  readonly growth?: number
  /** Turns that the line makes to the next place, and from the last one, beside halves of the turns at places. */
  readonly after?: Radians
  readonly before?: Radians
}

/** A corner of an open end, by the motif that it is a corner of. */
export interface OpenCorner {
  readonly middle: Point
  /** mm. No part of the motif is farther along the map from its middle. */
  readonly reach: Millimetres
  /** Where it points. */
  readonly out: Point
  /** The notch that it stands at lies on the way to the next corner, or on that from the last one. */
  readonly into: 'next' | 'last'
}

const between = (a: Radians): Radians => Math.atan2(Math.sin(a), Math.cos(a))

/** How far along a closed line its points stand; the last entry is its length. */
export function alongOf(line: Outline): Millimetres[] {
  const along: Millimetres[] = [0]
  line.forEach((a, i) => along.push(along[i]! + distance(a, line[(i + 1) % line.length]!)))
  return along
}

/** The point so far along a line, of which `along` tells where its points stand; an open one ends at its last. */
export function pointAlong(
  line: Outline,
  along: readonly Millimetres[],
  mm: Millimetres,
  isOpen = false,
): Point {
  let [low, high] = [0, line.length - (isOpen ? 1 : 0)]
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (along[middle]! <= mm) low = middle
    else high = middle
  }
  const [a, b] = [line[low]!, line[(low + 1) % line.length]!]
  const share = (mm - along[low]!) / (along[low + 1]! - along[low]! || 1)
  return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share }
}

/** mm. Points that lie as far out: a side that faces the direction. */
const AS_FAR: Millimetres = 1e-3

/**
 * The corners of a line that runs clockwise: where it lies farthest out in each direction, each once, along it from the
 * first. Together they make one whole turn.
 */
export function cornersAlong(line: Outline, directions: readonly Point[]): LinePlace[] {
  if (line.length < 3 || signedArea(line) < 0 || directions.length === 0) return []
  const along = alongOf(line)
  const length = along[line.length]!
  const found = directions.map((direction) => farthest(line, along, direction))
  const first = found[0]!
  const after = (at: Millimetres) => (at - first + length) % length
  const own = [...new Set(found)].sort((a, b) => after(a) - after(b))
  return own.map((at) => ({ kind: 'corner', along: at, turn: (2 * Math.PI) / own.length }))
}

/** Where a line lies farthest out; in the middle of a side that faces the direction. */
function farthest(line: Outline, along: readonly Millimetres[], { x, y }: Point): Millimetres {
  const far = line.map((point) => point.x * x + point.y * y)
  const most = far.reduce((best, each) => Math.max(best, each))
  const length = along[line.length]!
  const ends = far.flatMap((each, i) => (each > most - AS_FAR ? along[i]! : []))
  // The side begins behind the longest way without any of its points, which may be that round the line's first point.
  const gaps = ends.map((each, i) => (each - ends.at(i - 1)! + length) % length)
  const start = gaps.reduce((widest, gap, i) => (gap > gaps[widest]! ? i : widest), 0)
  const [from, to] = [ends[start]!, ends.at(start - 1)!]
  return (from + ((to - from + length) % length) / 2) % length
}

/** How far along an open line its points stand; the last entry is its length. */
const openAlong = (line: Outline): Millimetres[] => alongOf(line).slice(0, -1)

/** The corners of an open line that begins anew where it ends, each once, along it; each turns by a right angle. */
export function openCornersAlong(line: Outline, corners: readonly OpenCorner[]): LinePlace[] {
  const along = openAlong(line)
  const round = line.at(-1)!.x - line[0]!.x
  return corners
    .map(({ middle, reach, out, into }): LinePlace => {
      let [best, apart, at] = [-Infinity, Infinity, 0]
      line.forEach(({ x, y }, i) => {
        const off = x - middle.x - round * Math.round((x - middle.x) / round)
        const far = off * out.x + (y - middle.y) * out.y
        const own = Math.hypot(off, y - middle.y)
        // The corner of a motif that stands higher may lie as far out: it is the nearer one.
        const isIt = far > best + AS_FAR || (far > best - AS_FAR && own < apart)
        if (Math.abs(off) > reach || !isIt) return
        ;[best, apart, at] = [far, own, along[i]!]
      })
      const inner = { [into === 'next' ? 'after' : 'before']: -Math.PI / 2 }
      return { kind: 'corner', along: at, turn: Math.PI / 2, ...inner }
    })
    .sort((a, b) => a.along - b.along)
}

/** The tips and dips of an open line that begins anew where it ends; `down`: it is the edge of what lies above it. */
export function openTipsAlong(
  line: Outline,
  down: boolean,
  smooth: Millimetres,
  oneTip: Millimetres,
): LinePlace[] {
  const round = line.at(-1)!.x - line[0]!.x
  const length = openAlong(line).at(-1)!
  // Told in the second of three times round, where neither end is near; of a bottom its mirror image.
  const thrice = [0, 1, 2].flatMap((again) =>
    line.slice(0, -1).map(({ x, y }) => ({ x: x + again * round, y: down ? -y : y })),
  )
  return tipsAlong(thrice, smooth, oneTip)
    .map((place) => ({ ...place, along: place.along - length }))
    .filter(({ along }) => along >= 0 && along < length)
}

/** A line beside a corner that turns by θ is 2·tan(θ/2) times its height longer; a sharper one than this is blunted. */
const mitre = (turn: Radians): number =>
  2 * Math.tan(Math.min(EDGING.sharpest, Math.abs(turn)) / 2) * Math.sign(turn)

/** The tips and dips of a closed line: what turns the same way within `oneTip` mm is one of them. */
export function tipsAlong(line: Outline, smooth: Millimetres, oneTip: Millimetres): LinePlace[] {
  const plain = simplify(line, smooth)
  if (plain.length < 3) return []
  const [full, all] = [alongOf(line), new Map(line.map((point, i) => [`${point.x} ${point.y}`, i]))]
  const turning = plain.map((at, i) => {
    const before = plain[(i + plain.length - 1) % plain.length]!
    const after = plain[(i + 1) % plain.length]!
    const turn = between(
      Math.atan2(after.y - at.y, after.x - at.x) - Math.atan2(at.y - before.y, at.x - before.x),
    )
    return { along: full[all.get(`${at.x} ${at.y}`) ?? 0]!, turn }
  })
  const length = full[line.length]!
  const sign = (i: number) => Math.sign(turning[(i + turning.length) % turning.length]!.turn)
  const gap = (i: number) =>
    (turning[i % turning.length]!.along -
      turning[(i + turning.length - 1) % turning.length]!.along +
      length) %
    length
  // Begins where something else ends.
  const start = turning.findIndex((_, i) => sign(i) !== sign(i - 1) || gap(i) > oneTip)
  const runs: { along: Millimetres; turn: Radians }[][] = []
  for (let k = 0; k < turning.length; k++) {
    const i = (Math.max(0, start) + k) % turning.length
    const isNew = k === 0 || sign(i) !== sign(i - 1) || gap(i) > oneTip
    if (isNew) runs.push([])
    runs.at(-1)!.push(turning[i]!)
  }
  const places = runs.map((run): LinePlace => {
    const turn = run.reduce((sum, each) => sum + each.turn, 0)
    const from = run[0]!.along
    const middle = run.reduce((sum, each) => sum + ((each.along - from + length) % length) * each.turn, 0)
    const along = (from + (turn === 0 ? 0 : middle / turn) + length) % length
    const growth = run.reduce((sum, each) => sum + mitre(each.turn), 0)
    return { kind: turn > 0 ? 'tip' : 'dip', along, turn, growth }
  })
  return places.filter(({ turn }) => Math.abs(turn) >= EDGING.turn).sort((a, b) => a.along - b.along)
}
