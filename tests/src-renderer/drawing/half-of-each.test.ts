import { expect, it } from 'vitest'
import { additionsOf } from '../../../src-renderer/drawing/additions'
import { cellsPlan } from '../../src-core/cells/projects'

it('a half motif is pressed within the outline of its own motif, not of the first', () => {
  const plan = cellsPlan(['large', 'small'], {
    ...{ arrangement: 'offset-rows', alternateRows: 'oneFewer', halves: true },
    alternate: { motifs: ['large', 'small'], by: 'row' },
  })
  const half = plan.halves.find(({ motif, side }) => motif === 'small' && side === 'left')!
  const [large, small] = ['large', 'small'].map((id) => plan.accounts.find((each) => each.id === id)!)
  const { hit } = additionsOf(plan, { width: 1, height: 1 })!
  // The half lies to the right of its cut; between the two radii only the larger motif would be.
  const beside = (radius: number) => hit.at({ x: half.x + radius, y: half.y })
  expect(beside(small!.overTips / 2 - 2)).toBe(half.id)
  expect(beside((small!.overTips + large!.overTips) / 4)).toBeNull()
})
