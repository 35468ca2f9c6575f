/** "FPtr round the 3ch of Rnd 1", "FPdc around beg ch-3": the chains that a round begins with, gone around like its first stitch. */
import { readRound } from './nouns'
import type { Reader } from './reader'
import type { StitchName } from './stitch-name'
import type { Place } from './tree'

const CHAINS =
  /^(?:the )?(?:(?:beg(?:inning)?|starting|turning|first) )?(?:\d+[ -]?ch(?:ain)?s?|ch(?:ain)?s?[ -]?\d+)\b|^(?:the )?(?:beg(?:inning)?|starting|turning) ch(?:ain)?\b/i
/** A space of chains is gone around too; it is named as one. */
const SPACE = /\b(sps?|spaces?|lps?|loops?|arch(es)?|gaps?)\b/i

/** The place of a stitch round a post, where it is told by the chains of a beginning. */
export function roundBeginning(reader: Reader, { post }: StitchName, place: Place | null): Place | null {
  const [part, ...others] = place?.parts ?? []
  if (!place || !part || post === null || others.length > 0 || part.count !== 1 || part.each) return place
  const words = reader.words(part.nounSpan)
  const chained = part.noun.kind === 'space' || part.noun.kind === 'own'
  const named = CHAINS.test(words) || CHAINS.test(reader.words(part).trim())
  if (!chained || !named || SPACE.test(reader.words(part))) return place
  const noun = { kind: 'stitch', name: null } as const
  const round = part.round ?? readRound(reader)
  return { ...place, parts: [{ ...part, which: 'first', noun, round }] }
}
