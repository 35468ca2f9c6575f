/** The texts of a field for who reads them: the project's currency, its words of the trade, names of things. */
import type { Project } from '../../shared-types/project'
import { inSpelling } from '../stitches/spelling'
import { TERM_WORDS, termWord } from '../stitches/terms'
import type { TermWord } from '../stitches/terms'

export type Names = Readonly<Record<string, string>>

/** "Price of one ({currency})" → "Price of one (EUR)"; "change the {gauge}" → "change the tension". */
export function fieldText(
  text: string,
  { terms = 'US', currency = 'EUR' }: Project,
  names: Names = {},
): string {
  return inSpelling(text, terms).replace(/\{(\w+)\}/g, (place, name: string) => {
    if (Object.hasOwn(names, name)) return names[name]!
    if (name === 'currency') return currency
    return Object.hasOwn(TERM_WORDS, name) ? termWord(name as TermWord, terms) : place
  })
}
