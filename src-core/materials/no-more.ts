/** A yarn of which no more can be had: what is missing of it, and what can be done without buying any. */
import type { InTerms } from '../../shared-types/finding'
import type { YarnNeed } from '../../shared-types/plan'
import type { Terms, Yarn } from '../../shared-types/project'
import { counted, listed } from '../figures/words'
import { inSpelling } from '../stitches/spelling'
import { termWord } from '../stitches/terms'
import { isBeneathShown } from '../units/format'
import type { Grams } from '../units/quantity'

/** Grams missing of `high` where `there` are some; what vanishes where it is shown is not missing. */
export function missingOf(high: Grams, there: Grams): Grams {
  const missing = high - there
  return missing > 0 && !isBeneathShown(missing, high) ? missing : 0
}

/** Whether something is missing of which no more can be had. */
export const isMissing = ({ noMore }: Pick<YarnNeed, 'noMore'>): boolean => (noMore?.missing ?? 0) > 0

const inBoth = (tell: (terms: Terms) => string): InTerms => ({ US: tell('US'), UK: tell('UK') })

/**
 * What can be done where a yarn falls short: `otherwise`, or, of one of which no more can be had, what it goes into is
 * worked in another or left out. `motifs` is how many are too many, where that is known; where the motifs are made
 * and what comes after them `isRest`, that alone can be changed.
 */
export function shortRemedy(
  { noMore }: Pick<Yarn, 'noMore'>,
  { parts }: Pick<YarnNeed, 'parts'>,
  missing: Grams,
  { motifs, isRest }: { readonly motifs?: number; readonly isRest?: boolean },
  otherwise: (terms: Terms) => string,
): InTerms {
  return inBoth((terms) => {
    if (!noMore) return otherwise(terms)
    const edging = `work the ${termWord('edging', terms)} in another yarn`
    const many = motifs ? `make ${counted(motifs, 'motif')}` : 'make some motifs'
    const ways = [
      ...(parts.motifs > 0 && !isRest
        ? [inSpelling(`${many} in another colour or leave ${motifs === 1 ? 'it' : 'them'} out`, terms)]
        : []),
      ...(parts.edging > 0 ? [edging] : []),
      ...(parts.joins > 0 ? ['join in another yarn'] : []),
      ...(parts.cord ? ['work the cord in another yarn'] : []),
    ]
    // What does by itself goes first.
    if (parts.edging >= missing && ways.includes(edging) && !isRest)
      ways.unshift(...ways.splice(ways.indexOf(edging), 1))
    return `No more of it can be had: ${listed(ways.length > 0 ? ways : ['make fewer motifs'], 'or')}`
  })
}
