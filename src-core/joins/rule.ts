/** M25, M30: what a joining rule means: which places join, how much air stays between, how far it reaches. */
import type { Finding } from '../../shared-types/finding'
import type { Anchor, AnchorKind, MotifAccount } from '../../shared-types/plan'
import type { Joining, JoinRule } from '../../shared-types/project'
import type { SettledJoining } from '../../shared-types/settled'
import { isWithin } from '../fields/field'
import { JOINING } from '../fields/joining'
import { finding } from '../findings/finding'
import { fineLengthValue, lengthValue, mostValue } from '../findings/quantities'
import { isBetween, isMiddle } from '../motif/anchors'
import type { ResolvedGauge } from '../stitches/gauge'
import { isUsableOrZero } from '../units/usable'
import type { PairWay } from './nodes'
import type { SeamVerb } from './words'
import type { Millimetres } from '../units/quantity'
import { REACH_SHARE, REACH_STITCHES, STRETCH_SHARE, STRETCH_STITCHES } from './constants'
import { DEFAULTS } from '../settled'

/** How motifs are joined: by one rule, and two kinds perhaps by another one. */
export interface Rules {
  readonly main: Rule
  readonly of: (kind: number, other: number) => Rule
  /** The widest air that any of them keeps, in mm. */
  readonly widest: Millimetres
  readonly findings: readonly Finding[]
}

export interface Rule {
  readonly rule: JoinRule
  /** Air between outlines, in mm. */
  readonly gap: Millimetres
  /** What the hand does along a seam. */
  readonly verb: SeamVerb
  /** Chains of a joining chain; 0 without one. */
  readonly chains: number
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
  const asked = joining?.bridgeChains ?? DEFAULTS.joining.bridgeChains
  const chains = rule === 'bridge' && isUsableOrZero(asked) ? asked : 0
  return { rule: { rule, gap, verb: needle ? 'sew' : 'crochet', chains }, findings }
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
  return anchors.filter((anchor) => joinsAt(anchor, kinds))
}

/** Whether a place is of these kinds; where the corners of neighbours meet a side it is joined as a corner is. */
const joinsAt = (anchor: Anchor, kinds: readonly AnchorKind[]): boolean =>
  kinds.includes(anchor.kind) || (isBetween(anchor) && kinds.includes('corner'))

/** The rules of a project whose motifs have these ids, by kind. */
export function joinRules(joining: SettledJoining, gauge: ResolvedGauge, motifs: readonly string[]): Rules {
  const { rule: main, findings } = joinRule(joining, gauge)
  const own = new Map<string, Rule>()
  const found = [...findings]
  const { pairs = [], ...forAll } = joining
  pairs.forEach((pair, i) => {
    const [one, other = one, ...more] = pair.motifs.map((id) => motifs.indexOf(id))
    if (one === undefined || more.length > 0) {
      const count = pair.motifs.length
      found.push(finding('layout/pair-motifs', `joining.pairs[${i}].motifs`, { count }))
      return
    }
    // Motifs that are not placed are joined to nothing.
    if (motifs.length > 0 && (one < 0 || other! < 0)) {
      const motif = pair.motifs.find((id) => !motifs.includes(id))!
      found.push(finding('joins/pair-absent', `joining.pairs[${i}].motifs`, { motif }))
    }
    if (one < 0 || other! < 0) return
    const told = joinRule({ ...forAll, ...definedOf(pair) }, gauge)
    found.push(...told.findings.map((each) => ({ ...each, where: `joining.pairs[${i}]` })))
    own.set(pairKey(one, other!), told.rule)
  })
  const of = (kind: number, other: number): Rule => own.get(pairKey(kind, other)) ?? main
  const widest = Math.max(main.gap, ...[...own.values()].map(({ gap }) => gap))
  return { main, of, widest, findings: found }
}

const definedOf = ({ rule, bridgeChains, gap }: NonNullable<Joining['pairs']>[number]): Partial<Joining> => ({
  ...(rule !== undefined && { rule }),
  ...(bridgeChains !== undefined && { bridgeChains }),
  ...(gap !== undefined && { gap }),
})

const pairKey = (kind: number, other: number): string =>
  kind < other ? `${kind} ${other}` : `${other} ${kind}`

/** Every place of a motif that one of the rules that it takes part in joins. */
export function anchorsUnder(accounts: readonly MotifAccount[], rules: Rules): (readonly Anchor[])[] {
  return accounts.map((account, kind) => {
    const isRound = account.shape === 'round'
    const joined = accounts.map((other, of) => {
      const { rule } = rules.of(kind, of)
      const own = joinableAnchors(account.anchors, rule, isRound)
      return [...own, ...(facesOthers(account, other, rule) ? account.anchors.filter(isMiddle) : [])]
    })
    const all = new Set(joined.flat())
    return account.anchors.filter((anchor) => all.has(anchor))
  })
}

/** Beside something that is not straight a straight motif meets it with the middle of its side, not with a corner. */
const facesOthers = (account: MotifAccount, other: MotifAccount, rule: JoinRule): boolean =>
  account.shape === 'straight' && other.shape !== 'straight' && KINDS[rule].length > 0

/** How two kinds are joined; `joining` may fix the reach for all. */
export function pairWay(
  joining: Joining | undefined,
  accounts: readonly MotifAccount[],
  rules: Rules,
  gauge: ResolvedGauge,
): (kind: number, other: number) => PairWay {
  return (kind, other) => {
    const [one, two] = [accounts[kind]!, accounts[other]!]
    const rule = rules.of(kind, other)
    const smaller = one.overTips < two.overTips ? one : two
    const { reach } = joinReach(joining, rule, smaller, gauge)
    const joins = (account: MotifAccount, beside: MotifAccount) => (anchor: Anchor) =>
      account.shape === 'round'
        ? rule.rule !== 'apart'
        : joinsAt(anchor, KINDS[rule.rule]) || (facesOthers(account, beside, rule.rule) && isMiddle(anchor))
    const [first, second] = [joins(one, two), joins(two, one)]
    return { reach, allows: (a, b) => first(a) && second(b) }
  }
}
