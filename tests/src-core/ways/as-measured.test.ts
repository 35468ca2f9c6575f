/** A way that takes another gauge keeps what was measured, says so, and can be gone back on. */
import { describe, expect, it } from 'vitest'
import type { MeasuredMotif, Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { asMeasured } from '../../../src-core/ways/changes'
import { withRound } from '../../../src-core/ways/rounds'
import { scaledProject } from '../../../src-core/ways/scale'

const project: Project = {
  format: 'petalyard-project',
  version: 1,
  gauge: { stitch: 'sc', stitches: 20, rows: 22, over: 100, hook: 3.5 },
  motifs: [
    {
      ...{ id: 'm', kind: 'measured', outline: 'petals', petals: 6, overTips: 94, overValleys: 79 },
      slots: [{ slot: 'petals', grams: 4 }],
    },
  ],
  layout: {
    ...{ kind: 'blanket', motif: 'm', arrangement: 'offset-rows', columns: 9, rows: 5 },
    outlineShape: { kind: 'triangle', size: 700, height: 400 },
  },
}
const motifOf = (made: Project) => made.motifs![0] as MeasuredMotif

describe('another gauge', () => {
  it('is no measure: what was measured stays beside the sizes that follow from it', () => {
    expect(planProject(project).motif!.provenance).toBe('measured')
    expect(asMeasured(project)).toBeNull()
    const looser = scaledProject(project, 1.005)
    expect(motifOf(looser)).toMatchObject({ overTips: 94.47, asMeasured: { overTips: 94, overValleys: 79 } })
    expect(planProject(looser).motif!.provenance).toBe('aimed')
    // Once more, it is still the measure that is kept.
    const again = scaledProject(looser, 1.01, 4)
    expect(motifOf(again).asMeasured).toEqual({ overTips: 94, overValleys: 79, hook: 3.5 })
    expect(again.gauge!.hook).toBe(4)
  })

  it('can be gone back on, to the sizes, hook and outline as they were', () => {
    const back = asMeasured(scaledProject(scaledProject(project, 1.005), 1.02, 4))!
    const { gauge, motifs, layout, ...rest } = back
    expect(rest).toEqual({ format: project.format, version: 1 })
    expect(motifs![0]).toMatchObject({ overTips: 94, overValleys: 79 })
    expect(motifOf(back).asMeasured).toBeUndefined()
    expect(motifOf(back).slots![0]!.grams).toBeCloseTo(4, 3)
    expect(gauge!.hook).toBe(3.5)
    expect(gauge!.stitches).toBeCloseTo(20, 3)
    expect(layout!.kind).toBe('blanket')
    expect(planProject(back).motif!.provenance).toBe('measured')
  })
})

describe('a round more', () => {
  const works = [
    '6 sc in ring',
    '2 sc in each st around',
    '*sc in next st, 2 sc in next st; rep from * around',
  ]
  const rounds: Project = {
    ...{ format: 'petalyard-project', version: 1, gauge: project.gauge },
    motifs: [
      {
        ...{ id: 'm', kind: 'rounds', foundation: { ring: 'adjustable' } },
        measured: { overTips: 41 },
        rounds: works.map((work) => ({ slot: 'all', work })),
      },
    ],
    layout: { kind: 'blanket', motif: 'm', arrangement: 'straight-rows', columns: 4, rows: 4 },
  }

  it('makes another motif than the one that was measured: its size is worked out, and nothing is gone back to', () => {
    expect(planProject(rounds).motif!.provenance).toBe('measured')
    const fewer = withRound(rounds, 'm', false)!
    expect(planProject(fewer).motif!.provenance).toBe('aimed')
    expect(planProject(fewer).motif!.overTips).toBeLessThan(41)
    expect(asMeasured(fewer)).toBeNull()
  })
})
