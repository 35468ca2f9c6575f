/** An edging with written rounds, for this blanket: stitches to pick up by side and motif, rounds, counts at their ends. */
import type { Point } from '../../../shared-types/plan'
import type { Terms } from '../../../shared-types/project'
import { OPEN_ENDS } from '../../../src-core/edging/open-ends'
import { cornerPlates, cornerWords, plateReach } from '../../../src-core/figures/edging-corners'
import { drawPath, INK, PAPER, QUIET_INK } from '../../../src-core/figures/figure'
import type { Figure, Paint } from '../../../src-core/figures/figure'
import { SMALLEST_TYPE } from '../../../src-core/figures/lettering'
import { partOf } from '../../../src-core/figures/part'
import { moveOutline } from '../../../src-core/geometry/points'
import type { Outline } from '../../../src-core/geometry/points'
import { polygonPath, turnAndScale } from '../../../src-core/figures/path'
import { mapSize } from '../../../src-core/layout/placed'
import { saying } from '../../../src-core/stitches/spelling'
import { termWord } from '../../../src-core/stitches/terms'
import { BETWEEN, isSparse, withPart } from '../below'
import { Flow } from '../flow'
import type { Draft, Job } from '../page'
import { edgingSteps } from '../edging-steps'
import { newSheet } from '../page'
import { Sheet, TYPE } from '../setting'
import { FIGURE_WORDS } from '../words-figures'
import { edgingAbout, edgingTitle } from '../words-edging'
import { freePlaces } from '../words-joining'

const WIDTH = 165
const LABEL = 26
const AIR = 2.2

/**
 * The pages with those of an edging whose rounds are written: on one of its own, but below what runs over from the pages
 * before where that would leave a page nearly empty, and there is room for all of it.
 */
export function withEdging(job: Job, before: readonly Draft[]): Draft[] {
  const { edging } = job.plan
  if (!edging || edging.rounds.length === 0) return [...before]
  const { top } = newSheet(job)
  // Plain rounds take a few lines.
  if (!edging.loops?.length) return withPart(job, before, (from) => edgingPages(job, from))
  const last = before.at(-1)
  // What begins on a page is marked there.
  const runsOver = last?.bookmarks.length === 0 && isSparse([last, last])
  const isWhole = runsOver && edgingPages(job, last.end! + BETWEEN).length === 1
  return isWhole
    ? withPart(job, before, (from) => edgingPages(job, from))
    : [...before, ...edgingPages(job, top)]
}

/** Its pages from a height on, with the edge as large as they have room for. */
function edgingPages(job: Job, top: number): Draft[] {
  const drafts = pagesWith(job, EDGE.down, top)
  const [{ sheet, end = 0 } = { sheet: null }] = drafts
  if (!sheet || drafts.length > 1) return drafts
  const larger = pagesWith(job, Math.min(EDGE.most, EDGE.down + sheet.bottom - end), top)
  return larger.length > 1 ? drafts : larger
}

function pagesWith(job: Job, down: number, top: number): Draft[] {
  const { plan, terms } = job
  const { edging } = plan
  if (!edging) return []
  const title = edgingTitle(terms)
  const sheet = newSheet(job)
  const flow = new Flow(job, sheet, sheet.titleAt(title, top), title)
  const width = Math.min(WIDTH, sheet.inner)
  let list = partOf('L')
  const put = (label: string, text: string): void => {
    const height = flow.sheet.heightOf(text, width - LABEL)
    flow.need(height)
    const { sheet, y } = flow
    flow.y = sheet.labelled(
      list,
      () => sheet.text(label, sheet.left, y, { weight: 'bold' }),
      () => sheet.paragraph(text, sheet.left + LABEL, y, width - LABEL) + AIR,
    )
  }
  flow.y = sheet.paragraph(edgingAbout(edging, job), sheet.left, flow.y, width) + AIR
  const free = freePlaces(plan)
  if (free !== '') flow.y = sheet.paragraph(free, sheet.left, flow.y, width) + AIR
  cornerFigure(job, flow, width, down)
  const told = edgingSteps(job)!
  for (const [label, text] of told.steps) put(label, text)
  for (const { heading, steps } of told.lines) {
    if (heading !== '') {
      flow.need(Sheet.line(TYPE.heading) + 12)
      list = partOf('L')
      flow.y = flow.sheet.heading(heading, flow.sheet.left, flow.y + AIR)
    }
    for (const [label, text] of steps) put(label, text)
  }
  flow.need(flow.sheet.heightOf(told.end, width))
  flow.y = flow.sheet.paragraph(told.end, flow.sheet.left, flow.y + AIR, width)
  return flow.drafts('edging', title)
}

/** mm. The drawing of the edge is so high, and higher where there is room; its corners are as large as on the map. */
const EDGE = { down: 62, most: 120, line: 0.25 } as const

/** What fills a dip. */
const DIP = '#d9d9d9'
const dipWords = (terms: Terms): string => saying(terms)`Grey: the dips that are filled up to the line.`

/** Of a round, whose edge is drawn open, the motifs along its two ends: dips lie between them. */
function alongEnds({ plan }: Job): Outline[] {
  if (!plan.round || !plan.edgingDips) return []
  const rows = plan.motifs.map(({ row }) => row)
  const ends = [Math.min(...rows), Math.max(...rows)]
  return plan.motifs
    .filter(({ row }) => ends.includes(row))
    .map(({ motif, turn, x, y }) => {
      const account = plan.accounts.find(({ id }) => id === motif) ?? plan.motif
      return moveOutline(turnAndScale(account?.outline ?? [], turn, 1), x, y)
    })
}

/** The edge with its corners and dips, and the stitches between them; nothing where no words count corners. */
function cornerFigure(job: Job, flow: Flow, width: number, down: number): void {
  const { plan, ground, terms } = job
  const words = cornerWords(plan, termWord('edging', terms), true)
  const dips = plan.edgingDips ?? []
  if (words === '' && dips.length === 0) return
  const size = mapSize(plan)
  // Squares and counts stand round it.
  const around = plateReach(SMALLEST_TYPE, EDGE.line)
  const scale = Math.min((width - 2 * around) / size.width, (down - 2 * around) / size.height)
  const line = (outline: readonly Point[], paint: Paint, isClosed = true) =>
    drawPath(
      polygonPath(
        outline.map(({ x, y }) => ({ x: around + x * scale, y: around + y * scale })),
        isClosed,
      ),
      paint,
    )
  const figure: Figure = {
    width: size.width * scale + 2 * around,
    height: size.height * scale + 2 * around,
    items: [
      ...ground.edge.map((outline) => line(outline, { stroke: INK, width: EDGE.line })),
      ...dips.map((outline) => line(outline, { fill: DIP })),
      ...alongEnds(job).map((outline) => line(outline, { stroke: QUIET_INK, width: EDGE.line / 2 })),
      ...plan.edgingLines.map((outline, i) =>
        line(outline, { stroke: QUIET_INK, width: EDGE.line / 2 }, !plan.round || i >= OPEN_ENDS),
      ),
      ...cornerPlates(plan, {
        ...{ scale, type: SMALLEST_TYPE, ink: INK, paper: PAPER, line: EDGE.line },
        ...{ left: around, top: around, isBeside: true },
      }),
    ],
  }
  const told = [words, dips.length > 0 ? dipWords(terms) : ''].filter(Boolean).join(' ')
  flow.need(figure.height + flow.sheet.heightOf(told, width) + 2 * AIR)
  flow.y = flow.sheet.figure(figure, flow.sheet.left, flow.y + AIR, FIGURE_WORDS.edge) + AIR
  flow.y = flow.sheet.paragraph(told, flow.sheet.left, flow.y, width) + AIR
}
