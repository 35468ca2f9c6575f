/** An independent count of pieces and of motifs on one join point: by walking the plan's joins from motif to motif. */
import type { Plan } from '../../../shared-types/plan'

export function countTogether({ motifs, joins }: Pick<Plan, 'motifs' | 'joins'>): {
  pieces: number
  single: number
} {
  const points = new Map<string, number[]>(motifs.map(({ id }) => [id, []]))
  joins.forEach(({ members }, point) => members.forEach(({ motif }) => points.get(motif)!.push(point)))
  const unseen = new Set(points.keys())
  let pieces = 0
  for (const start of unseen) {
    pieces++
    const stack = [start]
    unseen.delete(start)
    for (let motif = stack.pop(); motif !== undefined; motif = stack.pop())
      for (const point of points.get(motif)!)
        for (const member of joins[point]!.members) if (unseen.delete(member.motif)) stack.push(member.motif)
  }
  return { pieces, single: [...points.values()].filter((own) => own.length === 1).length }
}
