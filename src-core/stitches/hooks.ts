/** Hooks by their US names (§yarn-weights: the hooks of the same table). Letters differ between makers: millimetres rule. */
import type { Terms } from '../../shared-types/project'
import { formatNumber } from '../units/format'
import type { Millimetres } from '../units/quantity'

/** mm by US letter. */
export const BY_LETTER: Readonly<Record<string, Millimetres>> = {
  ...{ B: 2.25, C: 2.75, D: 3.25, E: 3.5, F: 3.75, G: 4, H: 5, I: 5.5, J: 6, K: 6.5, L: 8 },
  ...{ M: 9, 'M/N': 9, N: 10, 'N/P': 10, 'P/Q': 15, Q: 16, S: 19 },
}
/** mm by US number where a letter is not given. */
export const BY_NUMBER: Readonly<Record<string, Millimetres>> = {
  ...{ '1': 2.25, '2': 2.75, '3': 3.25, '4': 3.5, '5': 3.75, '6': 4, '7': 4.5, '8': 5, '9': 5.5, '10': 6 },
  ...{ '10½': 6.5, '11': 8, '13': 9, '15': 10 },
}

const nameIn = (names: Readonly<Record<string, Millimetres>>, mm: Millimetres): string | undefined =>
  Object.keys(names).findLast((name) => names[name] === mm)

/** "5 mm (US H-8)" for readers of US terms where the hook has such a name, else "5 mm". */
export function hookWords(mm: Millimetres, terms: Terms): string {
  const told = `${formatNumber(mm, 2)} mm`
  const name = [nameIn(BY_LETTER, mm), nameIn(BY_NUMBER, mm)].filter(Boolean).join('-')
  return terms === 'US' && name !== '' ? `${told} (US ${name})` : told
}
