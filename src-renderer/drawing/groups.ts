/** Motifs that belong together on a plan, by id: a row, a column, all of a colourway. */
import type { Plan } from '../../shared-types/plan'

const idsWhere = (plan: Plan, same: (motif: Plan['motifs'][number]) => boolean): string[] =>
  plan.motifs.filter(same).map(({ id }) => id)

/** All motifs in the row of a motif. */
export function rowOf(plan: Plan, id: string): string[] {
  const own = plan.motifs.find((motif) => motif.id === id)
  return own ? idsWhere(plan, (motif) => motif.row === own.row) : []
}

/** All motifs at the same place of their rows as a motif. */
export function columnOf(plan: Plan, id: string): string[] {
  const own = plan.motifs.find((motif) => motif.id === id)
  return own ? idsWhere(plan, (motif) => motif.column === own.column) : []
}

/** All motifs of a colourway. */
export const colourwayOf = (plan: Plan, colourway: string): string[] =>
  idsWhere(plan, (motif) => motif.colourway === colourway)
