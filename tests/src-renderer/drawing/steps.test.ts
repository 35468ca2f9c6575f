import { describe, expect, it } from 'vitest'
import { planProject } from '../../../src-core/plan'
import { colourwayOf, columnOf, rowOf } from '../../../src-renderer/drawing/groups'
import { simplify } from '../../../src-renderer/drawing/simplify'
import { stepFrom } from '../../../src-renderer/drawing/steps'
import { petalOutline } from '../../../src-core/motif/outlines'
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

describe('simpler outlines', () => {
  it('lie within the tolerance of the whole one', () => {
    const outline = petalOutline(8, 40, 25)
    for (const tolerance of [0.4, 1, 3]) {
      const simple = simplify(outline, tolerance)
      expect(simple.length).toBeLessThan(outline.length)
      for (const point of outline) {
        const off = simple.reduce((least, a, i) => {
          const b = simple[(i + 1) % simple.length]!
          const [dx, dy] = [b.x - a.x, b.y - a.y]
          const share = ((point.x - a.x) * dx + (point.y - a.y) * dy) / (dx * dx + dy * dy)
          const t = Math.min(1, Math.max(0, share))
          return Math.min(least, Math.hypot(a.x + dx * t - point.x, a.y + dy * t - point.y))
        }, Infinity)
        expect(off).toBeLessThanOrEqual(tolerance + 1e-9)
      }
    }
    expect(simplify(outline, 0)).toBe(outline)
  })
})
