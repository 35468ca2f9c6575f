import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import * as edits from '../../../src-renderer/state/edits/garland'
import { example } from '../projects'

const GATE = example('orchard-gate-garland')
const sequence = (project: Project) =>
  (edits.garlandOf(project)?.items ?? []).map((part) => part.motif ?? part.bead ?? 'gap')
const errors = (project: Project) =>
  planProject(project).findings.filter(({ severity }) => severity === 'error')

describe('the sequence of a garland', () => {
  it('takes parts, moves them, copies them and lets them go', () => {
    let project = edits.addPart(GATE, edits.newPart(GATE, 'bead'))
    expect(sequence(project)).toEqual(['leaf', 'bloom', 'leaf', 'bud', 'wooden bead'])
    project = edits.movePart(project, 4, 0)
    expect(sequence(project)).toEqual(['wooden bead', 'leaf', 'bloom', 'leaf', 'bud'])
    project = edits.movePart(project, 0, 99)
    expect(sequence(project).at(-1)).toBe('wooden bead')
    project = edits.addPart(project, edits.newPart(project, 'gap'), 0)
    expect(sequence(project).slice(0, 2)).toEqual(['leaf', 'gap'])
    project = edits.duplicatePart(project, 2)
    expect(sequence(project).slice(2, 4)).toEqual(['bloom', 'bloom'])
    project = edits.removePart(edits.removePart(project, 2), 1)
    expect(sequence(project)).toEqual(['leaf', 'bloom', 'leaf', 'bud', 'wooden bead'])
    expect(errors(project)).toEqual([])
    expect(edits.movePart(project, 2, 2)).toBe(project)
  })

  it('hangs another motif in its own first colourway', () => {
    const project = edits.setPartMotif(GATE, 0, 'bud')
    expect(edits.garlandOf(project)?.items?.[0]).toEqual({ motif: 'bud', colourway: 'b' })
  })

  it('knows which part hangs at a place of the map, beads counted', () => {
    const project = edits.addPart(GATE, edits.newPart(GATE, 'bead'), 0)
    const plan = planProject(project)
    const second = edits.itemOfMotif(plan, '1,2')!
    expect(second).toMatchObject({ number: 3, item: { motif: 'bloom', part: 2 } })
    expect(edits.motifsOfPart(plan, 2)).toContain('1,2')
    expect(edits.itemOfMotif(plan, '9,9')).toBeNull()
  })
})

describe('spacing, count and length', () => {
  it.each(['count', 'spacing', 'length'] as const)(
    'each follows from the other two, and nothing jumps: %s',
    (follows) => {
      const straight = edits.setHung(GATE, planProject(GATE), false)
      const before = planProject(straight)
      const project = edits.setSpacingFollows(straight, before, follows)
      const after = planProject(project)
      expect(edits.spacingFollows(edits.garlandOf(project)!)).toBe(follows)
      expect(errors(project)).toEqual([])
      expect(after.garland!.items).toHaveLength(before.garland!.items.length)
      if (follows !== 'spacing') expect(after.garland!.spacing).toBeCloseTo(before.garland!.spacing, 5)
      const back = edits.setSpacingFollows(project, after, 'count')
      expect(planProject(back).garland!.items).toHaveLength(before.garland!.items.length)
    },
  )

  it('a length that follows leaves the swags, and both given is told as such', () => {
    const project = edits.setSpacingFollows(GATE, planProject(GATE), 'length')
    expect(edits.isSwagged(edits.garlandOf(project)!)).toBe(false)
    const both = edits.patchCord(project, { length: 9000 })
    expect(edits.spacingFollows(edits.garlandOf(both)!)).toBeNull()
  })
})

describe('M51: both ways', () => {
  it('wall → cord → wall is the identity, in the window too', () => {
    const wall = planProject(GATE)
    for (const follows of ['drop', 'span'] as const) {
      const cord = edits.setSwagFollows(GATE, wall, follows)
      expect(edits.swagFollows(edits.garlandOf(cord)!)).toBe(follows)
      const hung = planProject(cord)
      expect(errors(cord)).toEqual([])
      expect(hung.garland!.swags!.span).toBeCloseTo(700, 4)
      expect(hung.garland!.swags!.drop).toBeCloseTo(110, 4)
      expect(hung.garland!.items).toHaveLength(wall.garland!.items.length)
      const back = edits.setSwagFollows(cord, hung, 'cord')
      expect(edits.garlandOf(back)!.swags!.span).toBeCloseTo(700, 4)
      expect(edits.garlandOf(back)!.swags!.drop).toBeCloseTo(110, 4)
      expect(edits.garlandOf(back)!.cord?.length).toBeUndefined()
    }
  })

  it('straight → swags → straight keeps the garland whole', () => {
    const straight = edits.setHung(GATE, planProject(GATE), false)
    expect(planProject(straight).garland!.cord.length).toBeCloseTo(planProject(GATE).garland!.cord.length, 4)
    const swagged = edits.setHung(straight, planProject(straight), true)
    expect(errors(swagged)).toEqual([])
    expect(planProject(swagged).garland!.swags).toMatchObject({ count: 1 })
    expect(edits.setHung(swagged, planProject(swagged), true)).toBe(swagged)
  })
})
