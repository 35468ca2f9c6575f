/** The rounds of a motif line by line, for paper and for the page on a phone. */
import type { RoundsMotif, Terms } from '../../shared-types/project'
import type { Settled } from '../../shared-types/settled'
import { foundationWords } from '../../src-core/motif/rounds/foundation-words'
import type { ReadMotif } from '../../src-core/motif/rounds/read-motif'
import { isSpecialEntry } from '../../src-core/motif/rounds/special'
import { editionText } from '../../src-core/notation/translate'
import { respelled } from '../../src-core/stitches/spelling'
import { partName } from './words-colours'
import { MOTIF_WORDS } from './words-motif'

/** A line of the rounds: what it is, its colour, its words. */
export interface RoundLine {
  readonly name: string
  readonly slot: string
  readonly text: string
}

/** Foundation and rounds, in the terms that are shown. */
export function roundLines(
  { settled, terms }: { readonly settled: Settled; readonly terms: Terms },
  motif: RoundsMotif,
  read: ReadMotif,
): RoundLine[] {
  const foundation = foundationWords(motif, read, terms, settled.hand)
  const rounds = (motif.rounds ?? []).flatMap((round, i) =>
    isSpecialEntry(round.work)
      ? []
      : [
          {
            name: MOTIF_WORDS.round(read.lines[i]?.number ?? i + 1),
            slot: partName(round.slot ?? '', terms),
            text: respelled(editionText(round.work, settled.terms, terms), settled.terms, terms),
          },
        ],
  )
  return [
    ...(foundation === '' ? [] : [{ name: MOTIF_WORDS.foundation, slot: '', text: foundation }]),
    ...rounds,
  ]
}
