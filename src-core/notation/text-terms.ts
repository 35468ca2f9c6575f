/** Which terms a text is written in. Detection rule as published: "sc" occurs only in US terms. */
import type { Terms } from '../../shared-types/project'
import { tokenize } from './tokens'
import type { Token } from './tokens'

export interface TermsFound {
  readonly terms: Terms
  /** How the terms are known: said by the caller, said in the text, seen in its words, or taken for want of better. */
  readonly by: 'caller' | 'text' | 'words' | 'default'
  /** A word that only US, only UK terms have; the first of each. */
  readonly us: Token | null
  readonly uk: Token | null
}

const ONLY_US = /^(fp|bp|e|bl|fl|rev)?(sc|hdc)(\d+tog|s|dec|inc)?$/
const ONLY_UK = /^(fp|bp|e|bl|fl)?(htr|qtr|quadtr)(\d+tog|s)?$/
/** UK words that are no stitch names: "ss" as in the published US–UK tables; the rest from memory. */
const HINT_UK = new Set(['miss', 'ss', 'tension', 'ttr'])
const MARKED =
  /\b(US|U\.S\.|American|UK|U\.K\.|British)\b[^.\n]{0,24}?\b(terms|terminology|abbreviations|notation)\b/iu

/** Words that belong to one set of terms only. */
function onlyIn(tokens: readonly Token[], index: number): Terms | null {
  const key = tokens[index]!.key
  // "My dc is an American sc" speaks of the other terms.
  if (/^(american|us|british|uk)$/.test(tokens[index - 1]?.key ?? '')) return null
  if (ONLY_US.test(key)) return 'US'
  if (ONLY_UK.test(key)) return 'UK'
  const next = tokens[index + 1]?.key ?? ''
  if (key === 'single' && next.startsWith('crochet')) return 'US'
  if (key === 'half' && next.startsWith('double')) return 'US'
  if (key === 'half' && next.startsWith('treble')) return 'UK'
  if (/^quad(ruple)?$/.test(key) && /^tr(eble)?/.test(next)) return 'UK'
  return null
}

/** Finds the terms of a text; `asked` is what the caller says, and it rules. */
export function findTerms(text: string, tokens: readonly Token[], asked: Terms | undefined): TermsFound {
  let us: Token | null = null
  let uk: Token | null = null
  let hint = false
  for (let index = 0; index < tokens.length; index++) {
    const only = onlyIn(tokens, index)
    if (only === 'US') us ??= tokens[index]!
    if (only === 'UK') uk ??= tokens[index]!
    if (HINT_UK.has(tokens[index]!.key)) hint = true
  }
  if (asked) return { terms: asked, by: 'caller', us, uk }
  const marked = MARKED.exec(text)
  if (marked)
    return {
      terms: /^[ub]k?/i.test(marked[1]!) && !/^us|^u\.s/i.test(marked[1]!) ? 'UK' : 'US',
      by: 'text',
      us,
      uk,
    }
  if (us && !uk) return { terms: 'US', by: 'words', us, uk }
  if (uk && !us) return { terms: 'UK', by: 'words', us, uk }
  if (us && uk) return { terms: us.start < uk.start ? 'US' : 'UK', by: 'words', us, uk }
  return hint ? { terms: 'UK', by: 'words', us, uk } : { terms: 'US', by: 'default', us, uk }
}

/** Whether a text has words that belong to one set of terms only: "sc" (US), "htr" (UK). */
export function hasWordsOf(text: string, terms: Terms): boolean {
  const tokens = tokenize(text)
  return tokens.some((_, index) => onlyIn(tokens, index) === terms)
}
