/** "Dc in each st with ch 1 between", "2 dc with ch 2 between in next sp": chains told behind the stitches they part. */
import type { Reader } from './reader'
import type { ChainItem, GroupItem, Place, WorkItem } from './tree'
import { readStitch } from './vocabulary'

export interface Between {
  readonly chain: ChainItem
  /** "between groups": they part what goes into one place from what goes into the next. */
  readonly groups: boolean
}

/** "ch 1", "1 ch", "ch-1", "a chain": how many; passes them. */
function readChains(reader: Reader): number | null {
  const token = reader.peek()
  if (token?.kind === 'chains') return ++reader.at > 0 ? token.value : null
  const one = reader.skip('a', 'one')
  const before = one ? 1 : reader.number()
  if (!reader.skipA('chain') || reader.isA('space')) return null
  return before ?? reader.number() ?? 1
}

/** "each dc", "them", "the 2 dc", "every 2 groups" behind "between"; whether groups are named. */
function passWhat(reader: Reader): boolean {
  if (reader.skipAll('one', 'and', 'the', 'next') || reader.skipAll('one', 'and', 'the', 'other'))
    return false
  while (reader.skip('each', 'every', 'all', 'the', 'both', 'of', 'one', 'next')) continue
  if (reader.peek()?.hyphen || !reader.attempt(() => reader.number())) reader.skip('two')
  reader.skip('them', 'these')
  const named = reader.attempt(() => readStitch(reader))
  const group = reader.skipA('group') || named?.form === 'shell' || named?.form === 'v-stitch'
  if (!named && !group) reader.skipA('stitch')
  return group
}

/** "each one", "every dc", "them", "each group": of which something stands behind; passes it. */
const passEach = (reader: Reader): boolean => {
  if (reader.skip('them', 'these')) return true
  if (!reader.skip('each', 'every')) return false
  if (reader.skip('one')) return true
  if (reader.skip('of')) reader.skip('the')
  reader.skip('them', 'these')
  const named = reader.peek()?.kind !== 'number' && reader.attempt(() => readStitch(reader))
  if (!named && !reader.skipA('group')) reader.skipA('stitch')
  return true
}

/** "after each one 2 ch", "each followed by ch 3", "between them always 5 ch", "ch 3 after each"; passes it. */
export function readBehindEach(reader: Reader): ChainItem | null {
  const chain = () => {
    while (reader.skip('always', 'with') || reader.skipA('verb')) continue
    const from = reader.at
    const count = readChains(reader)
    return count === null ? null : ({ type: 'chain', count, ...reader.span(from) } as const)
  }
  return (
    reader.attempt(() => (reader.skip('after', 'behind', 'between') && passEach(reader) ? chain() : null)) ??
    reader.attempt(() => {
      // "3 tr into the ring, followed by 3 ch": behind all of them.
      const each = reader.skip('each', 'always')
      while (reader.skip('each', 'always', 'one')) continue
      return each && reader.skip('followed') && reader.skip('by') ? chain() : null
    }) ??
    reader.attempt(() => {
      const told = chain()
      return told && reader.skip('after', 'behind') && passEach(reader) ? told : null
    })
  )
}

/** "with ch 1 between", "having 2 ch between each dc", ", ch 1 between", "separated by ch 1"; null: nothing of the kind. */
export const readBetween = (reader: Reader): Between | null =>
  reader.attempt(() => {
    // "2 dc in each sp around, with ch 1 between": behind what goes all around, between the pairs.
    const swept = reader.key(-1) === 'around' && reader.sees(',')
    reader.skip(',')
    reader.skip('and')
    const chained = readBehindEach(reader)
    if (chained) return { chain: chained, groups: false }
    while (reader.skip('always', 'each')) continue
    const parted = reader.skip('separated', 'divided') && reader.skip('by')
    if (!parted && !reader.skip('with', 'having')) reader.skipA('verb')
    reader.skip('always')
    const from = reader.at
    const count = readChains(reader)
    if (count === null) return null
    const chain = { type: 'chain', count, ...reader.span(from) } as const
    if (parted) return { chain, groups: false }
    reader.skip('in')
    if (!reader.skip('between')) return null
    return { chain, groups: passWhat(reader) || (swept && reader.key(-1) === 'between') }
  })

const goesThrough = (place: Place): boolean =>
  place.parts.some(({ which }) => which === 'each' || which === 'every')

/** Stitches with the chains that part them. `closes`: in the ring the last chains lead to the first stitch. */
export function parted(item: WorkItem, { chain, groups }: Between, end: number, closes: boolean): GroupItem {
  const { place } = item
  const count = item.count ?? 1
  const stitch: WorkItem = { ...item, count: 1, place: null }
  const inRing = place?.parts[0]!.noun.kind === 'ring'
  const single = count === 1 || groups
  // "…, with ch 1 between, ch 1, join": the last chains are told, so those of the sweep stand before each.
  const [each, parts] = [{ ...item, place: null }, { ...chain, apart: true } as const]
  const items = single
    ? closes
      ? [each, parts]
      : [parts, each]
    : Array.from({ length: count }, (_, at) =>
        at < count - 1 || (inRing && closes) ? [stitch, chain] : [stitch],
      ).flat()
  const { start, line, column } = item
  const group = {
    type: 'group',
    bracket: '',
    items,
    place,
    times: null,
    around: false,
    toCorner: false,
  } as const
  return { ...group, lastCount: 0, start, end, line, column }
}

/** Whether chains that are told behind a stitch can part anything: it is one of several. */
export const canBeParted = ({ count, place }: Pick<WorkItem, 'count' | 'place'>): boolean =>
  (count ?? 1) > 1 || (place !== null && goesThrough(place))
