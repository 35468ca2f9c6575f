/**
 * Made motifs that are joined to nothing may still lie anywhere: on wish they are coloured as the pattern and its limits
 * would have them, as somebody deals finished motifs out on a table.
 */
import type { Project } from '../../shared-types/project'
import { standingColours } from '../colour/hold'
import { isAddition } from '../layout/addresses'
import { blanketOf } from '../plans/layouts'
import { holdWork } from './hold'
import { clearMade, joinedOf } from './mark'
import { EDGING } from './marks'

/** Motifs of the pattern that are made and joined to nothing, by address. */
export function looseMade(project: Project): string[] {
  const joined = joinedOf(project)
  return Object.keys(project.made ?? {}).filter(
    (key) => !(key in joined) && !isAddition(key) && key !== EDGING,
  )
}

/** The project with its loose motifs coloured anew; they stay made, on the days that they were made. */
export function dealtOut(project: Project): Project {
  const loose = new Set(looseMade(project))
  if (loose.size === 0) return project
  const free = holdWork(project, clearMade(project, [...loose]))
  const [standing, layout] = [standingColours(free), blanketOf(free)]
  if (!standing || !layout) return project
  const held: Record<string, string> = { ...layout.cells?.held }
  standing.places.forEach(({ id }, i) => {
    const colourway = standing.assignment.colourways[i]
    if (loose.has(id) && colourway) held[id] = colourway
  })
  return {
    ...free,
    made: { ...project.made },
    ...(project.joined && { joined: { ...project.joined } }),
    layout: { ...layout, cells: { ...layout.cells, held } },
  }
}
