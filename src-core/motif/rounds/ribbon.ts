/**
 * Stitches side by side along a line, as a chart draws them: each over what it is worked into, no two tops closer than
 * they are wide, the line further out where it would be too short for them.
 */
import type { Point } from '../../../shared-types/plan'
import type { Millimetres } from '../../units/quantity'

/** A line that is worked along: clockwise round a figure where it is closed, so that outward is on the left. */
export interface Line {
  readonly points: readonly Point[]
  /** Way along the line to each of its points. */
  readonly arcs: readonly Millimetres[]
  readonly length: Millimetres
  readonly closed: boolean
}

/** What stands on a line, in its order. */
export interface Standing {
  readonly width: Millimetres
  readonly height: Millimetres
  /** Where along the line it begins; null where nothing tells. */
  readonly at: Millimetres | null
}

interface Placed {
  /** Where along the line it begins. */
  readonly at: Millimetres
  readonly top: Point
  /** Outward there. */
  readonly outward: Point
}

const apart = (a: Point, b: Point): Millimetres => Math.hypot(b.x - a.x, b.y - a.y)
const onWay = (a: Point, b: Point, share: number): Point => ({
  x: a.x + (b.x - a.x) * share,
  y: a.y + (b.y - a.y) * share,
})

export function lineThrough(points: readonly Point[], closed: boolean): Line {
  const arcs: Millimetres[] = []
  let length = 0
  points.forEach((point, i) => {
    if (i > 0) length += apart(points[i - 1]!, point)
    arcs.push(length)
  })
  if (closed && points.length > 1) length += apart(points[points.length - 1]!, points[0]!)
  return { points, arcs, length, closed }
}

/** The point at `arc`; beyond the ends of an open line on its last piece drawn out. */
export function alongLine({ points, arcs, length, closed }: Line, arc: Millimetres): Point {
  const count = points.length
  if (count < 2 || !(length > 0)) return points[0] ?? { x: 0, y: 0 }
  const own = closed ? arc - Math.floor(arc / length) * length : arc
  let [low, high] = [0, closed ? count : count - 1]
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (arcs[middle]! <= own) low = middle
    else high = middle
  }
  const [from, to] = [points[low]!, points[(low + 1) % count]!]
  const piece = (low + 1 < count ? arcs[low + 1]! : length) - arcs[low]!
  return piece > 1e-9 ? onWay(from, to, (own - arcs[low]!) / piece) : from
}

/** Outward at `arc`, over `reach` to both sides. */
export function outwardAt(line: Line, arc: Millimetres, reach: Millimetres): Point {
  const [from, to] = [alongLine(line, arc - reach), alongLine(line, arc + reach)]
  const length = apart(from, to) || 1
  return { x: (to.y - from.y) / length, y: -(to.x - from.x) / length }
}

/** Where along the line a point is nearest to it. */
export function nearestOn(line: Line, point: Point): Millimetres {
  const { points, arcs, length, closed } = line
  let [best, least] = [0, Infinity]
  const pieces = closed ? points.length : points.length - 1
  for (let i = 0; i < pieces; i++) {
    const [from, to] = [points[i]!, points[(i + 1) % points.length]!]
    const piece = apart(from, to)
    const along = (point.x - from.x) * (to.x - from.x) + (point.y - from.y) * (to.y - from.y)
    const share = piece > 0 ? Math.min(1, Math.max(0, along / piece ** 2)) : 0
    const off = apart(point, onWay(from, to, share))
    if (off < least) [best, least] = [arcs[i]! + share * piece, off]
  }
  return Math.min(best, length)
}

/** The nearest values to `wanted` that never fall. */
function rising(wanted: readonly number[]): number[] {
  const blocks: { sum: number; count: number }[] = []
  for (const value of wanted) {
    let own = { sum: value, count: 1 }
    for (
      let last = blocks.at(-1);
      last && last.sum / last.count > own.sum / own.count;
      last = blocks.at(-1)
    ) {
      own = { sum: own.sum + last.sum, count: own.count + last.count }
      blocks.pop()
    }
    blocks.push(own)
  }
  return blocks.flatMap(({ sum, count }) => Array.from({ length: count }, () => sum / count))
}

/** The nearest places to `wanted` along a line in which nothing is closer to the next than both are wide. */
function spread(wanted: readonly number[], widths: readonly number[], length: number | null): number[] {
  const count = wanted.length
  const total = widths.reduce((sum, width) => sum + width, 0)
  const share = length !== null && total > length ? length / total : 1
  const laps = length === null ? [0] : [-1, 0, 1]
  let walked = 0
  const before: number[] = []
  const own = laps.flatMap((lap) =>
    wanted.map((place, i) => {
      walked += (share * widths[i]!) / 2
      const begun = walked
      walked += (share * widths[i]!) / 2
      before.push(begun)
      return place + lap * (length ?? 0) - begun
    }),
  )
  const even = rising(own).map((value, i) => value + before[i]!)
  return length === null ? even : even.slice(count, 2 * count)
}

/** Places kept between both ends of a row, where it has room for them all. */
function within(places: readonly number[], widths: readonly number[], low: number, high: number): number[] {
  const steps = places.map((_, i) => (i === 0 ? 0 : (widths[i - 1]! + widths[i]!) / 2))
  if (steps.reduce((sum, step) => sum + step, 0) > high - low + 1e-6) return [...places]
  const kept = [...places]
  kept.forEach((place, i) => (kept[i] = Math.max(place, i === 0 ? low : kept[i - 1]! + steps[i]!)))
  for (let i = kept.length - 1; i >= 0; i--)
    kept[i] = Math.min(kept[i]!, i + 1 < kept.length ? kept[i + 1]! - steps[i + 1]! : high)
  return kept
}

/** Places that nothing tells, evenly between those that are told. */
function filled({ length, closed }: Line, standing: readonly Standing[], width: Millimetres): number[] {
  const count = standing.length
  const told = standing.flatMap(({ at }, i) => (at === null ? [] : [{ i, at }]))
  if (told.length === 0) return standing.map((_, i) => ((i + 0.5) / count) * length)
  // Working goes on: what lies far behind is a lap further.
  const laps = told.map((each) => ({ ...each }))
  for (let k = 1; k < laps.length; k++)
    while (closed && laps[k]!.at < laps[k - 1]!.at - length / 2) laps[k]!.at += length
  const [first, last] = [laps[0]!, laps[laps.length - 1]!]
  // What a row begins and ends with stands beside the rest of it.
  const before = closed
    ? { i: last.i - count, at: last.at - length }
    : { i: -1, at: first.at - (first.i + 1) * width }
  const behind = closed
    ? { i: first.i + count, at: first.at + length }
    : { i: count, at: last.at + (count - last.i) * width }
  const all = [before, ...laps, behind]
  let k = 0
  return standing.map((_, i) => {
    while (all[k + 1]!.i < i) k++
    const [from, to] = [all[k]!, all[k + 1]!]
    return to.i === i ? to.at : from.at + ((to.at - from.at) * (i - from.i)) / (to.i - from.i)
  })
}

/** So many steps to a stitch follow a line. */
const FINE = 3
/** A line that is too short for its stitches is drawn so much further out at a time, at most so often. */
const OUT = { step: 1.12, most: 12 } as const
/** Stitches may stand so close before that (by eye). */
const CLOSE = 0.88
/** Which way is outward is seen over so much of the line to both sides, in stitch widths. */
const REACH = 0.6

/** Everything that stands on a line, `width` being that of a stitch. */
export function standAlong(line: Line, standing: readonly Standing[], width: Millimetres): Placed[] {
  const begins = filled(line, standing, width)
  const { length, closed } = line
  if (!closed) return standInRow(line, standing, begins)
  const sorted = rising(begins)
  const widths = standing.map((each) => each.width)
  const total = widths.reduce((sum, own) => sum + own, 0)
  const steps = Math.max(2, Math.ceil((length / Math.max(width, 1e-9)) * FINE))
  const heightAt = heightsAlong(line, sorted, standing)
  let outer: Line = line
  let factor = 1
  const lifted = Array.from({ length: steps }, (_, i) => {
    const arc = (length * i) / steps
    return {
      from: alongLine(line, arc),
      out: outwardAt(line, arc, REACH * width),
      height: heightAt(arc),
    }
  })
  for (let tries = 0; tries < OUT.most; tries++, factor *= OUT.step) {
    const high = factor
    const points = lifted.map(({ from, out, height }) => ({
      x: from.x + out.x * height * high,
      y: from.y + out.y * height * high,
    }))
    outer = lineThrough(points, true)
    if (outer.length >= CLOSE * total) break
  }
  /** Where on the outer line what begins at `arc` has its top, if it stands straight. */
  const over = (arc: Millimetres): Millimetres => {
    const step = (arc / Math.max(length, 1e-9)) * steps
    const lap = Math.floor(step / steps)
    const own = step - lap * steps
    const index = Math.min(outer.arcs.length - 1, Math.max(0, Math.floor(own)))
    const next = index + 1 < outer.arcs.length ? outer.arcs[index + 1]! : outer.length
    return lap * outer.length + outer.arcs[index]! + (next - outer.arcs[index]!) * (own - index)
  }
  // What shares its place stands on both sides of it.
  const wanted = besideEachOther(begins, widths).map(({ at, aside }) => over(at) + aside)
  const places = spread(wanted, widths, outer.length)
  return begins.map((at, i) => {
    const own = alongLine(outer, places[i]!)
    const out = outwardAt(outer, places[i]!, REACH * width)
    // Lower ones among higher ones end where they end.
    const short = standing[i]!.height - heightAt(sorted[i]!)
    const lower = Math.min(0, short) * factor
    return { at, top: { x: own.x + out.x * lower, y: own.y + out.y * lower }, outward: out }
  })
}

/** Stitches that would lean by more than so much of their height are drawn higher, up to so many times (by eye). */
const LEANS = { most: 1, lifted: 2.2 } as const

/** Stitches of a row all stand alike, whatever they are worked into. */
function standInRow(line: Line, standing: readonly Standing[], begins: readonly number[]): Placed[] {
  const { points, length } = line
  const [from, to] = [points[0] ?? { x: 0, y: 0 }, points.at(-1) ?? { x: 0, y: 0 }]
  const way = apart(from, to)
  // One stitch alone: as rows of a piece go.
  const along = way > 0 ? { x: (to.x - from.x) / way, y: (to.y - from.y) / way } : { x: 0, y: -1 }
  const outward = { x: along.y, y: -along.x }
  const onto = ({ x, y }: Point, axis: Point): number => (x - from.x) * axis.x + (y - from.y) * axis.y
  const over = (arc: Millimetres): Millimetres => onto(alongLine(line, arc), along)
  const widths = standing.map((each) => each.width)
  const wanted = besideEachOther(begins, widths).map(({ at, aside }) => over(at) + aside)
  const places = within(spread(wanted, widths, null), widths, over(0), over(length))
  const leans = standing.map(({ height }, i) =>
    height > 0 ? Math.abs(places[i]! - over(begins[i]!)) / height : 0,
  )
  const lifted = Math.min(LEANS.lifted, Math.max(1, ...leans.map((lean) => lean / LEANS.most)))
  return begins.map((at, i) => {
    const ground = onto(alongLine(line, Math.min(length, Math.max(0, at))), outward)
    const high = ground + standing[i]!.height * lifted
    const [x, y] = [places[i]!, high]
    return {
      at,
      top: { x: from.x + along.x * x + outward.x * y, y: from.y + along.y * x + outward.y * y },
      outward,
    }
  })
}

/** Of each place that several share: how far beside it each of them stands. */
function besideEachOther(
  begins: readonly number[],
  widths: readonly number[],
): { at: number; aside: number }[] {
  const found: { at: number; aside: number }[] = []
  for (let from = 0; from < begins.length;) {
    let to = from + 1
    while (to < begins.length && Math.abs(begins[to]! - begins[from]!) < 1e-6) to++
    const own = widths.slice(from, to)
    let walked = -own.reduce((sum, width) => sum + width, 0) / 2
    for (const width of own) {
      found.push({ at: begins[from]!, aside: walked + width / 2 })
      walked += width
    }
    from = to
  }
  return found
}

/** How high a line's stitches are at a place of it: from each to the next evenly. */
function heightsAlong(
  { length }: Line,
  begins: readonly number[],
  standing: readonly Standing[],
): (arc: Millimetres) => Millimetres {
  const stops = begins.flatMap((at, i) =>
    standing[i]!.height > 0 ? [{ at, height: standing[i]!.height }] : [],
  )
  const [first, last] = [stops[0], stops.at(-1)]
  if (!first || !last) return () => 0
  const all = [{ ...last, at: last.at - length }, ...stops, { ...first, at: first.at + length }]
  let near = 0
  return (arc) => {
    let own = arc
    while (own < all[0]!.at) own += length
    while (own > all[all.length - 1]!.at) own -= length
    // Asked in the order of the line, mostly: from where it was asked last.
    while (near > 0 && all[near - 1]!.at >= own) near--
    while (near < all.length && all[near]!.at < own) near++
    const next = near < all.length ? near : -1
    if (next < 0) return all[all.length - 1]!.height
    if (next === 0) return all[0]!.height
    const [from, to] = [all[next - 1]!, all[next]!]
    const way = to.at - from.at
    return way > 1e-9 ? from.height + ((to.height - from.height) * (own - from.at)) / way : to.height
  }
}
