/** Makes any text printable: what no face has is spelled in Latin letters, never a gap and never a crash. */
import anyAscii from 'any-ascii'
import type { CodePointRanges } from '../../../shared-types/fonts'
import type { FigureItem } from '../../../src-core/figures/figure'
import { fontFor, printableText } from '../../../src-core/letters/printable'

/** Stands for a character that nothing spells. */
const UNSPELLED = '?'

/** A character in Latin letters, emoji by their names: ":yarn:". */
export const spelled = (character: string): string => anyAscii(character) || UNSPELLED

/** The text with every character that neither the face nor a chosen font has in Latin letters. */
export const legible = (text: string, fonts: readonly CodePointRanges[] = []): string =>
  printableText(text, (character) => (fontFor(character, fonts) < 0 ? spelled(character) : character))

/** Items with their texts as they are printed, so that a preview shows what the paper will. */
export function legibleItems(items: readonly FigureItem[]): FigureItem[] {
  return items.map((item) => {
    if (item.kind === 'text') return { ...item, text: legible(item.text) }
    return item.kind === 'group' ? { ...item, items: legibleItems(item.items) } : item
  })
}
