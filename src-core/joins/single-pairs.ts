/**
 * M30: how two motifs that were chosen by themselves are joined. The lattice stays as it is: such a rule says which
 * of their places are joined and across how many chains, and moves nothing.
 */
import type { Finding } from '../../shared-types/finding'
import type { Anchor, MotifAccount } from '../../shared-types/plan'
import type { SettledJoining } from '../../shared-types/settled'
import { finding } from '../findings/finding'
import { outerRadius } from '../figures/path'
import type { Laid } from '../layout/blanket'
import { addressWords, tidyAddress } from '../layout/addresses'
import type { ResolvedGauge } from '../stitches/gauge'
import type { Millimetres } from '../units/quantity'
import type { Node, PairWay } from './nodes'
import { anchorsUnder, joinReach, joinRule, pairWay } from './rule'
import type { Rule, Rules } from './rule'

export interface SinglePairs {
  /** The rule of two placed motifs, by their indices; undefined where they are joined as all others. */
  readonly ruleOf: (one: number, other: number) => Rule | undefined
  /** The same as a way; null where no pair has one. */
  readonly wayOf: ((one: number, other: number) => PairWay | undefined) | null
  /** The places that may be joined, by kind, those that only such a rule joins among them. */
  readonly anchors: readonly (readonly Anchor[])[]
  /** The widest air that any of the rules keeps, in mm. */
  readonly widest: Millimetres
  readonly findings: readonly Finding[]
  /** What is to be said once it is known what is joined. */
  readonly check: (nodes: readonly Node[]) => readonly Finding[]
}

type Single = NonNullable<SettledJoining['single']>[number]

/** Two indices as a key, whichever comes first. */
const keyOf = (one: number, other: number): string => (one < other ? `${one} ${other}` : `${other} ${one}`)

const whereOf = (i: number): string => `joining.single[${i}].places`

export function singlePairs(
  joining: SettledJoining,
  accounts: readonly MotifAccount[],
  rules: Rules,
  gauge: ResolvedGauge,
  { placements, round }: Pick<Laid, 'placements' | 'round'>,
): SinglePairs {
  const { single = [], ...forAll } = joining
  const usual = anchorsUnder(accounts, rules)
  const findings: Finding[] = []
  const own = new Map<string, Rule>()
  const told: { readonly at: number; readonly key: string; readonly ids: string[] }[] = []
  const index =
    single.length > 0 ? new Map(placements.map(({ id }, i) => [id, i])) : new Map<string, number>()
  const standing = () => placements.map(({ id }) => id)
  single.forEach((pair, at) => {
    const ids = pair.places.map(tidyAddress)
    const [one, other] = ids.map((id) => index.get(id))
    if (ids.length !== 2 || ids[0] === ids[1]) {
      findings.push(finding('joins/single-count', whereOf(at), { count: ids.length }))
      return
    }
    if (one === undefined || other === undefined) {
      findings.push(finding('joins/single-place', whereOf(at), { places: addressWords(ids, standing()) }))
      return
    }
    const read = joinRule({ ...forAll, ...definedOf(pair) }, gauge)
    findings.push(...read.findings.map((each) => ({ ...each, where: `joining.single[${at}]` })))
    const key = keyOf(one, other)
    own.set(key, read.rule)
    told.push({ at, key, ids })
  })
  const all = [...own.values()]
  const ruleOf = (one: number, other: number): Rule | undefined =>
    all.length > 0 ? own.get(keyOf(one, other)) : undefined
  const ways = new Map(
    all.map((rule) => {
      const alone: Rules = { main: rule, of: () => rule, widest: rule.gap, findings: [] }
      return [rule, pairWay(joining, accounts, alone, gauge)] as const
    }),
  )
  const wayOf = (one: number, other: number): PairWay | undefined => {
    const rule = ruleOf(one, other)
    return rule && ways.get(rule)!(placements[one]!.kind, placements[other]!.kind)
  }
  /** Whether two are so far from each other that they could not meet by any rule. */
  const isBeyond = (one: number, other: number): boolean => {
    const [a, b] = [placements[one]!, placements[other]!]
    const across = Math.abs(a.x - b.x)
    const apart = Math.hypot(round > 0 ? Math.min(across, round - across) : across, a.y - b.y)
    const [first, second] = [accounts[a.kind]!, accounts[b.kind]!]
    const { reach } = joinReach(joining, rules.main, first, gauge)
    return apart > outerRadius(first.outline) + outerRadius(second.outline) + rules.widest + reach
  }
  return {
    ruleOf,
    wayOf: all.length > 0 ? wayOf : null,
    anchors: all.length > 0 ? withOthers(usual, accounts, all) : usual,
    widest: Math.max(rules.widest, ...all.map(({ gap }) => gap)),
    findings,
    check(nodes) {
      if (told.length === 0) return []
      const met = new Set<string>()
      for (const { members } of nodes)
        for (const { motif } of members)
          for (const { motif: other } of members) if (motif !== other) met.add(keyOf(motif, other))
      return told.flatMap(({ at, key, ids }) => {
        if (met.has(key)) return []
        if (own.get(key)!.rule === 'apart') {
          const [one, other] = ids.map((id) => index.get(id)!) as [number, number]
          if (!isBeyond(one, other)) return []
          const values = { places: addressWords(ids, standing()) }
          return [finding('joins/single-apart', whereOf(at), values, { cells: ids })]
        }
        return [
          finding('joins/single-far', whereOf(at), { places: addressWords(ids, standing()) }, { cells: ids }),
        ]
      })
    },
  }
}

const definedOf = ({ rule, bridgeChains }: Single): Partial<Single> => ({
  ...(rule !== undefined && { rule }),
  ...(bridgeChains !== undefined && { bridgeChains }),
})

/** The usual places, and those that one of the rules joins besides. */
function withOthers(
  usual: readonly (readonly Anchor[])[],
  accounts: readonly MotifAccount[],
  all: readonly Rule[],
): (readonly Anchor[])[] {
  const more = all.map((rule) =>
    anchorsUnder(accounts, { main: rule, of: () => rule, widest: rule.gap, findings: [] }),
  )
  return accounts.map(({ anchors }, kind) => {
    const joined = new Set([...usual[kind]!, ...more.flatMap((each) => each[kind]!)])
    return anchors.filter((anchor) => joined.has(anchor))
  })
}
