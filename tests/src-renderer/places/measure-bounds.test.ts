/** From point to point is farther than from side to side: a slip is refused, and what was there stays. */
import { fireEvent, screen } from '@testing-library/svelte'
import { describe, expect, it } from 'vitest'
import type { Motif, Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import MeasureFields from '../../../src-renderer/places/motif/MeasureFields.svelte'
import { setUnits } from '../../../src-renderer/state/edits/motif'
import { inWindow } from '../in-window'
import { SMALL } from '../projects'

const HEXAGON: Motif = {
  ...{ id: 'm1', kind: 'measured', outline: 'hexagon', sideToSide: 122, pointToPoint: 140 },
  slots: [{ slot: 'petals' }],
}
const PROJECT: Project = { ...SMALL, units: 'metric', motifs: [HEXAGON] }

describe('the measures of a hexagon', () => {
  it.each([
    ['Point to point', '13.8', 'It must be more than side to side, 122 mm. 140 mm is kept.'],
    ['Side to side', '150', 'It must be less than point to point, 140 mm. 122 mm is kept.'],
  ])('refuse %s of %s, and keep the old one', async (name, typed, problem) => {
    const account = planProject(PROJECT).motif
    const { app } = await inWindow(MeasureFields, { motif: HEXAGON, account }, PROJECT)
    const field = screen.getByLabelText(new RegExp(name))
    await fireEvent.focus(field)
    await fireEvent.input(field, { target: { value: typed } })
    expect((await screen.findByRole('alert')).textContent).toBe(problem)
    await fireEvent.blur(field)
    expect(app.document.project.motifs![0]).toMatchObject({ sideToSide: 122, pointToPoint: 140 })
  })

  it('leave the length of a tail round in other units, unless it was entered', () => {
    const inches = { ...PROJECT, units: 'imperial', allowance: { wastePercent: 10, tail: 152.4 } } as const
    expect(setUnits(inches, 'metric')).toMatchObject({
      units: 'metric',
      allowance: { wastePercent: 10, tail: 150 },
    })
    expect(setUnits(setUnits(inches, 'metric'), 'imperial').allowance!.tail).toBeCloseTo(152.4, 3)
    const own = { ...inches, allowance: { tail: 120 } }
    expect(setUnits(own, 'metric').allowance).toEqual({ tail: 120 })
  })
})
