import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assignColourways } from '../../../src-core/colour/assign'
import type { ColourCell, Fill } from '../../../src-core/colour/assign'
import { evenCounts } from '../../../src-core/colour/graph'
import { writeKept } from '../../../src-core/colour/kept'
import { cellsOf, corners, offset, square } from './lattices'
import { processorTime } from '../../processor-time'
import { runs } from '../../runs'

const ways = (count: number) =>
  Array.from({ length: count }, (_, index) => ({ id: `c${index}`, code: 'ABCDEFGHJK'[index] }))
const assign = (
  cells: readonly ColourCell[],
  pattern: Fill['pattern'],
  count: number,
  more: Partial<Fill> = {},
  painted: Record<string, string> = {},
) => assignColourways(cells, { pattern, seed: 7, ...more }, painted, ways(count))

const codes = (found: { findings: readonly { code: string }[] }) => found.findings.map(({ code }) => code)
const countsOf = (ids: readonly string[], count: number) =>
  ways(count).map(({ id }) => ids.filter((other) => other === id).length)
const alike = (cells: readonly ColourCell[], ids: readonly string[]) =>
  cells.reduce(
    (sum, cell, index) =>
      sum +
      cell.neighbours.filter((other) => other > index && ids[other] !== '' && ids[other] === ids[index])
        .length,
    0,
  )
const gap = (counts: readonly number[]) => Math.max(...counts) - Math.min(...counts)

describe('patterns of a fill', () => {
  it('fills with one, in rows, and by a repeat that runs on through the rows', () => {
    const cells = square(2, 5)
    expect(new Set(assign(cells, 'one', 3).colourways)).toEqual(new Set(['c0']))
    expect(assign(cells, 'rows', 2).colourways).toEqual([...Array(5).fill('c0'), ...Array(5).fill('c1')])
    expect(assign(cells, 'repeat', 3).colourways.join('')).toBe('c0c1c2c0c1c2c0c1c2c0')
  })

  it('repeats in reading order, whatever the order of the cells', () => {
    const cells = square(3, 4)
    const turned = [...cells].reverse().map((cell) => ({ ...cell, neighbours: [] }))
    expect([...assign(turned, 'repeat', 5).colourways].reverse()).toEqual(
      assign(cells, 'repeat', 5).colourways,
    )
  })

  it('keeps what is painted, and names places and colourways that do not exist', () => {
    const painted = { '1,2': 'c1', '9,9': 'c1', '1,1': 'cx' }
    const found = assign(square(1, 3), 'one', 2, {}, painted)
    expect(found.colourways).toEqual(['c0', 'c1', 'c0'])
    expect(codes(found).sort()).toEqual(['file/unknown-cell', 'file/unknown-colourway'])
  })

  it('repeats what a fill names without a pattern, and forgives blanks in painted places', () => {
    const found = assignColourways(square(1, 4), { colourways: ['c1', 'c0'] }, { '1, 3': 'c0' }, ways(2))
    expect(found).toEqual({ colourways: ['c1', 'c0', 'c0', 'c0'], findings: [] })
    expect(assignColourways(square(1, 2), {}, {}, ways(2)).colourways).toEqual(['', ''])
  })

  it('answers without a fill, a pattern or a colourway', () => {
    const cells = square(2, 2)
    expect(assignColourways(cells, undefined, { '1,1': 'c0' }, ways(1)).colourways).toEqual([
      'c0',
      '',
      '',
      '',
    ])
    expect(codes(assign(cells, 'scatter', 0))).toEqual(['colours/none-chosen'])
    expect(assign([], 'no-two-alike', 3)).toEqual({ colourways: [], findings: [] })
  })

  it('scatters with counts as even as possible, painted ones counted in', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 12 }),
        fc.integer({ min: 1, max: 12 }),
        fc.integer({ min: 1, max: 6 }),
        fc.integer(),
        fc.nat(20),
        (rows, columns, count, seed, brush) => {
          const cells = square(rows, columns)
          const painted = Object.fromEntries(cells.slice(0, brush).map((cell) => [cell.id, 'c0']))
          const { colourways } = assign(cells, 'scatter', count, { seed }, painted)
          const byHand = Math.min(brush, cells.length)
          const least = ways(count).map((_, index) => (index === 0 ? byHand : 0))
          expect(gap(countsOf(colourways, count))).toBe(gap(evenCounts(least, cells.length - byHand)))
        },
      ),
    )
  })

  it('scatters and colours apart by the seed: the same twice, another with another', () => {
    const cells = offset(12, 12)
    for (const pattern of ['scatter', 'no-two-alike', 'shade'] as const) {
      const one = assign(cells, pattern, 4, { seed: 1 }).colourways
      expect(assign(cells, pattern, 4, { seed: 1 }).colourways).toEqual(one)
      expect(assign(cells, pattern, 4, { seed: 2 }).colourways).not.toEqual(one)
    }
  })

  it('shades from the first colourway to the last along its direction, mixed in between', () => {
    const cells = square(40, 30)
    const mean = (ids: readonly string[], pick: (cell: ColourCell) => boolean) => {
      const values = ids
        .filter((_, index) => pick(cells[index] as ColourCell))
        .map((id) => Number(id.slice(1)))
      return values.reduce((sum, value) => sum + value, 0) / values.length
    }
    const down = assign(cells, 'shade', 4).colourways
    const rows = Array.from({ length: 40 }, (_, index) => mean(down, (cell) => cell.row === index + 1))
    expect(rows[0]).toBe(0)
    expect(rows[39]).toBe(3)
    for (let row = 5; row < 40; row++) expect(rows[row]).toBeGreaterThanOrEqual((rows[row - 5] ?? 0) - 0.2)
    expect(new Set(down.filter((_, index) => cells[index]?.row === 10)).size).toBe(2)
    expect(gap(countsOf(down, 4))).toBeLessThan(cells.length / 10)
    const left = assign(cells, 'shade', 4, { direction: 'left' }).colourways
    expect(mean(left, (cell) => cell.column === 30)).toBe(0)
    const outward = assign(cells, 'shade', 4, { direction: 'outward' }).colourways
    expect(mean(outward, (cell) => cell.row === 20 && cell.column === 15)).toBe(0)
    expect(mean(outward, (cell) => cell.row === 1 && cell.column === 1)).toBe(3)
  })
})

describe('no two alike', () => {
  it('colours the lattices with the colours they need: square 2, offset rows 3, corners too 4', () => {
    // §chromatic: square lattice 2, triangular lattice 3, any planar map at most 4 (from memory).
    for (const [make, needs] of [
      [square, 2],
      [offset, 3],
      [corners, 4],
    ] as const) {
      const cells = make(14, 12)
      const found = assign(cells, 'no-two-alike', needs)
      expect(alike(cells, found.colourways)).toBe(0)
      expect(codes(found)).toEqual([])
      expect(gap(countsOf(found.colourways, needs))).toBeLessThanOrEqual(1)
      const fewer = assign(cells, 'no-two-alike', needs - 1)
      expect(codes(fewer)).toEqual(['colours/impossible'])
      expect(fewer.findings[0]?.mend).toContain(`Choose ${needs} colorways`)
      expect(fewer.colourways.every((id) => id !== '')).toBe(true)
      expect(fewer.findings[0]?.message).toContain(`${alike(cells, fewer.colourways)} pairs`)
    }
  })

  it('comes out even with more colours than needed', () => {
    for (const make of [square, offset, corners]) {
      for (const count of [5, 6, 7]) {
        const cells = make(17, 13)
        const found = assign(cells, 'no-two-alike', count)
        expect(alike(cells, found.colourways)).toBe(0)
        expect(gap(countsOf(found.colourways, count))).toBeLessThanOrEqual(1)
      }
    }
  })

  it('agrees with brute force on small maps: possible or not, and the fewest alike pairs', () => {
    const edges = fc.uniqueArray(fc.tuple(fc.nat(6), fc.nat(6)), {
      selector: ([a, b]) => `${Math.min(a, b)}-${Math.max(a, b)}`,
      maxLength: 16,
    })
    fc.assert(
      fc.property(
        edges,
        fc.integer({ min: 1, max: 3 }),
        fc.integer(),
        fc.array(fc.nat(2), { maxLength: 3 }),
        (raw, count, seed, brush) => {
          const cells = cellsOf(
            7,
            raw.filter(([a, b]) => a !== b),
          )
          const fixed = brush.filter((colour) => colour < count)
          const painted = Object.fromEntries(fixed.map((colour, index) => [`1,${index + 1}`, `c${colour}`]))
          let fewest = Infinity
          for (let code = 0; code < count ** 7; code++) {
            const ids = cells.map((_, index) => `c${Math.floor(code / count ** index) % count}`)
            if (fixed.every((colour, index) => ids[index] === `c${colour}`))
              fewest = Math.min(fewest, alike(cells, ids))
          }
          const found = assign(cells, 'no-two-alike', count, { seed }, painted)
          const byHand = alike(
            cells,
            cells.map((cell) => painted[cell.id] ?? ''),
          )
          expect(alike(cells, found.colourways)).toBe(fewest)
          expect(codes(found).includes('colours/impossible')).toBe(fewest > byHand)
          expect(codes(found).includes('colours/painted-alike')).toBe(byHand > 0)
        },
      ),
      { numRuns: runs(150) },
    )
  })

  it('never changes what is painted, and works round it', () => {
    const cells = offset(10, 10)
    const painted = { '1,1': 'c0', '1,2': 'c1', '10,10': 'c2', '5,5': 'c3', '5,6': 'c3' }
    const found = assign(cells, 'no-two-alike', 5, {}, painted)
    for (const [id, way] of Object.entries(painted)) {
      expect(found.colourways[cells.findIndex((cell) => cell.id === id)]).toBe(way)
    }
    expect(codes(found)).toEqual(['colours/painted-alike'])
    expect(alike(cells, found.colourways)).toBe(1)
  })

  it('keeps apart round any painted places, or says that it is impossible', () => {
    const brush = fc.dictionary(
      fc.tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 9 })).map((place) => place.join()),
      fc.nat(3).map((colour) => `c${colour}`),
      { maxKeys: 25 },
    )
    fc.assert(
      fc.property(brush, fc.integer({ min: 2, max: 5 }), fc.integer(), (painted, count, seed) => {
        const cells = offset(9, 9)
        const usable = Object.fromEntries(
          Object.entries(painted).filter(([, id]) => ways(count).some((way) => way.id === id)),
        )
        const found = assign(cells, 'no-two-alike', count, { seed }, usable)
        const byHand = alike(
          cells,
          cells.map((cell) => usable[cell.id] ?? ''),
        )
        const left = alike(cells, found.colourways)
        expect(left > byHand).toBe(codes(found).includes('colours/impossible'))
        for (const [index, cell] of cells.entries()) {
          if (usable[cell.id]) expect(found.colourways[index]).toBe(usable[cell.id])
        }
      }),
      { numRuns: runs(200) },
    )
  })

  it('proves that painted places far apart cannot both stand with three colourways', () => {
    const cells = offset(40, 40)
    const painted = {
      '1,1': 'c0',
      '1,2': 'c1',
      '40,40': 'c0',
      '40,39': 'c1',
      '39,39': 'c2',
      '20,20': 'c0',
      '20,23': 'c1',
    }
    const found = assign(cells, 'no-two-alike', 3, {}, painted)
    expect(codes(found)).toContain('colours/impossible')
    expect(alike(cells, found.colourways)).toBeLessThan(120)
  })

  it('says to clear what is painted where something is, and not of what is made', () => {
    // Three that touch each other in two colourways.
    const cells = cellsOf(3, [
      [0, 1],
      [1, 2],
      [0, 2],
    ] as const)
    const mendOf = (painted: Record<string, string>, held: Record<string, string> = {}) => {
      const fill = { pattern: 'no-two-alike', seed: 7 } as const
      const found = assignColourways(
        ...([cells, fill, painted, ways(2), undefined, 'straight-rows', [], held] as const),
      )
      return found.findings.find(({ code }) => code === 'colours/impossible')?.mend
    }
    const [first] = cells.map(({ id }) => id)
    expect(mendOf({})).toBe('Choose 3 colorways.')
    expect(mendOf({ [first!]: 'c0' })).toBe(
      'Choose 3 colorways, or clear what is painted by hand round these motifs.',
    )
    expect(mendOf({}, { [first!]: 'c0' })).toBe('Choose 3 colorways.')
    expect(mendOf({ [first!]: 'c0' }, { [first!]: 'c0' })).toBe('Choose 3 colorways.')
  })

  it('leaves colourways alone that are painted but not chosen, and still keeps from them', () => {
    const cells = square(6, 6)
    const found = assign(cells, 'no-two-alike', 4, { colourways: ['c0', 'c1'] }, { '3,3': 'c3', '3,4': 'c2' })
    expect(alike(cells, found.colourways)).toBe(0)
    expect(found.colourways.filter((id) => id === 'c3')).toHaveLength(1)
    expect(codes(found)).toEqual([])
  })

  it('says when the counts cannot come out even', () => {
    // A star: one colour for the middle, the other for all the rest.
    const star = cellsOf(
      9,
      Array.from({ length: 8 }, (_, index) => [0, index + 1] as const),
    )
    const found = assign(star, 'no-two-alike', 2)
    expect(codes(found)).toEqual(['colours/uneven-alone'])
    expect([...countsOf(found.colourways, 2)].sort()).toEqual([1, 8])
  })

  it('says nothing of counts that a limit keeps from coming out even, also once they stand', () => {
    const cells = offset(8, 9)
    const few = { pattern: 'no-two-alike', seed: 7, most: { c0: 6 } } as const
    const found = assignColourways(cells, few, {}, ways(4))
    expect(countsOf(found.colourways, 4)).toEqual([6, 22, 22, 22])
    expect(codes(found)).toEqual([])
    const ids = ways(4).map(({ id }) => id)
    const kept = writeKept(few, 'offset-rows', cells, ids, found.colourways, new Map())
    const again = assignColourways(cells, few, {}, ways(4), kept, 'offset-rows')
    expect(again.colourways).toEqual(found.colourways)
    expect(codes(again)).toEqual([])
    // A limit that is not why: a star whose middle is one of two, and all around it the other.
    const star = cellsOf(
      9,
      Array.from({ length: 8 }, (_, index) => [0, index + 1] as const),
    )
    expect(codes(assign(star, 'no-two-alike', 2, { most: { c0: 8, c1: 8 } }))).toEqual([
      'colours/uneven-alone',
    ])
  })

  it('colours 10,000 places in well under a second', () => {
    for (const [make, count] of [
      [square, 2],
      [offset, 3],
      [offset, 4],
      [corners, 4],
      [corners, 9],
      [offset, 2],
    ] as const) {
      const cells = make(100, 100)
      const before = processorTime()
      const found = assign(cells, 'no-two-alike', count)
      expect(processorTime() - before).toBeLessThan(1000)
      const needs = make === square ? 2 : make === offset ? 3 : 4
      expect(alike(cells, found.colourways) === 0).toBe(count >= needs)
    }
  })

  it('never hangs: a dense random map ends in time with the best found', () => {
    let state = 12345
    const random = () => (state = (state * 1103515245 + 12345) % 2147483648) / 2147483648
    const edges: [number, number][] = []
    for (let a = 0; a < 250; a++) for (let b = a + 1; b < 250; b++) if (random() < 0.14) edges.push([a, b])
    const cells = cellsOf(250, edges)
    const before = processorTime()
    const found = assign(cells, 'no-two-alike', 9)
    expect(processorTime() - before).toBeLessThan(3000)
    expect(found.colourways.every((id) => id !== '')).toBe(true)
    expect(alike(cells, found.colourways)).toBeLessThan(edges.length / 9 / 3)
  })
})
