/** The letters of colourways do not decide whether ways of joining are told once: neighbours always have letters. */
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { orderList } from '../../../src-core/figures/order-list'
import { planProject } from '../../../src-core/plan'

const HEXAGONS = {
  ...{ format: 'petalyard-project', version: 1, joining: { rule: 'edges' } },
  motifs: [{ id: 'm', kind: 'measured', outline: 'hexagon', sideToSide: 120, slots: [{ slot: 'all' }] }],
  yarns: [{ id: 'y', name: 'Slate' }],
} as const
const blanket = (codes: readonly string[]): Project =>
  ({
    ...HEXAGONS,
    colourways: codes.map((code, i) => ({ id: `c${i}`, code, motif: 'm', yarns: { all: 'y' } })),
    layout: {
      ...{ kind: 'blanket', motif: 'm', arrangement: 'offset-rows', columns: 8, rows: 8 },
      alternateRows: 'oneFewer',
      cells: { fill: { pattern: 'repeat', colourways: codes.map((_, i) => `c${i}`) } },
    },
  }) as unknown as Project
const told = (codes: readonly string[]) => {
  const { ways, parts } = orderList(planProject(blanket(codes)))
  const alone = parts.flatMap(({ runs }) => runs.filter(({ way }) => way === null))
  return {
    ways: ways.length,
    alone: alone.length,
    letters: ways.map(({ neighbours }) => neighbours.map(({ letter }) => letter)),
  }
}

describe('the order of work', () => {
  it('tells ways of joining once, whatever letters colourways have', () => {
    const usual = told(['A', 'B', 'C'])
    expect(usual.ways).toBeGreaterThan(2)
    for (const codes of [
      ['R', 'S', 'U'],
      ['P', 'Q', 'R', 'S', 'T', 'U', 'V'],
      [...'PQRSTUVWXYZNMLKJHGFEDCBA'],
    ]) {
      const { ways, alone, letters } = told(codes)
      expect([ways, alone]).toEqual([usual.ways, usual.alone])
      for (const own of letters) {
        expect(new Set(own).size).toBe(own.length)
        expect(own.filter((letter) => codes.includes(letter))).toEqual([])
      }
    }
  })
})
