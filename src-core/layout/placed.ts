/** Everything that is placed in a layout, told alike: its motifs, and the half motifs and fillers of a blanket. */
import type { JoinNode, MotifAccount, PieceKind, PlacedMotif, Plan, Point } from '../../shared-types/plan'
import { remembered } from '../memo'
import { nthInRows } from './addresses'

export interface PlacedPiece extends PlacedMotif {
  readonly kind: PieceKind
  /** The motifs round a filler. */
  readonly round?: readonly string[]
  /** At which end of its row a half motif stands. */
  readonly side?: 'left' | 'right'
}

/** Motifs, then half motifs, then fillers; a filler has the row and place of the first motif round it. */
export const placedPieces = remembered((plan: Plan): readonly PlacedPiece[] => {
  const pieces: PlacedPiece[] = plan.motifs.map((motif) => ({ ...motif, kind: 'motif' }))
  const last = new Map(plan.motifs.map(({ row, column }) => [row, column]))
  for (const { side, ...half } of plan.halves) {
    const { row } = half
    const column = side === 'left' ? 0 : (last.get(row) ?? 0) + 1
    pieces.push({ ...half, column, kind: 'half', side })
  }
  const first = new Map(plan.motifs.map((motif) => [motif.id, motif]))
  for (const { motifs, ...filler } of plan.fillers) {
    const { row = 0, column = 0 } = first.get(motifs[0] ?? '') ?? {}
    pieces.push({ ...filler, row, column, kind: 'filler', round: motifs })
  }
  return pieces
})

const nthInRow = remembered((plan: Plan) => nthInRows(plan.motifs.map(({ id }) => id)))

/** Which motif of its row one is, from the left, of those that stand there. */
export const placeInRow = (plan: Plan, { id, column }: Pick<PlacedMotif, 'id' | 'column'>): number =>
  nthInRow(plan).get(id) ?? column

const byId = remembered((plan: Plan) => new Map(placedPieces(plan).map((piece) => [piece.id, piece])))

/** What is placed at an address; undefined where nothing is. */
export const pieceAt = (plan: Plan, id: string | null | undefined): PlacedPiece | undefined =>
  byId(plan).get(id ?? '')

/** A place at which something is joined; of half motifs and fillers the place alone is known: two meet there. */
export type JoinPoint = Point & Partial<Pick<JoinNode, 'members' | 'stretched'>>

/** Every place at which something is joined: the join points of the motifs, then those of half motifs and fillers. */
export const joinPoints = remembered((plan: Plan): readonly JoinPoint[] => {
  const others = [...plan.halves, ...plan.fillers].flatMap((piece) => piece.points ?? [])
  return others.length > 0 ? [...plan.joins, ...others] : plan.joins
})

/** The same as a map has them: where a round closes they are marked at both of its ends. */
export const marksOnMap = remembered((plan: Plan): readonly JoinPoint[] => {
  const points = joinPoints(plan)
  const { round } = plan
  if (!round) return points
  const again = plan.joins.filter(({ wraps }) => wraps)
  return [...points, ...again.map((node) => ({ ...node, x: node.x + round.circumference }))]
})

/** How large the map of a plan is, in mm: opened out, where something is joined in the round. */
export const mapSize = ({
  size,
  round,
}: Pick<Plan, 'size' | 'round'>): { width: number; height: number } => ({
  width: round?.map ?? size.width,
  height: size.height,
})

const accountsById = remembered((plan: Plan) => {
  const byId = (accounts: readonly MotifAccount[]) =>
    new Map(accounts.map((account) => [account.id, account]))
  return { motifs: byId(plan.accounts), fillers: byId(plan.fillerMotifs) }
})

/** The account of what is placed: of several motifs, or fillers, its own. */
export function accountAt(
  plan: Plan,
  { motif = '', kind }: Pick<PlacedMotif, 'motif'> & { readonly kind?: PieceKind },
): MotifAccount | null {
  const { motifs, fillers } = accountsById(plan)
  if (kind === 'filler') return fillers.get(motif) ?? null
  return motifs.get(motif) ?? plan.motif
}

/** Join points that fillers or half motifs have of their own, beside those where motifs meet. */
export const ownPoints = (pieces: readonly { readonly points?: readonly Point[] | undefined }[]): number =>
  pieces.reduce((sum, { points }) => sum + (points?.length ?? 0), 0)
