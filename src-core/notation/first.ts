/** What stands before the first stitch: the chain or ring that a round makes for itself, or that a text makes alone. */
import { clampCount } from './reading'
import type { Base } from './state'
import type { Span } from './tokens'
import type { Item, RoundNode } from './tree'

/** Chains and rings that stand before the first round: where everything begins. */
export function foundationMade(node: RoundNode): Base | null {
  let chains = 0
  for (const item of node.items) {
    if (item.type === 'chain') chains = item.count
    if (item.type === 'foundation' || (item.type === 'join' && chains > 0)) {
      const made = item.type === 'foundation' ? (item.chains ?? chains) : chains
      const ring = item.type === 'foundation' && item.ring === 'adjustable' ? 0 : made
      return { kind: 'ring', chains: clampCount(ring) }
    }
    if (item.type === 'work' && item.stitch.stitch === 'sl st' && chains > 0)
      return { kind: 'ring', chains: clampCount(chains) }
  }
  const item = node.items.findLast(({ type }) => type === 'chain')
  return chains > 0 && item ? { kind: 'chain', chains: clampCount(chains), span: spanOf(item) } : null
}

const spanOf = ({ start, end, line, column }: Item): Span => ({ start, end, line, column })

/** A text that makes only a chain or a ring, without a stitch. */
export function isFoundationOnly(node: RoundNode): boolean {
  return (
    node.numbers === null &&
    !node.broken &&
    node.items.every(
      (item) =>
        ['chain', 'foundation', 'join', 'note', 'colour', 'statement'].includes(item.type) ||
        (item.type === 'work' && item.stitch.stitch === 'sl st' && item.stitch.form === 'plain'),
    ) &&
    node.items.some((item) => item.type === 'foundation' || item.type === 'chain')
  )
}

/** Whether a round makes the ring or chain that it is worked into. */
export const makesFoundation = (items: readonly Item[]): boolean =>
  items.some(
    (item) =>
      item.type === 'foundation' ||
      ('place' in item &&
        item.place?.parts.some(({ noun, which }) => noun.kind === 'ring' || which === 'from-hook')) ||
      ('items' in item && makesFoundation(item.items)),
  )
