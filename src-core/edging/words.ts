/** What the lines of an edging are called and counted, the same in window, command line and paper. */
import type { Finding } from '../../shared-types/finding'
import type { EdgingAccount, EdgingDip, EdgingLoop, EdgingRound, Plan } from '../../shared-types/plan'
import type { EdgingEnds, Terms, UnitSystem } from '../../shared-types/project'
import { capital, counted, listed, ordinal } from '../figures/words'
import { signedArea } from '../geometry/points'
import { inSpelling } from '../stitches/spelling'
import { stitchAbbreviation } from '../stitches/terms'
import type { StitchKey } from '../stitches/table'
import { formatLength, formatNumber } from '../units/format'
import { areBothEnds, edgeNames, ENDS, workedNames } from './edge-names'

/** The names of its edges follow from these. */
type EdgedPlan = Pick<Plan, 'round' | 'edgingLines' | 'motifs'>

/** "The mouth, along the top of the map"; of a flat piece "Around the hole in row 3". */
export const edgeTitle = (plan: EdgedPlan, { line }: Pick<EdgingLoop, 'line'>): string =>
  !plan.round || line >= ENDS.length
    ? capital(edgeNames(plan)[line] ?? '')
    : line === 0
      ? 'The mouth: row 1, along the top of the map'
      : 'The bottom: the last row, along the bottom of the map'

/**
 * "counterclockwise": which way a line is worked with the right side facing. Of an open end as it is held, with the edge
 * up: both ends are worked alike then, whichever of them the map shows at its bottom.
 */
export function wayWords(
  { round, edgingLines, settled }: Pick<Plan, 'round' | 'edgingLines' | 'settled'>,
  line: number,
  terms: Terms,
): string {
  const isRight = settled.hand === 'right'
  if (round && line < ENDS.length) return isRight ? 'from right to left' : 'from left to right'
  const isHole = signedArea(edgingLines[line] ?? []) < 0
  return isRight === isHole ? 'clockwise' : inSpelling('anticlockwise', terms)
}

/** The rounds of an edging that are written, behind its plain ones. */
export const writtenOf = ({ rounds }: Pick<EdgingAccount, 'rounds'>): readonly EdgingRound[] =>
  rounds.filter(({ worked }) => worked !== undefined)

/** What is wrong with a written round, so that it is not counted; null where nothing is. */
export const wrongIn = ({ findings }: Pick<Plan, 'findings'>, round: EdgingRound): Finding | null =>
  findings.find(
    ({ severity, target }) =>
      severity === 'error' && target?.edging !== undefined && target.round === round.number,
  ) ?? null

/** Where an edging of what is joined in the round is worked. */
export const ENDS_WORDS: Readonly<Record<EdgingEnds, string>> = {
  both: 'at both ends',
  mouth: 'at the mouth alone',
  bottom: 'at the bottom alone',
}

/** "129 stitches, 43 repeats, 43 picots": what one line has of a written round. */
const lineWords = (loop: EdgingLoop, index: number): string =>
  [
    counted(loop.made[index] ?? 0, 'stitch', 'stitches'),
    ...((loop.repeats[index] ?? 0) > 1 ? [counted(loop.repeats[index]!, 'repeat')] : []),
    ...((loop.picots[index] ?? 0) > 0 ? [counted(loop.picots[index]!, 'picot')] : []),
  ].join(', ')

/**
 * Of an edging along several lines, what a written round comes to on each: "at each end 129 stitches, 43 repeats", "mouth
 * 129 stitches, bottom 135 stitches"; empty along one line.
 */
export function byLineWords(plan: EdgedPlan & Pick<Plan, 'edging'>, index: number): string {
  const loops = plan.edging?.loops ?? []
  if (loops.length < 2) return ''
  const each = loops.map((loop) => lineWords(loop, index))
  const isEnds = areBothEnds(plan)
  if (new Set(each).size === 1) return `at each ${isEnds ? 'end' : `of ${loops.length} edges`} ${each[0]!}`
  const names = edgeNames(plan)
  return listed(each.map((words, i) => `${isEnds ? ENDS[i]! : names[loops[i]!.line]!} ${words}`))
}

/** Rows up to which each is told by itself (ours: more are not read, but counted). */
const ROWS_TOLD = 12

/**
 * "in each of 16 dips (29.5 mm wide, 7 mm deep) 1 hdc, 1 dc, 2 tr, 1 dc, 1 hdc from tip to tip": how dips that are alike
 * are filled.
 */
function dipWords(dip: EdgingDip, terms: Terms, units: UnitSystem, over = true): string {
  const name = (stitch: string): string => stitchAbbreviation(stitch as StitchKey, terms)
  const { count, width, depth, rows, rowStitch = 'sc', cleft } = dip
  const which = `in ${count === 1 ? 'the dip' : `each of ${formatNumber(count)} dips`} ${formatLength(width, units)} wide and ${formatLength(depth, units)} deep`
  const across = acrossWords(dip, terms)
  if (rows.length > 0) {
    const all = rows.reduce((sum, each) => sum + each, 0)
    const told =
      rows.length <= ROWS_TOLD
        ? `of ${listed(rows.map((each) => formatNumber(each)))} ${name(rowStitch)} from the bottom up`
        : `of ${formatNumber(rows[0]!)} ${name(rowStitch)} at the bottom to ${formatNumber(rows.at(-1)!)} at the top, ${formatNumber(all)} in all`
    return `${which}${over ? ' first' : ','} ${counted(rows.length, 'row')} back and forth ${told}, each held to the edge with a slip stitch at both ends${over ? `, then ${across} over them` : ''}`
  }
  return `${which} ${across} from tip to tip${cleft ? ', the tallest into both sides' : ''}`
}

const acrossWords = ({ work }: EdgingDip, terms: Terms): string =>
  work
    .map(({ stitch, count }) => `${formatNumber(count)} ${stitchAbbreviation(stitch as StitchKey, terms)}`)
    .join(', ')

/**
 * How the first round of a levelling edging is worked along one of `lines` lines, of `stitches` in `stitch`: which dips
 * rows fill before it, and how its own stitches lie in the dips and between them, so that they come to as many. Null
 * where there are no dips.
 */
export function leveledRound(
  { dips = [] }: Pick<EdgingAccount, 'dips'>,
  { lines, stitches, stitch }: { readonly lines: number; readonly stitches: number; readonly stitch: string },
  terms: Terms,
  units: UnitSystem,
): { readonly before: string; readonly within: string } | null {
  if (dips.length === 0) return null
  // Lines that differ have other dips each: then they are told together, and what is left over is found by hand.
  const isEach = dips.every(({ count }) => count % lines === 0)
  const own = isEach ? dips.map((dip) => ({ ...dip, count: dip.count / lines })) : dips
  const filled = own.filter(({ rows }) => rows.length > 0)
  const parts = own.map((dip) =>
    dip.rows.length === 0
      ? dipWords(dip, terms, units)
      : `${acrossWords(dip, terms)} from tip to tip over ${dip.count === 1 ? 'the filled dip' : `each of the ${formatNumber(dip.count)} filled dips`}${filled.length > 1 ? ` of ${counted(dip.rows.length, 'row')}` : ''}`,
  )
  const inDips = own.reduce(
    (sum, { count, work }) => sum + count * work.reduce((all, each) => all + each.count, 0),
    0,
  )
  const rest = stitches - inDips
  const others =
    !isEach || rest === 0
      ? ''
      : rest === 1
        ? `; and 1 ${stitch} more at a tip`
        : rest > 0
          ? `; and the other ${formatNumber(rest)} ${stitch} along the edge between them`
          : `; but ${formatNumber(-rest)} fewer in all, here and there in the dips`
  return {
    before:
      filled.length === 0
        ? ''
        : `First fill the deep dips, each with a piece of yarn of its own: ${filled.map((dip) => dipWords(dip, terms, units, false)).join('; ')}. `,
    within: ` Work them so: ${parts.join('; ')}${others}${isEach ? '' : ', at all ends together'}.`,
  }
}

/** How a levelling edging fills the dips of the edge; empty where it has none. */
export const levelWords = (
  { dips = [] }: Pick<EdgingAccount, 'dips'>,
  terms: Terms,
  units: UnitSystem,
): string[] => dips.map((dip) => dipWords(dip, terms, units))

/**
 * ", 3 in each of 4 corners"; along an edge that goes in and out ", 2 in one place at each of 24 outer tips and 2 together
 * at each of 18 dips"; empty where a plain round has none.
 */
export const cornerWords = (round: EdgingRound, nameOf?: CornerName, signOf?: SignOf): string =>
  round.bends
    ? `, ${bendWords(round.bends, 'outer tip', 'dip', nameOf, signOf)}`
    : round.inCorner === undefined
      ? ''
      : `, ${formatNumber(round.inCorner)} in ${each(round.corners ?? 0, 'corner')}`

/** "each of 4 corners", "the corner"; of a line among several, whose own number is not known, "each corner". */
const each = (count: number, name: string): string =>
  count === 0 ? `each ${name}` : count === 1 ? `the ${name}` : `each of ${counted(count, name)}`

type Bends = NonNullable<EdgingRound['bends']>

/** By how sharply they turn, the sharpest first: how those of several kinds are told apart. */
const KINDS = {
  tips: ['most pointed', 'less pointed', 'bluntest'],
  dips: ['narrowest', 'less narrow', 'widest'],
} as const

/**
 * Which of the tips or dips take so many: all alike, or by how sharp they are, since the sharper one is the more it
 * takes. `rank`: counted from the sharpest.
 */
function whichOf(count: number, name: string, rank: number, of: number, kinds: keyof typeof KINDS): string {
  if (of === 1) return each(count, name)
  const [most, less, least] = KINDS[kinds]
  const sharp = rank === 0 ? most : rank === of - 1 ? least : of === 3 ? less : `${ordinal(rank + 1)} ${most}`
  const named = `${sharp} ${name}`
  return count === 1
    ? `the ${named}`
    : `${count === 0 ? 'each of the' : `each of the ${formatNumber(count)}`} ${named}s`
}

/** What corners are called on a page that names them: "the top right corner", "corner 2". */
export type CornerName = (corner: number) => string

/** The letters that a drawing has at the tips or dips of a round that take so many more; '' where it has none. */
export type SignOf = (more: number) => string

/** "each of 2 corners", "the top left and the top right corner". */
const atCorners = (corners: readonly number[], nameOf: CornerName | undefined): string =>
  nameOf ? listed(corners.map(nameOf)) : corners.length === 1 ? 'one corner' : each(corners.length, 'corner')

/** More stitches are not worked together (common practice): what a dip takes away besides is passed over beside them. */
const MOST_TOGETHER = 3

/** "2 together"; "3 together with 2 stitches skipped on each side", "with 1 stitch skipped before them and 2 after". */
function fewerWords(together: number): string {
  const skipped = together - MOST_TOGETHER
  if (skipped <= 0) return `${formatNumber(together)} together`
  const half = Math.floor(skipped / 2)
  const stitches = (count: number): string => counted(count, 'stitch', 'stitches')
  const where =
    skipped % 2 === 0
      ? `${stitches(half)} skipped on each side`
      : half === 0
        ? '1 stitch skipped before them'
        : `${stitches(half)} skipped before them and ${formatNumber(half + 1)} after`
  return `${formatNumber(MOST_TOGETHER)} together with ${where}`
}

/**
 * "5 in one place at each of 2 corners, 2 in one place at each of the 15 other outer tips and 2 together at each of 13
 * dips": sharper tips that are corners of the piece are told as these.
 */
function bendWords(
  bends: Bends,
  tip: string,
  dip: string,
  nameOf?: CornerName,
  signOf: SignOf = () => '',
): string {
  const signed = (more: number): string => (signOf(more) === '' ? '' : ` (${signOf(more)})`)
  const tips = bends.filter(({ more }) => more > 0).sort((a, b) => b.more - a.more)
  const dips = bends.filter(({ more }) => more < 0).sort((a, b) => a.more - b.more)
  const [first, ...rest] = tips
  const sharp = rest.length > 0 ? first?.corners : undefined
  const others = sharp ? rest : tips
  const which = (count: number, i: number): string =>
    sharp && others.length === 1
      ? count === 0
        ? `each other ${tip}`
        : count === 1
          ? `the other ${tip}`
          : `each of the ${formatNumber(count)} other ${tip}s`
      : whichOf(count, sharp ? `other ${tip}` : tip, i, others.length, 'tips')
  return listed([
    ...(sharp
      ? [`${formatNumber(first!.more + 1)} in one place at ${atCorners(sharp, nameOf)}${signed(first!.more)}`]
      : []),
    ...others.map(
      ({ count, more }, i) => `${formatNumber(more + 1)} in one place at ${which(count, i)}${signed(more)}`,
    ),
    ...dips.map(
      ({ count, more }, i) =>
        `${fewerWords(1 - more)} at ${whichOf(count, dip, i, dips.length, 'dips')}${signed(more)}`,
    ),
  ])
}

/**
 * "Round 1: 518 stitches, 3 in one place at each of 18 outer tips and 3 together at each of 14 dips (300 at the mouth,
 * 218 at the bottom)": what plain rounds have, with which tips and corners take more; empty where none of them does.
 */
export const plainRoundsWords = (plain: readonly EdgingRound[], plan: EdgedPlan): string[] =>
  plain.every(({ inCorner, bends, byLine }) => !(inCorner ?? bends ?? byLine))
    ? []
    : plain.map(
        (round) =>
          `Round ${round.number}: ${counted(round.stitches, 'stitch', 'stitches')}${cornerWords(round)}${plainByLine(round, plan)}`,
      )

/** The same over chains, where a corner is a tip or lies between two of them; the line turns in and out at its tips. */
const bridgedCorners = (
  { corners = 0, inCorner = 1, bends }: EdgingRound,
  signOf: SignOf | undefined,
  endsInHalf: boolean,
): string =>
  bends
    ? `, ${bendWords(bends, 'outer tip', 'inner tip', undefined, signOf)}`
    : `, ${formatNumber(inCorner)} in one place at ${each(corners, 'corner')} (the outermost tip${endsInHalf ? ', or the end of the straight side of a half motif' : ''}, or midway between the two outermost)`

/** Whether the first or the last row ends in a half motif: there a corner is an end of its straight side, and no tip. */
export function hasHalfCorners({ motifs, halves }: Pick<Plan, 'motifs' | 'halves'>): boolean {
  if (halves.length === 0) return false
  const both = [...motifs, ...halves]
  const first = both.reduce((least, { row }) => Math.min(least, row), Infinity)
  const last = both.reduce((most, { row }) => Math.max(most, row), -Infinity)
  return halves.some(({ row }) => row === first || row === last)
}

/** How a plain round is worked into the one before it; where that bridges with chains, their number is not its own. */
export const laterWords = (
  round: EdgingRound,
  stitch: string,
  before?: EdgingRound,
  nameOf?: CornerName,
  signOf?: SignOf,
  /** A corner of the work lies in a half motif (`hasHalfCorners`). */
  endsInHalf = false,
): string =>
  round.inCorner === undefined && !round.bends
    ? `${stitch} evenly into the round before`
    : before && before.chains > 0
      ? `${stitch} in each stitch and evenly over the chains${bridgedCorners(round, signOf, endsInHalf)}`
      : `${stitch} in each stitch${cornerWords(round, nameOf, signOf)}`

/**
 * Of a plain round along several lines, its stitches on each: "(120 at the mouth, 96 at the bottom)", "(96 at each end)",
 * "(394 around the outside, 41 around the hole in row 5)"; empty along one line.
 */
export function plainByLine({ byLine = [] }: EdgingRound, plan: EdgedPlan): string {
  if (byLine.length < 2) return ''
  const [first] = byLine
  if (byLine.every((each) => each === first))
    return ` (${formatNumber(first!)} at each ${areBothEnds(plan) ? 'end' : `of ${byLine.length} edges`})`
  const names = workedNames(plan)
  return ` (${listed(byLine.map((each, i) => `${formatNumber(each)} ${names[i] ?? ''}`.trim()))})`
}
