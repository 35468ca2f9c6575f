/** A pattern that tells what its first rounds measure and a swatch besides: both are printed, and which one the sizes follow from. */
import { describe, expect, it } from 'vitest'
import type { StitchGauge } from '../../../shared-types/project'
import { circles, hexagons, toldOf } from './worked/pages-of'

const BOTH: StitchGauge = {
  stitch: 'dc',
  stitches: 15,
  rows: 8,
  over: 101.6,
  rounds: 3,
  across: 82.55,
  hook: 5,
}
const hexagon = (gauge: StitchGauge) => {
  const project = hexagons({ units: 'imperial' })
  return { ...project, motifs: project.motifs!.map((motif) => ({ ...motif, gauge })) }
}

describe('both gauges', () => {
  it('are on the pages, with what the sizes follow from', () => {
    const told = toldOf(hexagon(BOTH)).of()
    expect(told).toContain('rounds 1–3 measure 3¼ in from side to side, from which the sizes follow')
    expect(told).toContain('15 dc (double crochet) × 8 rows to 4 in (10 cm)')
  })

  it('of which there is one say nothing of another', () => {
    const { stitches: _, rows: _rows, stitch: _stitch, ...rounds } = BOTH
    expect(toldOf(hexagon(rounds)).of()).not.toContain('from which the sizes follow')
    const { rounds: _rounds, across: _across, ...swatch } = BOTH
    expect(toldOf(hexagon(swatch)).of()).not.toContain('from which the sizes follow')
  })

  it('go across what is round, and are no source of what was measured', () => {
    const project = circles()
    const told = toldOf({ ...project, motifs: project.motifs!.map((motif) => ({ ...motif, gauge: BOTH })) })
    expect(told.of()).toContain('rounds 1–3 measure 82.6 mm across; 15 dc')
  })
})
