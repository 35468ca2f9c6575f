/**
 * A leaf: rounds on a foundation chain that is worked along on both sides. The tip (the chain that was made first)
 * points to 12 o'clock, the hook begins at the other end; seen by a left-hander work goes up on the left.
 */
import type { Point } from '../../../shared-types/plan'
import type { WorkedElement, WorkedPlace, WorkedRound } from '../../notation/worked'
import type { ResolvedGauge } from '../../stitches/gauge'
import type { Millimetres, Radians } from '../../units/quantity'
import { archAt, archBetween } from './arch'
import { at, heightOf, middleOf } from './ground'
import type { LocatedElement, LocatedRound } from './ground'

/** Middles of the chains of a foundation chain, the first made at the tip. */
export const stemPoints = (chains: number, width: Millimetres): Point[] =>
  Array.from({ length: chains }, (_, cell) => ({ x: 0, y: (cell + 0.5 - chains / 2) * width }))

/** A join lies so far under the end of the chain, in stitch widths (by eye). */
const JOIN_BELOW = 0.3
/** … and from those of the rounds before. */
const JOINS_APART = 0.32

/** Up to so many chains between two stitches are drawn so far over their tops, in stitch widths (by eye). */
const FEW_CHAINS = 2
const OVER_TOPS = 0.3

/** A place to stand on: a point and the direction that stitches take from it. */
interface Ground {
  readonly point: Point
  readonly direction: Radians
}

/** Everything of the rounds in its place, in mm about the middle of the chain. */
export function locateLeaf(
  worked: readonly WorkedRound[],
  chains: number,
  gauge: ResolvedGauge,
): LocatedRound[] {
  const stem = stemPoints(chains, gauge.width)
  const grounds: (readonly (Ground | null)[])[] = []
  return worked.map((round, order) => {
    const tops = standOn(round, stem, worked, grounds, gauge)
    const elements = round.elements.flatMap((element, i) => located(round, i, element, tops, gauge))
    grounds.push(
      round.places.map((place) => {
        const own = tops.get(place.element)
        if (own) return { point: own.top, direction: own.direction }
        const loop = elements.find((entry) => entry.element.index === place.element)
        return loop ? { point: loop.top, direction: directionOf(loop) } : null
      }),
    )
    return {
      round,
      seats: [],
      elements,
      asides: asidesOf(round, elements, (chains / 2 + JOINS_APART * order) * gauge.width, gauge),
      edge: elements.map((entry) => entry.top),
      radius: (chains * gauge.width) / 2,
      corners: 0,
      cornerAngles: [],
      around: 2 * Math.PI,
      stacked: 0,
      stackedAt: [],
      petals: [],
      extra: 0,
      length: 0,
      tight: 0,
    }
  })
}

interface Stood extends Ground {
  readonly base: Point
  readonly top: Point
  readonly over: LocatedElement['over']
}

const directionOf = ({ base, top }: Pick<LocatedElement, 'base' | 'top'>): Radians =>
  Math.atan2(top.x - base.x, base.y - top.y)

/** What a place of an earlier round is to stand on; between two stitches the middle of both. */
function groundOf(
  { kind, round, index }: WorkedPlace,
  worked: readonly WorkedRound[],
  grounds: readonly (readonly (Ground | null)[])[],
): Ground | null {
  const own = grounds[round] ?? []
  if (kind !== 'gap') return own[index] ?? null
  const places = worked[round]?.places ?? []
  const stitches = own.filter((_, i) => places[i]?.kind === 'stitch')
  const [before, next] = [stitches[index], stitches[(index + 1) % stitches.length]]
  if (!before || !next) return before ?? null
  const { x, y } = middleOf(before.point, next.point)
  return { point: { x, y }, direction: (before.direction + next.direction) / 2 }
}

/** Standing elements by their index. */
function standOn(
  round: WorkedRound,
  stem: readonly Point[],
  worked: readonly WorkedRound[],
  grounds: readonly (readonly (Ground | null)[])[],
  gauge: ResolvedGauge,
): Map<number, Stood> {
  const runs: { members: WorkedElement[]; key: string }[] = []
  for (const element of round.elements) {
    if (!element.standing && element.role !== 'slip') continue
    const place = element.into[0]
    const key = place ? `${place.round} ${place.kind === 'chain' ? place.cell : place.index}` : ''
    const last = runs[runs.length - 1]
    if (last && last.key === key) last.members.push(element)
    else runs.push({ members: [element], key })
  }
  const found = new Map<number, Stood>()
  let last = -Infinity
  for (const { into } of round.elements) for (const { cell } of into) last = Math.max(last, cell)
  for (const { members, key } of runs) {
    // "in same ch as first 2 sc": back in the first place, from the other side.
    const isBack = runs.length > 1 && key === runs[0]!.key && members !== runs[0]!.members
    const place = members[0]!.into[0]
    const count = members.length
    const below = place && place.round >= 0 ? groundOf(place, worked, grounds) : null
    const cell = below ? -1 : Math.min(stem.length - 1, Math.max(0, place?.cell ?? 0))
    const chains = place?.kind === 'space' ? (worked[place.round]?.places[place.index]?.chains ?? 0) : 0
    members.forEach((element, i) => {
      const step = i - (count - 1) / 2
      const height = element.role === 'slip' ? gauge.height('sl st') : heightOf(element, gauge)
      let base: Point
      let direction: Radians
      if (below) {
        base = below.point
        direction = below.direction + (count > 1 ? fanOf(step, height, gauge) : 0)
      } else if (cell === 0 && count > 1) {
        // Around the end: from one side over the tip to the other.
        direction = (step * Math.PI) / count
        base = moved(stem[0]!, direction, gauge.width * 0.3)
      } else {
        const side = element.into[0]?.opposite || isBack ? 1 : -1
        const own = stem[cell]!
        base = { x: own.x + side * gauge.width * 0.3, y: own.y }
        direction = (side * Math.PI) / 2 + (count > 1 ? fanOf(step, height, gauge) : 0)
        // Around the end that the work begins at: a quarter on either side.
        if (cell === last && count > 1) {
          const down = side < 0 ? count - 1 - i : i
          direction = side * (Math.PI / 2) * (1 + down / count)
        }
      }
      const top = moved(base, direction, Math.max(0, height - (below ? 0 : gauge.width * 0.3)))
      const over = below && chains > 0 ? { chains, lean: direction - below.direction } : undefined
      found.set(element.index, { base, top, point: top, direction, over })
    })
  }
  return found
}

/** Stitches in one place lean apart until their tops are a stitch from each other. */
const fanOf = (step: number, height: Millimetres, gauge: ResolvedGauge): Radians =>
  step * Math.min(Math.PI / 3, gauge.width / Math.max(height, 1e-9))

const moved = (point: Point, direction: Radians, distance: Millimetres): Point => {
  const step = at(distance, direction)
  return { x: point.x + step.x, y: point.y + step.y }
}

function located(
  round: WorkedRound,
  index: number,
  element: WorkedElement,
  tops: ReadonlyMap<number, Stood>,
  gauge: ResolvedGauge,
): LocatedElement[] {
  const own = tops.get(element.index)
  if (own) {
    const base = element.role === 'slip' ? own.top : own.base
    return [{ element, base, top: own.top, chain: [], ...(own.over && { over: own.over }) }]
  }
  const before = nearest(round, index, -1, tops)
  if (element.role === 'picot' && before) {
    const size = element.count * gauge.width * 0.35
    const middle = moved(before.top, before.direction, size / 2)
    const chain = Array.from({ length: element.count }, (_, k) =>
      moved(middle, before.direction + Math.PI + ((k + 1) / (element.count + 1)) * 2 * Math.PI, size / 2),
    )
    return [{ element, base: before.top, top: moved(before.top, before.direction, size), chain }]
  }
  const after = nearest(round, index, 1, tops)
  if (element.role !== 'space' || !before || !after) return []
  const arch = archBetween(before.top, after.top, element.count * gauge.width)
  const middle = (Math.sin(before.direction) + Math.sin(after.direction)) / 2
  const up = (Math.cos(before.direction) + Math.cos(after.direction)) / 2
  const length = Math.hypot(middle, up) || 1
  const outward = { x: middle / length, y: -up / length }
  const point = (share: number): Point => archAt(arch, share, outward).point
  // Few chains lie close over the tops that they join.
  const clear = element.count <= FEW_CHAINS ? OVER_TOPS * gauge.width : 0
  const chain = Array.from({ length: element.count }, (_, k) => {
    const { x, y } = point((k + 0.5) / element.count)
    return { x: x + outward.x * clear, y: y + outward.y * clear }
  })
  const apex = point(0.5)
  const top = { x: apex.x + outward.x * clear, y: apex.y + outward.y * clear }
  return [{ element, base: before.top, top, chain, end: after.top }]
}

function nearest(
  round: WorkedRound,
  index: number,
  step: 1 | -1,
  tops: ReadonlyMap<number, Stood>,
): Stood | null {
  for (let k = index + step; k >= 0 && k < round.elements.length; k += step) {
    const found = tops.get(round.elements[k]!.index)
    if (found) return found
  }
  return null
}

/** Chains that do not count stand before the first stitch; a join lies between the last and the first. */
function asidesOf(
  round: WorkedRound,
  elements: readonly LocatedElement[],
  end: Millimetres,
  gauge: ResolvedGauge,
): LocatedElement[] {
  const first = elements[0]
  const last = elements[elements.length - 1]
  if (!first || !last) return []
  return round.elements.flatMap((element) => {
    if (element.role === 'beginning' && !element.standing) {
      const back = directionOf(first) - Math.PI / 2
      const base = moved(first.base, back, gauge.width / 2)
      return [{ element, base, top: moved(first.top, back, gauge.width / 2), chain: [] }]
    }
    if (element.role !== 'join' && element.role !== 'travel') return []
    // Under the end of the chain, between the last stitch and the first.
    const below = Math.max(first.top.y, last.top.y, end) + JOIN_BELOW * gauge.width
    const point = { x: (first.top.x + last.top.x) / 2, y: below }
    return [{ element, base: point, top: point, chain: [] }]
  })
}
