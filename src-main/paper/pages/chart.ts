/** The symbol chart of a motif with its key, as large as the page lets it be. */
import type { RoundsMotif } from '../../../shared-types/project'
import { chartKey, chartKeyFigure, readableFigures } from '../../../src-core/figures/chart'
import { workedRounds } from '../../../src-core/accounts'
import type { Flow } from '../flow'
import type { Job } from '../page'
import { Sheet, TYPE } from '../setting'
import { FIGURE_WORDS } from '../words-figures'
import { MOTIF_WORDS, partWords } from '../words-motif'

const KEY_WIDTH = 58
const GAP = 5
const CAPTION = Sheet.line(TYPE.table) + 2

/** Puts the chart below what stands there, or on pages of its own. */
export function setChart(job: Job, flow: Flow, motif: RoundsMotif): void {
  const { hand, terms } = job.settled
  const drawing = workedRounds(job.settled, motif).drawing()
  if (!drawing) return
  const { located: rounds, beginning } = drawing
  const { sheet } = flow
  const head = Sheet.line(TYPE.heading) + 1.6
  const advice = beginning.stem.length > 0 ? MOTIF_WORDS.leafAdvice : MOTIF_WORDS.chartAdvice(hand, terms)
  const intro = sheet.heightOf(advice, sheet.inner) + 2
  const width = sheet.inner - KEY_WIDTH - GAP
  const figures = readableFigures(rounds, beginning, {
    hand,
    style: job.style,
    width,
    height: sheet.bottom - sheet.top - head - intro - CAPTION,
  })
  const entries = chartKey(rounds, beginning, { terms: job.terms, hand })
  const key = chartKeyFigure(entries, KEY_WIDTH, TYPE.table, job.measure)
  const keyHeight = Sheet.line(TYPE.heading) + 1.6 + key.height
  const heights = figures.map((figure) => figure.height + (figures.length > 1 ? CAPTION : 0))
  const first = Math.max(heights[0]!, keyHeight)
  flow.y += 2
  flow.need(head + intro + first)
  flow.mark(MOTIF_WORDS.chart)
  flow.y = flow.sheet.heading(MOTIF_WORDS.chart, flow.sheet.left, flow.y)
  flow.y = flow.sheet.paragraph(advice, flow.sheet.left, flow.y, flow.sheet.inner) + 2
  const keyTop = flow.y
  const keySheet = flow.sheet
  const keyLeft = keySheet.right - KEY_WIDTH
  const keyBelow = keySheet.text(MOTIF_WORDS.key, keyLeft, keyTop, { weight: 'bold' }) + 1
  keySheet.figure(key, keyLeft, keyBelow, FIGURE_WORDS.chartKey(entries.map(({ words }) => words)))
  figures.forEach((figure, i) => {
    flow.need(heights[i]!)
    const target = flow.sheet
    if (figures.length > 1) {
      const words = partWords(figure)
      flow.y = target.text(words, target.left, flow.y, { size: TYPE.table }) + 1
    }
    const left = target.left + Math.max(0, (width - figure.width) / 2)
    flow.y = target.figure(figure, left, flow.y, FIGURE_WORDS.chart(figure, job.terms)) + 1
  })
  if (flow.sheet === keySheet) flow.y = Math.max(flow.y, keyTop + keyHeight)
  flow.y += 3
}
