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
