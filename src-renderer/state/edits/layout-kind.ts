/** What the motifs are made into: a blanket, a garland or an appliqué; and the way from one to another. */
import type { Project } from '../../../shared-types/project'
import { LAYOUT_KINDS } from '../../../shared-types/project'
import type { LayoutKind } from '../../../src-core/plans/layouts'
import { accountOf } from '../../../src-core/accounts'
import { layoutKindOf } from '../../../src-core/plans/layouts'
import { NEW_LAYOUTS } from '../../kinds/layouts'
import { firstSizes } from './first-sizes'
import { mainMotif } from './motif'

export { LAYOUT_KINDS, layoutKindOf }
export type { LayoutKind }

/**
 * The project laid out as another kind, from the motifs that it has. What the kit holds is kept; the layout
 * before is not: undo brings it back.
 */
export function setLayoutKind(project: Project, kind: LayoutKind): Project {
  if (layoutKindOf(project) === kind && project.layout) return project
  const { motifs = [], yarns, units, layout } = project
  const main = mainMotif(project)
  const account = main ? accountOf(project, main).account : null
  const made = NEW_LAYOUTS[kind]({
    ...{ motifs, yarns, main, account, first: firstSizes(units) },
    wayOf: (motif) => project.colourways?.find((way) => way.motif === motif || way.motif === undefined),
  })
  return { ...project, layout: { ...made, ...(layout?.kit && { kit: layout.kit }) } }
}
