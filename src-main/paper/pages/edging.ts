/** An edging with written rounds, for this blanket: stitches to pick up by side and motif, rounds, counts at their ends. */
import type { Point } from '../../../shared-types/plan'
import type { Terms } from '../../../shared-types/project'
import { edgeSigns } from '../../../src-core/edging/edge-names'
import type { EdgeSign } from '../../../src-core/edging/edge-names'
import { OPEN_ENDS } from '../../../src-core/edging/open-ends'
import { cornerPlates, cornerWords, plateReach } from '../../../src-core/figures/edging-corners'
import { edgingSigns } from '../../../src-core/figures/edging-signs'
import type { EdgingSign, EdgingSigns } from '../../../src-core/figures/edging-signs'
import { drawPath, drawText, INK, MM_PER_POINT, PAPER, QUIET_INK } from '../../../src-core/figures/figure'
import type { Figure, FigureItem, Paint } from '../../../src-core/figures/figure'
import { capitalDrop, FIGURE_WIDTH, SMALLEST_TYPE } from '../../../src-core/figures/lettering'
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
import { EDGING_PAGE, edgingAbout, edgingTitle } from '../words-edging'
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
  // Plain rounds take a few lines; but letters that tell tips apart are worth a page where they have no room below.
  if (!edging.loops?.length) {
    const isLettered = signedPages(job, top).isLettered
    return withPart(job, before, (from) => {
      const below = signedPages(job, from)
      return from > top && isLettered && !below.isLettered ? [] : below.drafts
    })
  }
  const last = before.at(-1)
  // What begins on a page is marked there.
  const runsOver = last?.bookmarks.length === 0 && isSparse([last, last])
  const isWhole = runsOver && edgingPages(job, last.end! + BETWEEN).length === 1
  return isWhole
    ? withPart(job, before, (from) => edgingPages(job, from))
    : [...before, ...edgingPages(job, top)]
}

/** Its pages from a height on. */
const edgingPages = (job: Job, top: number): Draft[] => signedPages(job, top).drafts

interface SignedPages {
  readonly drafts: Draft[]
  /** The drawing has the letters that its rounds name. */
  readonly isLettered: boolean
}

/** The same, with the edge as large as they have room for, and the signs that stand clear on it. */
function signedPages(job: Job, top: number): SignedPages {
  for (const signs of signsInTurn(job)) {
    const drafts = pagesWith(job, EDGE.down, top, signs)
    // Where gaps are wide can be seen on the map: to number their chains is worth no page.
    const isAside = signs.letters.length === 0 && signs.chains.length > 0
    if (isAside && drafts.length > 1 && top > newSheet(job).top) continue
    const [{ sheet, end = 0 } = { sheet: null }] = drafts
    const down =
      sheet && drafts.length === 1 ? Math.min(EDGE.most, EDGE.down + sheet.bottom - end) : EDGE.down
    const larger = pagesWith(job, down, top, signs)
    const isLarger = larger.length === drafts.length
    if (isClear(placedSigns(job, signs, scaleIn(job, isLarger ? down : EDGE.down))))
      return { drafts: isLarger ? larger : drafts, isLettered: signs.letters.length > 0 }
  }
  return { drafts: [], isLettered: false }
}

function pagesWith(job: Job, down: number, top: number, signs: Signs): Draft[] {
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
  cornerFigure(job, flow, width, down, signs)
  const told = edgingSteps({ ...job, ...(signs.letters.length > 0 && { signs: signs.of }) })!
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

/** mm. Words beside the drawing keep so far from it, and are no narrower. */
const BESIDE = { gap: 6, least: 45 } as const

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

/** Room round the drawing: squares, counts and chains stand there. */
const around = plateReach(SMALLEST_TYPE, EDGE.line)
const widthOf = (job: Job): number => Math.min(WIDTH, newSheet(job).inner)
const scaleIn = (job: Job, down: number): number => {
  const size = mapSize(job.plan)
  const width = widthOf(job)
  return Math.min((width - 2 * around) / size.width, (down - 2 * around) / size.height)
}

/** mm. Letters keep so far from the edge, what stands outside so far from the border, and signs from each other. */
const SIGN = { inside: 2, beyond: 1.9, air: 0.3 } as const

/** A letter or a number where it is printed, in mm of the drawing. */
type Placed = Pick<EdgingSign, 'text' | 'x' | 'y'>

/** Signs, and whether those at tips stand outside of the border, where they are farther from each other. */
interface Signs extends EdgingSigns {
  readonly areTipsOutside: boolean
}

/** Where signs stand on the drawing: at dips inside of the edge, between tips outside of the border. */
function placedSigns({ plan }: Job, { letters, chains, areTipsOutside }: Signs, scale: number): Placed[] {
  const outside = (plan.edging?.height ?? 0) * scale + SIGN.beyond
  const placed = (signs: readonly EdgingSign[], by: (sign: EdgingSign) => number): Placed[] =>
    signs.map((sign) => ({
      text: sign.text,
      x: around + sign.x * scale + sign.out.x * by(sign),
      y: around + sign.y * scale + sign.out.y * by(sign),
    }))
  return [
    ...placed(letters, ({ isTip }) => (isTip && areTipsOutside ? outside : -SIGN.inside)),
    ...placed(chains, () => outside),
  ]
}

const signWidth = ({ text }: Placed): number => text.length * SMALLEST_TYPE * FIGURE_WIDTH * MM_PER_POINT

/** Whether signs stand clear of each other. */
function isClear(signs: readonly Placed[]): boolean {
  const high = 2 * capitalDrop(SMALLEST_TYPE)
  const inOrder = [...signs].sort((a, b) => a.y - b.y)
  return inOrder.every((one, i) => {
    for (let k = i + 1; k < inOrder.length && inOrder[k]!.y - one.y < high + SIGN.air; k++)
      if (Math.abs(inOrder[k]!.x - one.x) < (signWidth(one) + signWidth(inOrder[k]!)) / 2 + SIGN.air)
        return false
    return true
  })
}

/** Which signs the drawing of the border may have where it is largest, those that say the most first; none at last. */
function signsInTurn(job: Job): Signs[] {
  const { plan } = job
  const all = edgingSigns(plan)
  const none: Signs = { ...all, letters: [], chains: [], areTipsOutside: false }
  const { letters, chains } = all
  // Corners have their plates outside.
  const places = (plan.edging?.loops ?? []).length > 0 ? [false] : [false, true]
  const lettered = (numbers: typeof chains): Signs[] =>
    letters.length === 0 ? [] : places.map((areTipsOutside) => ({ ...all, chains: numbers, areTipsOutside }))
  const numbered = chains.length === 0 ? [] : [...lettered(chains), ...lettered([]), { ...none, chains }]
  const largest = scaleIn(job, EDGE.most)
  return [
    ...(chains.length === 0 ? lettered([]) : numbered).filter((signs) =>
      isClear(placedSigns(job, signs, largest)),
    ),
    none,
  ]
}

/** What the edges of holes and parts are called, inside of them: the number alone where there is no room for more. */
const edgeItems = (edges: readonly EdgeSign[], scale: number): FigureItem[] =>
  edges.flatMap(({ text, short, x, y, room }) => {
    const fits = (words: string): boolean =>
      words !== '' && signWidth({ text: words, x, y }) + 2 * SIGN.air <= room * scale
    const told = fits(text) ? text : short
    const at = { x: around + x * scale, y: around + y * scale + capitalDrop(SMALLEST_TYPE) }
    return told === '' ? [] : [drawText(told, at.x, at.y, SMALLEST_TYPE, { anchor: 'middle' })]
  })

/** The edge with its corners, dips and signs, and the stitches between corners; nothing where no words count any. */
function cornerFigure(job: Job, flow: Flow, width: number, down: number, signs: Signs): void {
  const { plan, ground, terms } = job
  const words = cornerWords(plan, termWord('edging', terms), true)
  const dips = plan.edgingDips ?? []
  const { letters, chains } = signs
  const edges = edgeSigns(plan)
  const isPlain = words === '' && dips.length === 0 && letters.length === 0 && chains.length === 0
  if (isPlain && edges.length === 0) return
  const size = mapSize(plan)
  const scale = scaleIn(job, down)
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
      ...placedSigns(job, signs, scale).map(({ text, x, y }) =>
        drawText(text, x, y + capitalDrop(SMALLEST_TYPE), SMALLEST_TYPE, { anchor: 'middle' }),
      ),
      ...edgeItems(edges, scale),
    ],
  }
  const told = [
    words,
    dips.length > 0 ? dipWords(terms) : '',
    letters.length > 0 ? EDGING_PAGE.letters : '',
    chains.length > 0 ? EDGING_PAGE.chains : '',
    edges.some(({ short }) => short !== '') ? EDGING_PAGE.edges : '',
  ]
    .filter(Boolean)
    .join(' ')
  // Beside a narrow drawing its words take no room below.
  const beside = width - figure.width - BESIDE.gap
  const isBeside = beside >= BESIDE.least
  flow.need(figure.height + (isBeside ? AIR : flow.sheet.heightOf(told, width) + 2 * AIR))
  const { sheet } = flow
  const top = flow.y + AIR
  flow.y = sheet.figure(figure, sheet.left, top, FIGURE_WORDS.edge) + AIR
  if (isBeside) sheet.paragraph(told, sheet.left + figure.width + BESIDE.gap, top + around, beside)
  else flow.y = sheet.paragraph(told, sheet.left, flow.y, width) + AIR
}
