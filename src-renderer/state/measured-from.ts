/** What the next plan is held against, where the motif of a work that is under way is measured again. */
import type { PlanNumbers } from '../../shared-types/plan'
import type { BlanketLayout, Layout, Project } from '../../shared-types/project'
import { hasBegun } from '../../src-core/progress/words'

/** The plan before the first of several measures in a row; null where something else changes. */
export function measuredFrom(
  committed: Project,
  next: Project,
  before: PlanNumbers,
  now: PlanNumbers | null,
): PlanNumbers | null {
  const { motifs, gauge, layout } = committed
  const isMeasure = next.motifs !== motifs || next.gauge !== gauge
  if (!isMeasure) return next.layout === layout ? now : null
  if (!isSameBut(next.layout, layout)) return null
  return hasBegun(before.progress) ? (now ?? before) : null
}

/** Whether two layouts are one, but for the colours that are held for made motifs: an edit of measures may fix those. */
function isSameBut(next: Project['layout'], before: Project['layout']): boolean {
  if (next === before) return true
  if (!next || !before) return false
  const bare = (layout: Layout) => {
    const { cells: { held: _, painted: __, ...cells } = {}, ...rest } = layout as BlanketLayout
    return Object.entries({ ...rest, ...cells })
  }
  const known = new Map(bare(before))
  const now = bare(next)
  return now.length === known.size && now.every(([name, value]) => known.get(name) === value)
}
