/**
 * The ways in which a motif meets neighbors that are there already: which of its petals, corners and sides, counted
 * from its own start. The hand begins at the longest free run, so that two neighboring petals are one situation
 * wherever they lie.
 */
import type { Anchor, MotifAccount, OrderJoin, OrderStep, Plan } from '../../shared-types/plan'
import type { JoinRule } from '../../shared-types/project'
import { directionOf } from '../geometry/points'
import { accountAt } from '../layout/placed'
import { remembered } from '../memo'
import { countOf, countedFrom, isAlike } from '../motif/numbering'
import { liesBetween, spaceAt, spaceWords } from '../motif/spaces'
import type { SpacePlace } from '../motif/spaces'

/** One place where a motif is joined. */
export interface SituationJoin {
  readonly anchor: Anchor
  /** Its petal, corner or side, counted from the start. */
  readonly number: number
  /** Others are joined there already. */
  readonly shared: boolean
  /** Motif that it is joined to, and the place of that. */
  readonly host: { readonly motif: string; readonly anchor: string; readonly isBetween?: true }
  /** The space that it is joined in, or the two that it lies between; left out where none are counted. */
  readonly space?: SpacePlace
  /** One of the two lies between two spaces: they meet across a joining chain. */
  readonly isAcross?: true
  /** Chains of a joining rule that the two have for themselves. */
  readonly chains?: number
  /** The side is joined all along. */
  readonly along?: true
}

export interface Situation {
  readonly account: MotifAccount
  readonly kind: 'motif' | 'filler'
  /** Petal that the hand works first; of motifs that are alike all round it stands for all of them. */
  readonly first: number
  readonly joins: readonly SituationJoin[]
  /** Working numbers of the motifs in this situation, in working order. */
  readonly labels: readonly string[]
}

/** Rules under which motifs are joined in their last round. */
const AS_YOU_GO: ReadonlySet<JoinRule> = new Set(['tips', 'edges', 'bridge'])

/** Whether the motifs of a plan are joined in their last round. */
export const isJoinedAsYouGo = ({ settled, order }: Plan): boolean =>
  AS_YOU_GO.has(settled.joining.rule) && order.length > 0

/** How two motifs of a plan are joined. */
export function ruleBetween({ settled: { joining } }: Plan, one: string, other: string): JoinRule {
  const isOf = (motifs: readonly string[]): boolean =>
    (motifs[0] === one && (motifs[1] ?? one) === other) || (motifs[1] === one && motifs[0] === other)
  return joining.pairs?.find(({ motifs }) => isOf(motifs))?.rule ?? joining.rule
}

interface Placed {
  readonly account: MotifAccount
  readonly label: string
  readonly first: number
}

/** Every piece of a plan that is worked in rounds, by its id. */
function piecesOf(plan: Plan): Map<string, Placed> {
  const pieces = new Map<string, Placed>()
  const accounts = new Map([plan.motif, ...plan.accounts].flatMap((each) => (each ? [[each.id, each]] : [])))
  for (const { id, motif, label, firstPetal = 1 } of plan.motifs) {
    const account = accounts.get(motif ?? plan.motif?.id ?? '')
    if (account) pieces.set(id, { account, label, first: firstPetal })
  }
  for (const { id, motif, label, firstPetal = 1 } of plan.fillers) {
    const account = accountAt(plan, { motif, kind: 'filler' })
    if (account) pieces.set(id, { account, label, first: firstPetal })
  }
  return pieces
}

/** The situations of a plan, those of each motif together, fewer joins first; none where nothing is joined as one goes. */
export const situationsOf = remembered((plan: Plan): readonly Situation[] => {
  if (!isJoinedAsYouGo(plan)) return []
  const pieces = piecesOf(plan)
  const found = new Map<string, Situation & { labels: string[] }>()
  for (const step of plan.order) {
    const piece = pieces.get(step.motif)
    if (step.kind === 'half' || !piece) continue
    const { account, first, label } = piece
    const joins = step.joins.flatMap((join) => joinOf(plan, pieces, piece, join) ?? [])
    const key = keyOf(account, step, first, joins)
    const known = found.get(key)
    if (known) known.labels.push(label)
    else found.set(key, { account, kind: step.kind, first, joins, labels: [label] })
  }
  const ids = [...new Set([...found.values()].map(({ account }) => account.id))]
  const rank = ({ account, kind }: Situation): number =>
    ids.indexOf(account.id) + (kind === 'filler' ? ids.length : 0)
  return [...found.values()].sort((a, b) => rank(a) - rank(b) || a.joins.length - b.joins.length)
}, 2)

function joinOf(
  plan: Plan,
  pieces: ReadonlyMap<string, Placed>,
  { account, first }: Placed,
  { anchor: id, with: members, chains = 0, along }: OrderJoin,
): SituationJoin | null {
  const anchor = account.anchors.find((each) => each.id === id)
  const host = members[0]
  const other = host && pieces.get(host.motif)
  if (!anchor || !other || !AS_YOU_GO.has(ruleBetween(plan, account.id, other.account.id))) return null
  const number = countedFrom(anchor.petal, first, countOf(account.anchors))
  const there = other.account.anchors.find((each) => each.id === host.anchor)
  const isBetween = there !== undefined && liesBetween(other.account, there)
  const space = spaceAt(account, directionOf(anchor), first)
  return {
    ...{ anchor, number, shared: members.length > 1 },
    ...(chains > 0 && { chains }),
    ...(along && { along }),
    ...(space && { space }),
    ...((isBetween || (space && space.next !== null)) && { isAcross: true }),
    host: { motif: other.account.id, anchor: host.anchor, ...(isBetween && { isBetween }) },
  }
}

/** Motifs with the same key are worked alike. */
function keyOf(
  account: MotifAccount,
  { kind }: OrderStep,
  first: number,
  joins: readonly SituationJoin[],
): string {
  const begin = account.anchors.find(({ petal }) => petal === first)
  const isRound = account.shape === 'round'
  const places = joins.map(({ anchor, number, shared, host, along, chains = '' }) => {
    const space = spaceAt(account, directionOf(anchor), first)
    // On a round motif it is the space that counts, or else the way from the first place.
    const at = space ? spaceWords(space) : isRound && begin ? stepsOn(anchor, begin) : number
    const there = `${along ?? kindOf(host.anchor)}${host.isBetween ? ' between' : ''}`
    return `${kindOf(anchor.id)} ${at} ${shared} ${host.motif} ${there} ${chains}`.trimEnd()
  })
  // Petals that are not alike cannot stand for each other.
  const own = account.shape === 'petals' && !isAlike(account) ? first : 0
  return JSON.stringify([account.id, kind, own, places.sort()])
}

/** The way from one place to another, to a thousandth of a turn. */
const stepsOn = (anchor: Anchor, begin: Anchor): number =>
  Math.round((((directionOf(anchor) - directionOf(begin)) / (2 * Math.PI) + 2) % 1) * 1000) % 1000

/** "tip", "corner", "side-2": what kind of place it is, whichever petal it belongs to. */
const kindOf = (id: string): string => id.replace(/-\d+/, '')
