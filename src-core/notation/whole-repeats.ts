/**
 * Repeats without a mark: "repeat to end", "repeat 5 more times", "make 5 more petals the same", "and so on around". What
 * they repeat is all that the round has worked so far, or the bracket that stands right before them.
 */
import { readAmount } from './clauses'
import type { SequenceReader } from './clauses'
import { bareTimesAhead, readBareTimes, readDoThis } from './do-this'
import { readNoun } from './nouns'
import type { Reader } from './reader'
import { spanOf } from './tokens'
import type { Span } from './tokens'
import { UNMARKED } from './marked'
import { placeParts } from './tree'
import { isSlip } from './stitch-name'
import type { Item, RepeatClause, StarItem } from './tree'

/** How often in all: a number of times or of more times, or null for all around. */
type HowOften = Pick<RepeatClause, 'amount' | 'said'>

const AROUND: HowOften = { amount: null, said: 'plain' }

/** "these 2 steps", "this", "the above", "all of this": what is repeated, in words that name nothing new. */
function passWhat(reader: Reader): void {
  while (reader.skip('this', 'these', 'the', 'that', 'it', 'above', 'all', 'of')) continue
  reader.attempt(() => {
    reader.number()
    return (
      reader.skip('steps', 'step', 'st', 'instructions', 'process', 'sequence') ||
      reader.skipA('pattern') ||
      null
    )
  })
}

/** "in the same way", "the same", "like this", "alike", "as first": passes it. */
function passAlike(reader: Reader): boolean {
  const start = reader.at
  while (reader.skip('in', 'the', 'exactly', 'just')) continue
  if (reader.skip('same', 'this', 'like', 'alike', 'likewise', 'as')) {
    while (reader.skip('way', 'manner', 'this', 'that', 'the', 'first', 'one', 'before', 'above', 'pattern'))
      continue
    reader.skipA('counted')
    return true
  }
  reader.at = start
  return false
}

/** "each petal", "the other 5 sps", "in each of the remaining spaces", "all petals", "each sp around". */
function readOthers(reader: Reader): HowOften | null {
  return reader.attempt(() => {
    if (!reader.skip('in', 'into', 'for', 'on', 'over', 'along', 'around')) return null
    const from = reader.at
    while (reader.skip('each', 'every', 'all', 'of', 'the')) continue
    const all = reader.tokens.slice(from, reader.at).some(({ is }) => is !== 'the')
    const more = reader.skip('other', 'rem', 'next', 'others')
    const amount = reader.number()
    reader.skip('more')
    if (reader.skip('sides', 'edges') || (all && reader.skip('side', 'edge')))
      return amount === null ? AROUND : more ? { amount, said: 'more' } : { amount, said: 'in-all' }
    if (!reader.skipA('counted') && !reader.skipA('motif') && !readNoun(reader) && !(more && amount === null))
      return null
    if (amount === null) readAmount(reader)
    return amount === null ? AROUND : more ? { amount, said: 'more' } : { amount, said: 'in-all' }
  })
}

/** "Make 5 more petals the same", "work 5 more like this": others of what was just made. */
const readMoreLike = (reader: Reader): HowOften | null =>
  reader.attempt(() => {
    if (!reader.skip('make', 'work', 'form', 'do') && !reader.skip('crochet')) return null
    const amount = reader.number()
    if (amount === null || !reader.skip('more', 'other')) return null
    const named = reader.skipA('counted') || reader.skipA('space') || reader.skipA('motif')
    const alike = passAlike(reader)
    const others = readOthers(reader)
    return named || alike || others ? { amount, said: 'more' } : null
  })

/** "Do the same in each of the other 5 sps", "and the same in each remaining sp", "for each of the other petals work the same". */
const readSameIn = (reader: Reader): HowOften | null =>
  reader.attempt(() => {
    const before = readOthers(reader)
    if (before) {
      reader.skip(',')
      if (!reader.skipA('verb') && !reader.skip('do')) return null
    } else if (!reader.skipA('verb')) reader.skip('do', 'and')
    while (reader.skip('then')) continue
    if (!reader.skipAll('the', 'same') && !reader.skip('this', 'likewise', 'similarly', 'rep')) return null
    const behind = readOthers(reader)
    return behind ?? before
  })

/** "and so on around", "continue around in this way", "carry on like this to the end". */
const readOnward = (reader: Reader, items: readonly Item[]): HowOften | null =>
  reader.attempt(() => {
    // Of one stitch alone nobody can tell what way that is.
    const body = items.slice(items.findIndex(isWork))
    if (body.filter((item) => isWork(item) || item.type === 'chain').length < 2) return null
    reader.skip('and')
    if (!reader.skipAll('so', 'on') && !reader.skip('continue', 'carry', 'go', 'keep')) return null
    const said = reader.at
    while (reader.skip('on', 'going', 'work', 'in', 'rep')) continue
    passAlike(reader)
    // "Continue in this way (around) until there are 8 popcorns in all": as far as that goes, which is around.
    if (readUntilThere(reader)) return AROUND
    const amount = readAmount(reader)
    passAlike(reader)
    readUntilThere(reader)
    if (reader.at === said || !amount || amount.amount !== null || amount.lastCount > 0 || amount.toCorner)
      return null
    return AROUND
  })

/** "until there are 8 clusters and 8 times 2 ch", "until you have 6 petals in all": what there is in the end. */
const readUntilThere = (reader: Reader): HowOften | null =>
  reader.attempt(() => {
    if (!reader.skip('until', 'till')) return null
    while (reader.skip('there', 'you', 'are', 'have', 'in', 'all', 'total')) continue
    const amount = reader.number()
    if (amount === null || (!reader.skipA('counted') && !readNoun(reader))) return null
    while (reader.peek() && !/^[.;:,()]$/.test(reader.key())) reader.at++
    return { amount, said: 'in-all' }
  })

/** "Repeat around", "rep 5 more times", "rep x 6", "repeat in each sp", "keep repeating to the end". */
const readAgain = (reader: Reader): HowOften | null =>
  reader.attempt(() => {
    reader.skip('and')
    reader.skip('then')
    if (reader.skip('keep')) reader.skip('on')
    if (!reader.skip('rep')) return null
    passWhat(reader)
    const there = readUntilThere(reader)
    if (there) return there
    const others = readOthers(reader)
    if (others) return others
    const amount = readAmount(reader)
    if (!amount || amount.lastCount > 0 || amount.toCorner) return null
    return { amount: amount.amount, said: amount.said }
  })

/** "sc in next, inc in next, all the way around": of stitches that each go into the next place alone. */
const readAllAround = (reader: Reader, items: readonly Item[]): HowOften | null =>
  reader.attempt(() => {
    if (reader.key(-1) !== ',' || !reader.skipAll('all', 'the', 'way')) return null
    const single = items.every(
      (item) =>
        item.type !== 'work' ||
        !item.place ||
        item.place.parts.every(({ which, each }) => !each && which === 'next'),
    )
    return single && reader.skip('around', 'round') ? AROUND : null
  })

export const isWork = ({ type }: Pick<Item, 'type'>): boolean =>
  type === 'work' || type === 'group' || type === 'skip' || type === 'placed'

/** "Popcorn in same st, ch 3, sk 1, popcorn in next st, ch 3, sk 1": the one behind the first, which no other is like; null for none. */
function behindSame(items: readonly Item[], first: number): number | null {
  const opener = items[first]
  if (opener?.type !== 'work' || opener.place?.parts[0]?.which !== 'same') return null
  const like = items.findIndex(
    (item, at) =>
      at > first &&
      item.type === 'work' &&
      item.stitch.form === opener.stitch.form &&
      item.stitch.stitch === opener.stitch.stitch &&
      item.place?.parts[0]?.which === 'next',
  )
  return like < 0 ? null : like
}

/** What is repeated: the bracket right before, else everything worked so far; −1 where nothing is. */
function firstRepeated(items: readonly Item[]): number {
  const last = items.findLastIndex(isWork)
  const before = items[last]
  const alone = before?.type === 'group' && before.bracket !== '' && !before.place && before.times === null
  if (alone && !before.around && items.slice(last + 1).every(({ type }) => type === 'note')) return last
  const begun = items.findIndex(isWork)
  const first = behindSame(items, begun) ?? begun
  // "5 ch, miss 3 dc, ss in next dc, and repeat 7 times": the loop is repeated, too.
  const opener = items[first]
  const loops = opener?.type === 'skip' || (opener?.type === 'work' && isSlip(opener.stitch))
  return loops && items[first - 1]?.type === 'chain' && items.at(-1)?.type !== 'chain' ? first - 1 : first
}

/** Whether a repeat of something is told already, or nothing was worked that could be. */
const isRepeated = (items: readonly Item[], from: number): boolean =>
  from < 0 ||
  items.slice(from).some(({ type }) => type === 'star' || type === 'join' || type === 'repeat-round')

const readHowOften = (reader: Reader, items: readonly Item[]): HowOften | null =>
  readAgain(reader) ??
  readDoThis(reader) ??
  readMoreLike(reader) ??
  readSameIn(reader) ??
  readOnward(reader, items) ??
  readAllAround(reader, items) ??
  readBareTimes(reader)

/** Words that such a repeat begins with behind a comma. */
const OPENS = new Set([
  'make',
  'work',
  'form',
  'do',
  'perform',
  'crochet',
  'and',
  'for',
  'so',
  'continue',
  'carry',
  'go',
  'keep',
  'all',
  'the',
])

/** Whether such a repeat stands at the cursor, behind a comma or "and"; passes nothing. */
export function repeatsWhole(reader: Reader, items: readonly Item[]): boolean {
  if ((!reader.seesAny(OPENS) && !bareTimesAhead(reader)) || reader.tokens[reader.at - 1]?.kind !== 'mark')
    return false
  const at = reader.at
  const found = readHowOften(reader, items) !== null
  reader.at = at
  return found
}

/** Puts what such a repeat means into an item of its own, and passes the words; nothing where the words are others. */
export function repeatWhole(reader: Reader, items: Item[]): void {
  const from = firstRepeated(items)
  if (isRepeated(items, from)) return
  const start = reader.at
  const often = readHowOften(reader, items)
  if (!often) return
  const body = items.splice(from)
  const last = reader.tokens[reader.at - 1]!
  const said = spanOf(reader.tokens[start]!, last)
  items.push(starOf(body, often, said))
}

export function starOf(body: readonly Item[], { amount, said }: HowOften, span: Span): StarItem {
  const [first] = body
  const group =
    body.length === 1 && first?.type === 'group' && !first.place && first.times === null ? first : null
  const clause = {
    lastCount: 0,
    toCorner: false,
    endAtDouble: false,
    ending: null,
    amountSpan: span,
  } as const
  const repeat: RepeatClause = { amount, said, ...clause, ...span }
  const { start, line, column } = first!
  const items = group ? group.items : body
  return { type: 'star', mark: UNMARKED, items, repeat, closed: false, start, end: span.end, line, column }
}

/** Behind these each petal, point or side of the round before is named. */
const FOR_EACH = new Set(['for', 'on', 'over', 'around', 'round', 'along', 'up', 'across', 'in'])

/** "Alternate sc and inc around", "alternating 1 sc and 1 inc all the way round", "sc and inc alternately": in turn. */
export const readAlternating = (
  reader: Reader,
  readOne: (reader: Reader) => Item | null,
): StarItem | null => {
  const start = reader.at
  return reader.attempt(() => {
    while (reader.skip('work', 'make')) continue
    if (!reader.skip('alternate', 'alternating', 'alternately')) return null
    while (reader.skip('between', 'work', ':')) continue
    const first = readOne(reader)
    reader.skip(',')
    if (!first || !reader.skip('and', 'then', 'with')) return null
    while (reader.skip('then', 'with', 'a')) continue
    const named = readOne(reader)
    if (!named) return null
    // "… and inc around": the way is that of both.
    const swept = named.type === 'work' && named.place?.parts[0]?.extent ? { ...named, place: null } : null
    const second = swept ?? named
    const from = reader.at
    reader.skip(',')
    const amount = readAmount(reader)
    if (!amount) reader.at = from
    const often = amount?.amount != null ? { amount: amount.amount, said: 'in-all' as const } : AROUND
    return starOf([first, second], often, reader.span(start))
  })
}

/** "For each leaf: sc in sc, 2 sc in each of next 4 dc, …": what follows up to the stop, as often as there are leaves. */
export const readForEach = (reader: Reader, sequence: SequenceReader): StarItem | null => {
  const start = reader.at
  return reader.attempt(() => {
    if (!reader.seesAny(FOR_EACH) || !['each', 'every'].includes(reader.key(1))) return null
    reader.at += 2
    const named = reader.isA('counted') || ['side', 'repeat', 'rep', 'section'].includes(reader.key())
    if (!named || reader.isA('space', 1) || reader.isA('stitch', 1)) return null
    reader.at++
    reader.skip('in', 'around')
    reader.skip('turn', 'work')
    if (!reader.skip(':')) return null
    const said = reader.span(start)
    const body = sequence(reader, 'clause')
    const takes = [...placeParts(body)].some(({ noun }) => noun.kind === 'stitch')
    return takes && !body.some(({ type }) => type === 'star' || type === 'join')
      ? starOf(body, AROUND, said)
      : null
  })
}
