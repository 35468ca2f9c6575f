import { describe, expect, it } from 'vitest'
import { touchingDistance } from '../../../src-core/geometry/touching'
import { sharedArea } from '../../../src-core/geometry/polygons'
import { moveOutline, turnOutline } from '../../../src-core/geometry/points'
import { planProject } from '../../../src-core/plan'
import type { Plan } from '../../../shared-types/plan'
import { cellsPlan, cellsProject } from './projects'

const codes = (plan: Plan) => plan.findings.map(({ code }) => code)
const outlinesOf = (plan: Plan) =>
  plan.motifs.map(({ motif, x, y, turn }) => {
    const { outline } = plan.accounts.find(({ id }) => id === motif) ?? plan.motif!
    return moveOutline(turnOutline(outline, (turn * Math.PI) / 180), x, y)
  })

/** Area that any two motifs share, in mm². */
function overlap(plan: Plan): number {
  const outlines = outlinesOf(plan)
  let most = 0
  outlines.forEach((one, i) =>
    outlines.slice(i + 1).forEach((other, k) => {
      const [a, b] = [plan.motifs[i]!, plan.motifs[i + 1 + k]!]
      if (Math.hypot(a.x - b.x, a.y - b.y) < 120) most = Math.max(most, sharedArea([one], [other]))
    }),
  )
  return most
}

describe('M19: two motifs in one layout', () => {
  it('alternate like a chessboard, at the touching distance of one to the other', () => {
    const plan = cellsPlan(['flower', 'bud'])
    const [flower, bud] = plan.accounts as [Plan['accounts'][number], Plan['accounts'][number]]
    for (const { row, column, motif } of plan.motifs)
      expect(motif).toBe((row + column) % 2 === 0 ? 'flower' : 'bud')
    expect(plan.pitch.column).toBeCloseTo(touchingDistance(flower.outline, bud.outline, { x: 1, y: 0 })!, 9)
    expect(plan.pitch.column).toBeCloseTo(65, 6)
    // Tip to tip with every neighbour, as in a straight grid of one motif: 2mn − m − n.
    expect(plan.joins).toHaveLength(2 * 8 * 6 - 8 - 6)
    expect(plan.joins.every(({ members }) => new Set(members.map(({ motif }) => motif)).size === 2)).toBe(
      true,
    )
    expect(plan.pieces).toBe(1)
    expect(overlap(plan)).toBeLessThan(0.01)
  })

  it('alternate row by row: a pitch in the row for the larger one, rows as close as they touch', () => {
    const plan = cellsPlan(['large', 'small'], { alternate: { motifs: ['large', 'small'], by: 'row' } })
    expect(plan.pitch.column).toBeCloseTo(80, 3)
    expect(plan.pitch.rows[0]).toBeCloseTo(60, 3)
    // Circles of 80 mm meet in their rows (7 in each of 3), and those under each other (8 over 5 steps).
    expect(plan.joins).toHaveLength(3 * 7 + 5 * 8)
  })

  it('a large and a small round fill the plane: four small ones touch each large one', () => {
    const plan = cellsPlan(['large', 'small'])
    expect(plan.pitch.column).toBeCloseTo(60, 3)
    expect(plan.size.width).toBeCloseTo(7 * 60 + 2 * 40, 3)
    expect(overlap(plan)).toBeLessThan(0.01)
    expect(codes(plan)).not.toContain('layout/loose-kind')
  })

  it('a square meets a round with the middle of its side', () => {
    const plan = cellsPlan(['square', 'large'])
    expect(plan.joins).toHaveLength(2 * 8 * 6 - 8 - 6)
    const onSquare = plan.joins.flatMap(({ members }) =>
      members.filter(({ motif }) => plan.motifs.find(({ id }) => id === motif)!.motif === 'square'),
    )
    expect(new Set(onSquare.map(({ anchor }) => anchor)).size).toBe(4)
    expect(
      plan.accounts[0]!.anchors.filter(({ id }) => onSquare.some(({ anchor }) => anchor === id)).map(
        ({ kind }) => kind,
      ),
    ).toEqual(Array.from({ length: 4 }, () => 'side'))
  })

  it('three that alternate on offset rows stand so that no two alike touch', () => {
    const plan = cellsPlan(['large', 'small', 'six'], { arrangement: 'offset-rows' })
    const at = new Map(plan.motifs.map((motif) => [motif.id, motif.motif]))
    for (const { members } of plan.joins)
      expect(new Set(members.map(({ motif }) => at.get(motif))).size).toBe(members.length)
  })

  it('a smaller motif put in by hand floats in its cell, and it is said', () => {
    const plan = cellsPlan(
      ['flower'],
      { cells: { motifs: { '3,4': 'bud' } } },
      {
        motifs: cellsProject(['flower', 'bud']).motifs,
      },
    )
    expect(plan.pitch.column).toBeCloseTo(80, 6)
    expect(plan.pieces).toBe(2)
    const found = plan.findings.find(({ code }) => code === 'layout/loose-kind')
    expect(found?.target?.cells).toEqual(['3,4'])
  })

  it('a medallion in the middle moves nothing that it does not reach', () => {
    const around = ['3,3', '3,4', '3,5', '4,3', '4,5', '5,3', '5,4', '5,5']
    const left = Object.fromEntries(around.map((id) => [id, null]))
    const { motifs } = cellsProject(['large', 'small'])
    const medallion = { ...motifs![0]!, across: 160 } as NonNullable<typeof motifs>[number]
    // Four cells on: 2 × 40 from middle to middle are 80 + 20.
    const plan = cellsPlan(
      ['small'],
      { columns: 7, rows: 7, cells: { motifs: { ...left, '4,4': 'large' } } },
      {
        motifs: [motifs![1]!, medallion],
      },
    )
    expect(plan.motifs).toHaveLength(49 - 8)
    // The medallion asks for 100 mm to the motif two places on, where 80 mm were.
    expect(plan.pitch.column).toBeCloseTo(50, 3)
    expect(overlap(plan)).toBeLessThan(0.01)
  })

  it('each colourway goes to its own motif, and yarn and motifs are counted apart', () => {
    const plan = cellsPlan(['flower', 'bud'], { cells: { fill: { pattern: 'repeat' } } })
    for (const { motif, colourway } of plan.motifs) expect(colourway).toBe(motif === 'flower' ? 'c0' : 'c1')
    expect(plan.counts.byColourway).toEqual({ c0: 24, c1: 24 })
    expect(plan.yarns[0]!.parts.motifs).toBeCloseTo(48 * 4, 6)
  })

  it('a rule of their own for two motifs: joining chains between them alone', () => {
    const pairs = [{ motifs: ['flower', 'bud'], rule: 'bridge' as const, bridgeChains: 4 }]
    const apart = planProject(cellsProject(['flower', 'bud'], {}, { joining: { pairs } }))
    // Four chains of 5 mm.
    expect(apart.pitch.column).toBeCloseTo(65 + 20, 2)
    expect(apart.joins).toHaveLength(2 * 8 * 6 - 8 - 6)
    expect(apart.yarns[0]!.parts.joins).toBeGreaterThan(0)
    const never = [{ motifs: ['flower', 'bud'], rule: 'apart' as const, gap: 0 }]
    expect(
      planProject(cellsProject(['flower', 'bud'], {}, { joining: { pairs: never } })).joins,
    ).toHaveLength(0)
    const three = [{ motifs: ['flower', 'bud', 'flower'] }]
    expect(codes(planProject(cellsProject(['flower', 'bud'], {}, { joining: { pairs: three } })))).toContain(
      'layout/pair-motifs',
    )
  })

  it('says which motifs and cells are not there', () => {
    const plan = cellsPlan(['flower'], {
      alternate: { motifs: ['flower', 'gone'] },
      cells: { motifs: { '9,9': null, '1,1': 'lost' } },
    })
    const where = plan.findings
      .filter(({ code }) => code.startsWith('file/unknown'))
      .map((each) => each.where)
    expect(where).toContain('layout.alternate.motifs[1]')
    expect(where).toContain('layout.cells.motifs["9,9"]')
    expect(where).toContain('layout.cells.motifs["1,1"]')
    expect(plan.motifs).toHaveLength(48)
  })

  it('the work says whose petals are meant', () => {
    const plan = cellsPlan(['flower', 'square'], { columns: 2, rows: 1 })
    expect(plan.order.map(({ words }) => words)).toEqual([
      'work all 8 petals without joining, beginning at any of them',
      expect.stringMatching(/corner.*1/),
    ])
  })
})
