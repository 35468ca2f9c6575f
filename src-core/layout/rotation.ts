/**
 * M24, best rotation: of all turns of the motif, and of every other row against the rest, the one with the
 * most meeting points, then the smallest gap to bridge, then the smallest openings. Motifs are never flipped:
 * their wrong side would show.
 */
import type { MotifAccount } from '../../shared-types/plan'
import type { Joining } from '../../shared-types/project'
import { findNodes } from '../joins/nodes'
import { joinableAnchors, joinReach } from '../joins/rule'
import type { Rule } from '../joins/rule'
import type { ResolvedGauge } from '../stitches/gauge'
import type { Degrees, Millimetres } from '../units/quantity'
import { layBlanket } from './blanket'
import type { BlanketCounts } from './blanket'
import { holeKinds, openingsOf } from './holes'
import { latticeOf } from './lattice'

export interface RotationScore {
  readonly turn: Degrees
  readonly alternateTurn: Degrees
  /** Meeting points in a patch of 6 × 5 motifs (two rings): only to be compared with each other. */
  readonly meetings: number
  readonly spread: Millimetres
  readonly opening: Millimetres
}

export interface BestRotation {
  readonly now: RotationScore
  readonly best: RotationScore
}

/** Turns tried within one petal's angle. */
const STEPS = 12
const PATCH = { columns: 5, rows: 6, rings: 2 } as const

/** Degrees after which a motif looks the same. */
function period(account: MotifAccount): Degrees {
  if (account.shape === 'round') return 360
  return account.shape === 'leaf' ? 360 : 360 / account.petals
}

/** The best rotation of a blanket's motif, and what the present one comes to. */
export function bestRotation(
  account: MotifAccount,
  counts: BlanketCounts,
  rule: Rule,
  joining: Joining | undefined,
  gauge: ResolvedGauge,
): BestRotation {
  const { reach } = joinReach(joining, rule, account, gauge)
  const score = (turn: Degrees, alternateTurn: Degrees): Tried => {
    const patch: BlanketCounts = { ...counts, ...PATCH, turn, alternateTurn }
    const lattice = latticeOf(
      account.outline,
      counts.arrangement !== 'straight-rows',
      turn,
      alternateTurn,
      rule.gap,
    )
    const { placements } = layBlanket(lattice, patch)
    const anchors = joinableAnchors(account.anchors, rule.rule, account.shape === 'round')
    const nodes = findNodes(
      placements.map((p) => ({ x: p.x, y: p.y, turn: p.turn, anchors })),
      reach,
    )
    const spread = nodes.reduce((most, node) => Math.max(most, node.spread), 0)
    // A node of three motifs is worth two joins, as two separate ones would be.
    const meetings = nodes.reduce((sum, node) => sum + node.members.length - 1, 0)
    let opening = -1
    // Openings cost more than all the rest: they are looked for only where the rest is equal.
    const widest = () =>
      opening >= 0
        ? opening
        : (opening = holeKinds(openingsOf(lattice, patch, placements, spread))[0]?.radius ?? 0)
    return { turn, alternateTurn, meetings, spread, widest }
  }
  const now = score(counts.turn, counts.alternateTurn)
  if (account.shape === 'round' || rule.rule === 'apart') return { now: told(now), best: told(now) }
  const angle = period(account)
  const alternates = counts.arrangement === 'rings' ? [0] : [0, angle / 2, 180 % angle === 0 ? 0 : 180]
  let best = now
  for (const alternateTurn of new Set(alternates))
    for (let step = 0; step < STEPS; step++) {
      const tried = score((step * angle) / STEPS, alternateTurn)
      if (compare(tried, best) < 0) best = tried
    }
  return { now: told(now), best: told(best) }
}

interface Tried extends Omit<RotationScore, 'opening'> {
  readonly widest: () => Millimetres
}

const told = ({ widest, ...rest }: Tried): RotationScore => ({ ...rest, opening: widest() })

/** Below zero when `a` is better: more meetings, then less to bridge, then smaller openings. */
function compare(a: Tried, b: Tried): number {
  if (a.meetings !== b.meetings) return b.meetings - a.meetings
  if (Math.abs(a.spread - b.spread) > 0.01) return a.spread - b.spread
  return Math.abs(a.widest() - b.widest()) > 0.01 ? a.widest() - b.widest() : 0
}
