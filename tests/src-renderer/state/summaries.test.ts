import { expect, it } from 'vitest'
import type { MeasuredMotif, Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { formatRange, formatYarnLength } from '../../../src-core/units/format'
import { planReport } from '../../../src-main/command/reports/plan'
import { ledgerOf } from '../../../src-renderer/state/ledger'
import { placeSummary } from '../../../src-renderer/state/summaries'

it('counts the fillers among the other motifs of a blanket', () => {
  const flower = (id: string, overTips: number, overValleys: number): MeasuredMotif =>
    ({ id, name: id, kind: 'measured', outline: 'petals', petals: 8, overTips, overValleys }) as MeasuredMotif
  const project: Project = {
    ...{ format: 'petalyard-project', version: 1 },
    motifs: [
      flower('Big bloom', 95, 68),
      flower('Bud', 50, 36),
      { id: 'Filler', name: 'Filler', kind: 'measured', outline: 'round', across: 22 } as MeasuredMotif,
    ],
    layout: {
      ...{ kind: 'blanket', arrangement: 'straight-rows', motif: 'Big bloom', columns: 4, rows: 4 },
      alternate: { motifs: ['Big bloom', 'Bud'], by: 'cell' },
      fillers: { motif: 'Filler' },
    },
  }
  const lines = placeSummary('motif', project, planProject(project)).lines
  expect(lines).toEqual(['Big bloom of 95 mm', 'and 2 others'])
})

it('tells what is bought for the whole batch of a kit', () => {
  const project: Project = {
    ...{ format: 'petalyard-project', version: 1 },
    yarns: [{ id: 'y1', name: 'Sand', ballGrams: 50, ballMetres: 125, price: 4 }],
    motifs: [
      {
        ...{ id: 'a', name: 'a', kind: 'measured', outline: 'square', sideToSide: 100 },
        slots: [{ slot: 'all', grams: 5 }],
      } as MeasuredMotif,
    ],
    colourways: [{ id: 'c1', motif: 'a', yarns: { all: 'y1' } }],
    layout: {
      ...{ kind: 'blanket', arrangement: 'straight-rows', motif: 'a', columns: 4, rows: 5 },
      ...{ cells: { fill: { pattern: 'repeat', colourways: ['c1'] } }, kit: { count: 30 } },
    },
  }
  const plan = planProject(project)
  const [one, batch] = placeSummary('yarn', project, plan).lines
  expect(one).toMatch(/^\d+ g in 1 yarn for one$/)
  expect(batch).toBe(`${plan.kit!.run[0]!.balls} skeins to buy for the batch of 30`)
})

it('tells yarns that are not known yet apart from those of the sum', () => {
  const square = (id: string, grams?: number): MeasuredMotif => ({
    ...{ id, kind: 'measured', outline: 'square', sideToSide: 100 },
    slots: [grams === undefined ? { slot: 'all' } : { slot: 'all', grams }],
  })
  const project = (second?: number): Project => ({
    ...{ format: 'petalyard-project', version: 1 },
    yarns: ['y1', 'y2'].map((id) => ({ id, name: id, ballGrams: 50, ballMetres: 125 })),
    motifs: [square('a', 5), square('b', second)],
    colourways: [
      { id: 'c1', motif: 'a', yarns: { all: 'y1' } },
      { id: 'c2', motif: 'b', yarns: { all: 'y2' } },
    ],
    allowance: { wastePercent: 0 },
    layout: {
      ...{ kind: 'blanket', arrangement: 'straight-rows', motif: 'a', columns: 4, rows: 5 },
      alternate: { motifs: ['a', 'b'], by: 'cell' },
      // Its border is known, and no reason to tell a sum.
      edging: { rounds: ['sc'], yarn: 'y2' },
      cells: { fill: { pattern: 'repeat', colourways: ['c1', 'c2'] } },
    },
  })
  const lines = (of: Project) => placeSummary('yarn', of, planProject(of)).lines
  expect(lines(project())).toEqual(['50 g in 1 yarn, 1 not known yet', '2 skeins to buy'])
  expect(lines(project(5))[0]).toMatch(/ in 2 yarns$/)
})

it('tells how long yarns are that no ball band brings to grams', () => {
  const project: Project = {
    ...{ format: 'petalyard-project', version: 1 },
    yarns: [{ id: 'sand', name: 'Sand' }],
    motifs: [
      {
        ...{ id: 'm', name: 'Disc', kind: 'rounds' },
        gauge: { stitch: 'sc', stitches: 20, rows: 22, over: 100, hook: 3.5 },
        foundation: { ring: 'adjustable' },
        rounds: [{ work: 'ch 1, 6 sc in ring, join' }, { work: 'ch 1, 2 sc in each st around, join' }],
      },
    ],
    colourways: [{ id: 'c', yarns: { main: 'sand' } }],
    layout: {
      ...{ kind: 'blanket', arrangement: 'straight-rows', motif: 'm', columns: 3, rows: 3 },
      cells: { fill: { pattern: 'repeat', colourways: ['c'] } },
    },
  } as Project
  const plan = planProject(project)
  const [need] = plan.yarns
  expect(need).toMatchObject({ id: 'sand', grams: { high: 0 } })
  const length = formatYarnLength(need!.metres!.expected, 'metric')
  expect(placeSummary('yarn', project, plan).lines).toEqual([`${length} in 1 yarn`, 'weight not known yet'])
  const [line] = ledgerOf(project, plan, null).yarns
  expect(line!.words).toBe(formatRange(need!.metres!, (metres) => formatYarnLength(metres, 'metric')))
  // The warning about the missing band tells the same length, waste in it.
  expect(plan.findings.find(({ code }) => code === 'yarn/no-ball-band')!.message).toContain(
    `${length} of Sand`,
  )
  // The same on the command line: no weight, but its length.
  const row = planReport(project, plan, 100, false).find((text) => /^ *Sand +not known yet/.test(text))
  expect(row).toContain(length)
})
