/** The order list and the yarn table for a spreadsheet: RFC 4180, UTF-8, numbers unrounded with a point. */
import type { Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { colourwayMarks, fillerMarks } from '../../src-core/figures/marks'
import type { ColourwayMark } from '../../src-core/figures/marks'
import { pieceAt } from '../../src-core/layout/placed'
import { GRAMS_PER_OUNCE, METRES_PER_YARD } from '../../src-core/units/quantity'

export type Cell = string | number | null

/** A text that a spreadsheet would run as a formula gets a leading apostrophe, which it shows as text. */
const harmless = (text: string): string => (/^[=+\-@\t\r]/.test(text) ? `'${text}` : text)

function cell(value: Cell): string {
  if (value === null) return ''
  if (typeof value === 'number') return String(value)
  const text = harmless(value)
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}

/** Rows as CSV, the heading first. */
export const csvTable = (rows: readonly (readonly Cell[])[]): string =>
  rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('')

/** One line for each motif in the order of work; fillers follow the last motif round them, without a number. */
export function orderCsv(project: Project, plan: Plan): string {
  const marks = colourwayMarks(project, plan)
  const markOf = (all: readonly ColourwayMark[], id: string | undefined): ColourwayMark | undefined =>
    all.find((mark) => mark.id === id)
  const ofFillers = fillerMarks(project, plan, marks)
  const after = new Map<string, Cell[][]>()
  for (const { after: last, words, filler } of plan.fillerSteps) {
    const mark = markOf(ofFillers, plan.fillers[filler]?.colourway)
    after.set(last, [
      ...(after.get(last) ?? []),
      [null, null, null, mark?.code ?? '', mark?.name ?? '', words],
    ])
  }
  const rows = plan.order.flatMap((step): Cell[][] => {
    const motif = pieceAt(plan, step.motif)
    const mark = markOf(marks, motif?.colourway)
    const line: Cell[] = [
      Number(motif?.label ?? Number.NaN) || null,
      motif?.row ?? null,
      motif?.column ?? null,
      mark?.code ?? '',
      mark?.name ?? '',
      step.words,
    ]
    return [line, ...(after.get(step.motif) ?? [])]
  })
  return csvTable([['number', 'row', 'motif', 'colourway', 'name', 'how it is joined'], ...rows])
}

/** One line for each yarn, in metric and imperial. */
export function yarnCsv(project: Project, plan: Plan): string {
  const yarns = new Map((project.yarns ?? []).map((yarn) => [yarn.id, yarn]))
  const heading = [
    'yarn',
    'grams',
    'grams low',
    'grams high',
    'ounces',
    'metres',
    'yards',
    'balls',
    'grams on hand',
    'balls to buy',
    'grams left over',
    'cost',
    'currency',
  ]
  const rows = plan.yarns.map((need): Cell[] => {
    const yarn = yarns.get(need.id)
    const metres = need.metres?.expected ?? null
    return [
      yarn?.name || need.id,
      need.grams.expected,
      need.grams.low,
      need.grams.high,
      need.grams.expected / GRAMS_PER_OUNCE,
      metres,
      metres === null ? null : metres / METRES_PER_YARD,
      need.balls,
      yarn?.onHandGrams ?? 0,
      need.toBuy,
      need.leftover,
      need.cost,
      need.cost === null ? '' : (project.currency ?? 'EUR'),
    ]
  })
  return csvTable([heading, ...rows])
}
