/** How far the work has come, once something is made: what is left, how far weighed yarn goes, and day by day. */
import {
  dayWords,
  forecastWords,
  hasBegun,
  leftWords,
  madeWords,
  yarnLeftWords,
} from '../../../src-core/progress/words'
import { paceWords } from '../../../src-core/progress/pace'
import { formatNumber } from '../../../src-core/units/format'
import type { Draft, Job } from '../page'
import { newSheet } from '../page'
import { Table } from '../table'
import type { Column, Row } from '../table'
import { HEADINGS, PAGE_NAMES, tickSentence } from '../words'

const COLUMNS: readonly Column[] = [
  { heading: 'Day', align: 'left' },
  { heading: 'Made', align: 'right' },
]

/** Nothing is printed of a work that is not begun. */
export function progressPages(job: Job): Draft[] {
  const { plan, settled, units, terms } = job
  const { progress } = plan
  if (!hasBegun(progress) || job.leftOut.has('progress')) return []
  const drafts: Draft[] = []
  const open = () => {
    const sheet = newSheet(job)
    const bookmarks = drafts.length === 0 ? [HEADINGS.progress] : []
    drafts.push({ section: 'progress', name: PAGE_NAMES.progress, bookmarks, sheet })
    return sheet
  }
  let sheet = open()
  let y = sheet.title(HEADINGS.progress) + 1
  const yarn = yarnLeftWords(progress, settled.yarns, units)
  const pace = paceWords(progress, terms)
  // The drawings of cords and panels have no ticks.
  const ticks = plan.motif ? ` ${tickSentence(plan)}` : ''
  const told = [
    `${madeWords(plan, job.terms)}.${ticks}`,
    `Left: ${leftWords(plan)}.`,
    ...(pace ? [pace] : []),
    ...(yarn ? [`Yarn still to be used: ${yarn}.`] : []),
    ...progress.forecast.map((forecast) => forecastWords(forecast, settled.yarns, plan.motifs.length, units)),
  ]
  for (const text of told) y = sheet.paragraph(text, sheet.left, y, sheet.inner) + 1.6
  if (progress.days.length === 0) return drafts
  y = sheet.heading(HEADINGS.days, sheet.left, y + 3)
  const rows: readonly Row[] = progress.days.map(({ day, pieces }) => ({
    cells: [dayWords(day, terms), formatNumber(pieces)],
  }))
  const table = new Table(sheet, COLUMNS, rows)
  table.draw(sheet, y)
  while (table.goesOn) {
    sheet = open()
    table.draw(sheet, sheet.top)
  }
  return drafts
}
