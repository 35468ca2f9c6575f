/**
 * M36: the corners of the open ends of what is joined in the round. A full row has none; where motifs are left out, the
 * end steps down into the notch and up again, and each step turns outward at the motif that stands higher and inward
 * at the one that stands lower.
 */
import type { OpenCorner } from '../edging/line-places'
import type { Laid, Placement } from './blanket'

/** From so much of a row on a step is a corner: rows of motifs of several heights have none (ours). */
const STEP = 0.5

/** The outward corners of the mouth and of the bottom, along the map from its left. */
export const openCorners = (laid: Laid): readonly (readonly OpenCorner[])[] => [
  stepsAlong(laid, -1),
  stepsAlong(laid, 1),
]

/** A motif with how far out it reaches. */
interface Reach {
  readonly motif: Placement
  readonly out: number
}

function stepsAlong({ placements, lattice, round }: Laid, down: 1 | -1): OpenCorner[] {
  const half = lattice.column / 2
  const places = Math.round(round / half)
  const pitch = Math.min(...lattice.rows)
  // Of each half column the motif that stands farthest out.
  const along: (Reach | undefined)[] = Array.from({ length: Math.max(0, places) })
  const first = placements.reduce((least, { x, size = 1 }) => Math.min(least, x - size * half), Infinity)
  for (const motif of placements) {
    const { x, y, size = 1 } = motif
    const out = down * y + ((size - 1) * pitch) / 2
    const from = Math.round((x - size * half - first) / half)
    for (let k = 0; k < 2 * size; k++) {
      const at = (from + k) % places
      if (!along[at] || along[at].out < out) along[at] = { motif, out }
    }
  }
  return along.flatMap((here, i): OpenCorner[] => {
    const next = along[(i + 1) % along.length]
    if (!here || !next || Math.abs(here.out - next.out) < STEP * pitch) return []
    const isDown = here.out > next.out
    const { x, y, size = 1 } = (isDown ? here : next).motif
    return [
      {
        middle: { x, y },
        reach: size * lattice.column,
        out: { x: isDown ? 1 : -1, y: down },
        into: isDown ? 'next' : 'last',
      },
    ]
  })
}
