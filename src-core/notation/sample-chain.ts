/** "My little sample starts with ch 32": the chain of a first row, where only the talk before it tells one. */
import type { Item, RoundNode } from './tree'

/** A sentence about the piece that was worked. */
const OF_THE_PIECE =
  /\b(?:sample|swatch|example|pictured?|shown|photo|mine|foundation|starting chain|begins?|began|starts?|started)\b/i
const CHAINS =
  /\b(?:ch|chain)(?: of)?[ -]?(\d+)\b|\b(\d+)[ -]?(?:ch|chains?)\b(?![- ]?(?:sp|lp|loop|space))/gi

/** Whether the first thing that is worked goes into a chain that the row itself does not make. */
function asksForChain(items: readonly Item[]): boolean {
  const first = items.find(({ type }) => type !== 'note' && type !== 'count' && type !== 'statement')
  return first?.type === 'work' && first.place?.parts[0]?.which === 'from-hook'
}

/** The chains that the text before a first row tells of the piece, its last words first; null where it asks for none. */
export function sampleChain(text: string, { items, start }: RoundNode): number | null {
  if (!asksForChain(items)) return null
  const sentences = text.slice(0, start).split(/[.;!?()\n]/)
  const told = sentences.findLast((each) => OF_THE_PIECE.test(each) && each.search(CHAINS) >= 0)
  const [last] = [...(told ?? '').matchAll(CHAINS)].slice(-1)
  const chains = Number(last?.[1] ?? last?.[2] ?? 0)
  return chains > 1 ? chains : null
}
