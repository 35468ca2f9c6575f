/** The command line says how motifs are joined as the window's sentence does. */
import { expect, it } from 'vitest'
import { planProject } from '../../../src-core/plan'
import { planReport } from '../../../src-main/command/reports/plan'
import { hexagons, squares } from '../../src-core/edging/helpers'

it.each([hexagons(3, {}), squares(3, 3, {})])(
  'motifs with straight sides have no tips and shoulders',
  (project) => {
    const joined = { ...project, joining: { rule: 'edges' } } as const
    const report = planReport(joined, planProject(joined), 120, false).join('\n')
    expect(report).toContain('joined along the sides')
    expect(report).not.toContain('shoulders')
  },
)
