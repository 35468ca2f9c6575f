/** Colours given by hand or by a plain pattern: one, a repeat that runs on, whole rows; painted places on top. */
import type { Finding } from '../../shared-types/finding'
import type { BlanketLayout } from '../../shared-types/project'
import { finding } from '../findings/finding'
import type { Placement } from '../layout/blanket'

/** A colourway id for each placement, '' where none is given. */
export function givenColourways(
  placements: readonly Placement[],
  cells: BlanketLayout['cells'],
): { colourways: string[]; findings: Finding[] } {
  const ways = cells?.fill?.colourways ?? []
  const pattern = cells?.fill?.pattern ?? 'repeat'
  const colourways = placements.map((place, i) => {
    if (ways.length === 0) return ''
    if (pattern === 'one') return ways[0]!
    return ways[(pattern === 'rows' ? place.row - 1 : i) % ways.length]!
  })
  const findings: Finding[] = []
  const index = new Map(placements.map((place, i) => [place.id, i]))
  for (const [cell, way] of Object.entries(cells?.painted ?? {})) {
    const i = index.get(cell.replace(/\s/g, ''))
    if (i === undefined)
      findings.push(finding('file/unknown-cell', `layout.cells.painted["${cell}"]`, { id: cell }))
    else colourways[i] = way
  }
  return { colourways, findings }
}
