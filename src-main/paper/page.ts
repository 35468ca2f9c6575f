/** What the pages of a map are made from, and what becomes of them. */
import { wcagContrast } from 'culori'
import type { House } from '../../shared-types/house'
import type { Plan } from '../../shared-types/plan'
import type { Paper, SheetStyle, Terms, UnitSystem } from '../../shared-types/project'
import type { Settled } from '../../shared-types/settled'
import type { OptionalPage } from '../../shared-types/sheets'
import type { Figure, MeasureText } from '../../src-core/figures/figure'
import { INK, PAPER } from '../../src-core/figures/figure'
import type { MapGround } from '../../src-core/figures/map-ground'
import { paperSize, Sheet } from './setting'

export interface Job {
  readonly settled: Settled
  readonly plan: Plan
  readonly ground: MapGround
  readonly paper: Paper
  readonly style: SheetStyle
  readonly terms: Terms
  readonly units: UnitSystem
  readonly title: string
  /** Whose design it is; '' where nobody is named. */
  readonly designer: string
  readonly house: House
  /** With a title page, for whoever buys it: what its designer has, buys and pays stays off the sheets. */
  readonly isPattern: boolean
  /** The pattern of one motif, with nothing to put together. */
  readonly isAlone: boolean
  /** Pages that are not printed. */
  readonly leftOut: ReadonlySet<OptionalPage>
  readonly measure: MeasureText
}

export type SectionName =
  | 'title'
  | 'overview'
  | 'sheet'
  | 'key'
  | 'joins'
  | 'order'
  | 'edging'
  | 'template'
  | 'items'
  | 'materials'
  | 'progress'
  | 'motif'
  | 'cautions'
  | 'notes'
  | 'card'
  | 'cord'
  | 'packing'
  | 'labels'

/** A page that lacks its footer: how many pages there are is known only in the end. */
export interface Draft {
  readonly section: SectionName
  /** In the middle of the footer. */
  readonly name: string
  /** Bookmarks that lead here: on the first page of a section and where one is worth having. */
  readonly bookmarks: readonly string[]
  readonly sheet: Sheet
  /** Parts that begin on the page below what it is named for. */
  readonly below?: readonly { readonly section: SectionName; readonly name: string }[]
  /** Where the room below what stands on the page begins, on pages that others may be added to. */
  readonly end?: number
}

/** A finished page: the same draw list for PDF, SVG and preview. */
export interface MapPage {
  readonly number: number
  readonly section: SectionName
  /** Its own and those of parts that begin below it. */
  readonly sections: readonly SectionName[]
  readonly name: string
  readonly label: string
  readonly bookmarks: readonly string[]
  readonly figure: Figure
}

/** Text in a colour must stand out from paper so much (WCAG 2.2, 1.4.3). */
const READABLE = 4.5

/** The colour of titles and of the bar below the first: the house's own where paper is in colour. */
export function accents({ house, style }: Pick<Job, 'house' | 'style'>): {
  readonly text: string
  readonly bar: string
} {
  const bar = style === 'colour' && house.accent !== '' ? house.accent.toLowerCase() : INK
  return { bar, text: wcagContrast(bar, PAPER) >= READABLE ? bar : INK }
}

/** An empty sheet of the job's paper. */
export function newSheet(job: Job, landscape = false): Sheet {
  const { width, height } = paperSize(job.paper, landscape)
  return new Sheet(width, height, job.measure, accents(job).text)
}
