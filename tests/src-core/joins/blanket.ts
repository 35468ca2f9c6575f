/** A laid blanket of measured motifs with its nodes, for tests of layout and joins. */
import { findNodes } from '../../../src-core/joins/nodes'
import { REACH_SHARE } from '../../../src-core/joins/constants'
import { layBlanket } from '../../../src-core/layout/blanket'
import type { BlanketCounts, Laid } from '../../../src-core/layout/blanket'
import { latticeOf } from '../../../src-core/layout/lattice'
import type { Anchor } from '../../../shared-types/plan'
import type { Outline } from '../../../src-core/geometry/points'
import type { Node } from '../../../src-core/joins/nodes'

function counts(partial: Partial<BlanketCounts>): BlanketCounts {
  return {
    arrangement: 'straight-rows',
    columns: 3,
    rows: 3,
    alternateRows: 'same',
    rings: 0,
    turn: 0,
    alternateTurn: 0,
    inTheRound: false,
    ...partial,
  }
}

export function lay(outline: Outline, partial: Partial<BlanketCounts>, gap = 0): Laid {
  const all = counts(partial)
  const lattice = latticeOf(outline, all.arrangement !== 'straight-rows', all.turn, all.alternateTurn, gap)
  return layBlanket(lattice, all)
}

export function nodesOf(laid: Laid, anchors: readonly Anchor[], overTips: number, gap = 0): Node[] {
  const motifs = laid.placements.map(({ x, y, turn }) => ({ x, y, turn, anchors }))
  return findNodes(motifs, REACH_SHARE * overTips + gap)
}

/** How many nodes there are with so many members: { 2: 40, 3: 12 }. */
export function bySize(nodes: readonly Node[]): Record<number, number> {
  const sizes: Record<number, number> = {}
  for (const node of nodes) sizes[node.members.length] = (sizes[node.members.length] ?? 0) + 1
  return sizes
}
