/** What the pieces of a work are called: motifs, and what stands between and beside them, each only where there is some. */
import type { PlanNumbers } from '../../shared-types/plan'
import { counted, plural } from '../figures/words'
import { formatNumber } from '../units/format'

/** What is counted of a plan beside its motifs. */
export type Pieces = Pick<PlanNumbers, 'counts'>

/** "12 half motifs", "3 fillers", "15 fillers and half motifs": what is no whole motif. */
export function othersWords({ counts: { fillers = 0, halves = 0 } }: Pieces, count: number): string {
  if (fillers === 0) return counted(count, 'half motif')
  if (halves === 0) return counted(count, 'filler')
  return counted(count, 'filler or half motif', 'fillers and half motifs')
}

/** "42 motifs"; "42 motifs and half motifs" where both are counted together. */
export function piecesWords({ counts: { fillers = 0, halves = 0 } }: Pieces, count: number): string {
  const names = ['motif', ...(fillers > 0 ? ['filler'] : []), ...(halves > 0 ? ['half motif'] : [])]
  const each = (word: string, last: string): string =>
    names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} ${word} ${last}`
  const many = names.map((name) => `${name}s`)
  const together = many.length < 2 ? many.join('') : `${many.slice(0, -1).join(', ')} and ${many.at(-1)!}`
  return `${formatNumber(count)} ${plural(count, each('or', names.at(-1)!), together)}`
}
