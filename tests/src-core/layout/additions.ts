/** A blanket with fillers or half motifs, for their tests. */
import type { Project } from '../../../shared-types/project'

type Blanket = Extract<NonNullable<Project['layout']>, { kind: 'blanket' }>

export const ROUND = { outline: 'round', across: 80 }

/** 26 sc to 10 cm; main motif `m` in yarn `y`, filler `f` in yarn `z`, both weighed by colour. */
export function blanket(
  motif: object,
  filler: object,
  layout: Partial<Blanket>,
  rest: Partial<Project> = {},
): Project {
  const whole = { kind: 'measured', minutes: 20, slots: [{ slot: 'all', grams: 4 }] }
  const small = { kind: 'measured', minutes: 5, slots: [{ slot: 'all', grams: 0.5 }] }
  return {
    format: 'petalyard-project',
    version: 1,
    gauge: { stitch: 'sc', stitches: 26, rows: 28, over: 100 },
    yarns: [
      { id: 'y', ballGrams: 50, ballMetres: 150, price: 1 },
      { id: 'z', ballGrams: 50, ballMetres: 150, price: 1 },
    ],
    motifs: [{ id: 'm', ...whole, ...motif } as never, { id: 'f', ...small, ...filler } as never],
    colourways: [
      { id: 'a', motif: 'm', yarns: { all: 'y' } },
      { id: 'b', motif: 'f', yarns: { all: 'z' } },
      { id: 'c', motif: 'f', yarns: { all: 'y' } },
    ],
    allowance: { wastePercent: 0 },
    layout: {
      kind: 'blanket',
      motif: 'm',
      columns: 5,
      rows: 4,
      cells: { fill: { pattern: 'one', colourways: ['a'] } },
      ...layout,
    },
    ...rest,
  }
}
