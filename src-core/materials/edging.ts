/**
 * The edging (M35): how many stitches each round takes, how high it stands and what yarn it costs. The
 * style says how the first round meets the edge; later rounds work into that one.
 */
import type { Finding } from '../../shared-types/finding'
import type { EdgingAccount, EdgingLoop, EdgingRound, MotifAccount } from '../../shared-types/plan'
import type { EdgingStyle, Terms } from '../../shared-types/project'
import { increases } from '../edging/corners'
import type { Border, PlainLoop } from '../edging/border'
import { deepDips, levelDips } from '../edging/level'
import type { EdgeDip, Level } from '../edging/level'
import type { ResolvedGauge } from '../stitches/gauge'
import { stitchYarn } from '../stitches/gauge'
import { canonicalStitch } from '../stitches/terms'
import { STITCH_KEYS } from '../stitches/table'
import type { StitchKey } from '../stitches/table'
import type { Millimetres } from '../units/quantity'
import { MATERIAL_CONSTANTS } from './constants'

/** The line that an edging runs along, as its style wants it: the edge itself, or from tip to tip. */
export interface EdgingBase {
  /** mm. Closed length of that line. */
  readonly length: Millimetres
  /** Corners of the whole piece that stand out. */
  readonly outerCorners: number
  /** Tips (places to work a stitch into) along it. */
  readonly tips: number
  /** mm. Mean distance between neighbouring tips. */
  readonly chord: Millimetres
  /** Whole turns that the line makes, 1 where it is left out: each makes every round longer. */
  readonly turns?: number
  /** Lines that are each worked by themselves, 1 where it is left out: both ends of a round, holes. */
  readonly lines?: number
  /** Its lines with their corners and the stitches of the first round; without them rounds are told by length alone. */
  readonly loops?: readonly PlainLoop[]
  /** Of an edging that levels: the dips under the line. */
  readonly dips?: readonly EdgeDip[]
}

export interface EdgingWork {
  readonly account: EdgingAccount
  /** Stitches that the table does not know, counted as sc. */
  readonly unknown: readonly string[]
  /** Loops of yarn in all rounds: what the time is told from. */
  readonly loops: number
  /** Dips that are filled with rows of their own, each with a piece of yarn of its own. */
  readonly filled: number
  readonly findings: readonly Finding[]
}

/** Names that are worked as sc and differ in direction alone. */
const CRAB_STITCH = /^(reverse|crab)\b/i

const stitchOf = (written: string, terms: Terms): StitchKey | null =>
  CRAB_STITCH.test(written.trim()) ? 'sc' : canonicalStitch(written, terms)

/** The style of an edging that names none: straight sides are followed, tips are bridged. */
export const usualEdgingStyle = (shape: MotifAccount['shape'] | undefined): EdgingStyle =>
  shape === 'straight' ? 'follow' : 'bridge'

/** Height in mm that an edging adds all round: the sum of its rounds; a stitch the table lacks counts as sc. */
export const edgingHeight = (rounds: readonly string[], terms: Terms, gauge: ResolvedGauge): Millimetres =>
  rounds.reduce((sum, written) => sum + gauge.height(stitchOf(written, terms) ?? 'sc'), 0)

interface RoundWork {
  /** Stitches of the round's own kind, in tips or all along. */
  readonly stitches: number
  readonly chains: number
  /** Besides these, by kind: the taller ones that fill dips, and what is worked in rows before. */
  readonly taller: Readonly<Partial<Record<StitchKey, number>>>
  readonly inRows: Readonly<Partial<Record<StitchKey, number>>>
}

const NONE: Pick<RoundWork, 'taller' | 'inRows'> = { taller: {}, inRows: {} }

const yarnOf = (counts: RoundWork['taller'], gauge: ResolvedGauge): Millimetres =>
  Object.entries(counts).reduce(
    (sum, [stitch, count]) => sum + count * stitchYarn(stitch as StitchKey, gauge),
    0,
  )

const sumOf = (counts: RoundWork['taller']): number =>
  Object.values(counts).reduce((sum, count) => sum + count, 0)

/** What follows each tip of every line: chains, or stitches along the straight side of a half motif. */
type TipGaps = Required<Pick<EdgingRound, 'gaps'>> & Pick<EdgingRound, 'straight'>

/** The gaps of every line, where all of these run from tip to tip. */
function gapsOf({ loops, tips }: EdgingBase): TipGaps | null {
  const own = (loops ?? []).filter(({ gaps }) => gaps)
  const gaps = own.map((loop) => loop.gaps!)
  if (gaps.length === 0 || gaps.flat().length !== tips) return null
  const isStraight = own.some(({ straight }) => straight)
  return {
    gaps,
    ...(isStraight && { straight: own.map((loop) => loop.straight ?? loop.gaps!.map(() => 0)) }),
  }
}

const sumAll = (counts: readonly (readonly number[])[] = []): number =>
  counts.flat().reduce((sum, each) => sum + each, 0)

function firstRound(
  style: EdgingStyle,
  base: EdgingBase,
  all: number,
  isSet: boolean,
  gauge: ResolvedGauge,
  level: Level | null,
  /** Of what is set, stitches along straight sides. */
  straight: number,
): RoundWork {
  if (style === 'bridge' && base.tips > 0) {
    // What is worked into it says how many there are, in tips and between.
    const tips = base.tips + straight
    if (isSet) return { ...NONE, stitches: Math.min(all, tips), chains: Math.max(0, all - tips) }
    const gaps = gapsOf(base)
    if (gaps) return { ...NONE, stitches: base.tips + sumAll(gaps.straight), chains: sumAll(gaps.gaps) }
    const each = Math.max(0, Math.round((MATERIAL_CONSTANTS.bridgeSlack * base.chord) / gauge.width))
    return { ...NONE, stitches: base.tips, chains: base.tips * each }
  }
  if (!level) return { ...NONE, stitches: all, chains: 0 }
  return {
    stitches: Math.max(0, all - sumOf(level.taller)),
    chains: 0,
    taller: level.taller,
    // Every row is held to the edge by a slip stitch at both of its ends.
    inRows: level.rows > 0 ? { [level.rowStitch]: level.inRows, 'sl st': 2 * level.rows } : {},
  }
}

/** By how much a later round of a stitch is longer than the one below it: at its corners or bends, or by its height. */
const growth = (loop: PlainLoop, stitch: StitchKey, gauge: ResolvedGauge): number => {
  const more = increases(loop, stitch, gauge)
  return more === null
    ? (loop.turns * 2 * Math.PI * gauge.height(stitch)) / gauge.width
    : more.reduce((sum, each) => sum + each, 0)
}

/**
 * The corners of a plain round and the stitches in each, where all lines have as many in one; where any of them goes in
 * and out, how many stitches more or fewer at how many places. Nothing without any.
 */
function inCorners(
  loops: EdgingBase['loops'] = [],
  stitch: StitchKey,
  gauge: ResolvedGauge,
): Pick<EdgingRound, 'corners' | 'inCorner' | 'bends'> {
  const places = loops
    .flatMap((loop, l) => {
      const before = loops.slice(0, l).reduce((sum, each) => sum + each.corners, 0)
      return (increases(loop, stitch, gauge) ?? []).map((more, k) => {
        const { corner, along } = loop.bends?.[k] ?? {}
        return {
          more,
          corner: corner === undefined ? null : before + corner,
          place: along === undefined ? null : { line: loop.line, along },
        }
      })
    })
    .filter(({ more }) => more !== 0)
  const kinds = [...new Set(places.map(({ more }) => more))].sort((a, b) => b - a)
  const counts = kinds.map((more) => {
    const own = places.filter((each) => each.more === more)
    const corners = own.flatMap(({ corner }) => corner ?? [])
    const areCorners = more > 0 && new Set(corners).size === own.length
    const at = own.flatMap(({ place }) => place ?? [])
    return { more, count: own.length, ...(areCorners && { corners }), ...(at.length > 0 && { places: at }) }
  })
  if (loops.some(({ bends }) => bends)) return counts.length > 0 ? { bends: counts } : {}
  const [only, ...others] = counts
  return only && others.length === 0 ? { corners: only.count, inCorner: only.more + 1 } : {}
}

/**
 * Stitches of the first round along each line where written rounds are worked into a later one: as many fewer as the
 * rounds between have more, so that each side comes out at what its repeats come out even on. From mark to mark.
 */
function firstSides(
  border: Border | null,
  base: EdgingBase,
  later: readonly StitchKey[],
  gauge: ResolvedGauge,
): readonly (readonly number[])[] | null {
  const { loops } = base
  if (!border || !loops || later.length === 0 || border.loops.length !== loops.length) return null
  const told = border.loops.map(({ marks, stretches }, i) => {
    const sides = [...stretches]
    const from = (along: number) => (along - (marks[0]?.along ?? 0) + 1) % 1
    const shift = (side: number, more: number) => (sides[(side + sides.length) % sides.length]! -= more)
    for (const stitch of later) {
      const loop = loops[i]!
      const more = increases(loop, stitch, gauge)
      if (!more) {
        const evenly = Math.round(growth(loop, stitch, gauge))
        sides.forEach((_, k) => shift(k, Math.floor((evenly + k) / sides.length)))
      } else
        more.forEach((each, k) => {
          // At a corner half of it is on either side.
          const along = loop.bends?.[k]?.along ?? marks[k % Math.max(1, marks.length)]?.along ?? 0
          const at = marks.findIndex((mark) => isNear(mark.along, along))
          const before = marks.findLastIndex((mark) => from(mark.along) <= from(along))
          if (at < 0 || sides.length < 2) shift(Math.max(0, before), each)
          else {
            shift(at - 1, Math.trunc(each / 2))
            shift(at, each - Math.trunc(each / 2))
          }
        })
    }
    return sides
  })
  // What is smaller than its own rounds grow by is no edge to count along.
  return told.every((each) => each.every((count) => count >= 0)) ? told : null
}

/** Shares of a line that are one place, to a thousandth of it. */
const isNear = (a: number, b: number): boolean => Math.abs(a - b - Math.round(a - b)) < 1e-3

/**
 * Stitches, length and metres of every round of an edging, the written ones (M36) after the plain ones. A round's length is the base grown by 2π times
 * the height so far, for every turn that it makes (a closed line that is offset outward grows so, whatever its corners and valleys do to
 * the stitches), its stitches are that length over w, and from the second on, where the line has corners, those
 * of the round below and what is worked more in each corner; a bridging first round has one stitch in each tip and
 * round(0.95·chord/w) chains after each, by the chord to the next tip, or by the mean one where single ones are not
 * known; a levelling one stitches as tall as the edge lies deep.
 */
export function workEdging(
  style: EdgingStyle,
  rounds: readonly string[],
  yarn: string,
  base: EdgingBase,
  terms: Terms,
  gauge: ResolvedGauge,
  border: Border | null = null,
): EdgingWork {
  const unknown: string[] = []
  const worked: EdgingRound[] = []
  let height = 0
  let loops = 0
  const later = rounds.slice(1).map((written) => stitchOf(written, terms) ?? 'sc')
  // Chains that bridge dips are as many as the gaps take, whatever is worked into them.
  const sides = style === 'bridge' ? null : firstSides(border, base, later, gauge)
  /** Stitches along each line, whole or not. */
  let counts =
    sides?.map((each) => each.reduce((sum, count) => sum + count, 0)) ??
    base.loops?.map(({ stitches }) => stitches)
  const first = rounds[0] === undefined ? 'sc' : (stitchOf(rounds[0], terms) ?? 'sc')
  const gaps = style === 'bridge' ? gapsOf(base) : null
  const level = style === 'level' && base.dips ? levelDips(base.dips, first, gauge) : null
  const straight = sumAll(
    border?.loops.flatMap(({ bridged }) => (bridged?.straight ? [bridged.straight] : [])),
  )
  rounds.forEach((written, index) => {
    const known = stitchOf(written, terms)
    if (!known) unknown.push(written)
    const stitch = known ?? 'sc'
    height += gauge.height(stitch)
    const length = base.length + (base.turns ?? 1) * 2 * Math.PI * height
    const isSet = border !== null && index === rounds.length - 1
    counts = counts?.map((count, i) => (index === 0 ? count : count + growth(base.loops![i]!, stitch, gauge)))
    const plain = counts
      ? counts.reduce((sum, count) => sum + Math.round(count), 0)
      : Math.round(length / gauge.width)
    const all = isSet ? border.setUp : plain
    const work: RoundWork =
      index === 0
        ? firstRound(style, base, all, isSet, gauge, level, straight)
        : { ...NONE, stitches: all, chains: 0 }
    const millimetres =
      work.stitches * stitchYarn(stitch, gauge) +
      work.chains * stitchYarn('ch', gauge) +
      yarnOf(work.taller, gauge) +
      yarnOf(work.inRows, gauge)
    const stitches = work.stitches + sumOf(work.taller)
    loops += millimetres / stitchYarn('ch', gauge)
    const own = { number: index + 1, height: gauge.height(stitch), yarn }
    worked.push({
      ...own,
      stitch: written,
      stitches,
      chains: work.chains,
      length,
      metres: millimetres / 1000,
      ...(work.chains === 0 && inCorners(base.loops, stitch, gauge)),
      ...(work.chains > 0 && !isSet && gaps),
      ...(work.chains === 0 && !isSet && counts && counts.length > 1 && { byLine: counts.map(Math.round) }),
    })
  })
  for (const round of border?.rounds ?? []) {
    height += round.height
    const millimetres = yarnOf(round.counts, gauge)
    loops += millimetres / stitchYarn('ch', gauge)
    worked.push({
      number: worked.length + 1,
      stitch: round.written.work,
      stitches: round.made,
      chains: round.counts.ch ?? 0,
      length: base.length + (base.turns ?? 1) * 2 * Math.PI * height,
      metres: millimetres / 1000,
      height: round.height,
      yarn: round.written.yarn ?? yarn,
      ...{ repeats: round.repeats, corners: round.corners, picots: round.picots, worked: round.counts },
    })
  }
  const plain = { style, length: base.length, height, rounds: worked, yarn }
  const lines =
    border || !base.loops || worked.some(({ chains }) => chains > 0) ? null : firstAlong(base.loops)
  const account = {
    ...plain,
    ...(level && level.dips.length > 0 && { dips: level.dips }),
    ...(lines && { plain: lines }),
  }
  return {
    account: border ? { ...account, ...loopsOf(border, sides, gauge) } : account,
    ...{ unknown, loops, filled: level?.filled ?? 0 },
    findings: level ? deepDips(level, first, terms, gauge) : [],
  }
}

/** How the first of plain rounds lies along each line, from corner to corner. */
const firstAlong = (loops: NonNullable<EdgingBase['loops']>): EdgingLoop[] =>
  loops.map(({ line, stitches, alongs, sides }) => ({
    ...{ line, stitches, stretches: sides, texts: [], made: [], repeats: [], picots: [] },
    marks: alongs.map((along, i) => ({
      ...{ kind: 'corner' as const, along, chains: 0 },
      at: sides.slice(0, i).reduce((sum, side) => sum + side, 0),
    })),
  }))

/** How written rounds lie, for words and drawings. */
const loopsOf = (
  { loops, multiple }: Border,
  sides: readonly (readonly number[])[] | null,
  gauge: ResolvedGauge,
): Pick<EdgingAccount, 'loops' | 'multiple' | 'gauge'> => ({
  loops: loops.map(({ rounds, multiple: _, ...loop }, i) => ({
    ...loop,
    ...(sides && { first: sides[i]! }),
    texts: rounds.map(({ text }) => text),
    made: rounds.map(({ made }) => made),
    repeats: rounds.map(({ repeats }) => repeats),
    picots: rounds.map(({ picots }) => picots),
  })),
  ...(multiple && { multiple: { of: multiple.of, plus: multiple.plus, by: multiple.by } }),
  gauge: {
    width: gauge.width,
    heights: Object.fromEntries(STITCH_KEYS.map((key) => [key, gauge.height(key)])),
  },
})
