/** Fillers and half motifs of a picture: what lies where, beside the motifs. */
import type { MotifAccount, Plan } from '../../shared-types/plan'
import { keptHalf, laidOutline } from '../../src-core/figures/motif-parts'
import { createHitMap } from '../../src-core/geometry/hit'
import type { HitMap } from '../../src-core/geometry/hit'
import type { Outline } from '../../src-core/geometry/points'
import { accountAt, placedPieces } from '../../src-core/layout/placed'
import type { PlacedPiece } from '../../src-core/layout/placed'

/** Questions about everything that a hand can point at: motifs, half motifs and fillers. */
export type Pieces = Pick<HitMap, 'at' | 'within' | 'along'>

export interface AdditionsPicture {
  readonly pieces: readonly PlacedPiece[]
  readonly hit: HitMap
}

/** Half motifs, then fillers, as they are placed. */
export const additionPieces = (plan: Plan): readonly PlacedPiece[] =>
  placedPieces(plan).filter(({ kind }) => kind !== 'motif')

/** The half motifs and fillers of a plan; null where there are none. */
export function additionsOf(plan: Plan, stretch: { width: number; height: number }): AdditionsPicture | null {
  if (!plan.motif || plan.fillers.length + plan.halves.length === 0) return null
  const pieces = additionPieces(plan)
  const halves = new Map<string, Outline>()
  const outline = pieces.map((piece) => outlineOf(piece, accountAt(plan, piece) ?? plan.motif!, halves))
  // Halves are cut as they lie: their outlines are turned before.
  const motifs = pieces.map((piece) => (piece.kind === 'half' ? { ...piece, turn: 0 } : piece))
  return { pieces, hit: createHitMap({ motifs, outline, stretch }) }
}

function outlineOf(
  { kind, turn, side }: PlacedPiece,
  motif: MotifAccount,
  halves: Map<string, Outline>,
): Outline {
  if (kind === 'filler') return motif.outline
  const key = `${motif.id} ${turn} ${side}`
  let outline = halves.get(key)
  if (!outline) {
    outline = laidOutline(motif.outline, { turn, scale: 1, half: keptHalf({ side: side ?? 'left' }) })
    halves.set(key, outline)
  }
  return outline
}

/** What lies under a point, in a rectangle, under a stroke: motifs first, then what stands between and beside them. */
export function piecesHit(motifs: HitMap, additions: AdditionsPicture | null): Pieces {
  if (!additions) return motifs
  const { hit } = additions
  return {
    at: (point, slack = 0) =>
      motifs.at(point) ??
      hit.at(point) ??
      (slack > 0 ? (motifs.at(point, slack) ?? hit.at(point, slack)) : null),
    within: (box) => [...motifs.within(box), ...hit.within(box)],
    along: (from, to) => [...motifs.along(from, to), ...hit.along(from, to)],
  }
}
