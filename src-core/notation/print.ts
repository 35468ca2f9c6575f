/** Prints rounds back: word for word, in either terms; in one consistent style, or written out in full, when asked. */
import type { Terms } from '../../shared-types/project'
import { restyle } from './restyle'
import { translateText } from './translate'
import type { RoundsTree } from './tree'

export type PrintStyle =
  /** The designer's own words. */
  | 'as-written'
  /** The same instructions in one style of abbreviations, repeats and counts. */
  | 'consistent'
  /** Without repeats: every step written out. */
  | 'expanded'

interface PrintOptions {
  /** Terms to print in; the text's own where they are not given. */
  readonly terms?: Terms
  readonly style?: PrintStyle
}

/** The rounds as text. Reading what was printed gives the same motif. */
export function printRounds(tree: RoundsTree, options: PrintOptions = {}): string {
  const { terms = tree.terms, style = 'as-written' } = options
  const text = style === 'as-written' ? tree.text : restyle(tree, style === 'expanded')
  return translateText(text, tree.terms, terms)
}
