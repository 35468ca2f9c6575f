/** Loops of stitches, front and back, where a text calls them "loops" as it calls those of chains. */
import type { PlacePart } from './tree'
import { baseSource, sourceOf } from './work'
import type { Work } from './work'

/** "Join G in the back loop of any sc, dc in same loop, 2 dc in each loop around": loops of stitches, not of chains. */
export function loopsOfStitches(work: Work, part: PlacePart): PlacePart {
  const { noun, which } = part
  if (noun.kind !== 'space' || noun.chains !== null || noun.corner) return part
  const held = (work.last ?? work.first)?.place
  const same = which === 'same' && held?.kind === 'stitch' && (held.loop ?? 'both') !== 'both'
  const swept = which === 'each' && work.scope.loop !== null && baseSource(work)?.free('space') === 0
  // "Working in the free back loops of Rnd 1, join coral in any loop, 2 sc in next loop".
  const { loop, round } = work.scope
  const below = round === null ? undefined : work.history.get(round)
  const source = below ? sourceOf(work, below) : baseSource(work)
  const plain = loop !== null && source?.total('space') === 0 && !source.state.unknown
  return same || swept || plain ? { ...part, noun: { kind: 'stitch', name: null } } : part
}
