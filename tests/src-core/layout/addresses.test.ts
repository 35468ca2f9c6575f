/** M19: addresses as a person counts them, on what is there. */
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import { pieceWords } from '../../../src-core/figures/piece-words'
import { mapRows, placeColumns } from '../../../src-core/figures/rows'
import { addressWords, leftOutWords, nthInRows } from '../../../src-core/layout/addresses'
import { placedPieces } from '../../../src-core/layout/placed'
import { planProject, waysForProject } from '../../../src-core/plan'
import { orderCsv } from '../../../src-main/paper/csv'

const squares = (layout: Partial<BlanketLayout>): Project => ({
  ...{ format: 'petalyard-project', version: 1 },
  motifs: [{ id: 'm', kind: 'measured', outline: 'square', sideToSide: 100 }],
  joining: { rule: 'edges' },
  layout: {
    kind: 'blanket',
    arrangement: 'straight-rows',
    motif: 'm',
    columns: 7,
    rows: 4,
    ...layout,
  } as BlanketLayout,
})
/** By hand: 7, 5, 3 and 1 squares below each other. */
const shawl = squares({ outlineShape: { kind: 'triangle', size: 800, height: 400, points: 'down' } })
const holed = squares({ cells: { motifs: { '2,3': null, '2,4': null, '3,1': null } } })

describe('a motif’s address', () => {
  it('counts what stands in its row, from the left, whatever is cut out', () => {
    const plan = planProject(shawl)
    expect(mapRows(plan).map(({ motifs }) => motifs.length)).toEqual([7, 5, 3, 1])
    const words = (id: string) =>
      pieceWords(
        plan,
        placedPieces(plan).find((piece) => piece.id === id)!,
      )
    expect(words('4,4')).toBe('row 4, motif 1')
    expect(words('2,2')).toBe('row 2, motif 1')
    expect(words('2,6')).toBe('row 2, motif 5')
    expect(words('1,6')).toBe('row 1, motif 6')
    // No row has a motif by every number at the top.
    expect(placeColumns(plan, mapRows(plan))).toEqual([])
    expect(placeColumns(planProject(squares({})), mapRows(planProject(squares({}))))).toHaveLength(7)
  })

  it('counts on over a hole, on the map, in findings and in the table of the order', () => {
    const plan = planProject(holed)
    const ids = plan.motifs.map(({ id }) => id)
    expect(addressWords(['2,5', '3,2', '2,2', '4,left'], ids)).toBe(
      'row 2, motif 3; row 3, motif 1; row 2, motif 2; row 4, left half motif',
    )
    // What does not stand has its place alone.
    expect(addressWords(['9,99'], ids)).toBe('row 9, motif 99')
    expect([...nthInRows(['1,3', '1,1', '2,9', 'x'])].sort()).toEqual([
      ['1,1', 1],
      ['1,3', 2],
      ['2,9', 1],
    ])
    const lines = orderCsv(plan).split('\r\n').slice(1, -1)
    const inRow = lines.map((line) => line.split(',').slice(1, 3).map(Number)).filter(([row]) => row === 2)
    expect(inRow.map(([, motif]) => motif).sort()).toEqual([1, 2, 3, 4, 5])
  })

  it('of one that is left out says after which motif it was', () => {
    const plan = planProject(holed)
    const ids = plan.motifs.map(({ id }) => id)
    expect(Object.fromEntries(leftOutWords(['2,3', '2,4', '3,1'], ids))).toEqual({
      '2,3': 'row 2, after motif 2, 1 of 2',
      '2,4': 'row 2, after motif 2, 2 of 2',
      '3,1': 'row 3, before motif 1',
    })
  })

  it('and ways to a size tell the rows that stand', () => {
    const { ways } = waysForProject(shawl, { width: 900, height: 500 })
    const recounted = ways.filter(({ kinds }) => kinds.includes('count'))
    for (const { change } of recounted) expect(change).toMatch(/^\d+ rows? of up to \d+/)
    expect(recounted.length).toBeGreaterThan(0)
  })
})
