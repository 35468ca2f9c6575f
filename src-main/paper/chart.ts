/** The charts of a motif by themselves: with title, caption and key, as one page that fits them. */
import type { RoundsMotif, Terms } from '../../shared-types/project'
import type { Settled } from '../../shared-types/settled'
import { breakLines } from '../../src-core/figures/lines'
import {
  chartKey,
  chartKeyFigure,
  leftOutWords,
  readableFigures,
  segmentFigures,
} from '../../src-core/figures/chart'
import type { Figure, FigureItem, MeasureText } from '../../src-core/figures/figure'
import { drawText, placeFigure } from '../../src-core/figures/figure'
import { partOf } from '../../src-core/figures/part'
import { workedRounds } from '../../src-core/accounts'
import type { ChosenFont } from './pdf/fonts/chosen'
import { measureWith, readFaces } from './pdf/faces'
import { writePdf } from './pdf/file'
import { MARGIN, Sheet, TYPE } from './setting'
import { figureToSvg } from './svg'
import { UNTITLED } from './words'
import { FIGURE_WORDS } from './words-figures'
import { MOTIF_WORDS, partWords } from './words-motif'

const KEY_WIDTH = 64
const GAP = 6
/** Room for the drawings of one chart: with key and margins an A4 page. */
const ROOM = { width: 186 - KEY_WIDTH - GAP, height: 240 } as const

interface ChartRequest {
  readonly settled: Settled
  readonly motif: RoundsMotif
  /** Terms of the key; the project's own where they are not given. */
  readonly terms?: Terms
  /** One repeat in place of the whole way around, where its rounds repeat. */
  readonly repeat?: boolean
}

/** The page as a draw list, for a picture; null for a motif without rounds that could be placed. */
export function chartPicture(
  { settled, motif, terms, repeat }: ChartRequest,
  measure: MeasureText,
): Figure | null {
  const { hand } = settled
  const drawing = workedRounds(settled, motif).drawing()
  if (!drawing) return null
  const { located, beginning } = drawing
  const options = { hand, style: settled.sheet.style, ...ROOM }
  const repeats = repeat ? segmentFigures(located, beginning, options) : []
  const figures = repeats.length > 0 ? repeats : readableFigures(located, beginning, options)
  const isCaptioned = figures.length > 1 || repeats.length > 0
  const printed = terms ?? settled.sheet.terms
  const entries = chartKey(located, beginning, { terms: printed, hand })
  const key = chartKeyFigure(entries, KEY_WIDTH, TYPE.table, measure)
  const items: FigureItem[] = []
  const place = (placed: Figure, x: number, y: number, alt: string): void => {
    const box = { x, y, width: placed.width, height: placed.height }
    items.push({ ...placeFigure(placed, x, y), part: partOf('Figure', null, { alt, box }) })
  }
  const title = motif.name?.trim() || motif.id
  let y = MARGIN + Sheet.line(TYPE.heading)
  items.push({ ...drawText(title, MARGIN, y, TYPE.heading, { weight: 'bold' }), part: partOf('H1') })
  const top = (y += 4)
  const width = Math.max(...figures.map((figure) => figure.width), measure(title, TYPE.heading, 'bold'))
  for (const figure of figures) {
    if (isCaptioned) {
      y += Sheet.line(TYPE.table)
      items.push({ ...drawText(partWords(figure), MARGIN, y, TYPE.table), part: partOf('P') })
      y += 2
    }
    place(figure, MARGIN + (width - figure.width) / 2, y, FIGURE_WORDS.chart(figure, printed))
    y += figure.height + 2
  }
  const missing = leftOutWords(drawing.left)
  const lines = missing === '' ? [] : breakLines(missing, Math.max(width, LEAST_WORDS), measure, TYPE.table)
  for (const line of lines) {
    y += Sheet.line(TYPE.table)
    items.push({ ...drawText(line, MARGIN, y, TYPE.table), part: partOf('P') })
  }
  const keyLeft =
    MARGIN +
    Math.max(
      width,
      lines.length > 0 ? LEAST_WORDS : 0,
      captionWidth(figures.map(partWords), isCaptioned, measure),
    ) +
    GAP
  place(key, keyLeft, top, FIGURE_WORDS.chartKey(entries.map(({ words }) => words)))
  return { width: keyLeft + KEY_WIDTH + MARGIN, height: Math.max(y, top + key.height) + MARGIN, items }
}

/** mm, of the words under a narrow chart. */
const LEAST_WORDS = 60

/** The longest caption, so that it never runs into the key. */
const captionWidth = (captions: readonly string[], isCaptioned: boolean, measure: MeasureText): number =>
  isCaptioned ? Math.max(...captions.map((words) => measure(words, TYPE.table, 'regular'))) : 0

/** One chart as an SVG that looks the same everywhere: letters are drawn, the words of its key are read aloud. */
export function chartSvg(request: ChartRequest, title: string, fonts: readonly ChosenFont[] = []): string {
  const faces = readFaces(fonts)
  const { located, beginning } = workedRounds(request.settled, request.motif).drawing()!
  const terms = request.terms ?? request.settled.sheet.terms
  const key = chartKey(located, beginning, { terms, hand: request.settled.hand }).map(({ words }) => words)
  return figureToSvg(chartPicture(request, measureWith(faces))!, title, faces, key.join('; '))
}

/** Whether the rounds of a motif repeat, so that one repeat of them can be drawn by itself. */
export function hasRepeat({ settled, motif }: ChartRequest): boolean {
  const drawing = workedRounds(settled, motif).drawing()
  if (!drawing) return false
  const options = { hand: settled.hand, style: settled.sheet.style, ...ROOM }
  return segmentFigures(drawing.located, drawing.beginning, options).length > 0
}

/** The charts as a PDF, a page for each motif. */
export async function renderCharts(
  requests: readonly ChartRequest[],
  options: { readonly date: Date; readonly version: string; readonly fonts?: readonly ChosenFont[] },
): Promise<Uint8Array> {
  const faces = readFaces(options.fonts)
  const measure = measureWith(faces)
  const { settled } = requests[0]!
  const pages = requests.flatMap((request) => {
    const figure = chartPicture(request, measure)
    const label = request.motif.name?.trim() || request.motif.id
    return figure ? [{ figure, label, bookmarks: [label] }] : []
  })
  return writePdf(
    pages,
    {
      title: settled.title || UNTITLED,
      author: settled.designer,
      subject: MOTIF_WORDS.chart,
      language: settled.sheet.terms === 'UK' ? 'en-GB' : 'en-US',
      date: options.date,
      producer: `Petalyard ${options.version}`,
    },
    { faces },
  )
}
