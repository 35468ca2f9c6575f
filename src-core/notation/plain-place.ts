/** A place of one part, of which nothing more is said. */
import type { Span } from './tokens'
import type { Place, PlacePart } from './tree'

/** A place of one part, of which nothing more is said. */
export function plainPlace(said: Pick<PlacePart, 'which' | 'each' | 'noun' | 'extent'>, span: Span): Place {
  const unsaid = { loop: null, around: false, round: null, unworked: false, asBeginning: false } as const
  return { parts: [{ ...said, ...unsaid, count: 1, nounSpan: span, ...span }], over: false, ...span }
}
