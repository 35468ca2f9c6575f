/** Page 1: what it will be, the map, the key, how to read and join it; and the key's own page where it must. */
import type { Bounds, Figure } from '../../../src-core/figures/figure'
import { keySwatch } from '../../../src-core/figures/key-swatch'
import { joinMarksSentence } from '../../../src-core/figures/join-marks'
import { breakLines } from '../../../src-core/figures/lines'
import { keyMarks, MapPainter, smallestNumberedScale } from '../../../src-core/figures/map'
import { overviewMap, overviewScale } from '../../../src-core/figures/overview-map'
import type { ColourwayMark } from '../../../src-core/figures/marks'
import { projectSentence, sentenceText } from '../../../src-core/figures/sentence'
import { accountAt } from '../../../src-core/layout/placed'
import { remembered } from '../../../src-core/memo'
import type { Tiling } from '../../../src-core/figures/tiles'
import type { Entry } from '../entry'
import { drawEntry, entryHeight } from '../entry'
import type { Draft, Job } from '../page'
import { newSheet } from '../page'
import { Sheet, TYPE } from '../setting'
import { notesHeight, setNotes } from './notes'
import { HEADINGS, howToRead, joiningAdvice, keyCount, NO_COLOURWAY, PAGE_NAMES, slotWords } from '../words'

const SWATCH = 13
const COLUMN_GAP = 10

/** Room between head, map and foot of the page. */
const AIR = 7

interface Setting {
  readonly landscape: boolean
  /** Whether key and words stand under the map, or on a page of their own. */
  readonly together: boolean
}

const keyColumns = (sheet: Sheet): number => (sheet.width > sheet.height ? 3 : 2)

/** Least room between the words and the footer. */
const CLEAR = 3
/** Between the key and the words. */
const BELOW_KEY = 3

/** Height of the words in two columns, with their headings. */
function wordsHeight(sheet: Sheet, texts: readonly string[]): number {
  const width = (sheet.inner - COLUMN_GAP) / 2
  return Math.max(...texts.map((text) => sheet.heightOf(text, width))) + Sheet.line(TYPE.heading) + 1.6
}

/** Height of the block below the map: rule, key and words. */
function footHeight(job: Job, sheet: Sheet, together: boolean, texts: readonly string[]): number {
  if (!together) return CLEAR
  const key = keyHeights(job, sheet, keyMarks(job.ground)).reduce((sum, height) => sum + height, 0)
  return AIR + 4 + key + BELOW_KEY + wordsHeight(sheet, texts) + CLEAR
}

/** The project's sentence as it is printed. */
export const sentenceOf = (job: Job): string => sentenceText(projectSentence(job.plan, job.terms))

const LEAD_WIDTH = 165

function headHeight(job: Job, notes: boolean): number {
  const lines = breakLines(sentenceOf(job), LEAD_WIDTH, job.measure, TYPE.lead).length
  return (
    Sheet.line(TYPE.title, 1.2) + 2 + lines * Sheet.line(TYPE.lead) + (notes ? notesHeight(job) : 0) + AIR
  )
}

function mapRoom(
  job: Job,
  setting: Setting,
  texts: readonly string[],
  notes: boolean,
): { width: number; height: number } {
  const sheet = newSheet(job, setting.landscape)
  const foot = footHeight(job, sheet, setting.together, texts)
  return { width: sheet.inner, height: sheet.bottom - sheet.top - headHeight(job, notes) - foot }
}

const SETTINGS: readonly Setting[] = [
  { landscape: false, together: true },
  { landscape: true, together: true },
  { landscape: false, together: false },
  { landscape: true, together: false },
]

/** As many colourways as stand under a map on one page. */
const KEY_LIMIT = 8

/** A map with less room than this many mm is no overview. */
const LEAST_MAP = 40

/** The words of a page come with sheets and without, each with rings and without: asked of again and again. */
const REMEMBERED = 4

interface Choice {
  readonly setting: Setting
  readonly numbered: boolean
  /** Whether the notes stand at the head of the page. */
  readonly notes: boolean
}

/** The first way in which the numbers can be read; else the one with the largest map. Notes take no room that it needs. */
const chooseSetting = remembered((job: Job, texts: readonly string[]): Choice => {
  const [bare, noted] = [false, true].map((notes) => settingFor(job, texts, notes)) as [Choice, Choice]
  return noted.setting === bare.setting && noted.numbered === bare.numbered ? noted : bare
}, REMEMBERED)

/** Whether page 1 has no room for the notes, so that they belong further on. */
export const notesStandLater = (job: Job): boolean => !chooseSetting(job, overviewTexts(job, null)).notes

function settingFor(job: Job, texts: readonly string[], notes: boolean): Choice {
  const wanted = smallestNumberedScale(job.ground)
  let largest: { setting: Setting; scale: number } | null = null
  for (const setting of SETTINGS) {
    if (setting.together && keyMarks(job.ground).length > KEY_LIMIT) continue
    const room = mapRoom(job, setting, texts, notes)
    if (room.height < LEAST_MAP) continue
    const scale = overviewScale(job.ground, room.width, room.height)
    if (scale >= wanted) return { setting, numbered: true, notes }
    if (!largest || scale > largest.scale * 1.4) largest = { setting, scale }
  }
  return { setting: largest?.setting ?? SETTINGS[2]!, numbered: false, notes }
}

/** Whether the whole map can be read on page 1, or wants sheets of its own. */
export function overviewIsEnough(job: Job): boolean {
  return chooseSetting(job, overviewTexts(job, null)).numbered
}

/** How to read and how to join; rings round the numbers are explained where the map has them. */
const overviewTexts = remembered((job: Job, tiling: Tiling | null): [string, string] => {
  const texts = textsWith(job, tiling, [])
  const rings = new MapPainter(job.ground, tiling?.scale ?? scaleOnPage(job, texts)).rings
  return rings.length > 0 ? textsWith(job, tiling, rings) : texts
}, REMEMBERED)

/** The scale that the map gets beside these words. */
function scaleOnPage(job: Job, texts: readonly string[]): number {
  const { setting, notes } = chooseSetting(job, texts)
  const room = mapRoom(job, setting, texts, notes)
  return overviewScale(job.ground, room.width, room.height)
}

function textsWith(job: Job, tiling: Tiling | null, rings: readonly string[]): [string, string] {
  const { ground, plan, settled } = job
  const read = howToRead(
    {
      numbered: true,
      lettered: ground.marks.some((mark) => mark.code !== ''),
      rings,
      joins: joinMarksSentence(plan),
      arrows: ground.byRows,
      placesOnTop: ground.places.length > 0,
      edging: ground.edge.length > 0,
      round: plan.round !== undefined,
      fillers: plan.fillers.length > 0,
      halves: plan.halves.length > 0,
      sheets: tiling?.tiles.length ?? 0,
      firstRow: ground.rows[0]?.row ?? 1,
    },
    job.terms,
  )
  return [read, joiningAdvice(settled.joining, plan.motif, job.terms)]
}

/** Title, sentence and notes; returns the y below. */
function head(job: Job, sheet: Sheet, notes: boolean): number {
  const y = sheet.title(job.title)
  const below = sheet.paragraph(sentenceOf(job), sheet.left, y, LEAD_WIDTH, { size: TYPE.lead })
  return (notes ? setNotes(job, sheet, below) : below) + AIR
}

/** How to read and how to join, side by side. */
function words(sheet: Sheet, y: number, texts: readonly [string, string]): void {
  const width = (sheet.inner - COLUMN_GAP) / 2
  const second = sheet.left + width + COLUMN_GAP
  sheet.paragraph(texts[0], sheet.left, sheet.heading(HEADINGS.howToRead, sheet.left, y), width)
  sheet.paragraph(texts[1], second, sheet.heading(HEADINGS.joining, second, y), width)
}

/** The overview; with a tiling its frames are drawn over the map. Followed by the key where page 1 lacks it. */
export function overviewPages(job: Job, tiling: Tiling | null): Draft[] {
  const overview = {
    section: 'overview',
    name: PAGE_NAMES.overview,
    bookmarks: [PAGE_NAMES.overview],
  } as const
  if (job.plan.motifs.length === 0) {
    const sheet = newSheet(job)
    head(job, sheet, true)
    return [{ ...overview, sheet }]
  }
  const texts = overviewTexts(job, tiling)
  const { setting } = chooseSetting(job, texts)
  const notes = !notesStandLater(job)
  const sheet = newSheet(job, setting.landscape)
  let y = head(job, sheet, notes)
  const room = mapRoom(job, setting, texts, notes)
  const frames = (tiling?.tiles ?? []).map(({ area, number }): { area: Bounds; name: string } => ({
    area,
    name: String(number),
  }))
  const map = overviewMap(job.ground, room.width, room.height, frames)
  y = sheet.figure(map.figure, sheet.left, y) + AIR
  if (!setting.together) return [{ ...overview, sheet }, ...keyPages(job, texts)]
  sheet.rule(y)
  y = keyGrid(job, sheet, y + 4) + BELOW_KEY
  words(sheet, y, texts)
  return [{ ...overview, sheet }]
}

const keyWidth = (sheet: Sheet): number =>
  (sheet.inner - (keyColumns(sheet) - 1) * COLUMN_GAP) / keyColumns(sheet)

/** Heights of the rows of the key: each as high as its highest entry. */
function keyHeights(job: Job, sheet: Sheet, marks: readonly ColourwayMark[]): number[] {
  const columns = keyColumns(sheet)
  const heights = marks.map((mark) => entryHeight(sheet, keyEntry(job, mark), keyWidth(sheet)))
  return Array.from({ length: Math.ceil(marks.length / columns) }, (_, row) =>
    Math.max(...heights.slice(row * columns, (row + 1) * columns)),
  )
}

/** Colourways in columns: swatch, name with count, yarns by colour section. Returns the y below. */
function keyGrid(job: Job, sheet: Sheet, y: number, marks = keyMarks(job.ground)): number {
  const columns = keyColumns(sheet)
  const width = keyWidth(sheet)
  keyHeights(job, sheet, marks).forEach((height, row) => {
    marks.slice(row * columns, (row + 1) * columns).forEach((mark, column) => {
      drawEntry(sheet, keyEntry(job, mark), sheet.left + column * (width + COLUMN_GAP), y, width)
    })
    y += height
  })
  return y
}

function keyEntry(job: Job, mark: ColourwayMark): Entry {
  const isTold = job.style === 'colour' || mark.fillers > 0
  const letter = isTold && mark.code !== '' && mark.name !== '' ? `${mark.code} · ` : ''
  return {
    picture: keyPicture(job, mark),
    across: SWATCH,
    name: letter + (mark.name || (mark.code === '' ? NO_COLOURWAY : mark.code)),
    count: keyCount(mark),
    lines: [slotWords(mark.slots)],
  }
}

function keyPicture({ plan, style }: Job, mark: ColourwayMark): Figure | null {
  const filler = plan.fillers.find(({ colourway }) => colourway === mark.id) ?? plan.fillers[0]
  // On the map a filler is often too small for its letter: the key tells it beside its name.
  if (mark.fillers > 0 && plan.fillerMotif && filler)
    return keySwatch(plan.fillerMotif, { ...mark, code: '' }, style, filler.turn, SWATCH)
  if (!plan.motif) return null
  const placed = plan.motifs.find(({ colourway }) => colourway === mark.id)
  return keySwatch(accountAt(plan, placed ?? {}) ?? plan.motif, mark, style, placed?.turn ?? 0, SWATCH)
}

/** The key on pages of its own, the words below it. */
function keyPages(job: Job, texts: readonly [string, string]): Draft[] {
  const drafts: Draft[] = []
  const marks = keyMarks(job.ground)
  let from = 0
  let y = 0
  while (from < marks.length || drafts.length === 0) {
    const sheet = newSheet(job)
    y = sheet.title(HEADINGS.key) + 3
    const heights = keyHeights(job, sheet, marks.slice(from))
    let below = y
    const over = heights.findIndex((height) => (below += height) > sheet.bottom)
    const fit = Math.max(1, over < 0 ? heights.length : over) * keyColumns(sheet)
    y = keyGrid(job, sheet, y, marks.slice(from, from + fit)) + BELOW_KEY
    const bookmarks = from === 0 ? [PAGE_NAMES.key] : []
    drafts.push({ section: 'key', name: PAGE_NAMES.key, bookmarks, sheet })
    from += fit
  }
  let { sheet } = drafts.at(-1)!
  if (y + 4 + wordsHeight(sheet, texts) > sheet.bottom) {
    sheet = newSheet(job)
    y = sheet.top
    drafts.push({ section: 'key', name: PAGE_NAMES.key, bookmarks: [], sheet })
  } else {
    sheet.rule(y)
    y += 4
  }
  words(sheet, y, texts)
  return drafts
}
