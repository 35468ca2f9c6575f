/** The plan of a project before its window is shown. */
import type { Finding } from '../../shared-types/finding'
import type { Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { troubleOf } from './all-findings'
import type { Background } from './background'

/** How a project was planned before its window was shown. */
export interface FirstPlan {
  readonly plan: Plan | null
  readonly trouble: Finding | null
}

/** Plans a project beside the window, so that nothing in it keeps the window from opening. */
export async function planFirst(project: Project, background: Background): Promise<FirstPlan> {
  try {
    return { plan: await background.plan('document', project), trouble: null }
  } catch (error) {
    return { plan: null, trouble: troubleOf(error) }
  }
}
