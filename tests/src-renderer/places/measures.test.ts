import { cleanup, fireEvent, screen } from '@testing-library/svelte'
import { afterEach, describe, expect, it, vi } from 'vitest'
import type { MeasuredMotif, Project, RoundsMotif } from '../../../shared-types/project'
import { scaledProject } from '../../../src-core/ways/scale'
import MotifPlace from '../../../src-renderer/places/motif/MotifPlace.svelte'
import { placeSummary } from '../../../src-renderer/state/summaries'
import { inWindow } from '../in-window'
import { SMALL } from '../projects'

afterEach(cleanup)

const field = () => screen.getByRole<HTMLInputElement>('textbox', { name: 'Tip to tip, across' })

describe('the measures of a motif', () => {
  it('keep their field while what is half typed makes no motif', async () => {
    // In inches, "78" on the way to "78 mm" is no flower with these dips.
    const { app } = await inWindow(MotifPlace, {}, { ...SMALL, units: 'imperial' })
    const typing = field()
    typing.focus()
    for (const text of ['7', '78']) {
      await fireEvent.input(typing, { target: { value: text } })
      await vi.waitFor(() => expect(app.document.isPlanning).toBe(false), 5000)
    }
    expect(app.document.plan.motif).toBeNull()
    expect(field()).toBe(typing)
    expect(globalThis.document.activeElement).toBe(typing)
    await fireEvent.input(typing, { target: { value: '78 mm' } })
    await fireEvent.keyDown(typing, { key: 'Enter' })
    expect(app.document.project.motifs?.[0]).toMatchObject({ overTips: 78 })
  })

  it('stand in a list once nobody is at a field of a motif that cannot be drawn, and on the drawing again', async () => {
    const { app } = await inWindow(MotifPlace, {}, SMALL)
    const drawn = field()
    const edit = (overTips: number) =>
      app.document.change('change a measure', (project: Project) => ({
        ...project,
        motifs: project.motifs!.map((motif) => ({ ...motif, overTips })),
      }))
    edit(5000)
    await vi.waitFor(() => expect(field()).not.toBe(drawn), 5000)
    edit(80)
    await vi.waitFor(() => expect(globalThis.document.querySelector('.picture')).toBeTruthy(), 5000)
  })
})

describe('the measures of written rounds', () => {
  it('say how to lay the ruler on the shape that they make', async () => {
    const work = [
      '12 sc in ring',
      '2 sc in each st around',
      '*sc in next st, 2 sc in next st; rep from * around',
    ]
    const rounds = work.map((each) => ({ slot: 'centre', work: each }))
    const circle: RoundsMotif = {
      id: 'm1',
      name: 'Disc',
      kind: 'rounds',
      foundation: { ring: 'adjustable' },
      rounds,
    }
    await inWindow(MotifPlace, {}, { ...SMALL, motifs: [circle] })
    expect(screen.getByText('Lay the motif flat and measure across the middle.')).toBeTruthy()
    expect(screen.queryByText(/^Lay the motif flat\. Tip to tip/)).toBeNull()
  })
})

describe('sizes that a way worked out for another gauge', () => {
  const looser = () => scaledProject(SMALL, 1.01)
  const first = (project: Project) => project.motifs![0] as MeasuredMotif

  it('say so, and the measure comes back with everything that followed from it', async () => {
    const { app } = await inWindow(MotifPlace, {}, looser())
    expect(screen.getByText(/^Worked out from what you measured, for another/)).toBeTruthy()
    await fireEvent.click(screen.getByRole('button', { name: 'Back to what was measured' }))
    expect(first(app.document.project).overTips).toBe(first(SMALL).overTips)
    expect(screen.queryByText(/^Worked out from/)).toBeNull()
    app.document.undo()
    expect(first(app.document.project).asMeasured).toMatchObject({ overTips: first(SMALL).overTips })
  })

  it('are a measure again where one is entered', async () => {
    const { app } = await inWindow(MotifPlace, {}, looser())
    await fireEvent.input(field(), { target: { value: '81 mm' } })
    await fireEvent.keyDown(field(), { key: 'Enter' })
    expect(first(app.document.project).asMeasured).toBeUndefined()
    expect(app.document.plan.motif).toMatchObject({ overTips: 81, provenance: 'measured' })
  })
})

describe('sizes that the page states', () => {
  const ROUNDS: RoundsMotif = {
    id: 'm1',
    name: 'Disc',
    kind: 'rounds',
    gauge: { stitch: 'sc', stitches: 20, rows: 22, over: 100 },
    rounds: [
      { slot: 'centre', work: 'ch 1, 6 sc in ring, join with sl st in first sc' },
      { slot: 'centre', work: 'ch 1, 2 sc in each sc around, join with sl st in first sc' },
    ],
    measured: { across: 40 },
    stated: { across: 40 },
  }
  const project: Project = { ...SMALL, motifs: [ROUNDS] }
  const across = () => screen.getByRole<HTMLInputElement>('textbox', { name: 'Across' })

  it('are called stated, and contradict the gauge, until the same number is entered from a ruler', async () => {
    const { app } = await inWindow(MotifPlace, {}, project)
    expect(screen.getByText(/^This size comes from the pattern/)).toBeTruthy()
    const codes = () => app.document.plan.findings.map(({ code }) => code)
    await vi.waitFor(() => expect(app.document.plan.motif).toMatchObject({ provenance: 'stated' }), 5000)
    expect(codes()).toContain('motif/stated-against-gauge')
    expect(placeSummary('motif', app.document.project, app.document.plan, []).lines[0]).toMatch(
      /40 mm across, stated$/,
    )
    await fireEvent.input(across(), { target: { value: '40 mm' } })
    await fireEvent.keyDown(across(), { key: 'Enter' })
    expect(app.document.project.motifs![0]).not.toHaveProperty('stated')
    await vi.waitFor(() => expect(app.document.plan.motif).toMatchObject({ provenance: 'measured' }), 5000)
    expect(codes()).not.toContain('motif/stated-against-gauge')
    expect(screen.queryByText(/^This size comes from the pattern/)).toBeNull()
  })
})

describe('a motif that is measured again', () => {
  it('is held against the plan before, also where what was typed is planned already', async () => {
    const made = { '1,1': '2026-12-01' }
    const { app } = await inWindow(MotifPlace, {}, { ...SMALL, made })
    const { document } = app
    const { width } = document.plan.size
    const typing = field()
    typing.focus()
    await fireEvent.input(typing, { target: { value: '82 mm' } })
    await vi.waitFor(() => expect(document.plan.size.width).not.toBe(width), 5000)
    await fireEvent.keyDown(typing, { key: 'Enter' })
    expect(document.measuredFrom?.plan.size.width).toBe(width)
  })
})
