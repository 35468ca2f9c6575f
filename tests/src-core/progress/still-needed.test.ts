/** What is still needed of a yarn that was weighed again, and whether what is left over is worth a caution: by hand. */
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { stillNeeded } from '../../../src-core/progress/still-needed'
import { forecastWords } from '../../../src-core/progress/words'

/** Twenty squares of 10 g, weighed to ±5 %, of 250 g on hand; ten are made. */
const begun = (grams?: number): Project => ({
  ...{ format: 'petalyard-project', version: 1 },
  yarns: [
    {
      ...{ id: 'y', name: 'Moss', ballGrams: 50, ballMetres: 100, onHandGrams: 250 },
      ...(grams !== undefined && { left: { grams, at: 10 } }),
    },
  ],
  motifs: [
    {
      ...{ id: 'm', kind: 'measured', outline: 'square', sideToSide: 100 },
      slots: [{ slot: 'all', grams: 10 }],
    },
  ],
  colourways: [{ id: 'c', motif: 'm', yarns: { all: 'y' } }],
  joining: { rule: 'edges' },
  allowance: { wastePercent: 0 },
  made: Object.fromEntries(Array.from({ length: 10 }, (_, i) => [`${i < 5 ? 1 : 2},${(i % 5) + 1}`, ''])),
  layout: {
    ...{ kind: 'blanket', arrangement: 'straight-rows', motif: 'm', columns: 5, rows: 4 },
    cells: { fill: { pattern: 'one', colourways: ['c'] } },
  },
})
const needOf = (grams?: number) => {
  const project = begun(grams)
  const plan = planProject(project)
  return { plan, need: stillNeeded(plan, project.yarns!)[0]! }
}

describe('what is still needed', () => {
  it('is what goes into the rest at its rate, of what was left', () => {
    // 120 g for ten: 12 g each, so 120 g for the other ten, of 130 g: three balls of 50 g, 240 m.
    const { plan, need } = needOf(130)
    expect(plan.yarns[0]!.grams.expected).toBeCloseTo(200, 6)
    expect(need.grams).toMatchObject({ low: 120, high: 120 })
    expect(need.grams.expected).toBeCloseTo(120, 6)
    expect(need).toMatchObject({ onHand: 130, balls: 3, toBuy: 0 })
    expect(need.metres!.expected).toBeCloseTo(240, 6)
  })

  it('is what the plan says where nothing was weighed', () => {
    const { plan, need } = needOf()
    expect(need).toBe(plan.yarns[0])
  })

  it('is only just enough where less is left over than motifs may differ by', () => {
    const words = (grams: number) => {
      const { plan } = needOf(grams)
      return forecastWords(plan.progress.forecast[0]!, plan.settled.yarns, 20, 'metric')
    }
    // 12.2 g each, ±5 %: of 128 g 6 g are left over, within 6.1; at 11 g each of 140 g 30 g are.
    expect(words(128)).toMatch(/^At this rate Moss is only just enough: about 6 g will be left over/)
    expect(words(140)).toBe('At this rate Moss is enough: about 30 g will be left over.')
    expect(words(120)).toContain('more are needed')
  })
})
