import { describe, expect, it } from 'vitest'
import { planProject } from '../../../src-core/plan'
import { colourwayOf, columnOf, rowOf } from '../../../src-renderer/drawing/groups'
import { stepFrom } from '../../../src-renderer/drawing/steps'
import { project } from './scenes'

const plan = planProject(project())
const offset = planProject(project({ arrangement: 'offset-rows' }))

describe('arrow keys', () => {
  it('go to the neighbour, and stay at the border', () => {
    expect(stepFrom(plan, '2,2', 'right')).toBe('2,3')
    expect(stepFrom(plan, '2,2', 'left')).toBe('2,1')
    expect(stepFrom(plan, '2,2', 'up')).toBe('1,2')
    expect(stepFrom(plan, '2,2', 'down')).toBe('3,2')
    expect(stepFrom(plan, '1,10', 'right')).toBe('1,10')
    expect(stepFrom(plan, '1,1', 'up')).toBe('1,1')
  })

  it('start at the first motif', () => {
    expect(stepFrom(plan, null, 'down')).toBe('1,1')
    expect(stepFrom(plan, 'gone', 'down')).toBe('1,1')
    expect(stepFrom(planProject({ ...project(), layout: undefined }), null, 'down')).toBeNull()
  })

  it('reach every motif of offset rows by stepping down and along', () => {
    const reached = new Set<string>()
    for (let row = stepFrom(offset, null, 'down'), last = ''; row && row !== last;) {
      for (let at = row, before = ''; at !== before;) {
        reached.add(at)
        before = at
        at = stepFrom(offset, at, 'right')!
      }
      last = row
      row = stepFrom(offset, row, 'down')
    }
    expect(reached.size).toBe(offset.motifs.length)
  })
})

describe('groups of motifs', () => {
  it('are rows, columns and colourways', () => {
    expect(rowOf(plan, '3,4')).toHaveLength(10)
    expect(columnOf(plan, '3,4')).toEqual(['1,4', '2,4', '3,4', '4,4', '5,4', '6,4', '7,4', '8,4'])
    expect(colourwayOf(plan, 'a')).toHaveLength(plan.counts.byColourway['a']!)
    expect(rowOf(plan, 'gone')).toEqual([])
  })
})
