/** What of a work under way stays off the pages that somebody else gets: those of a kit, and of a pattern with a title page. */
import type { Plan } from '../../shared-types/plan'
import type { OptionalPage } from '../../shared-types/sheets'
import { withFields } from '../telling'

interface Wishes {
  /** As they were chosen for this once. */
  readonly chosen?: readonly OptionalPage[] | null | undefined
  /** As the house style has them. */
  readonly house: readonly OptionalPage[]
  /** The pages are for a buyer, not for whoever makes it. */
  readonly isForBuyer: boolean
}

/** Pages that are left out: as chosen, else as the house style says, and of what is sold the progress of one's own. */
export function pagesLeftOut({ chosen, house, isForBuyer }: Wishes): readonly OptionalPage[] {
  if (chosen) return chosen
  return isForBuyer && !house.includes('progress') ? [...house, 'progress'] : house
}

/** The plan as it was before anything of it was made: no ticks, and no word of what is left. */
export const notBegun = (plan: Plan): Plan =>
  withFields(plan, {
    marks: { made: [], joined: [] },
    progress: {
      ...plan.progress,
      ...{ made: 0, joined: 0, others: 0, edging: false, forecast: [], days: [] },
    },
  })
