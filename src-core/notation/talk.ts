/** Talk before what is worked: it names what comes next, and works nothing. */
import type { Token } from './tokens'
import type { Item, RoundNode } from './tree'

/** "As established", "in the same way". */
export const AS_BEFORE = new Set([
  'as',
  'established',
  'set',
  'before',
  'in',
  'like',
  'the',
  'same',
  'this',
  'way',
  'manner',
  'pattern',
])

/** "Now the fun bit", "now make the petals", "we work our leaves as follows": what comes next is named, and nothing worked. */
export function isTalk(tokens: readonly Token[]): boolean {
  const from = tokens.findIndex(({ is }) => !ADVERBS.has(is))
  if (from < 0) return true
  if (
    tokens.some(
      ({ kind, kinds, is }) =>
        kind === 'number' ||
        kind === 'chains' ||
        WORKED.has(is) ||
        [...kinds].some((of) => WORKS.has(of) && is !== 'to'),
    )
  )
    return false
  const rest = tokens.slice(from)
  if (!rest[0]!.kinds.has('verb')) return from > 0
  const [, which, named, ...behind] = rest
  return (
    which !== undefined &&
    /^(the|your|our|some|those|these)$/.test(which.key) &&
    named?.kinds.has('counted') === true &&
    behind.every(({ is }) => ADVERBS.has(is) || AS_BEFORE.has(is) || is === 'follows' || is === 'next')
  )
}
const ADVERBS = new Set('now then also next so and finally lastly'.split(' '))
/** Words that stand with what is worked. */
const WORKED = new Set('each same rep skip ring hook rnd round row'.split(' '))
const WORKS = new Set([
  'into',
  'stitch',
  'space',
  'number',
  'ordinal',
  'picot',
  'puff',
  'popcorn',
  'bobble',
  'increase',
  'decrease',
])

const isTold = (item: Item): boolean =>
  (item.type === 'note' && item.effect === null && item.unread !== 'work') ||
  (item.type === 'count' && item.entries.length === 0)

/** Where a round ends in its text: paragraphs behind it that only talk ("If you make one, show me!") are none of it. */
export function endOfWork({ items, end }: Pick<RoundNode, 'items' | 'end'>, text: string): number {
  const last = items.findLast((item) => !isTold(item))
  if (!last) return end
  const blank = /\n[ \t]*\n/.exec(text.slice(last.end, end))
  return blank ? last.end + blank.index : end
}
