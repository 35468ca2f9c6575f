import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { countsWithin, excessOf } from '../../../src-core/colour/counts'
import type { CountTask } from '../../../src-core/colour/counts'

const sum = (numbers: readonly number[]): number => numbers.reduce((total, value) => total + value, 0)

/** Cells beyond limits, grams short, squares off the wish: what is made small, in this order. */
const costOf = (task: CountTask, cells: readonly number[]): number[] => {
  const { cells: over, grams } = excessOf(task, cells)
  return [sum(over), sum(grams), sum(cells.map((count, colour) => (count - task.wish[colour]!) ** 2))]
}

const isLess = (one: readonly number[], other: readonly number[]): boolean => {
  const at = one.findIndex((value, index) => Math.abs(value - other[index]!) > 1e-5)
  return at >= 0 && one[at]! < other[at]!
}

/** The best of all counts that there are, one by one. */
function bestOfAll(task: CountTask): number[] {
  const colours = task.most.length
  const cells = task.most.map(() => 0)
  let best: number[] | null = null
  const walk = (group: number, colour: number, left: number): void => {
    const of = task.groups[group]
    if (!of) {
      const cost = costOf(task, cells)
      if (!best || isLess(cost, best)) best = cost
      return
    }
    const isLast = colour === colours - 1
    for (let many = isLast ? left : 0; many <= left; many++) {
      cells[colour]! += many * of.size
      if (isLast) walk(group + 1, 0, task.groups[group + 1]?.many ?? 0)
      else walk(group, colour + 1, left - many)
      cells[colour]! -= many * of.size
    }
  }
  walk(0, 0, task.groups[0]!.many)
  return best!
}

/** No scale weighs finer. */
const hundredths = (min: number, max: number) =>
  fc.integer({ min: min * 100, max: max * 100 }).map((value) => value / 100)
const grams = fc.oneof(fc.nat(4), hundredths(0, 4))
const tasks = fc
  .record({
    colours: fc.integer({ min: 1, max: 4 }),
    pairs: fc.nat(4),
    singles: fc.integer({ min: 1, max: 8 }),
  })
  .chain(({ colours, pairs, singles }) => {
    const each = (of: fc.Arbitrary<number>) => fc.array(of, { minLength: colours, maxLength: colours })
    return fc.record({
      groups: fc.constant([{ size: 1, many: singles }, ...(pairs > 0 ? [{ size: 2, many: pairs }] : [])]),
      most: each(fc.oneof(fc.constant(Infinity), fc.nat(singles + 2 * pairs))),
      yarns: fc.array(
        fc.record({
          left: fc.oneof(fc.nat(30), hundredths(-3, 30)),
          each: each(grams),
        }),
        { maxLength: 3 },
      ),
      wish: each(fc.nat(6)),
    })
  })

describe('M46 counts within limits', () => {
  it('are the best of all, small cases one by one', () => {
    fc.assert(
      fc.property(tasks, (task) => {
        const found = countsWithin(task)
        const [cost, best] = [costOf(task, found.cells), bestOfAll(task)]
        expect(isLess(best, cost), `${cost.join()} against ${best.join()}`).toBe(false)
        expect(found.isLeast).toBe(true)
        task.groups.forEach(({ many }, at) => expect(sum(found.groups[at]!)).toBe(many))
      }),
      { numRuns: 400 },
    )
  })

  it('take a limit that is met exactly, and share out the rest evenly', () => {
    const task: CountTask = {
      groups: [{ size: 1, many: 2500 }],
      most: [Infinity, Infinity, 100],
      yarns: [{ left: 4.3 * 900, each: [4.3, 0, 0] }],
      wish: [0, 0, 0],
    }
    expect(countsWithin(task).cells).toEqual([900, 1500, 100])
  })

  it('go as little beyond limits as can be, and never past what is free', () => {
    const task: CountTask = { groups: [{ size: 1, many: 10 }], most: [3, 4], yarns: [], wish: [0, 0] }
    const { cells, isLeast } = countsWithin(task)
    expect(sum(cells)).toBe(10)
    expect(sum(excessOf(task, cells).cells)).toBe(3)
    expect(isLeast).toBe(true)
  })
})
