/** What lies where on an appliqué, for a spreadsheet: from the lowest to the topmost, as it is sewn down. */
import type { Plan } from '../../shared-types/plan'
import type { Cell } from './csv'
import { csvTable } from './csv'

/** One line for each item, from the lowest to the topmost. Lengths in mm, turns in degrees clockwise. */
export function itemsCsv(plan: Plan): string {
  const { settled } = plan
  const names = new Map(plan.accounts.map(({ id, name }) => [id, name || id]))
  const ways = new Map(settled.colourways.map((way) => [way.id, way]))
  const placed = new Map(plan.motifs.map((motif) => [motif.id, motif]))
  const rows = (plan.stacking ?? []).flatMap((id): Cell[][] => {
    const motif = placed.get(id)
    if (!motif) return []
    const way = ways.get(motif.colourway)
    return [
      [
        Number(motif.label) || null,
        names.get(motif.motif ?? '') ?? '',
        way?.code ?? '',
        way?.name ?? '',
        motif.x,
        motif.y,
        motif.turn,
        motif.flipped ? 'wrong side up' : '',
      ],
    ]
  })
  const heading = ['number', 'motif', 'colourway', 'name', 'mm across', 'mm down', 'degrees turned', 'lies']
  return csvTable([heading, ...rows])
}
