/** Chains of a first row that the row does not make: told in the talk before it, or made with its stitches. */
import { plainPlace } from './plain-place'
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

/** "fsc", "Foundation hdc": worked with a chain of its own. */
const WITH_CHAIN = /^(?:f(?:sc|hdc|dc|htr)s?\b|foundation )/i

/** "Row 1: 19 fhdc, turn.": a chain for each, and the stitches worked into them; null where a row begins otherwise. */
export function foundationRow(items: readonly Item[]): { chains: number; items: readonly Item[] } | null {
  const first = items.find(({ type }) => type !== 'note' && type !== 'colour')
  if (first?.type !== 'work' || first.place || !WITH_CHAIN.test(first.stitch.name)) return null
  const chains = first.count ?? 1
  const noun = { kind: 'chain' } as const
  const place = plainPlace({ which: 'each', each: true, noun, extent: { to: 'end' } }, first.stitch)
  return { chains, items: items.map((item) => (item === first ? { ...first, count: null, place } : item)) }
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
