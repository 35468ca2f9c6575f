/** Where a sentence with the counts of a round ends, and what is said behind it. */
import type { Reader } from './reader'
import type { Item } from './tree'

/** What is said next, with or without a stop before it: "24 dc Fasten off". */
export const LEAVING = new Set('fasten cut break turn do place change join finish weave'.split(' '))

/** Words that a sentence with the counts of a round has at most. */
export const LONGEST_COUNT = 24

/** "…, sc in last 2 sc: 4 bobbles and 13 sc.": behind the last stitch a colon opens nothing but counts. */
function isBehindLast(reader: Reader, items: readonly Item[]): boolean {
  const last = items.findLast(({ type }) => type !== 'note' && type !== 'statement')
  const parts = last?.type === 'work' || last?.type === 'group' ? (last.place?.parts ?? []) : []
  if (parts.at(-1)?.which !== 'last') return false
  let at = reader.at
  while (at < reader.end && !/^[.;!]$/.test(reader.tokens[at]!.key)) at++
  return at === reader.end || at + 1 >= reader.end || /^\p{Lu}/u.test(reader.tokens[at + 1]!.text)
}

/** "2 dc in last dc. 5 dc. Turn.": a sentence of its own between what was worked somewhere and what is done next. */
export function turnsBehind(reader: Reader, items: readonly Item[]): boolean {
  if (reader.key(-1) === ':') return isBehindLast(reader, items)
  if (!/^[.!)\]]$/.test(reader.tokens[reader.at - 1]?.key ?? '')) return false
  const last = items.findLast(({ type }) => type !== 'note' && type !== 'statement')
  if (last?.type !== 'group' && !(last?.type === 'work' && last.place)) return false
  for (let at = reader.at; at < reader.end && at - reader.at < LONGEST_COUNT; at++) {
    if (reader.tokens[at]!.key !== '.') continue
    const next = reader.tokens[at + 1]
    // "[…, miss 1 dc] 6 times. 36 dc. Ss into next loop and fasten off."
    const slips = last.type === 'group' && last.times !== null && /^(ss|sl)$/.test(next?.key ?? '')
    const leaves = next !== undefined && (slips || LEAVING.has(next.key))
    return leaves && at + 1 < reader.end && /^\p{Lu}/u.test(next.text)
  }
  return false
}

/** Whether a round is at its end: joined, fastened off, or gone around with a repeat. */
export function isWorked(items: readonly Item[]): boolean {
  const last = items.findLast((item) => item.type !== 'note' || item.effect !== null)
  if (last?.type === 'placed') {
    const closes = last.items.findLast(({ type }) => type !== 'note')
    // "Into the loop work 3 ch, …, ss into the loop": hearts end in it.
    const ends = closes?.type === 'work' && closes.stitch.stitch === 'sl st'
    const into = last.place.parts[0]!.noun.kind
    const same = ends && closes.place?.parts[0]!.noun.kind === into && into !== 'stitch'
    return same || isWorked(last.items)
  }
  // "Ch 1, turn, 11 dc": nothing is worked yet.
  if (last?.type === 'note' && last.effect === 'turn')
    return items.some(({ type }) => type === 'work' || type === 'group' || type === 'star')
  if (last?.type === 'work') {
    const into = last.place?.parts[0]
    // "Sc in each st across. 11 sc.", "sc in 2nd ch from hook and in each ch across: 17 sc": all of the round.
    const rest = last.place?.parts.at(-1)
    if (rest?.which === 'each' && rest.extent?.to === 'end') return true
    const first = into?.noun.kind === 'own' || into?.which === 'first' || into?.noun.kind === 'ring'
    return first && last.stitch.stitch === 'sl st' && last.stitch.form === 'plain'
  }
  return (
    last?.type === 'join' ||
    last?.type === 'star' ||
    last?.type === 'repeat-round' ||
    (last?.type === 'note' && last.effect !== 'dropped' && last.effect !== 'held')
  )
}
