/** The motif on a page of its own: drawn with its measures, and its rounds as they were written. */
import type { Motif } from '../../../shared-types/project'
import { motifDimensions, motifFigure } from '../../../src-core/figures/motif-figure'
import { formatLength } from '../../../src-core/units/format'
import type { Draft, Job } from '../page'
import { newSheet } from '../page'
import type { Sheet } from '../setting'
import { TYPE } from '../setting'
import { HEADINGS, PAGE_NAMES } from '../words'
import { measureRows, MOTIF_WORDS } from '../words-motif'

const DRAWING = 104
const GAP = 8
const ROUND_LABEL = 34

/** The pages of the motif; nothing when the plan has none. */
export function motifPages(job: Job): Draft[] {
  const account = job.plan.motif
  if (!account) return []
  const source = job.project.motifs?.find((motif) => motif.id === account.id)
  const sheet = newSheet(job)
  const drafts: Draft[] = [{ section: 'motif', name: PAGE_NAMES.motif, bookmark: HEADINGS.motif, sheet }]
  let y = sheet.title(account.name || HEADINGS.motif) + 3
  const mark = job.ground.marks[0] ?? null
  const figure = motifFigure(account, {
    width: DRAWING,
    across: 84,
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
  const scale = figure.scale > 0.9995 ? MOTIF_WORDS.lifeSize : MOTIF_WORDS.scaled(figure.scale)
  right = sheet.paragraph(
    `${scale} ${MOTIF_WORDS.numbering(job.project.hand ?? 'right', account.shape)}`,
    x,
    right + 2,
    sheet.right - x,
  )
  y = Math.max(bottom, right) + 6
  if (source?.kind === 'rounds') drafts.push(...rounds(job, sheet, source, y))
  return drafts
}

function measures(job: Job, sheet: Sheet, x: number, y: number, source: Motif | undefined): number {
  const account = job.plan.motif!
  const rows = measureRows(account, source, motifDimensions(account), job.units)
  for (const [label, value, other] of rows) {
    sheet.text(label, x, y)
    sheet.text(value, sheet.right - 19, y, { anchor: 'end', weight: 'bold' })
    y = sheet.text(other, sheet.right, y, { anchor: 'end' }) + 0.6
    sheet.rule(y - 0.3, x, sheet.right, 0.12)
  }
  const range = MOTIF_WORDS.range(
    account.provenance,
    formatLength(account.range.low, job.units),
    formatLength(account.range.high, job.units),
  )
  return sheet.paragraph(range, x, y + 1.5, sheet.right - x)
}

/** Rounds word for word, with the colour section of each. */
function rounds(job: Job, first: Sheet, source: Extract<Motif, { kind: 'rounds' }>, top: number): Draft[] {
  const list = source.rounds ?? []
  if (list.length === 0) return []
  const drafts: Draft[] = []
  let sheet = first
  let y = sheet.heading(MOTIF_WORDS.rounds(job.project.terms ?? 'US'), sheet.left, top)
  const width = Math.min(150, sheet.inner - ROUND_LABEL)
  list.forEach((round, i) => {
    const height = sheet.heightOf(round.work, width) + 1.8
    if (y + height > sheet.bottom) {
      sheet = newSheet(job)
      drafts.push({ section: 'motif', name: PAGE_NAMES.motif, sheet })
      y = sheet.heading(MOTIF_WORDS.rounds(job.project.terms ?? 'US'), sheet.left, sheet.top)
    }
    sheet.text(MOTIF_WORDS.round(i + 1), sheet.left, y, { weight: 'bold' })
    if (round.slot) {
      const x = sheet.left + sheet.measure(`${MOTIF_WORDS.round(i + 1)}  `, TYPE.body, 'bold')
      sheet.text(round.slot, x, y)
    }
    y = sheet.paragraph(round.work, sheet.left + ROUND_LABEL, y, width) + 1.8
  })
  return drafts
}
