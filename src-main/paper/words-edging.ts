/** The words of the page on an edging with written rounds. */
import type { Finding } from '../../shared-types/finding'
import type { EdgingAccount, EdgingLoop, EdgingRound } from '../../shared-types/plan'
import type { Terms } from '../../shared-types/project'
import { cornerIncrease } from '../../src-core/edging/corners'
import { OPEN_ENDS } from '../../src-core/edging/open-ends'
import { edgeSides } from '../../src-core/figures/edging-corners'
import type { EdgingSigns } from '../../src-core/figures/edging-signs'
import { sideCounts } from '../../src-core/figures/edging-sides'
import type { EdgeSide } from '../../src-core/figures/edging-corners'
import { cornerWords, hasHalfCorners, laterWords, leveledRound, wayWords } from '../../src-core/edging/words'
import type { CornerName } from '../../src-core/edging/words'
import type { PickUp } from '../../src-core/edging/pick-up'
import { capital, counted, listed, ordinal, plural } from '../../src-core/figures/words'
import { nameAmong } from '../../src-core/figures/piece-words'
import { editionText } from '../../src-core/notation/translate'
import { canonicalStitch, termWord, translateStitch } from '../../src-core/stitches/terms'
import { formatNumber, formatRough } from '../../src-core/units/format'
import type { Job as WholeJob } from './page'
import { bridgedWords, tipOf } from './words-bridge'

/** What words of an edging are made from. */
type Job = Pick<WholeJob, 'plan' | 'settled' | 'terms' | 'units'> & Signed

/** What stands beside a drawing that has letters at tips and dips names them. */
export interface Signed {
  readonly signs?: EdgingSigns['of']
}

/** How many times as many stitches as usual a motif has that stands at a corner. */
const AT_CORNER = 1.4
/** How many times as many stitches as the least motif the most may have for a range that can be followed. */
const WIDE = 2

/** "Border", "Edging". */
export const edgingTitle = (terms: Terms): string => capital(termWord('edging', terms))

/** Notches of an open end turn by right angles, as the corners of a rectangle do. */
const RIGHT_ANGLES = 4

const yarnNames = (edging: EdgingAccount, { settled }: Job): string[] => [
  ...new Set(
    edging.rounds
      .map(({ yarn }) => settled.yarns.find(({ id }) => id === yarn)?.name || yarn)
      .filter(Boolean),
  ),
]

/** What it is, and what its rounds come out even on. */
export function edgingAbout(edging: EdgingAccount, job: Job): string {
  const { height, multiple, rounds } = edging
  const names = yarnNames(edging, job)
  const inYarn = names.length > 0 ? ` in ${listed(names)}` : ''
  const about = `${counted(rounds.length, 'round')}${inYarn}, ${formatRough(height, job.units)} wide in all.`
  if (!multiple || (multiple.of === 1 && multiple.plus === 0)) return about
  const plus = multiple.plus > 0 ? ` plus ${multiple.plus}` : ''
  const where = multiple.by === 'stretch' ? ' from each corner to the next' : ' in the whole round'
  return `${about} Its rounds come out even on a multiple of ${multiple.of} sts${plus}${where}: work exactly as many into the edge as stand here, evenly spaced.`
}

/** A line of an edging, as its words tell it. */
interface ToldLine {
  readonly loop: EdgingLoop
  /** The number of its first corner, as the map has it. */
  readonly first: number
  /** How many lines there are. */
  readonly lines: number
  /** Of plain rounds alone, whose corners have no numbers: what they are called, null where they have no names. */
  readonly corners?: readonly string[] | null
}

/** What corners are called in which a round has more stitches. */
const cornerNamed = ({ corners, loop }: ToldLine): CornerName | undefined =>
  corners === undefined
    ? loop.marks.length > 0 && loop.marks.every(({ kind }) => kind === 'corner')
      ? (corner) => `corner ${corner + 1}`
      : undefined
    : corners
      ? (corner) => `the ${corners[corner]!} corner`
      : undefined

/** "Right side facing, …": where the stitches of the first round are, which are picked up. */
export function setUpWords(setUp: EdgingRound, line: ToldLine, picked: readonly PickUp[], job: Job): string {
  const { terms, plan } = job
  const { loop, first } = line
  const stitch = translateStitch(setUp.stitch, job.settled.terms, terms) ?? setUp.stitch
  const leveled =
    plan.edging && setUp.number === 1
      ? leveledRound(plan.edging, { lines: line.lines, stitches: loop.stitches, stitch }, terms, job.units)
      : null
  const unit = leveled ? 'stitches' : setUp.chains > 0 ? `${stitch} and chains` : stitch
  const corners = loop.marks.filter(({ kind }) => kind === 'corner').length
  const isCornered = corners > 0 && corners === loop.marks.length
  const isMidway = (loop.bridged?.marks[0]?.chain ?? 0) > 0
  const place = (i: number): string => placeWords(edgeSides(plan, loop.line), corners, first, i)
  const bridged = setUp.chains > 0 ? bridgedWords(loop, plan, stitch, place, isCornered, terms) : null
  const how =
    bridged ??
    `${corners > 0 || setUp.bends ? cornerStitch(setUp, line, corners, job) : ''}${leveled ? leveled.within : motifWords(picked, corners, (motif) => nameAmong(plan, { kind: 'motif', motif }))}`
  const way = wayWords(plan, loop.line, terms)
  return `${leveled?.before ?? ''}Right side facing, join the yarn ${leveled && loop.marks.length === 0 ? 'at a tip' : joinedAt(line, isCornered, isMidway, tipOf(plan))}. Going ${way}, work ${formatNumber(loop.stitches)} ${unit} ${leveled ? 'straight from tip to tip' : 'along the edge'}${countedFrom(line, corners, plan)}.${how}`
}

/** Where the yarn of a round that is picked up is joined: where its stitches are counted from. */
function joinedAt(
  { loop, first, corners }: ToldLine,
  isCornered: boolean,
  isMidway: boolean,
  tip: string,
): string {
  const [begins] = loop.marks
  if (!begins) return 'anywhere along the edge'
  if (corners !== undefined) return corners ? `in the ${corners[0]!} corner` : 'in a corner'
  const at = isCornered ? `corner ${first}` : `a ${begins.kind}`
  return isMidway ? `in the last ${tip} before ${at}` : `at ${at}`
}

/** ", counted from the corner stitch at corner 1: 208 along the top …": how the stitches of a round lie between corners. */
function countedFrom({ loop, first, corners: names }: ToldLine, corners: number, plan: Job['plan']): string {
  if (names !== undefined)
    return corners > 0
      ? `, each side counted from its corner stitch: ${sideCounts(loop, edgeSides(plan, loop.line))}`
      : ''
  const at = corners > 0 && corners === loop.marks.length ? `corner ${first}` : 'a corner'
  const start = corners > 0 ? `, counted from the corner stitch at ${at}` : ''
  return `${start}${sideWords(loop, corners, first, edgeSides(plan, loop.line))}`
}

/** A later plain round along one line: worked into the stitches of the round before it, and no more along the edge. */
export function laterRoundWords(
  round: EdgingRound,
  before: EdgingRound | undefined,
  line: ToldLine,
  job: Job,
  /** Written rounds are worked into it: its stitches are counted from corner to corner. */
  isSetUp: boolean,
  /** Which of the lines that have an edging it is. */
  index = line.loop.line,
): string {
  const { loop, lines } = line
  const stitch = translateStitch(round.stitch, job.settled.terms, job.terms) ?? round.stitch
  const own = lines > 1 ? ofOneLine(round) : round
  const how = laterWords(
    own,
    stitch,
    before,
    cornerNamed(line),
    job.signs?.(round.number),
    hasHalfCorners(job.plan),
  )
  if (!isSetUp) return `${how}: ${formatNumber(round.byLine?.[index] ?? round.stitches)} ${stitch}.`
  const corners = loop.marks.filter(({ kind }) => kind === 'corner').length
  const isMidway = (before?.chains ?? 0) > 0
  const which = corners > 0 ? whichStitch(round, loop, corners, job, isMidway) : ''
  return `${how}: ${formatNumber(loop.stitches)} ${stitch}${countedFrom(line, corners, job.plan)}.${which}`
}

/** Where there are several lines, corners and bends are known of all of them together. */
const ofOneLine = (round: EdgingRound): EdgingRound => ({
  ...round,
  ...(round.corners !== undefined && { corners: 0 }),
  ...(round.bends && { bends: round.bends.map(({ more }) => ({ more, count: 0 })) }),
})

/** How many stitches lying flat takes in a corner; null where nothing is worked more there. */
function inOneCorner(
  setUp: EdgingRound,
  loop: EdgingLoop,
  corners: number,
  { plan, settled }: Job,
): number | null {
  const { gauge } = plan.edging!
  const turning = plan.round && loop.line < OPEN_ENDS ? RIGHT_ANGLES : corners
  const key = canonicalStitch(setUp.stitch, settled.terms) ?? 'sc'
  const more =
    gauge && setUp.chains === 0
      ? cornerIncrease(turning, key, { width: gauge.width, height: (each) => gauge.heights[each] ?? 0 })
      : null
  if (!gauge) return corners > 0 && (setUp.inCorner ?? 1) > 1 ? setUp.inCorner! : null
  return more === null || more <= 0 ? null : more + 1
}

const nthOf = (all: number): string =>
  all === 2 ? 'first of them' : all === 3 ? 'middle one' : `${ordinal(Math.ceil(all / 2))} of them`

/** " The corner stitch is the middle one of the 3 in the corner." */
function whichStitch(
  setUp: EdgingRound,
  loop: EdgingLoop,
  corners: number,
  job: Job,
  /** The round before it bridges dips: a corner may lie between two tips. */
  isMidway = false,
): string {
  const tip = tipOf(job.plan)
  if (isMidway && setUp.bends)
    return ` The corner stitch is that in the outermost ${tip} at its corner, or midway between the two outermost.`
  if (setUp.bends) return ` The corner stitch is the first of those in the outermost ${tip} at its corner.`
  const all = inOneCorner(setUp, loop, corners, job)
  return all === null ? '' : ` The corner stitch is the ${nthOf(all)} in each corner.`
}

/** How many stitches lying flat takes in a corner, and which of them is the one that is counted from. */
function cornerStitch(setUp: EdgingRound, line: ToldLine, corners: number, job: Job): string {
  const { loop, lines } = line
  if (setUp.bends) {
    const which = corners > 0 ? whichStitch(setUp, loop, corners, job) : ''
    const own = lines > 1 ? ofOneLine(setUp) : setUp
    const bends = cornerWords(own, cornerNamed(line), job.signs?.(setUp.number)).replace(/^, /, '')
    return ` Work ${bends}, so that it lies flat.${which}`
  }
  const all = inOneCorner(setUp, loop, corners, job)
  if (all === null) return ' The corner stitch stands alone at its corner.'
  return ` Work ${formatNumber(all)} into one place at each corner, so that it lies flat; the ${nthOf(all)} is the corner stitch.`
}

/** "along the top", "from corner 1 to 2": where a stretch of a line with corners is. */
function placeWords(
  sides: readonly EdgeSide[] | null,
  corners: number,
  first: number,
  stretch: number,
): string {
  if (sides) return `along the ${sides[stretch]!}`
  return `from corner ${first + stretch} to ${first + ((stretch + 1) % corners)}`
}

/** `first`: the number of the line's first corner, as the map has it. */
function sideWords(
  { stretches, marks }: EdgingLoop,
  corners: number,
  first: number,
  sides: readonly EdgeSide[] | null,
): string {
  const fromTo = (i: number) => `${first + i} to ${first + ((i + 1) % corners)}`
  if (sides)
    return `: ${listed(stretches.map((count, i) => `${formatNumber(count)} along the ${sides[i]!} (corner ${fromTo(i)})`))}`
  if (corners === marks.length && corners > 1)
    return `: ${listed(stretches.map((count, i) => `${formatNumber(count)} from corner ${fromTo(i)}`))}`
  const tips = marks.filter(({ kind }) => kind === 'tip').length
  const dips = marks.length - tips - corners
  if (marks.length === 0) return ''
  return `, past ${listed([...(tips > 0 ? [counted(tips, 'tip')] : []), ...(dips > 0 ? [counted(dips, 'dip')] : [])])}`
}

/** "12–14 sts from each of 8 × Rose", "about 28 sts from most of 12 × Dahlia": of one of several motifs. */
function kindWords(name: string, counts: readonly number[]): string {
  const sorted = counts.toSorted((a, b) => a - b)
  const many = `${formatNumber(counts.length)} × ${name}`
  const [least, most] = [sorted[0]!, sorted.at(-1)!]
  if (most <= WIDE * least)
    return `${rangeOf(counts)} ${plural(most, 'st')} from ${counts.length === 1 ? many : `each of ${many}`}`
  const usual = sorted[Math.floor(sorted.length / 2)]!
  return `about ${counted(usual, 'st')} from most of ${many} (${rangeOf(counts)} by how much of one is at the edge)`
}

const rangeOf = (counts: readonly number[]): string => {
  const [least, most] = [Math.min(...counts), Math.max(...counts)]
  return least === most ? formatNumber(least) : `${formatNumber(least)}–${formatNumber(most)}`
}

/**
 * How many stitches a motif gives: " That is 11–12 sts from each of 20 motifs along the sides, and 22–24 sts from each
 * of 4 motifs at the corners." Along slanting sides more or less of a motif is at the edge, and a range from 1 to 17
 * would tell nobody anything: then it is what most of them give. Where several motifs alternate it is told of each.
 */
export function motifWords(
  picked: readonly PickUp[],
  corners: number,
  nameOf: (motif: string | undefined) => string = () => '',
): string {
  if (picked.length < 2) return ''
  const kinds = new Map<string, number[]>()
  for (const { motif, isHalf, stitches } of picked) {
    if (isHalf) continue
    const name = nameOf(motif.motif)
    kinds.set(name, [...(kinds.get(name) ?? []), stitches])
  }
  const ofHalves = picked.flatMap(({ isHalf, stitches }) => (isHalf ? [stitches] : [])).sort((a, b) => a - b)
  const halves =
    ofHalves.length > 0
      ? (groupsOf(ofHalves) ?? [ofHalves]).map((group) => partWords(group, 'half motif'))
      : []
  if (kinds.size > 1)
    return ` That is ${listed([...[...kinds].map(([name, counts]) => kindWords(name, counts)), ...halves])}.`
  const bySides = freeSideWords(picked, MOST_GROUPS + 1)
  if (bySides) return ` That is ${partsWords([...bySides, ...halves])}.`
  const sorted = [...kinds.values()].flat().sort((a, b) => a - b)
  if (sorted.length === 0) return ` That is ${listed(halves)}.`
  const usual = sorted[Math.floor(sorted.length / 2)]!
  const more = sorted.filter((count) => count > AT_CORNER * usual)
  const sides = sorted.filter((count) => count <= AT_CORNER * usual)
  const [least, most] = [sides[0]!, sides.at(-1)!]
  const groups = groupsOf(sides)
  const byTwo = groups && more.length === 0 ? freeSideWords(picked, MOST_GROUPS) : null
  if (byTwo) return ` That is ${partsWords([...byTwo, ...halves])}.`
  if (!groups && (most > WIDE * least || (more.length > 0 && more.length !== corners)))
    return ` That is about ${counted(usual, 'st')} from most motifs at the edge, fewer where less of one stands there and more where more does${['', ...halves].join(', and ')}: ${listed([counted(sorted.length, 'motif'), ...(halves.length > 0 ? [counted(ofHalves.length, 'half motif')] : [])])} in all.`
  const corner = more.length === corners ? ' at the corners' : ''
  const parts = [
    ...(groups ?? [sides]).map((group) => partWords(group, 'motif')),
    ...(more.length > 0 ? [`${partWords(more, 'motif')}${corner}`] : []),
  ]
  if (!groups && more.length > 0) parts[0] += ' along the sides'
  return ` That is ${partsWords([...parts, ...halves])}.`
}

/** "26–27 sts from each of 12 motifs with 2 free sides": where so many kinds of them, or more, differ by that. */
function freeSideWords(picked: readonly PickUp[], least: number): string[] | null {
  const wholes = picked.filter(({ isHalf }) => !isHalf)
  const byFree = new Map<number, number[]>()
  for (const { free = 0, stitches } of wholes) byFree.set(free, [...(byFree.get(free) ?? []), stitches])
  if (byFree.has(0) || byFree.size < least) return null
  const groups = [...byFree].sort(([a], [b]) => a - b)
  if (groups.some(([, counts]) => Math.max(...counts) >= AT_CORNER * Math.min(...counts))) return null
  return groups.map(([free, counts]) => `${partWords(counts, 'motif')} with ${counted(free, 'free side')}`)
}

/** Where motifs along an edge show it one side or two: so many times as many stitches are another group of them. */
const APART = 1.4
/** More groups are not told: what most of them give is. */
const MOST_GROUPS = 2

/** Counts, smallest first, in groups that lie apart and hardly differ in themselves; null where they do not fall into some. */
function groupsOf(sorted: readonly number[]): number[][] | null {
  const groups: number[][] = []
  for (const count of sorted) {
    const last = groups.at(-1)
    if (last && count < APART * last.at(-1)!) last.push(count)
    else groups.push([count])
  }
  const areTight = groups.every((group) => group.at(-1)! < APART * group[0]!)
  return groups.length === MOST_GROUPS && areTight ? groups : null
}

/** "11–12 sts from each of 20 motifs". */
const partWords = (counts: readonly number[], name: string): string =>
  `${rangeOf(counts)} ${plural(Math.max(...counts), 'st')} from ${counts.length === 1 ? `one ${name}` : `each of ${counted(counts.length, name)}`}`

/** Parts that have numbers of their own: a comma stands before the last of them as well. */
const partsWords = (parts: readonly string[]): string =>
  parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')}, and ${parts.at(-1)!}`

/** The words of a written round for one line, in the terms that are printed. */
export const roundText = (text: string, job: Job): string =>
  editionText(text, job.settled.terms, job.terms).replace(/[.\s]*$/, '.')

/** "(924 sts: 154 repeats.)" */
export function countWords({ made, repeats, picots }: EdgingLoop, index: number): string {
  const many = repeats[index] ?? 0
  const loops = picots[index] ?? 0
  return [
    counted(made[index] ?? 0, 'st'),
    ...(many > 1 ? [counted(many, 'repeat')] : []),
    ...(loops > 0 ? [counted(loops, 'picot')] : []),
  ].join(', ')
}

export const EDGING_PAGE = {
  special: 'Stitch',
  /** `many`: what its stitches are called together, where they are not all of one kind. */
  plain: (round: EdgingRound, how: string, stitch: string, byLine: string, many?: string): string =>
    `${how}: ${many ?? `${formatNumber(round.stitches)} ${stitch}`}${round.chains > 0 ? ` and ${counted(round.chains, 'chain')}` : ''}${byLine}.`,
  round: (number: number): string => `Round ${number}`,
  wrong: ({ message }: Finding): string => `Does not work out yet: ${message}`,
  inYarn: (name: string): string => `in ${name}`,
  letters: 'Letters along the edge mark the tips and dips that the rounds name.',
  edges: 'Holes, and parts where there are several, have the numbers that the rounds call them by.',
  chains: 'A number outside the edge says how many chains lie between the two tips there.',
  end: (ends: number): string =>
    `Fasten off after the last round in each yarn, with an invisible join, and weave in ${counted(ends, 'end')}.`,
} as const
