/** What belongs together on a plan, by id: a row, a column, all of a colourway. Fillers stand in rows of their own. */
import type { Plan } from '../../shared-types/plan'
import { pieceAt, placedPieces } from '../../src-core/layout/placed'
import type { PlacedPiece } from '../../src-core/layout/placed'

const idsWhere = (plan: Plan, same: (piece: PlacedPiece) => boolean): string[] =>
  placedPieces(plan)
    .filter(same)
    .map(({ id }) => id)

const isFiller = ({ kind }: PlacedPiece): boolean => kind === 'filler'

/** Everything in the row of a motif or half motif; of a filler, the fillers beside it. */
export function rowOf(plan: Plan, id: string): string[] {
  const own = pieceAt(plan, id)
  return own ? idsWhere(plan, (piece) => piece.row === own.row && isFiller(piece) === isFiller(own)) : []
}

/** Everything at the same place of its row as a motif; of a filler, the fillers above and below it. */
export function columnOf(plan: Plan, id: string): string[] {
  const own = pieceAt(plan, id)
  return own ? idsWhere(plan, (piece) => piece.column === own.column && piece.kind === own.kind) : []
}

/** All motifs, half motifs and fillers of a colourway. */
export const colourwayOf = (plan: Plan, colourway: string): string[] =>
  idsWhere(plan, (piece) => piece.colourway === colourway)
