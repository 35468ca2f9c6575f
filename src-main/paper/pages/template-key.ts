/** The key of a template: colourways with their letters, textures and yarns. */
import type { Entry } from '../entry'
import { drawEntry, entryHeight } from '../entry'
import type { Draft, Job } from '../page'
import { newSheet } from '../page'
import type { Sheet } from '../setting'
import { HEADINGS, PAGE_NAMES } from '../words'
import { keyEntry } from './card'

const COLUMNS = 4
const GAP = 6

/** Entries that stand side by side. */
interface KeyRow {
  readonly entries: readonly Entry[]
  readonly height: number
}

const columnWidth = (sheet: Sheet): number => (sheet.inner - (COLUMNS - 1) * GAP) / COLUMNS

/** All rows of the key, as high as their highest entry. */
export function templateKeyRows(job: Job, sheet: Sheet): KeyRow[] {
  const entries = job.ground.marks.map((mark) => keyEntry(job, mark))
  return Array.from({ length: Math.ceil(entries.length / COLUMNS) }, (_, i) => {
    const row = entries.slice(i * COLUMNS, (i + 1) * COLUMNS)
    return {
      entries: row,
      height: Math.max(...row.map((each) => entryHeight(sheet, each, columnWidth(sheet)))),
    }
  })
}

/** Draws rows of the key; returns the y below. */
export function setKey(sheet: Sheet, rows: readonly KeyRow[], top: number): number {
  const width = columnWidth(sheet)
  const list = sheet.own('L')
  return rows.reduce((y, { entries, height }) => {
    entries.forEach((entry, column) =>
      drawEntry(sheet, list, entry, sheet.left + column * (width + GAP), y, width),
    )
    return y + height
  }, top)
}

/** The key on pages of its own, where the first page has no room for all of it. */
export function keyPages(job: Job): Draft[] {
  const drafts: Draft[] = []
  let rows = templateKeyRows(job, newSheet(job))
  while (rows.length > 0) {
    const sheet = newSheet(job)
    const top = sheet.title(HEADINGS.key(job.terms)) + 3
    let below = top
    const over = rows.findIndex(({ height }) => (below += height) > sheet.bottom)
    const fit = Math.max(1, over < 0 ? rows.length : over)
    setKey(sheet, rows.slice(0, fit), top)
    rows = rows.slice(fit)
    const bookmarks = drafts.length === 0 ? [PAGE_NAMES.key] : []
    drafts.push({ section: 'key', name: PAGE_NAMES.key, bookmarks, sheet })
  }
  return drafts
}
