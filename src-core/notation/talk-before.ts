/** Sentences of prose before the rounds that only name stitches: "Every square is an open mesh (ch 2, dc) or a filled one". */
import type { Item } from './tree'

/** What a sentence that tells something has, and an instruction has not. */
const TELLS =
  /\b(is|are|was|were|can|cannot|can't|will|won't|may|might|should|would|has|have|had|if|it's|that's|you'll|you're|we'll|i've|means|uses|makes|looks|measures|begins?|starts?|consists?)\b/i
/** Items that may stand in such a sentence: what is named, not worked anywhere. */
const NAMED = new Set<Item['type']>(['note', 'group', 'count', 'statement', 'work', 'chain'])

/** "Start at the point" is asked of the maker, and tells nothing. */
const withoutOrder = (sentence: string): string => sentence.replace(/^(start|begin)\b/i, '')

const isNamed = (item: Item): boolean =>
  NAMED.has(item.type) &&
  !('place' in item && item.place) &&
  !(item.type === 'group' && (item.times !== null || item.around)) &&
  !(item.type === 'note' && item.effect !== null)

/** Where the sentence ends in which a place of the text stands. */
function sentenceEnd(text: string, from: number): number {
  let depth = 0
  for (let at = from; at < text.length; at++) {
    const sign = text[at]!
    if (sign === '(' || sign === '[') depth++
    else if ((sign === ')' || sign === ']') && depth > 0) depth--
    else if (depth === 0 && /[.!?]/.test(sign) && /^(\s|$)/.test(text.slice(at + 1, at + 2))) return at
    else if (sign === '\n' && text[at + 1] === '\n') return at
  }
  return text.length
}

/** The items without those sentences: such as begin with prose, tell something and work nothing anywhere. */
export function withoutTalk(text: string, items: readonly Item[]): readonly Item[] {
  const kept: Item[] = []
  const last = items.at(-1)?.end ?? 0
  for (let at = 0; at < items.length;) {
    const first = items[at]!
    const end = Math.min(sentenceEnd(text, first.start), last)
    let to = at + 1
    while (to < items.length && items[to]!.start < end) to++
    const sentence = items.slice(at, to)
    const prose = first.type === 'note' && first.effect === null
    const told =
      prose &&
      sentence.length > 1 &&
      sentence.every(isNamed) &&
      TELLS.test(withoutOrder(text.slice(first.start, end)))
    if (!told) for (const item of sentence) kept.push(item)
    at = to
  }
  return kept
}
