/** Colours of several motifs in one layout: limits are of all of them together. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assignByMotif } from '../../../src-core/colour/by-hand'
import type { KindCell } from '../../../src-core/colour/by-motif'
import type { Fill } from '../../../src-core/colour/assign'
import type { YarnForMotifs } from '../../../shared-types/plan'
import { square } from './lattices'

/** A and B are of the first motif, C and D of the second, E suits both. */
const WAYS = [
  { id: 'a', code: 'A', motif: 'm1' },
  { id: 'b', code: 'B', motif: 'm1' },
  { id: 'c', code: 'C', motif: 'm2' },
  { id: 'd', code: 'D', motif: 'm2' },
  { id: 'e', code: 'E' },
]
const MOTIFS = ['m1', 'm2']
const suits = (id: string, kind: number) => {
  const { motif } = WAYS.find((way) => way.id === id)!
  return motif === undefined || motif === MOTIFS[kind]
}
/** Two motifs that alternate from place to place. */
const alternating = (rows: number, columns: number): KindCell[] =>
  square(rows, columns).map((cell) => ({ ...cell, kind: (cell.row + cell.column) % 2 }))

interface Case {
  readonly cells: readonly KindCell[]
  readonly fill: Fill
  readonly painted?: Record<string, string>
  readonly stash?: readonly YarnForMotifs[]
}
const assign = ({ cells, fill, painted, stash }: Case) =>
  assignByMotif(
    ...([cells, { seed: 3, ...fill }, painted, WAYS, undefined, 'straight-rows', MOTIFS, stash] as const),
  )
/** The checker: motifs beyond limits and grams short, from the answer alone. */
function beyond({ cells, fill, stash = [] }: Case, colourways: readonly string[]) {
  const over = Object.entries(fill.most ?? {}).reduce(
    (sum, [id, most]) => sum + Math.max(0, colourways.filter((each) => each === id).length - most),
    0,
  )
  const short = stash.reduce((sum, { left, each, others }) => {
    const takes = cells.map(({ kind }, cell) => (kind === 0 ? each : others![0]!)[colourways[cell]!] ?? 0)
    return sum + Math.max(0, takes.reduce((total, grams) => total + grams, 0) - left)
  }, 0)
  return { over, short }
}
const codes = ({ findings }: { findings: readonly { code: string }[] }) =>
  findings.map(({ code }) => code).filter((code) => code !== 'colours/rows-broken')
const PATTERNS = ['repeat', 'rows', 'shade', 'scatter', 'no-two-alike'] as const
const ALL = WAYS.map(({ id }) => id)

describe('M46 limits of a fill with several motifs', () => {
  it.each(PATTERNS)('steer the colours of every motif: %s', (pattern) => {
    const cells = alternating(8, 9)
    const stash: YarnForMotifs[] = [
      { id: 'y1', name: 'Moss', left: 60, each: { a: 2 }, others: [{ c: 5, d: 1 }] },
    ]
    // 36 of C would take 180 g; D takes 1 g, so both yarns of the second motif come into play.
    const of: Case = { cells, stash, fill: { pattern, colourways: ['a', 'b', 'c', 'd'], most: { b: 30 } } }
    const found = assign(of)
    expect(beyond(of, found.colourways)).toEqual({ over: 0, short: 0 })
    expect(codes(found)).toEqual([])
    expect(found.colourways.every((id, cell) => suits(id, cells[cell]!.kind))).toBe(true)
  })

  it('change nothing where they do not bind', () => {
    const cells = alternating(6, 7)
    const stash: YarnForMotifs[] = [{ id: 'y1', name: 'Moss', left: 900, each: { a: 2 }, others: [{ c: 5 }] }]
    for (const pattern of PATTERNS) {
      const fill: Fill = { pattern, colourways: ALL }
      expect(assign({ cells, fill: { ...fill, most: { e: 42 } }, stash }).colourways, pattern).toEqual(
        assign({ cells, fill }).colourways,
      )
    }
  })

  it('tell what is missing of all motifs together', () => {
    const cells = alternating(4, 4)
    const stash: YarnForMotifs[] = [
      { id: 'y1', name: 'Moss', left: 50, each: { a: 3, b: 3 }, others: [{ c: 4, d: 4 }] },
    ]
    const found = assign({ cells, stash, fill: { pattern: 'scatter', colourways: ['a', 'b', 'c', 'd'] } })
    // 8 of each motif take 24 g and 32 g of it, whatever their colours: 6 g are missing, two motifs of 4 g.
    expect(codes(found)).toEqual(['colours/limits-impossible'])
    expect(found.findings[0]!.message).toContain('6 g of Moss missing, for 2 motifs')
  })

  it('agree with every filling of small maps', () => {
    const grams = fc.nat(5)
    const small = fc.record({
      rows: fc.integer({ min: 1, max: 2 }),
      columns: fc.integer({ min: 1, max: 3 }),
      pattern: fc.constantFrom('repeat', 'rows', 'shade', 'scatter' as const),
      most: fc.dictionary(fc.constantFrom(...ALL), fc.nat(3)),
      symmetry: fc.constantFrom(undefined, 'left-right' as const),
      stash: fc.array(
        fc.record({
          left: fc.integer({ min: 0, max: 20 }),
          each: fc.record({ a: grams, b: grams, e: grams }),
          others: fc.tuple(fc.record({ c: grams, d: grams, e: grams })),
        }),
        { maxLength: 2 },
      ),
      painted: fc.dictionary(fc.constantFrom('1,1', '1,2'), fc.constantFrom('e'), { maxKeys: 1 }),
    })
    fc.assert(
      fc.property(small, ({ rows, columns, pattern, most, symmetry, stash, painted }) => {
        const cells = alternating(rows, columns)
        const own = Object.fromEntries(
          Object.entries(painted).filter(([id]) => cells.some((cell) => cell.id === id)),
        )
        const of: Case = {
          ...{ cells, painted: own, stash: stash.map((each, at) => ({ ...each, id: `y${at}`, name: 'Y' })) },
          fill: { pattern, colourways: ALL, most, ...(symmetry && { symmetry }) },
        }
        const found = assign(of)
        const got = beyond(of, found.colourways)
        let best = { over: Infinity, short: Infinity }
        const walk = (cell: number, colourways: readonly string[]): void => {
          if (cell === cells.length) {
            const cost = beyond(of, colourways)
            if (cost.over < best.over || (cost.over === best.over && cost.short < best.short)) best = cost
            return
          }
          const { id, row, column, kind } = cells[cell]!
          const twin = cells.findIndex(
            (each) =>
              symmetry && each.kind === kind && each.row === row && each.column === columns + 1 - column,
          )
          const mirrored = twin >= 0 && twin < cell && !own[cells[twin]!.id] ? colourways[twin] : undefined
          const byHand = own[id] ?? mirrored
          const options = byHand ? [byHand] : ALL.filter((way) => suits(way, kind))
          for (const way of options) walk(cell + 1, [...colourways, way])
        }
        walk(0, [])
        const told = JSON.stringify({ got, best, found: found.colourways })
        expect(got.over, told).toBe(best.over)
        expect(got.short, told).toBeCloseTo(best.short, 6)
        const isKept = best.over + best.short === 0
        expect(codes(found), told).toEqual(isKept ? [] : ['colours/limits-impossible'])
      }),
      { numRuns: 150 },
    )
  })
})
