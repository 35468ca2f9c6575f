/**
 * M34: the ends of what is joined in the round, laid flat. Front and back lie edge on edge there, tip on tip, whether the
 * end is straight or goes in and out: a seam that closes it takes half of the line along it.
 */
import type { RoundAccount } from '../../shared-types/plan'
import type { EdgingEnds } from '../../shared-types/project'
import { OPEN_ENDS } from '../edging/open-ends'
import { EDGING } from '../edging/constants'
import type { Point } from '../../shared-types/plan'
import type { SettledBlanket } from '../../shared-types/settled'
import type { Closing } from '../materials/closing'
import type { BlanketCounts, Laid } from './blanket'
import type { Cells } from './cells'
import { finding } from '../findings/finding'
import type { Finding } from '../../shared-types/finding'
import type { Millimetres } from '../units/quantity'
import { edgeLine, edgingLines } from './edge'
import type { EdgeInput } from './edge-walk'
import type { EdgingRoom } from './frame'
import type { Arranged, Joined } from './stages'

/** An end laid flat, in mm as it is blocked. */
export interface FlatEnd {
  /** Along the edge of its front. */
  readonly length: Millimetres
  /** How far that goes in and out; 0 where it is straight. */
  readonly depth: Millimetres
}

/** Both ends; null where the motifs have no edge that runs round. */
export interface FlatEnds {
  readonly mouth: FlatEnd
  readonly bottom: FlatEnd
}

/** Whether an edging at these ends is at this one. */
export const isEdged = (ends: EdgingEnds, end: 'mouth' | 'bottom'): boolean => ends === 'both' || ends === end

/** Of an end without an edging `bare` has the line; `edge` is the edging's own, null without one. */
export function flatEnds(
  bare: EdgeInput,
  edge: EdgeInput | null,
  laid: Laid,
  blockWidth: number,
  blockHeight: number,
): FlatEnds | null {
  const linesOf = (input: EdgeInput) => edgingLines(input, laid, edgeLine(input).length).slice(0, OPEN_ENDS)
  const plain = linesOf({ ...bare, style: 'follow', ends: 'both' })
  const edged = edge ? linesOf(edge) : []
  const [mouth, bottom] = [0, 1].map((i) => {
    const own = edged[i] ?? []
    const line = (own.length > 1 ? own : (plain[i] ?? [])).map(({ x, y }) => ({
      x: x * blockWidth,
      y: y * blockHeight,
    }))
    return line.length > 1 ? flat(line) : null
  })
  return mouth && bottom ? { mouth, bottom } : null
}

function flat(line: readonly Point[]): FlatEnd {
  const around = line
    .slice(1)
    .reduce((sum, to, i) => sum + Math.hypot(to.x - line[i]!.x, to.y - line[i]!.y), 0)
  const heights = line.map(({ y }) => y)
  const depth = Math.max(...heights) - Math.min(...heights)
  return { length: around / 2, depth: depth < EDGING.onLine ? 0 : depth }
}

/** The ends that a layout closes: the bottom first, the mouth once nothing more is to be put in. */
export function closings(
  { closedEnds, edging }: Pick<SettledBlanket, 'closedEnds' | 'edging'>,
  ends: FlatEnds,
  hasEdging: boolean,
): Closing[] {
  const closed = ({ none: [], bottom: ['bottom'], both: ['bottom', 'mouth'] } as const)[closedEnds]
  return closed.map((end) => ({
    ...{ end, ...ends[end] },
    edged: hasEdging && isEdged(edging?.ends ?? 'both', end),
  }))
}

/** What is told of a round, blocked `wider` by. */
export function roundAccount(
  arranged: Arranged,
  { nodes }: Joined,
  { side }: EdgingRoom,
  wider: number,
  ends: FlatEnds | null,
): RoundAccount {
  const circumference = arranged.round * wider
  return {
    circumference,
    flat: circumference / 2,
    map: (arranged.width + 2 * side) * wider,
    joins: nodes.filter(({ wraps }) => wraps).length,
    depth: { mouth: ends?.mouth.depth ?? 0, bottom: ends?.bottom.depth ?? 0 },
  }
}

/** A note where the motifs that alternate do not come out even once round. */
export function unevenRound({ pattern }: Cells, { inTheRound, columns }: BlanketCounts): Finding[] {
  if (!inTheRound || pattern.by !== 'cell' || columns % pattern.count === 0) return []
  return [finding('layout/round-pattern', 'layout.columns', { count: pattern.count, columns })]
}
