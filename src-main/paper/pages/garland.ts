/** A garland on paper: the card, what is fastened where, each motif. */
import type { GarlandAccount, GarlandItem } from '../../../shared-types/plan'
import { stitchAbbreviation } from '../../../src-core/stitches/terms'
import { formatNumber, lengthsIn } from '../../../src-core/units/format'
import type { Draft, Job } from '../page'
import { newSheet } from '../page'
import { TYPE } from '../setting'
import type { Column, Row } from '../table'
import { Table } from '../table'
import { editionText } from '../../../src-core/notation/translate'
import { PAGE_NAMES } from '../words'
import { CORD_WORDS, cordWords } from '../words-garland'
import { cardPages } from './card'
import { withMaterials } from './materials'
import { severalMotifs, withMotifs } from './motif'
import { notePages, setNotes } from './notes'

/** Every page of a garland. */
export function garlandPages(job: Job, garland: GarlandAccount): Draft[] {
  const cord = [...cardPages(job), ...notePages(job), ...cordPages(job, garland)]
  const pages = withMotifs(job, cord, severalMotifs(job))
  // What is needed for a kit stands on its packing list.
  return job.plan.kit ? pages : withMaterials(job, pages)
}

/** The words of the plan are in the project's terms; the sheet may be printed in the others. */
function wordsOf(job: Job, garland: GarlandAccount, item: GarlandItem): string {
  const from = job.settled.terms
  if (from === job.terms || garland.cord.chains === null) return item.words
  const sc = (terms: typeof from): string => `${stitchAbbreviation('sc', terms)} in `
  // Beads have names of their own.
  return item.words.startsWith(sc(from)) ? editionText(item.words, from, job.terms) : item.words
}

/** What is fastened where, from the first tie to the last. */
function cordPages(job: Job, garland: GarlandAccount): Draft[] {
  const worked = garland.cord.chains !== null
  const marks = new Map(job.ground.marks.map((mark) => [mark.id, mark.code]))
  const names = new Map(job.plan.accounts.map(({ id, name }) => [id, name]))
  const left = (heading: string): Column => ({ heading, align: 'left' })
  const right = (heading: string): Column => ({ heading, align: 'right' })
  const columns = [
    left(CORD_WORDS.number),
    left(CORD_WORDS.what),
    left(CORD_WORDS.colourway(job.terms)),
    right(CORD_WORDS.along),
    ...(worked ? [right(CORD_WORDS.chains)] : []),
    // Keeps the words off the figures, which end flush with their column.
    { ...left(''), width: 2, spacer: true },
    left(CORD_WORDS.how),
  ]
  const { cord, chainsAfter } = garland
  const along = lengthsIn(job.units, [...garland.items.map((item) => item.along), cord.length])
  const rows: Row[] = garland.items.map((item, i): Row => ({
    cells: [
      formatNumber(i + 1),
      item.bead || (names.get(item.motif) ?? item.motif),
      marks.get(item.colourway) ?? '',
      along(item.along),
      ...(worked ? [formatNumber(item.chains ?? 0)] : []),
      '',
      wordsOf(job, garland, item),
    ],
  }))
  if (rows.length > 0 && chainsAfter !== null) {
    const end = ['', CORD_WORDS.end, '', along(cord.length), formatNumber(chainsAfter), '']
    rows.push({ cells: [...end, CORD_WORDS.tie(cord.ties.chains ?? 0)] })
  }
  if (rows.length === 0) return []
  let sheet = newSheet(job)
  let y = sheet.title(CORD_WORDS.title)
  y = sheet.paragraph(cordWords(job, garland), sheet.left, y, 165)
  y = setNotes(job, sheet, y) + 3
  const table = new Table(sheet, columns, rows, { size: TYPE.list })
  const [section, name] = ['cord', PAGE_NAMES.cord] as const
  const drafts: Draft[] = [{ section, name, bookmarks: [CORD_WORDS.title], sheet }]
  table.draw(sheet, y)
  while (table.goesOn) {
    sheet = newSheet(job)
    drafts.push({ section, name, bookmarks: [], sheet })
    table.draw(sheet, sheet.top)
  }
  return drafts
}
