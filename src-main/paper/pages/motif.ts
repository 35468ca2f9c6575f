/** The motif on a page of its own: drawn with its measures, and its rounds as they were written. */
import type { Motif } from '../../../shared-types/project'
import { motifDimensions, motifFigure } from '../../../src-core/figures/motif-figure'
import { capital, lieSentence } from '../../../src-core/figures/words'
import { formatLength } from '../../../src-core/units/format'
import type { Draft, Job } from '../page'
import { Flow } from '../flow'
import { newSheet } from '../page'
import type { Sheet } from '../setting'
import { HEADINGS, PAGE_NAMES } from '../words'
import { measureBlocks, MOTIF_WORDS } from '../words-motif'
import { setChart } from './chart'
import { setRounds } from './rounds'

const DRAWING = 114
const GAP = 6
/** Room for the measure in the other units. */
const OTHER_UNITS = 19

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
  const lies = lieSentence(account.rounds)
  const notes = [
    MOTIF_WORDS.range(
      account.provenance,
      formatLength(account.range.low, job.units),
      formatLength(account.range.high, job.units),
    ),
    figure.scale > 0.9995 ? MOTIF_WORDS.lifeSize : MOTIF_WORDS.scaled(figure.scale),
    MOTIF_WORDS.numbering(job.project.hand ?? 'right', account.shape),
    lies === '' ? '' : `${capital(lies)}.`,
    MOTIF_WORDS.colours([...account.layers].reverse().map((layer) => layer.slot)),
  ]
  for (const note of notes) {
    if (note !== '') right = sheet.paragraph(note, x, right, sheet.right - x) + 1.6
  }
  y = Math.max(bottom, right) + 6
  const flow = new Flow(job, sheet, y, HEADINGS.motif)
  if (source?.kind === 'rounds' && (source.rounds ?? []).length > 0) {
    setRounds(job, flow, source)
    setChart(job, flow, source)
  }
  return flow.drafts('motif', PAGE_NAMES.motif)
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
