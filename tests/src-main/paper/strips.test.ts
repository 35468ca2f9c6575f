/** How squares are sewn quickest stands above the order of work; nothing else is sewn in strips. */
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, Joining, Motif, Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { mapPages } from '../../../src-main/paper/index'
import { DATE } from './projects'

const SEWN: Joining = { rule: 'seam', seam: 'whip' }
const square = { id: 'm', kind: 'measured', outline: 'square', sideToSide: 100 } as Motif
const orderOf = (
  joining: Joining,
  arrangement: BlanketLayout['arrangement'],
  motif = square,
  cells: BlanketLayout['cells'] = {},
): string => {
  const layout: BlanketLayout = { kind: 'blanket', motif: 'm', arrangement, columns: 5, rows: 5, cells }
  const large = { ...square, id: 'large', sideToSide: 300 } as Motif
  const project: Project = {
    format: 'petalyard-project',
    version: 1,
    motifs: [motif, large],
    joining,
    layout,
  }
  return mapPages(planProject(project), { date: DATE })
    .filter(({ section }) => section === 'order')
    .flatMap(({ figure }) => figure.items.flatMap((item) => (item.kind === 'text' ? [item.text] : [])))
    .join(' ')
}

describe('squares that are sewn', () => {
  it('are sewn in strips, where they lie in straight rows', () => {
    expect(orderOf(SEWN, 'straight-rows')).toContain('sew the motifs of each row into a strip')
  })

  it('are not where they are joined as they are made, or their rows are offset', () => {
    expect(orderOf({ rule: 'edges' }, 'straight-rows')).not.toContain('strip')
    expect(orderOf(SEWN, 'offset-rows')).not.toContain('strip')
    const medallion = { motifs: { '3,3': 'large' }, large: { '3,3': 3 } }
    expect(orderOf(SEWN, 'straight-rows', square, medallion)).toContain('Tick off')
    expect(orderOf(SEWN, 'straight-rows', square, medallion)).not.toContain('strip')
    const hexagon = { ...square, outline: 'hexagon' } as Motif
    expect(orderOf(SEWN, 'offset-rows', hexagon)).not.toContain('strip')
  })
})
