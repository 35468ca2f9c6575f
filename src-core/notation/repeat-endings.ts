/** How the last repeat differs: cut at `**`, put differently, or closed over the first stitch. */
import { spanOf } from './tokens'
import type { Span } from './tokens'
import { isSlip, NO_NAME } from './stitch-name'
import type { GroupItem, Item, PlacePart, RepeatEnding, StarItem, WorkItem } from './tree'
import type { StitchName } from './stitch-name'

/** Where the text stands that goes around: from the asterisk or bracket to the end of its body. */
export function bodySpan(item: GroupItem | StarItem): Span {
  const last = item.items[item.items.length - 1]
  return last && item.type === 'star' ? { ...item, end: last.end } : item
}

/** How often a star runs in all, where it says so; null where it goes around. */
export function starTimes({ repeat, closed }: StarItem): number | null {
  if (!repeat || repeat.amount === null) return null
  const inAll = repeat.said === 'in-all' || (closed && repeat.said !== 'more')
  return inAll ? repeat.amount : repeat.amount + 1
}

/** Items up to `**`; null where it is not set. */
function upToDouble(items: readonly Item[]): readonly Item[] | null {
  const at = items.findIndex((item) => item.type === 'double')
  return at < 0 ? null : items.slice(0, at)
}

/** Whether an item makes or takes anything. */
export const works = (item: Item): boolean =>
  item.type !== 'note' && item.type !== 'count' && item.type !== 'statement'

/** Whether an item makes stitches or takes places, so that what stands before it is in the middle of the round. */
export const makes = (item: Item): boolean =>
  works(item) && item.type !== 'join' && item.type !== 'colour' && item.type !== 'foundation'

/** Body of the last repeat: cut at `**`, or with its last stitches put differently; null where ** is missing. */
export function lastItems(star: StarItem): readonly Item[] | null {
  const clause = star.repeat
  if (clause?.endAtDouble) return upToDouble(star.items)
  const ending = clause?.ending
  if (!ending) return star.items
  if (ending.mode === 'early') return endedEarly(star, ending.items)
  if (ending.mode === 'after' || ending.mode === 'before') return upToNamed(star, ending)
  const back = onlyCloses(star) && endsInJoining(ending.items)
  if (ending.mode === 'append' && !back) return [...openForEnding(star.items, ending.items), ...ending.items]
  if (ending.mode === 'omit') return withoutLast(star.items, stitchesIn(ending.items[0]))
  // "Working last sc in first sc" joins the round.
  if (onlyCloses(star)) {
    const at = star.items.findLastIndex(works)
    const [only] = ending.items.filter(works)
    const left = at < 0 ? null : fewer(star.items[at]!, 1)
    return [
      ...star.items.slice(0, at),
      ...(left ? [left] : []),
      { type: 'join', place: (only as WorkItem).place, ...spanOf(only!, only!) },
    ]
  }
  const corner = closesGroup(star) ? star.items.findLastIndex(works) : -1
  if (corner >= 0) return [...star.items.slice(0, corner), ...ending.items.map(atBeginning)]
  const chain = star.items.findLastIndex((item) => isLastChain(item, ending.items))
  if (chain >= 0) {
    const passed = star.items.slice(chain).filter(({ type }) => type === 'skip')
    return [...star.items.slice(0, chain), ...ending.items, ...passed]
  }
  const early = star.items.findIndex((item) => isInLast(item, ending.items))
  if (early >= 0) return [...star.items.slice(0, early), ...ending.items]
  const body = [...star.items]
  // The join behind it stands for nothing in the repeat.
  const drop = Math.max(1, ending.items.filter((item) => makes(item) && !isClosingSlip(item)).length)
  for (let dropped = 0; dropped < drop && body.length > 0;) {
    const item = body.pop()!
    if (!works(item)) continue
    dropped++
    const [off] = ending.items
    const left = dropped === drop && off?.type === 'work' && stitchesIn(off) === 1 ? fewer(item, 1) : null
    if (left) body.push(left)
  }
  return [...body, ...ending.items]
}

/** Whether an item is what is named: that chain, that stitch, or what goes into that space. */
function isNamed(item: Item, named: Item): boolean {
  if (named.type === 'chain') return item.type === 'chain' && item.count === named.count
  if (named.type !== 'work' || !('place' in item)) return false
  const noun = named.place?.parts[0]?.noun
  if (!noun) return item.type === 'work' && isAlike(named.stitch, item.stitch)
  const into = item.place?.parts[0]?.noun
  if (into?.kind !== noun.kind) return into?.kind === 'space' && into.corner && noun.kind === 'corner'
  return into.kind !== 'space' || noun.kind !== 'space' || (noun.chains ?? into.chains) === into.chains
}

/** "…, ending last rep after the popcorn": the repeat up to the last item that is so named; whole where it has none. */
function upToNamed({ items }: StarItem, { mode, items: [named] }: RepeatEnding): readonly Item[] {
  const at = named ? items.findLastIndex((item) => isNamed(item, named)) : -1
  return at < 0 ? items : items.slice(0, mode === 'after' ? at + 1 : at)
}

/** "*Shell in next sp, sc in next sc; …, ending last rep with shell in last sp": the repeat ends early, with that item. */
function isInLast(item: Item, ending: readonly Item[]): boolean {
  const [only, ...others] = ending.filter((each) => makes(each) && !isClosingSlip(each))
  if (item.type !== 'work' || only?.type !== 'work' || others.length > 0) return false
  const [part, last] = [item.place?.parts[0], only.place?.parts[0]]
  if (last?.which !== 'last' || part?.which !== 'next' || (item.count ?? 1) !== (only.count ?? 1))
    return false
  const alike = item.stitch.form === only.stitch.form && item.stitch.stitch === only.stitch.stitch
  if (part.noun.kind === 'space' && last.noun.kind === 'space')
    return alike && part.noun.chains === last.noun.chains
  if (part.noun.kind !== 'stitch' || last.noun.kind !== 'stitch') return false
  return alike && part.noun.name?.stitch === last.noun.name?.stitch && part.count === last.count
}

/**
 * "*Ch 1, (3 dc, ch 2, 3 dc) in next sp; …, ending last rep with 3 dc in beg sp, ch 2": the rest of the group with which
 * the round began, in the place of the last one.
 */
function closesGroup({ items, repeat }: StarItem): boolean {
  const last = items.findLast(works)
  const isSpace = (part: PlacePart | undefined): boolean =>
    part?.noun.kind === 'space' || part?.noun.kind === 'corner'
  const grouped = (last?.type === 'group' && last.times === null) || last?.type === 'placed'
  if (!grouped || !isSpace(last.place?.parts[0]) || !hasChain(last.items)) return false
  const [first, ...others] = (repeat?.ending?.items ?? []).filter(
    (item) => makes(item) && !isClosingSlip(item),
  )
  const part = first && (first.type === 'work' || first.type === 'group') ? first.place?.parts[0] : undefined
  const begins = part?.asBeginning || ['first', 'same'].includes(part?.which ?? '')
  return begins === true && isSpace(part) && others.every(({ type }) => type === 'chain')
}

/** "3 dc in first sp": the one where the round began. */
const atBeginning = (item: Item): Item => {
  if ((item.type !== 'work' && item.type !== 'group') || item.place?.parts[0]?.which !== 'first') return item
  const parts = item.place.parts.map((part) => ({ ...part, which: 'same', asBeginning: true }) as const)
  return { ...item, place: { ...item.place, parts } }
}

const hasChain = (items: readonly Item[]): boolean => items.some(({ type }) => type === 'chain')

/** The last repeat with the rest of the first group in it; null where its ending is none. */
export const endsInGroup = (star: StarItem): RepeatEnding | null =>
  star.repeat?.ending?.mode === 'append' && closesGroup(star)
    ? { ...star.repeat.ending, mode: 'replace' }
    : null

/** "*Ch 4, sk next sp, sc in next sp; …, ending last rep with ch 4": what is passed behind that chain stays so. */
function isLastChain(item: Item, ending: readonly Item[]): boolean {
  const [only, ...others] = ending.filter((each) => makes(each) && !isClosingSlip(each))
  return item.type === 'chain' && only?.type === 'chain' && item.count === only.count && others.length === 0
}

/** How many stitches an item makes one after the other; a group, a skip or a chain goes as a whole. */
function stitchesIn(item: Item | undefined): number {
  if (item?.type !== 'work') return 1
  const [part] = item.place?.parts ?? []
  const run = part && item.place!.parts.length === 1 && ['next', 'last', 'first'].includes(part.which)
  const places = run ? part.count : 1
  return (item.count ?? 1) * places
}

/** Items without the last so many stitches: "dc in next 15 sts" without its last three. */
function withoutLast(items: readonly Item[], count: number): readonly Item[] {
  const body = [...items]
  for (let left = count; left > 0 && body.length > 0;) {
    const item = body.pop()!
    if (!works(item)) continue
    // "[3 ch, 1 dc in next sp] 3 times" loses the last stitch of its last time.
    if (item.type === 'group' && !item.place && (item.times ?? 0) > 1) {
      body.push({ ...item, times: item.times! - 1 }, ...withoutLast(item.items, left))
      break
    }
    // "In ch-7 sp work (…), sk next sc, sc in next sc": what stands behind the bracket is the last of it.
    if (item.type === 'placed' && item.items.filter(works).length > 1) {
      body.push({ ...item, items: withoutLast(item.items, left) })
      break
    }
    const rest = fewer(item, left)
    if (rest) body.push(rest)
    left -= stitchesIn(item)
  }
  return body
}

/** "*…, ch 4; rep from * around, ending with ch 2, dc in first sc": the last chain is put differently, not added to. */
function openForEnding(body: readonly Item[], ending: readonly Item[]): readonly Item[] {
  const last = body.findLastIndex(works)
  return body[last]?.type === 'chain' && ending.find(works)?.type === 'chain' ? body.slice(0, last) : body
}

/** Whether an ending closes the round over the stitch where it began: "…, dc in first sc", "…, dc in joining". */
export function endsInFirst(items: readonly Item[]): boolean {
  const last = items.findLast(works)
  const part = last?.type === 'work' ? last.place?.parts[0] : undefined
  return (
    part !== undefined &&
    (part.noun.kind === 'own' || (part.which === 'first' && part.noun.kind === 'stitch'))
  )
}

/** "…, sl st in next sc; rep from * 4 more times, ending with sl st in joining sl st": the slip stitch that the round began with. */
function endsInJoining(items: readonly Item[]): boolean {
  const last = items.findLast(works)
  const part = last?.type === 'work' ? last.place?.parts[0] : undefined
  const { noun } = part ?? {}
  return (
    (noun?.kind === 'own' && /^(the )?join/i.test(noun.words)) ||
    (part?.which === 'first' && noun?.kind === 'stitch' && noun.name?.stitch === 'sl st')
  )
}

/** "dc in next 3 dc" without its last stitches; null where nothing is left of it. */
function fewer(item: Item, off: number): Item | null {
  if (item.type !== 'work' || stitchesIn(item) <= off) return null
  const [part] = item.place?.parts ?? []
  if (!part) return { ...item, count: item.count! - off }
  const places = off / (item.count ?? 1)
  if (part.count <= places || !Number.isInteger(places)) return null
  return { ...item, place: { ...item.place!, parts: [{ ...part, count: part.count - places }] } }
}

/** Whether the last stitch of a body is one that would fall on the first stitch of the round again. */
export function endsWithSingle(items: readonly Item[]): boolean {
  const last = items.findLast(works)
  if (last?.type !== 'work' || (last.count ?? 1) !== 1) return false
  const part = last.place?.parts[0]
  return (
    !part ||
    (last.place!.parts.length === 1 &&
      part.which === 'next' &&
      part.count === 1 &&
      part.noun.kind === 'stitch')
  )
}

/** "Sl st in next 2 sc" at the end. */
function endsWithSlips(items: readonly Item[]): boolean {
  const last = items.findLast(works)
  return last?.type === 'work' && isSlip(last.stitch) && fewer(last, 1) !== null
}

/** Into the first stitch, or where the round began. */
const isClosing = (item: WorkItem): boolean =>
  endsInFirst([item]) || (item.place?.parts.length === 1 && item.place.parts[0]!.which === 'same')

/** "…, sl st in top of ch-3" behind what the last repeat ends with. */
const isClosingSlip = (item: Item): boolean => item.type === 'work' && isSlip(item.stitch) && isClosing(item)

/** The same stitch, or one that is not named. */
const isAlike = (said: StitchName, last: StitchName): boolean =>
  (said.form === last.form && said.stitch === last.stitch) ||
  (said.stitch === null && said.form === NO_NAME.form)

/** "*…, dc in next 13 dc; rep from * around, ending with dc in last 11 dc": fewer of the same in the last repeat; null where it is another ending. */
export function endsAlike({ items, repeat }: StarItem): RepeatEnding | null {
  const ending = repeat?.ending
  if (ending?.mode !== 'append') return null
  const last = items.findLast(works)
  const first = ending.items.find(works)
  if (last?.type !== 'work' || first?.type !== 'work' || !isAlike(first.stitch, last.stitch)) return null
  const fewer = stitchesIn(last) > stitchesIn(first) && first.place?.parts[0]?.which !== 'same'
  return fewer && !isClosing(first) ? { ...ending, mode: 'replace' } : null
}

/** Whether two items make the same, wherever it goes. */
function makesSame(item: Item, other: Item): boolean {
  if (item.type === 'work' && other.type === 'work')
    return isAlike(other.stitch, item.stitch) && (item.count ?? 1) === (other.count ?? 1)
  if (item.type === 'skip' && other.type === 'skip')
    return item.place?.parts[0]?.count === other.place?.parts[0]?.count
  if (item.type === 'chain' && other.type === 'chain') return item.count === other.count
  if (item.type !== 'group' || other.type !== 'group' || item.items.length !== other.items.length)
    return false
  return item.items.every((each, at) => makesSame(each, other.items[at]!))
}

/** Index of the item of a repeat with which its ending begins: "…, sk 1, sc in next; …, ending with sk 1, sl st in first sc"; −1. */
const earlyAt = ({ items, repeat }: StarItem): number => {
  const first = repeat?.ending?.items.find(works)
  return first ? items.findLastIndex((item) => makesSame(item, first)) : -1
}

/** A repeat up to where its ending begins; "5 dc" there goes where those of the repeat go. */
function endedEarly(star: StarItem, ending: readonly Item[]): readonly Item[] {
  const at = earlyAt(star)
  const rest = star.items.slice(at).filter(works)
  const placed = ending.filter(works).map((item, index) => {
    const like = rest[index]
    const bare = item.type === 'work' && !item.place && like?.type === 'work' && makesSame(item, like)
    return bare ? { ...item, place: like.place } : item
  })
  return [...star.items.slice(0, at), ...placed]
}

/** The last repeat as it ends where its ending is a piece of it; null where it is none. */
export function endsEarly(star: StarItem): RepeatEnding | null {
  const ending = star.repeat?.ending
  if (!ending || ending.mode === 'omit' || earlyAt(star) < 0) return null
  return { ...ending, mode: 'early' }
}

/** "*ch 5, sk 3, sl st in next st; rep from * around, working last sl st in joining sl st": nothing but the closing. */
export function onlyCloses({ items, repeat }: StarItem): boolean {
  const ending = repeat?.ending
  if (!ending || ending.mode === 'omit' || !(endsWithSingle(items) || endsWithSlips(items))) return false
  const worked = ending.items.filter(works)
  const [only, ...others] = worked
  if (only?.type !== 'work' || others.length > 0 || !isClosing(only)) return false
  const last = items.findLast(works)
  return last?.type === 'work' && isAlike(only.stitch, last.stitch)
}
