/** What a motif begins with, as the chart shows it: the ring, or the chain that a leaf is worked on. */
import type { Point } from '../../../shared-types/plan'
import type { Beginning } from '../../motif/rounds/account'
import { radiusOf } from '../../motif/rounds/ground'
import type { LocatedRound } from '../../motif/rounds/ground'
import type { FigureItem } from '../figure'
import { drawText } from '../figure'
import { capitalDrop, SMALLEST_TYPE } from '../lettering'
import { chainInk, ovalPath, PROPORTION } from './symbols'
import type { Ink } from './symbols'
import { toPage } from './marks'
import type { ChartView } from './marks'

/** Radius of a drawn adjustable ring in stitch widths (ours). */
const SMALLEST_RING = 0.3
const ROOM = 0.08

/** A ring is drawn out to stitches that begin so many stitch widths outside of it, up to so far inside of them (ours) … */
const EMPTY = 0.6
const INSIDE = 0.1
/** … its chains at most so many times as far apart as they are. */
const DRAWN_OUT = 2
/** The turns of a wide adjustable ring lie so far apart, in stitch widths. */
const TURNS_APART = 0.22
/** The two lines of a bought ring lie so far apart, in stitch widths. */
const BOUGHT_WIDE = 0.3

/** Outer radius of the ring in mm of the motif; 0 where there is none. Where a round needs room, its ring grows with it. */
export function ringRadius(
  { ringChains, stem, stitchWidth }: Beginning,
  first: LocatedRound | undefined,
): number {
  if (stem.length > 0 || !first) return 0
  const own = (ringChains * stitchWidth) / (2 * Math.PI)
  const plain = Math.max(SMALLEST_RING * stitchWidth, own)
  const feet = first.elements.flatMap(({ element, base, chain }) =>
    element.into[0]?.kind === 'ring' && chain.length === 0 ? [radiusOf(base)] : [],
  )
  const inside = Math.min(...feet) - INSIDE * stitchWidth
  const isEmpty = feet.length > 0 && ringChains !== 1 && inside - plain > EMPTY * stitchWidth
  return isEmpty ? Math.min(inside, ringChains > 0 ? DRAWN_OUT * own : inside) : plain
}

/** Strokes of the ring or the chain; nothing for parts that do not show it. */
export function beginningInk({ ringChains, stem, isBought }: Beginning, view: ChartView): Ink {
  if (stem.length > 0) {
    const points = stem.map((point) => toPage(point, view))
    const step = points.length > 1 ? minusOf(points[1]!, points[0]!) : { x: 0, y: view.unit }
    const first = points[0]!
    const last = points[points.length - 1]!
    const ends: [Point, Point] = [
      { x: first.x - step.x, y: first.y - step.y },
      { x: last.x + step.x, y: last.y + step.y },
    ]
    return chainInk(points, ends, view.unit)
  }
  const { centre, unit } = view
  if (ringChains < 2) {
    if (ringChains === 1)
      return { strokes: ovalPath(centre, { x: 0, y: 1 }, 0.5 * unit, PROPORTION.ovalWidth * unit), fills: [] }
    if (isBought) {
      const radius = view.ring - ROOM * unit
      const rings = [radius, Math.max(radius / 2, radius - BOUGHT_WIDE * unit)]
      return { strokes: rings.flatMap((r) => ovalPath(centre, { x: 0, y: 1 }, 2 * r, 2 * r)), fills: [] }
    }
    return { strokes: spiral(centre, Math.max(0.1, view.ring - ROOM * unit), unit), fills: [] }
  }
  const radius = view.ring - (ROOM + PROPORTION.ovalWidth / 2) * unit
  const step = 2 * radius * Math.sin(Math.PI / ringChains)
  const length = Math.min(DRAWN_OUT * PROPORTION.ovalLength * unit, step * 0.86)
  const ovals = Array.from({ length: ringChains }, (_, k) => {
    const angle = ((k + 0.5) / ringChains) * 2 * Math.PI
    const point = { x: centre.x + radius * Math.sin(angle), y: centre.y - radius * Math.cos(angle) }
    return ovalPath(point, { x: Math.cos(angle), y: Math.sin(angle) }, length, PROPORTION.ovalWidth * unit)
  })
  return { strokes: ovals.flat(), fills: [] }
}

/** One and three quarter turns outward: the tail that is pulled. */
function spiral(centre: Point, radius: number, unit: number): Ink['strokes'] {
  const turns = 1.75
  const inner = Math.max(0.35, 1 - (turns * TURNS_APART * unit) / radius)
  const steps = 42
  const at = (share: number): Point => {
    const angle = share * turns * 2 * Math.PI
    const r = radius * (inner + (1 - inner) * share)
    return { x: centre.x + r * Math.sin(angle), y: centre.y - r * Math.cos(angle) }
  }
  const path: (readonly ['M', number, number] | readonly ['L', number, number])[] = []
  for (let i = 0; i <= steps * 2; i++) {
    const p = at(i / (steps * 2))
    path.push(i === 0 ? ['M', p.x, p.y] : ['L', p.x, p.y])
  }
  return path
}

/** The number of chains in the middle of their ring, where it can be printed. */
export function ringCount({ ringChains, stem }: Beginning, view: ChartView): FigureItem[] {
  if (ringChains < 2 || stem.length > 0) return []
  const free = view.ring - (2 * ROOM + PROPORTION.ovalWidth) * view.unit
  const height = 2 * capitalDrop(SMALLEST_TYPE)
  if (free < height * 0.75) return []
  const { x, y } = view.centre
  return [drawText(String(ringChains), x, y + height / 2, SMALLEST_TYPE, { anchor: 'middle' })]
}

const minusOf = (a: Point, b: Point): Point => ({ x: a.x - b.x, y: a.y - b.y })
