/** Words about a thing on the map that are the same for every kind of layout. */
import { say } from '../state/say'
import type { PlacedMotif } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { PIECE_NAME } from '../../src-core/figures/piece-words'
import { counted } from '../../src-core/figures/words'
import type { PlacedPiece } from '../../src-core/layout/placed'
import { waysFor } from '../state/edits/applique'
import { findMotif } from '../state/edits/motif'
import { findColourway } from '../state/edits/yarn'

export const ARRANGEMENT_NAMES = {
  'straight-rows': 'straight rows',
  'offset-rows': 'offset rows',
  rings: 'rings',
} as const

/** Colourway of a placed motif: "colourway A Dawn". */
export function wayWords(project: Project, { colourway }: Pick<PlacedMotif, 'colourway'>): string {
  const way = findColourway(project, colourway)
  return way ? say`colourway ${way.code ?? ''} ${way.name ?? ''}`.trim() : say`no colourway`
}

export const nameOf = (project: Project, { motif }: Pick<PlacedMotif, 'motif'>): string =>
  findMotif(project, motif)?.name ?? motif ?? ''

/** Whether a motif may be worked in a colourway. */
export const isFor = (project: Project, motif: string | undefined, colourway: string | null): boolean =>
  motif !== undefined && (colourway === null || waysFor(project, motif).some(({ id }) => id === colourway))

/** "3 motifs and 2 fillers" */
export function piecesCounted(pieces: readonly PlacedPiece[]): string {
  const of = (kind: PlacedPiece['kind']) => pieces.filter((piece) => piece.kind === kind).length
  const parts = (['motif', 'filler', 'half'] as const)
    .filter((kind) => of(kind) > 0)
    .map((kind) => counted(of(kind), PIECE_NAME[kind]))
  return parts.length > 0 ? parts.join(' and ') : counted(0, 'motif')
}
