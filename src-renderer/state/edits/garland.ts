/** Edits of a garland: its cord, what hangs on it and how. Lengths in mm. */
import type { CordAccount, Plan } from '../../../shared-types/plan'
import type { GarlandLayout, Project } from '../../../shared-types/project'
import { garlandOf } from '../../../src-core/plans/layouts'
import { firstSizes } from '../../../src-core/layout/first-sizes'
import { findMotif } from './motif'

export { garlandOf }

/** One part of the sequence: a motif, a bead or a gap. */
export type SequencePart = NonNullable<GarlandLayout['items']>[number]
type PartKind = 'motif' | 'bead' | 'gap'

/** Puts fields over those of the garland. */
export function patchGarland(project: Project, patch: Partial<GarlandLayout>): Project {
  const garland = garlandOf(project)
  return garland ? { ...project, layout: { ...garland, ...patch } } : project
}

/** Puts fields over those of its cord. */
export const patchCord = (project: Project, patch: NonNullable<GarlandLayout['cord']>): Project =>
  patchGarland(project, { cord: { ...garlandOf(project)?.cord, ...patch } })

/** Puts fields over how its motifs hang. */
export const patchHang = (project: Project, patch: NonNullable<GarlandLayout['hang']>): Project =>
  patchGarland(project, { hang: { ...garlandOf(project)?.hang, ...patch } })

/** Puts fields over its swags. */
export const patchSwags = (project: Project, patch: NonNullable<GarlandLayout['swags']>): Project =>
  patchGarland(project, { swags: { ...garlandOf(project)?.swags, ...patch } })

/** What a part of the sequence is; one that names nothing counts as a gap of none. */
export const partKind = (part: SequencePart): PartKind =>
  part.motif !== undefined ? 'motif' : part.bead !== undefined ? 'bead' : 'gap'

const partsOf = (project: Project): readonly SequencePart[] => garlandOf(project)?.items ?? []

const setParts = (project: Project, items: readonly SequencePart[]): Project =>
  patchGarland(project, { items: [...items] })

/** mm: a common wooden bead (ours). */
const NEW_BEAD = { bead: 'wooden bead', size: 12 } as const

/** A part to add: the motif in its first colourway, a bead, or a gap. */
export function newPart(project: Project, kind: PartKind, motifId = ''): SequencePart {
  if (kind === 'bead') return { ...NEW_BEAD }
  if (kind === 'gap') return { gap: firstSizes(project.units).spacing }
  const way = project.colourways?.find((entry) => entry.motif === motifId)
  return { motif: motifId, ...(way ? { colourway: way.id } : {}) }
}

/** Adds a part behind the others, or behind the one at `after`. */
export function addPart(project: Project, part: SequencePart, after = partsOf(project).length - 1): Project {
  const parts = partsOf(project)
  return setParts(project, [...parts.slice(0, after + 1), part, ...parts.slice(after + 1)])
}

/** Puts fields over those of one part. */
export const patchPart = (project: Project, index: number, patch: Partial<SequencePart>): Project =>
  setParts(
    project,
    partsOf(project).map((part, i) => (i === index ? { ...part, ...patch } : part)),
  )

/** Hangs another motif in the place of a part, in its first colourway. */
export const setPartMotif = (project: Project, index: number, motif: string): Project =>
  patchPart(project, index, { colourway: undefined, ...newPart(project, 'motif', motif) })

export const removePart = (project: Project, index: number): Project =>
  setParts(
    project,
    partsOf(project).filter((_, i) => i !== index),
  )

export function duplicatePart(project: Project, index: number): Project {
  const part = partsOf(project)[index]
  return part ? addPart(project, { ...part }, index) : project
}

/** Moves a part to another place among the others; a place beyond the ends is the end. */
export function movePart(project: Project, from: number, to: number): Project {
  const parts = partsOf(project)
  const part = parts[from]
  const place = Math.max(0, Math.min(parts.length - 1, to))
  if (!part || place === from) return project
  const rest = parts.filter((_, i) => i !== from)
  return setParts(project, [...rest.slice(0, place), part, ...rest.slice(place)])
}

/** A part in words: "Leaf", "wooden bead", "gap". */
export function partName(project: Project, part: SequencePart): string {
  if (part.motif !== undefined) return findMotif(project, part.motif)?.name ?? part.motif
  return part.bead !== undefined ? part.bead.trim() || 'bead' : 'gap'
}

/** What of spacing, count and length follows from the other two; null where all three are given. */
type SpacingFollows = 'count' | 'spacing' | 'length'

export function spacingFollows(garland: GarlandLayout): SpacingFollows | null {
  const { mm, count } = garland.spacing ?? {}
  const hasLength = garland.cord?.length !== undefined || isSwagged(garland)
  if (count === undefined) return 'count'
  if (mm === undefined) return 'spacing'
  return hasLength ? null : 'length'
}

/** Takes the dust of binary fractions off: no more than a millionth of a millimetre. */
const dusted = (mm: number): number => Math.round(mm * 1e6) / 1e6

/** Lets another of the three follow; what is given then is what is planned now, so that nothing jumps. */
export function setSpacingFollows(project: Project, plan: Plan, follows: SpacingFollows): Project {
  const garland = garlandOf(project)
  if (!garland) return project
  const { between } = garland.spacing ?? {}
  const mm = dusted(plan.garland?.spacing ?? garland.spacing?.mm ?? 0)
  const count = plan.garland?.items.length || garland.spacing?.count || 1
  const head = between ? { between } : {}
  if (follows === 'length') {
    const { length: _, ...cord } = garland.cord ?? {}
    const { swags: _swags, ...straight } = garland
    return { ...project, layout: { ...straight, cord, spacing: { ...head, mm, count } } }
  }
  const spacing = follows === 'count' ? { ...head, mm } : { ...head, count }
  const cord =
    garland.cord?.length === undefined && !isSwagged(garland)
      ? { ...garland.cord, length: lengthOf(plan.garland?.cord) }
      : garland.cord
  return patchGarland(project, { spacing, ...(cord ? { cord } : {}) })
}

const lengthOf = (cord: CordAccount | undefined): number => dusted(cord?.length ?? 0) || NEW_LENGTH

/** Measures from edge to edge or from centre to centre; the distance that is planned stays what it is. */
export function setBetween(project: Project, between: 'edges' | 'centres'): Project {
  const garland = garlandOf(project)
  if (!garland) return project
  const { mm } = garland.spacing ?? {}
  // Centres cannot lie on one spot, and an even pitch needs a distance that flowers fit in.
  const least = between === 'centres' && mm !== undefined ? { mm: Math.max(mm, 1) } : {}
  return patchGarland(project, { spacing: { ...garland.spacing, between, ...least } })
}

/** mm: a garland over a mantelpiece (ours), where nothing better is known. */
const NEW_LENGTH = 2000

export const isSwagged = ({ swags }: GarlandLayout): boolean =>
  swags?.span !== undefined || swags?.drop !== undefined

/** What of a swag follows: its cord (from the wall), or its drop or span (from the cord). */
type SwagFollows = 'cord' | 'drop' | 'span'

export function swagFollows({ swags, cord }: GarlandLayout): SwagFollows {
  if (cord?.length === undefined || (swags?.span !== undefined && swags.drop !== undefined)) return 'cord'
  return swags?.span === undefined ? 'span' : 'drop'
}

/** Drop as a share of the span: an eighth to a quarter is common practice (no source). */
const NEW_DROP_SHARE = 0.15

/** Hangs the garland in one swag, as long as it is now, or straight. */
export function setHung(project: Project, plan: Plan, swagged: boolean): Project {
  const garland = garlandOf(project)
  if (!garland || isSwagged(garland) === swagged) return project
  const length = lengthOf(plan.garland?.cord)
  if (!swagged) {
    const { swags: _, ...straight } = garland
    return { ...project, layout: { ...straight, cord: { ...garland.cord, length } } }
  }
  const { length: _, ...cord } = garland.cord ?? {}
  const span = Math.round(length * (1 - NEW_DROP_SHARE / 2))
  const { mm, count, ...head } = garland.spacing ?? {}
  // The length comes from the wall now; spacing and count cannot both be kept.
  const spacing = { ...head, ...(mm === undefined ? { count } : { mm }) }
  const swags = { count: 1, span, drop: Math.round(span * NEW_DROP_SHARE) }
  return { ...project, layout: { ...garland, cord, spacing, swags } }
}

/** Lets another measure of the swags follow; what is given then is what is planned now. */
export function setSwagFollows(project: Project, plan: Plan, follows: SwagFollows): Project {
  const garland = garlandOf(project)
  if (!garland) return project
  const told = plan.garland?.swags
  const count = garland.swags?.count ?? 1
  const span = dusted(told?.span ?? garland.swags?.span ?? 0) || NEW_LENGTH
  const drop = dusted(told?.drop ?? garland.swags?.drop ?? span * NEW_DROP_SHARE)
  const { length: _, ...cord } = garland.cord ?? {}
  const given = { ...cord, length: told ? dusted(told.length * told.count) : lengthOf(plan.garland?.cord) }
  switch (follows) {
    case 'cord':
      return { ...project, layout: { ...garland, cord, swags: { count, span, drop } } }
    case 'drop':
      return { ...project, layout: { ...garland, cord: given, swags: { count, span } } }
    case 'span':
      return { ...project, layout: { ...garland, cord: given, swags: { count, drop } } }
  }
}

/** What hangs at a place of the map ("1,n" is the nth motif), with its number on the cord from 1. */
export function itemOfMotif(plan: Plan, id: string | null) {
  const place = plan.motifs.findIndex((motif) => motif.id === id)
  if (place < 0) return null
  let motifs = -1
  const index = (plan.garland?.items ?? []).findIndex(({ bead }) => bead === '' && ++motifs === place)
  const item = plan.garland?.items[index]
  return item ? { item, number: index + 1 } : null
}

/** Places of the map where a part of the sequence hangs. */
export function motifsOfPart(plan: Plan, part: number): string[] {
  const hung = (plan.garland?.items ?? []).filter(({ bead }) => bead === '')
  return plan.motifs.filter((_, i) => hung[i]?.part === part).map(({ id }) => id)
}
