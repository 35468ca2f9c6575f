/** What the rounds of a leaf, an oval or a piece in rows stand on: the chain, a block of rows, the round before. */
import type { Point } from '../../../shared-types/plan'
import type { WorkedPlace, WorkedRound } from '../../notation/worked'
import type { Millimetres } from '../../units/quantity'
import { middleOf } from './ground'
import { lineThrough, nearestOn } from './ribbon'
import type { Line } from './ribbon'

/** Stitches begin so far beside the middle of their chain, in stitch widths (by eye). */
export const BESIDE_CHAIN = 0.3
/** Ends of rows lie so far beside their last stitches where chains stand up there, in stitch widths (by eye). */
const BESIDE_TURNS = 1.4

/** Where a place is, and along the line that is stood on. */
export interface At {
  readonly point: Point
  readonly arc: Millimetres
  /** Of a post: where the stitch that it belongs to begins. */
  readonly foot?: Point
  /** Chains of a space. */
  readonly chains?: number
}

/** What the next round stands on. */
export interface Ground {
  readonly line: Line
  /** By round and place of it: the point that it is at, and where along the line that is. */
  readonly at: (place: WorkedPlace) => At | null
  /** Where along the line it turns: groups beside these go around them. */
  readonly corners: readonly Millimetres[]
}

/** A place that a round leaves. */
interface Place {
  readonly point: Point | null
  /** How far along the line of its own round it is. */
  readonly arc: Millimetres | null
  readonly foot: Point | null
  readonly isStitch: boolean
  readonly chains: number
}
/** By worked round: its places. */
export type Places = Map<number, Place[]>

/** The chain: one side of it for rows; for a leaf both, and around its ends. */
export function chainGround(stem: readonly Point[], last: number, both: boolean, width: Millimetres): Ground {
  const aside = BESIDE_CHAIN * width
  const used = stem.slice(0, last + 1)
  const near = [...used].reverse().map(({ x, y }) => ({ x: x - aside, y }))
  const far = used.map(({ x, y }) => ({ x: x + aside, y }))
  const [tip, end] = [used[0]!, used[used.length - 1]!]
  const caps = [
    { x: 0, y: end.y + aside },
    { x: 0, y: tip.y - aside },
  ] as const
  const line = both ? lineThrough([caps[0], ...near, caps[1], ...far], true) : lineThrough(near, false)
  const first = both ? 1 : 0
  return {
    line,
    corners: both ? [line.arcs[0]!, line.arcs[1 + near.length]!] : [],
    at: ({ kind, cell, opposite }) => {
      if (kind !== 'chain') return null
      const own = Math.min(last, Math.max(0, cell))
      const index = opposite && both ? first + near.length + 1 + own : first + last - own
      return { point: line.points[index]!, arc: line.arcs[index]! }
    },
  }
}

/** Which way values go on the whole: 1 where they rise, −1 where they fall. */
const wayOf = (values: readonly number[]): number => Math.sign((values.at(-1) ?? 0) - (values[0] ?? 0))

/** Whether a border counts the free side of its chain from the end that it does not come to first. */
function comesFromBehind({ elements }: WorkedRound, under: number, places: Places): boolean {
  const into = elements.flatMap((element) => (element.standing ? element.into.slice(0, 1) : []))
  const along = wayOf(
    into.flatMap(({ kind, round, index }) =>
      kind !== 'chain' && round === under ? (places.get(under)?.[index]?.arc ?? []) : [],
    ),
  )
  return along * wayOf(into.flatMap(({ kind, cell }) => (kind === 'chain' ? [cell] : []))) < 0
}

/** Around a block of rows: its last row, the ends of its rows, the free side of its chain, the ends again. */
export function blockGround(
  border: WorkedRound,
  rows: readonly Line[],
  stem: readonly Point[],
  last: number,
  places: Places,
  under: number,
  width: Millimetres,
  turns: boolean,
): Ground {
  const top = rows[rows.length - 1]!.points
  const half = (turns ? BESIDE_TURNS : 1 / 2) * width
  const ends = (which: 0 | -1, off: Millimetres): Point[] =>
    rows.map(({ points }) => {
      const { x, y } = points.at(which)!
      return { x, y: y + off }
    })
  const free = stem.slice(0, last + 1).map(({ x, y }) => ({ x: x + BESIDE_CHAIN * width, y }))
  const corners = [
    { x: free[0]!.x, y: free[0]!.y - half },
    { x: free[free.length - 1]!.x, y: free[free.length - 1]!.y + half },
  ] as const
  const points = [...top, ...ends(-1, -half).reverse(), corners[0], ...free, corners[1], ...ends(0, half)]
  const line = lineThrough(points, true)
  const ofFree = top.length + rows.length + 1
  const around = [top.length, ofFree - 1, ofFree + free.length, points.length - 1]
  // The way round is one: along the last row on one side, back along the chain on the other.
  const flipped = comesFromBehind(border, under, places)
  return {
    line,
    corners: around.map((index) => line.arcs[index]!),
    at: (place) => {
      if (place.kind === 'chain') {
        const own = Math.min(last, Math.max(0, place.cell))
        const index = ofFree + (flipped ? last - own : own)
        return { point: line.points[index]!, arc: line.arcs[index]! }
      }
      const found = placeOf(place, places)
      if (!found) return null
      const own = place.round === under ? places.get(under)?.[place.index]?.arc : null
      const arc = own ?? nearestOn(line, found.point)
      return { ...found, arc }
    },
  }
}

/** The line of a round, `own` being its index. `flipped`: gaps are counted from its end, as a row that turns back does. */
export const roundGround = (line: Line, places: Places, own: number, flipped: boolean): Ground => ({
  line,
  corners: [],
  at: (place) => {
    const found = placeOf(place, places, flipped)
    const known = place.round === own && place.kind !== 'gap' ? places.get(own)?.[place.index]?.arc : null
    return found && { ...found, arc: known ?? nearestOn(line, found.point) }
  },
})

function placeOf(
  { kind, round, index, post }: WorkedPlace,
  places: Places,
  flipped = false,
): Omit<At, 'arc'> | null {
  const own = places.get(round) ?? []
  if (kind !== 'gap') {
    const { point, foot, chains } = own[index] ?? { point: null, foot: null, chains: 0 }
    return point && { point, ...(post && foot && { foot }), ...(kind === 'space' && { chains }) }
  }
  const stitches = own.flatMap(({ point, isStitch }) => (isStitch && point ? [point] : []))
  const from = flipped ? stitches.length - 2 - index : index
  const [before, next] = [stitches[from], stitches[(from + 1) % Math.max(1, stitches.length)]]
  return before && next ? { point: middleOf(before, next) } : null
}
