/** Motifs that are made already, so many of each colourway: an arrangement of them keeps to the piles. */
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import { fitFromHave, planProject } from '../../../src-core/plan'
import { motifsIn, withPiles } from '../../../src-core/layout/piles'
import { takeFit } from '../../../src-renderer/state/edits/layout'

const project = (fill: NonNullable<BlanketLayout['cells']>['fill'] = { pattern: 'scatter' }): Project => ({
  format: 'petalyard-project',
  version: 1,
  yarns: ['red', 'blue', 'white'].map((id) => ({ id, name: id, ballGrams: 50, ballMetres: 100 })),
  motifs: [
    {
      ...({ id: 'm', kind: 'measured', outline: 'round', across: 60 } as const),
      slots: [{ slot: 'all', grams: 5 }],
    },
  ],
  colourways: ['red', 'blue', 'white'].map((id, i) => ({
    ...{ id, code: 'ABC'[i]!, motif: 'm', yarns: { all: id } },
  })),
  layout: {
    ...({ kind: 'blanket', arrangement: 'straight-rows', motif: 'm', columns: 5, rows: 5 } as const),
    cells: { fill: { colourways: ['red'], ...fill } },
  },
})
const PILES = { red: 12, blue: 9, white: 4 }
const laidFrom = (own: Project, piles: Record<string, number>) => {
  const { arrangements, findings } = fitFromHave(own, { motifs: motifsIn(piles), piles })
  return arrangements.map((fit) => ({ fit, findings, laid: takeFit(own, fit, 'motifs', piles) }))
}

describe.each(['one', 'repeat', 'scatter', 'rows', 'shade'] as const)('Piles in a fill of %s', (pattern) => {
  const all = laidFrom(project({ pattern }), PILES)

  it('are kept to by every arrangement that says so, as its plan counts them', () => {
    expect(all.length).toBeGreaterThan(0)
    for (const { fit, laid } of all) {
      const { counts } = planProject(laid)
      expect(counts.byColourway).toEqual(fit.byColourway)
      expect(counts.motifs).toBeLessThanOrEqual(25)
      const beyond = Object.entries(counts.byColourway).map(([id, many]) =>
        Math.max(0, many - (PILES[id as keyof typeof PILES] ?? 0)),
      )
      expect(beyond.reduce((sum, each) => sum + each, 0)).toBe(fit.beyond ?? 0)
    }
  })

  it('are laid out to the last one where the arrangement takes all of them', () => {
    const whole = all.filter(({ fit }) => fit.left === 0)
    expect(whole.length).toBeGreaterThan(0)
    for (const { laid, fit } of whole) {
      expect(fit.beyond).toBeUndefined()
      expect(planProject(laid).counts.byColourway).toEqual(PILES)
      expect(planProject(laid).findings.filter(({ code }) => code.startsWith('colours/limits'))).toEqual([])
    }
  })

  it('need no yarn: all of them are marked as made', () => {
    const { made, left } = planProject(all[0]!.laid).progress
    expect(made).toBe(all[0]!.fit.motifs)
    expect(left.motifs).toBe(0)
  })
})

describe('Piles of which one is far larger than the others', () => {
  it('cannot be laid so that no two alike touch: it is said by how many, and the plan says it, too', () => {
    const found = laidFrom(project({ pattern: 'no-two-alike' }), { red: 24, blue: 1 })
    const { fit, findings, laid } = found[0]!
    expect(fit.beyond).toBeGreaterThan(0)
    expect(findings.map(({ code }) => code)).toContain('layout/fit-piles')
    const told = planProject(laid).findings.map(({ code }) => code)
    expect(told.some((code) => code.startsWith('colours/limits'))).toBe(true)
  })

  it('are no fault where the pattern leaves them free', () => {
    const found = laidFrom(project(), { red: 24, blue: 1 })
    expect(found[0]!.findings).toEqual([])
    expect(found[0]!.fit.byColourway).toEqual({ red: 24, blue: 1 })
  })
})

describe('The colours of piles', () => {
  it('free what was painted before, and keep to no other limits', () => {
    const own = project({ pattern: 'scatter', most: { red: 1 }, mostGrams: { red: 10 }, withinStash: true })
    const layout = own.layout as BlanketLayout
    const painted = { ...own, layout: { ...layout, cells: { ...layout.cells, painted: { '1,1': 'red' } } } }
    const { cells } = withPiles(painted, PILES).layout as BlanketLayout
    expect(cells).toEqual({
      fill: { pattern: 'scatter', colourways: ['red', 'blue', 'white'], most: PILES },
    })
  })
})
