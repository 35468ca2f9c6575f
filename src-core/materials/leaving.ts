/** Which motifs leave the pattern of a blanket so that limits are kept, and which limits these are. */
import { ownOf } from '../by-name'
import type { LeavingOrder } from '../../shared-types/plan'
import type { BlanketLayout, Yarn } from '../../shared-types/project'
import type { ColourAssignment } from '../colour/assign'
import { limitOf } from './stash'
import type { Taken } from './stash'

type Fill = NonNullable<NonNullable<BlanketLayout['cells']>['fill']>

/** Null where every motif is as the pattern has it. */
export function leavingOrder(
  fill: Fill | undefined,
  { leaving = [], keeps }: ColourAssignment,
  yarns: readonly Yarn[],
  taken: Taken,
): LeavingOrder | null {
  if (leaving.length === 0) return null
  return {
    motifs: leaving.length,
    yarns: yarns.flatMap((yarn) =>
      keeps?.yarns.includes(yarn.id) ? [{ id: yarn.id, most: limitOf(fill, yarn, taken) }] : [],
    ),
    colourways: (keeps?.colourways ?? []).map((id) => ({ id, most: ownOf(fill?.most, id) ?? 0 })),
  }
}
