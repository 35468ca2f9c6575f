/** What a motif begins with, as patterns write it before round 1, in the chosen terms and for the chosen hand. */
import type { Hand, RoundsMotif, Terms } from '../../../shared-types/project'
import { stitchAbbreviation, chainsMade } from '../../stitches/terms'
import type { ReadMotif } from './read-motif'
import { usableRounds } from './usable'

/**
 * The words of the foundation ("with A, ch 8, join with sl st to form a ring"), or '' where round 1 makes its beginning
 * itself or nothing is said about it.
 */
export function foundationWords(
  motif: RoundsMotif,
  read: Pick<ReadMotif, 'worked'>,
  terms: Terms,
  hand: Hand,
): string {
  const words = wordsOf(motif, read, terms, hand)
  const colour = letterOf(motif.rounds?.[0]?.slot ?? '')
  return words === '' || colour === null ? words : `with ${colour}, ${words}`
}

/** The letter by which the rounds of a page call a colour: all begins with that of the first one. */
const letterOf = (slot: string): string | null =>
  /^main colou?r$/.test(slot) ? 'MC' : (/^colou?r ([A-H]\d?)$/.exec(slot)?.[1] ?? null)

function wordsOf(
  motif: RoundsMotif,
  { worked }: Pick<ReadMotif, 'worked'>,
  terms: Terms,
  hand: Hand,
): string {
  const { foundation } = usableRounds(motif).motif
  if (!foundation || worked.some((round) => round.foundation !== null)) return ''
  if (foundation.chain !== undefined) {
    // A stitch is worked into from the hook's side: right-handed work goes from right to left.
    const way = hand === 'left' ? 'left to right' : 'right to left'
    return `${chainsMade(foundation.chain, terms)}, worked on both sides: first along it from ${way}, then back along its other side`
  }
  if (foundation.ring === 'adjustable') return 'make an adjustable ring (magic ring)'
  if (foundation.ring === 'stitch')
    return `${chainsMade(1, terms)} loosely; round 1 is worked into this chain`
  if (foundation.ring !== 'chain' || !foundation.chains) return ''
  return `${chainsMade(foundation.chains, terms)}, join with ${stitchAbbreviation('sl st', terms)} to form a ring`
}
