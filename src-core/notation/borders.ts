/** A border of something that the text does not make: what it is worked on is taken to be there. */
import { stateOf } from './state'
import type { Base } from './state'
import { placeParts } from './tree'
import type { Item, RoundNode, RoundsTree } from './tree'

const MADE = new Set<Item['type']>(['foundation'])
const WORDS = /\b(border|edging|edge)\b/i

/** "Join M in any corner, 1 ch, *3 dc in corner, …" where no round stands before it. */
export function standsOnEdge(node: RoundNode, { text }: Pick<RoundsTree, 'text'>): boolean {
  if (node.items.some(({ type }) => MADE.has(type))) return false
  const [first] = placeParts(node.items)
  if (!first || first.noun.kind === 'ring' || first.noun.kind === 'own' || first.noun.kind === 'chain')
    return false
  const any = first.which === 'any'
  const cornered = first.which === 'same' && first.noun.kind === 'space'
  return (any || cornered) && WORDS.test(text.slice(0, node.end))
}

/** Nothing is known of it: everything that is asked for is there. */
export const EDGE: Base = { kind: 'round', state: stateOf(-1, 0, [], { unknown: true }) }
