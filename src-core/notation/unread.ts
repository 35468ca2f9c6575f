/** Words that could not be read: what they mean for the round in which they stand. Nothing is passed in silence. */
import { statedStitches } from './account'
import { said } from '../findings/finding'
import { addFinding } from './reading'
import type { Reading } from './reading'
import { makes } from './repeat-endings'
import { workRound } from './rounds'
import type { Attempt } from './rounds'
import type { Span } from './tokens'
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
const isConfirmed = ({ errors, account }: Attempt, items: readonly Item[]): boolean => {
  const stated = statedStitches(items)
  return (
    errors === 0 && (stated === null ? items.some(({ type }) => type === 'count') : stated === account.made)
  )
}

/**
 * Works a round in which some words could not be read. Where they tell of stitches and the count that the text states
 * does not confirm the rest, the round is not counted; else they are told and passed over.
 */
export function workTold(
  reading: Reading,
  text: string,
  tree: Omit<RoundsTree, 'repeats'>,
  node: RoundNode,
  number: number,
  items: readonly Item[],
): Attempt {
  const made = workRound(reading, tree, node, number, items)
  const unread = node.broken ? null : unreadIn(items)
  if (!unread) return made
  if (unread.unread === 'words' || isConfirmed(made, items)) {
    const words = text.slice(unread.start, unread.end)
    addFinding(reading, text, node, number, { ...said('rounds/words-passed', { words }), span: unread })
    return made
  }
  addFinding(reading, text, node, number, { ...said('rounds/not-read'), span: unread })
  const open = workRound(reading, tree, { ...node, broken: true }, number, items)
  open.work.findings.length = 0
  return open
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
