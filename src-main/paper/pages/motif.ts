/** The motif on a page of its own: drawn with its measures, and its rounds as they were written. */
import type { MotifAccount } from '../../../shared-types/plan'
import type { Motif, RoundsMotif } from '../../../shared-types/project'
import { workedRounds } from '../../../src-core/accounts'
import { lieWords } from '../../../src-core/figures/lie-words'
import type { ColourwayMark } from '../../../src-core/figures/marks'
import { motifDimensions, motifFigure } from '../../../src-core/figures/motif-figure'
import type { Part } from '../../../src-core/figures/part'
import { blanketOf } from '../../../src-core/plans/layouts'
import { partOf } from '../../../src-core/figures/part'
import { capital } from '../../../src-core/figures/words'
import { halfNotes } from '../../../src-core/layout/halves'
import { hasInstructions } from '../../../src-core/motif/instructions'
import { leadMeasure } from '../../../src-core/motif/ruler'
import { abbreviationsIn, signsIn, type Abbreviation } from '../../../src-core/notation/abbreviations'
import { formatRough } from '../../../src-core/units/format'
import type { Draft, Job } from '../page'
import { BETWEEN as BELOW, withPart } from '../below'
import { Flow } from '../flow'
import { newSheet } from '../page'
import type { Sheet } from '../setting'
import { textsBeside } from '../texts-beside'
import { HEADINGS, PAGE_NAMES } from '../words'
import { joinedAsYouGo } from '../words-joining'
import { FIGURE_WORDS } from '../words-figures'
import { instructionsHeading, measureBlocks, MOTIF_WORDS } from '../words-motif'
import { besideMotifs, besideNotes, fillerMarksOf } from './beside'
import { setChart } from './chart'
import { measuredJoining, setJoiningRounds } from './joining-round'
import { gaugeWords, plannedGauge } from '../gauge-words'
import { instructionsOf, setAbbreviations, setHalf, setInstructions, setRounds } from './rounds'

const GAP = 6
const AIR = 1.6
/** mm. In a wider column the numbers would stand too far from what they are of. */
const WIDEST_MEASURES = 90
/** Room between motifs that share a page, for a rule. */
const BETWEEN = 8
/** Room for the measure in the other units. */
const OTHER_UNITS = 19

/** How a motif is drawn on its page: width of the drawing and of the motif in it (mm), and where the measures stand. */
interface Setting {
  readonly width: number
  readonly across: number
  readonly measures: 'beside' | 'below'
  /** One of several: its measures stand right under its name. */
  readonly isLittle?: boolean
}

const BESIDE: Setting = { width: 114, across: 100, measures: 'beside' }
/** For motifs that are wider than that at their full size. */
const WIDE: Setting = { width: 186, across: 160, measures: 'below' }
/** From this scale on nobody could tell. */ const LIFE_SIZE = 0.9995
/** For motifs whose chart shows them large. */
const SMALL: Setting = { width: 92, across: 62, measures: 'beside' }
/** Where that alone keeps the chart on the motif's page. */
const SMALLEST: Setting = { width: 76, across: 46, measures: 'beside' }
/** For motifs no larger than that, where there are several: words have the room that the drawing leaves. */
const LITTLE: Setting = { width: 84, across: 62, measures: 'beside', isLittle: true }

/** A motif for a page: its account, and the colourways that it is made in. */
export interface MotifOnPaper {
  readonly account: MotifAccount
  readonly marks: readonly ColourwayMark[]
}

/** A motif with how it is set and what is said beside its drawing. */
interface MotifToSet extends MotifOnPaper {
  readonly source: Motif | undefined
  readonly setting: Setting
  readonly notes: readonly string[]
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
 * The pages with those of motifs: as few as there can be, and on them the motifs as large as there is room for, at most
 * at their full size. One in written rounds begins a page; one that was measured stands below what comes before it
 * where there is room.
 */
export function withMotifs(job: Job, before: readonly Draft[], placed: readonly MotifOnPaper[]): Draft[] {
  const motifs = [...placed, ...besideMotifs(job, placed)]
  if (motifs.length === 0 || job.leftOut.has('motif')) return [...before]
  const isLarge = (each: MotifOnPaper): boolean => drawn(job, each, BESIDE).scale < LIFE_SIZE
  const isLittle = (each: MotifOnPaper): boolean =>
    motifs.length > 1 && !isWritten(job, each) && drawn(job, each, LITTLE).scale > LIFE_SIZE
  const beside = (each: MotifOnPaper): Setting => (isLittle(each) ? LITTLE : BESIDE)
  const hasChart = ({ account }: MotifOnPaper): boolean => {
    const motif = sourceOf(job, account)
    return motif?.kind === 'rounds' && workedRounds(job.settled, motif).drawing() !== null
  }
  const ways: ((motif: MotifOnPaper) => Setting)[] = [
    ...(motifs.some(isLarge) ? [(motif: MotifOnPaper) => (isLarge(motif) ? WIDE : beside(motif))] : []),
    beside,
    ...(motifs.some(hasChart)
      ? [SMALL, SMALLEST].map((small) => (motif: MotifOnPaper) => (hasChart(motif) ? small : beside(motif)))
      : []),
  ]
  const { top } = newSheet(job)
  let best: { way: (typeof ways)[number]; drafts: Draft[] } | null = null
  for (const way of ways) {
    const drafts = pagesAs(job, motifs, way, top)
    if (!best || drafts.length < best.drafts.length) best = { way, drafts }
    if (best.drafts.length === 1) break
  }
  const { way, drafts } = best!
  if (isWritten(job, motifs[0]!)) return [...before, ...drafts]
  const list = motifs.some((each) => isWritten(job, each)) ? [] : abbreviationsBeside(job, motifs, way)
  // No page more for the list where what comes before has room for it.
  const costs = list.length > 0 && pagesAs(job, motifs, way, top, list).length > drafts.length
  const isEarlier = costs && fitsBelow(before, (from) => abbreviationPages(job, list, from))
  const earlier = isEarlier ? withPart(job, before, (from) => abbreviationPages(job, list, from)) : before
  return withPart(job, earlier, (from) => pagesAs(job, motifs, way, from, isEarlier ? [] : list))
}

/** Whether a part has room on the last page, below what stands there. */
function fitsBelow(before: readonly Draft[], set: (from: number) => Draft[]): boolean {
  const last = before.at(-1)
  if (last?.end === undefined || last.end + BELOW >= last.sheet.bottom) return false
  return set(last.end + BELOW).length === 1
}

function abbreviationPages(job: Job, list: readonly Abbreviation[], from: number): Draft[] {
  const flow = new Flow(job, newSheet(job), from, MOTIF_WORDS.abbreviations)
  setAbbreviations(flow, list)
  return flow.drafts('motif', MOTIF_WORDS.abbreviations)
}

const sourceOf = ({ settled }: Job, account: MotifAccount): Motif | undefined =>
  settled.motifs.find(({ id }) => id === account.id)

/** A motif in written rounds; nothing for others. */
function writtenOf(source: Motif | undefined): RoundsMotif | null {
  return source?.kind === 'rounds' && (source.rounds ?? []).length > 0 ? source : null
}

const isWritten = (job: Job, { account }: MotifOnPaper): boolean => writtenOf(sourceOf(job, account)) !== null

function pagesAs(
  job: Job,
  motifs: readonly MotifOnPaper[],
  settingOf: (motif: MotifOnPaper) => Setting,
  top: number,
  abbreviations: readonly Abbreviation[] = [],
): Draft[] {
  const nameOf = ({ account }: MotifOnPaper): string =>
    motifs.length > 1 && account.name ? account.name : HEADINGS.motif
  const list = motifs.map((each): MotifToSet => {
    const source = sourceOf(job, each.account)
    const setting = fitting(job, each, source, settingOf(each))
    return { ...each, source, setting, notes: notesOf(job, each, setting) }
  })
  const shared = sharedNotes(job, list)
  const flow = new Flow(job, newSheet(job), top, nameOf(motifs[0]!))
  list.forEach((each, i) => {
    const { source } = each
    const written = writtenOf(source)
    const scratch = newSheet(job)
    const head = (sheet: Sheet, y: number): number => (i === 0 ? setShared(sheet, y, shared) : y)
    const begins = head(scratch, flow.y)
    const height = setMotif(job, scratch, begins, each, shared) - flow.y
    const air = i > 0 && flow.y > flow.sheet.top ? BETWEEN : 0
    if (!flow.need(written ? Infinity : air + height) && air > 0) {
      flow.sheet.rule(flow.y + BETWEEN / 2)
      flow.y += BETWEEN
    }
    if (i > 0) flow.mark(nameOf(each))
    flow.y = head(flow.sheet, flow.y)
    flow.y = setMotif(job, flow.sheet, flow.y, each, shared) + (each.setting.isLittle ? AIR : GAP)
    if (source && !stepsBeside(job, flow.sheet, each)) setInstructions(job, flow, source)
    if (written) setRounds(job, flow, written, each.account)
    setHalf(job, flow, each.account)
    setJoiningRounds(job, flow, each.account)
    if (written) setChart(job, flow, written)
  })
  setAbbreviations(flow, abbreviations)
  return flow.drafts('motif', motifs.length > 1 ? PAGE_NAMES.motifs : PAGE_NAMES.motif)
}

/** What is said in abbreviations of motifs without written rounds: how they are worked, joined and edged. */
function abbreviationsBeside(
  job: Job,
  motifs: readonly MotifOnPaper[],
  settingOf: (motif: MotifOnPaper) => Setting,
): Abbreviation[] {
  const texts = motifs.flatMap((each) => {
    const source = sourceOf(job, each.account)
    return [
      ...notesOf(job, each, fitting(job, each, source, settingOf(each))),
      ...(source ? instructionsOf(job, source) : []),
      ...textsBeside(job, each.account.id),
    ]
  })
  const used = abbreviationsIn(texts, job.terms)
  const gauge = gaugeWords(job, plannedGauge(job))
  // The gauge says what its stitch is: it alone needs no list.
  const all = used.length > 0 && gauge ? abbreviationsIn([...texts, gauge], job.terms) : used
  return [...all, ...signsIn(texts)]
}

/** What holds for every one of several motifs that were measured, and is said once for all of them. */
function sharedNotes(job: Job, list: readonly MotifToSet[]): readonly string[] {
  const [first, ...others] = list
  if (!first || others.length === 0 || list.some((each) => isWritten(job, each))) return []
  return first.notes.filter((note) => others.every(({ notes }) => notes.includes(note)))
}

/** The head of several motifs; returns the y below. */
function setShared(sheet: Sheet, y: number, shared: readonly string[]): number {
  if (shared.length === 0) return y
  const below = sheet.titleAt(HEADINGS.motifs, y)
  const told = shared.map((note) => (note === MOTIF_WORDS.lifeSize ? MOTIF_WORDS.lifeSizes : note))
  return sheet.paragraph(told.join(' '), sheet.left, below, sheet.inner) + 2 * AIR
}

/** Each try is so much smaller than the one before (ours). */
const SMALLER = 0.94
/** mm. Smaller than this a drawing tells nothing more; words that need as much room run on. */
const LEAST_WIDTH = 60

/** The setting, with the drawing as much smaller as its words need room on a page of their own. */
function fitting(job: Job, each: MotifOnPaper, source: Motif | undefined, setting: Setting): Setting {
  const scratch = newSheet(job)
  const told = { ...each, source, setting, notes: notesOf(job, each, setting) }
  const fits = setMotif(job, scratch, scratch.top, told, []) <= scratch.bottom
  if (fits || setting.width < LEAST_WIDTH) return setting
  const { width, across } = setting
  return fitting(job, each, source, { ...setting, width: width * SMALLER, across: across * SMALLER })
}

const drawn = (job: Job, { account, marks }: MotifOnPaper, { width, across }: Setting) =>
  motifFigure(account, {
    ...{ width, across, units: job.units, terms: job.terms, hand: job.settled.hand },
    ...{ mark: marks[0] ?? null, look: job.style, measure: job.measure },
  })

/** What is said beside the drawing of a motif. */
function notesOf(job: Job, each: MotifOnPaper, setting: Setting): string[] {
  const { account } = each
  const { scale } = drawn(job, each, setting)
  const [lead, leadWords] = leadMeasure(account, job.terms)
  const share = lead / account.overTips || 1
  const source = sourceOf(job, account)
  return [
    ...besideNotes(job, account),
    MOTIF_WORDS.range(
      account.provenance,
      formatRough(account.range.low * share, job.units),
      formatRough(account.range.high * share, job.units),
      leadWords,
      job.terms,
    ),
    lieWords(account),
    scale > LIFE_SIZE ? MOTIF_WORDS.lifeSize : MOTIF_WORDS.scaled(scale),
    MOTIF_WORDS.numbering(job.settled.hand, account, job.terms),
    ...onMap(job, account),
    MOTIF_WORDS.colours(
      [...account.layers].reverse().map((layer) => layer.slot),
      job.terms,
    ),
    source && !hasInstructions(source) ? MOTIF_WORDS.elsewhere : '',
    measuredJoining(job, account),
    ...halfNotes(job.plan, account.id).map(capital),
  ].filter((note) => note !== '')
}

/** Where the words of a motif stand, and how wide they are. */
function columnOf(
  sheet: Sheet,
  { measures, width }: Setting,
): { readonly x: number; readonly width: number } {
  if (measures === 'below') return { x: sheet.left, width: (sheet.inner - GAP) / 2 }
  return { x: sheet.left + width + GAP, width: sheet.inner - width - GAP }
}

/** mm. Instructions that take no more stand beside the drawing, below the notes. */
const STEPS_BESIDE = 50

/** The designer's words on how a motif is worked, where they are short enough to stand beside its drawing. */
function stepsBeside(job: Job, sheet: Sheet, { source, setting }: MotifToSet): readonly string[] | null {
  if (!source || writtenOf(source) || setting.measures === 'below') return null
  const lines = instructionsOf(job, source)
  const { width } = columnOf(sheet, setting)
  const height = lines.reduce((sum, line) => sum + sheet.heightOf(line, width) + 1.2, 0)
  return lines.length > 0 && height <= STEPS_BESIDE ? lines : null
}

/** A motif drawn with its measures and notes, but those that are said of all; returns the y below. */
function setMotif(job: Job, sheet: Sheet, top: number, each: MotifToSet, shared: readonly string[]): number {
  const { account, source, setting } = each
  const name = account.name || HEADINGS.motif
  const y = top > sheet.top ? sheet.lowerTitle(name, top) + 1 : sheet.title(name) + 3
  const figure = drawn(job, each, setting)
  const bottom = sheet.figure(figure, sheet.left, y, FIGURE_WORDS.motif(name))
  const isBelow = setting.measures === 'below'
  const { x, width } = columnOf(sheet, setting)
  const start = isBelow ? bottom + 3 : y
  const measured = measures(
    job,
    account,
    sheet,
    {
      ...{ x, width: Math.min(width, WIDEST_MEASURES) },
      y: setting.isLittle ? start : sheet.heading(HEADINGS.measures, x, start),
    },
    source,
  )
  const aside = isBelow ? x + width + GAP : x
  let below = isBelow ? start : measured
  for (const note of each.notes)
    if (!shared.includes(note)) below = sheet.paragraph(note, aside, below, width) + AIR
  const steps = stepsBeside(job, sheet, each)
  if (steps) {
    below = sheet.heading(instructionsHeading(steps), x, below + AIR)
    for (const line of steps) below = sheet.paragraph(line, x, below, width) + 1.2
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
