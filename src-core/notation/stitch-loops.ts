/** Loops of stitches, front and back, where a text calls them "loops" as it calls those of chains. */
import type { PlacePart } from './tree'
import { baseSource } from './work'
import type { Work } from './work'

/** "Join G in the back loop of any sc, dc in same loop, 2 dc in each loop around": loops of stitches, not of chains. */
export function loopsOfStitches(work: Work, part: PlacePart): PlacePart {
  const { noun, which } = part
  if (noun.kind !== 'space' || noun.chains !== null || noun.corner) return part
  const held = (work.last ?? work.first)?.place
  const same = which === 'same' && held?.kind === 'stitch' && (held.loop ?? 'both') !== 'both'
  const swept = which === 'each' && work.scope.loop !== null && baseSource(work)?.free('space') === 0
  return same || swept ? { ...part, noun: { kind: 'stitch', name: null } } : part
}
