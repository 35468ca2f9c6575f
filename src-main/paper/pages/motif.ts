/** The motif on a page of its own: drawn with its measures, and its rounds as they were written. */
import type { MotifAccount } from '../../../shared-types/plan'
import type { Motif } from '../../../shared-types/project'
import type { ColourwayMark } from '../../../src-core/figures/marks'
import { motifDimensions, motifFigure } from '../../../src-core/figures/motif-figure'
import type { Part } from '../../../src-core/figures/part'
import { partOf } from '../../../src-core/figures/part'
import { capital, lieSentence } from '../../../src-core/figures/words'
import { leadReading } from '../../../src-core/motif/ruler'
import { formatLength } from '../../../src-core/units/format'
import type { Draft, Job } from '../page'
import { Flow } from '../flow'
import { newSheet } from '../page'
import { shorten, TYPE } from '../setting'
import type { Sheet } from '../setting'
import { HEADINGS, PAGE_NAMES } from '../words'
import { FIGURE_WORDS } from '../words-figures'
import { measureBlocks, MOTIF_WORDS } from '../words-motif'
import { setChart } from './chart'
import { measuredJoining, setJoiningRounds } from './joining-round'
import { setInstructions, setRounds } from './rounds'

const DRAWING = 114
const GAP = 6
/** Room between motifs that share a page, for a rule. */
const BETWEEN = 10
/** Room for the measure in the other units. */
const OTHER_UNITS = 19

/** A motif for a page: its account, and the colourways that it is made in. */
interface MotifOnPaper {
  readonly account: MotifAccount
  readonly marks: readonly ColourwayMark[]
}

/** The motifs of a plan of several, each with the colourways that it is placed in and how often it is. */
export const severalMotifs = ({ plan, ground }: Job): MotifOnPaper[] =>
  plan.accounts.map((account) => {
    const own = plan.motifs.filter(({ motif }) => motif === account.id)
    const marks = ground.marks.flatMap((mark) => {
      const count = own.filter(({ colourway }) => colourway === mark.id).length
      return count > 0 ? [{ ...mark, count }] : []
    })
    return { account, marks }
  })

/** The colourways in which a motif stands in openings, each with how often it does. */
function fillerMarksOf({ plan, ground }: Job, { id }: MotifAccount): ColourwayMark[] {
  const own = plan.fillers.filter(({ motif }) => motif === id)
  return ground.fillerMarks.flatMap((mark) => {
    const fillers = own.filter(({ colourway }) => colourway === mark.id).length
    return fillers > 0 ? [{ ...mark, fillers }] : []
  })
}

/** The motifs that a blanket is made of, and those that fill its openings. */
export function blanketMotifs(job: Job): MotifOnPaper[] {
  const { motif, fillerMotifs, accounts } = job.plan
  const own =
    accounts.length > 0 ? severalMotifs(job) : motif ? [{ account: motif, marks: job.ground.marks }] : []
  return [
    ...own,
    ...fillerMotifs.flatMap((account) =>
      own.some((each) => each.account.id === account.id)
        ? []
        : [{ account, marks: fillerMarksOf(job, account) }],
    ),
  ]
}

/**
 * The pages of motifs, each drawn at its full size where the page is wide enough. One in written rounds begins a
 * page; one that was measured stands below the motif before it where there is room.
 */
export function motifPages(job: Job, motifs: readonly MotifOnPaper[]): Draft[] {
  if (motifs.length === 0) return []
  const nameOf = ({ account }: MotifOnPaper): string =>
    motifs.length > 1 && account.name ? account.name : HEADINGS.motif
  const sheet = newSheet(job)
  const flow = new Flow(job, sheet, sheet.top, nameOf(motifs[0]!))
  motifs.forEach((each, i) => {
    const source = job.settled.motifs.find((motif) => motif.id === each.account.id)
    const written = source?.kind === 'rounds' && (source.rounds ?? []).length > 0 ? source : null
    if (i > 0) {
      const scratch = newSheet(job)
      const height = setMotif(job, scratch, scratch.top, each, source) - scratch.top
      if (!flow.need(written ? Infinity : BETWEEN + height) && flow.y > flow.sheet.top) {
        flow.sheet.rule(flow.y + BETWEEN / 2)
        flow.y += BETWEEN
      }
      flow.mark(nameOf(each))
    }
    flow.y = setMotif(job, flow.sheet, flow.y, each, source) + GAP
    if (source) setInstructions(job, flow, source)
    if (written) setRounds(job, flow, written)
    setJoiningRounds(job, flow, each.account)
    if (written) setChart(job, flow, written)
  })
  return flow.drafts('motif', PAGE_NAMES.motif)
}

/** A motif drawn with its measures and notes; returns the y below. */
function setMotif(
  job: Job,
  sheet: Sheet,
  top: number,
  { account, marks }: MotifOnPaper,
  source: Motif | undefined,
): number {
  const name = account.name || HEADINGS.motif
  const lower = { size: TYPE.heading + 3, weight: 'bold', as: 'H1' } as const
  const y =
    top > sheet.top
      ? sheet.text(
          shorten(name, sheet.inner, job.measure, lower.size, lower.weight),
          sheet.left,
          top,
          lower,
        ) + 3
      : sheet.title(name) + 3
  const figure = motifFigure(account, {
    width: DRAWING,
    across: 100,
    units: job.units,
    terms: job.terms,
    hand: job.settled.hand,
    mark: marks[0] ?? null,
    look: job.style,
    measure: job.measure,
  })
  const bottom = sheet.figure(figure, sheet.left, y, FIGURE_WORDS.motif(name))
  const x = sheet.left + DRAWING + GAP
  let right = sheet.heading(HEADINGS.measures, x, y)
  right = measures(job, account, sheet, x, right, source)
  const lies = lieSentence(account.rounds)
  const share = leadReading(account) / account.overTips || 1
  const notes = [
    MOTIF_WORDS.range(
      account.provenance,
      formatLength(account.range.low * share, job.units),
      formatLength(account.range.high * share, job.units),
    ),
    figure.scale > 0.9995 ? MOTIF_WORDS.lifeSize : MOTIF_WORDS.scaled(figure.scale),
    MOTIF_WORDS.numbering(job.settled.hand, account.shape, job.terms),
    lies === '' ? '' : `${capital(lies)}.`,
    MOTIF_WORDS.colours(
      [...account.layers].reverse().map((layer) => layer.slot),
      job.terms,
    ),
    measuredJoining(job, account),
  ]
  for (const note of notes) {
    if (note !== '') right = sheet.paragraph(note, x, right, sheet.right - x) + 1.6
  }
  return Math.max(bottom, right)
}

/** Names on the left, both units on the right; returns the y below. */
function measures(
  job: Job,
  account: MotifAccount,
  sheet: Sheet,
  x: number,
  y: number,
  source: Motif | undefined,
): number {
  for (const { heading, rows } of measureBlocks(source, motifDimensions(account, job.terms), job.units)) {
    if (heading !== '') y = sheet.text(heading, x, y)
    sheet.rule(y, x, sheet.right, 0.3)
    const table = sheet.own('Table')
    for (const [label, value, other] of rows) {
      y += 0.6
      const row = partOf('TR', table)
      const cell = (): Part => partOf('TD', row)
      sheet.text(label, x, y, { as: partOf('TH', row, { scope: 'Row' }) })
      const end = sheet.right - OTHER_UNITS
      sheet.text(value, end, y, { anchor: 'end', weight: 'bold', as: cell() })
      y = sheet.text(other, sheet.right, y, { anchor: 'end', as: cell() }) + 0.6
      sheet.rule(y, x, sheet.right, 0.12)
    }
    y += 3
  }
  return y
}
