/** Everything that is placed in a layout, told alike: its motifs, and the half motifs and fillers of a blanket. */
import type { PieceKind, PlacedMotif, Plan } from '../../shared-types/plan'

export interface PlacedPiece extends PlacedMotif {
  readonly kind: PieceKind
  /** The motifs round a filler. */
  readonly round?: readonly string[]
  /** At which end of its row a half motif stands. */
  readonly side?: 'left' | 'right'
}

const known = new WeakMap<Plan, readonly PlacedPiece[]>()

/** Motifs, then half motifs, then fillers; a filler has the row and place of the first motif round it. */
export function placedPieces(plan: Plan): readonly PlacedPiece[] {
  const before = known.get(plan)
  if (before) return before
  const pieces: PlacedPiece[] = plan.motifs.map((motif) => ({ ...motif, kind: 'motif' }))
  const last = new Map(plan.motifs.map(({ row, column }) => [row, column]))
  for (const { id, label, row, side, x, y, turn, colourway } of plan.halves) {
    const column = side === 'left' ? 0 : (last.get(row) ?? 0) + 1
    pieces.push({ id, label, row, column, x, y, turn, colourway, kind: 'half', side })
  }
  const first = new Map(plan.motifs.map((motif) => [motif.id, motif]))
  for (const { id, label, motifs, x, y, turn, colourway } of plan.fillers) {
    const { row = 0, column = 0 } = first.get(motifs[0] ?? '') ?? {}
    const motif = plan.fillerMotif?.id ?? ''
    pieces.push({ id, label, row, column, x, y, turn, colourway, motif, kind: 'filler', round: motifs })
  }
  known.set(plan, pieces)
  return pieces
}

const byId = new WeakMap<Plan, ReadonlyMap<string, PlacedPiece>>()

/** What is placed at an address; undefined where nothing is. */
export function pieceAt(plan: Plan, id: string | null | undefined): PlacedPiece | undefined {
  let pieces = byId.get(plan)
  if (!pieces) byId.set(plan, (pieces = new Map(placedPieces(plan).map((piece) => [piece.id, piece]))))
  return pieces.get(id ?? '')
}
