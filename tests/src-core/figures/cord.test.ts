import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Plan } from '../../../shared-types/plan'
import type { Project } from '../../../shared-types/project'
import { cordItems } from '../../../src-core/figures/cord'
import type { CordLook } from '../../../src-core/figures/cord'
import { INK } from '../../../src-core/figures/figure'
import type { FigureItem, Path } from '../../../src-core/figures/figure'
import { garlandFigure } from '../../../src-core/figures/garland'
import { planProject } from '../../../src-core/plan'

const garland = JSON.parse(readFileSync('examples/orchard-gate-garland.petalyard', 'utf8')) as Project
if (garland.layout?.kind !== 'garland') throw new Error('the example is a garland')
const { layout } = garland
const hung = planProject(garland)
/** Straight, so that nothing hangs off the cord. */
const straight = planProject({
  ...garland,
  layout: { ...layout, swags: undefined, cord: { ...layout.cord, length: 900 } },
})
const beaded = planProject({
  ...garland,
  layout: { ...layout, items: [{ bead: 'wooden bead', size: 30 }, ...layout.items!] },
})

const look: CordLook = {
  strands: [{ stroke: '#cord' }],
  loops: { stroke: '#loop' },
  tie: 9,
  hook: { radius: 1, stroke: '#hook' },
  bead: { least: 2, fill: '#bead' },
}
const cord = (plan: Plan, own = look, scale = 1) => cordItems(plan.garland!, own, { scale })
const pathsIn = (items: readonly FigureItem[], colour: string): Path[] =>
  items.flatMap((item) =>
    item.kind === 'path' && (item.paint.stroke === colour || item.paint.fill === colour) ? [item.path] : [],
  )
const starts = (path: Path): number => path.filter(([command]) => command === 'M').length

describe('a cord', () => {
  it('has a loop to each place that hangs off its slope, upright and ending on the cord', () => {
    const [loops, ...others] = pathsIn(cord(hung).under, '#loop')
    expect(others).toEqual([])
    const held = hung.garland!.items.flatMap((item) => item.held)
    expect(starts(loops!)).toBeGreaterThan(held.length / 4)
    for (let i = 0; i < loops!.length; i += 2) {
      const [from, to] = [loops![i] as ['M', number, number], loops![i + 1] as ['L', number, number]]
      expect(to[1]).toBe(from[1])
      expect(held).toContainEqual({ x: from[1], y: from[2] })
      const after = hung.garland!.line.findIndex(({ x }) => x >= to[1])
      const [a, b] = [hung.garland!.line[after - 1]!, hung.garland!.line[after]!]
      expect(Math.min(a.y, b.y) - 1e-9).toBeLessThanOrEqual(to[2])
      expect(Math.max(a.y, b.y) + 1e-9).toBeGreaterThanOrEqual(to[2])
    }
    expect(pathsIn(cord(straight).under, '#loop')).toEqual([])
  })

  it('runs through its beads, which lie over what hangs beside them', () => {
    const { under, over } = cord(beaded)
    const beads = beaded.garland!.items.filter(({ bead }) => bead !== '')
    expect(beads.length).toBeGreaterThan(3)
    expect(pathsIn(over, '#bead')).toHaveLength(beads.length)
    expect(pathsIn(under, '#bead')).toEqual([])
    const { items } = garlandFigure(beaded, beaded.garland!, { width: 400, height: 200, look: 'ink' })
    const last = items.findLastIndex(({ kind }) => kind === 'use')
    expect(items.length - 1 - last).toBe(beads.length)
  })

  it('is drawn with its loops on paper', () => {
    const { items } = garlandFigure(hung, hung.garland!, { width: 400, height: 200, look: 'ink' })
    const [loops] = pathsIn(cord(hung).under, '#loop')
    const drawn = items.filter((item) => item.kind === 'path' && starts(item.path) === starts(loops!))
    expect(drawn).toHaveLength(1)
    expect(items.indexOf(drawn[0]!)).toBeLessThan(items.findIndex(({ kind }) => kind === 'use'))
  })

  it('ends in ties no longer than they are worked, and shows the wall where it hangs in swags', () => {
    const long = (tie: number) => {
      const [strand] = pathsIn(cord(hung, { ...look, tie }).under, '#cord')
      return (strand!.at(-1) as ['L', number, number])[2] - hung.garland!.hooks.at(-1)!.y
    }
    expect(long(9)).toBeCloseTo(9, 9)
    expect(long(1e6)).toBeCloseTo(hung.garland!.cord.ties.length, 9)
    const wall = { ...look, wall: { beyond: 14, stroke: '#wall' } }
    expect(pathsIn(cord(hung, wall).under, '#wall')).toHaveLength(1)
    expect(pathsIn(cord(straight, wall).under, '#wall')).toEqual([])
  })

  it('keeps its ties within its drawing, however flat that is, and off the words below it', () => {
    for (const plan of [straight, hung])
      for (const width of [40, 90, 180]) {
        const { items, height } = garlandFigure(plan, plan.garland!, { width, height: 60, look: 'ink' })
        const [strand] = pathsIn(items, INK)
        const lowest = Math.max(...strand!.map((step) => Number(step[2] ?? 0)))
        expect([width, lowest]).toEqual([width, Math.min(lowest, height)])
        expect(lowest).toBeGreaterThan(2)
      }
  })
})
