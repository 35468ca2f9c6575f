import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { chartFigures } from '../../../src-core/figures/chart'
import { workedRounds } from '../../../src-core/accounts'
import { checkProject } from '../../../src-core/plan'
import { settled } from '../../../src-core/settled'
import { listExamples } from '../../../src-main/documents'
import { crossings } from '../../src-core/figures/crossings'

const projects = listExamples().map(({ name, text }) => ({
  name,
  project: settled(JSON.parse(text) as Project),
}))
const written = projects.flatMap(({ name, project }) =>
  project.motifs.flatMap((motif) =>
    motif.kind === 'rounds' ? [{ what: `${name} ${motif.id}`, project, motif }] : [],
  ),
)

describe('examples in written rounds', () => {
  it('show a five-petal, a six-petal with back rounds, an eight-petal with picots, a hexagon and a leaf', () => {
    const shapes = written.map(({ project, motif }) => {
      const { account } = workedRounds(project, motif)
      return `${account!.shape} ${account!.petals}`
    })
    expect(shapes).toEqual(
      expect.arrayContaining(['petals 5', 'petals 6', 'petals 8', 'straight 6', 'leaf 2']),
    )
  })

  it.each(written)('$what: reads without a slip, and no symbol of its chart lies on another', (given) => {
    for (const hand of ['left', 'right'] as const) {
      const { located, beginning, findings } = workedRounds({ ...given.project, hand }, given.motif)
      expect(findings).toEqual([])
      const figures = chartFigures(located, beginning!, { hand, style: 'ink', width: 186, height: 240 })
      expect(figures.flatMap((figure) => crossings(figure))).toEqual([])
      for (const { unit } of figures) expect(unit).toBeGreaterThan(3)
    }
  })

  it.each(['orchard-wall-throw', 'dovecote-runner', 'limekiln-cushion'])(
    '%s has neither errors nor warnings',
    (name) => {
      const { project } = projects.find((each) => each.name === name)!
      expect(checkProject(project).filter(({ severity }) => severity !== 'note')).toEqual([])
    },
  )
})
