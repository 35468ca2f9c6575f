/**
 * Rounds that make several pieces (a flower and a leaf, a first motif and one that is joined to it): each begins on a
 * ring or chain of its own. A motif is the first of them; the others are told, and added to nothing.
 */
import type { WorkedRound } from '../../notation/worked'
import type { ReadMotif } from './read-motif'

/** Whether a round begins anew: on a ring or chain that it makes, or that its part of the text does. */
const beginsPiece = (round: WorkedRound, before: WorkedRound | undefined): boolean =>
  before !== undefined &&
  round.onto === -2 &&
  (round.foundation !== null || round.part !== before.part || round.number <= before.number)

/** Worked rounds by piece, in the order of the text. */
export function piecesOf(worked: readonly WorkedRound[]): WorkedRound[][] {
  const pieces: WorkedRound[][] = []
  worked.forEach((round, i) => {
    const open = pieces[pieces.length - 1]
    if (!open || beginsPiece(round, worked[i - 1])) pieces.push([round])
    else open.push(round)
  })
  return pieces
}

/** What was read of the first piece, and where the next ones begin. */
export function firstPiece(read: ReadMotif): { read: ReadMotif; others: readonly WorkedRound[] } {
  const [first, ...others] = piecesOf(read.worked)
  if (!first || others.length === 0) return { read, others: [] }
  const count = first.length
  return {
    read: { ...read, worked: first, entries: read.entries.slice(0, count) },
    others: others.map((piece) => piece[0]!),
  }
}
