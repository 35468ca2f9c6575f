/** What the window says of how motifs hang on a cord is what the cord's own words say. */
import { describe, expect, it } from 'vitest'
import type { MeasuredMotif, Project } from '../../../shared-types/project'
import { chainsBetween, fastenedBy } from '../../../src-core/figures/garland-fastening'
import { planProject } from '../../../src-core/plan'

const HEXAGON = { id: 'h', kind: 'measured', outline: 'hexagon', sideToSide: 131 } as MeasuredMotif
const FLOWER = { id: 'f', kind: 'measured', outline: 'petals', petals: 6, overTips: 80 } as MeasuredMotif
const LEAF = { id: 'l', kind: 'measured', outline: 'leaf', length: 60 } as MeasuredMotif

function items(motifs: readonly MeasuredMotif[], more: object = {}) {
  const project = {
    ...{ format: 'petalyard-project', version: 1, terms: 'US', motifs, yarns: [], colourways: [] },
    gauge: { stitch: 'sc', stitches: 13, rows: 15, over: 100 },
    layout: {
      ...{ kind: 'garland', items: motifs.map(({ id }) => ({ motif: id })), cord: { worked: 'chain' } },
      ...{ spacing: { between: 'edges', mm: 40 }, swags: { count: 1, span: 1500, drop: 0 }, ...more },
    },
  } as unknown as Project
  const { garland } = planProject(project)
  expect(garland!.items.length).toBeGreaterThan(3)
  return garland!.items
}

describe('how motifs are fastened to a cord', () => {
  it('a hexagon hangs by two corners, with the chains that its own words say', () => {
    const all = items([HEXAGON])
    const between = chainsBetween(all)!
    expect(fastenedBy(all)).toBe('corner')
    expect(Number(between.range)).toBeGreaterThan(3)
    for (const { words } of all) expect(words).toBe(`sc in corner 1, ch ${between.range}, sc in next corner`)
    expect(between.words).toBe(`${between.range} chains`)
  })

  it('flowers and hexagons hang by places, with as few and as many chains as they have', () => {
    const all = items([HEXAGON, FLOWER, LEAF])
    const own = (shown: RegExp) =>
      all.flatMap(({ words }) => Number(shown.exec(words)?.[1] ?? Number.NaN)).find(Number.isFinite)
    const [flower, hexagon] = [own(/petal 1, ch (\d+)/), own(/corner 1, ch (\d+)/)]
    expect(fastenedBy(all)).toBe('place')
    expect(chainsBetween(all)!.range).toBe(`${flower}–${hexagon}`)
  })

  it('leaves beside flowers change neither name nor chains; alone they hang by one', () => {
    expect(fastenedBy(items([FLOWER, LEAF]))).toBe('petal')
    expect(chainsBetween(items([FLOWER, LEAF]))!.words).toBe('3 chains')
    expect(fastenedBy(items([LEAF]))).toBe('tip')
    expect(chainsBetween(items([LEAF]))).toBeNull()
  })

  it('what was entered holds for all; a bought cord has no chains between', () => {
    expect(chainsBetween(items([HEXAGON, FLOWER], { hang: { chains: 7 } }))!.words).toBe('7 chains')
    expect(chainsBetween(items([HEXAGON], { cord: { worked: 'bought' } }))).toBeNull()
  })
})
