/** Edits of what is marked: as made, as joined, or neither. Which day it is comes from the edge. */
import type { PlacedMotif } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { isAddition } from '../layout/addresses'
import { blanketOf } from '../plans/layouts'
import { settled } from '../settled'
import { movedMarks, rekeyed } from './hold'
import { EDGING } from './marks'

type Piece = Pick<PlacedMotif, 'id' | 'colourway'>
type Texts = Record<string, string>

/** Whether motifs are joined in their last round, as they are made. */
export function joinsAsMade(project: Project): boolean {
  const { rule } = settled(project).joining
  return blanketOf(project) !== null && rule !== 'seam' && rule !== 'apart'
}

/** What is joined, also where the file leaves it out. */
export const joinedOf = (project: Project): Readonly<Texts> =>
  project.joined ?? (joinsAsMade(project) ? (project.made ?? {}) : {})

/** Marks pieces as made on a day; those that are joined as they are made are joined too. Marked ones keep their day. */
export function markMade(project: Project, pieces: readonly Piece[], day: string): Project {
  const fresh = pieces.filter(({ id }) => project.made?.[id] === undefined)
  if (fresh.length === 0) return project
  const marks = Object.fromEntries(fresh.map(({ id }) => [id, day]))
  const next: Project = {
    ...project,
    made: { ...project.made, ...marks },
    ...(project.joined && joinsAsMade(project) && { joined: { ...project.joined, ...marks } }),
  }
  const layout = blanketOf(next)
  // Motifs of the pattern are held once it changes; what stands between them no pattern knows.
  const held = Object.fromEntries(
    fresh.flatMap(({ id, colourway }) => (colourway && isAddition(id) ? [[id, colourway]] : [])),
  )
  if (!layout || Object.keys(held).length === 0) return next
  return {
    ...next,
    layout: { ...layout, cells: { ...layout.cells, held: { ...layout.cells?.held, ...held } } },
  }
}

/** Marks pieces as made on a day, and not joined yet: those that were joined are not any more. */
export const markLoose = (project: Project, pieces: readonly Piece[], day: string): Project =>
  clearJoined(
    markMade(project, pieces, day),
    pieces.map(({ id }) => id),
  )

/** Marks pieces that were there before they were laid out: made on a day that nobody knows, and joined to nothing. */
export function markMadeBefore(project: Project, pieces: readonly Piece[]): Project {
  const joined = { ...joinedOf(project) }
  const next = markMade(project, pieces, '')
  return joinsAsMade(project) ? { ...next, joined } : next
}

/**
 * The project after it was laid out for motifs that are there already: all of them marked as made before. What was
 * marked on a day or is joined keeps its mark, also where it has no place any more: `lostMade` tells of it. Those that
 * were laid out like this before are the same motifs in other places.
 */
export function markLaidOut(before: Project, laid: Project, places: readonly Pick<Piece, 'id'>[]): Project {
  const move = movedMarks(before, laid)
  const stay = (marks: Readonly<Texts>) => rekeyed(marks, (key) => move(key) ?? key)
  const there = new Set(places.map(({ id }) => id))
  const wasJoined = joinedOf(before)
  const own = Object.entries(before.made ?? {}).filter(([key, day]) => {
    const now = move(key) ?? key
    return day !== '' || key in wasJoined || there.has(now) || isAddition(now) || now === EDGING
  })
  const made = before.made && stay(Object.fromEntries(own))
  const joined = before.made && stay(wasJoined)
  const laidOut = { ...laid, ...fields({ made, joined }) }
  return markMadeBefore(
    laidOut,
    places.map(({ id }) => ({ id, colourway: '' })),
  )
}

/** Takes the marks of pieces away. */
export function clearMade(project: Project, ids: readonly string[]): Project {
  const gone = new Set(ids)
  const next = {
    ...project,
    ...fields({ made: rest(project.made, gone), joined: rest(project.joined, gone) }),
  }
  const layout = blanketOf(project)
  if (!layout?.cells?.held) return next
  const { held, ...cells } = layout.cells
  const left = rest(held, gone)
  const holds = left && Object.keys(left).length > 0
  return { ...next, layout: { ...layout, cells: { ...cells, ...(holds && { held: left }) } } }
}

/** Marks pieces as joined on a day, and as made. */
export function markJoined(project: Project, pieces: readonly Piece[], day: string): Project {
  const joined = { ...joinedOf(project) }
  for (const { id } of pieces) joined[id] ??= day
  return { ...markMade({ ...project, joined }, pieces, day), joined }
}

/** Pieces are made, but not joined. */
export const clearJoined = (project: Project, ids: readonly string[]): Project => ({
  ...project,
  joined: rest(joinedOf(project), new Set(ids)) ?? {},
})

/** Marks the edging as made on a day; null: it is not. */
export function markEdging(project: Project, day: string | null): Project {
  if (day === null) return clearMade(project, [EDGING])
  return { ...project, made: { ...project.made, [EDGING]: day } }
}

function rest(marks: Readonly<Texts> | undefined, gone: ReadonlySet<string>): Texts | undefined {
  return marks && Object.fromEntries(Object.entries(marks).filter(([key]) => !gone.has(key)))
}

const fields = ({ made, joined }: Pick<Project, 'made' | 'joined'>) => ({
  ...(made && { made }),
  ...(joined && { joined }),
})
