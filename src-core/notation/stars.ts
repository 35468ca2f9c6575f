/** What an asterisk marks: from it to the words that repeat it, wherever those stand and however short they are. */
import { readAmount } from './clauses'
import type { SequenceReader } from './clauses'
import { readEnding } from './ending-words'
import { readPlace } from './places'
import type { Reader } from './reader'
import type { Span } from './tokens'
import type { GroupItem, Item, RepeatClause, StarItem, WorkItem } from './tree'

/** An asterisk whose repeat has not been met yet. */
export interface OpenStar {
  readonly mark: string
  readonly token: number
  readonly index: number
}

/** What is worked, as against how the round begins. */
const isBody = ({ type }: Item): boolean =>
  type === 'work' || type === 'group' || type === 'skip' || type === 'placed'

const clauseOf = (amount: number | null, said: RepeatClause['said'], span: Span): RepeatClause => ({
  amount,
  said,
  lastCount: 0,
  toCorner: false,
  endAtDouble: false,
  ending: null,
  amountSpan: span,
  start: span.start,
  end: span.end,
  line: span.line,
  column: span.column,
})

/** "*sc, inc; x6", "*sc, inc, 6 times in all", "*sc, inc; repeat around": how often, without naming the asterisk again. */
export const readShortRepeat = (reader: Reader, sequence: SequenceReader): RepeatClause | null => {
  const start = reader.at
  return reader.attempt(() => {
    const again = reader.skip('rep')
    const sign = reader.isA('times-sign')
    const amount = readAmount(reader)
    if (!amount || amount.lastCount > 0 || amount.toCorner || reader.sees('from')) return null
    if (!again && amount.amount === null) return null
    const inAll = amount.amount !== null && amount.said === 'plain' && (sign || !again)
    const clause = clauseOf(amount.amount, inAll ? 'in-all' : amount.said, reader.span(start))
    // "… rep to end, ending 3 ch, ss in first dc".
    const end = again ? readEnding(reader, sequence) : null
    if (!end) return clause
    return { ...clause, endAtDouble: end.atDouble, ending: end.ending, end: reader.span(start).end }
  })
}

/** "sc, inc * 6": without brackets it is all that the round has worked so far. */
export function repeatAll(items: Item[], times: number, span: Span): void {
  const from = items.findIndex(isBody)
  if (from < 0) return
  const body = items.splice(from)
  const group: GroupItem = {
    ...{ type: 'group', bracket: '', items: body, place: null, times, around: false, toCorner: false },
    ...{ lastCount: 0, start: body[0]!.start, end: span.end, line: body[0]!.line, column: body[0]!.column },
  }
  items.push(group)
}

const isTimed = (item: Item): item is GroupItem & { readonly times: number } =>
  item.type === 'group' && item.bracket === '' && item.items.length === 1 && item.times !== null

/** "*sc, inc x 6, join": where nothing else repeats what the asterisk marks, the amount behind its last stitch does. */
function timedByLast(body: readonly Item[]): { readonly at: number; readonly clause: RepeatClause } | null {
  const at = body.findLastIndex(isBody)
  const last = body[at]
  if (at < 1 || !last || !isTimed(last) || !body.slice(0, at).some(isBody)) return null
  return { at, clause: clauseOf(last.times, 'in-all', last) }
}

/** Puts what an asterisk marks into an item of its own. */
export function wrapStar(
  items: Item[],
  open: OpenStar,
  rest: Pick<StarItem, 'repeat' | 'closed'>,
  span: Span,
  toDouble = false,
): void {
  const body = items.splice(open.index)
  // "* … **; rep from * to **" is all of it.
  if (toDouble && body.at(-1)?.type === 'double') body.pop()
  // "*sc, inc x 6*": the second asterisk says nothing more.
  const before = items.at(-1)
  const ended = before?.type === 'star' && before.closed
  if (
    ended &&
    !rest.repeat &&
    body.every(({ type }) => type === 'count' || type === 'note' || type === 'join')
  ) {
    items.push(...body)
    return
  }
  const star = { type: 'star', mark: open.mark, items: body, ...rest, ...span } as const
  const timed = rest.repeat ? null : timedByLast(body)
  if (!timed) {
    items.push(star)
    return
  }
  const inner = body.slice(0, timed.at + 1)
  inner[timed.at] = (body[timed.at] as GroupItem).items[0]!
  items.push({ ...star, items: inner, repeat: timed.clause, closed: true }, ...body.slice(timed.at + 1))
}

/** "Hdc in 3rd ch from hook (skipped chs count as first hdc) and in each ch across": the same stitch goes on. */
export const goOn = (reader: Reader, items: readonly Item[]): WorkItem | null =>
  reader.attempt(() => {
    const told = items.at(-1)
    const before = items.at(-2)
    const aside = told?.type === 'note' && told.unread === undefined && /^[)\]]$/.test(reader.key(-1))
    if ((told?.type !== 'statement' && !aside) || before?.type !== 'work' || !before.place) return null
    const start = reader.at
    if (!reader.skip('and') || !(reader.isA('into') || reader.sees('each'))) return null
    const place = readPlace(reader)
    return place && { ...before, place, ...reader.span(start) }
  })

/** "sc, 2 sc*, rep from * around": the asterisk stands behind what it marks. */
export function markBefore(items: Item[]): void {
  const at = items.findIndex(
    (item) =>
      item.type === 'star' &&
      item.repeat !== null &&
      item.items.every((each) => each.type === 'note' && each.unread !== 'work'),
  )
  const star = items[at]
  const from = items.findIndex(isBody)
  if (star?.type !== 'star' || from < 0 || from > at) return
  const body = items.splice(from, at - from)
  const { start, line, column } = body[0]!
  items[from] = { ...star, items: body, start, line, column }
}

/** "*sc, hdc, sc* in each st around": asterisks in place of brackets. Takes what they hold out of the items. */
export const readStarredGroup = (reader: Reader, items: Item[], open: OpenStar): GroupItem | null =>
  reader.attempt(() => {
    reader.skip(',')
    const place = readPlace(reader)
    const ends = (reader.peek()?.first ?? true) || /^[.,;=([)]$/.test(reader.key())
    if (!place || !ends || !items.slice(open.index).some(isBody)) return null
    return {
      ...{ type: 'group', bracket: '(', items: items.splice(open.index), place, times: null },
      ...{ around: false, toCorner: false, lastCount: 0 },
      ...reader.span(open.token),
    }
  })

/** "Rep from * until there are 5 points, leaving off the sc at the end of the 5th": what ends the last repeat stands behind the count. */
export function endBehindCount(reader: Reader, items: Item[], sequence: SequenceReader): void {
  const count = items.at(-1)
  const star = items.at(-2)
  if (count?.type !== 'count' || !count.until || star?.type !== 'star' || !star.repeat) return
  const end = star.repeat.ending ? null : readEnding(reader, sequence)
  if (!end?.ending) return
  items[items.length - 2] = { ...star, repeat: { ...star.repeat, ending: end.ending } }
}
