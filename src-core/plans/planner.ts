/** What is asked of a planner, by window and command line and by whoever tries arrangements. */
import type { CodePointRanges } from '../../shared-types/fonts'
import type { Finding } from '../../shared-types/finding'
import type { Plan, PlanNumbers, YarnForMotifs } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import type { BestRotation } from '../layout/rotation'
import type { Tryout } from '../layout/trials'

export interface Planner {
  /**
   * The plan of a project; it shows what can be shown, also when there are errors. `fonts`: what those cover that were
   * chosen for other scripts.
   */
  plan(project: Project, fonts?: readonly CodePointRanges[]): Plan
  /**
   * What the plan of a project comes to, well before all of it can be told; null where the plan is as quick. The
   * plan that is asked for next goes on from there.
   */
  numbers(project: Project): PlanNumbers | null
  /** Findings on motifs that the layout does not place: its plan leaves them out. */
  unplaced(project: Project, plan: Plan): readonly Finding[]
  /** What there is of yarns with a limit for the motifs of a blanket, as its colours were chosen by it. */
  stash(project: Project): readonly YarnForMotifs[]
  /** The finished size alone, in mm; null while something is missing that it follows from. */
  size(project: Project): { width: number; height: number } | null
  /** The best rotation, beside the present one; null while something is missing. */
  rotation(project: Project): BestRotation | null
  /** Everything by which arrangements of the project's blanket are compared; null while something is missing. */
  tryout(project: Project): Tryout | null
}
