/** The letters of colourways: one for each, the same on every sheet and in every list. */
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { codesOf } from '../../../src-core/colour/letters'
import { colourwayMarks } from '../../../src-core/figures/marks'
import { planProject } from '../../../src-core/plan'

describe('the letters of colourways', () => {
  it('are their own, or those by their place, or the next that no other has', () => {
    expect(codesOf([{}, {}, {}])).toEqual(['A', 'B', 'C'])
    expect(codesOf([{}, { code: 'A' }])).toEqual(['B', 'A'])
    expect(codesOf([{ code: 'X' }, { code: ' ' }, { code: 'C' }, {}])).toEqual(['X', 'B', 'C', 'D'])
  })

  it('are the same in what a plan says and on its map, whatever the colourways are called in the file', () => {
    const project = {
      ...{ format: 'petalyard-project', version: 1 },
      motifs: [{ id: 'm', kind: 'measured', outline: 'square', sideToSide: 100, slots: [{ slot: 'all' }] }],
      yarns: [{ id: 'y', name: 'Slate' }],
      // Called A in the file, where another has that letter.
      colourways: [
        { id: 'A', yarns: { all: 'y' } },
        { id: 'c2', code: 'A', yarns: { all: 'y' } },
      ],
      layout: {
        kind: 'blanket',
        motif: 'm',
        columns: 2,
        rows: 2,
        cells: { fill: { pattern: 'repeat', colourways: ['A'] } },
      },
    } as unknown as Project
    const plan = planProject(project)
    expect(plan.settled.colourways.map(({ id, code }) => [id, code])).toEqual([
      ['A', 'B'],
      ['c2', 'A'],
    ])
    expect(colourwayMarks(plan).map(({ code, count }) => [code, count])).toEqual([['B', 4]])
  })
})
