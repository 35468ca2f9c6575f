/** Colour sections of a motif in written rounds, for drawing. */
import type { MotifLayer } from '../../../shared-types/plan'
import type { Hand, RoundsMotif } from '../../../shared-types/project'
import { OUTLINE_POINTS } from '../constants'
import { roundOutline } from '../outlines'
import { at, radiusOf } from './ground'
import type { LocatedRound } from './ground'
import { envelope, farthest, lobedOutline, lobesOf } from './profile'
import { slotOf } from './read-motif'
import type { ReadMotif } from './read-motif'
import type { Shape } from './shape'

/** The outermost first: the envelope of all rounds up to the last of each colour. */
export function layersOf(
  motif: RoundsMotif,
  read: ReadMotif,
  located: readonly LocatedRound[],
  shape: Shape,
  hand: Hand,
): MotifLayer[] {
  const slots = located.map((entry) => slotOf(motif, read, entry.round))
  const layers: MotifLayer[] = []
  const full = Math.max(farthest(located), 1e-9)
  slots.forEach((slot, i) => {
    if (i === located.length - 1) layers.unshift({ slot, outline: shape.outline })
    else if (slots[i + 1] !== slot) {
      const radii = envelope(located.slice(0, i + 1))
      const own = located[i]!
      const lobes = lobesOf(radii, own.petals.length >= 3 ? own.petals.length : own.corners || null)
      const factor = shape.overTips / 2 / full
      const outline =
        lobes.count === 0 ? roundOutline(Math.max(...lobes.profile)) : lobedOutline(lobes, OUTLINE_POINTS)
      const turned =
        lobes.count > 0 && shape.shape === 'straight' && lobes.count !== 6 ? Math.PI / lobes.count : 0
      const sign = hand === 'left' ? 1 : -1
      layers.unshift({
        slot,
        outline: outline.map((p) => {
          const r = radiusOf(p) * factor
          return at(r, Math.atan2(p.x, -p.y) + sign * turned)
        }),
      })
    }
  })
  return layers
}
