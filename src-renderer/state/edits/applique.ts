/** Edits of an appliqué: its panel and what lies on it. Lengths in mm, turns in degrees clockwise. */
import type { AppliqueLayout, Project } from '../../../shared-types/project'

export type AppliqueItem = NonNullable<AppliqueLayout['items']>[number]

/** The appliqué of a project; null where it is made into something else. */
export const appliqueOf = (project: Project): AppliqueLayout | null =>
  project.layout?.kind === 'applique' ? project.layout : null

/** Puts fields over those of the appliqué. */
export function patchApplique(project: Project, patch: Partial<AppliqueLayout>): Project {
  const applique = appliqueOf(project)
  return applique ? { ...project, layout: { ...applique, ...patch } } : project
}

/** Puts fields over those of its panel. */
export const patchPanel = (project: Project, patch: NonNullable<AppliqueLayout['panel']>): Project =>
  patchApplique(project, { panel: { ...appliqueOf(project)?.panel, ...patch } })
