/**
 * One repeat of a chart in place of the whole way around: of a motif whose rounds repeat k times, the stretch from where
 * its rounds begin over one repeat or more, drawn as much larger as that has room.
 */
import { angleOf, gather, radiusOf, unwrap } from '../../motif/rounds/ground'
import type { LocatedElement, LocatedRound } from '../../motif/rounds/ground'
import { firstStitchOf } from '../../notation/worked'
import type { WorkedElement, WorkedPlace } from '../../notation/worked'
import type { Millimetres, Radians } from '../../units/quantity'
import { elementsInOrder } from './marks'
import type { ChartPart } from './parts'

const TURN = 2 * Math.PI

/** What is shown of a part: some of its rounds, and of them what lies in one stretch of the way around. */
export interface ChartSegment {
  readonly part: ChartPart
  /** How often its rounds repeat what is marked as the repeat. */
  readonly repeats: number
  /** Directions of the repeat's two ends, in working direction, and how far out it reaches. */
  readonly from: Radians
  readonly to: Radians
  readonly radius: Millimetres
  /** Middle of what is shown. */
  readonly middle: Radians
}

/** More repeats are none that a text would tell. */
const MOST_REPEATS = 60
/** With fewer a segment is hardly smaller than the whole. */
const FEWEST_REPEATS = 3
/** Share of the way around that is shown at least: narrower ones stand alone in a strip (ours). */
const LEAST_SHOWN = 1 / 16
/** Where rounds begin so far apart that more than this would be shown, the whole chart is as good (ours). */
const MOST_SHOWN = 0.55
/** Share of a repeat that is shown before and behind it, so that one sees how it goes on (ours). */
const BESIDE = 0.3
/** Where a repeat puts a stitch, another one of the round stands within so many stitch widths (ours). */
const NEAR = 0.6

/** A symbol by where it stands and what it is; beginning chains as the stitch that they stand for. */
interface Placed {
  readonly angle: Radians
  readonly radius: Millimetres
  readonly sign: string
}

const middleOf = ({ base, top, chain }: LocatedElement): { x: number; y: number } => {
  const half = chain[Math.floor(chain.length / 2)]
  return half ?? { x: (base.x + top.x) / 2, y: (base.y + top.y) / 2 }
}

/** The place that an element goes into; of a beginning chain where the hook stood. */
function placeOf(element: WorkedElement, round: LocatedRound): WorkedPlace | undefined {
  if (element.role !== 'beginning' || element.into.length > 0) return element.into[0]
  const before = elementsInOrder(round).filter(({ element: { index } }) => index < element.index)
  const travel = before.findLast((entry) => entry.element.role === 'travel')
  return travel?.element.into[0] ?? firstStitchOf(round.round.onto)
}

const keyOf = (place: WorkedPlace | undefined): string =>
  place ? `${place.kind} ${place.round} ${place.index} ${place.cell} ${String(place.opposite)}` : ''

/** What repeats in a round: neither what closes it nor what brings the hook to where it begins. */
function repeating(round: LocatedRound): Placed[] {
  const isPart = ({ element }: LocatedElement): boolean =>
    element.role !== 'join' &&
    element.role !== 'travel' &&
    element.role !== 'closing' &&
    (element.role !== 'beginning' || element.standing)
  const parts = elementsInOrder(round).filter(isPart)
  const keys = parts.map(({ element }) => keyOf(placeOf(element, round)))
  const together = new Map<string, number>()
  for (const key of keys) together.set(key, (together.get(key) ?? 0) + 1)
  return parts.map((entry, i) => {
    const { role, form, stitch, legs, count, countsAs, into } = entry.element
    const middle = middleOf(entry)
    // How many share its place tells an increase from the stitches beside it, and how many it takes a decrease.
    const place = `${keys[i] === '' ? 0 : together.get(keys[i]!)} ${Math.max(1, into.length)}`
    const what =
      role === 'beginning' && countsAs
        ? `stitch plain ${countsAs} 1`
        : `${role} ${form} ${stitch} ${role === 'space' || role === 'picot' ? count : legs}`
    return { angle: angleOf(middle), radius: radiusOf(middle), sign: `${what} ${place}` }
  })
}

/** By kind of symbol, in the order of their directions. */
function sorted(round: readonly Placed[]): Map<string, Placed[]> {
  const bySign = new Map<string, Placed[]>()
  for (const each of round) gather(bySign, each.sign, each)
  for (const alike of bySign.values()) alike.sort((one, other) => one.angle - other.angle)
  return bySign
}

/** Whether one of them, sorted by direction, stands within `reach` of a place. */
function stands(alike: readonly Placed[], angle: Radians, radius: Millimetres, reach: Millimetres): boolean {
  const half = reach / Math.max(radius, 1e-9)
  let [low, high] = [0, alike.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if (alike[middle]!.angle < angle - half) low = middle + 1
    else high = middle
  }
  for (let i = low; i < alike.length && alike[i]!.angle <= angle + half; i++) {
    const other = alike[i]!
    if (Math.hypot((other.angle - angle) * radius, other.radius - radius) <= reach) return true
  }
  return false
}

/** Whether a round, turned by a k-th of the way around, lies on itself, but for what its seam makes otherwise. */
function repeatsAfter(
  round: readonly Placed[],
  bySign: ReadonlyMap<string, readonly Placed[]>,
  k: number,
  width: Millimetres,
): boolean {
  if (round.length < k) return false
  let others = Math.min(3, Math.floor((0.6 * round.length) / k))
  for (const { sign, angle, radius } of round) {
    const alike = bySign.get(sign)!
    const turned = angle + TURN / k
    // At 12 o'clock directions begin anew.
    const is = [turned - TURN, turned, turned + TURN].some((way) => stands(alike, way, radius, NEAR * width))
    if (!is && others-- <= 0) return false
  }
  return true
}

/** Where a round begins: the direction of its first symbol. */
function startOf(round: LocatedRound): Radians | null {
  const first = elementsInOrder(round).find(({ element }) => element.role !== 'travel')
  return first ? angleOf(middleOf(first)) : null
}

/** From the last round inward, those that have a number of repeats in common, and the largest such number. */
function repeatingTogether(rounds: readonly LocatedRound[], width: Millimetres) {
  let common = Array.from({ length: MOST_REPEATS - FEWEST_REPEATS + 1 }, (_, i) => MOST_REPEATS - i)
  let first = rounds.length
  for (; first > 0; first--) {
    const round = repeating(rounds[first - 1]!)
    const bySign = sorted(round)
    const more = common.filter((k) => repeatsAfter(round, bySign, k, width))
    if (more.length === 0) break
    common = more
  }
  return { first, repeats: first < rounds.length ? common[0]! : 0 }
}

/**
 * The segment of a part: of its last rounds as many as repeat together; null where they do not, or begin so far from
 * each other that hardly less than the whole would be shown. `width` is that of a stitch in mm.
 */
export function segmentOf(part: ChartPart, width: Millimetres): ChartSegment | null {
  const { first, repeats } = repeatingTogether(part.rounds, width)
  const rounds = part.rounds.slice(first)
  const last = rounds.at(-1)
  if (repeats === 0 || !last) return null
  const starts = rounds.flatMap((round) => startOf(round) ?? [])
  const base = starts.at(-1)
  if (base === undefined) return null
  const near = starts.map((start) => unwrap(start, base))
  const each = TURN / repeats
  const shown = Math.ceil(LEAST_SHOWN * repeats) * each
  const from = Math.min(...near) - BESIDE * each
  const to = Math.max(...near) + shown + BESIDE * each
  if (to - from > MOST_SHOWN * TURN) return null
  const middle = (from + to) / 2
  const isShown = (entry: LocatedElement): boolean => {
    const angle = unwrap(angleOf(middleOf(entry)), middle)
    return angle >= from && angle <= to
  }
  const shownOf = (round: LocatedRound): Set<WorkedElement> =>
    new Set(elementsInOrder(round).flatMap((entry) => (isShown(entry) ? [entry.element] : [])))
  const carriers = new Map<LocatedRound, ReadonlySet<WorkedElement>>()
  for (const [round, elements] of part.carriers)
    carriers.set(round, new Set([...shownOf(round)].filter((element) => elements.has(element))))
  // What the first of these rounds is worked into.
  const below = part.rounds[first - 1]
  if (below) carriers.set(below, shownOf(below))
  const ends = elementsInOrder(last).filter(({ element }) => element.role !== 'travel')
  const gap = ends.length > 0 ? TURN / ends.length : 0
  return {
    part: { rounds, carriers, only: new Set(rounds.flatMap((round) => [...shownOf(round)])) },
    repeats,
    from: base - gap / 2,
    to: base - gap / 2 + each,
    radius: Math.max(...ends.filter(isShown).map(({ top }) => radiusOf(top))),
    middle,
  }
}
