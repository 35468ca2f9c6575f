/** A gauge that was counted with another hook is asked for again; nothing else is. */
import { fireEvent, screen, waitFor } from '@testing-library/svelte'
import { describe, expect, it } from 'vitest'
import type { Project, StitchGauge } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import GaugeFields from '../../../src-renderer/places/motif/GaugeFields.svelte'
import { setMotifGauge } from '../../../src-renderer/state/edits/motif'
import { inWindow } from '../in-window'
import { SMALL } from '../projects'

const COUNTED: StitchGauge = { stitch: 'sc', stitches: 20, rows: 22, over: 100, hook: 4 }
const withGauge = (gauge: StitchGauge | undefined): Project => ({
  ...SMALL,
  gauge: undefined,
  motifs: [{ ...SMALL.motifs![0]!, gauge }],
})
const gaugeOf = (project: Project) => project.motifs![0]!.gauge
const asked = (project: Project) =>
  planProject(project).findings.filter(({ code }) => code === 'gauge/other-hook')

describe('another hook', () => {
  it('asks for the gauge to be counted again, and says with which it was', () => {
    const other = setMotifGauge(withGauge(COUNTED), 'm1', { hook: 5 })
    expect(gaugeOf(other)).toEqual({ ...COUNTED, hook: 5, countedWith: 4 })
    expect(asked(other)).toHaveLength(1)
    expect(asked(other)[0]).toMatchObject({ severity: 'warning', target: { motif: 'm1' } })
    expect(asked(other)[0]!.message).toContain('4 mm hook, and the hook is 5 mm now')
    expect(asked({ ...other, terms: 'UK' })[0]!.message).toContain('the tension was counted')
  })

  it('is forgotten once it is counted again, or the old one taken back', () => {
    const other = setMotifGauge(withGauge(COUNTED), 'm1', { hook: 5 })
    const third = setMotifGauge(other, 'm1', { hook: 5.5 })
    expect(gaugeOf(third)).toMatchObject({ hook: 5.5, countedWith: 4 })
    expect(gaugeOf(setMotifGauge(third, 'm1', { hook: 4 }))).toEqual(COUNTED)
    const again = setMotifGauge(third, 'm1', { stitches: 17 })
    expect(gaugeOf(again)).not.toHaveProperty('countedWith')
    expect(asked(again)).toEqual([])
    const rounds = { rounds: 2, across: 60, hook: 4 }
    const measured = setMotifGauge(withGauge(rounds), 'm1', { hook: 5 })
    expect(asked(measured)).toHaveLength(1)
    expect(asked(setMotifGauge(measured, 'm1', { across: 70 }))).toEqual([])
  })

  it('asks for nothing where nothing was counted, or no hook was known', () => {
    expect(asked(setMotifGauge(withGauge({ hook: 4 }), 'm1', { hook: 5 }))).toEqual([])
    expect(asked(setMotifGauge(withGauge(undefined), 'm1', { hook: 5 }))).toEqual([])
    const { hook: _, ...without } = COUNTED
    expect(asked(setMotifGauge(withGauge(without), 'm1', { hook: 5 }))).toEqual([])
    // A gauge that was cleared since asks for nothing either.
    const other = setMotifGauge(withGauge(COUNTED), 'm1', { hook: 5 })
    const cleared = { ...gaugeOf(other), stitches: undefined }
    expect(asked(withGauge(cleared))).toEqual([])
  })

  it('can be said to be the one that it was counted with', async () => {
    const project = setMotifGauge(withGauge(COUNTED), 'm1', { hook: 5 })
    const { app } = await inWindow(GaugeFields, { motif: project.motifs![0]! }, project)
    screen.getByText(/^The gauge was counted with a 4 mm hook\./)
    await fireEvent.click(screen.getByRole('button', { name: 'It was counted with 5 mm' }))
    expect(gaugeOf(app.document.project)).toEqual({ ...COUNTED, hook: 5 })
    await waitFor(() =>
      expect(app.document.findings.some(({ code }) => code === 'gauge/other-hook')).toBe(false),
    )
  })
})
