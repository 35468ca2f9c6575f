/** A place of one part, of which nothing more is said. */
import { readExtent } from './nouns'
import type { Reader } from './reader'
import type { Span } from './tokens'
import type { Place, PlacePart } from './tree'

/** A place of one part, of which nothing more is said. */
export function plainPlace(said: Pick<PlacePart, 'which' | 'each' | 'noun' | 'extent'>, span: Span): Place {
  const unsaid = { loop: null, around: false, round: null, unworked: false, asBeginning: false } as const
  return { parts: [{ ...said, ...unsaid, count: 1, nounSpan: span, ...span }], over: false, ...span }
}

/** "Sc in 2nd ch from hook and across": each of the other chains. */
export const readAcross = (reader: Reader): PlacePart | null => {
  const start = reader.at
  return reader.attempt(() => {
    if (!/^(across|along|to|all)$/.test(reader.key())) return null
    const extent = readExtent(reader)
    if (!extent) return null
    return plainPlace({ which: 'each', each: true, noun: { kind: 'chain' }, extent }, reader.span(start))
      .parts[0]!
  })
}

/** "Join to a space", "join in an unused back lp of Rnd 2" at the beginning of a round: in any, whose loop says which are free. */
export function joinedIn(reader: Reader, place: Place | null): Place | null {
  const [part] = place?.parts ?? []
  if (!place || !part) return place
  // "In the leftover back lps of Rnd 2."
  const lps = part.which === 'next' && part.loop !== null && part.round !== null
  const any = lps || part.which === 'any' || /^(?:to|in|into|at) an? /i.test(reader.words(place))
  const unworked = part.unworked && part.loop === null
  return any ? { ...place, parts: [{ ...part, which: 'any', unworked }] } : place
}
