/** Plans of the arrangements that are offered, for their pictures. */
import type { FitArrangement, Plan } from '../../../shared-types/plan'
import type { Project } from '../../../shared-types/project'
import { createPlanner } from '../../../src-core/plan'
import { takeFit } from '../../state/edits/layout'

/** A picture of more motifs than this would only be a grey patch, and slow. */
const MOST_IN_PICTURE = 900

/** The plan of each arrangement; null where it has too many motifs for a small picture. */
export function fitPlans(project: Project, fits: readonly FitArrangement[]): (Plan | null)[] {
  const planner = createPlanner()
  return fits.map((fit) => (fit.motifs > MOST_IN_PICTURE ? null : planner.plan(takeFit(project, fit))))
}
