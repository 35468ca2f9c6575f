/** Opening the project that a command is about, and telling what is wrong with it. */
import { version } from '../../package.json'
import type { Finding } from '../../shared-types/finding'
import type { CodePointRanges } from '../../shared-types/fonts'
import type { Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { planProject } from '../../src-core/plan'
import { explainOutcome, openProject } from '../documents'
import { CommandEnd, EXIT } from './exit-codes'
import type { ExitCode } from './exit-codes'
import type { Surroundings } from './surroundings'
import { complainOf, exitFor } from './prints'
import { demandApart } from './write-out'

export { complainOf, exitFor, printJson, printLines } from './prints'

/** A project, or the values that keep it from being one. */
type LoadedProject =
  | { readonly project: Project; readonly findings: null }
  | { readonly project: null; readonly findings: readonly Finding[] }

/** Opens FILE; ends the command where it cannot be read, is no project or is newer than the program. */
export async function loadProject(file: string): Promise<LoadedProject> {
  const outcome = await openProject(file)
  if (outcome.kind === 'opened') return { project: outcome.project, findings: null }
  if (outcome.kind === 'invalid') return { project: null, findings: outcome.findings }
  // What is no JSON from its first sign on is most likely the text of a pattern.
  const isText = outcome.kind === 'not-json' && outcome.line === 1 && outcome.column === 1
  const hint = isText
    ? ' "petalyard read" takes the text of a pattern, and its --out makes a project of it.'
    : ''
  throw new CommandEnd(EXIT.unreadable, `${explainOutcome(outcome, file, version)}${hint}`)
}

/** What is drawn from a project, or how the command ends since nothing can be. */
type ToDraw =
  | { readonly project: Project; readonly plan: Plan; readonly ended?: undefined }
  | { readonly ended: ExitCode }

/**
 * The plan of FILE for `what` ("map") that goes to OUT, told with its errors and what else `isTold`. Ends the command
 * where OUT is FILE. `fonts`: what those cover that were chosen for other scripts; `hand`: another than the project's.
 */
export async function planToDraw(
  file: string,
  out: string,
  what: string,
  around: Surroundings,
  isTold: (finding: Finding) => boolean = () => false,
  fonts: readonly CodePointRanges[] = [],
  as: (project: Project) => Project = (project) => project,
): Promise<ToDraw> {
  await demandApart(out, file, 'project')
  const { project: own, findings: invalid } = await loadProject(file)
  if (!own) {
    complainOf(around, invalid)
    return { ended: exitFor(invalid) }
  }
  const project = as(own)
  const plan = planProject(project, fonts)
  complainOf(
    around,
    plan.findings.filter((finding) => finding.severity === 'error' || isTold(finding)),
  )
  // What lies on a panel that cannot be read has no size yet.
  if (plan.motifs.length === 0 || plan.size.width === 0) {
    around.err(`petalyard: there is nothing to draw yet, so no ${what} was written.\n`)
    return { ended: EXIT.projectErrors }
  }
  return { project, plan }
}
