/** What the pieces of a work are called: motifs, and what stands between and beside them, each only where there is some. */
import type { ByKind, PieceKind, PlanNumbers } from '../../shared-types/plan'
import { counted, listed, plural } from '../figures/words'
import { formatNumber } from '../units/format'

/** What is counted of a plan beside its motifs. */
export type Pieces = Pick<PlanNumbers, 'counts'>

/** "12 half motifs", "3 fillers", "15 fillers and half motifs": what is no whole motif. */
export function othersWords({ counts: { fillers = 0, halves = 0 } }: Pieces, count: number): string {
  if (fillers === 0) return counted(count, 'half motif')
  if (halves === 0) return counted(count, 'filler')
  return counted(count, 'filler or half motif', 'fillers and half motifs')
}

/** What the pieces of a work are called together: "motifs", "motifs, fillers and half motifs". */
export const piecesNames = ({ counts: { fillers = 0, halves = 0 } }: Pieces): string =>
  listed(['motifs', ...(fillers > 0 ? ['fillers'] : []), ...(halves > 0 ? ['half motifs'] : [])])

/** "42 motifs"; "42 motifs and half motifs" where both are counted together. */
export function piecesWords(pieces: Pieces, count: number): string {
  const { fillers = 0, halves = 0 } = pieces.counts
  const others = [...(fillers > 0 ? ['filler'] : []), ...(halves > 0 ? ['half motif'] : [])]
  const one =
    others.length === 0 ? 'motif' : `${['motif', ...others.slice(0, -1)].join(', ')} or ${others.at(-1)}`
  return `${formatNumber(count)} ${plural(count, one, piecesNames(pieces))}`
}

/** How many there are of each kind. */
export function countKinds(pieces: readonly { readonly kind: PieceKind }[]): ByKind {
  const counts: Partial<Record<PieceKind, number>> = {}
  for (const { kind } of pieces) counts[kind] = (counts[kind] ?? 0) + 1
  return counts
}

/** "18 motifs and 2 half motifs": each kind by itself, and only where there is one; motifs where there is none. */
export const apartWords = ({ motif = 0, filler = 0, half = 0 }: ByKind): string =>
  listed([
    ...(motif > 0 || filler + half === 0 ? [counted(motif, 'motif')] : []),
    ...(filler > 0 ? [counted(filler, 'filler')] : []),
    ...(half > 0 ? [counted(half, 'half motif')] : []),
  ])
