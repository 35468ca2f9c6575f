/** Motifs, half motifs and fillers in words: what each is called, where it stands. */
import type { PieceKind, Plan } from '../../shared-types/plan'
import { listOf } from '../joins/words'
import { accountAt, placeInRow } from '../layout/placed'
import type { PlacedPiece } from '../layout/placed'
import { remembered } from '../memo'

/** What the pieces of a blanket are called. */
export const PIECE_NAME: Readonly<Record<PieceKind, string>> = {
  motif: 'motif',
  filler: 'filler',
  half: 'half motif',
}

const numbersOf = remembered(
  ({ motifs }: Plan) => new Map(motifs.map(({ id, label }) => [id, Number(label)])),
)

/** Working numbers of the motifs round a filler, smallest first. */
export function roundOf(plan: Plan, { round = [] }: PlacedPiece): number[] {
  const known = numbersOf(plan)
  return round.map((id) => known.get(id) ?? 0).sort((a, b) => a - b)
}

/** Which one of several motifs, or of several fillers, a piece is; '' where there is but one. */
export function nameAmong(plan: Plan, piece: Pick<PlacedPiece, 'kind' | 'motif'>): string {
  const isOne = piece.kind === 'filler' ? plan.fillerMotifs.length < 2 : plan.accounts.length === 0
  return isOne || piece.kind === 'half' ? '' : (accountAt(plan, piece)?.name ?? '')
}

/** Where a piece stands, by the motifs that are there: "row 5, motif 7", "between 14, 15, 27 and 28", "row 4, left"; of several motifs which one. */
export function standsWords(plan: Plan, piece: PlacedPiece): string {
  if (piece.kind === 'half') return `row ${piece.row}, ${piece.side}`
  if (piece.kind === 'motif') {
    const name = nameAmong(plan, piece)
    return `row ${piece.row}, motif ${placeInRow(plan, piece)}${name ? `, ${name}` : ''}`
  }
  const name = nameAmong(plan, piece)
  return `between ${listOf(roundOf(plan, piece))}${name ? `, ${name}` : ''}`
}

/** "row 5, motif 7", "filler between 14, 15, 27 and 28", "half motif, row 4, left". */
export function pieceWords(plan: Plan, piece: PlacedPiece): string {
  const where = standsWords(plan, piece)
  if (piece.kind === 'motif') return where
  return `${PIECE_NAME[piece.kind]}${piece.kind === 'half' ? ',' : ''} ${where}`
}
