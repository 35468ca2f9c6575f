/** A blanket of squares of 10 cm that sizes are hit with. */
import type { Project } from '../../../shared-types/project'

export const SQUARES: Project = {
  ...{ format: 'petalyard-project', version: 1 },
  gauge: { stitch: 'sc', stitches: 20, rows: 22, over: 100, hook: 4 },
  motifs: [
    { id: 'm', kind: 'measured', outline: 'square', sideToSide: 100, slots: [{ slot: 'all', grams: 4 }] },
  ],
  joining: { rule: 'seam' },
  layout: { kind: 'blanket', motif: 'm', columns: 10, rows: 12 },
}
