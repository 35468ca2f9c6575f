/** How the join points of a map are told apart, in the window and on paper alike. */
import type { Plan } from '../../shared-types/plan'
import { joinPoints, pieceAt } from '../layout/placed'
import type { JoinPoint } from '../layout/placed'
import { remembered } from '../memo'

/** Two motifs meet, more than two meet, or the gap at the join is too wide, however many meet. */
export const JOIN_MARKS = ['two', 'several', 'stretched'] as const
export type JoinMark = (typeof JOIN_MARKS)[number]

export const joinMarkOf = ({ members, stretched }: Pick<JoinPoint, 'members' | 'stretched'>): JoinMark =>
  stretched ? 'stretched' : (members?.length ?? 2) > 2 ? 'several' : 'two'

/** What each mark means. */
export const JOIN_MARK_WORDS: Readonly<Record<JoinMark, string>> = {
  two: 'two motifs meet',
  several: 'three or more meet',
  stretched: 'a wide gap: ease together or add a chain',
}

/** Size of each mark beside a plain dot. */
export const JOIN_MARK_SIZES: Readonly<Record<JoinMark, number>> = { two: 1, several: 1.35, stretched: 1.6 }

/** The marks of some join points, in their order. */
export function joinMarksOf(points: readonly JoinPoint[]): readonly JoinMark[] {
  const there = new Set(points.map(joinMarkOf))
  return JOIN_MARKS.filter((mark) => there.has(mark))
}

const marksOf = remembered(joinMarksOf)

/** The marks that a plan has. */
export const joinMarksIn = (plan: Plan): readonly JoinMark[] => marksOf(joinPoints(plan))

const SHAPES: Readonly<Record<JoinMark, readonly [string, string]>> = {
  two: ['dot', 'of two motifs'],
  several: ['ring', 'of three or more'],
  stretched: ['diamond', 'with a wide gap: ease the motifs together there or add a chain'],
}

/** "A dot is a join point of two motifs, a ring one of three or more."; nothing where nothing is joined. */
export function joinMarksSentence(plan: Plan): string {
  if (plan.settled.joining.rule === 'seam' && plan.counts.sides) return seamMarksSentence(plan)
  const parts = joinMarksIn(plan).map((mark, i) => {
    const [shape, of] = SHAPES[mark]
    return i === 0 ? `A ${shape} is a join point ${of}` : `a ${shape} one ${of}`
  })
  return parts.length === 0 ? '' : `${parts.join(', ')}.`
}

/** The same where dots only show which sides are sewn. */
function seamMarksSentence(plan: Plan): string {
  const marks = joinMarksIn(plan)
  const several = marks.includes('several') ? '; at a ring more than two motifs meet' : ''
  const wide = marks.includes('stretched') ? `; a diamond is a place ${SHAPES.stretched[1]}` : ''
  return `Sides with dots are sewn${several}${wide}.`
}

/** A join point of one motif. */
export interface OwnJoin {
  readonly x: number
  readonly y: number
  /** The motif was there first: later ones join into it. */
  readonly hosts: boolean
}

/** The join points of a motif, half motif or filler, where the map has them. */
export function ownJoins(plan: Plan, id: string): OwnJoin[] {
  const piece = pieceAt(plan, id)
  if (!piece) return []
  if (piece.kind === 'motif')
    return plan.joins
      .filter(({ members }) => members.some(({ motif }) => motif === id))
      .map(({ x, y, host }) => ({ x, y, hosts: host === id }))
  // What comes later has places of its own, and joins where motifs meet already.
  const own = [...plan.halves, ...plan.fillers].find((entry) => entry.id === id)?.points ?? []
  const met = plan.order.find(({ motif }) => motif === id)?.joins.flatMap((join) => join.with) ?? []
  const shared = plan.joins.filter(({ members }) =>
    members.some(({ motif, anchor }) =>
      met.some((other) => other.motif === motif && other.anchor === anchor),
    ),
  )
  return [...own, ...shared].map(({ x, y }) => ({ x, y, hosts: false }))
}

/** What the marks of the selected motif's own join points mean. */
export const OWN_JOIN_WORDS = {
  joined: 'joined by the selected motif',
  hosts: 'later motifs join into it',
} as const
