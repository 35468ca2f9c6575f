/** A large motif in the place of a block of small ones, in straight rows: counts by hand. */
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, Motif, Project } from '../../../shared-types/project'
import { POINT_SEAM } from '../../../src-core/joins/constants'
import { planProject } from '../../../src-core/plan'
import { projectSentence, sentenceText } from '../../../src-core/figures/sentence'

const slots = [{ slot: 'all', grams: 4 }]
const square = (id: string, sideToSide: number) =>
  ({ id, name: id, kind: 'measured', outline: 'square', sideToSide, slots }) as unknown as Motif

interface Asked {
  readonly columns: number
  readonly rows: number
  readonly large: Record<string, number>
  readonly side?: number
  readonly layout?: Partial<BlanketLayout>
  readonly more?: Partial<Project>
}

/** Squares of 100 mm with large ones of `side` in the places asked for. */
const project = ({ columns, rows, large, side = 300, layout = {}, more = {} }: Asked): Project => ({
  ...{ format: 'petalyard-project', version: 1 },
  gauge: { stitch: 'sc', stitches: 20, rows: 22, over: 100 },
  yarns: [{ id: 'y', name: 'Flax', ballGrams: 50, ballMetres: 125, price: 4 }],
  motifs: [
    square('small', 100),
    { ...square('medallion', side), slots: [{ slot: 'all', grams: 40 }] } as Motif,
  ],
  colourways: ['small', 'medallion'].map((motif, i) => ({ id: `c${i}`, motif, yarns: { all: 'y' } })),
  layout: {
    ...{ kind: 'blanket', motif: 'small', arrangement: 'straight-rows', columns, rows },
    cells: {
      fill: { pattern: 'repeat' as const, colourways: ['c0', 'c1'] },
      motifs: Object.fromEntries(Object.keys(large).map((id) => [id, 'medallion'])),
      large,
    },
    ...layout,
  } as BlanketLayout,
  ...more,
})
const plan = (asked: Asked) => planProject(project(asked))
const warned = (asked: Asked) =>
  plan(asked)
    .findings.filter(({ severity }) => severity !== 'note')
    .map(({ code }) => code)

describe('M19: a large motif in the place of k × k small ones', () => {
  it.each([
    [7, 7, '4,4', 3, 300],
    [6, 8, '4,3', 2, 200],
    [9, 9, '5,5', 5, 500],
    [8, 8, '4,4', 4, 400],
  ])('%i × %i with one at %s of %i × %i: motifs, joins, size', (columns, rows, at, k, side) => {
    const told = plan({ columns, rows, large: { [at]: k }, side })
    expect(told.motifs).toHaveLength(columns * rows - k * k + 1)
    // Corners meet at every crossing of the grid but its own four corners, and those within the large square.
    expect(told.joins).toHaveLength((columns + 1) * (rows + 1) - 4 - (k - 1) ** 2)
    expect(told.size.width).toBeCloseTo(columns * 100, 6)
    expect(told.size.height).toBeCloseTo(rows * 100, 6)
    expect(told.pieces).toBe(1)
    expect(told.openings ?? []).toEqual([])
    expect(told.leftOut ?? []).toEqual([])
    expect(told.findings.filter(({ severity }) => severity !== 'note').map(({ code }) => code)).toEqual([])
  })

  it('in a corner of the blanket nothing meets it on two sides', () => {
    const told = plan({ columns: 5, rows: 4, large: { '2,2': 3 } })
    expect(told.motifs).toHaveLength(12)
    // 30 crossings, less 4 corners, 4 within it, and 2 each on the sides that lie at the edge.
    expect(told.joins).toHaveLength(18)
    expect(warned({ columns: 5, rows: 4, large: { '2,2': 3 } })).toEqual([])
  })

  it('two of them side by side hold together along the side that they share', () => {
    const told = plan({ columns: 10, rows: 5, large: { '3,3': 3, '3,6': 3 } })
    expect(told.motifs).toHaveLength(50 - 18 + 2)
    // The two crossings between them are joins of two large ones.
    expect(told.joins).toHaveLength(11 * 6 - 4 - 2 * 4)
    expect(
      told.joins.filter(({ members }) => members.every(({ motif }) => /^3,[36]$/.test(motif))),
    ).toHaveLength(2)
    expect(told.pieces).toBe(1)
  })

  it.each(['edges', 'seam'] as const)(
    'joined along sides (%s) each small one beside it has its places',
    (rule) => {
      const told = plan({ columns: 5, rows: 5, large: { '3,3': 3 }, more: { joining: { rule } } })
      const large = told.motifs.find(({ motif }) => motif === 'medallion')!
      const here = told.joins.filter(({ members }) => members.some(({ motif }) => motif === large.id))
      // Twelve small ones with three places each, twelve crossings round it.
      expect(here).toHaveLength(12 * 3 + 12)
      // Of the grid without it: 36 crossings less 4 corners and 4 within, sides 2 · 5 · 4 less 12 within, times 3.
      expect(told.joins).toHaveLength(36 - 4 - 4 + 3 * (40 - 12))
      expect(told.pieces).toBe(1)
    },
  )

  it('sewn, its seams are as long as its sides, and its yarn counts once', () => {
    const of = (large: Record<string, number>) =>
      plan({
        ...{ columns: 5, rows: 5, large },
        more: { joining: { rule: 'seam', seam: 'whip' }, allowance: { wastePercent: 0, tail: 0 } },
      }).yarns[0]!.parts
    const [whole, cut] = [of({}), of({ '3,3': 3 })]
    // 40 seams of 100 mm, 12 of them within it; and where four meet two across, at 16 crossings, then at its corners.
    const [all, left] = [40 * 100 + 32 * POINT_SEAM, 28 * 100 + 8 * POINT_SEAM]
    expect(cut.joins / whole.joins).toBeCloseTo(left / all, 6)
    expect(whole.motifs).toBeCloseTo(25 * 4, 6)
    expect(cut.motifs).toBeCloseTo(16 * 4 + 40, 6)
  })

  it('far from the size of its places it says what it should measure', () => {
    const of = (side: number) => plan({ columns: 7, rows: 7, large: { '4,4': 3 }, side }).findings
    const small = of(260).find(({ code }) => code === 'layout/large-gapes')
    // (300 − 260) / 2
    expect(small?.message).toContain(
      'is 26 cm, but the 3 × 3 places that it takes are 30 cm: the gap round it, 20 mm, is too wide',
    )
    const large = of(400).find(({ code }) => code === 'layout/large-pushes')
    // 100 over four columns: from its middle to the next small one it is two of them.
    expect(large?.message).toContain('it pushes the others 25 mm apart')
    expect([...of(306), ...of(294)].filter(({ code }) => code.startsWith('layout/large'))).toEqual([])
  })

  it('a little larger or smaller than its places: columns and rows give way, and it is joined', () => {
    const larger = plan({ columns: 7, rows: 7, large: { '4,4': 3 }, side: 306 })
    // (306 + 100) / 2 from middle to middle, over two columns.
    expect(larger.pitch.column).toBeCloseTo(101.5, 6)
    expect(larger.size.width).toBeCloseTo(6 * 101.5 + 100, 6)
    expect(larger.pieces).toBe(1)
    const smaller = plan({ columns: 7, rows: 7, large: { '4,4': 3 }, side: 294 })
    expect(smaller.size.width).toBeCloseTo(700, 6)
    expect(smaller.pieces).toBe(1)
    expect(smaller.joins).toHaveLength(64 - 4 - 4)
  })

  it('an even block gives way by the same rule', () => {
    const larger = plan({ columns: 6, rows: 6, large: { '3,3': 2 }, side: 203 })
    // From its middle to that of a square beside it: one column and a half.
    expect(larger.pitch.column).toBeCloseTo((203 + 100) / 2 / 1.5, 6)
    expect(larger.size.height).toBeCloseTo(6 * 100 + 3, 0)
    expect(larger.pieces).toBe(1)
  })

  it('tells what cannot be had, and the small ones stand there', () => {
    const of = (asked: Partial<Asked>) => ({ columns: 6, rows: 6, large: { '3,3': 3 }, ...asked })
    expect(warned(of({ large: { '1,1': 3 } }))).toContain('layout/large-beyond')
    expect(plan(of({ large: { '1,1': 3 } })).motifs).toHaveLength(36)
    const offset = project(of({}))
    const turned = {
      ...offset,
      layout: { ...offset.layout!, arrangement: 'offset-rows' as const },
    } as Project
    const told = planProject(turned)
    expect(told.findings.map(({ code }) => code)).toContain('layout/large-rows')
    expect(told.motifs).toHaveLength(36)
    expect(warned(of({ large: { '3,3': 3, '4,4': 2 } }))).toContain('layout/large-overlap')
    expect(warned(of({ large: { '3,3': 2.5 } }))).toContain('layout/large-places')
  })

  it('says where along its long side it is joined', () => {
    const told = plan({ columns: 5, rows: 5, large: { '3,3': 3 } })
    const wordsAt = (id: string) => told.order.find(({ motif }) => motif === id)?.words
    // Worked in row 3, after the row above it and the small one to its left.
    expect(wordsAt('3,3')).toContain(
      'side 3, 1/3 of the way along: join into the right-hand space shared by 3 and 4, seen from 3',
    )
    expect(wordsAt('3,3')).toContain('side 4, 2/3 of the way along: join to 8, next free corner')
    expect(wordsAt('3,5')).toContain('corner 4: join to the place of 9 that lies opposite')
    // Two small ones side by side share one place of it.
    expect(wordsAt('5,3')).toContain('corner 3: join into the space shared by 9 and 14')
  })

  it('joins into the side of a large motif agree for left and right hand', () => {
    const count = (hand: 'left' | 'right') =>
      plan({ columns: 5, rows: 5, large: { '3,3': 3 }, more: { hand } }).joins
    expect(count('left').length).toBe(count('right').length)
  })

  it('has an edging that runs round the outside alone', () => {
    const of = (large: Record<string, number>) =>
      plan({ columns: 7, rows: 7, large, layout: { edging: { rounds: ['sc'] } }, more: {} }).edgingLines
    expect(of({ '4,4': 3 })).toHaveLength(1)
  })
})

describe('a blanket with a large motif as a sentence', () => {
  const says = (asked: Asked) => sentenceText(projectSentence(plan(asked)))

  it('says how many rows there are, of how many, and in whose place it stands', () => {
    expect(says({ columns: 9, rows: 11, large: { '6,5': 3 } })).toBe(
      '91 motifs (90 squares of 100 mm and 1 square of 30 cm) in 11 straight rows of 9, with one large motif in the place of 3 × 3, joined at the corners: 90 × 110 cm (35⅜ × 43¼ in).',
    )
  })

  it('counts a row that the large one fills altogether', () => {
    expect(says({ columns: 3, rows: 5, large: { '3,2': 3 } })).toContain(
      ' in 5 straight rows of 3, with one large motif in the place of 3 × 3, ',
    )
  })

  it('counts several, of one size and of two', () => {
    const two = { columns: 12, rows: 8, large: { '3,3': 3, '3,8': 3 } }
    expect(says(two)).toContain(
      ' in 8 straight rows of 12, with two large motifs in the place of 3 × 3 each, ',
    )
    const sizes = { columns: 12, rows: 8, large: { '3,3': 3, '3,8': 2, '6,8': 2 } }
    expect(says(sizes)).toContain(
      ', with one large motif in the place of 3 × 3 and two in the place of 2 × 2 each, ',
    )
  })

  it('says of how many rows go up to where motifs are left out besides', () => {
    const asked = { columns: 9, rows: 11, large: { '6,5': 3 } }
    const layout = project(asked).layout as BlanketLayout
    const cells = { ...layout.cells, motifs: { ...layout.cells?.motifs, '1,1': null } }
    expect(says({ ...asked, layout: { cells } })).toContain(
      ' in 11 straight rows of up to 9, with one large motif in the place of 3 × 3, ',
    )
  })

  it('says nothing of one that cannot be had', () => {
    expect(says({ columns: 5, rows: 4, large: { '1,1': 3 } })).not.toContain('large')
    const layout = { arrangement: 'offset-rows' } as const
    expect(says({ columns: 5, rows: 5, large: { '3,3': 3 }, layout })).not.toContain('large')
  })
})
