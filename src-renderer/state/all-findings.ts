/** What there is to remark on a project, with the fonts that were chosen for other scripts. */
import type { Finding } from '../../shared-types/finding'
import type { CodePointRanges } from '../../shared-types/fonts'
import type { Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { bySeverity, finding, toldTo } from '../../src-core/findings/finding'
import { isBlank } from '../../src-core/motif/rounds/account'
import { createLetterFindings } from '../../src-core/letters/findings'
import type { Planner } from '../../src-core/plan'
import { garlandOf } from '../../src-core/plans/layouts'
import { blanketOf } from './edits/layout'
import { findMotif } from './edits/motif'
import { isOfLetters } from './places-of-findings'

/** Why there is no plan. */
export const troubleOf = (error: unknown): Finding =>
  finding('app/not-planned', 'project', {
    reason: error instanceof Error ? error.message : String(error),
  })

const letters = createLetterFindings()

/** Of the plan: what no font covers takes the place of what the type on paper lacks. */
function withFonts(plan: Plan, project: Project, fonts: readonly CodePointRanges[]): readonly Finding[] {
  if (fonts.length === 0 || !plan.findings.some(isOfLetters)) return plan.findings
  const lacking = toldTo(plan.settled, letters(project, fonts))
  return bySeverity([...plan.findings.filter((each) => !isOfLetters(each)), ...lacking])
}

/** Where one of them is, somebody may only have begun. */
const BEGINNINGS: ReadonlySet<string> = new Set([
  'motif/no-rounds',
  'yarn/no-weight',
  'colours/stash-unknown',
])

/** Colours go as the stash goes, and no stash was entered: that nothing is enough says nothing, unless limits were set. */
function isStashUnsaid(findings: readonly Finding[], project: Project): boolean {
  const { most = {}, mostGrams = {} } = blanketOf(project)?.cells?.fill ?? {}
  const isLimited = [most, mostGrams].some((limits) => Object.keys(limits).length > 0)
  return !isLimited && findings.some(({ code }) => code === 'colours/stash-unknown')
}

/** Nothing is said of the weight of a motif, not even of one of its colours: that is still to come, and no mistake. */
function isUnweighed(project: Project, id: string | undefined): boolean {
  const motif = findMotif(project, id)
  if (motif?.kind !== 'measured') return false
  return !motif.weighed?.grams && (motif.slots ?? []).every(({ grams }) => grams === undefined)
}

/**
 * Rounds of which no word is written are a beginning, and no mistake. What a cord is to carry has no size until
 * then: that nothing hangs on it follows from the rounds, and is not said where its sequence has something.
 */
function begun(findings: readonly Finding[], project: Project): readonly Finding[] {
  if (!findings.some(({ code }) => BEGINNINGS.has(code))) return findings
  const blank = (id: string | undefined) => {
    const motif = findMotif(project, id)
    return motif?.kind === 'rounds' && isBlank(motif)
  }
  const waits = garlandOf(project)?.items?.some(({ motif }) => blank(motif)) === true
  const isUnsaid = isStashUnsaid(findings, project)
  const heard = findings.filter(
    ({ code }) =>
      !(waits && code === 'garland/no-items') && !(isUnsaid && code.startsWith('colours/limits-')),
  )
  const isBegun = ({ code, target }: Finding) =>
    (code === 'motif/no-rounds' && blank(target?.motif)) ||
    (code === 'yarn/no-weight' && isUnweighed(project, target?.motif))
  return bySeverity(heard.map((each) => (isBegun(each) ? { ...each, severity: 'note' as const } : each)))
}

/** What there is to remark on the plan and on motifs that are not placed, errors first. */
export function allFindings(
  planner: Planner,
  project: Project,
  plan: Plan,
  trouble: Finding | null,
  fonts: readonly CodePointRanges[],
): readonly Finding[] {
  const findings = begun(withFonts(plan, project, fonts), project)
  if (trouble) return [trouble, ...findings]
  try {
    const others = planner.unplaced(project, plan)
    return others.length > 0 ? bySeverity([...findings, ...begun(others, project)]) : findings
  } catch (error) {
    return [troubleOf(error), ...findings]
  }
}
