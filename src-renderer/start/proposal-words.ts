/** What stands beside the pictures of arrangements to start from. */
import type { JoinRule, UnitSystem } from '../../shared-types/project'
import { rotationWords } from '../../src-core/figures/holding-words'
import { capital } from '../../src-core/figures/words'
import { rowLengths } from '../../src-core/layout/proposals'
import type { Proposal, Proposals } from '../../src-core/layout/proposals'
import { holds } from '../../src-core/joins/holding'
import { formatLength } from '../../src-core/units/format'
import { EXACT } from '../../src-core/ways/words'
import { blanketOf } from '../state/edits/layout'
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
export function lookWords({ fit, project, plan }: Pick<Proposal, 'fit' | 'project' | 'plan'>): string {
  const lengths = rowLengths(plan)
  const many = blanketOf(project)?.outlineShape
    ? `${counted(lengths.length, 'row')} of up to ${Math.max(0, ...lengths)}`
    : `${fit.columns} × ${fit.rows}`
  const counts =
    fit.arrangement === 'rings'
      ? counted(fit.rings, 'ring')
      : `${ARRANGEMENT_NAMES[fit.arrangement]}, ${many}`
  return capital([counts, rotationWords(fit)].filter(Boolean).join(', '))
}

/** ", at tips and shoulders": only where it is not joined like the first of them. */
export function ruleWords({ rule, plan }: Proposal, { proposals }: Proposals): string {
  const isOther = rule !== proposals[0]?.rule
  return isOther && plan.motif?.shape === 'petals' ? `, at ${RULES[rule]}` : ''
}

/** An opening under a mm across is closed by the join itself. */
export const openingWords = (across: number, units: UnitSystem): string =>
  across < 1 ? 'No openings' : `Openings of up to ${formatLength(across, units)}`

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

/** Where the chosen one is not to the millimetre, what leads to that; null where it is. */
export function exactlyWords({ proposals }: Proposals, chosen: number): string | null {
  const { width = 0, height = 0 } = proposals[chosen]?.fit.error ?? {}
  if (Math.max(Math.abs(width), Math.abs(height)) < EXACT) return null
  return 'Whole motifs come this near. For exactly your size, start with one of these and choose “Find ways” at Arrangement: it lists what to change, such as the hook or the joining chains.'
}
