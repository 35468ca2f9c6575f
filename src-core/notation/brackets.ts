/** What a bracket says that works nothing of its own: a count, how a stitch is made, what it is called. */
import type { Reader } from './reader'
import { isWorked } from './count-sentences'
import type { StitchName } from './stitch-name'
import type { Span } from './tokens'
import type { Item } from './tree'
import { readStitch } from './vocabulary'

/** "… in last 2 sc. (12 sc, 4 spikes)": behind the stop that ends a round nothing is worked that has no place. */
const endsRound = (reader: Reader, { start, end }: Span): boolean =>
  (reader.peek()?.first ?? true) &&
  /\.\s*$/.test(reader.text.slice(Math.max(0, start - 3), start)) &&
  /^.\s*\d+ [^,;()[\]*]+(, *(and )?\d+ [^,;()[\]*]+)*.$/u.test(reader.text.slice(start, end))

/** A bracket with figures behind the join of a round tells what it comes to, in whatever words. */
export const isUnreadCount = (reader: Reader, before: Item, item: Item, { start }: Span): boolean =>
  (isWorked([before]) || endsRound(reader, item)) &&
  item.type === 'group' &&
  item.place === null &&
  item.times === null &&
  !item.around &&
  /^.\s*\d/u.test(reader.text.slice(start, start + 8))

/** "(the first: 3 ch + 1 tr)", "(first one = ch 3, dc)": how the first of what is worked begins; works nothing more. */
export const tellsFirst = (reader: Reader, open: number): boolean => {
  const words = reader.tokens.slice(open + 1, open + 7).map(({ is }) => is)
  const opens = words.findIndex((word) => !['the', 'for', 'in', 'at', 'a'].includes(word))
  const marked = words.findIndex((word) => [':', '=', 'is', 'stands'].includes(word))
  // "(3 ch for the first)".
  if (
    /^(\d+ ?ch|ch[ -]?\d+)[^()]{0,12} for (the )?first\b/i.test(
      reader.text.slice(reader.tokens[open]!.end, reader.tokens[open]!.end + 40),
    )
  )
    return true
  return (words[opens] === 'first' || words[opens] === 'beg') && marked > opens && marked <= opens + 3
}

/** Words of a remark in a bracket, at most (ours). */
const MOST_REMARKED = 12

/** "(that's the sl st, sc, hdc, dc and tr)", "(i.e. the 3 dc and the ch)": what something is; works nothing more. */
export const remarks = (reader: Reader, open: number): boolean => {
  const [first, second, third] = reader.tokens.slice(open + 1, open + 4)
  // Farther than this no remark of a few words ends; looked for from the bracket on, so that it costs no more in long texts.
  const ahead = reader.tokens
    .slice(open + 1, open + MOST_REMARKED)
    .findIndex(({ key }) => /^[)\]]$/.test(key))
  const close = ahead < 0 ? Infinity : open + 1 + ahead
  // "sk next sc (behind the FPtr)": only where it lies.
  if (first?.key === 'behind' && ['the', 'it'].includes(second?.key ?? '') && close - open < 6) return true
  const said = first?.text.toLowerCase().replace(/\u2019/u, "'") ?? ''
  if (/^(that|which|these|it)'(s|re)$/.test(said) || said === 'namely') return true
  if (said === 'i') return third?.key === 'e'
  // "(round next tr on repeats)": what becomes of it further on goes without saying.
  if (/^repeats?$/.test(reader.tokens[close - 1]?.text ?? '') && close - open < 12) return true
  return second?.is === 'is' && ['this', 'that', 'which', 'it'].includes(said)
}

const NAMED = new Set(['picot', 'shell', 'v-stitch', 'cluster', 'puff', 'popcorn', 'bobble', 'special'])

/** "beg shell (ch 3, 4 dc) in same sp": the bracket is that stitch, and goes into the place behind it. */
export const isMadeOf = (reader: Reader, before: Item, item: Item, { start }: Span): boolean =>
  before.type === 'work' &&
  before.place === null &&
  (before.count ?? 1) === 1 &&
  NAMED.has(before.stitch.form) &&
  item.type === 'group' &&
  item.place !== null &&
  item.items.some(({ type }) => type === 'work') &&
  reader.text.slice(before.end, start).trim() === ''

/** "5 dc in next sp (shell)": the bracket only names what was made. */
export const namesIt = (before: Item, item: Item): boolean => {
  if (item.type !== 'group' || item.place || item.times !== null || item.around || item.items.length !== 1)
    return false
  const [name] = item.items
  const named =
    name?.type === 'work' && name.count === null && name.place === null && NAMED.has(name.stitch.form)
  const drawn = before.type === 'described' || (before.type === 'note' && before.effect !== null)
  return named && (drawn || ('place' in before && before.place !== null))
}

/** "picot (ch 3, sl st in first ch)": the bracket behind the name of a stitch tells how it is made. */
export const explains = (reader: Reader, before: Item, item: Item, { start }: Span): boolean =>
  before.type === 'work' &&
  NAMED.has(before.stitch.form) &&
  item.type === 'group' &&
  item.place === null &&
  item.times === null &&
  !item.around &&
  reader.text.slice(before.end, start).trim() === ''

/** "BPdc (back post dc) around next tr": the name once more in a bracket, in other words; passes it. */
export function passExplained(reader: Reader, { form, stitch }: StitchName): void {
  reader.attempt(() => {
    if (!reader.skip('(', '[')) return null
    const again = readStitch(reader)
    if (again?.stitch !== stitch || again.form !== form) return null
    return reader.skip(')', ']') || null
  })
}
