/** A border in yarn as light as paper is told from it: in its yarn where colors print, between two lines in ink. */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { mapGround } from '../../../src-core/figures/map-ground'
import { MapPainter } from '../../../src-core/figures/map'
import { planProject } from '../../../src-core/plan'
import { record } from './recorder'

const CREAM = '#fbf6e8'

/** An example edged in a cream that nothing else has, by its plain rounds or by written ones. */
function edged(name: string, written?: string): Project {
  const project = JSON.parse(readFileSync(`examples/${name}.petalyard`, 'utf8')) as Project
  const layout = project.layout as { edging: object }
  const edging = { ...layout.edging, yarn: 'border', ...(written && { written: [{ work: written }] }) }
  return {
    ...project,
    yarns: [...(project.yarns ?? []), { id: 'border', name: 'Border', colour: CREAM }],
    layout: { ...layout, edging } as Project['layout'],
  }
}

const SHELLS = '*5 tr in next st, miss 2 sts, dc in next st, miss 2 sts; rep from * around, join with ss.'

describe.each([
  ['flowers bridged', edged('estuary-dusk-shawl')],
  ['hexagons followed', edged('slate-roof-lap-blanket')],
  ['shells', edged('orchard-floor-blanket', SHELLS)],
])('the border of %s', (_, project) => {
  const plan = planProject(project)
  const { width, height } = plan.size
  const drawn = (style: 'ink' | 'colour', scale: number) =>
    record({ items: new MapPainter(mapGround(plan, style), scale).window({ x: 0, y: 0, width, height }) })

  it.each([0.13, 0.9])('is printed in its yarn at %d', (scale) => {
    expect(drawn('colour', scale).paths.some(({ paint }) => paint.fill === CREAM)).toBe(true)
    expect(drawn('ink', scale).paths.some(({ paint }) => paint.fill === CREAM)).toBe(false)
  })

  it.each(['ink', 'colour'] as const)('has a line on either side, in %s', (style) => {
    const { paths } = drawn(style, 0.13)
    const box = (points: readonly (readonly number[])[]) => [
      Math.min(...points.map(([x]) => x!)),
      Math.max(...points.map(([x]) => x!)),
    ]
    const lines = paths
      .filter(({ paint }) => paint.stroke && (paint.width ?? 0) > 0)
      .map(({ points }) => box(points))
    const wide = lines.filter(([left, right]) => right! - left! > 0.9 * width * 0.13)
    const widths = wide.map(([left, right]) => right! - left!)
    expect(Math.max(...widths) - Math.min(...widths)).toBeGreaterThan(2 * plan.edging!.height * 0.13 * 0.8)
  })
})
