/** One large motif in a block of places: what the window does to the file. */
import { describe, expect, it } from 'vitest'
import { blanketOf } from '../../../src-renderer/state/edits/layout'
import { bringBack, setCells, setLarge } from '../../../src-renderer/state/edits/cells'
import { cellsProject } from '../../src-core/cells/projects'

const project = () => {
  const all = cellsProject(['square', 'large'], {})
  const { alternate: _, ...layout } = blanketOf(all)!
  return { ...all, layout }
}
const cells = (of: ReturnType<typeof project> | object) => blanketOf(of as ReturnType<typeof project>)?.cells
const block = ['2,2', '2,3', '2,4', '3,2', '3,3', '3,4', '4,2', '4,3', '4,4']

describe('one large motif here', () => {
  it('stands under the middle of its block, whatever stood in it', () => {
    const before = setCells(project(), ['2,2', '6,1'], null)
    const after = setLarge(before, [...block].reverse(), 'large')
    expect(cells(after)).toEqual({ motifs: { '6,1': null, '3,3': 'large' }, large: { '3,3': 3 } })
  })

  it('of two by two under the place above and to the left', () => {
    const after = setLarge(project(), ['5,5', '5,6', '6,5', '6,6'], 'large')
    expect(cells(after)).toEqual({ motifs: { '5,5': 'large' }, large: { '5,5': 2 } })
  })

  it.each([[block.slice(1)], [['1,1']], [['1,1', '1,2', '2,1', '3,3']], [['1,1', '1,2', '1,3', '1,4']]])(
    'leaves what is no block: %j',
    (ids) => {
      const before = project()
      expect(setLarge(before, ids, 'large')).toBe(before)
    },
  )

  it('goes with its block: back to the small ones, or left out whole', () => {
    const after = setLarge(project(), block, 'large')
    expect(cells(bringBack(after, ['3,3']))).toEqual({})
    expect(cells(setCells(after, ['3,3'], 'square'))).toEqual({})
    const out = cells(setCells(after, ['3,3'], null))
    expect(Object.keys(out?.motifs ?? {}).sort()).toEqual(block)
    expect(out?.large).toBeUndefined()
  })

  it('changed to another motif it stays as large', () => {
    const after = setCells(setLarge(project(), block, 'large'), ['3,3'], 'other')
    expect(cells(after)).toEqual({ motifs: { '3,3': 'other' }, large: { '3,3': 3 } })
  })
})
