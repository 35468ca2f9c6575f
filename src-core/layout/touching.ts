/** Motifs of a kind that touch though others stand between them: what "no two alike touching" keeps apart beside neighbours. */
import type { Node } from '../joins/nodes'
import type { Millimetres } from '../units/quantity'
import type { Placement } from './blanket'

/** So many meet at the corners of their cells; what meets there alone does not lie side by side. */
const AT_A_CORNER = 4
/** Rows, and half pitches across, within which the nearest of a kind is looked for. */
const NEAR = { rows: 2, halves: 4 } as const
/** Two that are as near as each other to within this, in mm. */
const ALIKE: Millimetres = 0.01

/**
 * Of several motifs in one layout, pairs of a kind that are joined without lying in neighbouring places; where nothing
 * at all is joined, those of a kind that lie nearest to each other, if no neighbour is of it. Each pair once.
 */
export function touchingPairs(
  placements: readonly Pick<Placement, 'row' | 'halves' | 'kind' | 'x' | 'y'>[],
  nodes: readonly Node[],
): (readonly [number, number])[] {
  if (new Set(placements.map(({ kind }) => kind)).size < 2) return []
  return nodes.length > 0 ? joinedPairs(placements, nodes) : nearestPairs(placements)
}

function joinedPairs(
  placements: readonly Pick<Placement, 'kind'>[],
  nodes: readonly Node[],
): (readonly [number, number])[] {
  const found = new Map<number, readonly [number, number]>()
  for (const { members } of nodes) {
    if (members.length >= AT_A_CORNER) continue
    members.forEach(({ motif }, i) => {
      for (const { motif: other } of members.slice(i + 1))
        if (placements[motif]!.kind === placements[other]!.kind)
          found.set(motif * placements.length + other, [motif, other])
    })
  }
  return [...found.values()]
}

function nearestPairs(
  placements: readonly Pick<Placement, 'row' | 'halves' | 'kind' | 'x' | 'y'>[],
): (readonly [number, number])[] {
  const at = new Map(placements.map(({ row, halves }, i) => [keyOf(row, halves), i]))
  const found = new Map<number, readonly [number, number]>()
  placements.forEach(({ row, halves, kind, x, y }, i) => {
    let least = Infinity
    let nearest: number[] = []
    for (let down = -NEAR.rows; down <= NEAR.rows; down++)
      for (let across = -NEAR.halves; across <= NEAR.halves; across++) {
        const other = at.get(keyOf(row + down, halves + across))
        if (other === undefined || other === i || placements[other]!.kind !== kind) continue
        const far = Math.hypot(placements[other]!.x - x, placements[other]!.y - y)
        if (far > least + ALIKE) continue
        nearest = far < least - ALIKE ? [other] : [...nearest, other]
        least = Math.min(far, least)
      }
    for (const other of nearest) {
      const [one, two] = i < other ? [i, other] : [other, i]
      found.set(one * placements.length + two, [one, two])
    }
  })
  return [...found.values()]
}

/** There are at most some thousands of rows and half pitches. */
const keyOf = (row: number, halves: number): number => row * 100_000 + halves
