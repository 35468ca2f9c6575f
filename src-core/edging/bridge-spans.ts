/** Between which tips a bridging edging has how many chains, as somebody at the edge can tell them apart. */
import type { MotifAccount, Plan, Point } from '../../shared-types/plan'
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

/** For every gap along a line, the way it is worked, whether the next tip is another motif's. */
export function gapsToNext(plan: Told, line: number): boolean[] {
  const points = workedLine(plan.edgingLines, line, plan.round !== undefined, plan.settled.hand)
  const isOpen = plan.round !== undefined && line < OPEN_ENDS
  const bearers = bearersOf(plan)
  const around = plan.round?.circumference ?? 0
  const of = points.map((point) => bearersAt(point, bearers, around))
  return of
    .slice(0, isOpen ? -1 : of.length)
    .map((own, i) => !own.some((each) => of[(i + 1) % of.length]!.includes(each)))
}

function bearersOf({ motifs, halves, accounts, motif }: Told): Bearer[] {
  const known = new Map<string | undefined, MotifAccount>(accounts.map((each) => [each.id, each]))
  return [...motifs, ...halves].map(({ x, y, motif: id }) => {
    const account = known.get(id) ?? motif
    return { x, y, reach: Math.max(1, (account?.overTips ?? 2) / 2) }
  })
}

/** How much farther out a tip may seem to lie on one of the motifs that are joined in it (ours). */
const AS_FAR = 1.05

/**
 * The motif that a tip belongs to: of large ones and small ones the one whose tips are as far out, several where these
 * are joined in it.
 */
function bearersAt({ x, y }: Point, bearers: readonly Bearer[], around: number): number[] {
  const far = bearers.map((each) => {
    const off = x - each.x
    const across = around > 0 ? off - around * Math.round(off / around) : off
    return Math.hypot(across, y - each.y) / each.reach
  })
  const least = far.reduce((best, each) => Math.min(best, each), Infinity)
  return far.flatMap((each, i) => (each <= least * AS_FAR ? [i] : []))
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
