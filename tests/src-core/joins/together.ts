/**
 * An independent count of pieces and of motifs on one join point: by walking the plan's joins from motif to motif,
 * and to the half motifs by the joins of their steps. A motif's anchor is one join point, however many meet there.
 */
import type { Plan } from '../../../shared-types/plan'

export function countTogether({
  motifs,
  joins,
  halves = [],
  order = [],
}: Pick<Plan, 'motifs' | 'joins'> & Partial<Pick<Plan, 'halves' | 'order'>>): {
  pieces: number
  single: number
} {
  const met = order
    .filter(({ kind }) => kind === 'half')
    .flatMap((step) =>
      step.joins.map(({ anchor, with: others }) => [{ motif: step.motif, anchor }, ...others]),
    )
  const meetings = [...joins.map(({ members }) => members), ...met]
  const beside = new Map<string, Set<string>>([...motifs, ...halves].map(({ id }) => [id, new Set()]))
  const anchors = new Map<string, Set<string>>([...beside.keys()].map((id) => [id, new Set()]))
  for (const members of meetings)
    for (const { motif, anchor } of members) {
      anchors.get(motif)!.add(anchor)
      for (const other of members) beside.get(motif)!.add(other.motif)
    }
  const unseen = new Set(beside.keys())
  let pieces = 0
  for (const start of unseen) {
    pieces++
    const stack = [start]
    unseen.delete(start)
    for (let motif = stack.pop(); motif !== undefined; motif = stack.pop())
      for (const other of beside.get(motif)!) if (unseen.delete(other)) stack.push(other)
  }
  return { pieces, single: [...anchors.values()].filter((own) => own.size === 1).length }
}
