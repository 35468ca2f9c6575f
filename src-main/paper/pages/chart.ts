/** The symbol chart of a motif with its key: on the motif's page where it can be read there, else as large as a page is. */
import type { RoundsMotif } from '../../../shared-types/project'
import {
  chartKey,
  chartKeyFigure,
  leftOutWords,
  READABLE,
  readableFigures,
} from '../../../src-core/figures/chart'
import { workedRounds } from '../../../src-core/accounts'
import type { Flow } from '../flow'
import type { Job } from '../page'
import { Sheet, TYPE } from '../setting'
import { FIGURE_WORDS } from '../words-figures'
import { MOTIF_WORDS, partWords } from '../words-motif'

const KEY_WIDTH = 58
/** Of a key in two columns. */
const KEY_COLUMN = 53
const GAP = 5
const ABOVE = 2
const CAPTION = Sheet.line(TYPE.table) + 2
/** A chart is drawn smaller, down to a stitch of so many mm, where that keeps it on its motif's page (by eye). */
const SMALL_CHART = 1.2 * READABLE

/** The page for so much more of a chart; a new one says what goes on there. */
function goOn(flow: Flow, height: number): Sheet {
  if (flow.need(height))
    flow.y = flow.sheet.heading(MOTIF_WORDS.goesOn(MOTIF_WORDS.chart), flow.sheet.left, flow.y)
  return flow.sheet
}

/** Puts the chart below what stands there, or on pages of its own. */
export function setChart(job: Job, flow: Flow, motif: RoundsMotif): void {
  const { terms } = job
  const { hand } = job.settled
  const drawing = workedRounds(job.settled, motif).drawing()
  if (!drawing) return
  const { located: rounds, beginning } = drawing
  const { sheet } = flow
  const head = Sheet.line(TYPE.heading) + 1.6
  const advice = beginning.stem.length > 0 ? MOTIF_WORDS.leafAdvice : MOTIF_WORDS.chartAdvice(hand, terms)
  const intro = sheet.heightOf(advice, sheet.inner) + 2
  const width = sheet.inner - KEY_WIDTH - GAP
  const room = { hand, style: job.style, width }
  const full = readableFigures(rounds, beginning, {
    ...room,
    height: sheet.bottom - sheet.top - head - intro - CAPTION,
  })
  const here = flow.room - ABOVE - head - intro - 1
  const small =
    full.length === 1 && here > 0 && full[0]!.height > here
      ? readableFigures(rounds, beginning, { ...room, height: here })
      : []
  const figures = small.length === 1 && small[0]!.unit >= SMALL_CHART ? small : full
  const entries = chartKey(rounds, beginning, { terms: job.terms, hand })
  const heights = figures.map((figure) => figure.height + (figures.length > 1 ? CAPTION : 0))
  // Beside a narrow chart that is lower than its key there is room for two columns of it.
  const whole = chartKeyFigure(entries, KEY_WIDTH, TYPE.table, job.measure)
  const columns = { width: KEY_COLUMN, room: sheet.inner - figures[0]!.width - GAP }
  const isParted =
    figures.length === 1 && whole.height > heights[0]! && columns.room >= 2 * columns.width + GAP
  const half = Math.ceil(entries.length / 2)
  const parts = isParted ? [entries.slice(0, half), entries.slice(half)] : [entries]
  const keys = parts.map((part) =>
    isParted ? chartKeyFigure(part, columns.width, TYPE.table, job.measure) : whole,
  )
  const keyHeight = Sheet.line(TYPE.heading) + 1.6 + Math.max(...keys.map(({ height }) => height))
  const first = Math.max(heights[0]!, keyHeight)
  flow.y += ABOVE
  flow.need(head + intro + first)
  flow.mark(MOTIF_WORDS.chart)
  flow.y = flow.sheet.heading(MOTIF_WORDS.chart, flow.sheet.left, flow.y)
  flow.y = flow.sheet.paragraph(advice, flow.sheet.left, flow.y, flow.sheet.inner) + 2
  const keyTop = flow.y
  const keySheet = flow.sheet
  const keyLeft = keySheet.right - (isParted ? 2 * KEY_COLUMN + GAP : KEY_WIDTH)
  const keyBelow = keySheet.text(MOTIF_WORDS.key, keyLeft, keyTop, { weight: 'bold' }) + 1
  keys.forEach((key, i) => {
    const alt = FIGURE_WORDS.chartKey(parts[i]!.map(({ words }) => words))
    keySheet.figure(key, keyLeft + i * (KEY_COLUMN + GAP), keyBelow, alt)
  })
  figures.forEach((figure, i) => {
    const target = goOn(flow, heights[i]!)
    if (figures.length > 1) {
      const words = partWords(figure)
      flow.y = target.text(words, target.left, flow.y, { size: TYPE.table }) + 1
    }
    const left = target.left + Math.max(0, ((isParted ? figure.width : width) - figure.width) / 2)
    flow.y = target.figure(figure, left, flow.y, FIGURE_WORDS.chart(figure, job.terms)) + 1
  })
  if (flow.sheet === keySheet) flow.y = Math.max(flow.y, keyTop + keyHeight)
  const missing = leftOutWords(drawing.left)
  if (missing !== '') {
    flow.need(flow.sheet.heightOf(missing, flow.sheet.inner))
    flow.y = flow.sheet.paragraph(missing, flow.sheet.left, flow.y, flow.sheet.inner)
  }
  flow.y += 3
}
