/** What stands beside the pictures of arrangements to start from. */
import type { JoinRule, UnitSystem } from '../../shared-types/project'
import { rotationWords } from '../../src-core/figures/holding-words'
import { capital, rowsOfUpTo } from '../../src-core/figures/words'
import type { Proposal, Proposals } from '../../src-core/layout/proposals'
import { isForHands } from '../../src-core/joins/for-child'
import { holds } from '../../src-core/joins/holding'
import { missOf } from '../../src-core/layout/candidates'
import { formatNumber } from '../../src-core/units/format'
import { exactTo } from '../../src-core/ways/words'
import { ARRANGEMENT_NAMES } from '../kinds/words'
import { counted } from '../state/summaries'

const RULES: Readonly<Record<JoinRule, string>> = {
  tips: 'tips',
  edges: 'tips and shoulders',
  bridge: 'joining chains',
  seam: 'seams',
  apart: 'nothing',
}

/** "Offset rows, 16 × 24, rotated 21.4°, every other row 25.7° more"; cut out: "Straight rows, 10 rows of up to 22". */
export function lookWords({ fit }: Pick<Proposal, 'fit'>): string {
  const many = fit.lengths ? rowsOfUpTo(fit.lengths) : `${fit.columns} × ${fit.rows}`
  const counts =
    fit.arrangement === 'rings'
      ? counted(fit.rings, 'ring')
      : `${ARRANGEMENT_NAMES[fit.arrangement]}, ${many}`
  return capital([counts, rotationWords(fit)].filter(Boolean).join(', '))
}

/** Whether another of them is laid out alike and joined otherwise. */
const isAlike = (proposal: Proposal, { proposals }: Proposals): boolean =>
  proposals.some((other) => other.rule !== proposal.rule && lookWords(other) === lookWords(proposal))

/** `lookWords`, with what differs in front where two would read alike: "Joined at tips and shoulders: offset rows, 9 × 13". */
export function titleWords(proposal: Proposal, all: Proposals): string {
  const look = lookWords(proposal)
  if (!isAlike(proposal, all)) return look
  return `Joined at ${RULES[proposal.rule]}: ${look.charAt(0).toLowerCase()}${look.slice(1)}`
}

/** ", at tips and shoulders": only where it is not joined like the first of them, and its title does not say so. */
export function ruleWords(proposal: Proposal, all: Proposals): string {
  const { rule, plan } = proposal
  const isOther = rule !== all.proposals[0]?.rule && !isAlike(proposal, all)
  return isOther && plan.motif?.shape === 'petals' ? `, at ${RULES[rule]}` : ''
}

/** What there is to say about all of them; null where the usual way of joining holds. */
export function doubtWords({
  proposals,
  failed,
}: Proposals): { readonly words: string; readonly isWarning: boolean } | null {
  const [first] = proposals
  if (!first) return null
  if (!holds(first.fit))
    return {
      words:
        'No rotation makes this motif hold together. Try fillers, joining chains or a longer joining distance.',
      isWarning: true,
    }
  if (!failed.includes('tips') || first.rule === 'tips') return null
  const words = `Joined at its tips alone this motif holds in no usual rotation; here it is joined at ${RULES[first.rule]}.`
  return { words, isWarning: false }
}

const ORDINALS = ['first', 'second', 'third', 'fourth'] as const

/** A card is closer to the size asked for where it misses so much less of it: |Δw|/W + |Δh|/H. */
const CLOSER = 0.005

/** mm: openings that are wider by less are none to speak of. */
const LACE = 4

/** Why the closest to the size does not stand first; null where it does. */
export function orderWords({ proposals }: Proposals, isForChild = false): string | null {
  const misses = proposals.map(({ fit: { size, error } }) =>
    missOf(size, { width: size.width - error.width, height: size.height - error.height }),
  )
  const closest = misses.indexOf(Math.min(...misses))
  const [first, other] = [proposals[0], proposals[closest]]
  if (!first || !other || misses[0]! - misses[closest]! < CLOSER) return null
  const nth = ORDINALS[closest] ?? 'last'
  if (first.fit.lengths) return `Even edges come first; the ${nth} is closest to your size.`
  // Another line says so.
  if (isForChild && isForHands(other.opening) && !isForHands(first.opening))
    return `The ${nth} is closest to your size.`
  if (other.fit.wide && !first.fit.wide)
    return `What lies closed comes first; the ${nth} is closest to your size.`
  if (other.plan.motif?.shape === 'straight' && other.opening >= first.opening + LACE)
    return `What closes between motifs comes first; the ${nth} is closest to your size.`
  const joined = ({ points, fit }: Proposal) => points / Math.max(1, fit.motifs)
  const each = (one: Proposal) => formatNumber(joined(one), 1)
  return joined(first) > joined(other)
    ? `The first is joined more firmly, at about ${each(first)} join points for each motif. The ${nth} is closest to your size, at about ${each(other)}.`
    : `What is usual for this shape comes first; the ${nth} is closest to your size.`
}

/** Where the chosen one is not to the millimetre, what leads to that; null where it is. */
export function exactlyWords({ proposals }: Proposals, chosen: number, units: UnitSystem): string | null {
  const { width = 0, height = 0 } = proposals[chosen]?.fit.error ?? {}
  if (Math.max(Math.abs(width), Math.abs(height)) < exactTo(units)) return null
  return 'Whole motifs come this near. For exactly your size, start with one of these and choose “Find ways” at Arrangement: it lists what to change, such as the hook or the joining chains.'
}
