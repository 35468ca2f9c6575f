/** M35: the line round a hole of squares; its inner corners are cut by arcs of half the joining distance. */
import { expect, it } from 'vitest'
import { readFileSync } from 'node:fs'
import type { Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { SIDE, squares, WIDTH } from './helpers'

it.each([
  [['3,3'], 4 * SIDE],
  [['3,3', '3,4'], 6 * SIDE],
])('M35 is (2 − π/2)·r shorter at each inner corner: without %j', (holes, edge) => {
  const whole = squares(6, 5, { rounds: ['sc'] })
  const cells = { motifs: Object.fromEntries(holes.map((id) => [id, null])) }
  const plan = planProject({ ...whole, layout: { ...whole.layout, cells } as Project['layout'] })
  // 1.5 stitch widths are more than 8 % over the corners of a square of 60 mm.
  const r = (1.5 * WIDTH) / 2
  const expected = 2 * (6 + 5) * SIDE + edge - 4 * (2 - Math.PI / 2) * r
  expect(Math.abs(plan.edging!.length - expected)).toBeLessThan(0.6)
})

it('the example of a shawl lies within its rows', () => {
  const text = readFileSync('examples/estuary-dusk-shawl.petalyard', 'utf8')
  const { findings } = planProject(JSON.parse(text) as Project)
  expect(findings.map(({ code }) => code).filter((code) => code.startsWith('layout/'))).toEqual([])
})
