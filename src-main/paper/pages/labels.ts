/** Labels of a kit: contents, fibre, care, cautions; several to a page, with marks to cut along. */
import type { KitAccount } from '../../../shared-types/plan'
import type { LabelCount } from '../../../shared-types/sheets'
import { drawPath, INK } from '../../../src-core/figures/figure'
import { creditLine, fibreWords, kitCautions } from '../../../src-core/figures/kit-words'
import { linePath } from '../../../src-core/figures/path'
import { counted } from '../../../src-core/figures/words'
import type { Draft, Job } from '../page'
import { newSheet } from '../page'
import { drawLogo, logoSize } from '../draw-logo'
import type { Sheet } from '../setting'
import { shorten } from '../setting'
import { PAGE_NAMES } from '../words'
import { contentsWords, LABEL_WORDS } from '../words-garland'

/** mm. Room for the cut marks round the labels, length of a mark, and of each arm of a cross between labels. */
const MARKS = 5
const TICK = 3.5
const ARM = 1.6
/** mm. White inside each label. */
const PAD = 5
const COLUMNS = 2
/** mm. A label is no lower than this, however little it says. */
const LOWEST = 44
const TITLE = 12
/** mm. Room of the logo beside the title. */
const LOGO = { width: 26, height: 10 } as const
const BESIDE = 3
/** Points, largest first; a smaller one is taken where more labels fit for it. */
const SIZES = [8.5, 8, 7.5] as const
/** Points, where a label fits no page otherwise. */
const SMALLEST = 7
/** More labels than this are better copied (ours): a PDF of a thousand pages helps nobody. */
export const MOST_LABELS = 2000

interface Label {
  readonly title: string
  readonly lines: readonly (readonly [string, string])[]
}

interface Grid {
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
  readonly rows: number
  readonly size: number
}

/** Who sells it and where to write, as the house style says. */
export const makerOf = ({ house }: Job): string =>
  [house.name, ...house.address.split(/\r?\n/)]
    .map((line) => line.trim())
    .filter(Boolean)
    .join(', ')

/** What stands on every label. */
function labelOf(job: Job, kit: KitAccount, contents: string): Label {
  const { settled, terms, title } = job
  const care = settled.layout?.kit?.care?.trim()
  const maker = makerOf(job)
  const fibre = fibreWords(
    settled,
    kit.perKit.map(({ yarn }) => yarn),
    terms,
  )
  return {
    title,
    lines: [
      [LABEL_WORDS.contents, contents],
      [LABEL_WORDS.fibre(job.terms), fibre],
      [LABEL_WORDS.care, care || LABEL_WORDS.fill(terms)],
      [LABEL_WORDS.cautions, kitCautions(settled, terms)],
      ['', creditLine(settled)],
      maker ? [LABEL_WORDS.maker, maker] : [LABEL_WORDS.makerBlank, LABEL_WORDS.blank],
    ],
  }
}

const words = ([name, text]: readonly [string, string]): string => (name ? `${name}: ${text}` : text)

/** Draws one label with its top left at (x, y); returns the y below it. */
function drawLabel(
  job: Job,
  sheet: Sheet,
  { title, lines }: Label,
  { x, y }: { readonly x: number; readonly y: number },
  width: number,
  size: number,
): number {
  const logo = logoSize(job, LOGO)
  const beside = logo ? width - logo.width - BESIDE : width
  const fitting = shorten(title, beside, sheet.measure, TITLE, 'bold')
  let below = sheet.text(fitting, x, y, { size: TITLE, weight: 'bold', as: 'H1' })
  below = sheet.text(LABEL_WORDS.kind, x, below, { size })
  below = Math.max(below, drawLogo(job, sheet, { right: x + width, y }, LOGO)) + 1.5
  for (const line of lines) below = sheet.paragraph(words(line), x, below, width, { size }) + 0.8
  return below
}

/** The largest type in which a label fits into a whole page's column, and how many then stand in one. */
function gridOf(job: Job, sheet: Sheet, label: Label): Grid | null {
  const left = sheet.left + MARKS
  const top = sheet.top + MARKS
  const width = (sheet.inner - 2 * MARKS) / COLUMNS
  const room = sheet.bottom - MARKS - top
  const inType = (size: number): Grid | null => {
    const needed = drawLabel(job, newSheet(job), label, { x: 0, y: 0 }, width - 2 * PAD, size) + 2 * PAD
    const rows = Math.floor(room / Math.max(LOWEST, needed))
    return rows >= 1 ? { left, top, width, height: room / rows, rows, size } : null
  }
  let best: Grid | null = null
  for (const size of SIZES) {
    const grid = inType(size)
    if (grid && grid.rows > (best?.rows ?? 0)) best = grid
  }
  return best ?? inType(SMALLEST)
}

/** The contents told in full, or as many of them as a label holds: fewer of them never need more room. */
function fittingLabel(job: Job, kit: KitAccount, sheet: Sheet): { label: Label; grid: Grid } {
  const things = contentsWords(job.settled, kit)
  const telling = (shown: number): { label: Label; grid: Grid } | null => {
    const rest = things.length - shown
    const told = rest > 0 ? [...things.slice(0, shown), `and ${counted(rest, 'thing')} more`] : things
    const label = labelOf(job, kit, told.join(', '))
    const grid = gridOf(job, sheet, label)
    return grid && { label, grid }
  }
  const all = telling(things.length)
  if (all) return all
  let fitting = telling(0)
  if (!fitting) throw new Error('the words of a label do not fit a page')
  let tooMany = things.length
  for (let shown = 0; tooMany - shown > 1;) {
    const middle = Math.floor((shown + tooMany) / 2)
    const told = telling(middle)
    if (told) [shown, fitting] = [middle, told]
    else tooMany = middle
  }
  return fitting
}

/** Marks to cut along: ticks outside the labels, crosses where four of them meet. */
function cutMarks(sheet: Sheet, { left, top, width, height, rows }: Grid): void {
  const right = left + COLUMNS * width
  const bottom = top + rows * height
  const line = (x1: number, y1: number, x2: number, y2: number): void => {
    sheet.items.push(drawPath(linePath(x1, y1, x2, y2), { stroke: INK, width: 0.2 }))
  }
  for (let column = 0; column <= COLUMNS; column++) {
    const x = left + column * width
    line(x, top - MARKS, x, top - MARKS + TICK)
    line(x, bottom + MARKS - TICK, x, bottom + MARKS)
    for (let row = 0; row <= rows; row++) {
      const y = top + row * height
      if (column === 0) line(left - MARKS, y, left - MARKS + TICK, y)
      if (column === COLUMNS) line(right + MARKS - TICK, y, right + MARKS, y)
      line(x - ARM, y, x + ARM, y)
      line(x, y - ARM, x, y + ARM)
    }
  }
}

/** Pages of labels: one to copy, or one label for each kit. */
export function labelPages(job: Job, kit: KitAccount, count: LabelCount): Draft[] {
  const first = newSheet(job)
  const { label, grid } = fittingLabel(job, kit, first)
  const onPage = COLUMNS * grid.rows
  const wanted = count === 'run' ? kit.count : onPage
  const drafts: Draft[] = []
  for (let done = 0; done < wanted; done += onPage) {
    const sheet = drafts.length === 0 ? first : newSheet(job)
    const here = Math.min(onPage, wanted - done)
    cutMarks(sheet, { ...grid, rows: Math.ceil(here / COLUMNS) })
    for (let i = 0; i < here; i++) {
      const x = grid.left + (i % COLUMNS) * grid.width + PAD
      const y = grid.top + Math.floor(i / COLUMNS) * grid.height + PAD
      drawLabel(job, sheet, label, { x, y }, grid.width - 2 * PAD, grid.size)
    }
    const bookmarks = drafts.length === 0 ? [PAGE_NAMES.labels] : []
    drafts.push({ section: 'labels', name: PAGE_NAMES.labels, bookmarks, sheet })
  }
  return drafts
}
