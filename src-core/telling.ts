/**
 * Lists that are long to tell and that nothing is counted from: told when somebody reads them, or by and by before
 * that, so that whoever else waits is heard in between. A plan holds such a list as a property; what puts plans
 * together of others goes by `withFields`, which reads none.
 */

export interface Telling<Item> {
  /** All of it, to its end: the same list each time. */
  readonly all: () => readonly Item[]
  /** The first so many, and no more told than these. */
  readonly first: (most: number) => readonly Item[]
  /** Tells so many more; whether that was the end of it. */
  readonly further: (most: number) => boolean
}

export function telling<Item>(begin: () => Iterator<Item, unknown>): Telling<Item> {
  let told: Item[] = []
  let items: Iterator<Item, unknown> | null = null
  let isDone = false
  const further = (most: number): boolean => {
    try {
      for (let count = 0; count < most && !isDone; count++) {
        items ??= begin()
        const next = items.next()
        if (next.done) isDone = true
        else told.push(next.value)
      }
    } catch (error) {
      // Whoever reads it next falls over the same, and does not take a part for the whole.
      told = []
      items = null
      throw error
    }
    // What it was told from is let go.
    if (isDone) {
      items = null
      begin = () => told[Symbol.iterator]()
    }
    return isDone
  }
  const all = (): readonly Item[] => {
    further(Infinity)
    return told
  }
  const first = (most: number): readonly Item[] => {
    further(most - told.length)
    return told.slice(0, most)
  }
  const made: Telling<Item> = { all, first, further }
  byReading.set(all, made)
  return made
}

const byReading = new WeakMap<() => unknown, Telling<unknown>>()

/** A field that is told when it is read. */
export const toldAs = <Key extends string, Item>(
  key: Key,
  { all }: Telling<Item>,
): Readonly<Record<Key, readonly Item[]>> =>
  Object.defineProperty({}, key, { get: all, enumerable: true, configurable: true }) as Readonly<
    Record<Key, readonly Item[]>
  >

/** The first items of a list; of one that is told when it is read, no more is told than these. */
export function firstOf<Key extends string, Of extends Readonly<Record<Key, readonly unknown[]>>>(
  of: Of,
  key: Key,
  most: number,
): Of[Key] {
  const reading = Object.getOwnPropertyDescriptor(of, key)?.get
  const list = reading && byReading.get(reading)
  return (list ? list.first(most) : of[key].slice(0, most)) as Of[Key]
}

/** What a plan has still to tell, or has told already, of what is told by and by. */
export function tellingsOf(plan: object): Telling<unknown>[] {
  return Object.values(Object.getOwnPropertyDescriptors(plan) as Record<string, PropertyDescriptor>).flatMap(
    ({ get }) => (get && byReading.get(get)) ?? [],
  )
}

/** An object with other fields, in the order of a spread; what is told when it is read stays so. */
export function withFields<Own extends object, Others extends object[]>(
  own: Own,
  ...others: Others
): Own & Intersection<Others> {
  const made = Object.defineProperties({}, Object.getOwnPropertyDescriptors(own))
  for (const fields of others) Object.defineProperties(made, Object.getOwnPropertyDescriptors(fields))
  return made as Own & Intersection<Others>
}

type Intersection<Parts extends object[]> = Parts extends [infer First, ...infer Rest extends object[]]
  ? First & Intersection<Rest>
  : unknown
