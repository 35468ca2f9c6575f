/** Edits of a garland: its cord, what hangs on it and how. Lengths in mm. */
import type { GarlandLayout, Project } from '../../../shared-types/project'

/** The garland of a project; null where it is made into something else. */
export const garlandOf = (project: Project): GarlandLayout | null =>
  project.layout?.kind === 'garland' ? project.layout : null

/** Puts fields over those of the garland. */
export function patchGarland(project: Project, patch: Partial<GarlandLayout>): Project {
  const garland = garlandOf(project)
  return garland ? { ...project, layout: { ...garland, ...patch } } : project
}

/** Puts fields over those of its cord. */
export const patchCord = (project: Project, patch: NonNullable<GarlandLayout['cord']>): Project =>
  patchGarland(project, { cord: { ...garlandOf(project)?.cord, ...patch } })
