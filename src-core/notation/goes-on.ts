/** "Rep Rows 2 and 3 for pattern" behind the last row: how a piece goes on, told under no number of its own. */
import type { Reader } from './reader'
import type { Item, RepeatRoundItem } from './tree'

/** What stands behind it in its own words: "until the block is square", "Fasten off". */
const SAID = new Set<Item['type']>(['note', 'statement', 'count', 'colour'])
const WORKED = new Set<Item['type']>(['work', 'group', 'star', 'placed', 'evenly'])

/** Whether a sentence or a line begins at a place in the text. */
function opensSentence({ tokens }: Reader, start: number): boolean {
  const at = tokens.findIndex((token) => token.start >= start)
  return at > 0 && (tokens[at]!.first || /^[.!)\]]$/.test(tokens[at - 1]!.key))
}

export interface GoesOn {
  /** What the round itself has. */
  readonly items: readonly Item[]
  readonly repeat: RepeatRoundItem
}

/**
 * A round worked out in stitches, and behind it a sentence that repeats it with rounds before it; null for any other.
 * `last`: the number of the round in hand.
 */
export function goesOn(reader: Reader, items: readonly Item[], last: number | null): GoesOn | null {
  const at = items.findIndex((item) => item.type === 'repeat-round')
  const repeat = items[at]
  if (last === null || repeat?.type !== 'repeat-round' || repeat.part !== null) return null
  const { changes = [], completes, grows, lastOf } = repeat
  const from = lastOf === undefined ? repeat.from : last - lastOf + 1
  const to = lastOf === undefined ? repeat.to : last
  const known = typeof from === 'number' && typeof to === 'number' && from > 0 && from <= to && to <= last
  if (!known || changes.length > 0 || completes || grows) return null
  const before = items.slice(0, at)
  if (!before.some(({ type }) => WORKED.has(type)) || !opensSentence(reader, repeat.start)) return null
  const behind = items.slice(at + 1)
  return behind.every(({ type }) => SAID.has(type))
    ? { items: [...before, ...behind], repeat: { ...repeat, from, to } }
    : null
}
