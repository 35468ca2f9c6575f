import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { isShown, shownOf } from '../../../src-core/figures/shown'
import { runs } from '../../runs'

const mm = fc.integer({ min: -200, max: 200 })
const points = fc.array(fc.record({ x: mm, y: mm }), { maxLength: 200, size: 'max' })

describe('what a window of a map shows', () => {
  it('is what lies within it and so much round it, in order, however long the list', () => {
    fc.assert(
      fc.property(points, mm, mm, fc.nat(120), fc.nat(120), fc.nat(30), (list, x, y, width, height, by) => {
        const view = { x, y, width, height }
        const seen = isShown(view, by)
        expect(shownOf(list, view, by)).toEqual(list.filter((point) => seen(point.x, point.y)))
      }),
      { numRuns: runs(300) },
    )
  })

  it('has nothing on its very edge', () => {
    const list = Array.from({ length: 100 }, (_, x) => ({ x, y: 5 }))
    const view = { x: 10, y: 0, width: 20, height: 10 }
    expect(shownOf(list, view, 3).map(({ x }) => x)).toEqual(Array.from({ length: 25 }, (_, k) => 8 + k))
  })
})
