/** What a motif is laid out as where nobody has said anything of it: the first of the blankets that are proposed. */
import type { Project } from '../../shared-types/project'
import { proposeProject } from '../plan'
import { blanketOf } from '../plans/layouts'
import { firstSizes } from './first-sizes'

/** Counts of a blanket whose motif has no size yet (our own choice). */
const [ROWS, COLUMNS] = [10, 8]

/**
 * A project whose blanket of one motif stands in the arrangement that is proposed first for its target size (where it
 * has none, the first size of a blanket in the project's units), each motif in the first of its colourways.
 */
export function laidFirst(project: Project, motif: string): Project {
  const { width, height } = blanketOf(project)?.target ?? {}
  const wish = width && height ? { width, height } : firstSizes(project.units).blanket
  const way = project.colourways?.find((each) => (each.motif ?? motif) === motif)
  const begun: Project = {
    ...project,
    layout: {
      ...{ kind: 'blanket', motif, rows: ROWS, columns: COLUMNS },
      ...(way && { cells: { fill: { pattern: 'repeat', colourways: [way.id] } } }),
    },
  }
  return proposeProject(begun, wish).proposals[0]?.project ?? begun
}
