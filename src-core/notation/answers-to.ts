/** Which stitches that a round leaves answer to a name. */
import type { StitchName } from './stitch-name'
import type { LeftPlace } from './worked'

/** Stitches that are drawn together. */
export const BUNCHES = new Set(['together', 'cluster', 'puff', 'popcorn', 'bobble'])

/** Bunches that are made in ways of their own: one is never called by the name of another. */
export const APART = new Set(['puff', 'popcorn', 'bobble'])

/** Whether a stitch left by a round answers to a name. */
export function answersTo(place: Pick<LeftPlace, 'stitch' | 'form'>, name: StitchName): boolean {
  if (place.stitch === null) return true
  if (name.form === 'plain') return place.stitch === name.stitch
  if (name.form === 'special') return name.stitch === null || place.stitch === name.stitch
  if (APART.has(name.form) && APART.has(place.form)) return place.form === name.form
  if (BUNCHES.has(name.form)) return BUNCHES.has(place.form)
  return true
}
