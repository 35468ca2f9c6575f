/** What stops the largest arrangement from the yarn on hand, in words: the same in window and command line. */
import type { FitArrangement } from '../../shared-types/plan'
import type { Terms, UnitSystem } from '../../shared-types/project'
import { saying } from '../stitches/spelling'
import { formatMass, formatNumber } from '../units/format'
import { capital, counted, listed, plural } from './words'

/**
 * "One more row, 10 motifs, would need 62 g of Rust more than you have.", and "That no two alike touch costs 14 motifs:
 * without it there would be 133."; nothing where nothing stops it.
 */
export function stopWords(
  { stops, motifs }: Pick<FitArrangement, 'stops' | 'motifs'>,
  nameOf: (yarn: string) => string,
  units: UnitSystem,
  terms: Terms,
): string[] {
  const { next, rules = [] } = stops ?? {}
  const RULES = {
    apart: 'that no two alike touch',
    limits: saying(terms)`the limits of colourways and yarns`,
    symmetry: 'that it mirrors itself',
  } as const
  return [
    ...(next
      ? [
          `One more ${next.of}, ${counted(next.motifs, 'motif')}, would need ${listed(
            next.missing.map(({ id, grams }) => `${formatMass(grams, units)} of ${nameOf(id)}`),
          )} more than you have.`,
        ]
      : []),
    ...rules.map(
      ({ rule, motifs: more }) =>
        `${capital(RULES[rule])} ${plural(rule === 'limits' ? 2 : 1, 'costs', 'cost')} ${counted(more, 'motif')}: without ${
          rule === 'limits' ? 'them' : 'it'
        } there would be ${formatNumber(motifs + more)}.`,
    ),
  ]
}
