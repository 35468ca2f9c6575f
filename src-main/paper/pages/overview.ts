/** Page 1: what it will be, the map, the key, how to read and join it; and the key's own page where it must. */
import { listed } from '../../../src-core/figures/words'
import type { Bounds, Figure } from '../../../src-core/figures/figure'
import { keySwatch } from '../../../src-core/figures/key-swatch'
import { cornerWords } from '../../../src-core/figures/edging-corners'
import { joinMarksSentence } from '../../../src-core/figures/join-marks'
import { breakLines } from '../../../src-core/figures/lines'
import { MapPainter } from '../../../src-core/figures/map'
import { keyMarks, smallestNumberedScale } from '../../../src-core/figures/map-ground'
import { overviewMap, overviewScale } from '../../../src-core/figures/overview-map'
import type { ColourwayMark } from '../../../src-core/figures/marks'
import { pairSentence } from '../../../src-core/figures/pair-marks'
import { projectSentence, sentenceText } from '../../../src-core/figures/sentence'
import { blanketOf } from '../../../src-core/plans/layouts'
import { accountAt } from '../../../src-core/layout/placed'
import { termWord } from '../../../src-core/stitches/terms'
import { remembered } from '../../../src-core/memo'
import type { Tiling } from '../../../src-core/figures/tiles'
import type { Entry } from '../entry'
import { drawEntry, entryHeight } from '../entry'
import type { Draft, Job } from '../page'
import { newSheet } from '../page'
import { Sheet, TYPE } from '../setting'
import { FIGURE_WORDS } from '../words-figures'
import { notesHeight, setNotes } from './notes'
import {
  HEADINGS,
  colourLetters,
  howToRead,
  keyCount,
  noColourway,
  PAGE_NAMES,
  slotLines,
  tickSentence,
} from '../words'
import { joiningAdvice } from '../words-joining'

const SWATCH = 13
const COLUMN_GAP = 10

/** Room between head, map and foot of the page. */
const AIR = 7

interface Setting {
  readonly landscape: boolean
  /** Where key and words stand: under the map, at the right of it, or on a page of their own. */
  readonly key: 'below' | 'beside' | 'apart'
}

/** Width of the key where it stands beside the map, and between both. */
const BESIDE = { width: 60, gap: 8 } as const

/** The columns that a key has: so many of so many mm, from so far on. */
interface KeyColumns {
  readonly count: number
  readonly width: number
  readonly left: number
}

function keyColumns(sheet: Sheet, key: Setting['key'] = 'below'): KeyColumns {
  if (key === 'beside') return { count: 1, width: BESIDE.width, left: sheet.right - BESIDE.width }
  const count = sheet.width > sheet.height ? 3 : 2
  return { count, width: (sheet.inner - (count - 1) * COLUMN_GAP) / count, left: sheet.left }
}

/** Least room between the words and the footer. */
const CLEAR = 3
/** Between the key and the words. */
const BELOW_KEY = 3

/** Height of a heading with the room below it. */
const HEAD = Sheet.line(TYPE.heading) + 1.6

/** Height of the words in two columns, with their headings. */
function wordsHeight(sheet: Sheet, texts: readonly string[]): number {
  const width = (sheet.inner - COLUMN_GAP) / 2
  return Math.max(...texts.map((text) => sheet.heightOf(text, width))) + HEAD
}

/** Height of the key of all colourways. */
const keyHeight = (job: Job, sheet: Sheet, columns: KeyColumns): number =>
  keyHeights(job, sheet, keyMarks(job.ground), columns).reduce((sum, height) => sum + height, 0)

/** Height of the block below the map: rule, key and words. */
function footHeight(job: Job, sheet: Sheet, key: Setting['key'], texts: readonly string[]): number {
  if (key !== 'below') return CLEAR
  return AIR + 4 + keyHeight(job, sheet, keyColumns(sheet)) + BELOW_KEY + wordsHeight(sheet, texts) + CLEAR
}

/** Height of key and words where they stand beside the map, one below the other. */
function asideHeight(job: Job, sheet: Sheet, texts: readonly string[]): number {
  const columns = keyColumns(sheet, 'beside')
  const told = texts.reduce((sum, text) => sum + HEAD + sheet.heightOf(text, columns.width) + BELOW_KEY, 0)
  return keyHeight(job, sheet, columns) + BELOW_KEY + told
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
  const height =
    sheet.bottom - sheet.top - headHeight(job, notes) - footHeight(job, sheet, setting.key, texts)
  if (setting.key !== 'beside') return { width: sheet.inner, height }
  const fits = asideHeight(job, sheet, texts) <= height
  return { width: sheet.inner - BESIDE.width - BESIDE.gap, height: fits ? height : 0 }
}

/** Those that come first are taken where others give no map that is much larger. */
const SETTINGS: readonly Setting[] = [
  { landscape: false, key: 'below' },
  { landscape: false, key: 'beside' },
  { landscape: true, key: 'below' },
  { landscape: true, key: 'beside' },
  { landscape: false, key: 'apart' },
  { landscape: true, key: 'apart' },
]

const APART: Setting = { landscape: false, key: 'apart' }

/** How much larger a map must be to be worth it. */
const WORTHWHILE = { beside: 1.15, unread: 1.4 } as const

/** As many colourways as stand with a map on one page. */
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
  let readable: { setting: Setting; scale: number } | null = null
  for (const setting of SETTINGS) {
    if (setting.key !== 'apart' && keyMarks(job.ground).length > KEY_LIMIT) continue
    // A page of its own for the key is the last resort.
    if (setting.key === 'apart' && readable) break
    const room = mapRoom(job, setting, texts, notes)
    if (room.height < LEAST_MAP) continue
    const scale = overviewScale(job.ground, room.width, room.height)
    if (scale >= wanted && (!readable || scale > readable.scale * WORTHWHILE.beside))
      readable = { setting, scale }
    if (!largest || scale > largest.scale * WORTHWHILE.unread) largest = { setting, scale }
    if (readable && setting.key === 'apart') break
  }
  if (readable) return { setting: readable.setting, numbered: true, notes }
  return { setting: largest?.setting ?? APART, numbered: false, notes }
}

/** Whether the whole map can be read on page 1, or wants sheets of its own. */
export function overviewIsEnough(job: Job): boolean {
  return chooseSetting(job, overviewTexts(job, null)).numbered
}

/** How to read and how to join; rings round the numbers and the line between them are told where the map has them. */
const overviewTexts = remembered((job: Job, tiling: Tiling | null): [string, string] => {
  const texts = textsWith(job, tiling, { rings: [], path: false })
  const { rings, workPath } = new MapPainter(job.ground, tiling?.scale ?? scaleOnPage(job, texts))
  const path = workPath.length > 0
  return rings.length > 0 || path ? textsWith(job, tiling, { rings, path }) : texts
}, REMEMBERED)

/** The scale that the map gets beside these words. */
function scaleOnPage(job: Job, texts: readonly string[]): number {
  const { setting, notes } = chooseSetting(job, texts)
  const room = mapRoom(job, setting, texts, notes)
  return overviewScale(job.ground, room.width, room.height)
}

/** What a map has at its scale and another has not. */
type AtScale = Pick<Parameters<typeof howToRead>[0], 'rings' | 'path'>

function textsWith(job: Job, tiling: Tiling | null, atScale: AtScale): [string, string] {
  const { ground, plan, settled } = job
  const read = howToRead(
    {
      numbered: true,
      lettered: ground.marks.some((mark) => mark.code !== ''),
      colourLetters: colourLetters(ground.marks, job.terms),
      ...atScale,
      joins: joinMarksSentence(plan),
      pairs: pairSentence(plan),
      arrows: ground.byRows,
      placesOnTop: ground.places.length > 0,
      edging: ground.edge.length > 0,
      corners: cornerWords(plan, termWord('edging', job.terms), false),
      ticks: tickSentence(plan),
      round: plan.round !== undefined,
      ends: blanketOf(settled)?.edging?.ends ?? 'both',
      fillers: plan.fillers.length > 0,
      clock: plan.order.some(({ kind, joins }) => kind === 'filler' && joins.some(({ along }) => !along)),
      halves: plan.halves.length > 0,
      sheets: tiling?.tiles.length ?? 0,
      firstRow: ground.rows[0]?.row ?? 1,
    },
    job.terms,
  )
  return [read, joiningAdvice(plan, job.terms)]
}

/** Title, sentence and notes; returns the y below. */
function head(job: Job, sheet: Sheet, notes: boolean): number {
  const y = sheet.title(job.title)
  const below = sheet.paragraph(sentenceOf(job), sheet.left, y, LEAD_WIDTH, { size: TYPE.lead })
  return (notes ? setNotes(job, sheet, below) : below) + AIR
}

/** How to read and how to join, side by side; returns the y below. */
function words(sheet: Sheet, y: number, texts: readonly [string, string]): number {
  const width = (sheet.inner - COLUMN_GAP) / 2
  const second = sheet.left + width + COLUMN_GAP
  return Math.max(
    sheet.paragraph(texts[0], sheet.left, sheet.heading(HEADINGS.howToRead, sheet.left, y), width),
    sheet.paragraph(texts[1], second, sheet.heading(HEADINGS.joining, second, y), width),
  )
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
    name: `Sheet ${number}`,
  }))
  const map = overviewMap(job.ground, room.width, room.height, frames)
  const alt = FIGURE_WORDS.map(job.plan, tiling === null, job.terms)
  if (setting.key === 'beside') {
    sheet.figure(map.figure, sheet.left, y, alt)
    aside(job, sheet, y, texts)
    return [{ ...overview, sheet }]
  }
  y = sheet.figure(map.figure, sheet.left, y, alt) + AIR
  if (setting.key === 'apart') return [{ ...overview, sheet }, ...keyPages(job, texts)]
  sheet.rule(y)
  y = keyGrid(job, sheet, y + 4) + BELOW_KEY
  words(sheet, y, texts)
  return [{ ...overview, sheet }]
}

/** Key and words at the right of the map. */
function aside(job: Job, sheet: Sheet, top: number, texts: readonly [string, string]): void {
  const { left, width } = keyColumns(sheet, 'beside')
  let y = keyGrid(job, sheet, top, keyMarks(job.ground), 'beside') + BELOW_KEY
  for (const [heading, text] of [
    [HEADINGS.howToRead, texts[0]],
    [HEADINGS.joining, texts[1]],
  ] as const)
    y = sheet.paragraph(text, left, sheet.heading(heading, left, y), width) + BELOW_KEY
}

/** Heights of the rows of the key: each as high as its highest entry. */
function keyHeights(
  job: Job,
  sheet: Sheet,
  marks: readonly ColourwayMark[],
  { count, width }: KeyColumns = keyColumns(sheet),
): number[] {
  const heights = marks.map((mark) => entryHeight(sheet, keyEntry(job, mark), width))
  return Array.from({ length: Math.ceil(marks.length / count) }, (_, row) =>
    Math.max(...heights.slice(row * count, (row + 1) * count)),
  )
}

/** Colourways in columns: swatch, name with count, yarns by colour section. Returns the y below. */
function keyGrid(
  job: Job,
  sheet: Sheet,
  y: number,
  marks = keyMarks(job.ground),
  key: Setting['key'] = 'below',
): number {
  const columns = keyColumns(sheet, key)
  const { count, width, left } = columns
  const list = sheet.own('L')
  keyHeights(job, sheet, marks, columns).forEach((height, row) => {
    marks.slice(row * count, (row + 1) * count).forEach((mark, column) => {
      drawEntry(sheet, list, keyEntry(job, mark), left + column * (width + COLUMN_GAP), y, width)
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
    alt: FIGURE_WORDS.swatch(mark.code || mark.name, job.terms),
    across: SWATCH,
    name: letter + (mark.name || (mark.code === '' ? noColourway(job.terms) : mark.code)),
    count: keyCount(mark),
    lines: [...kindsIn(job, mark), ...slotLines(mark, job.terms)],
  }
}

/** Of several motifs, those that are made in a colourway: two of them may look alike but for their size. */
function kindsIn({ plan }: Job, { id }: ColourwayMark): string[] {
  const made = new Set(plan.motifs.filter(({ colourway }) => colourway === id).map(({ motif }) => motif))
  const names = plan.accounts.flatMap((account) => (made.has(account.id) ? [account.name || account.id] : []))
  return names.length > 0 ? [listed(names)] : []
}

function keyPicture({ plan, style }: Job, mark: ColourwayMark): Figure | null {
  const filler = plan.fillers.find(({ colourway }) => colourway === mark.id) ?? plan.fillers[0]
  const account = filler && accountAt(plan, { motif: filler.motif, kind: 'filler' })
  // On the map a filler is often too small for its letter: the key tells it beside its name.
  if (mark.fillers > 0 && account)
    return keySwatch(account, { ...mark, code: '' }, style, filler.turn, SWATCH)
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
    y = sheet.title(HEADINGS.key(job.terms)) + 3
    const heights = keyHeights(job, sheet, marks.slice(from))
    let below = y
    const over = heights.findIndex((height) => (below += height) > sheet.bottom)
    const fit = Math.max(1, over < 0 ? heights.length : over) * keyColumns(sheet).count
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
  const end = words(sheet, y, texts) + AIR
  return [...drafts.slice(0, -1), { ...drafts.at(-1)!, end }]
}
