/** The motif on a page of its own: drawn with its measures, and its rounds as they were written. */
import type { MotifAccount } from '../../../shared-types/plan'
import type { Motif } from '../../../shared-types/project'
import { workedRounds } from '../../../src-core/accounts'
import type { ColourwayMark } from '../../../src-core/figures/marks'
import { motifDimensions, motifFigure } from '../../../src-core/figures/motif-figure'
import type { Part } from '../../../src-core/figures/part'
import { blanketOf } from '../../../src-core/plans/layouts'
import { partOf } from '../../../src-core/figures/part'
import { capital, lieSentence } from '../../../src-core/figures/words'
import { leadMeasure } from '../../../src-core/motif/ruler'
import { formatLength } from '../../../src-core/units/format'
import type { Draft, Job } from '../page'
import { Flow } from '../flow'
import { newSheet } from '../page'
import type { Sheet } from '../setting'
import { HEADINGS, joinedAsYouGo, PAGE_NAMES } from '../words'
import { FIGURE_WORDS } from '../words-figures'
import { measureBlocks, MOTIF_WORDS } from '../words-motif'
import { setChart } from './chart'
import { measuredJoining, setJoiningRounds } from './joining-round'
import { setInstructions, setRounds } from './rounds'

const GAP = 6
/** Room between motifs that share a page, for a rule. */
const BETWEEN = 10
/** Room for the measure in the other units. */
const OTHER_UNITS = 19

/** How a motif is drawn on its page: width of the drawing and of the motif in it (mm), and where the measures stand. */
interface Setting {
  readonly width: number
  readonly across: number
  readonly measures: 'beside' | 'below'
}

const BESIDE: Setting = { width: 114, across: 100, measures: 'beside' }
/** For motifs that are wider than that at their full size. */
const WIDE: Setting = { width: 186, across: 160, measures: 'below' }
/** From this scale on nobody could tell. */
const LIFE_SIZE = 0.9995
/** For motifs whose chart shows them large. */
const SMALL: Setting = { width: 92, across: 62, measures: 'beside' }
/** Where that alone keeps the chart on the motif's page. */
const SMALLEST: Setting = { width: 76, across: 46, measures: 'beside' }

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
 * The pages of motifs: as few as there can be, and on them the motifs as large as there is room for, at most at their
 * full size. One in written rounds begins a page; one that was measured stands below the motif before it where there
 * is room.
 */
export function motifPages(job: Job, motifs: readonly MotifOnPaper[]): Draft[] {
  if (motifs.length === 0 || job.leftOut.has('motif')) return []
  const isLarge = (each: MotifOnPaper): boolean => drawn(job, each, BESIDE).scale < LIFE_SIZE
  const hasChart = ({ account }: MotifOnPaper): boolean => {
    const motif = sourceOf(job, account)
    return motif?.kind === 'rounds' && workedRounds(job.settled, motif).drawing() !== null
  }
  const ways: ((motif: MotifOnPaper) => Setting)[] = [
    ...(motifs.some(isLarge) ? [(motif: MotifOnPaper) => (isLarge(motif) ? WIDE : BESIDE)] : []),
    () => BESIDE,
    ...(motifs.some(hasChart)
      ? [SMALL, SMALLEST].map((small) => (motif: MotifOnPaper) => (hasChart(motif) ? small : BESIDE))
      : []),
  ]
  let best: Draft[] | null = null
  for (const way of ways) {
    const drafts = pagesAs(job, motifs, way)
    if (!best || drafts.length < best.length) best = drafts
    if (best.length === 1) break
  }
  return best!
}

const sourceOf = ({ settled }: Job, account: MotifAccount): Motif | undefined =>
  settled.motifs.find(({ id }) => id === account.id)

function pagesAs(
  job: Job,
  motifs: readonly MotifOnPaper[],
  settingOf: (motif: MotifOnPaper) => Setting,
): Draft[] {
  const nameOf = ({ account }: MotifOnPaper): string =>
    motifs.length > 1 && account.name ? account.name : HEADINGS.motif
  const sheet = newSheet(job)
  const flow = new Flow(job, sheet, sheet.top, nameOf(motifs[0]!))
  motifs.forEach((each, i) => {
    const source = sourceOf(job, each.account)
    const written = source?.kind === 'rounds' && (source.rounds ?? []).length > 0 ? source : null
    const setting = fitting(job, each, source, settingOf(each))
    if (i > 0) {
      const scratch = newSheet(job)
      const height = setMotif(job, scratch, scratch.top, each, source, setting) - scratch.top
      if (!flow.need(written ? Infinity : BETWEEN + height) && flow.y > flow.sheet.top) {
        flow.sheet.rule(flow.y + BETWEEN / 2)
        flow.y += BETWEEN
      }
      flow.mark(nameOf(each))
    }
    flow.y = setMotif(job, flow.sheet, flow.y, each, source, setting) + GAP
    if (source) setInstructions(job, flow, source)
    if (written) setRounds(job, flow, written)
    setJoiningRounds(job, flow, each.account)
    if (written) setChart(job, flow, written)
  })
  return flow.drafts('motif', PAGE_NAMES.motif)
}

/** Each try is so much smaller than the one before (ours). */
const SMALLER = 0.94
/** mm. Smaller than this a drawing tells nothing more; words that need as much room run on. */
const LEAST_WIDTH = 60

/** The setting, with the drawing as much smaller as its words need room on a page of their own. */
function fitting(job: Job, each: MotifOnPaper, source: Motif | undefined, setting: Setting): Setting {
  const scratch = newSheet(job)
  const fits = setMotif(job, scratch, scratch.top, each, source, setting) <= scratch.bottom
  if (fits || setting.width < LEAST_WIDTH) return setting
  const { width, across } = setting
  return fitting(job, each, source, { ...setting, width: width * SMALLER, across: across * SMALLER })
}

const drawn = (job: Job, { account, marks }: MotifOnPaper, { width, across }: Setting) =>
  motifFigure(account, {
    ...{ width, across, units: job.units, terms: job.terms, hand: job.settled.hand },
    ...{ mark: marks[0] ?? null, look: job.style, measure: job.measure },
  })

/** A motif drawn with its measures and notes; returns the y below. */
function setMotif(
  job: Job,
  sheet: Sheet,
  top: number,
  each: MotifOnPaper,
  source: Motif | undefined,
  setting: Setting,
): number {
  const { account } = each
  const name = account.name || HEADINGS.motif
  const y = top > sheet.top ? sheet.lowerTitle(name, top) + 3 : sheet.title(name) + 3
  const figure = drawn(job, each, setting)
  const bottom = sheet.figure(figure, sheet.left, y, FIGURE_WORDS.motif(name))
  const isBelow = setting.measures === 'below'
  const column = isBelow ? (sheet.inner - GAP) / 2 : sheet.right - sheet.left - setting.width - GAP
  const x = isBelow ? sheet.left : sheet.left + setting.width + GAP
  const start = isBelow ? bottom + 3 : y
  const measured = measures(
    job,
    account,
    sheet,
    { x, y: sheet.heading(HEADINGS.measures, x, start), width: column },
    source,
  )
  const lies = lieSentence(account.rounds)
  const [lead, leadWords] = leadMeasure(account, job.terms)
  const share = lead / account.overTips || 1
  const notes = [
    MOTIF_WORDS.range(
      account.provenance,
      formatLength(account.range.low * share, job.units),
      formatLength(account.range.high * share, job.units),
      leadWords,
      job.terms,
    ),
    figure.scale > LIFE_SIZE ? MOTIF_WORDS.lifeSize : MOTIF_WORDS.scaled(figure.scale),
    MOTIF_WORDS.numbering(job.settled.hand, account.shape, job.terms),
    ...onMap(job, account),
    lies === '' ? '' : `${capital(lies)}.`,
    MOTIF_WORDS.colours(
      [...account.layers].reverse().map((layer) => layer.slot),
      job.terms,
    ),
    measuredJoining(job, account),
  ]
  const aside = isBelow ? x + column + GAP : x
  let below = isBelow ? start : measured
  for (const note of notes) {
    if (note !== '') below = sheet.paragraph(note, aside, below, column) + 1.6
  }
  return Math.max(bottom, measured, below)
}

/** How it lies on the map of a blanket, where that is another way than it is drawn here, and where it is begun there. */
function onMap({ plan, settled }: Job, { id, shape, petals, anchors }: MotifAccount): string[] {
  if (!blanketOf(settled) || (shape !== 'petals' && shape !== 'straight')) return []
  const own = plan.motifs.filter(({ motif }) => motif === undefined || motif === id)
  const [placed] = own
  if (!placed) return []
  const sector = 360 / petals
  const turnOf = (turn: number): number => ((turn % sector) + sector) % sector
  const rotated = turnOf(placed.turn)
  const isUpright = Math.min(rotated, sector - rotated) < 1
  const isAlike = own.every(({ turn }) => Math.abs(turnOf(turn) - rotated) < 1)
  // Squares and octagons are drawn on a side, hexagons and flowers on a tip.
  const isPointed = anchors.some(
    ({ kind, x, y }) => (kind === 'tip' || kind === 'corner') && y < 0 && Math.abs(x) < 1e-3 * -y,
  )
  const joined = plan.joins.length > 0
  return [
    isUpright || !isAlike ? '' : MOTIF_WORDS.lies(rotated, sector, shape, isPointed),
    joined ? MOTIF_WORDS.first(shape, joinedAsYouGo(settled.joining)) : '',
  ]
}

/** Names on the left, both units on the right; returns the y below. */
function measures(
  job: Job,
  account: MotifAccount,
  sheet: Sheet,
  { x, width, ...place }: { readonly x: number; readonly y: number; readonly width: number },
  source: Motif | undefined,
): number {
  let { y } = place
  const edge = x + width
  for (const { heading, rows } of measureBlocks(source, motifDimensions(account, job.terms), job.units)) {
    if (heading !== '') y = sheet.text(heading, x, y)
    sheet.rule(y, x, edge, 0.3)
    const table = sheet.own('Table')
    for (const [label, value, other] of rows) {
      y += 0.6
      const row = partOf('TR', table)
      const cell = (): Part => partOf('TD', row)
      sheet.text(label, x, y, { as: partOf('TH', row, { scope: 'Row' }) })
      const end = edge - OTHER_UNITS
      sheet.text(value, end, y, { anchor: 'end', weight: 'bold', as: cell() })
      y = sheet.text(other, edge, y, { anchor: 'end', as: cell() }) + 0.6
      sheet.rule(y, x, edge, 0.12)
    }
    y += 3
  }
  return y
}
