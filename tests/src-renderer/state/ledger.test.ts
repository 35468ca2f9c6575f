import { describe, expect, it } from 'vitest'
import { planProject } from '../../../src-core/plan'
import { patchBlanket } from '../../../src-renderer/state/edits/layout'
import { ledgerOf } from '../../../src-renderer/state/ledger'
import { nudgeField, sentenceParts } from '../../../src-renderer/state/sentence'
import { placeSummary } from '../../../src-renderer/state/summaries'
import { EXAMPLES } from '../../../src-renderer/start/examples'
import { example, SMALL } from '../projects'

const plan = planProject(SMALL)

describe('the ledger', () => {
  it('says nothing of differences while nothing is tried', () => {
    const { figures, yarns } = ledgerOf(SMALL, plan, null)
    expect(figures.map((figure) => figure.change).join('')).toBe('')
    expect(yarns.map((yarn) => yarn.change).join('')).toBe('')
  })

  it('tells by how much a change would move everything', () => {
    const more = patchBlanket(SMALL, { rows: 6 })
    const { figures, yarns } = ledgerOf(more, planProject(more), plan)
    expect(figures.find((figure) => figure.name === 'Motifs')?.change).toBe('+10')
    expect(figures.find((figure) => figure.name === 'Size')?.change).toMatch(/^0 × \+/)
    expect(yarns[0]?.change).toMatch(/^\+/)
    const fewer = ledgerOf(SMALL, plan, planProject(more))
    expect(fewer.figures.find((figure) => figure.name === 'Motifs')?.change).toBe('−10')
  })

  it('lets bars stand for the high end of the range', () => {
    const need = plan.yarns[0]!
    expect(ledgerOf(SMALL, plan, null).yarns[0]).toMatchObject({ need: need.grams.high, onHand: 20 })
  })
})

describe('the sentence', () => {
  it('tells the project, with every part that can be changed', () => {
    const parts = sentenceParts(SMALL, plan)
    expect(parts.map((part) => part.text).join('')).toMatch(
      /^20 six-petal flowers of 80 mm in offset rows of 5, joined at their tips, in two colourways one after the other: .* cm\.$/,
    )
    expect(parts.flatMap((part) => part.field ?? [])).toEqual([
      'count',
      'motif',
      'motif-size',
      'arrangement',
      'columns',
      'joining',
      'colours',
      'size',
    ])
  })

  it('is nudged part by part', () => {
    const after = (field: Parameters<typeof nudgeField>[0], steps: number, sideways = false) =>
      nudgeField(field, steps, sideways)!.edit(SMALL)
    expect(after('columns', 2).layout).toMatchObject({ columns: 7, rows: 4 })
    expect(after('count', -9).layout).toMatchObject({ columns: 5, rows: 1 })
    expect(after('size', 1, true).layout).toMatchObject({ columns: 6 })
    expect(after('arrangement', 1).layout).toMatchObject({ arrangement: 'rings' })
    expect(after('arrangement', -1).layout).toMatchObject({ arrangement: 'straight-rows' })
    expect(after('joining', 1).joining?.rule).toBe('edges')
    expect(after('motif-size', 3).motifs![0]).toMatchObject({ overTips: 83 })
    expect(nudgeField('colours', 1, false)).toBeNull()
  })
})

describe('the list of places', () => {
  it('is a summary with its warnings', () => {
    const summary = placeSummary('yarn', SMALL, plan)
    expect(summary.lines[0]).toMatch(/ g in 2 yarns$/)
    expect(summary.warning).toBe('Brick runs short')
    expect(placeSummary('motif', SMALL, plan).lines).toEqual(['80 mm tip to tip, measured', '4 g · 15 min'])
    expect(placeSummary('arrangement', SMALL, plan).lines[0]).toBe('offset rows, 5 × 4')
    expect(placeSummary('colours', SMALL, plan).lines).toEqual(['A 10 · B 10'])
  })

  it('teaches where there is nothing yet', () => {
    const blank = { format: 'petalyard-project', version: 1 } as const
    const empty = planProject(blank)
    expect(placeSummary('motif', blank, empty).lines).toEqual(['none yet'])
    expect(placeSummary('yarn', blank, empty).lines).toEqual(['no yarn yet'])
    expect(placeSummary('colours', blank, empty).lines).toEqual(['no colourways yet'])
  })
})

describe('the examples', () => {
  it('all have a title and a sentence about them, and are those that come with the program', () => {
    expect(EXAMPLES.length).toBeGreaterThanOrEqual(3)
    for (const entry of EXAMPLES) {
      expect(entry.project.title, entry.name).toBeTruthy()
      expect(entry.words, entry.name).toMatch(/[.!?]$/)
      expect(example(entry.name).title).toBe(entry.project.title)
    }
  })
})
