/** M52: what is ordered for a batch, beside what its price counts. */
import { describe, expect, it } from 'vitest'
import type { Kit, MeasuredMotif, Project, Yarn } from '../../../shared-types/project'
import { ballsOnHand } from '../../../src-core/materials/kit/on-hand'
import { planProject } from '../../../src-core/plan'

const SQUARE: MeasuredMotif = {
  ...{ id: 'a', name: 'Square', kind: 'measured', outline: 'square', sideToSide: 100 },
  slots: [{ slot: 'all', grams: 5 }],
}
const project = (kit: Kit | undefined): Project => ({
  ...{ format: 'petalyard-project', version: 1, motifs: [SQUARE] },
  yarns: [{ id: 'y1', name: 'Sand', ballGrams: 50, ballMetres: 125, price: 4 }],
  colourways: [{ id: 'c1', motif: 'a', yarns: { all: 'y1' } }],
  layout: {
    ...{ kind: 'blanket', arrangement: 'straight-rows', motif: 'a', columns: 4, rows: 5 },
    ...{ cells: { fill: { pattern: 'repeat', colourways: ['c1'] } }, kit },
  },
})
const lots = (kit?: Kit) =>
  planProject(project(kit)).findings.flatMap(({ code, message }) =>
    code === 'yarn/dye-lot' ? [message] : [],
  )

describe('the order of a batch', () => {
  it('one dye lot is asked for what is bought: for one of them, or for the whole batch of a kit', () => {
    const plan = planProject(project({ count: 30 }))
    expect(plan.yarns[0]!.toBuy).toBeLessThan(4)
    const balls = plan.kit!.run[0]!.balls!
    expect(balls).toBeGreaterThan(60)
    expect(lots({ count: 30 })).toHaveLength(1)
    expect(lots({ count: 30 })[0]).toContain(`${balls} `)
    expect(lots()[0]).toContain(`${plan.yarns[0]!.toBuy} `)
  })

  it('whole balls on hand are not ordered again; opened ones and other sizes are not counted on', () => {
    const yarn: Yarn = { id: 'y1', ballGrams: 50, onHandBalls: 4.5, onHandGrams: 30 }
    expect(ballsOnHand(yarn, { grams: 50, price: 4, count: 32 })).toBe(4)
    expect(ballsOnHand(yarn, { grams: 50, price: 4, count: 3 })).toBe(3)
    expect(ballsOnHand(yarn, { grams: 400, price: 20, count: 2 })).toBe(0)
    expect(ballsOnHand({ ...yarn, onHandBalls: -1 }, { grams: 50, price: 4, count: 2 })).toBe(0)
    expect(ballsOnHand(undefined, { grams: 50, price: 4, count: 2 })).toBe(0)
  })
})
