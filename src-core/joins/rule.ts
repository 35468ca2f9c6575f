/** M25, M30: what a joining rule means: which places join, how much air stays between, how far it reaches. */
import type { Finding } from '../../shared-types/finding'
import type { Anchor, AnchorKind, MotifAccount } from '../../shared-types/plan'
import type { Joining, JoinRule } from '../../shared-types/project'
import { isWithin } from '../fields/field'
import { JOINING } from '../fields/joining'
import { finding } from '../findings/finding'
import { fineLengthValue, lengthValue, mostValue } from '../findings/quantities'
import type { ResolvedGauge } from '../stitches/gauge'
import type { SeamVerb } from './words'
import type { Millimetres } from '../units/quantity'
import { REACH_SHARE, REACH_STITCHES, STRETCH_SHARE, STRETCH_STITCHES } from './constants'
import { DEFAULTS } from '../settled'

export interface Rule {
  readonly rule: JoinRule
  /** Air between outlines, in mm. */
  readonly gap: Millimetres
  /** What the hand does along a seam. */
  readonly verb: SeamVerb
}

const KINDS: Record<JoinRule, readonly AnchorKind[]> = {
  tips: ['tip', 'corner'],
  bridge: ['tip', 'corner'],
  edges: ['tip', 'shoulder', 'corner', 'side'],
  seam: ['tip', 'shoulder', 'corner', 'side'],
  apart: [],
}

/** The rule and the gap that it keeps; `gauge` gives the length of a joining chain. */
export function joinRule(
  joining: Joining | undefined,
  gauge: ResolvedGauge,
): { rule: Rule; findings: Finding[] } {
  const findings: Finding[] = []
  const rule = joining?.rule ?? DEFAULTS.joining.rule
  const bounded = (value: number, where: string): number => {
    if (isWithin(value, JOINING.gap)) return value
    findings.push(
      finding('layout/gap', where, { received: lengthValue(value), most: mostValue(JOINING.gap.most) }),
    )
    return 0
  }
  let gap = 0
  if (rule === 'apart') gap = bounded(joining?.gap ?? DEFAULTS.joining.gap, 'joining.gap')
  if (rule === 'bridge') {
    gap = bounded(
      (joining?.bridgeChains ?? DEFAULTS.joining.bridgeChains) * gauge.width,
      'joining.bridgeChains',
    )
    if (gauge.provenance === 'rule-of-thumb' && gap > 0)
      findings.push(finding('joins/no-chain-width', 'joining', { width: fineLengthValue(gauge.width) }))
  }
  const needle = joining?.seam === undefined || joining.seam === 'whip' || joining.seam === 'mattress'
  return { rule: { rule, gap, verb: needle ? 'sew' : 'crochet' }, findings }
}

/**
 * How far apart two anchors may lie and still be joined, in mm: the larger of 1.5 stitch widths and 8 % of
 * tip to tip (the latter alone without a gauge) and the rule's gap on top, or what the project says.
 */
export function joinReach(
  joining: Joining | undefined,
  rule: Rule,
  account: MotifAccount,
  gauge: ResolvedGauge,
): { reach: Millimetres; findings: Finding[] } {
  const asked = joining?.reach
  if (asked != null) {
    if (isWithin(asked, JOINING.reach)) return { reach: asked, findings: [] }
    const values = { received: lengthValue(asked), most: mostValue(JOINING.reach.most) }
    return { reach: 0, findings: [finding('joins/reach', 'joining.reach', values)] }
  }
  return { reach: byGauge(REACH_STITCHES, REACH_SHARE, account, gauge) + rule.gap, findings: [] }
}

/** Spread from which a meeting point is over-stretched, in mm. */
export const stretchLimit = (
  rule: Pick<Rule, 'gap'>,
  account: MotifAccount,
  gauge: ResolvedGauge,
): Millimetres => byGauge(STRETCH_STITCHES, STRETCH_SHARE, account, gauge) + rule.gap

function byGauge(stitches: number, share: number, account: MotifAccount, gauge: ResolvedGauge): Millimetres {
  const bySize = share * account.overTips
  return gauge.provenance === 'gauge' ? Math.max(stitches * gauge.width, bySize) : bySize
}

/** The places of a motif that the rule joins. A round motif brings its own, where neighbours touch. */
export function joinableAnchors(anchors: readonly Anchor[], rule: JoinRule, round: boolean): Anchor[] {
  if (round) return rule === 'apart' ? [] : [...anchors]
  const kinds = KINDS[rule]
  return anchors.filter((anchor) => kinds.includes(anchor.kind))
}
