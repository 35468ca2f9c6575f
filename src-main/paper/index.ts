/** The assembly map as pages, and as a PDF. */
import { formatNumber } from '../../src-core/units/format'
import { counted } from '../../src-core/figures/words'
import { NO_HOUSE } from '../../shared-types/house'
import type { House } from '../../shared-types/house'
import type { Plan } from '../../shared-types/plan'
import type { Paper, SheetStyle, Terms } from '../../shared-types/project'
import type { LabelCount, OptionalPage, SheetName } from '../../shared-types/sheets'
import { mapGround } from '../../src-core/figures/map-ground'
import { FOOTER_FURNITURE } from '../../src-core/figures/part'
import { projectSentence, sentenceText } from '../../src-core/figures/sentence'
import { byKind } from '../../src-core/plans/layouts'
import { templateGround } from '../../src-core/figures/applique-ground'
import { isSparse } from './below'
import type { Draft, Job, MapPage, SectionName } from './page'
import { cardPages } from './pages/card'
import { withCautions } from './pages/cautions'
import { withEdging } from './pages/edging'
import { garlandPages } from './pages/garland'
import { withJoins } from './pages/joins'
import { labelPages, MOST_LABELS } from './pages/labels'
import { withMaterials } from './pages/materials'
import type { Filling } from './pages/materials'
import { blanketMotifs, withMotifs } from './pages/motif'
import { notePages, shortNotes } from './pages/notes'
import { orderPages } from './pages/order'
import { notesStandLater, overviewIsEnough, overviewPages } from './pages/overview'
import { packingPages } from './pages/packing'
import { notBegun, pagesLeftOut } from '../../src-core/progress/for-buyers'
import { progressPages } from './pages/progress'
import { planSheets, sheetPages } from './pages/sheets'
import { templatePages } from './pages/template'
import { titlePage } from './pages/title'
import type { ChosenFont } from './pdf/fonts/chosen'
import type { Faces } from './pdf/faces'
import { measureWith, readFaces } from './pdf/faces'
import { writePdf } from './pdf/file'
import { legibleItems } from './pdf/legible'
import { FOOTER, MARGIN, shorten, TYPE } from './setting'
import { creditedTitle, footerLeft, footerRight, UNTITLED } from './words'

export { chartSvg, hasRepeat, renderCharts } from './chart'
export type { MapPage } from './page'
export { isMadeHere } from './pdf/metadata'
export { readFaces } from './pdf/faces'
export type { Faces } from './pdf/faces'
export { figureToSvg } from './svg'

export interface MapOptions {
  /** Each defaults to what the project's sheet says, else A4, ink and the project's terms. */
  readonly paper?: Paper
  readonly style?: SheetStyle
  readonly terms?: Terms
  /** A template seen from the back of the fabric. */
  readonly reverse?: boolean
  /** What is printed; left out, everything but the packing list and the labels, and the title page where the project or the house asks for it. */
  readonly sheets?: readonly SheetName[]
  /** How many labels; left out, a page to copy. */
  readonly labels?: LabelCount
  /** Whose name, logo and colour the paper carries; nobody's unless told. */
  readonly house?: House
  /** Pages that are left out; those of the house style unless told, and of what is sold one's own progress. */
  readonly leaveOut?: readonly OptionalPage[]
  /** With a title page or without; where it is not said project and house style decide. */
  readonly titlePage?: boolean
  /** For scripts that the shipped face lacks, in the order in which they are looked through. */
  readonly fonts?: readonly ChosenFont[]
  /** Pages to keep, from 1, in any order; they keep their numbers. */
  readonly pages?: readonly number[]
  /** The version of the project that the footer names; the engine asks no clock. */
  readonly date: Date
}

export interface RenderOptions extends MapOptions {
  /** Version of the program, for the file's information. */
  readonly version: string
  /** Share done, 0 to 1. */
  readonly onProgress?: (share: number) => void
  readonly signal?: AbortSignal
}

/** Pages were asked for that the map does not have. */
export class NoSuchPageError extends Error {
  constructor(
    readonly asked: readonly number[],
    readonly pages: number,
  ) {
    super(`the map has pages 1 to ${pages}; there is no page ${asked.join(', ')}`)
    this.name = 'NoSuchPageError'
  }
}

/** Sheets were asked for that the project has not got, or more of them than make sense. */
export class NoSuchSheetError extends Error {
  constructor(message: string) {
    super(message)
    this.name = 'NoSuchSheetError'
  }
}

function jobOf(whole: Plan, options: MapOptions, faces: Faces): Job {
  const { settled } = whole
  const house = options.house ?? NO_HOUSE
  const isAlone = options.sheets?.includes('pattern') ?? false
  const isPattern =
    isAlone || options.sheets?.includes('title') || (options.titlePage ?? hasTitlePage({ settled, house }))
  const isForBuyer = isPattern || Boolean(whole.kit)
  const leftOut = new Set(pagesLeftOut({ chosen: options.leaveOut, house: house.leaveOut, isForBuyer }))
  const plan = isForBuyer && leftOut.has('progress') ? notBegun(whole) : whole
  const style = options.style ?? settled.sheet.style
  return {
    settled,
    plan,
    ground: mapGround(plan, style),
    paper: options.paper ?? settled.sheet.paper,
    style,
    terms: options.terms ?? settled.sheet.terms,
    units: settled.units,
    title: settled.title || UNTITLED,
    designer: settled.designer,
    house,
    isPattern,
    isAlone,
    leftOut,
    measure: measureWith(faces),
  }
}

/** The sheets that a page belongs to, by its section. */
const SHEET_OF: Readonly<Partial<Record<SectionName, SheetName>>> = {
  title: 'title',
  card: 'card',
  packing: 'packing',
  labels: 'labels',
}

/** What the project is put together by: map, template, or card and list along the cord. */
function mainPages(job: Job, reverse: boolean): Draft[] {
  const look = { marks: job.ground.marks, style: job.style }
  const pages = byKind(job.plan, {
    blanket: ({ motifs }) => motifs.length > 0 && mapOfBlanket(job),
    garland: ({ garland, motifs }) => garland && motifs.length > 0 && garlandPages(job, garland),
    applique: (plan) => {
      const template = templateGround(plan, reverse, look)
      return template && template.items.length > 0 && templatePages(job, template)
    },
  })
  if (pages) return [...pages, ...progressPages(job)]
  const first = [...overviewPages(job, null), ...notePages(job)]
  return withCautions(job, withMotifs(job, first, blanketMotifs(job)))
}

/** Whether the card is its first page, with a kit and without. */
const beginsWithCard = ({ plan }: Job): boolean =>
  byKind(plan, {
    blanket: () => false,
    garland: ({ garland }) => garland !== undefined,
    applique: () => false,
  })

function mapOfBlanket(job: Job): Draft[] {
  const filled = blanketPages(job, 'all')
  if (!isSparse(filled)) return filled
  // What runs over from the page that was filled is next to nothing on a page of its own: more of it goes over, or all.
  const ways = (['none', 'tables'] as const).map((fills) => blanketPages(job, fills))
  const good = ways.filter((pages) => pages.length <= filled.length)
  return good.find((pages) => !isSparse(pages)) ?? good[0] ?? filled
}

function blanketPages(job: Job, fills: Filling): Draft[] {
  const sheets = overviewIsEnough(job) ? null : planSheets(job)
  const later = notesStandLater(job)
  const map = [
    ...overviewPages(job, sheets?.tiling ?? null),
    ...notePages(job, later),
    ...(sheets ? sheetPages(job, sheets) : []),
  ]
  const made = withEdging(job, [...withJoins(job, map), ...orderPages(job)])
  const pages = withMaterials(job, made, later ? shortNotes(job) : [], fills)
  return withCautions(job, withMotifs(job, pages, blanketMotifs(job)))
}

/** The pattern of one motif: what it takes, how it is worked, its notes and cautions. */
function patternPages(job: Job): Draft[] {
  if (job.plan.motifs.length !== 1) return []
  // No overview has room for notes here: short ones stand among the materials.
  const pages = withMaterials(job, notePages(job, true), shortNotes(job))
  const made = withCautions(job, withMotifs(job, pages, blanketMotifs(job)))
  return [titlePage(job, made), ...made]
}

/** The card of a kit, the packing list and the labels, as far as they are asked for. */
function kitPages(job: Job, asked: ReadonlySet<SheetName>, labels: LabelCount): Draft[] {
  const { kit } = job.plan
  if (!kit) return []
  if (asked.has('labels') && labels === 'run' && kit.count > MOST_LABELS)
    throw new NoSuchSheetError(
      `${counted(kit.count, 'label')} are too many for one file; at most ${formatNumber(MOST_LABELS)} can be printed, or one page to copy`,
    )
  return [
    ...(asked.has('card') && !beginsWithCard(job)
      ? [...cardPages(job), ...(asked.has('map') ? [] : notePages(job))]
      : []),
    ...(asked.has('packing') ? packingPages(job, kit) : []),
    ...(asked.has('labels') ? labelPages(job, kit, labels) : []),
  ]
}

/** What somebody else may get: costs and price stand on the packing list, which is asked for by name. */
const EVERYTHING: readonly SheetName[] = ['map', 'card']

const SHEET_OWNERS: Readonly<Record<SheetName, string>> = {
  title: 'every project',
  map: 'projects that can be planned',
  pattern: 'projects of one motif',
  card: 'garlands and for layouts with a kit',
  packing: 'layouts with a kit',
  labels: 'layouts with a kit',
}

/** Whether a title page is printed where nobody asks for sheets by name. */
const hasTitlePage = ({ settled, house }: Pick<Job, 'settled' | 'house'>): boolean =>
  settled.sheet.titlePage ?? house.titlePage

function draftPages(
  job: Job,
  { reverse = false, sheets, labels = 'page', titlePage: isAskedFor }: MapOptions,
): Draft[] {
  const asked = new Set(sheets ?? EVERYTHING)
  const pattern = asked.has('pattern') ? patternPages(job) : []
  if (pattern.length > 0) return pattern
  if (isAskedFor ?? (!sheets && hasTitlePage(job))) asked.add('title')
  const isMade = asked.has('map') || (asked.has('card') && beginsWithCard(job))
  const main = isMade ? mainPages(job, reverse) : []
  // Notes go with the map and with the card alike.
  const isAsked = ({ section }: Draft): boolean =>
    asked.has(SHEET_OF[section] ?? 'map') || (section === 'notes' && asked.has('card'))
  const behind = [...main, ...kitPages(job, asked, labels)].filter(isAsked)
  const drafts = asked.has('title') ? [titlePage(job, behind), ...behind] : behind
  const there = new Set(drafts.map(({ section }) => SHEET_OF[section] ?? 'map'))
  const missing = sheets?.find((name) => !there.has(name))
  if (missing)
    throw new NoSuchSheetError(
      `there is no sheet '${missing}' of this project: it is for ${SHEET_OWNERS[missing]}`,
    )
  return drafts
}

const FOOT_GAP = 6

/** Title and version on the left, the page's place among the others on the right, its name between them. */
function footer(job: Job, { sheet, name }: Draft, number: number, of: number, date: Date): void {
  const y = sheet.height - MARGIN - FOOTER + 3.4
  const style = { size: TYPE.foot, as: FOOTER_FURNITURE } as const
  const wide = (text: string): number => sheet.measure(text, TYPE.foot, 'regular')
  const right = footerRight(number, of)
  const { hand } = job.settled
  const version = footerLeft('', date, job.terms, hand)
  const room = sheet.inner - wide(right) - wide(name) - wide(version) - 2 * FOOT_GAP
  const who = creditedTitle(job.title, job.designer)
  const left = footerLeft(shorten(who, room, sheet.measure, TYPE.foot, 'regular'), date, job.terms, hand)
  sheet.rule(sheet.height - MARGIN - FOOTER + 2.4)
  sheet.text(left, sheet.left, y, style)
  const middle = (sheet.left + wide(left) + sheet.right - wide(right)) / 2
  sheet.text(name, middle, y, { ...style, anchor: 'middle' })
  sheet.text(right, sheet.right, y, { ...style, anchor: 'end' })
}

function finish(job: Job, draft: Draft, number: number, of: number, date: Date, faces: Faces): MapPage {
  const { sheet, name, section, below = [] } = draft
  footer(job, draft, number, of, date)
  return {
    number,
    section,
    sections: [section, ...below.map((part) => part.section)],
    name,
    label: `${number} ${name}`,
    bookmarks: draft.bookmarks,
    // Chosen fonts decide letter by letter what is spelled.
    figure: {
      width: sheet.width,
      height: sheet.height,
      items: faces.others.length > 0 ? sheet.items : legibleItems(sheet.items),
    },
  }
}

function pagesWith(plan: Plan, options: MapOptions, faces: Faces): MapPage[] {
  const job = jobOf(plan, options, faces)
  const drafts = draftPages(job, options)
  const wanted = options.pages ? new Set(options.pages) : null
  const missing = [...(wanted ?? [])].filter(
    (page) => !Number.isInteger(page) || page < 1 || page > drafts.length,
  )
  if (missing.length > 0) throw new NoSuchPageError(missing, drafts.length)
  return drafts.flatMap((draft, i) =>
    !wanted || wanted.has(i + 1) ? [finish(job, draft, i + 1, drafts.length, options.date, faces)] : [],
  )
}

/** The pages of the assembly map as draw lists, for previews and for SVG, set in `faces`. */
export const mapPages = (
  plan: Plan,
  options: MapOptions,
  faces: Faces = readFaces(options.fonts),
): MapPage[] => pagesWith(plan, options, faces)

/**
 * The assembly map as a PDF. Same project, plan, options and date: same bytes. Throws NoSuchPageError for pages
 * that it does not have, and the signal's reason when it is cancelled.
 */
export async function renderMap(plan: Plan, options: RenderOptions): Promise<Uint8Array> {
  const { settled } = plan
  const faces = readFaces(options.fonts)
  options.signal?.throwIfAborted()
  const pages = pagesWith(plan, options, faces)
  const terms = options.terms ?? settled.sheet.terms
  return writePdf(
    pages,
    {
      title: settled.title || UNTITLED,
      author: settled.designer,
      subject: sentenceText(projectSentence(plan, terms)),
      language: terms === 'UK' ? 'en-GB' : 'en-US',
      date: options.date,
      producer: `Petalyard ${options.version}`,
    },
    { faces, signal: options.signal, onPage: (done, of) => options.onProgress?.(done / of) },
  )
}
