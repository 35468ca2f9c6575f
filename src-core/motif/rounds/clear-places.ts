/** Where in a chart small symbols have room between what stands there: the dots of slip stitches, chains that do not count. */
import type { Point } from '../../../shared-types/plan'
import type { ResolvedGauge } from '../../stitches/gauge'
import type { Millimetres } from '../../units/quantity'
import { MOST_SYMBOLS } from './constants'
import type { LocatedElement } from './ground'

/** From one point to another. */
export type Way = readonly [Point, Point]

/** What a symbol keeps from the middle of posts, bunches, bars and chains, in stitch widths. */
type Clear = Readonly<Record<'post' | 'bunch' | 'bar' | 'chain', number>>

/** A dot keeps so far from posts and chains, in stitch widths (by eye). */
const DOT_CLEAR = { post: 0.24, bunch: 0.16, bar: 0.17, chain: 0.34 } as const
const DOTS_APART = 0.3
/** Ovals of a chain lie on what is nearer than half of what both are wide; those that are moved keep clear of it. */
const OVAL_LIES = { post: 0.14, bunch: 0.12, bar: 0.06, chain: 0.2 } as const
const OVAL_CLEAR = { post: 0.19, bunch: 0.2, bar: 0.17, chain: 0.3 } as const
/** Where the ovals of a chain begin and end, as shares of it, and how long they are, as one of their steps. */
const OVALS = { from: 0.12, to: 1, long: 0.9 } as const
/** Half of a bar and of the lens of a bunch, in stitch widths; the share of a post from which on it is drawn. */
const DRAWN = { bar: 0.27, bulge: 0.34, from: 0.1 } as const

/** Whether no symbol lies on a point, which keeps its distance from all. */
function isClear(point: Point, elements: readonly LocatedElement[], width: Millimetres, off: Clear): boolean {
  return elements.every(({ element, base, top, chain, feet = [base] }) => {
    if (chain.length > 0) return chain.every((each) => distance(each, point) >= off.chain * width)
    const isBunch = feet.length < 2 && (element.legs > 1 || element.form !== 'plain')
    const kind = element.role !== 'stitch' ? 'chain' : isBunch ? 'bunch' : 'post'
    return feet.every((foot) => {
      const [along, aside, length] = onWay(point, foot, top)
      const share = along / length
      const bulge = kind === 'bunch' ? 4 * DRAWN.bulge * share * (1 - share) : 0
      const onPost = along > DRAWN.from * length && along < length && aside < (bulge + off[kind]) * width
      const onBar = Math.abs(along - length) < off.bar * width && aside < (DRAWN.bar + off.bar) * width
      return !onPost && !onBar
    })
  })
}

/** The first of some points that no symbol of the round lies on; the first of all where there is none. */
export function clearPlace(
  elements: readonly LocatedElement[],
  { width }: ResolvedGauge,
): (points: readonly Point[]) => Point {
  const taken: Point[] = []
  return (points) => {
    // No chart is drawn of so many, and each look goes through all of them.
    if (elements.length > MOST_SYMBOLS) return points[0]!
    const found =
      points.find(
        (point) =>
          isClear(point, elements, width, DOT_CLEAR) &&
          taken.every((each) => distance(each, point) > DOTS_APART * width),
      ) ?? points[0]!
    taken.push(found)
    return found
  }
}

/** The usual way where so many chains lie on no symbol there; else the first of others on which they keep clear of all. */
export function clearWay(
  elements: readonly LocatedElement[],
  { width }: ResolvedGauge,
  chains: number,
  usual: Way,
  others: readonly Way[],
): Way {
  if (elements.length > MOST_SYMBOLS) return usual
  const step = (OVALS.to - OVALS.from) / Math.max(1, chains)
  const shares = Array.from({ length: chains }, (_, k) => OVALS.from + (k + 0.5) * step).flatMap((middle) => [
    middle - (OVALS.long * step) / 2,
    middle,
    middle + (OVALS.long * step) / 2,
  ])
  const isFree = ([from, to]: Way, off: Clear): boolean =>
    shares.every((share) => {
      const point = { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share }
      return isClear(point, elements, width, off)
    })
  return isFree(usual, OVAL_LIES) ? usual : (others.find((way) => isFree(way, OVAL_CLEAR)) ?? usual)
}

/** Whether a dot has room beside chains from one point to another. */
export function isBeside(point: Point, from: Point, to: Point, { width }: ResolvedGauge): boolean {
  const [along, aside, length] = onWay(point, from, to)
  const past = Math.max(0, -along, along - length)
  return Math.hypot(past, aside) >= DOT_CLEAR.chain * width
}

/** How far a point lies along a way and beside it, and how long that is. */
function onWay(point: Point, from: Point, to: Point): [Millimetres, Millimetres, Millimetres] {
  const [dx, dy] = [to.x - from.x, to.y - from.y]
  const length = Math.hypot(dx, dy) || 1
  const [x, y] = [point.x - from.x, point.y - from.y]
  return [(x * dx + y * dy) / length, Math.abs(x * dy - y * dx) / length, length]
}

/** How far two points lie from each other. */
export const distance = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y)
