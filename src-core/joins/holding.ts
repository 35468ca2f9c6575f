/**
 * Does it hold? A blanket holds when its motifs hang together in one piece and none of them hangs on a single
 * join point, where it would spin. The one place that answers it: for plans, for fits and for rotations tried.
 */
import type { Finding } from '../../shared-types/finding'
import type { Holds, Plan } from '../../shared-types/plan'
import { finding } from '../findings/finding'
import { addressWords } from '../layout/addresses'

/** Something that joins motifs: a join point, or a filler between them. */
interface Joint {
  readonly members: readonly { readonly motif: number }[]
  /** A motif that this hangs on, which has counted the join point already. */
  readonly of?: number
}

interface Holding {
  /** Separate pieces that the motifs form; 1 hangs together. */
  readonly pieces: number
  /** Indices of the motifs that hang on a single join point. */
  readonly single: readonly number[]
}

/** How so many motifs hang together. A motif by itself is one piece. */
export function holdingOf(motifs: number, ...joints: readonly (readonly Joint[])[]): Holding {
  const parent = Int32Array.from({ length: motifs }, (_, i) => i)
  const met = new Int32Array(motifs)
  const root = (i: number): number => {
    while (parent[i] !== i) i = parent[i] = parent[parent[i]!]!
    return i
  }
  let pieces = motifs
  for (const list of joints)
    for (const { members, of } of list) {
      const first = of ?? members[0]!.motif
      for (const { motif } of members) {
        met[motif]!++
        const [a, b] = [root(first), root(motif)]
        if (a !== b) pieces--
        parent[b] = a
      }
    }
  const single: number[] = []
  met.forEach((times, motif) => {
    if (times === 1) single.push(motif)
  })
  return { pieces, single }
}

/** Motifs beside the largest piece, at most this share of all, that may as well be left out (our own choice). */
const STRAY = 0.1

/** The motifs that hang on nothing of the rest, where most of a plan does hang together; empty else. */
export function strayMotifs(plan: Pick<Plan, 'motifs' | 'joins' | 'fillers'>): readonly string[] {
  const index = new Map(plan.motifs.map(({ id }, i) => [id, i]))
  const parent = plan.motifs.map((_, i) => i)
  const root = (i: number): number => {
    while (parent[i] !== i) i = parent[i] = parent[parent[i]!]!
    return i
  }
  const joints = [
    ...plan.joins.map(({ members }) => members.map(({ motif }) => motif)),
    ...plan.fillers.map(({ motifs }) => motifs),
  ]
  for (const joint of joints) {
    const [first, ...others] = joint.flatMap((id) => index.get(id) ?? [])
    for (const other of others) parent[root(other)] = root(first!)
  }
  const sizes = new Map<number, number>()
  parent.forEach((_, i) => sizes.set(root(i), (sizes.get(root(i)) ?? 0) + 1))
  const largest = [...sizes].reduce((best, each) => (each[1] > best[1] ? each : best), [-1, 0] as const)
  const stray = plan.motifs.filter((_, i) => root(i) !== largest[0])
  return stray.length > STRAY * plan.motifs.length ? [] : stray.map(({ id }) => id)
}

/** The answer in one word. */
export const holds = ({ pieces, single }: Holds): boolean => pieces <= 1 && single === 0

/** Below zero when `a` is better: what holds first, then fewer pieces, then fewer motifs on one join point. */
export const compareHolding = (a: Holds, b: Holds): number => a.pieces - b.pieces || a.single - b.single

/** What is to be said about motifs that do not hold; `ids` as "row,place" or "row,side". */
export function holdingFindings(ids: readonly string[], { pieces, single }: Holding): Finding[] {
  const findings: Finding[] = []
  if (ids.length < 2) return findings
  if (pieces > 1) findings.push(finding('joins/pieces', 'joining', { pieces }))
  if (single.length > 0) {
    const cells = single.map((motif) => ids[motif]!)
    findings.push(
      finding(
        'joins/one-node',
        'joining',
        { count: cells.length, cells: addressWords(cells, ids) },
        { cells },
      ),
    )
  }
  return findings
}
