/** The motif on a page of its own: drawn with its measures, and its rounds as they were written. */
import type { Motif, RoundsMotif } from '../../../shared-types/project'
import { motifDimensions, motifFigure } from '../../../src-core/figures/motif-figure'
import { formatLength } from '../../../src-core/units/format'
import type { Draft, Job } from '../page'
import { newSheet } from '../page'
import type { Sheet } from '../setting'
import { TYPE } from '../setting'
import { HEADINGS, PAGE_NAMES } from '../words'
import { measureBlocks, MOTIF_WORDS } from '../words-motif'

const DRAWING = 114
const GAP = 6
const ROUND_LABEL = 34
/** Room for the measure in the other units. */
const OTHER_UNITS = 19

type Round = NonNullable<RoundsMotif['rounds']>[number]

/** The pages of the motif; nothing when the plan has none. */
export function motifPages(job: Job): Draft[] {
  const account = job.plan.motif
  if (!account) return []
  const source = job.project.motifs?.find((motif) => motif.id === account.id)
  const sheet = newSheet(job)
  let y = sheet.title(account.name || HEADINGS.motif) + 3
  const mark = job.ground.marks[0] ?? null
  const figure = motifFigure(account, {
    width: DRAWING,
    across: 100,
    units: job.units,
    hand: job.project.hand ?? 'right',
    mark,
    look: job.style,
    measure: job.measure,
  })
  const bottom = sheet.figure(figure, sheet.left, y)
  const x = sheet.left + DRAWING + GAP
  let right = sheet.heading(HEADINGS.measures, x, y)
  right = measures(job, sheet, x, right, source)
  const notes = [
    MOTIF_WORDS.range(
      account.provenance,
      formatLength(account.range.low, job.units),
      formatLength(account.range.high, job.units),
    ),
    figure.scale > 0.9995 ? MOTIF_WORDS.lifeSize : MOTIF_WORDS.scaled(figure.scale),
    MOTIF_WORDS.numbering(job.project.hand ?? 'right', account.shape),
    MOTIF_WORDS.colours([...account.layers].reverse().map((layer) => layer.slot)),
  ]
  for (const note of notes) {
    if (note !== '') right = sheet.paragraph(note, x, right, sheet.right - x) + 1.6
  }
  y = Math.max(bottom, right) + 6
  const list = source?.kind === 'rounds' ? (source.rounds ?? []) : []
  return setRounds(job, sheet, list, y)
}

/** Names on the left, both units on the right; returns the y below. */
function measures(job: Job, sheet: Sheet, x: number, y: number, source: Motif | undefined): number {
  const account = job.plan.motif!
  for (const { heading, rows } of measureBlocks(source, motifDimensions(account), job.units)) {
    if (heading !== '') y = sheet.text(heading, x, y)
    sheet.rule(y, x, sheet.right, 0.3)
    for (const [label, value, other] of rows) {
      y += 0.6
      sheet.text(label, x, y)
      sheet.text(value, sheet.right - OTHER_UNITS, y, { anchor: 'end', weight: 'bold' })
      y = sheet.text(other, sheet.right, y, { anchor: 'end' }) + 0.6
      sheet.rule(y, x, sheet.right, 0.12)
    }
    y += 3
  }
  return y
}

/** Rounds word for word, with the colour section of each, from a place on the motif's first page. */
function setRounds(job: Job, first: Sheet, list: readonly Round[], top: number): Draft[] {
  const page = (sheet: Sheet, bookmarks: readonly string[]): Omit<Draft, 'end'> => ({
    section: 'motif',
    name: PAGE_NAMES.motif,
    bookmarks,
    sheet,
  })
  if (list.length === 0) return [{ ...page(first, [HEADINGS.motif]), end: top }]
  const drafts: Draft[] = []
  const heading = MOTIF_WORDS.rounds(job.project.terms ?? 'US')
  let sheet = first
  let y = sheet.heading(heading, sheet.left, top)
  const width = Math.min(150, sheet.inner - ROUND_LABEL)
  list.forEach((round, i) => {
    const height = sheet.heightOf(round.work, width) + 1.8
    if (y + height > sheet.bottom) {
      drafts.push(page(sheet, drafts.length === 0 ? [HEADINGS.motif] : []))
      sheet = newSheet(job)
      y = sheet.heading(heading, sheet.left, sheet.top)
    }
    sheet.text(MOTIF_WORDS.round(i + 1), sheet.left, y, { weight: 'bold' })
    if (round.slot) {
      const x = sheet.left + sheet.measure(`${MOTIF_WORDS.round(i + 1)}  `, TYPE.body, 'bold')
      sheet.text(round.slot, x, y)
    }
    y = sheet.paragraph(round.work, sheet.left + ROUND_LABEL, y, width) + 1.8
  })
  return [...drafts, { ...page(sheet, drafts.length === 0 ? [HEADINGS.motif] : []), end: y + 4 }]
}
