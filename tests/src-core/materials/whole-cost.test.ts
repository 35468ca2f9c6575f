import { expect, it } from 'vitest'
import { wholeCost } from '../../../src-core/materials/whole-cost'
import { materials } from '../../../src-core/materials/materials'
import { input, project, yarn } from './helpers'

it('M42 tells what all balls of the whole cost, whatever is on hand, of yarns with a price', () => {
  // By hand: 340 g and 80 g with a tenth more, within 0.01 g a motif: 375.1 and 89.1 g, in 50 g balls 8 and 2.
  const rich = project({ yarns: project().yarns!.map((each) => ({ ...each, onHandGrams: 1000 })) })
  const found = materials(input({ project: rich }))
  expect([yarn(found, 'y1').balls, yarn(found, 'y2').balls]).toEqual([8, 2])
  expect([yarn(found, 'y1').cost, yarn(found, 'y2').cost]).toEqual([0, 0])
  expect(wholeCost(found.yarns, rich.yarns!)).toBeCloseTo(8 * 3.9 + 2 * 4.1, 9)
  const [first, second] = rich.yarns!
  expect(wholeCost(found.yarns, [first!, { ...second!, price: undefined }])).toBeCloseTo(8 * 3.9, 9)
  expect(wholeCost(found.yarns, [])).toBeNull()
})
