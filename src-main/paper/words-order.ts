/** The words of the order of work. */
import { formatNumber } from '../../src-core/units/format'
import type { Plan } from '../../shared-types/plan'
import type { JoinWay, OrderList, OrderPart, OrderRun, RowKind } from '../../src-core/figures/order-list'
import { isSewnBySides, seamVerb } from '../../src-core/figures/seam-words'
import { nameAmong, PIECE_NAME, roundOf, standsWords } from '../../src-core/figures/piece-words'
import { saying } from '../../src-core/stitches/spelling'
import { capital, counted, plural } from '../../src-core/figures/words'
import { legendsOf, listOf, marksIn } from '../../src-core/joins/words'
import type { PlacedPiece } from '../../src-core/layout/placed'
import type { Job } from './page'
import { HEADINGS, PAGE_NAMES } from './words'
import { joinedAsYouGo, stepSentence } from './words-joining'

/** How far one of the list is: what it is to be ticked off for is done, or it is made and that is still to come. */
export type Done = 'ticked' | 'made' | ''

export const boxOf = (done: Done): string => (done === 'ticked' ? '☑' : '☐')
export const madeAfter = (done: Done): string => (done === 'made' ? ', made' : '')

/** "☐ 14 B", "☑ 14 B": a box to tick in a row of them. */
export const boxWords = (label: string, code: string, done: Done): string =>
  `${boxOf(done)} ${label}${code === '' ? '' : ` ${code}`}${madeAfter(done)}`

/** "☐ 14 · row 4, motif 3 · B", "☐ 131 · filler between 14, 15, 27 and 28 · C". */
export const stepTitle = (label: string, where: string, code: string, done: Done): string =>
  `${boxOf(done)} ${label} · ${where}${code === '' ? '' : ` · ${code}`}${madeAfter(done)}`

export const ORDER_HEADINGS = {
  ways: 'Ways to join',
  kinds: 'What the rows are made of',
  list: 'Tick list',
} as const

export const ROW_DIRECTIONS = { right: 'left to right →', left: '← right to left' } as const

/** "120 motifs, 12 half motifs and 88 fillers". */
export const piecesWords = ({ motifs, halves, fillers }: Plan): string =>
  listOf([
    counted(motifs.length, 'motif'),
    ...(halves.length > 0 ? [counted(halves.length, 'half motif')] : []),
    ...(fillers.length > 0 ? [counted(fillers.length, 'filler')] : []),
  ])

const othersWords = ({ halves, fillers }: Plan): string =>
  [halves.length > 0 ? 'half motifs' : '', fillers.length > 0 ? 'fillers' : ''].filter(Boolean).join(' and ')

/** From this size on, in sides of the others, a motif lies in several rows. */
const LARGE = 1.5

/** Squares in straight rows are sewn strip by strip: two kinds of long seams in place of one at each side. */
function stripsWords({ settled, motif, accounts, arrangement, joins }: Plan): string {
  const sides = joins.some(({ members }) => members.some(({ anchor }) => anchor.startsWith('side')))
  if (settled.joining.rule !== 'seam' || arrangement !== 'straight-rows' || motif?.petals !== 4 || !sides)
    return ''
  // A large one reaches over several rows.
  if (accounts.some(({ overValleys }) => overValleys > LARGE * motif.overValleys)) return ''
  return ' Quicker: sew the motifs of each row into a strip, then sew the strips to each other, each with one long seam; corners close where seams cross.'
}

export function orderIntroduction(
  { plan, terms }: Pick<Job, 'plan' | 'terms'>,
  told: boolean,
  ways: readonly JoinWay[],
  /** Joined wherever the map has a dot. */
  byDots = false,
): string {
  const isSewn = isSewnBySides(plan)
  const isJoined = told || isSewn || byDots
  const what = isJoined ? 'joined' : 'finished'
  const shared =
    ways.length > 0
      ? saying(
          terms,
        )` Join what stands after the name of a way as that way says; letters such as ${ways[0]!.neighbours[0]?.letter ?? 'P'} mark its neighbours in the small drawing.`
      : ''
  // Along a seam nothing is counted from others.
  const isCounted = told && joinedAsYouGo(plan.settled.joining)
  const sides = isCounted
    ? legendsOf(
        plan.order.map(({ words }) => words),
        marksIn([plan.motif, ...plan.accounts]),
      )
        .map((each) => ` ${each}`)
        .join('')
    : ''
  const first = plan.motifs.length + 1
  const others = plan.halves.length + plan.fillers.length
  const after =
    others > 0
      ? ` Numbers from ${formatNumber(first)} on are ${othersWords(plan)}: ${isJoined ? 'join' : 'work'} each of them as soon as all the motifs ${plan.fillers.length > 0 ? 'round' : 'beside'} it are there, which is where the list has it.`
      : ''
  const done =
    (isJoined ? plan.marks.joined : plan.marks.made).length > 0 ? ` The ones already ${what} are ticked.` : ''
  const rule = isSewn
    ? ` ${capital(seamVerb(plan))} each to all the motifs that are there already, along every side that it shares with one.`
    : byDots
      ? ` Join each to all the motifs that are there already, at every dot on the map that it shares with one of them, as “${HEADINGS.joins}” shows; where more than two meet, join into the space that the others share.`
      : ''
  return `Tick off each one when it is ${what}.${done}${rule}${stripsWords(plan)}${shared}${sides}${after} ${piecesWords(plan)}, ${counted(plan.ends, 'end')} to weave in.`
}

export const wayName = ({ number }: Pick<JoinWay, 'number'>): string => `Way ${number}`

/** "Way 3 · 70 motifs", "Way 4 · 12 × Blossom". */
export function wayTitle(plan: Plan, way: JoinWay): string {
  const name = nameAmong(plan, way.piece)
  const what = name ? `${way.uses} × ${name}` : counted(way.uses, PIECE_NAME[way.kind])
  return `${wayName(way)} · ${what}`
}

/** "P left, Q upper left". */
export const neighboursWords = ({ neighbours }: JoinWay): string =>
  neighbours.map(({ letter, where }) => `${letter} ${where}`).join('; ')

/** "☐ 131 · 14, 15, 27, 28 · C" for a filler, "☐ 31 · row 4, left · A" for a half motif. */
export function additionTitle(plan: Plan, piece: PlacedPiece, code: string, done: Done): string {
  const name = nameAmong(plan, piece)
  const round =
    piece.kind === 'filler'
      ? roundOf(plan, piece).join(', ') + (name ? ` · ${name}` : '')
      : standsWords(plan, piece)
  return stepTitle(piece.label, round, code, done)
}

/** Above the boxes of half motifs and fillers: "Way 9 · fillers, each between the motifs named:". */
export function additionWords(runs: readonly OrderRun[]): string {
  const { kind } = runs[0]!.steps[0]!
  const count = runs.reduce((sum, { steps }) => sum + steps.length, 0)
  const way = new Set(runs.map((run) => run.way)).size === 1 ? runs[0]!.way : null
  const what = plural(count, PIECE_NAME[kind])
  const where = kind === 'filler' ? `, ${count > 1 ? 'each ' : ''}between the motifs named` : ''
  return `${way ? `${wayName(way)} · ${what}` : capital(what)}${where}:`
}

/** "Row 4", "Ring 2", "The middle". */
export function partName({ of, number }: Pick<OrderPart, 'of' | 'number'>, colourway: string): string {
  if (of === 'row') return `Row ${number}`
  if (of === 'ring') return number === 0 ? 'The middle' : `Ring ${number} round the middle`
  return of === 'colourway' ? colourway : ''
}

/** Above boxes that begin a column in the middle of something: "Row 9, continued; way 4:". */
export function againWords(part: string, way: JoinWay | null): string {
  const words = [part === '' ? '' : `${part}, continued`, way ? wayName(way).toLowerCase() : '']
  const told = words.filter(Boolean).join('; ')
  return told === '' ? '' : `${capital(told)}:`
}

/** Rows that follow each other by one or by two: "2–5", "3, 5, 7 and every second row up to 49". */
export function rowsWords(rows: readonly number[]): string {
  const spans: { from: number; to: number; by: number; count: number }[] = []
  for (const row of rows) {
    const last = spans.at(-1)
    const by = last ? row - last.to : 0
    if (last && (by === 1 || by === 2) && (last.count === 1 || last.by === by)) {
      last.to = row
      last.by = by
      last.count++
    } else spans.push({ from: row, to: row, by: 0, count: 1 })
  }
  const told = spans.flatMap(({ from, to, by, count }) => {
    const all = Array.from({ length: count }, (_, i) => from + i * by)
    if (count < 3) return all.map(String)
    if (by === 1) return [`${from}–${to}`]
    return count < 6 ? all.map(String) : [`every second row from ${from} to ${to}`]
  })
  return `${rows.length > 1 ? 'Rows' : 'Row'} ${listOf(told)}`.replace(/^Rows every/, 'Every')
}

/** Two ways that alternate from a run on, as often as they do. */
function alternating(runs: readonly OrderRun[], from: number): number {
  let to = from
  while (
    to < runs.length &&
    runs[to]!.steps.length === 1 &&
    runs[to]!.way === runs[from + ((to - from) % 2)]!.way
  )
    to++
  return to - from
}

/** A number stays with what it counts. */
const NO_BREAK = '\u00a0'

/** What every row is made of, from the first on; one that is like no other is told in its place. */
export function kindsWords({ kinds, parts }: Pick<OrderList, 'kinds' | 'parts'>): string[] {
  const alike = new Set(kinds.flatMap(({ rows }) => rows))
  const alone = parts.flatMap(({ of, number }) => (of === 'row' && !alike.has(number) ? [number] : []))
  const told = kinds.map((kind) => ({ first: kind.rows[0]!, words: kindWords(kind) }))
  if (alone.length > 0) told.push({ first: alone[0]!, words: `${rowsWords(alone)}: step by step, below.` })
  return told.sort((a, b) => a.first - b.first).map(({ words }) => words)
}

/** What a kind of row is made of: "first way 2, then 48 in way 3, last way 4". */
function kindWords({ rows, runs, sameLength }: RowKind): string {
  const phrases: string[] = []
  let i = 0
  while (i < runs.length) {
    const { way, steps } = runs[i]!
    const many = alternating(runs, i)
    if (many > 3) {
      phrases.push(`ways${NO_BREAK}${way!.number} and${NO_BREAK}${runs[i + 1]!.way!.number} alternating`)
      i += many
      continue
    }
    const what = way!.kind === 'motif' ? '' : ` (${plural(steps.length, PIECE_NAME[way!.kind])})`
    const place = i === 0 ? 'first ' : i === runs.length - 1 ? 'last ' : 'then '
    const name = `way${NO_BREAK}${way!.number}${what}`
    if (runs.length === 1) phrases.push(`all in ${name}`)
    else if (steps.length === 1) phrases.push(`${place}${name}`)
    else
      phrases.push(`${place === 'last ' ? 'then ' : place}${sameLength ? `${steps.length} × ` : ''}${name}`)
    i++
  }
  return `${rowsWords(rows)}: ${phrases.join(', ')}.`
}

/** The rows that are on a page. */
export function orderName(rows: readonly number[]): string {
  const [from, to] = [Math.min(...rows), Math.max(...rows)]
  return `${PAGE_NAMES.order}, ${from === to ? `row ${from}` : `rows ${from}–${to}`}`
}

/** Whether it is told of each motif how it is joined. */
export const isTold = ({ plan, settled }: Job): boolean =>
  stepSentence(settled.joining, 'told') !== '' && !isSewnBySides(plan)
