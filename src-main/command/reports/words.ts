/** Words of the command line for what the contract keeps in codes. */
import type { Arrangement, Project, Terms, UnitSystem } from '../../../shared-types/project'
import { rowsOfUpTo } from '../../../src-core/figures/words'
import { settled } from '../../../src-core/settled'

export const unitsOf = (project: Project): UnitSystem => settled(project).units
export const termsOf = (project: Project): Terms => settled(project).terms
export const currencyOf = (project: Project): string => settled(project).currency

export const ARRANGEMENT_WORDS: Record<Arrangement, string> = {
  'straight-rows': 'straight rows',
  'offset-rows': 'offset rows',
  rings: 'rings',
}

/** Yarn is sold in skeins where US terms are read, in balls where UK terms are. */
export const ballWord = (terms: Terms): string => (terms === 'US' ? 'skeins' : 'balls')

/** "12 × 14", "4 rings"; of what is cut out "11 rows of up to 22". */
export function countWords(fit: {
  readonly arrangement: Arrangement
  readonly columns: number
  readonly rows: number
  readonly rings: number
  readonly lengths?: readonly number[]
}): string {
  if (fit.lengths && fit.arrangement !== 'rings') return rowsOfUpTo(fit.lengths)
  return fit.arrangement === 'rings' ? `${fit.rings}` : `${fit.columns} × ${fit.rows}`
}
