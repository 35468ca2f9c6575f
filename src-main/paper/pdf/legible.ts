/** Makes any text printable: what the face lacks is spelled in Latin letters, never a gap and never a crash. */
import anyAscii from 'any-ascii'
import type { FigureItem } from '../../../src-core/figures/figure'
import { printableText } from '../../../src-core/letters/printable'

/** Stands for a character that nothing spells. */
const UNSPELLED = '?'

/** The text with every character that the face lacks in Latin letters, emoji by their names: ":yarn:". */
export const legible = (text: string): string =>
  printableText(text, (character) => anyAscii(character) || UNSPELLED)

/** Items with their texts as they are printed, so that a preview shows what the paper will. */
export function legibleItems(items: readonly FigureItem[]): FigureItem[] {
  return items.map((item) => {
    if (item.kind === 'text') return { ...item, text: legible(item.text) }
    return item.kind === 'group' ? { ...item, items: legibleItems(item.items) } : item
  })
}
