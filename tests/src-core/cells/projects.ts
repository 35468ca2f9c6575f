/** Blankets of cells: two motifs, cells left out, outlines, rounds. Every number is made up. */
import type { Plan } from '../../../shared-types/plan'
import type { BlanketLayout, Motif, Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'

const slots = [{ slot: 'all', grams: 4 }]
export const MOTIFS = {
  flower: {
    id: 'flower',
    kind: 'measured',
    outline: 'petals',
    petals: 8,
    overTips: 80,
    overValleys: 56,
    slots,
  },
  bud: { id: 'bud', kind: 'measured', outline: 'petals', petals: 8, overTips: 50, overValleys: 34, slots },
  six: { id: 'six', kind: 'measured', outline: 'petals', petals: 6, overTips: 80, overValleys: 56, slots },
  square: { id: 'square', kind: 'measured', outline: 'square', sideToSide: 60, slots },
  large: { id: 'large', kind: 'measured', outline: 'round', across: 80, slots },
  small: { id: 'small', kind: 'measured', outline: 'round', across: 40, slots },
} as const satisfies Record<string, Motif | object>

type Name = keyof typeof MOTIFS

/** A blanket of these motifs, 8 in a row and 6 rows where nothing else is said. */
export function cellsProject(
  names: readonly Name[],
  layout: Partial<BlanketLayout> = {},
  more: Partial<Project> = {},
): Project {
  return {
    ...{ format: 'petalyard-project', version: 1 },
    gauge: { stitch: 'sc', stitches: 20, rows: 22, over: 100 },
    yarns: [{ id: 'y', name: 'Flax', ballGrams: 50, ballMetres: 125, price: 4 }],
    motifs: names.map((name) => MOTIFS[name] as unknown as Motif),
    colourways: names.map((name, i) => ({ id: `c${i}`, motif: name, yarns: { all: 'y' } })),
    layout: {
      ...{ kind: 'blanket', motif: names[0], arrangement: 'straight-rows', columns: 8, rows: 6 },
      ...(names.length > 1 && { alternate: { motifs: [...names], by: 'cell' as const } }),
      ...layout,
    },
    ...more,
  }
}

export const cellsPlan = (...asked: Parameters<typeof cellsProject>) => planProject(cellsProject(...asked))

/** Pairs of motifs that are joined. */
export const joinedPairs = (plan: Plan): number =>
  new Set(
    plan.joins.flatMap(({ members }) =>
      members.flatMap(({ motif }, i) =>
        members.slice(i + 1).map((other) => [motif, other.motif].sort().join(' ')),
      ),
    ),
  ).size
