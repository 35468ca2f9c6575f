import type { Project } from '../shared-types/project'
import { settled } from '../src-core/settled'

/** Everything that a project can leave open, as it is settled: its own fields, beside those of its layout. */
export const OPEN_FIELDS = [
  ...(['title', 'designer', 'notes', 'units', 'terms', 'hand', 'forChild', 'currency', 'order'] as const),
  ...(['yarns', 'motifs', 'colourways', 'joining', 'allowance', 'sheet'] as const),
] as const

/** The project with some of its defaults written out, as a file of its own. */
export function writtenOut(project: Project, own: readonly string[] = OPEN_FIELDS, ofLayout = true): Project {
  const all = structuredClone(settled(project)) as Record<string, unknown>
  const layout = project.layout ? { layout: ofLayout ? all.layout : project.layout } : {}
  const fields = Object.fromEntries(own.map((name) => [name, all[name]]))
  return { ...structuredClone(project), ...fields, ...layout } as Project
}
