/** What the planner asks of each kind of layout. */
import type { Plan, PlanNumbers, YarnForMotifs } from '../../shared-types/plan'
import type { Settled, SettledLayout } from '../../shared-types/settled'
import type { Reference } from '../checks/references'
import type { PutIn } from '../materials/kit/kit'
import type { Tryout } from '../layout/trials'

/** A kind of layout, with a memory of its own: made once for each planner. */
export interface KindPlanner<Own extends SettledLayout = SettledLayout> {
  /** The plan of a project; it shows what can be shown, also when there are errors. */
  plan(project: Settled, layout: Own): Plan
  /** Ids of the motifs that the layout places, whose findings stand in its plan. */
  placedMotifs(layout: Own, plan: Plan): readonly (string | undefined)[]
  /** Every yarn, motif and colourway that the layout names. */
  names(layout: Own): readonly Reference[]
  /** What its kit has besides yarn. */
  putIn?(project: Settled, layout: Own, plan: Plan): PutIn
  /** What the plan comes to, where that is known well before all of it can be told; null while it is not. */
  numbers?(project: Settled, layout: Own): PlanNumbers | null
  /** What there is of yarns with a limit for its motifs. */
  stash?(project: Settled, layout: Own): readonly YarnForMotifs[]
  /** The finished size alone, in mm; null while something is missing that it follows from. */
  size?(project: Settled, layout: Own): { width: number; height: number } | null
  /** Everything by which arrangements of the layout are compared; null while something is missing. */
  tryout?(project: Settled, layout: Own): Tryout | null
}
