import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { planReport } from '../../../src-main/command/reports/plan'
import { listExamples } from '../../../src-main/documents'
import { mapPages } from '../../../src-main/paper'

const example = (name: string): Project =>
  JSON.parse(listExamples().find((entry) => entry.name === name)!.text) as Project

/** Units of the lengths that stand alone in a cell. */
const unitsOf = (cells: readonly string[]): Set<string> =>
  new Set(cells.flatMap((cell) => /^[−\d.,]+ (mm|cm)$/.exec(cell.trim())?.[1] ?? []))

/** The words that stand flush right at one place of a sheet, column by column. */
function columnsOf(pages: ReturnType<typeof mapPages>): string[][] {
  const columns = new Map<string, string[]>()
  pages.forEach((page, number) => {
    for (const item of page.figure.items as readonly { text?: string; x?: number; anchor?: string }[]) {
      if (item.text === undefined || item.anchor !== 'end') continue
      const key = `${number} ${(item.x ?? 0).toFixed(0)}`
      columns.set(key, [...(columns.get(key) ?? []), item.text])
    }
  })
  return [...columns.values()]
}

describe('a column of lengths', () => {
  it.each(['orchard-gate-garland', 'quince-wreath-cushion'])(
    'has one unit on the command line: %s',
    (name) => {
      const project = example(name)
      const lines = planReport(project, planProject(project), 120, true)
      const rows = lines.filter((line) => /^ *\d+ {2}\S/.test(line) && /\d (mm|cm) {2}/.test(line))
      expect(rows.length).toBeGreaterThan(3)
      const lengths = rows.flatMap((row) => row.split(/ {2,}/))
      expect(unitsOf(lengths).size).toBe(1)
    },
  )

  it.each(['orchard-gate-garland', 'quince-wreath-cushion', 'pond-edge-bag'])(
    'has one unit on paper: %s',
    (name) => {
      const project = example(name)
      const columns = columnsOf(mapPages(planProject(project), { date: new Date(0) }))
      const measured = columns.filter((column) => unitsOf(column).size > 0)
      expect(measured.length).toBeGreaterThan(0)
      for (const column of measured) expect([unitsOf(column).size, column]).toEqual([1, column])
    },
  )
})
