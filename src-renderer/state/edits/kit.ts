/** Edits of the kit that a project is sold as. Masses in g, money in the project's currency. */
import type { Kit, Project } from '../../../shared-types/project'
import { freeName } from './ids'
import { blanketOf } from './layout'

export type KitExtra = NonNullable<Kit['extras']>[number]

/** The kit of a project; null where it is not sold as one. */
export const kitOf = (project: Project): Kit | null => project.layout?.kit ?? null

/** A first kit (ours): a small run, whole grams in whole lengths, one in twenty to spare. */
const NEW_KIT: Kit = { count: 10, windTo: 1, lengths: 'whole', sparePercent: 5, marginPercent: 40 }

/** Sells the project as a kit; a project without a layout gets the one that it is shown with. */
export function startKit(project: Project): Project {
  if (kitOf(project)) return project
  const layout = project.layout ?? blanketOf(project)
  return layout ? { ...project, layout: { ...layout, kit: NEW_KIT } } : project
}

/** Sells it as a kit no more; undo brings the kit back. */
export function endKit(project: Project): Project {
  if (!project.layout?.kit) return project
  const { kit: _, ...layout } = project.layout
  return { ...project, layout }
}

/** Puts fields over those of the kit. */
export function patchKit(project: Project, patch: Partial<Kit>): Project {
  const kit = kitOf(project)
  return kit && project.layout
    ? { ...project, layout: { ...project.layout, kit: { ...kit, ...patch } } }
    : project
}

const extrasOf = (project: Project): readonly KitExtra[] => kitOf(project)?.extras ?? []

/** Puts one more thing in: a hook first, since most kits have one. */
export function addExtra(project: Project): Project {
  const extras = extrasOf(project)
  const name = freeName(
    extras.length === 0 ? 'crochet hook' : 'extra',
    extras.map((extra) => extra.name),
  )
  return patchKit(project, { extras: [...extras, { name, count: 1 }] })
}

export const patchExtra = (project: Project, index: number, patch: Partial<KitExtra>): Project =>
  patchKit(project, {
    extras: extrasOf(project).map((extra, i) => (i === index ? { ...extra, ...patch } : extra)),
  })

export const removeExtra = (project: Project, index: number): Project =>
  patchKit(project, { extras: extrasOf(project).filter((_, i) => i !== index) })
