/**
 * M36: written rounds of an edging, worked along its lines. Stitches are picked up at the gauge and brought to the
 * multiple that the rounds come out even on; an outward turn of θ at a height of h needs θ·h more length (the rule of
 * the flat circle), a dip as much less.
 */
import type { Finding } from '../../shared-types/finding'
import type { Point } from '../../shared-types/plan'
import type { Terms } from '../../shared-types/project'
import { finding } from '../findings/finding'
import { perimeter, signedArea } from '../geometry/points'
import type { Outline } from '../geometry/points'
import { FLATNESS } from '../motif/rounds/constants'
import type { ResolvedGauge } from '../stitches/gauge'
import type { StitchKey } from '../stitches/table'
import { formatNumber } from '../units/format'
import type { Millimetres } from '../units/quantity'
import { bridgeStretches, plainGaps } from './bridge'
import type { Bridged } from './bridge'
import { EDGING, FROM_CORNER_TO_CORNER } from './constants'
import type { Bend } from './corners'
import { spreadWords } from './spread'
import { ANY_NUMBER, fitStretches, kindsNamed, multipleFor, wholeSides } from './fit'
import type { Multiple } from './fit'
import { cornersAlong, openCornersAlong, openTipsAlong, tipsAlong } from './line-places'
import type { LinePlace, OpenCorner } from './line-places'
import type { Mark, MarkKind } from './marks'
import { OPEN_ENDS } from './open-ends'
import { columnIn, readLoop } from './reading'
import type { LoopRound } from './reading'
import { sampleOf, writtenHeights } from './written'
import type { WrittenRound } from './written'

/** A corner, tip or dip on a line, and the stitch of the set-up round that stands there. */
export interface SetMark extends Mark {
  /** As a share of the line, the way it is worked. */
  readonly along: number
}

/** The rounds along one line. */
export interface BorderLoop {
  /** Index of its line. */
  readonly line: number
  /** Stitches of the round that the written rounds are worked into. */
  readonly stitches: number
  readonly marks: readonly SetMark[]
  /** Stitches from one mark to the next; all of them where there is none. */
  readonly stretches: readonly number[]
  /** What its rounds come out even on. */
  readonly multiple: Multiple | null
  readonly rounds: readonly LoopRound[]
  /** Of a line from tip to tip that is bridged with chains. */
  readonly bridged?: Bridged
}

export interface BorderRound {
  readonly written: WrittenRound
  readonly height: Millimetres
  readonly made: number
  readonly repeats: number
  readonly picots: number
  readonly corners: number
  readonly counts: Readonly<Partial<Record<StitchKey, number>>>
}

export interface Border {
  readonly loops: readonly BorderLoop[]
  readonly multiple: Multiple | null
  /** Stitches of all set-up rounds. */
  readonly setUp: number
  readonly rounds: readonly BorderRound[]
  readonly findings: readonly Finding[]
}

/** What a border is worked along. */
export interface BorderEdge {
  /** Lines in mm before blocking as they are worked, clockwise, round a hole the other way: where they are not, in a mirror. */
  readonly lines: readonly Outline[]
  /** Open at both ends: the first two lines of what is joined in the round. */
  readonly isRound: boolean
  /** Directions of its outward corners. */
  readonly outward: readonly Point[]
  /** Of what is joined in the round: the corners of its open ends. */
  readonly ends: readonly (readonly OpenCorner[])[]
  /** mm. Across a motif, tip to tip. */
  readonly across: Millimetres
  /** Its lines run from tip to tip, and the first round bridges what lies between with chains. */
  readonly bridges?: boolean
  /** Of these: which of the gaps after each point of each line is a straight side that is worked along. */
  readonly straight?: readonly (readonly boolean[])[]
}

const lengthOf = (line: Outline, isOpen: boolean): Millimetres =>
  isOpen && line.length > 1
    ? perimeter(line) - Math.hypot(line[0]!.x - line.at(-1)!.x, line[0]!.y - line.at(-1)!.y)
    : perimeter(line)

/** Whole turns that a line makes. */
const turnsOf = (line: Outline, isOpen: boolean): number => (isOpen ? 0 : signedArea(line) < 0 ? -1 : 1)

/** The stitches of a loop from mark to mark. */
function stretchesOf(
  places: readonly LinePlace[],
  length: Millimetres,
  turns: number,
  height: Millimetres,
  gauge: ResolvedGauge,
  multiple: Multiple | null,
): number[] {
  const whole = (length + turns * 2 * Math.PI * height) / gauge.width
  if (places.length === 0) return fitStretches([whole], multiple)
  const own = places.map((place, i) => {
    const next = places[(i + 1) % places.length]!
    const stretch = places.length === 1 ? length : (next.along - place.along + length) % length
    const turn = (place.turn + next.turn) / 2 + (place.after ?? 0) + (next.before ?? 0)
    return Math.max(0, stretch + height * turn) / gauge.width
  })
  // What turns slowly between them takes its share.
  const sum = own.reduce((total, each) => total + each, 0)
  return fitStretches(
    own.map((each) => (sum > 0 ? (each * whole) / sum : whole / own.length)),
    multiple,
  )
}

function placesOf(
  index: number,
  line: Outline,
  isOpen: boolean,
  kinds: ReadonlySet<MarkKind>,
  { outward, ends, across }: BorderEdge,
  gauge: ResolvedGauge,
): LinePlace[] {
  const corners = isOpen ? openCornersAlong(line, ends[index] ?? []) : cornersAlong(line, outward)
  if (kinds.size === 0 || (kinds.size === 1 && kinds.has('corner'))) return corners
  const wanted = tipsOf(index, line, isOpen, { across }, gauge).filter(({ kind }) => kinds.has(kind))
  // Tips and dips are what is counted between; a corner is told by the tip that it stands at.
  return wanted.length > 0 ? wanted : kinds.has('corner') ? corners : []
}

/** The tips and dips of a line. */
function tipsOf(
  index: number,
  line: Outline,
  isOpen: boolean,
  { across }: Pick<BorderEdge, 'across'>,
  gauge: ResolvedGauge,
): LinePlace[] {
  const [smooth, oneTip] = [EDGING.smooth * gauge.width, EDGING.oneTip * across]
  return isOpen ? openTipsAlong(line, index > 0, smooth, oneTip) : tipsAlong(line, smooth, oneTip)
}

/** A line of an edging without written rounds. */
export interface PlainLoop {
  /** Index of its line. */
  readonly line: number
  /** Its corners, as shares of it, and the stitches of the first round from each to the next. */
  readonly alongs: readonly number[]
  readonly sides: readonly number[]
  /** Stitches of its first round, each side by itself. */
  readonly stitches: number
  /** Outward corners along it. */
  readonly corners: number
  /** Whole turns that it makes: 0 along an open end, -1 round a hole. */
  readonly turns: number
  /** Where the first round bridges the dips: chains after each tip. */
  readonly gaps?: readonly number[]
  /** Stitches along each of these that is a straight side, between those at its ends. */
  readonly straight?: readonly number[]
  /** Of a line that goes in and out: its tips and dips, in its order. */
  readonly bends?: readonly Bend[]
}

const NO_KINDS: ReadonlySet<MarkKind> = new Set()

/** The first round along each line, counted as the round that written rounds are worked into. */
export function plainLoops(
  edge: BorderEdge,
  height: Millimetres,
  gauge: ResolvedGauge,
): readonly PlainLoop[] {
  return edge.lines.flatMap((line, index) => {
    if (line.length < 2) return []
    const isOpen = edge.isRound && index < OPEN_ENDS
    const turns = turnsOf(line, isOpen)
    const places = isOpen ? [] : placesOf(index, line, isOpen, NO_KINDS, edge, gauge)
    const length = lengthOf(line, isOpen)
    const sides = stretchesOf(places, length, turns, height, gauge, ANY_NUMBER)
    const tips = tipsOf(index, line, isOpen, edge, gauge)
    const apart = (a: number, b: number) => Math.abs(a - b - length * Math.round((a - b) / length))
    const bends = tips.map(({ turn, growth = 0, along }): Bend => {
      const corner = places.findIndex((place) => apart(place.along, along) <= EDGING.oneTip * edge.across)
      return { turn, growth, along: along / length, ...(corner >= 0 && { corner }) }
    })
    return {
      ...{ line: index, alongs: places.map(({ along }) => along / length), sides },
      ...(bends.some(({ turn }) => turn < 0) && { bends }),
      ...{ stitches: sides.reduce((sum, side) => sum + side, 0), corners: places.length, turns },
      ...(edge.bridges && plainGaps(line, isOpen, gauge, edge.straight?.[index])),
    }
  })
}

/** A line's rounds. */
function workLoop(
  index: number,
  line: Outline,
  edge: BorderEdge,
  written: readonly WrittenRound[],
  below: { readonly rounds: number; readonly height: Millimetres },
  terms: Terms,
  gauge: ResolvedGauge,
): BorderLoop & { readonly findings: readonly Finding[] } {
  const isOpen = edge.isRound && index < OPEN_ENDS
  const works = written.map(({ work }) => work)
  const from = below.rounds + 1
  const sample = sampleOf(written, from, terms)
  const kinds = kindsNamed(works)
  const length = lengthOf(line, isOpen)
  const turns = turnsOf(line, isOpen)
  const found = placesOf(index, line, isOpen, kinds, edge, gauge)
  // Worked from the first one that the words begin with; of several in a row from the first of them.
  const [begins] = kinds
  const isBegin = ({ kind }: LinePlace, i: number) => kind === begins && found.at(i - 1)!.kind !== begins
  const own = found.findIndex(isBegin)
  const start = Math.max(0, own >= 0 ? own : found.findIndex(({ kind }) => kind === begins))
  const places = [...found.slice(start), ...found.slice(0, start)]
  const multiple = sample.multiple && multipleFor(sample.multiple, places.length, kinds)
  const stretches = stretchesOf(places, length, turns, below.height, gauge, multiple)
  let at = 0
  const marks = places.map(({ kind, along }, i): SetMark => {
    const mark = { kind, at, chains: 0, along: along / length }
    at += stretches[i]!
    return mark
  })
  const stitches = stretches.reduce((sum, count) => sum + count, 0)
  const read = readLoop(works, stitches, marks, from, terms, multiple?.of, written[0]?.special)
  const told = cornersDiffer(stretches, stitches, multiple, read.rounds, from, places)
  const findings = [...read.findings, ...told]
  const alongs = places.map(({ along }) => along)
  const bridged =
    edge.bridges &&
    below.rounds === 1 &&
    bridgeStretches(line, isOpen, alongs, stretches, edge.straight?.[index])
  const loop = { line: index, stitches, marks, stretches, multiple, rounds: read.rounds, findings }
  return bridged ? { ...loop, bridged } : loop
}

/** A note where repeats run on past the corners, so that these fall on different stitches of a repeat. */
function cornersDiffer(
  stretches: readonly number[],
  stitches: number,
  multiple: Multiple | null,
  rounds: readonly LoopRound[],
  from: number,
  places: readonly LinePlace[],
): Finding[] {
  const i = rounds.findLastIndex(({ repeats }) => repeats > places.length)
  const whole = wholeSides(stretches, multiple)
  if (i < 0 || !multiple || !whole || !places.every(({ kind }) => kind === 'corner')) return []
  const { repeats } = rounds[i]!
  // A round in which several repeats lie above one multiple has as many more for each of them.
  const each = Math.max(1, Math.round((repeats * multiple.of) / stitches))
  const repeatsOf = (count: number) => repeats + ((count - stitches) / multiple.of) * each
  const values = {
    round: from + i,
    ...{ repeats: formatNumber(repeats), corners: formatNumber(places.length) },
    ...{ fewer: formatNumber(repeatsOf(whole.fewer)), more: formatNumber(repeatsOf(whole.more)) },
    ...{ now: formatNumber(stitches), less: formatNumber(whole.fewer), much: formatNumber(whole.more) },
    example: FROM_CORNER_TO_CORNER,
    ...{ base: from - 1, spread: spreadWords(whole.sides) },
    near: formatNumber(whole.sides.reduce((sum, side) => sum + side.stitches + side.more, 0)),
  }
  return [finding('edging/corners-differ', '', values, { round: from + i })]
}

/** Works written rounds along the lines of an edging, above so many plain rounds of so much height. */
export function workBorder(
  edge: BorderEdge,
  written: readonly WrittenRound[],
  plain: number,
  height: Millimetres,
  terms: Terms,
  gauge: ResolvedGauge,
): Border {
  const heights = writtenHeights(written, plain + 1, terms, gauge)
  // An open end without an edging has a line without points.
  const worked = edge.lines.flatMap((line, i) =>
    line.length > 1 ? [workLoop(i, line, edge, written, { rounds: plain, height }, terms, gauge)] : [],
  )
  const loops = worked.map(({ findings: _, ...loop }): BorderLoop => loop)
  const sum = (of: (loop: BorderLoop) => number | undefined) =>
    loops.reduce((total, loop) => total + (of(loop) ?? 0), 0)
  const rounds = written.map((round, i): BorderRound => {
    const counts: Partial<Record<StitchKey, number>> = {}
    for (const loop of loops)
      for (const [stitch, count] of Object.entries(loop.rounds[i]?.counts ?? {}) as [StitchKey, number][])
        counts[stitch] = (counts[stitch] ?? 0) + count
    return {
      written: round,
      height: heights[i] ?? 0,
      made: sum(({ rounds: own }) => own[i]?.made),
      repeats: sum(({ rounds: own }) => own[i]?.repeats),
      picots: sum(({ rounds: own }) => own[i]?.picots),
      corners: sum(({ marks }) => marks.filter(({ kind }) => kind === 'corner').length),
      counts,
    }
  })
  const multiple = loops[0]?.multiple ?? sampleOf(written, plain + 1, terms).multiple
  const border = { loops, multiple, rounds, setUp: sum(({ stitches }) => stitches) }
  return { ...border, findings: findingsOf(border, worked, edge, plain, height, gauge) }
}

/** What is to be said, each thing once: loops differ in length alone. */
function findingsOf(
  { loops, multiple, rounds }: Omit<Border, 'findings'>,
  worked: readonly { readonly findings: readonly Finding[] }[],
  edge: BorderEdge,
  plain: number,
  setUp: Millimetres,
  gauge: ResolvedGauge,
): Finding[] {
  const where = (i: number) => `layout.edging.written[${rounds[i]!.written.entry}]`
  const told = new Map<string, Finding>()
  for (const { findings } of worked)
    for (const each of findings) {
      const { round = plain + 1, column, length } = each.target ?? {}
      const i = Math.min(rounds.length - 1, Math.max(0, round - plain - 1))
      const { entry, own } = rounds[i]!.written
      const place =
        column !== undefined && length !== undefined
          ? {
              column: columnIn(own, column),
              length: columnIn(own, column + length - 1) - columnIn(own, column) + 1,
            }
          : null
      const words = place && own.slice(place.column - 1, place.column - 1 + place.length)
      const at = place ? `, column ${place.column}: "${words}"` : ''
      told.set(`${i} ${each.code} ${each.message}`, {
        ...each,
        where: `${where(i)}, round ${round}${at}`,
        target: { edging: entry, round, ...place },
      })
    }
  const said = [...told.values()]
  if (!multiple && !said.some(({ severity }) => severity === 'error'))
    said.push(finding('edging/no-multiple', 'layout.edging.written', { most: EDGING.probes }))
  // Counts that are not sure say nothing of how it lies.
  if (said.some(({ severity }) => severity === 'error')) return said
  return [...said, ...flatness(loops, rounds, edge, plain, setUp, gauge, where)]
}

/** Rounds of one stitch all along, by what a flat round needs at their height (M17); others shape the edge. */
function flatness(
  loops: readonly BorderLoop[],
  rounds: readonly BorderRound[],
  { lines, isRound }: BorderEdge,
  plain: number,
  setUp: Millimetres,
  gauge: ResolvedGauge,
  where: (i: number) => string,
): Finding[] {
  const { mayCup: least, mayRuffle: most } = FLATNESS
  let height = setUp
  return rounds.flatMap((round, i): Finding[] => {
    height += round.height
    const kinds = Object.entries(round.counts).filter(
      ([key, count]) => key !== 'ch' && key !== 'sl st' && count > 0,
    )
    const isPlain = kinds.length === 1 && round.picots === 0 && (round.counts.ch ?? 0) <= 6 * loops.length
    if (!isPlain || i > 0) return []
    const needed = lines.reduce((sum, line, k) => {
      const isOpen = isRound && k < OPEN_ENDS
      const turns = turnsOf(line, isOpen)
      return sum + (lengthOf(line, isOpen) + turns * 2 * Math.PI * height) / gauge.width
    }, 0)
    const share = needed > 0 ? round.made / needed : 1
    if (share >= least && share <= most) return []
    const values = {
      round: plain + i + 1,
      percent: formatNumber(100 * share),
      least: formatNumber(100 * least),
      most: formatNumber(100 * most),
    }
    return [
      finding(share < least ? 'edging/cups' : 'edging/ruffles', where(i), values, {
        ...{ edging: round.written.entry, round: plain + i + 1 },
      }),
    ]
  })
}
