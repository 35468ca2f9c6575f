import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assignColourways } from '../../../src-core/colour/assign'
import type { ColourCell, Fill } from '../../../src-core/colour/assign'
import type { YarnForMotifs } from '../../../shared-types/plan'
import { offset, square } from './lattices'

const ways = (count: number) =>
  Array.from({ length: count }, (_, index) => ({ id: `c${index}`, code: 'ABCDEFGHJK'[index] }))

interface Case {
  readonly cells: readonly ColourCell[]
  readonly fill: Fill
  readonly painted?: Record<string, string>
  readonly stash?: readonly YarnForMotifs[]
  readonly colourways?: number
}
const assign = ({ cells, fill, painted, stash, colourways = 4 }: Case) =>
  assignColourways(cells, { seed: 7, ...fill }, painted, ways(colourways), undefined, 'straight-rows', stash)

const count = (colourways: readonly string[]): Record<string, number> => {
  const counts: Record<string, number> = {}
  for (const id of colourways) counts[id] = (counts[id] ?? 0) + 1
  return counts
}
/** The checker: motifs beyond limits, grams short, and neighbours alike, from the answer alone. */
function check({ cells, fill, stash = [] }: Case, colourways: readonly string[]) {
  const counts = count(colourways)
  const over = Object.entries(fill.most ?? {}).reduce(
    (sum, [id, most]) => sum + Math.max(0, (counts[id] ?? 0) - most),
    0,
  )
  const short = stash.map(({ left, each }) =>
    Math.max(0, Object.entries(counts).reduce((sum, [id, many]) => sum + many * (each[id] ?? 0), 0) - left),
  )
  const alike = cells.reduce(
    (sum, { neighbours }, cell) =>
      sum + neighbours.filter((other) => other > cell && colourways[other] === colourways[cell]).length,
    0,
  )
  return { over, short: short.reduce((sum, grams) => sum + grams, 0), alike }
}
const codes = ({ findings }: { findings: readonly { code: string }[] }) => findings.map(({ code }) => code)
const yarn = (left: number, each: Record<string, number>, id = 'y1'): YarnForMotifs => ({
  ...{ id, name: 'Moss', left, each },
})
const all = (colours: number) => ways(colours).map(({ id }) => id)
const PATTERNS = ['repeat', 'rows', 'shade', 'scatter', 'no-two-alike'] as const

describe('M46 limits of a fill', () => {
  it.each(PATTERNS)('that do not bind change nothing: %s', (pattern) => {
    const cells = offset(9, 8)
    const fill: Fill = { pattern, colourways: all(4) }
    const plain = assign({ cells, fill })
    const most = { c0: 72, c1: 72 }
    expect(assign({ cells, fill: { ...fill, most }, stash: [yarn(1000, { c0: 3 })] })).toEqual(plain)
  })

  it('leave a pattern as it is but for as few motifs as they need, spread over it', () => {
    const fill: Fill = { pattern: 'repeat', colourways: ['c0', 'c0', 'c1', 'c2'], most: { c0: 5 } }
    const { colourways, findings } = assign({ cells: square(2, 8), fill })
    // Of the 8 turns of c0 three go to the others, the second, the fifth and the eighth.
    expect(colourways.map((id) => id.slice(1)).join('')).toBe('0212001210120112')
    expect(findings).toEqual([])
  })

  it.each([
    ['repeat', 10, 9, 12],
    ['repeat', 25, 20, 40],
    ['rows', 24, 6, 30],
  ] as const)('spread over the whole map: %s, %i rows of %i, at most %i', (pattern, rows, columns, most) => {
    const fill: Fill = { pattern, colourways: ['c1', 'c0', 'c0', 'c2'], most: { c0: most } }
    const { colourways, findings } = assign({ cells: square(rows, columns), fill })
    expect(findings).toEqual([])
    const where = colourways.flatMap((id, cell) => (id === 'c0' ? [cell] : []))
    expect(where).toHaveLength(most)
    const quarter = (rows * columns) / 4
    for (let part = 0; part < 4; part++) {
      const many = where.filter((cell) => Math.floor(cell / quarter) === part).length
      const step = pattern === 'rows' ? columns : 1
      expect(Math.abs(many - most / 4), `quarter ${part + 1}`).toBeLessThanOrEqual(step)
    }
  })

  it('spread what is left of a colourway behind motifs that are held', () => {
    const cells = square(10, 9)
    const held = Object.fromEntries(cells.slice(0, 30).map(({ id }, cell) => [id, cell % 2 ? 'c0' : 'c1']))
    const fill: Fill = { pattern: 'repeat', colourways: ['c1', 'c0', 'c0', 'c2'], most: { c0: 23 } }
    const { colourways, findings } = assign({ cells, fill, painted: held })
    expect(findings).toEqual([])
    expect(colourways.slice(0, 30)).toEqual(Object.values(held))
    const where = colourways.flatMap((id, cell) => (id === 'c0' && cell >= 30 ? [cell - 30] : []))
    expect(where).toHaveLength(8)
    where.forEach((cell, at) => expect(Math.abs(cell - (at + 0.5) * 7.5)).toBeLessThan(4))
  })

  it('leave rows whole as long as that can be had', () => {
    const fill: Fill = { pattern: 'rows', colourways: all(3), most: { c0: 9 } }
    const { colourways, findings } = assign({ cells: square(6, 4), fill })
    expect(colourways.filter((_, cell) => cell % 4 === 0).join()).toBe('c0,c1,c2,c0,c1,c2')
    expect(findings).toEqual([])
  })

  it('break a row where whole rows do not fit, and say so', () => {
    const fill: Fill = { pattern: 'rows', colourways: all(2), most: { c0: 10, c1: 6 } }
    const found = assign({ cells: square(4, 4), fill })
    expect(count(found.colourways)).toEqual({ c0: 10, c1: 6 })
    expect(codes(found)).toEqual(['colours/rows-broken'])
  })

  it.each(['repeat', 'shade'] as const)('change no pattern where nothing is gained by it: %s', (pattern) => {
    // Every motif takes as much: whatever lies where, as many grams are missing.
    const cells = square(9, 8)
    const stash = [yarn(40, { c0: 1, c1: 1, c2: 1 })]
    const fill: Fill = { pattern, colourways: ['c0', 'c1', 'c2'], symmetry: 'both' }
    const found = assign({ cells, fill, stash })
    expect(found.colourways).toEqual(assign({ cells, fill }).colourways)
    expect(codes(found)).toEqual(['colours/limits-impossible'])
    expect(found.findings[0]!.mend).toBe('Add yarn, choose one more colorway, or make fewer motifs.')
  })

  it('keep the bands of a shade in order', () => {
    const fill: Fill = { pattern: 'shade', colourways: all(3), direction: 'down', most: { c1: 4 } }
    const { colourways } = assign({ cells: square(12, 3), fill })
    expect(count(colourways)).toEqual({ c0: 16, c1: 4, c2: 16 })
    const rowsOf = (id: string) =>
      colourways.flatMap((each, cell) => (each === id ? [Math.floor(cell / 3)] : []))
    expect(Math.max(...rowsOf('c0'))).toBeLessThanOrEqual(Math.min(...rowsOf('c2')))
  })

  it('count what is painted by hand', () => {
    const painted = { '1,1': 'c0', '1,2': 'c0', '1,3': 'c0' }
    for (const pattern of PATTERNS) {
      const found = assign({
        cells: square(8, 5),
        painted,
        fill: { pattern, colourways: all(3), most: { c0: 4 } },
      })
      expect(count(found.colourways).c0, pattern).toBeLessThanOrEqual(4)
      expect(found.colourways.slice(0, 3), pattern).toEqual(['c0', 'c0', 'c0'])
    }
  })

  it('take an exact limit in grams to the last motif', () => {
    const stash = [yarn(4.3 * 7, { c0: 4.3 })]
    for (const pattern of PATTERNS) {
      const found = assign({ cells: square(8, 5), stash, fill: { pattern, colourways: all(3) } })
      // Whole rows of five: one.
      expect(count(found.colourways).c0, pattern).toBe(pattern === 'rows' ? 5 : 7)
      expect(codes(found), pattern).toEqual([])
    }
  })

  it('say by how much they are passed, and that nothing less far was possible', () => {
    const stash = [yarn(40, { c0: 5, c1: 2 })]
    const fill: Fill = { pattern: 'scatter', colourways: all(2), most: { c1: 15 } }
    const found = assign({ cells: square(5, 5), stash, fill })
    // 15 of B take 30 g and leave 10 g for 10 of A, which take 50 g: 40 g short, 8 motifs of A.
    expect(count(found.colourways)).toEqual({ c0: 10, c1: 15 })
    expect(codes(found)).toEqual(['colours/limits-impossible'])
    expect(found.findings[0]?.message).toContain('40 g of Moss missing, for 8 motifs')
  })

  it('prove by the sides of a chequerboard what two colourways cannot do', () => {
    const fill: Fill = { pattern: 'no-two-alike', colourways: all(2), most: { c0: 1000 } }
    const found = assign({ cells: square(50, 50), fill })
    expect(codes(found)).toEqual(['colours/limits-impossible'])
    expect(check({ cells: square(50, 50), fill }, found.colourways)).toEqual({
      over: 250,
      short: 0,
      alike: 0,
    })
    // 1,500 in B would keep within the limit: it is the pattern that stands above it.
    expect(found.findings[0]?.message).toContain('that no two alike touch comes before the limits')
  })

  it('blame the pattern for nothing that the counts alone bring about', () => {
    // 16 of them, 8 and 4 allowed: 4 are beyond the limits whatever touches.
    const fill: Fill = { pattern: 'no-two-alike', colourways: all(2), most: { c0: 8, c1: 4 } }
    const found = assign({ cells: square(4, 4), fill })
    expect(codes(found)).toEqual(['colours/limits-impossible'])
    expect(found.findings[0]?.message).not.toContain('touch')
    expect(found.findings[0]?.mend).toBe('Raise a limit, choose one more colorway, or make fewer motifs.')
  })

  it('prove by triangles what three colourways in offset rows cannot do', () => {
    const fill: Fill = { pattern: 'no-two-alike', colourways: all(4), most: { c0: 100, c1: 100 } }
    const of = { cells: offset(30, 30), fill }
    const found = assign(of)
    // Of each triangle one may be in C and one in D: at least so many are beyond the limits, but not all that many.
    const { over } = check(of, found.colourways)
    const [told] = found.findings
    const atLeast = Number(/at least (\d+) motifs/.exec(told?.message ?? '')?.[1] ?? over)
    expect(codes(found)).toEqual([over > atLeast ? 'colours/limits-nearest' : 'colours/limits-impossible'])
    expect(atLeast).toBeGreaterThan(0)
    expect(atLeast).toBeLessThanOrEqual(over)
  })

  it('say what is proved where the closest filling is not: every one goes as far beyond as this', () => {
    const fill: Fill = { pattern: 'no-two-alike', colourways: all(3), most: { c0: 20, c1: 20 } }
    const of = { cells: offset(13, 13), fill }
    const found = assign(of)
    const { over, alike } = check(of, found.colourways)
    expect(alike).toBe(0)
    expect(['colours/limits-impossible', 'colours/limits-nearest']).toEqual(
      expect.arrayContaining(codes(found)),
    )
    if (codes(found)[0] === 'colours/limits-nearest')
      expect(found.findings[0]?.message).toMatch(
        /every way goes at least \d+ motifs over\. Closest fit found: /,
      )
    // With three colourways in offset rows there is one filling but for which is which: the two rarest in A and B.
    const plain = assign({ cells: of.cells, fill: { ...fill, most: {} } }).colourways
    const [rarest = 0, next = 0] = Object.values(count(plain)).sort((a, b) => a - b)
    expect(over).toBe(rarest + next - 40)
  })

  it('keep 2,500 motifs within limits, whatever the pattern, and the same seed gives the same answer', () => {
    const stash = [
      yarn(3000, { c0: 4, c1: 1 }),
      yarn(2200, { c1: 3, c2: 0.5 }, 'y2'),
      yarn(900, { c3: 2 }, 'y3'),
    ]
    for (const cells of [square(50, 50), offset(50, 50)])
      for (const pattern of PATTERNS) {
        const of: Case = {
          cells,
          stash,
          fill: { pattern, colourways: all(5), most: { c4: 520 } },
          colourways: 5,
        }
        const found = assign(of)
        const { over, short, alike } = check(of, found.colourways)
        expect([over, short], pattern).toEqual([0, 0])
        if (pattern === 'no-two-alike') expect(alike).toBe(0)
        expect(
          codes(found).filter((code) => code !== 'colours/rows-broken'),
          pattern,
        ).toEqual([])
        expect(assign(of)).toEqual(found)
      }
  })
})

describe('limits against every filling of small maps', () => {
  const small = fc.record({
    rows: fc.integer({ min: 1, max: 3 }),
    columns: fc.integer({ min: 1, max: 3 }),
    isOffset: fc.boolean(),
    pattern: fc.constantFrom(...PATTERNS),
    colours: fc.integer({ min: 1, max: 3 }),
    most: fc.dictionary(fc.constantFrom('c0', 'c1', 'c2'), fc.nat(5)),
    stash: fc.array(
      fc.record({
        left: fc.integer({ min: 0, max: 40 }),
        each: fc.array(fc.nat(6), { minLength: 3, maxLength: 3 }),
      }),
      { maxLength: 2 },
    ),
    painted: fc.dictionary(fc.constantFrom('1,1', '1,2', '2,1'), fc.constantFrom('c0', 'c1', 'c2'), {
      maxKeys: 2,
    }),
  })

  it('a filling within them is found if there is one, else none was overlooked', () => {
    fc.assert(
      fc.property(small, ({ rows, columns, isOffset, pattern, colours, most, stash, painted }) => {
        const cells = (isOffset ? offset : square)(rows, columns)
        const chosen = all(colours)
        const by = (index: number, { left, each }: (typeof stash)[number]): YarnForMotifs => ({
          ...yarn(left, Object.fromEntries(each.map((grams, colour) => [`c${colour}`, grams])), `y${index}`),
        })
        const there = new Set(cells.map(({ id }) => id))
        const own = Object.fromEntries(Object.entries(painted).filter(([id]) => there.has(id)))
        const limits = Object.fromEntries(Object.entries(most).filter(([id]) => chosen.includes(id)))
        const of: Case = {
          ...{ cells, painted: own, stash: stash.map((each, index) => by(index, each)) },
          fill: { pattern, colourways: chosen, most: limits },
        }
        const found = assign(of)
        const got = check(of, found.colourways)
        const differs = pattern === 'no-two-alike'
        let best: { alike: number; over: number; short: number } | null = null
        const isLess = (one: NonNullable<typeof best>, other: NonNullable<typeof best>): boolean =>
          (differs ? one.alike - other.alike : 0) < 0 ||
          ((!differs || one.alike === other.alike) &&
            (one.over < other.over || (one.over === other.over && one.short < other.short - 1e-6)))
        const walk = (cell: number, colourways: readonly string[]): void => {
          if (cell === cells.length) {
            const cost = check(of, colourways)
            if (!best || isLess(cost, best)) best = cost
            return
          }
          const by = own[cells[cell]!.id]
          for (const id of by ? [by] : chosen) walk(cell + 1, [...colourways, id])
        }
        walk(0, [])
        const told = JSON.stringify({ got, best, found: found.colourways })
        // Counts alone decide it: the shortfall is the least there is.
        if (!differs) {
          expect(isLess(best!, got), told).toBe(false)
          if (got.over + got.short > 0) expect(codes(found)).toContain('colours/limits-impossible')
          return
        }
        if (best!.alike > 0) return
        expect(got.alike, told).toBe(0)
        const isPossible = best!.over + best!.short === 0
        expect(got.over + got.short === 0, told).toBe(isPossible)
        // So small a map is searched through: nothing is less far beyond the limits.
        if (isPossible) return
        expect(isLess(best!, got), told).toBe(false)
        expect(codes(found)).toContain('colours/limits-impossible')
      }),
      { numRuns: 250 },
    )
  })
})

describe('symmetry of a fill', () => {
  const mirrorOf = (cells: readonly ColourCell[], colourways: readonly string[]) => {
    const at = new Map(cells.map(({ row, column }, cell) => [`${row},${column}`, colourways[cell]]))
    const columns = Math.max(...cells.map(({ column }) => column))
    const rows = Math.max(...cells.map(({ row }) => row))
    const isSame = (row: number, column: number, colour: string | undefined) =>
      at.get(`${row},${column}`) === colour
    return {
      across: cells.every(({ row, column }, cell) => isSame(row, columns + 1 - column, colourways[cell])),
      down: cells.every(({ row, column }, cell) => isSame(rows + 1 - row, column, colourways[cell])),
    }
  }

  it.each(PATTERNS)('mirrors left and right, top and bottom, within limits: %s', (pattern) => {
    const cells = square(9, 7)
    for (const symmetry of ['left-right', 'top-bottom', 'both'] as const) {
      const of: Case = { cells, fill: { pattern, colourways: all(4), symmetry, most: { c0: 8 } } }
      const { colourways } = assign(of)
      const { across, down } = mirrorOf(cells, colourways)
      expect(across || symmetry === 'top-bottom', symmetry).toBe(true)
      expect(down || symmetry === 'left-right', symmetry).toBe(true)
      expect(count(colourways).c0 ?? 0).toBeLessThanOrEqual(8)
      if (pattern === 'no-two-alike') expect(check(of, colourways).alike).toBe(0)
    }
  })

  it('leaves painted motifs as they are and does not mirror them', () => {
    const fill: Fill = { pattern: 'repeat', colourways: all(2), symmetry: 'left-right' }
    const cells = square(1, 7)
    const plain = assign({ cells, fill }).colourways
    const found = assign({ cells, fill, painted: { '1,1': 'c3' } }).colourways
    expect(found).toEqual(['c3', ...plain.slice(1)])
  })

  it('says which neighbours mirror each other where no two alike are to touch', () => {
    const fill: Fill = { pattern: 'no-two-alike', colourways: all(4), symmetry: 'left-right' }
    expect(codes(assign({ cells: square(5, 6), fill }))).toEqual(['colours/mirror-alike'])
    expect(codes(assign({ cells: square(5, 7), fill }))).toEqual([])
  })
})
