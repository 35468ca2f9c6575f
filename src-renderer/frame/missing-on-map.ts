/** What is said in the place of a map that something is missing for, with the way there. */
import type { Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { missingOf } from '../../src-core/figures/missing'
import type { EmptyMap } from '../kinds/kind'
import { goalWords, toldWords, whereWords } from '../state/finding-words'
import { placeOfFinding } from '../state/places-of-findings'
import type { PlaceId } from '../state/view.svelte'

interface MissingOnMap {
  readonly what: string
  readonly then: string
  /** On the button that leads there. */
  readonly way: string
  readonly to: { readonly place: PlaceId; readonly motif?: string }
}

/** What has to be there before `project` is drawn; null where it was not begun, or is mended nowhere in the window. */
export function missingOnMap(project: Project, plan: Plan, empty: EmptyMap): MissingOnMap | null {
  const finding = missingOf(plan)
  const place = finding && placeOfFinding(finding)
  const way = finding && goalWords(project, finding, null)
  if (!finding || !place || !way) return null
  const { motif } = finding.target ?? {}
  // Of a place of the window the button says the name.
  const where = motif === undefined ? null : whereWords(project, plan, finding)
  return {
    what: empty.what,
    then: `${toldWords(where, finding.message)} ${finding.mend}`,
    // "To the panel": a kind has words of its own for where it is mended.
    way: motif === undefined && 'place' in empty.to && empty.to.place === place ? empty.way : way,
    to: motif === undefined ? { place } : { place, motif },
  }
}
