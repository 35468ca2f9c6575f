/** A garland whose numbers are all made up. */
import type { Plan } from '../../../shared-types/plan'
import type { GarlandLayout, Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'

export const base = (layout: Partial<GarlandLayout>, changes: Partial<Project> = {}): Project => ({
  format: 'petalyard-project',
  version: 1,
  gauge: { stitch: 'sc', stitches: 20, rows: 22, over: 100, hook: 3.5 },
  yarns: [
    { id: 'y1', name: 'Moss', ballGrams: 50, ballMetres: 125, price: 3.9 },
    { id: 'y2', name: 'Cream', ballGrams: 50, ballMetres: 125, price: 3.9 },
  ],
  motifs: [
    {
      id: 'disc',
      kind: 'measured',
      outline: 'round',
      across: 40,
      slots: [{ slot: 'all', grams: 2 }],
      weighed: { motifs: 1, resolution: 0 },
      minutes: 5,
    },
    { id: 'six', kind: 'measured', outline: 'petals', petals: 6, overTips: 60, overValleys: 40 },
    { id: 'leaf', kind: 'measured', outline: 'leaf', length: 50, width: 24 },
    { id: 'square', kind: 'measured', outline: 'square', sideToSide: 50 },
  ],
  colourways: [
    { id: 'a', code: 'A', motif: 'disc', yarns: { all: 'y2' } },
    { id: 'b', code: 'B', motif: 'six', yarns: { all: 'y2' } },
  ],
  layout: {
    kind: 'garland',
    cord: { length: 2000, ties: 300, worked: 'chain', yarn: 'y1', gauge: { chains: 22, over: 100 } },
    items: [{ motif: 'disc', colourway: 'a' }],
    spacing: { between: 'edges', mm: 40 },
    ...layout,
  },
  ...changes,
})

export const plan = (layout: Partial<GarlandLayout>, changes?: Partial<Project>): Plan =>
  planProject(base(layout, changes))
export const codes = (planned: Plan): string[] => planned.findings.map(({ code }) => code)
export const alongs = (planned: Plan): number[] => (planned.garland?.items ?? []).map(({ along }) => along)
