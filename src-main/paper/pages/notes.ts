/** The designer's notes: at the head of every kind of sheet where they are short, else on pages of their own. */
import { breakLines } from '../../../src-core/figures/lines'
import { partOf } from '../../../src-core/figures/part'
import { Flow } from '../flow'
import type { Draft, Job } from '../page'
import { newSheet } from '../page'
import { Sheet, TYPE } from '../setting'
import { HEADINGS, PAGE_NAMES, seeNotes } from '../words'

/** Longer notes would push what the sheet is for off it. */
const MOST_LINES = 5
const WIDTH = 170
const AIR = 1.5

/** The notes, a paragraph for each line. */
export const noteParagraphs = ({ settled }: Job): string[] =>
  settled.notes
    .split(/[\n\r\u0085\u2028\u2029]+/)
    .map((line) => line.trim())
    .filter((line) => line !== '')

/** The notes where they are short enough to stand with something else; nothing where they have pages of their own. */
export const shortNotes = (job: Job): string[] =>
  linesOf(job).length > MOST_LINES ? [] : noteParagraphs(job)

/** What stands at the head of a sheet: the notes, or where they are. */
function headLines(job: Job): string[] {
  const lines = linesOf(job)
  return lines.length > MOST_LINES ? [seeNotes] : lines
}

const linesOf = (job: Job): string[] =>
  noteParagraphs(job).flatMap((text) => breakLines(text, WIDTH, job.measure, TYPE.body))

/** Height that the notes take at the head of a sheet; 0 without any. */
export function notesHeight(job: Job): number {
  const { length } = headLines(job)
  return length === 0 ? 0 : length * Sheet.line(TYPE.body) + AIR
}

/** Writes the notes below what stands at the head of a sheet; returns the y below. */
export function setNotes(job: Job, sheet: Sheet, y: number): number {
  const short = shortNotes(job)
  const texts = short.length > 0 || noteParagraphs(job).length === 0 ? short : [seeNotes]
  const top = texts.length > 0 ? y + AIR : y
  return texts.reduce((below, text) => sheet.paragraph(text, sheet.left, below, WIDTH), top)
}

/**
 * Pages for notes that are too long for the head of a sheet. With `later` page 1 has no room for short ones either:
 * they stand with the materials, and here where those are left out.
 */
export function notePages(job: Job, later = false): Draft[] {
  const { length } = linesOf(job)
  const homeless = later && length > 0 && job.leftOut.has('materials')
  if (length <= MOST_LINES && !homeless) return []
  const sheet = newSheet(job)
  const flow = new Flow(job, sheet, sheet.title(HEADINGS.notes) + 2, HEADINGS.notes)
  for (const paragraph of noteParagraphs(job)) {
    const as = partOf('P')
    for (const line of breakLines(paragraph, WIDTH, job.measure, TYPE.body)) {
      flow.need(Sheet.line(TYPE.body))
      flow.y = flow.sheet.text(line, flow.sheet.left, flow.y, { as })
    }
    flow.y += AIR
  }
  return flow.drafts('notes', PAGE_NAMES.notes)
}
