/** Cautions, where they apply: below what else leaves room, else on a page of their own. */
import type { Draft, Job } from '../page'
import { newSheet } from '../page'
import { Sheet, TYPE } from '../setting'
import { cautions, HEADINGS, PAGE_NAMES } from '../words'

const WIDTH = 150
const BETWEEN = 3.5

/** The pages with the cautions added to the last of them that has room for them, or after all. */
export function withCautions(job: Job, pages: readonly Draft[]): Draft[] {
  const list = cautions(job.settled, job.terms)
  if (list.length === 0) return [...pages]
  const empty = newSheet(job)
  const height = list.reduce(
    (sum, { text }) => sum + Sheet.line(TYPE.heading) + 1.6 + empty.heightOf(text, WIDTH) + BETWEEN,
    Sheet.line(TYPE.heading + 3) + 8,
  )
  const at = pages.findLastIndex(({ sheet, end }) => end !== undefined && end + height <= sheet.bottom)
  const page = pages[at]
  if (page?.end !== undefined) {
    const { sheet, end } = page
    sheet.rule(end + 2)
    const y = sheet.lowerTitle(HEADINGS.cautions, end + 6)
    write(sheet, y + 1.5, list)
    return pages.with(at, { ...page, bookmarks: [...page.bookmarks, HEADINGS.cautions] })
  }
  write(empty, empty.title(HEADINGS.cautions) + 3, list)
  return [
    ...pages,
    { section: 'cautions', name: PAGE_NAMES.cautions, bookmarks: [HEADINGS.cautions], sheet: empty },
  ]
}

function write(sheet: Sheet, y: number, list: ReturnType<typeof cautions>): void {
  for (const { title, text } of list) {
    y = sheet.heading(title, sheet.left, y)
    y = sheet.paragraph(text, sheet.left, y, WIDTH) + BETWEEN
  }
}
