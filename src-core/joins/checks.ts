/** M32: what there is to remark on the join points; whether they hold it together says `holding.ts`. */
import type { Finding } from '../../shared-types/finding'
import type { MotifAccount, WideGaps } from '../../shared-types/plan'
import { finding } from '../findings/finding'
import { fineLengthValue } from '../findings/quantities'
import type { Millimetres } from '../units/quantity'
import { MANY_PETALS } from './constants'
import type { Node } from './nodes'

interface ChecksInput {
  /** "row,place" of each motif. */
  readonly ids: readonly string[]
  readonly nodes: readonly Node[]
  /** Of the motifs: with petals as soon as one has some. */
  readonly shape: MotifAccount['shape']
  readonly petals: number
  /** Spread from which a node is reported, in mm. */
  readonly stretchLimit: Millimetres
  /** They are finished, and joined by seams. */
  readonly isSewn: boolean
  /** All of them have straight sides, and are joined at nothing but their corners. */
  readonly isAtCorners: boolean
}

/** Join points of which more than this share gape are said to gape as a whole (our own choice). */
const MOSTLY = 0.5

/** How many join points gape wider than what closes by itself; null where none does. */
export function wideGaps(nodes: readonly Pick<Node, 'spread'>[], limit: Millimetres): WideGaps | null {
  let [joins, widest] = [0, 0]
  for (const node of nodes) {
    if (!isStretched(node, limit)) continue
    joins++
    widest = Math.max(widest, node.spread)
  }
  return joins > 0 ? { joins, of: nodes.length, widest, closes: limit } : null
}

/** Whether more than half of the join points gape: such an arrangement comes after those that close. */
export const gapesMostly = (wide: Pick<WideGaps, 'joins' | 'of'> | null | undefined): boolean =>
  wide != null && wide.joins > MOSTLY * wide.of

/** Whether the gap at a node is to be reported, `limit` in mm. */
export const isStretched = ({ spread }: Pick<Node, 'spread'>, limit: Millimetres): boolean =>
  spread > limit + 1e-6

/** Said of neighbours that meet once, with what can be done about it. */
const WEAK = {
  petals: 'joins/weak',
  leaf: 'joins/weak-sides',
  straight: 'joins/weak-sides',
  round: 'joins/weak-round',
} as const

/** Without what fillers mend: they hold the sides of what meets at corners alone. */
export const besideFillers = (
  { findings }: { readonly findings: readonly Finding[] },
  { fillers }: { readonly fillers: readonly unknown[] },
): readonly Finding[] =>
  fillers.length > 0 ? findings.filter(({ code }) => code !== 'joins/corners-alone') : findings

/** Findings on the meeting points of one blanket. */
export function checkNodes({
  ids,
  nodes,
  shape,
  petals,
  stretchLimit,
  isSewn,
  isAtCorners,
}: ChecksInput): Finding[] {
  if (ids.length < 2) return []
  const findings: Finding[] = []
  if (nodes.length > 0 && isAtCorners) findings.push(finding('joins/corners-alone', 'joining'))
  else if (nodes.length > 0 && !meetTwice(nodes, ids.length)) findings.push(finding(WEAK[shape], 'joining'))
  const stretched = nodes.filter((node) => isStretched(node, stretchLimit))
  if (stretched.length > 0)
    findings.push(
      finding(
        isSewn ? 'joins/stretched-seam' : 'joins/stretched',
        'joining',
        {
          count: stretched.length,
          spread: fineLengthValue(stretched.reduce((most, node) => Math.max(most, node.spread), 0)),
          limit: fineLengthValue(stretchLimit),
        },
        { cells: [...new Set(stretched.flatMap(({ members }) => members.map(({ motif }) => ids[motif]!)))] },
      ),
    )
  if (petals >= MANY_PETALS) findings.push(finding('joins/many-tips', 'joining', { petals }))
  return findings
}

/** Whether any two motifs are joined at more than one place: in most blankets the first ones are. */
function meetTwice(nodes: readonly Node[], count: number): boolean {
  const pairs = new Set<number>()
  for (const { members } of nodes)
    for (let i = 0; i < members.length; i++)
      for (let j = i + 1; j < members.length; j++) {
        const pair = members[i]!.motif * count + members[j]!.motif
        if (pairs.has(pair)) return true
        pairs.add(pair)
      }
  return false
}
