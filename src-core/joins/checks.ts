/** M32: does it hang together? */
import type { Finding } from '../../shared-types/finding'
import type { UnitSystem } from '../../shared-types/project'
import { finding } from '../findings/finding'
import { formatLength } from '../units/format'
import type { Millimetres } from '../units/quantity'
import { MANY_PETALS } from './constants'
import type { Node } from './nodes'

export interface ChecksInput {
  /** "row,place" of each motif. */
  readonly ids: readonly string[]
  readonly nodes: readonly Node[]
  readonly petals: number
  /** Spread from which a node is reported, in mm. */
  readonly stretchLimit: Millimetres
  readonly units: UnitSystem
}

/** Whether the gap at a node is to be reported, `limit` in mm. */
export const isStretched = ({ spread }: Pick<Node, 'spread'>, limit: Millimetres): boolean =>
  spread > limit + 1e-6

/** How many separate pieces the motifs form. */
export function pieceCount(motifs: number, nodes: readonly Node[]): number {
  const parent = Int32Array.from({ length: motifs }, (_, i) => i)
  const root = (i: number): number => {
    while (parent[i] !== i) i = parent[i] = parent[parent[i]!]!
    return i
  }
  let pieces = motifs
  for (const { members } of nodes)
    for (const { motif } of members.slice(1)) {
      const a = root(members[0]!.motif)
      const b = root(motif)
      if (a !== b) pieces--
      parent[a] = b
    }
  return pieces
}

/** Findings on the meeting points of one blanket. */
export function checkNodes({ ids, nodes, petals, stretchLimit, units }: ChecksInput): Finding[] {
  if (ids.length < 2) return []
  const findings: Finding[] = []
  const pieces = pieceCount(ids.length, nodes)
  if (pieces > 1) findings.push(finding('joins/pieces', 'joining', { pieces }))
  const met = new Int32Array(ids.length)
  const pairs = new Map<number, number>()
  let doubled = false
  for (const { members } of nodes) {
    members.forEach(({ motif }, i) => {
      met[motif]!++
      for (const other of members.slice(i + 1)) {
        const key = motif * ids.length + other.motif
        const times = (pairs.get(key) ?? 0) + 1
        pairs.set(key, times)
        doubled ||= times > 1
      }
    })
  }
  const single = ids.filter((_, i) => met[i] === 1)
  if (single.length > 0)
    findings.push(
      finding('joins/one-node', 'joining', { count: single.length, cells: few(single) }, { cells: single }),
    )
  if (nodes.length > 0 && !doubled) findings.push(finding('joins/weak', 'joining'))
  const stretched = nodes.filter((node) => isStretched(node, stretchLimit))
  if (stretched.length > 0)
    findings.push(
      finding(
        'joins/stretched',
        'joining',
        {
          count: stretched.length,
          spread: formatLength(
            stretched.reduce((most, node) => Math.max(most, node.spread), 0),
            units,
          ),
          limit: formatLength(stretchLimit, units),
        },
        { cells: [...new Set(stretched.slice(0, 200).map((node) => ids[node.members[0]!.motif]!))] },
      ),
    )
  if (petals >= MANY_PETALS) findings.push(finding('joins/many-tips', 'joining', { petals }))
  return findings
}

/** The first few places of a list, as "row 1, motif 2; row 4, motif 1 and 7 more". */
function few(ids: readonly string[]): string {
  const told = ids.slice(0, 4).map((id) => id.replace(/^(\d+),(\d+)$/, 'row $1, motif $2'))
  return told.join('; ') + (ids.length > 4 ? ` and ${ids.length - 4} more` : '')
}
