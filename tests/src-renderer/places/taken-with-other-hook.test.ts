/** What was measured and weighed with another hook is asked for again; one button takes what the gauge gives. */
import { fireEvent, screen } from '@testing-library/svelte'
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import GaugeFields from '../../../src-renderer/places/motif/GaugeFields.svelte'
import { setMeasure, setMotifGauge, setWeighed } from '../../../src-renderer/state/edits/motif'
import { takeEstimate } from '../../../src-renderer/state/edits/other-hook'
import { inWindow } from '../in-window'
import { SMALL } from '../projects'

const BEFORE: Project = {
  ...SMALL,
  gauge: undefined,
  motifs: [
    {
      ...{ id: 'm1', name: 'Hexagon', kind: 'measured', outline: 'hexagon', sideToSide: 122 },
      gauge: { stitch: 'sc', stitches: 14, rows: 16, over: 100, hook: 5 },
      slots: [{ slot: 'petals' }],
      weighed: { motifs: 10, grams: 92 },
    },
  ],
}
const CODES = ['motif/measured-with-other-hook', 'yarn/weighed-with-other-hook']
const asked = (project: Project) => planProject(project).findings.filter(({ code }) => CODES.includes(code))
/** Another hook, and the gauge counted again with it. */
const counted = (project: Project): Project =>
  setMotifGauge(setMotifGauge(project, 'm1', { hook: 5.5 }), 'm1', { stitches: 13, rows: 15 })
const AFTER = counted(BEFORE)

describe('a motif that was measured and weighed with another hook', () => {
  it('is asked for again, though the gauge was counted anew; the gauge alone says what it would be', () => {
    expect(asked(BEFORE)).toEqual([])
    const told = asked(AFTER)
    expect(told.map(({ code }) => code).sort()).toEqual(CODES)
    for (const { message } of told) expect(message).toContain('with a 5 mm hook, and the hook is 5.5 mm now')
    // 14 / 13 of 122 mm and of 9.2 g.
    expect(told.find(({ code }) => code === CODES[0])!.message).toMatch(/122 mm .* about 131(\.\d)? mm/)
    expect(told.find(({ code }) => code === CODES[1])!.message).toMatch(/9\.2 g .* about 9\.9 g/)
    expect(planProject(AFTER).motif!.provenance).toBe('other-hook')
  })

  it('goes by the hooks while the gauge was not counted again', () => {
    const told = asked(setMotifGauge(BEFORE, 'm1', { hook: 5.5 }))
    expect(told.find(({ code }) => code === CODES[0])!.message).toMatch(/about 134(\.\d)? mm/)
  })

  it('is known again once it is measured and weighed, or the old hook taken back', () => {
    const measured = setMeasure(AFTER, 'm1', 'sideToSide', 131)
    expect(asked(measured).map(({ code }) => code)).toEqual([CODES[1]])
    expect(planProject(measured).motif!.provenance).toBe('measured')
    expect(asked(setWeighed(measured, 'm1', { grams: 103 }))).toEqual([])
    expect(asked(setMotifGauge(AFTER, 'm1', { hook: 5 }))).toEqual([])
    // Nothing is asked for that was never taken.
    const { weighed: _, ...bare } = BEFORE.motifs![0]!
    expect(asked(counted({ ...BEFORE, motifs: [bare as typeof bare & { kind: 'measured' }] }))).toHaveLength(
      1,
    )
  })

  it('takes what the gauge gives as an estimate, which is no measure and no weight', async () => {
    const { app } = await inWindow(GaugeFields, { motif: AFTER.motifs![0]! }, AFTER)
    await fireEvent.click(await screen.findByRole('button', { name: 'Take these as an estimate' }))
    const taken = app.document.project
    expect(taken).toEqual(takeEstimate(AFTER, 'm1'))
    expect(asked(taken)).toEqual([])
    const plan = planProject(taken)
    expect(plan.motif!.overValleys).toBeCloseTo((122 * 14) / 13, 2)
    expect(plan.motif!.provenance).toBe('aimed')
    expect(taken.motifs![0]!.weighed!.grams).toBeCloseTo((92 * 14) / 13, 2)
    // As sure as a weight by stitches, not as one that was weighed.
    const width = (project: Project) => {
      const { low, high, expected } = planProject(project).yarns[0]!.grams
      return (high - low) / expected
    }
    expect(width(taken)).toBeGreaterThan(2 * width(BEFORE))
    expect(setWeighed(taken, 'm1', { grams: 103 }).motifs![0]).not.toHaveProperty('weightWorkedOut')
  })
})
