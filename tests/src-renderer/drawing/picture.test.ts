import { beforeAll, describe, expect, it, vi } from 'vitest'
import { createPlanner } from '../../../src-core/plan'
import { differenceOf, PictureMaker } from '../../../src-renderer/drawing/picture'
import { FakePath } from './recorder'
import { painted, palette, project, scene } from './scenes'

beforeAll(() => void vi.stubGlobal('Path2D', FakePath))

/** A maker and a planner that live as long as a window. */
function window() {
  const planner = createPlanner()
  const maker = new PictureMaker()
  return (own = project(), change = {}, colours = palette) => maker.make(scene(own, change, planner), colours)
}

describe('what of a picture is drawn anew', () => {
  it('nothing, for a new selection', () => {
    const own = project()
    const make = window()
    const before = make(own)
    const { plan } = before
    const after = make(own, { plan, selection: new Set(['1,1']), focus: '1,1', flagged: new Set(['2,2']) })
    expect(after).toBe(before)
    expect(differenceOf(before, after)).toBe('nothing')
  })

  it('only the motifs that were painted', () => {
    const own = project()
    const make = window()
    const before = make(own)
    const after = make(painted(own, ['1,1', '3,5'], 'b'))
    expect(differenceOf(before, after)).toEqual([after.hit.boxOf(0), after.hit.boxOf(24)])
    expect(after.hit).toBe(before.hit)
    expect(after.kinds).toBe(before.kinds)
  })

  it('everything, when a yarn, the theme or the arrangement changes', () => {
    const own = project()
    const make = window()
    const before = make(own)
    const dyed = make({ ...own, yarns: own.yarns!.map((yarn) => ({ ...yarn, colour: '#112233' })) })
    expect(differenceOf(before, dyed)).toBe('everything')
    const dark = make(own, {}, { ...palette, ink: '#ffffff' })
    expect(differenceOf(dyed, dark)).toBe('everything')
    const wider = make(project({ columns: 11 }))
    expect(differenceOf(dark, wider)).toBe('everything')
    expect(differenceOf(null, wider)).toBe('everything')
  })

  it('everything, when labels or joins are shown or hidden', () => {
    const own = project()
    const make = window()
    const before = make(own)
    const labelled = make(own, { showLabels: true })
    expect(differenceOf(before, labelled)).toBe('everything')
    expect(differenceOf(labelled, make(own, { showLabels: true, showJoins: false }))).toBe('everything')
  })

  it('nothing, when only words of the project change', () => {
    const own = project()
    const make = window()
    const before = make(own)
    expect(differenceOf(before, make({ ...own, title: 'Another', notes: 'x' }))).toBe('nothing')
  })
})
