import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { mapGround } from '../../../src-core/figures/map-ground'
import { overviewMap } from '../../../src-core/figures/overview-map'
import { planProject } from '../../../src-core/plan'
import { record } from './recorder'

/** A letter or figure is so wide and high, in em, and a point is so long, in mm. */
const [WIDE, HIGH, POINT] = [0.55, 0.66, 25.4 / 72]
/** The stroke of a tick as a share of the radius of its ground. */
const STROKE = 0.3

/** Everything of an example made, every other motif joined too. */
function made(name: string): Project {
  const project = JSON.parse(readFileSync(`examples/${name}.petalyard`, 'utf8')) as Project
  const { motifs, halves, fillers } = planProject(project)
  const ids = [...motifs, ...halves, ...fillers].map(({ id }) => id)
  const dated = (list: readonly string[]) => Object.fromEntries(list.map((id) => [id, '']))
  return { ...project, made: dated(ids), joined: dated(ids.filter((_, i) => i % 2 === 0)) }
}

describe.each([
  'market-stall-throw',
  'hearthstone-hexagon',
  'limekiln-cushion',
  'dovecote-runner',
  'orchard-wall-throw',
])('ticks on what is made of %s', (name) => {
  it.each(['ink', 'colour'] as const)('leave every number and letter to be read, in %s', (style) => {
    const { figure } = overviewMap(mapGround(planProject(made(name)), style), 186, 170)
    const { texts, paths } = record(figure)
    // A tick is one stroke of two lines, those of one paint in one path.
    const ticks = paths
      .filter(({ paint, points }) => paint.cap === 'round' && points.length % 3 === 0 && points.length > 0)
      .flatMap(({ paint, points }) => {
        const radius = (paint.width ?? 0) / STROKE
        return points.flatMap(([x, y], i) => {
          const next = points[i + 1]
          // Down and to the right by so much: lines of other marks do not run so.
          const isTick =
            next && Math.abs(next[0] - x - 0.38 * radius) + Math.abs(next[1] - y - 0.4 * radius) < 1e-3
          return i % 3 === 0 && isTick ? [{ x: x + 0.5 * radius, y: y - 0.02 * radius, radius }] : []
        })
      })
    expect(ticks.length).toBeGreaterThan(10)
    const labels = texts.filter(({ text }) => /^(\d+|[A-Z])$/.test(text))
    expect(labels.length).toBeGreaterThan(20)
    const covered = labels.filter(({ text, x, y, printed, anchor }) => {
      const [width, height] = [text.length * WIDE * printed * POINT, HIGH * printed * POINT]
      const left = anchor === 'middle' ? x - width / 2 : x
      return ticks.some((tick) => {
        const across = Math.max(left - tick.x, tick.x - left - width, 0)
        const down = Math.max(y - height - tick.y, tick.y - y, 0)
        // A hair of the box round a letter is no part of it.
        return Math.hypot(across, down) < 0.85 * tick.radius
      })
    })
    expect(covered.map(({ text }) => text)).toEqual([])
  })
})
