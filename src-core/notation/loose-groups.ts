/**
 * Groups without brackets: "*sc, hdc, 3 dc, hdc, sc in next ch-4 sp" as older print and many hands write it. The
 * words alone do not tell it from stitches worked one by one, so this is the second way to read a round, taken
 * only where the first does not come out even and this one does.
 */
import { readAmount } from './clauses'
import { isShell } from './nouns'
import { readPlace } from './places'
import type { Reader } from './reader'
import { passTheSame } from './the-same'
import { timesOf } from './times-of'
import type { ChainItem, GroupItem, Item, Place, WorkItem } from './tree'

export interface Gathered {
  readonly items: readonly Item[]
  /** The groups that were made. */
  readonly groups: readonly GroupItem[]
}

/** Stitches, chains and picots that name no place of their own. */
const isBare = (item: Item): boolean =>
  item.type === 'chain' ||
  (item.type === 'work' &&
    item.place === null &&
    item.stitch.form !== 'together' &&
    item.stitch.form !== 'decrease' &&
    item.stitch.form !== 'increase')

/** A stitch into one space, or into each: what a group before it may share. */
function intoSpace(item: Item): item is WorkItem {
  if (item.type !== 'work' || item.place?.parts.length !== 1 || item.place.over) return false
  const { which, count, noun, each } = item.place.parts[0]!
  // "Into the 2 ch."
  if (noun.kind === 'chain') return which === 'next' && count > 1 && !each
  // "2 dc, ch 2 and 2 dc in sp of next shell", "… in next shell".
  const ofShell = noun.kind === 'within' || (noun.kind === 'stitch' && isShell(noun.name?.form))
  const isSpace = noun.kind === 'space' || noun.kind === 'corner' || ofShell
  const one = which === 'next' || which === 'same' || which === 'last' || which === 'first'
  return isSpace && (which === 'each' || each || (one && count === 1))
}

/** "sc, inc x 6", "sc in pc, 2 sc in sc around": whether the amount may be that of all the stitches before it. */
function isTimed(item: Item): item is GroupItem {
  if (item.type !== 'group' || item.bracket !== '' || item.items.length !== 1 || item.place) return false
  const [only] = item.items
  return only !== undefined && goesOn(only) && (item.times !== null || item.around)
}

/** A stitch into the next one, whether the text says so or not. */
function goesOn(item: Item): item is WorkItem {
  if (item.type !== 'work') return false
  if (item.place === null) return true
  const { which, noun } = item.place.parts[0]!
  return item.place.parts.length === 1 && !item.place.over && which === 'next' && noun.kind === 'stitch'
}

/** One group of loose stitches and the last one, behind which stands the place of all. */
function groupOf(
  bare: readonly Item[],
  last: WorkItem | ChainItem,
  place: Place | null = last.type === 'work' ? last.place : null,
): GroupItem {
  const first = bare[0] ?? last
  return {
    type: 'group',
    bracket: '',
    items: [...bare, last.type === 'work' ? { ...last, place: null } : last],
    place,
    times: null,
    around: false,
    toCorner: false,
    lastCount: 0,
    start: first.start,
    end: place?.end ?? last.end,
    line: first.line,
    column: first.column,
  }
}

/** What is only said of the stitches before it. */
const isSaid = (item: Item): boolean =>
  (item.type === 'statement' && item.says === 'made') ||
  (item.type === 'note' && item.effect === null && !item.unread)

/** The round with its loose stitches gathered into the space that is named behind them; null where there are none. */
export function gatherLoose(items: readonly Item[], text: string): Gathered | null {
  const groups: GroupItem[] = []
  const gather = (list: readonly Item[]): readonly Item[] => {
    const gathered: Item[] = []
    /** Where the run of bare stitches begins in `gathered`; -1 where none is open. */
    let from = -1
    /** The same where increases and decreases count as well, which go into no space together. */
    let run = -1
    for (const item of list) {
      // "3 sc, 3 ch (picot made), 3 sc into each loop".
      if (from >= 0 && isSaid(item)) {
        gathered.push(item)
        continue
      }
      const timed = isTimed(item)
      const begins = goesOn(item)
      if (!begins && item.type !== 'chain') run = timed ? run : -1
      else if (run < 0 && begins) run = gathered.length
      if (timed && run >= 0) {
        const bare = gathered.splice(run)
        const group = { ...item, items: [...bare, ...item.items], start: bare[0]!.start }
        groups.push(group)
        gathered.push(group)
        from = run = -1
      } else if (from >= 0 && (intoSpace(item) || isListed(gathered.slice(from), item, text))) {
        const group = groupOf(gathered.splice(from), item)
        groups.push(group)
        gathered.push(group)
        from = run = -1
      } else if (isBare(item)) {
        // A group begins with a stitch: chains before it lead there.
        if (from < 0 && item.type === 'work') from = gathered.length
        gathered.push(item)
      } else {
        from = -1
        if (item.type === 'star' || (item.type === 'group' && item.place === null)) {
          const inner = gather(item.items)
          gathered.push(inner === item.items ? item : { ...item, items: inner })
        } else gathered.push(item)
      }
    }
    return gathered.length === list.length && gathered.every((item, at) => item === list[at])
      ? list
      : gathered
  }
  const read = gather(items)
  return groups.length > 0 ? { items: read, groups } : null
}

/** "Sc, hdc and dc in next st", "sc, ch 2, sc in next st": may be a list whose place is that of all. */
const isListed = (bare: readonly Item[], item: Item, text: string): item is WorkItem => {
  if (!intoStitch(item)) return false
  const before = bare.at(-1)!
  if (/(?:\band|&)\s*$/i.test(text.slice(before.end, item.start))) return true
  const first = bare.at(-2)
  return before.type === 'chain' && first?.type === 'work' && isAlike(first, item)
}

/** "2 dc, ch 2, 3 dc all in next sp": the stitches named before go into that place too. */
const gathersAll = (reader: Reader, item: Item): item is WorkItem & { readonly place: Place } =>
  item.type === 'work' &&
  item.place !== null &&
  /\ball\s*$/i.test(reader.text.slice(item.start, item.place.start))

/** "3 tr., 3 ch. and 3 tr. in next sp": behind chains and "and" the last of a list, whose place is that of all. */
function closesList(reader: Reader, items: readonly Item[], item: Item): item is WorkItem {
  if (endsList(items, item) && /\band\s*$/.test(reader.text.slice(items.at(-1)!.end, item.start))) return true
  const [first, chain] = items.slice(-2)
  const alike = first?.type === 'work' && item.type === 'work' && isAlike(first, item) && intoStitch(item)
  if ((!intoSpace(item) && !alike) || chain?.type !== 'chain' || first?.type !== 'work' || first.place)
    return false
  return /^[,.\s]*and\s*$/.test(reader.text.slice(chain.end, item.start))
}

/** Stitches of several kinds that a list has before its last one, at least. */
const SHORTEST_LIST = 3

/** "1 sc, 1 hdc, 3 dc, 1 hdc and 1 sc in each loop": nothing but that place tells where the stitches before it go. */
function endsList(items: readonly Item[], item: Item, end = items.length): item is WorkItem {
  if (!intoSpace(item) || !item.place!.parts[0]!.each) return false
  let works = 0
  let first: WorkItem | null = null
  let stitch: WorkItem['stitch']['stitch'] = null
  for (let at = end - 1; at >= 0 && isBare(items[at]!); at--) {
    const bare = items[at]!
    if (bare.type !== 'work') continue
    if (works > 0 && bare.stitch.stitch === stitch) return false
    stitch = bare.stitch.stitch
    first = bare
    works++
  }
  // "1 dc, 5 tr, 1 dc in each sp": as it begins it ends.
  return works >= SHORTEST_LIST || (works === SHORTEST_LIST - 1 && isAlike(first!, item))
}

/** Whether a round has such a list, with or without "and". */
export const listsForEach = (items: readonly Item[]): boolean =>
  items.some((item, at) => endsList(items, item, at) || (item.type === 'star' && listsForEach(item.items)))

/** As many of a stitch on both sides of chains, before a space: "3 dc, ch 3, 3 dc in next corner" is one group. */
function closesMirror(items: readonly Item[], least: number, item: Item): item is WorkItem {
  const [first, chain] = items.slice(Math.max(least, items.length - 2))
  if (item.type !== 'work' || chain?.type !== 'chain' || first?.type !== 'work' || first.place) return false
  // "Ch 4 (counts as tr), tr, ch 2, 2 tr in same st": the chain is the first of them.
  const said = items.at(-3)
  const begun = said?.type === 'statement' && said.says === 'counts' && said.stitch === first.stitch.stitch
  const [part] = item.place?.parts ?? []
  const same = begun && part?.which === 'same' && part.noun.kind === 'stitch'
  if (!intoSpace(item) && !intoStitch(item) && !same) return false
  const count = (first.count ?? 1) + (begun ? 1 : 0)
  return (item.count ?? 1) > 1 && isAlike({ ...first, count }, item)
}

/** "1 hdc + 1 dc in next st", "sc + ch 2 + sc in next sp": signs between stitches bind them; takes those before the last one off the list. */
function bindBefore(reader: Reader, items: Item[], least: number, item: Item): GroupItem | null {
  if (item.type !== 'work' || !(intoStitch(item) || intoSpace(item) || intoSame(item))) return null
  let from = items.length
  for (let end = item.start; from > least && isBare(items[from - 1]!); from--) {
    if (!BINDS.test(reader.text.slice(items[from - 1]!.end, end))) break
    end = items[from - 1]!.start
  }
  return items.slice(from).some(({ type }) => type === 'work') ? groupOf(items.splice(from), item) : null
}
const BINDS = /^\s*(?:\+|plus)\s*$/i

/** A stitch into the next one, which is named. */
const intoStitch = (item: Item): item is WorkItem =>
  item.type === 'work' &&
  item.place !== null &&
  !item.place.over &&
  goesOn(item) &&
  item.place.parts[0]!.count === 1

/** A stitch into the one that was worked into last. */
const intoSame = ({ place }: WorkItem): boolean =>
  place?.parts.length === 1 && place.parts[0]!.which === 'same' && place.parts[0]!.noun.kind === 'stitch'

/** As many of the same stitch. */
const isAlike = (first: WorkItem, { count, stitch }: WorkItem): boolean =>
  (count ?? 1) === (first.count ?? 1) &&
  stitch.form === first.stitch.form &&
  stitch.stitch === first.stitch.stitch

/** "Dc, ch 1 in each st around", "ch 3, 2 dc, ch 1 in that space": chains go into no stitch, so the place is that of all before it. */
const readShared = (reader: Reader, before: Item | undefined): Place | null => {
  // "2 dc, chain 1 all in that space".
  if (reader.sees('all') && reader.isA('into', 1)) reader.at++
  if (!reader.isA('into')) return null
  const each = ['each', 'every'].includes(reader.key(1))
  const pointed = ['that', 'this', 'same'].includes(reader.spelled(1)) && reader.isA('space', 2)
  // "1 dc and 1 ch into the same stitch", "… in next st".
  const the = reader.key(1) === 'the' ? 2 : 1
  const near =
    ['same', 'next'].includes(reader.key(the)) &&
    (reader.isA('space', the + 1) || reader.isA('stitch', the + 1))
  return each || ((pointed || near) && before?.type === 'work' && before.place === null)
    ? readPlace(reader)
    : null
}

/** A group of the loose stitches and chains read so far and the last one; takes them off the list. */
function gatherBefore(
  items: Item[],
  last: WorkItem | ChainItem,
  least: number,
  place = placeOf(last),
): GroupItem {
  let from = items.length
  while (from > least) {
    const { type } = items[from - 1]!
    const bare =
      type === 'chain' || type === 'statement' || (type === 'work' && !(items[from - 1] as WorkItem).place)
    if (!bare) break
    from--
  }
  // "4 ch, then 1 tr, 1 ch on every tr": the round begins with chains of its own.
  const each = place?.parts[0]?.each === true || place?.parts[0]?.which === 'same'
  if (from === 0 && each && items.length > 1 && items[0]!.type === 'chain')
    from = items[1]!.type === 'statement' ? 2 : 1
  return groupOf(items.splice(from), last, place)
}

const placeOf = (item: WorkItem | ChainItem): Place | null => (item.type === 'work' ? item.place : null)

/**
 * "3 dc, a picot, 3 dc, into every sp", "1 dc, 5 tr, 1 dc, all into each space": the place of the list, behind a comma and
 * before the end of the sentence. Puts the group there and passes the place; false for anything else.
 */
export const passSharedPlace = (reader: Reader, items: Item[], least: number, placed: boolean): boolean =>
  passTheSame(reader, items) ||
  passTimed(reader, items, least, placed) ||
  reader.attempt(() => {
    const last = items.at(-1)
    if (!reader.sees(',') && !reader.sees('all') && !reader.sees('and')) return null
    if (last?.type !== 'work' || !isBare(last)) return null
    let all = false
    while (reader.skip(',', 'and', 'all', 'these', 'being', 'worked')) all ||= reader.key(-1) === 'all'
    const place = reader.isA('into') ? readPlace(reader) : null
    const [part, ...others] = place?.parts ?? []
    // "Make 3 chains, then 3 trebles, 3 chains and 4 trebles, all into that same corner space".
    const one = part?.which === 'same' || (part?.which === 'next' && part.count === 1)
    const told = part?.which === 'each' || (all && one)
    const whole = told && (part.noun.kind === 'space' || part.noun.kind === 'corner')
    const goesOn = all && /^[,)\]]$/.test(reader.key())
    const ends =
      goesOn || reader.peek()?.first !== false || /^[.;:([]$/.test(reader.key()) || CLOSES.has(reader.key(1))
    if (!place || !whole || others.length > 0 || !ends) return null
    items.pop()
    items.push(gatherBefore(items, last, least, place))
    return true
  }) === true

/** "1 tr & 1 ch eleven times more in the ring": a list without brackets, how often, and its place. Puts the group there. */
const passTimed = (reader: Reader, items: Item[], least: number, placed: boolean): boolean =>
  reader.attempt(() => {
    const last = items.at(-1)
    if (last?.type !== 'chain' || reader.peek()?.first || reader.peek()?.kind === 'mark') return null
    let from = items.length - 1
    const binds = (at: number): boolean =>
      at > least &&
      isBare(items[at - 1]!) &&
      LISTED.test(reader.text.slice(items[at - 1]!.end, items[at]!.start))
    while (binds(from)) from--
    const list = items.slice(from)
    if (list[0]?.type !== 'work') return null
    const before = readAmount(reader)
    const place = reader.isA('into') ? readPlace(reader) : null
    // "1 tr and 2 ch into the ring seven times".
    const amount = before ?? (place ? readAmount(reader) : null)
    if (!amount || amount.amount === null) return null
    const [part, ...others] = place?.parts ?? []
    const one = part?.noun.kind === 'ring' || (part?.count === 1 && !part.each)
    // "Into the ring 1 tr & 1 ch eleven times": the place is told before.
    if (placed ? place : !part || !one || others.length > 0) return null
    items.splice(from)
    const times = timesOf(amount.amount, amount.said === 'more', placed ? null : items, list)
    items.push({ ...groupOf(list.slice(0, -1), last, place), times })
    return true
  }) === true
const LISTED = /^\s*(?:and|&|\+|plus)\s*$/i

const CLOSES = new Set(['join', 'joining', 'ss', 'sl', 'close', 'unite', 'ending'])

/**
 * "5 ch., then 1 tr., 2 ch., five times into the ring": all behind "then", or behind the chains that the round begins
 * with, so many times. Puts the group there and passes the words; false for anything else.
 */
export const passTimesOver = (reader: Reader, items: Item[], least: number): boolean =>
  reader.attempt(() => {
    const last = items.at(-1)
    if ((last?.type !== 'chain' && last?.type !== 'work') || !isBare(last)) return null
    // "2 ch. five times": the stop of the abbreviation ends nothing.
    if (!reader.skip(',') && /^[\p{Ll}\d]/u.test(reader.peek(1)?.text ?? '')) reader.skip('.')
    const times = reader.number()
    if (times === null || times < 2 || !reader.skip('times')) return null
    const place = reader.isA('into') ? readPlace(reader) : null
    const kind = place?.parts[0]!.noun.kind
    if (kind !== 'ring' && kind !== 'space') return null
    let from = items.length - 1
    while (from > least && isBare(items[from - 1]!)) from--
    const then = reader.tokens.findLast(({ key, start }) => key === 'then' && start < last.start)
    const behind = then ? items.findIndex(({ start }, at) => at >= from && start > then.start) : -1
    if (behind >= 0) from = behind
    else if (from === 0 && items[0]!.type === 'chain') from = 1
    const listed = items.slice(from)
    // Of a longer list nobody knows where it begins.
    if ((behind < 0 && listed.length > 2) || !listed.some(({ type }) => type === 'work')) return null
    items.splice(from)
    items.push({ ...groupOf(listed.slice(0, -1), last, place), times })
    return true
  }) === true

/** "1 dc and 3 ch into next sp eight times": how often stands behind the place. */
function severalTimes(reader: Reader, items: Item[], group: GroupItem): GroupItem {
  if (group.place?.parts[0]?.each) return group
  const amount = reader.attempt(() => {
    const found = readAmount(reader)
    return found?.amount != null && found.lastCount === 0 && !found.toCorner ? found : null
  })
  if (!amount) return group
  // The chain that the round rises with is not made again.
  const lead = group.items.findIndex(({ type }) => type === 'work')
  items.push(...group.items.slice(0, lead))
  const list = group.items.slice(lead)
  const times = timesOf(amount.amount!, amount.said === 'more', items, list)
  return { ...group, items: list, times, start: list[0]!.start, end: reader.tokens[reader.at - 1]!.end }
}

/** What an item is with the loose stitches before it that share its place; takes those off the list. */
export function withBefore(reader: Reader, items: Item[], least: number, item: Item): Item {
  const shared = item.type === 'chain' ? readShared(reader, items.at(-1)) : null
  if (item.type === 'chain' && shared)
    return severalTimes(reader, items, gatherBefore(items, item, least, shared))
  if (closesMirror(items, least, item)) return groupOf(items.splice(-2), item)
  const bound = bindBefore(reader, items, least, item)
  if (bound) return bound
  return gathersAll(reader, item) || closesList(reader, items, item) ? gatherBefore(items, item, least) : item
}
