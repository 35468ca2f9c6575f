/** M30: what is to be told of join points: those that gape, and those at which a motif lies between two of its spaces. */
import type { Finding } from '../../shared-types/finding'
import type { BetweenSpaces, MotifAccount, WideGaps } from '../../shared-types/plan'
import type { JoinRule } from '../../shared-types/project'
import type { SettledJoining } from '../../shared-types/settled'
import { finding } from '../findings/finding'
import { liesBetween } from '../motif/spaces'
import type { Millimetres } from '../units/quantity'
import { wideGaps } from './checks'
import type { Node } from './nodes'

interface Placed {
  readonly nodes: readonly Node[]
  /** Of the placed motifs, by kind. */
  readonly accounts: readonly MotifAccount[]
  /** The places of each kind that may be joined. */
  readonly anchors: readonly (readonly MotifAccount['anchors'][number][])[]
  readonly placements: readonly { readonly kind: number }[]
}

/** At how many join points some motif lies between two of its spaces; null where at none. */
export function betweenSpaces({ nodes, accounts, anchors, placements }: Placed): BetweenSpaces | null {
  if (accounts.every(({ spaces }) => !spaces)) return null
  const between = accounts.map(
    (account, kind) => new Set(anchors[kind]!.filter((anchor) => liesBetween(account, anchor))),
  )
  const joins = nodes.filter(({ members }) =>
    members.some(({ motif, anchor }) => {
      const kind = placements[motif]?.kind ?? 0
      const at = anchors[kind]?.[anchor]
      return at !== undefined && between[kind]!.has(at)
    }),
  ).length
  return joins > 0 ? { joins, of: nodes.length } : null
}

/** How much of an arrangement is joined between spaces, in quarters: what differs by less is alike. */
export const betweenLevel = (between: BetweenSpaces | null | undefined): number =>
  between ? Math.max(1, Math.round((4 * between.joins) / between.of)) : 0

/** Whether spaces matter: motifs that stand apart or are sewn meet without them. */
export const isIntoSpaces = (rule: JoinRule): boolean => rule !== 'apart' && rule !== 'seam'

/**
 * A note for each rule of a pair of motifs that are nowhere joined to each other, though both are placed: they never lie
 * side by side. A rule that keeps them apart joins nothing on purpose.
 */
export function pairsApart(
  { nodes, placements }: Pick<Placed, 'nodes' | 'placements'>,
  { pairs = [], rule }: Pick<SettledJoining, 'pairs' | 'rule'>,
  motifs: readonly string[],
  nameOf: (id: string) => string,
): Finding[] {
  if (pairs.length === 0) return []
  const key = (one: number, other: number): string => `${Math.min(one, other)} ${Math.max(one, other)}`
  const met = new Set(
    nodes.flatMap(({ members }) => {
      const kinds = members.map(({ motif }) => placements[motif]?.kind ?? 0)
      return kinds.flatMap((one, i) => kinds.slice(i + 1).map((other) => key(one, other)))
    }),
  )
  const placed = new Set(placements.map(({ kind }) => kind))
  return pairs.flatMap((pair, i) => {
    const [one, other = one] = pair.motifs.map((id) => motifs.indexOf(id))
    if (one === undefined || !placed.has(one) || !placed.has(other!) || pair.motifs.length > 2) return []
    if ((pair.rule ?? rule) === 'apart' || met.has(key(one, other!))) return []
    const [first, second = first] = pair.motifs.map(nameOf)
    return [finding('joins/pair-apart', `joining.pairs[${i}].motifs`, { one: first!, other: second! })]
  })
}

interface Remarks {
  readonly counts: { readonly wide?: WideGaps; readonly between?: BetweenSpaces }
  readonly findings: readonly Finding[]
}

/** What counts and findings of a plan say of its join points. */
export function joinRemarks(
  placed: Placed & { readonly stretchLimit: Millimetres },
  rule: JoinRule,
): Remarks {
  const wide = rule === 'apart' ? null : wideGaps(placed.nodes, placed.stretchLimit)
  const between = isIntoSpaces(rule) ? betweenSpaces(placed) : null
  const counts = { ...(wide && { wide }), ...(between && { between }) }
  if (!between) return { counts, findings: [] }
  const spaces = Math.max(...placed.accounts.map((account) => account.spaces?.count ?? 0))
  return { counts, findings: [finding('joins/between-spaces', 'joining', { ...between, spaces })] }
}
