/** Between which tips a bridging edging has how many chains, as somebody at the edge can tell them apart. */
import type { MotifAccount, Plan, Point } from '../../shared-types/plan'
import { PointGrid } from '../geometry/point-grid'
import { remembered } from '../memo'
import { workedLine } from './direction'
import { OPEN_ENDS } from './open-ends'

/** Gaps with so many chains each. */
export interface BridgeSpan {
  /** Both tips of a gap are of one motif, or the second is the next motif's. */
  readonly from: 'one' | 'next'
  readonly chains: number
  readonly gaps: number
}

type Told = Pick<
  Plan,
  'motifs' | 'halves' | 'accounts' | 'motif' | 'edgingLines' | 'round' | 'pitch' | 'settled'
>

interface Bearer extends Point {
  /** mm from its middle to its tips. */
  readonly reach: number
}

/** How much farther out a tip may seem to lie on one of the motifs that are joined in it (ours). */
const AS_FAR = 1.05
/** Times the reach of a motif within which its tips are looked for (ours: they lie at one). */
const NEAR = 2
/** Lines of a plan whose gaps are remembered: each page that says something of them asks again. */
const LINES = 8

/** For every gap along a line, the way it is worked, whether the next tip is another motif's. */
export const gapsToNext = remembered((plan: Told, line: number): readonly boolean[] => {
  const points = workedLine(plan.edgingLines, line, plan.round !== undefined, plan.settled.hand)
  const isOpen = plan.round !== undefined && line < OPEN_ENDS
  const bearers = bearersOf(plan)
  const of = points.map((point) => bearersAt(point, bearers))
  return of
    .slice(0, isOpen ? -1 : of.length)
    .map((own, i) => !own.some((each) => of[(i + 1) % of.length]!.includes(each)))
}, LINES)

/** Every motif of a plan that has tips, and where to look for those near a place. */
interface Bearers {
  readonly all: readonly Bearer[]
  readonly grid: PointGrid | null
  /** mm. No tip lies farther from the motif that it belongs to. */
  readonly range: number
  /** mm once round, of what is joined in the round; else 0. */
  readonly around: number
}

const bearersOf = remembered(({ motifs, halves, accounts, motif, round }: Told): Bearers => {
  const known = new Map<string | undefined, MotifAccount>(accounts.map((each) => [each.id, each]))
  const all = [...motifs, ...halves].map(({ x, y, motif: id }): Bearer => {
    const account = known.get(id) ?? motif
    return { x, y, reach: Math.max(1, (account?.overTips ?? 2) / 2) }
  })
  const range = NEAR * all.reduce((most, { reach }) => Math.max(most, reach), 1)
  const places = (axis: 'x' | 'y') => Float64Array.from(all, (each) => each[axis])
  const grid = all.length > 0 ? new PointGrid(places('x'), places('y'), range) : null
  return { all, grid, range, around: round?.circumference ?? 0 }
})

/** The motifs in whose range a place is, by index. */
function nearby({ grid, range, around }: Bearers, { x, y }: Point): number[] {
  if (!grid) return []
  const seen = new Set<number>()
  for (const at of around > 0 ? [x - around, x, x + around] : [x]) {
    const count = grid.look(at, y, range, -1)
    for (let i = 0; i < count; i++) seen.add(grid.found[i]!)
  }
  return [...seen].sort((a, b) => a - b)
}

/**
 * The motif that a tip belongs to: of large ones and small ones the one whose tips are as far out, several where these
 * are joined in it.
 */
function bearersAt(place: Point, bearers: Bearers): number[] {
  const { all, around } = bearers
  const far = (index: number): number => {
    const { x, y, reach } = all[index]!
    const off = place.x - x
    const across = around > 0 ? off - around * Math.round(off / around) : off
    return Math.hypot(across, place.y - y) / reach
  }
  const among = (indices: readonly number[]): { own: number[]; least: number } => {
    const ways = indices.map(far)
    const least = ways.reduce((best, each) => Math.min(best, each), Infinity)
    return { own: indices.filter((_, i) => ways[i]! <= least * AS_FAR), least }
  }
  const { own, least } = among(nearby(bearers, place))
  // Whatever is out of range lies at least as many times its reach away.
  return least * AS_FAR <= NEAR ? own : among(all.map((_, i) => i)).own
}

/** Gaps that have as many chains and lie alike, those within a motif first, the fewest chains first; no straight sides. */
export function spansOf(
  gaps: readonly number[],
  toNext: readonly boolean[],
  straight: readonly number[] = [],
): BridgeSpan[] {
  const spans = new Map<string, BridgeSpan>()
  gaps.forEach((chains, i) => {
    if (straight[i]) return
    const from = toNext[i] ? 'next' : 'one'
    const key = `${from} ${chains}`
    spans.set(key, { from, chains, gaps: (spans.get(key)?.gaps ?? 0) + 1 })
  })
  return [...spans.values()].sort(
    (a, b) => Number(a.from === 'next') - Number(b.from === 'next') || a.chains - b.chains,
  )
}
