/** Words that could not be read: what they mean for the round in which they stand. Nothing is passed in silence. */
import { said } from '../findings/finding'
import type { Said } from '../findings/finding'
import { addFinding } from './reading'
import type { Reading } from './reading'
import { makes } from './repeat-endings'
import { workRound } from './rounds'
import type { Attempt, RoundWorker } from './rounds'
import { statedSpaces, statedStitches } from './told-counts'
import type { Span } from './tokens'
import { placeParts } from './tree'
import type { Item, NoteItem, RoundNode, RoundsTree } from './tree'

/** Unknown words in the middle of a round, where only an instruction can stand; behind its last stitch is prose. */
export function* unreadWords(items: readonly Item[], within = false): Generator<NoteItem> {
  const last = within ? items.length : items.findLastIndex(makes)
  for (const [index, item] of items.entries()) {
    if (item.type === 'note' && item.unread === 'word' && index < last) yield item
    if (item.type === 'star' || item.type === 'placed' || (item.type === 'group' && item.items.some(makes)))
      yield* unreadWords(item.items, true)
  }
}

/** The words of a numbered round in which nothing could be read; null where there is something. */
export function proseOf(node: RoundNode): Span | null {
  if (node.numbers === null || node.broken) return null
  const told = node.items.filter((item) => item.type !== 'count')
  const prose = told.find((item) => item.type === 'note' && item.effect === null)
  return prose && told.every((item) => item.type === 'note' || item.type === 'statement') ? prose : null
}

/** Whether a round comes out and its stated count agrees. */
const isConfirmed = ({ errors, account, work }: Attempt, items: readonly Item[]): boolean => {
  const stated = statedStitches(items)
  return (
    errors === 0 &&
    !work.open &&
    (stated === null ? items.some(({ type }) => type === 'count') : stated === account.made)
  )
}

/** Whether a round is worked in plain stitches alone, which a count is enough to check. */
const isPlain = (items: readonly Item[]): boolean =>
  [...placeParts(items)].every(({ noun }) => noun.kind === 'stitch' || noun.kind === 'own')

/** The round as the text counts it: nothing of what it says is checked. */
function asStated(made: Attempt, items: readonly Item[]): Attempt {
  made.work.findings.length = 0
  const stated = statedStitches(items)
  return { ...made, errors: 0, account: { ...made.account, made: stated, spaces: statedSpaces(items) } }
}

/** Works a round in what is known of the one before: what the text says of it where it came out otherwise. */
const workOn: RoundWorker = (reading, tree, node, number, items) => {
  const made = workRound(reading, tree, node, number, items)
  const { base } = reading
  if (base.kind !== 'round' || node.broken || (made.errors === 0 && !made.work.open)) return made
  const { state } = base
  if (state.stated && made.errors > 0) {
    reading.base = { kind: 'round', state: state.stated }
    const again = workOn(reading, tree, node, number, items)
    if (again.errors < made.errors) return again
    reading.base = base
  }
  // What is wrong with it may only seem so, since of the round before no more than its count is known.
  if (!state.told || (made.errors > 0 && !state.unknown && isPlain(items))) return made
  return asStated(workRound(reading, tree, { ...node, broken: true }, number, items), items)
}

/**
 * Works a round in which some words could not be read. Where they tell of stitches and the count that the text states
 * does not confirm the rest, the round is taken as that count says; without one it is not counted. Else they are told
 * and passed over.
 */
export function workTold(
  reading: Reading,
  text: string,
  tree: Omit<RoundsTree, 'repeats'>,
  node: RoundNode,
  number: number,
  items: readonly Item[],
): Attempt {
  const made = workOn(reading, tree, node, number, items)
  const unread = node.broken ? null : unreadIn(items)
  if (!unread) return made
  const words = text.slice(unread.start, unread.end)
  const tell = (found: Said) => addFinding(reading, text, node, number, { ...found, span: unread })
  const stated = statedStitches(items)
  if (unread.unread === 'words' || isConfirmed(made, items)) {
    tell(said('rounds/words-passed', { words }))
    return made
  }
  // More than the count without these words is too much with them.
  const isOver = stated !== null && (made.account.made ?? 0) > stated
  const open = workRound(reading, tree, { ...node, broken: true }, number, items)
  tell(
    stated === null || isOver ? said('rounds/not-read') : said('rounds/taken-as-stated', { count: stated }),
  )
  return asStated(open, items)
}

/** The words in a round that could not be read: those that tell of stitches before others; null where all was. */
function unreadIn(items: readonly Item[], within = false): NoteItem | null {
  const last = within ? items.length : items.findLastIndex(makes)
  let plain: NoteItem | null = null
  for (const [index, item] of items.entries()) {
    if (item.type === 'note' && item.effect === 'fasten-off') break
    let found: NoteItem | null = null
    if (item.type === 'note' && (item.unread === 'work' || index < last)) found = item.unread ? item : null
    else if ('items' in item) found = unreadIn(item.items, true)
    if (found?.unread === 'work') return found
    plain ??= found
  }
  return plain
}
