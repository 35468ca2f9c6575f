/** No two alike where it cannot be had: the fewest pairs, and then the least beyond limits, against brute force. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assignColourways } from '../../../src-core/colour/assign'
import type { ColourCell, Fill } from '../../../src-core/colour/assign'
import { runs } from '../../runs'
import { corners, offset } from './lattices'

const ways = (count: number) => Array.from({ length: count }, (_, i) => ({ id: `c${i}` }))

function measured(cells: readonly ColourCell[], most: Record<string, number>, given: readonly string[]) {
  const alike = cells.flatMap(({ neighbours }, cell) =>
    neighbours.filter((other) => other > cell && given[other] === given[cell]),
  ).length
  const over = Object.entries(most).map(([id, limit]) =>
    Math.max(0, given.filter((each) => each === id).length - limit),
  )
  return { alike, over: over.reduce((sum, each) => sum + each, 0) }
}

/** Every filling, one after another. */
function least(
  cells: readonly ColourCell[],
  colours: number,
  most: Record<string, number>,
  painted: Record<string, string>,
) {
  let best = { alike: Infinity, over: Infinity }
  const given = cells.map(({ id }) => painted[id] ?? '')
  const free = given.flatMap((id, cell) => (id === '' ? [cell] : []))
  for (let number = 0; number < colours ** free.length; number++) {
    let rest = number
    for (const cell of free) {
      given[cell] = `c${rest % colours}`
      rest = Math.floor(rest / colours)
    }
    const now = measured(cells, most, given)
    if (now.alike < best.alike || (now.alike === best.alike && now.over < best.over)) best = now
  }
  return best
}

describe('M46 colours that cannot all be apart', () => {
  it('leave 6 pairs alike of two colourways in 3 offset rows of 4', () => {
    const cells = offset(3, 4)
    const { colourways, findings } = assignColourways(cells, { pattern: 'no-two-alike' }, undefined, ways(2))
    expect(measured(cells, {}, colourways).alike).toBe(6)
    expect(findings.map(({ code }) => code)).toEqual(['colours/impossible'])
  })

  it('M46 property: are as few as brute force finds, and with limits as little beyond them', () => {
    const cases = fc.record({
      lattice: fc.constantFrom(offset, corners),
      rows: fc.integer({ min: 2, max: 3 }),
      columns: fc.integer({ min: 2, max: 4 }),
      colours: fc.integer({ min: 2, max: 3 }),
      limits: fc.dictionary(fc.constantFrom('c0', 'c1', 'c2'), fc.integer({ min: 0, max: 5 })),
      painted: fc.dictionary(fc.constantFrom('1,1', '2,2', '2,1'), fc.constantFrom('c0', 'c1')),
      seed: fc.integer({ min: 1, max: 99 }),
    })
    fc.assert(
      fc.property(cases, ({ lattice, rows, columns, colours, limits, painted, seed }) => {
        const cells = lattice(rows, colours === 3 ? Math.min(3, columns) : columns)
        const most = Object.fromEntries(Object.entries(limits).filter(([id]) => colours === 3 || id !== 'c2'))
        const fill: Fill = { pattern: 'no-two-alike', seed, most }
        const { colourways, findings } = assignColourways(cells, fill, painted, ways(colours))
        const found = measured(cells, most, colourways)
        expect(found).toEqual(least(cells, colours, most, painted))
        const told = findings.filter(({ code }) => code.startsWith('colours/limits'))
        expect(told.map(({ code }) => code)).toEqual(found.over > 0 ? ['colours/limits-impossible'] : [])
      }),
      { numRuns: runs(60) },
    )
  })
})
