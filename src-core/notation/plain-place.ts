/** A place of one part, of which nothing more is said. */
import { readExtent } from './extents'
import { readNoun } from './nouns'
import type { Reader } from './reader'
import type { Span } from './tokens'
import type { Place, PlacePart } from './tree'

/** A place of one part, of which nothing more is said. */
export function plainPlace(said: Pick<PlacePart, 'which' | 'each' | 'noun' | 'extent'>, span: Span): Place {
  const unsaid = { loop: null, around: false, round: null, unworked: false, asBeginning: false } as const
  return { parts: [{ ...said, ...unsaid, count: 1, nounSpan: span, ...span }], over: false, ...span }
}

/** "Dc next 3", "2 dc each st", "tr last 6": words with which a place may begin that has no "in". */
export const opensBare = (reader: Reader): boolean =>
  // "Each corner is a ch-2 sp." is a sentence where it begins a paragraph.
  (['next', 'each', 'same'].includes(reader.key()) && !reader.peek()!.paragraph) ||
  (reader.sees('last') && reader.peek(1)?.kind === 'number' && reader.peek(-1)?.kind === 'word')

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

/** Whether a clause ends here. */
const endsClause = (reader: Reader): boolean =>
  reader.peek()?.first !== false || /^[.,;:*)\]]$/.test(reader.key())

/** "…, ch 2, sl st in center": the ring that the motif begins on, of which nothing more is said. */
const readCenter = (reader: Reader): Place | null =>
  reader.attempt(() => {
    if (!reader.skip('in', 'into', 'to')) return null
    reader.skip('the')
    const start = reader.at
    if (!reader.skip('center') || !endsClause(reader)) return null
    const noun = { kind: 'ring', yarn: false } as const
    return plainPlace({ which: 'next', each: false, noun, extent: null }, reader.span(start))
  })

/**
 * "(2 tr, 2 ch, 2 tr) 2chsp, tr nxt 11": a space by its chains right behind what goes into it, without "in"; of a slip
 * stitch (`slips`) also the center of the motif.
 */
export const readTersePlace = (reader: Reader, slips = false): Place | null => {
  const start = reader.at
  const center = slips ? readCenter(reader) : null
  if (center) return center
  const [token, before] = [reader.peek(), reader.tokens[start - 1]]
  if (!token || token.first || !before || (before.kind === 'mark' && !/^[)\]]$/.test(before.key))) return null
  // "(2 dc, ch 2, 2 dc) corner".
  const corner = token.key === 'corner' && /^[)\]]$/.test(before.key) && /^[.,;*)\]]?$/.test(reader.key(1))
  if (corner && token.text.toLowerCase() === 'corner') {
    reader.at++
    const noun = { kind: 'corner' } as const
    return plainPlace({ which: 'next', each: false, noun, extent: null }, reader.span(start))
  }
  const joined = token.kind === 'number' && reader.peek(1)?.start === token.end
  if (token.kind !== 'chains' && !joined) return null
  return reader.attempt(() => {
    const noun = readNoun(reader)
    if (noun?.kind !== 'space' || noun.chains === null || /s$/.test(reader.spelled(-1))) return null
    const ends = endsClause(reader) || reader.isA('times-sign')
    return ends ? plainPlace({ which: 'next', each: false, noun, extent: null }, reader.span(start)) : null
  })
}

/** "…, ss to 3 ch": behind the stitches of a round, its own beginning and no space. */
export function toOwnChains(reader: Reader, start: number, place: Place): Place {
  const [part] = place.parts
  if (place.parts.length !== 1 || part?.which !== 'next') return place
  const { noun: named } = part
  const chains = named.kind === 'chain' ? part.count : named.kind === 'space' ? (named.chains ?? 0) : 0
  if (chains < 3 || !/^to (the )?\d+ ?ch(s|ain|ains)?$/i.test(reader.words(place).trim())) return place
  const before = reader.tokens[start - 1]
  if (!before || !/^([,;)]|and|around|end|st|sts|times)$/.test(before.key)) return place
  const noun = { kind: 'own', chain: 0, of: chains, words: reader.words(part.nounSpan) } as const
  return { ...place, parts: [{ ...part, which: 'first', count: 1, noun }] }
}

/** "sl st in 3rd ch" closes a round in the chains that it began with, without naming them. */
export function ownChain(reader: Reader, place: Place): Place {
  const [part] = place.parts
  if (place.parts.length !== 1 || part?.which !== 'nth' || part.noun.kind !== 'chain' || part.count < 2)
    return place
  const noun = { kind: 'own', chain: part.count, of: 0, words: reader.words(part.nounSpan) } as const
  return { ...place, parts: [{ ...part, which: 'first', count: 1, noun }] }
}
