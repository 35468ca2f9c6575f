/**
 * A leaf or an oval, in rounds on a foundation chain that is worked along on both sides, and a piece in rows on such a
 * chain, with its border. The tip (the chain that was made first) points to 12 o'clock, the hook begins at the other
 * end; seen by a left-hander work goes up on the left.
 */
import type { Point } from '../../../shared-types/plan'
import type { WorkedRound } from '../../notation/worked'
import type { ResolvedGauge } from '../../stitches/gauge'
import type { Millimetres } from '../../units/quantity'
import { middleOf } from './ground'
import type { LocatedElement, LocatedRound } from './ground'
import { blockGround, chainGround, roundGround } from './leaf-ground'
import type { Places } from './leaf-ground'
import { roomOf, standOn } from './leaf-round'
import type { Line } from './ribbon'

/** Middles of the chains of a foundation chain, the first made at the tip. */
const stemPoints = (chains: number, width: Millimetres): Point[] =>
  Array.from({ length: chains }, (_, cell) => ({ x: 0, y: (cell + 0.5 - chains / 2) * width }))

export interface LocatedLeaf {
  readonly located: LocatedRound[]
  /** Middles of the chains that it begins on; those that the hook skips stand up beside the first stitch. */
  readonly stem: readonly Point[]
  /** Rows and no rounds: how many before its border. */
  readonly rows: number
}

const isOpposite = ({ elements }: WorkedRound): boolean =>
  elements.some(({ into }) => into.some(({ kind, opposite }) => kind === 'chain' && opposite))

/** Rows before the first round that goes around them; none of a leaf, which is worked along both sides at once. */
export function rowsOf(worked: readonly WorkedRound[]): number {
  const around = worked.findIndex((round) => round.joined || isOpposite(round))
  return around < 0 ? worked.length : around
}

/** Whether a row begins with chains that stand beside it and do not count. */
const turnsUp = ({ elements }: WorkedRound): boolean =>
  elements.some(({ role, standing }) => role === 'beginning' && !standing)

/** Whether a row that turns back names gaps as if it went on: it counts them from its own beginning. */
function countsBack({ elements, turned }: WorkedRound): boolean {
  const gaps = elements.flatMap(({ into }) =>
    into.flatMap(({ kind, index }) => (kind === 'gap' ? [index] : [])),
  )
  return turned && gaps.length > 1 && gaps[0]! < gaps[gaps.length - 1]!
}

/** Everything of the rounds in its place, in mm about the middle of the chain. */
export function locateLeaf(
  worked: readonly WorkedRound[],
  chains: number,
  gauge: ResolvedGauge,
): LocatedLeaf {
  const rows = rowsOf(worked)
  const stem = stemPoints(chains, gauge.width * stretchOf(worked.slice(0, rows), chains, gauge))
  const places: Places = new Map()
  const last = lastCell(worked[0]!, chains)
  const skipped = chains - 1 - last
  let turned: readonly Point[] = []
  const lines: Line[] = []
  const located = worked.map((round, order) => {
    // Lobes stand on the last whole row, whatever was worked since.
    const below = worked.findIndex(({ index }) => index === round.onto)
    const under = order < rows && below >= 0 && below < order ? below : order - 1
    const ground =
      order === 0
        ? chainGround(stem, last, rows === 0, gauge.width)
        : order === rows && rows > 0
          ? blockGround(
              round,
              lines,
              stem,
              last,
              places,
              worked[order - 1]!.index,
              gauge.width,
              worked.slice(0, rows).some(turnsUp),
            )
          : roundGround(lines[under]!, places, worked[under]!.index, order < rows && countsBack(round))
    const own = standOn(round, ground, order === 0 ? skipped : 0, gauge)
    if (order === 0) turned = own.turned
    lines.push(own.line)
    const feet = new Map(own.located.elements.map(({ element, base }) => [element.index, base]))
    places.set(
      round.index,
      round.places.map(({ element, kind, chains }) => ({
        point: own.points.get(element) ?? null,
        arc: own.arcs.get(element) ?? null,
        foot: feet.get(element) ?? null,
        isStitch: kind === 'stitch',
        chains,
      })),
    )
    return own.located
  })
  const drawn = [...stem.slice(0, last + 1), ...turned]
  if (rows === 0) return { located, stem: drawn, rows }
  const middle = middleOfAll(located)
  return {
    located: located.map((round) => shifted(round, middle)),
    stem: drawn.map((point) => minus(point, middle)),
    rows,
  }
}

/** A row that is so many times as long as the one before it is a ruffle or an edging; others grow as they are. */
const RUFFLED = 1.3
/** Chains stand apart so many times as far at most, so that such a row has room (by eye). */
const STRETCHED = 4

/** How far apart the chains of a foundation are drawn, so that a long row above them has room. */
function stretchOf(rows: readonly WorkedRound[], chains: number, gauge: ResolvedGauge): number {
  const lengths = rows.map((row) => row.elements.reduce((sum, each) => sum + roomOf(each, gauge), 0))
  const [first] = lengths
  if (!first) return 1
  const own = (lastCell(rows[0]!, chains) + 1) * gauge.width
  const ruffled = lengths.filter((length, i) => length > RUFFLED * (i > 0 ? lengths[i - 1]! : own))
  return Math.min(STRETCHED, Math.max(own, ...ruffled) / own)
}

/** The last chain that a round on a chain uses. */
function lastCell({ elements }: WorkedRound, chains: number): number {
  const cells = elements.flatMap(({ into }) =>
    into.flatMap(({ kind, cell }) => (kind === 'chain' ? [cell] : [])),
  )
  return Math.min(chains - 1, Math.max(0, ...cells))
}

const minus = (a: Point, b: Point): Point => ({ x: a.x - b.x, y: a.y - b.y })

function middleOfAll(located: readonly LocatedRound[]): Point {
  const points = located.flatMap(({ edge }) => edge)
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)]
  return middleOf({ x: Math.min(...xs), y: Math.min(...ys) }, { x: Math.max(...xs), y: Math.max(...ys) })
}

function shifted(round: LocatedRound, by: Point): LocatedRound {
  const element = (entry: LocatedElement): LocatedElement => ({
    ...entry,
    base: minus(entry.base, by),
    top: minus(entry.top, by),
    chain: entry.chain.map((point) => minus(point, by)),
    ...(entry.feet && { feet: entry.feet.map((point) => minus(point, by)) }),
    ...(entry.end && { end: minus(entry.end, by) }),
  })
  return {
    ...round,
    elements: round.elements.map(element),
    asides: round.asides.map(element),
    edge: round.edge.map((point) => minus(point, by)),
  }
}
