/** The words of a motif's rounds in another style, entry by entry: colours, measures and numbers stay with theirs. */
import type { RoundsMotif, Terms } from '../../../shared-types/project'
import { printRounds } from '../../notation/print'
import type { PrintStyle } from '../../notation/print'
import { readRounds } from '../../notation/read'
import { readMotif } from './read-motif'
import { isSpecialEntry } from './special'

/**
 * Every entry's words in a style, in the order of the motif's rounds; null where the style would not leave each round
 * in its own entry. What explains special stitches stays as the designer wrote it.
 */
export function rewordRounds(motif: RoundsMotif, terms: Terms, style: PrintStyle): string[] | null {
  const { reading, lines, entryOfLine } = readMotif(motif, terms)
  const printed = readRounds(printRounds(reading.tree, { style, terms }), { terms })
  const before = reading.tree.rounds
  const after = printed.tree.rounds
  if (before.length !== after.length) return null
  const words: string[][] = lines.map(() => [])
  for (const [i, node] of before.entries()) {
    const made = after[i]!
    const entry = entryOfLine(node.line)
    if (entry === null) return null
    // A heading that stands before the entry's own words was put there for reading.
    const hasOwn = node.heading !== null && node.heading.start >= lines[entry]!.start
    const from = hasOwn || made.heading === null ? made.start : made.heading.end
    words[entry]!.push(printed.tree.text.slice(from, made.end).replace(/\s+/g, ' ').trim())
  }
  return (motif.rounds ?? []).map(({ work }, i) => {
    const own = words[i]!.join(' ')
    return isSpecialEntry(work) || own === '' ? work : own
  })
}
