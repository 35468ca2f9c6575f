/** Cautions, where they apply. */
import type { Draft, Job } from '../page'
import { newSheet } from '../page'
import { cautions, HEADINGS, PAGE_NAMES } from '../words'

/** The page of cautions, or nothing. */
export function cautionPages(job: Job): Draft[] {
  const list = cautions(job.project, job.terms)
  if (list.length === 0) return []
  const sheet = newSheet(job)
  let y = sheet.title(HEADINGS.cautions) + 3
  for (const { title, text } of list) {
    y = sheet.heading(title, sheet.left, y)
    y = sheet.paragraph(text, sheet.left, y, 140) + 5
  }
  return [{ section: 'cautions', name: PAGE_NAMES.cautions, bookmark: HEADINGS.cautions, sheet }]
}
