/**
 * Seeded randomness: the same seed gives the same project on every machine. mulberry32 (Tommy Ettinger,
 * public domain): 32 bits of state, integer arithmetic alone, good enough to scatter colours.
 */
export interface Random {
  /** A number from 0 up to, but not including, 1. */
  readonly next: () => number
  /** A whole number from 0 up to, but not including, `count`. */
  readonly below: (count: number) => number
  /** The items in a new order, each order equally likely. */
  readonly shuffled: <Item>(items: readonly Item[]) => Item[]
}

/** A generator for any finite seed; seeds that differ after rounding to 32 bits give different sequences. */
export function seededRandom(seed: number): Random {
  let state = Math.trunc(seed) | 0
  const next = (): number => {
    state = (state + 0x6d2b79f5) | 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
  const below = (count: number): number => Math.floor(next() * count)
  const shuffled = <Item>(items: readonly Item[]): Item[] => {
    const order = [...items]
    for (let last = order.length - 1; last > 0; last--) {
      const other = below(last + 1)
      const held = order[last] as Item
      order[last] = order[other] as Item
      order[other] = held
    }
    return order
  }
  return { next, below, shuffled }
}
