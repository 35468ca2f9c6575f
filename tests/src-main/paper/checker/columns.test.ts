import { describe, expect, it } from 'vitest'
import { columnTroubles, unitsOf } from './columns'

const table = (heads: string[], ...rows: string[][]) => ({ heads, rows, headRows: 1, pages: [1] })

describe('the checker of columns', () => {
  it('reads the unit of a quantity, and none of words', () => {
    expect(
      ['410 g (380–445)', '78 m (85 yd)', '☐ 12', '38⅜ in', '$31.20*', '−4°', '0.4 oz (0.3 – 1 oz)'].map(
        unitsOf,
      ),
    ).toEqual(['g', 'm yd', '', 'in', '$', '°', 'oz'])
    expect(['Moss', '–', '', '3 flowers', 'sc in ch 12', 'A · Centre Straw'].map(unitsOf)).toEqual(
      Array.from({ length: 6 }, () => null),
    )
  })

  it('finds a column in two units, or of numbers with and without one, and a column without a head', () => {
    expect(columnTroubles(table(['Yarn', 'needed'], ['Moss', '410 g (380–445)'], ['Sand', '–']))).toEqual([])
    expect(columnTroubles(table(['What', 'each'], ['Moss', '31 g'], ['cord', '241 cm']))).toEqual([
      'each in several units: 31 g | 241 cm',
    ])
    expect(columnTroubles(table(['What', 'each'], ['Moss', '31 g'], ['needle', '× 1']))).toHaveLength(1)
    expect(columnTroubles(table(['Yarn', 'tails'], ['Moss', '0 oz'], ['Sand', '0.2 oz']))).toEqual([
      'tails is nothing: 0 oz',
    ])
    expect(columnTroubles(table(['What', ''], ['Moss', '31 g']))).toEqual(['column 2 has no head: 31 g'])
  })
})
