/** Edits of what fills the openings between the motifs of a blanket. Lengths in mm. */
import type { HoleKind, Plan } from '../../../shared-types/plan'
import type { Colourway, MeasuredMotif, Project } from '../../../shared-types/project'
import { blanketOf, patchBlanket } from './layout'
import { addMotif, newMotif } from './motif'
import { freeName } from './ids'
import { addColourway, newColourway } from './yarn'

/** The colourways that fillers can be worked in: those made for their motif. */
export function fillerWays(project: Project): Colourway[] {
  const motif = blanketOf(project)?.fillers?.motif
  return motif ? (project.colourways ?? []).filter((way) => way.motif === motif) : []
}

/** The colourway that fillers have where they are not painted: the one chosen, else the first of their motif. */
export const fillerWay = (project: Project): Colourway | undefined => {
  const ways = fillerWays(project)
  return ways.find(({ id }) => id === blanketOf(project)?.fillers?.colourway) ?? ways[0]
}

/**
 * Fills the openings with a motif, in a colourway of its own: one that is made for it, else a new one. Without
 * yarns there is nothing to work it in yet.
 */
export function chooseFiller(project: Project, motif: string): Project {
  const own = project.colourways?.find((way) => way.motif === motif)
  const made = own ?? (project.yarns?.length ? newColourway(project, motif) : undefined)
  const next = made && !own ? addColourway(project, made) : project
  return patchBlanket(next, { fillers: { motif, ...(made ? { colourway: made.id } : {}) } })
}

/** Leaves the openings open; what fillers were painted with is kept for when they come back. */
export const removeFillers = (project: Project): Project => patchBlanket(project, { fillers: undefined })

/** Puts another colourway on every filler that is not painted by hand. */
export const setFillerWay = (project: Project, colourway: string): Project =>
  patchBlanket(project, { fillers: { ...blanketOf(project)?.fillers, colourway } })

/** Adds a colourway for the fillers and puts it on them. */
export function addFillerWay(project: Project): Project {
  const motif = blanketOf(project)?.fillers?.motif
  if (!motif) return project
  const way = newColourway(project, motif)
  return setFillerWay(addColourway(project, way), way.id)
}

/** A round motif that just fits an opening of so much radius. */
function fillerFor(project: Project, radius: number): MeasuredMotif {
  const names = (project.motifs ?? []).map((motif) => motif.name)
  return {
    ...newMotif(project, 'round'),
    name: freeName('Filler', names),
    across: Math.round(20 * radius) / 10,
  }
}

/** Makes a round filler for openings of so much radius, with a colourway, and puts it there. */
export function makeFiller(project: Project, radius: number): Project {
  const motif = fillerFor(project, radius)
  return chooseFiller(addMotif(project, motif), motif.id)
}

/**
 * The largest kind of opening that a filler leaves, and how many of it; null where it leaves none. Fillers stand in
 * openings between as many motifs each.
 */
export function openingsLeft({ holes, fillers }: Pick<Plan, 'holes' | 'fillers'>): HoleKind | null {
  const filled = new Map<number, number>()
  for (const { motifs } of fillers) filled.set(motifs.length, (filled.get(motifs.length) ?? 0) + 1)
  const open = holes.filter(({ sides }) => sides > 2)
  const isFilled = (kind: HoleKind): boolean => {
    const many = filled.get(kind.sides) ?? 0
    const alike = open.filter(({ sides }) => sides === kind.sides)
    // A filler stands in every opening of its kind; of several kinds where they are as good as one.
    const own = alike.filter(({ count }) => count === many)
    const all = alike.reduce((sum, { count }) => sum + count, 0)
    return many > 0 && (many === all || own.includes(kind))
  }
  return open
    .filter((kind) => !isFilled(kind))
    .reduce<HoleKind | null>((best, kind) => (!best || kind.radius > best.radius ? kind : best), null)
}
