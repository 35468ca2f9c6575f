import { describe, expect, it } from 'vitest'
import { isBabySize } from '../../../src-core/layout/baby-size'
import { closedForChild } from '../../../src-core/joins/for-child'
import { layoutOf } from '../../../src-core/layout/candidates'
import { fitFromHave, fitProject, planProject, proposeProject, waysForProject } from '../../../src-core/plan'
import { withEdit } from '../../../src-core/ways/edit'
import type { FitArrangement } from '../../../shared-types/plan'
import type { BlanketLayout, MeasuredMotif, Project } from '../../../shared-types/project'

const octagons = (forChild: boolean, lead = 100): Project => ({
  ...{ format: 'petalyard-project', version: 1, joining: { rule: 'edges' } },
  ...(forChild && { forChild: true }),
  motifs: [
    { id: 'm', name: 'Pane', kind: 'measured', outline: 'octagon', sideToSide: lead, slots: [{ slot: 'a' }] },
  ],
  layout: { kind: 'blanket', arrangement: 'straight-rows', motif: 'm', columns: 8, rows: 8 },
})
const size = { width: 900, height: 1100 }
const openings = (of: Project) => proposeProject(of, size).proposals.map(({ opening }) => opening)

describe('M32: arrangements offered for a child', () => {
  it('have no openings for small hands in the first of them where any does without', () => {
    // Side on side, octagons of 100 mm leave squares whose sides are theirs: 100 / (1 + √2) = 41.4 mm across.
    const usual = openings(octagons(false))
    expect(usual[0]).toBeCloseTo(100 / (1 + Math.SQRT2), 1)
    const child = openings(octagons(true))
    expect(child[0]).toBeLessThan(25)
    expect([...child].sort((a, b) => a - b)).toEqual([...usual].sort((a, b) => a - b))
    const firstWide = child.findIndex((opening) => opening >= 25)
    expect(child.slice(firstWide).every((opening) => opening >= 25)).toBe(true)
  })

  it('begin with the smallest openings where all are wide', () => {
    const child = openings(octagons(true, 200))
    expect(Math.min(...child)).toBeGreaterThan(25)
    expect(child).toEqual([...child].sort((a, b) => a - b))
  })
})

describe('the size of a baby blanket', () => {
  it.each([
    [{ width: 760, height: 910 }, true],
    [{ width: 910, height: 760 }, true],
    [{ width: 914.4, height: 1143 }, true],
    [{ width: 1000, height: 1300 }, false],
    [{ width: 300, height: 1100 }, false],
    [{ width: 760, height: 1200 }, false],
  ])('%o: %s', (asked, isIt) => {
    expect(isBabySize(asked)).toBe(isIt)
  })
})

describe.each([
  ['a size', (project: Project) => fitProject(project, size).arrangements],
  ['a number of motifs', (project: Project) => fitFromHave(project, { count: 88, like: size }).arrangements],
  [
    'motifs already made',
    (project: Project) => fitFromHave(project, { motifs: 88, like: size }).arrangements,
  ],
])('M32: fits to %s', (_, fitsOf) => {
  const wide = (fits: readonly FitArrangement[]) => fits.map(({ opening = NaN }) => opening >= 25)

  it('have those without openings for small hands first for a child, and tell how wide those of each are', () => {
    const told = fitsOf(octagons(true))
    expect(wide(told)).toEqual([...wide(told)].sort())
    expect(wide(told)[0]).toBe(false)
    for (const fit of told) {
      const layout = { ...octagons(true).layout, ...layoutOf(fit) } as BlanketLayout
      expect(fit.opening).toBeCloseTo(2 * planProject({ ...octagons(true), layout }).holes[0]!.radius, 3)
    }
  })

  it('go by size, count and yarn alone where it is for nobody small', () => {
    const [first] = fitsOf(octagons(false))
    expect(first!.arrangement).toBe('straight-rows')
    expect(first!.opening).toBeUndefined()
  })
})

it('M32: fillers close what a child’s fit leaves open, so that its size decides again', () => {
  const { motifs = [], layout } = octagons(true)
  const small: MeasuredMotif = { id: 's', kind: 'measured', outline: 'square', sideToSide: 41.4 }
  const filled: Project = {
    ...octagons(true),
    motifs: [...motifs, small],
    layout: { ...(layout as BlanketLayout), fillers: { motif: 's' } },
  }
  const [first] = fitProject(filled, size).arrangements
  expect(first).toMatchObject({ arrangement: 'straight-rows', columns: 9, rows: 11 })
  expect(first!.opening).toBeLessThan(25)
})

it('M32: of ways to a size those that leave no openings for small hands go first for a child', () => {
  const forChild = octagons(true, 59)
  const { ways } = waysForProject(forChild, { width: 500 })
  const wide = ways.map(({ opening = NaN }) => opening >= 25)
  expect(new Set(wide)).toEqual(new Set([false, true]))
  expect(wide).toEqual([...wide].sort())
  for (const { opening, edit } of ways)
    expect(opening).toBeCloseTo(2 * planProject(withEdit(forChild, edit)).holes[0]!.radius, 3)
  expect(
    waysForProject(octagons(false, 59), { width: 500 }).ways.every((way) => way.opening === undefined),
  ).toBe(true)
})

it('M32: what is for nobody small keeps its order, whether it holds or not', () => {
  const list = [
    { holds: false, opening: undefined },
    { holds: true, opening: undefined },
  ]
  expect(closedForChild(list, (one) => one)).toEqual(list)
  const child = [
    { holds: false, opening: 0 },
    { holds: true, opening: 30 },
    { holds: true, opening: 26 },
    { holds: true, opening: 24 },
    { holds: true, opening: 3 },
  ]
  expect(closedForChild(child, (one) => one).map(({ opening }) => opening)).toEqual([24, 3, 26, 30, 0])
})
