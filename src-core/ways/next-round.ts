/**
 * The next round of a motif as its rounds grow: one more group on each side of a granny square, longer sides of a
 * solid one, more stitches between the increases of a disc. The words of the last round stay, with what has grown put
 * into them; whoever asks reads them and takes the first that goes round and grows as the rounds before did.
 */
import type { RoundsMotif, Terms } from '../../shared-types/project'
import { isSlip } from '../notation/stitch-name'
import { isCorner, isOnSide, runOf } from '../notation/growth'
import type { Item, RoundNode } from '../notation/tree'
import type { Span } from '../notation/tokens'
import { readMotif } from '../motif/rounds/read-motif'

/** Other words for a stretch of the text; nothing is taken away where it is empty. */
interface Splice {
  readonly start: number
  readonly end: number
  readonly text: string
}

type Items = readonly Item[]

/** Most stitches by which a run between increases or corners grows in one round (ours). */
const MOST_LONGER = 4

/** Whether an item is worked over and over: what stands in it is a lap. */
const isLap = (item: Item): item is Extract<Item, { type: 'star' | 'group' }> =>
  item.type === 'star' || (item.type === 'group' && !item.place && (item.times !== null || item.around))

/** The lists of items that follow each other: all of the round, and those of its repeats. */
const listsOf = (items: Items): Items[] => [
  items,
  ...items.flatMap((item) => (isLap(item) && !isSeveralUnits(item) ? listsOf(item.items) : [])),
]

/** "[3 dc in next ch-1 sp, ch 1] twice": all of it is groups of a side. */
const isSeveralUnits = (item: Item): boolean =>
  item.type === 'group' && !item.place && item.times !== null && item.items.some(isUnit)

/** What goes into a space of the side, apart from slip stitches that lead to one. */
const isUnit = (item: Item): boolean => isOnSide(item) && !(item.type === 'work' && isSlip(item.stitch))

/** The first item behind the chains from an index on. */
function behindChains(items: Items, from: number): number {
  let at = from
  while (items[at]?.type === 'chain') at++
  return at
}

/** The words of the next round, the likeliest first. */
export function* nextRounds(motif: RoundsMotif, terms: Terms): Generator<string> {
  const last = (motif.rounds?.length ?? 0) - 1
  const { reading, lines, entryOfLine } = readMotif(motif, terms)
  const own = reading.tree.rounds.filter(({ line }) => entryOfLine(line) === last)
  const [node] = own
  // One that repeats others, or several in one entry, say nothing that grows.
  if (own.length !== 1 || !node || node.broken || isSeveral(node)) return
  const { text } = reading.tree
  const from =
    node.heading && node.heading.start >= lines[last]!.start ? node.heading.end : lines[last]!.start
  const to = lines[last]!.start + motif.rounds![last]!.work.length
  const counts = countsIn(node.items, text)
  const seen = new Set<string>()
  const ways = [[], ...longerRuns(node.items, text), ...grownSides(node.items, text, terms)]
  for (const splices of ways) {
    const words = spliced(text, from, to, [...counts, ...splices])
    if (words === null || seen.has(words)) continue
    seen.add(words)
    yield words
  }
}

const isSeveral = ({ numbers }: RoundNode): boolean => numbers !== null && numbers[0] !== numbers[1]

/** Counts that the last round states are not those of the next one. */
const countsIn = (items: Items, text: string): Splice[] =>
  items.flatMap(({ type, start, end }): Splice[] => {
    if (type !== 'count') return []
    const before = /[\s,;:]*[([—–-]?\s*$/.exec(text.slice(0, start))?.[0] ?? ''
    const behind = /^ *[)\]]?/.exec(text.slice(end))?.[0] ?? ''
    return [{ start: start - before.length, end: end + behind.length, text: '' }]
  })

/** The text from one place to another with other words in it; null where two of them meet. */
function spliced(text: string, from: number, to: number, splices: readonly Splice[]): string | null {
  let [at, words] = [from, '']
  for (const { start, end, text: put } of [...splices].sort((a, b) => a.start - b.start)) {
    if (start < at || end > to) return null
    words += text.slice(at, start) + put
    at = end
  }
  return (words + text.slice(at, to)).replace(/^[\s:.]+/, '').trim()
}

/** One more group on each side. */
function* grownSides(items: Items, text: string, terms: Terms): Generator<Splice[]> {
  const lists = listsOf(items)
  if (!lists.some((list) => list.some(isCorner))) return
  const inside = lists.flatMap((list) => moreUnits(list, text))
  const unit = unitOf(lists, text, terms)
  const bare = unit === null || inside.length > 0 ? [] : lists.flatMap((list) => firstUnits(list, unit))
  // A round that begins within a corner, or on a side, has a side of its own before its first corner.
  const begun = unit === null ? [] : begunSide(items, unit, text)
  const ended = unit === null ? [] : lastSide(items, unit, text)
  for (const more of [[], begun])
    for (const end of [[], ended]) {
      const all = [...inside, ...bare, ...more, ...end]
      if (all.length > 0) yield all
    }
}

/** On sides that have groups: one more like the last of each. */
function moreUnits(list: Items, text: string): Splice[] {
  const found: Splice[] = []
  for (let at = 0; at < list.length; at++) {
    const item = list[at]!
    const several = severalOf(item, text)
    if (several) found.push(several)
    if (!isUnit(item)) continue
    const behind = behindChains(list, at + 1)
    // The last one of a side: others like it stand before it.
    if (list[behind] && isUnit(list[behind]!)) continue
    const end = list[behind - 1]!.end
    found.push({ start: end, end, text: `, ${text.slice(item.start, end)}` })
  }
  return found
}

/** "3 dc in each of next 2 ch-1 sps", "[3 dc in next ch-1 sp, ch 1] twice": one more. */
function severalOf(item: Item, text: string): Splice | null {
  if (item.type === 'group' && isSeveralUnits(item)) {
    const [close, words] = [item.items.at(-1)!.end, text.slice(item.items.at(-1)!.end, item.end)]
    const amount = /\b(?:once|twice|thrice|\d+(?= times))/.exec(words)
    if (!amount) return null
    const start = close + amount.index
    const isWord = !/\d/.test(amount[0])
    return { start, end: start + amount[0].length, text: `${item.times! + 1}${isWord ? ' times' : ''}` }
  }
  if ((item.type !== 'work' && item.type !== 'group') || item.place?.parts.length !== 1) return null
  const [part] = item.place.parts
  const { kind } = part!.noun
  if ((kind !== 'space' && kind !== 'gap') || part!.count < 2 || part!.extent) return null
  return numberIn(part!, text, part!.count + 1)
}

/** Another number in a stretch where it says one. */
function numberIn(span: Span, text: string, count: number): Splice | null {
  const number = /\b\d+\b(?!-)/.exec(text.slice(span.start, span.end))
  if (!number) return null
  const start = span.start + number.index
  return { start, end: start + number[0].length, text: String(count) }
}

interface Unit {
  readonly words: string
  readonly chains: string
}

/** The first group of a side, in the words of the corners: "3 dc in next ch-1 sp, ch 1". */
function unitOf(lists: readonly Items[], text: string, terms: Terms): Unit | null {
  for (const list of lists)
    for (const [at, item] of list.entries()) {
      if (!isCorner(item) || !('items' in item)) continue
      const group = item.items.at(-1)
      if (group?.type !== 'work' || group.place) continue
      const chain = list[at + 1]
      const work = text.slice(group.start, group.end)
      if (chain?.type !== 'chain') return { words: `${work} in next sp between groups`, chains: '' }
      const space = terms === 'US' ? `ch-${chain.count} sp` : `${chain.count}-ch sp`
      return { words: `${work} in next ${space}`, chains: `, ${text.slice(chain.start, chain.end)}` }
    }
  return null
}

/** On sides without groups: the first one, behind each corner and its chains. */
function firstUnits(list: Items, unit: Unit): Splice[] {
  return list.flatMap((item, at): Splice[] => {
    if (!isCorner(item)) return []
    const behind = behindChains(list, at + 1)
    // What ends the round with its last corner has no side behind it.
    if (behind === at + 1 && unit.chains !== '') return []
    const { end } = list[behind - 1]!
    return [{ start: end, end, text: `, ${unit.words}${unit.chains}` }]
  })
}

/** Of a round that begins with a part of a corner: its side before the first whole one. */
function begunSide(items: Items, unit: Unit, text: string): Splice[] {
  const first = items.findIndex((item) => isCorner(item) || isLap(item))
  const before = items.slice(0, Math.max(0, first))
  const worked = before.findIndex((item) => item.type === 'work' && item.place && !isSlip(item.stitch))
  if (worked < 0 || before.some((item) => severalOf(item, text) !== null)) return []
  const { end } = before[behindChains(before, worked + 1) - 1]!
  return [{ start: end, end, text: `, ${unit.words}${unit.chains}` }]
}

/** The side that leads to the join, where the last whole corner stands before it. */
function lastSide(items: Items, unit: Unit, text: string): Splice[] {
  const at = items.findLastIndex(isLap)
  const behind = items[at + 1]
  if (at < 0 || behind?.type === 'work') return []
  const corner = items.findLastIndex(isCorner)
  if (corner > at) return []
  const { end } = items[at]!
  const start = /[\s,;.]*$/.exec(text.slice(0, end))!.index
  return [{ start, end: start, text: `; ${unit.words}${unit.chains}` }]
}

/** More plain stitches between the increases or corners: by 1, 2, …, before and behind the repeat as may be. */
function* longerRuns(items: Items, text: string): Generator<Splice[]> {
  const laps = items.filter(isLap).flatMap(({ items: lap }) => lap)
  const inLaps = laps.filter((item) => isRun(item))
  const first = items.findIndex(isLap)
  const [before, behind] = [items.slice(0, first), items.slice(first + 1)].map((part) => part.filter(isRun))
  if (first >= 0 && inLaps.length > 0) {
    for (let more = 1; more <= MOST_LONGER; more++) {
      const shares = [...new Set([0, more, Math.floor(more / 2), Math.ceil(more / 2)])]
      for (const early of before!.length > 0 ? shares : [0])
        for (const late of behind!.length > 0 ? shares : [0])
          yield [
            ...inLaps.flatMap((item) => longer(item, more, text)),
            ...before!.flatMap((item) => longer(item, early, text)),
            ...behind!.flatMap((item) => longer(item, late, text)),
          ]
      if (before!.length === 0)
        yield [
          ...inLaps.flatMap((item) => longer(item, more, text)),
          ...firstRun(items, more, inLaps[0]!, text),
        ]
    }
    return
  }
  // "2 dc in each st around": in every other one of the next round.
  for (const item of items) {
    if (item.type !== 'work' || item.place?.parts[0]?.which !== 'each' || (item.count ?? 1) < 2) continue
    const stitch = text
      .slice(item.start, item.place.start)
      .replace(/^\d+\s+/, '')
      .replace(/\s+in\s*$/, '')
      .trim()
    const one = `*${stitch} in next st, ${item.count} ${stitch} in next st; rep from *`
    for (const end of ['around', `to last st, ${stitch} in last st`])
      yield [{ start: item.start, end: item.end, text: `${one} ${end}` }]
  }
}

/** "Ch 3, 2 dc in next st, *dc in next st, …": the chain is the first run by itself, and gets others beside it. */
function firstRun(items: Items, more: number, run: Item, text: string): Splice[] {
  const chain = items.findIndex(({ type }) => type === 'chain')
  if (chain < 0 || run.type !== 'work') return []
  const behind = items[chain + 1]
  const said = behind?.type === 'statement' ? behind.end : items[chain]!.end
  const end = said + /^ *[)\]]?/.exec(text.slice(said))![0].trimEnd().length
  const name = text.slice(run.stitch.start, run.stitch.end)
  const words = `, ${name} in next ${more > 1 ? `${more} sts` : 'st'}`
  return [{ start: end, end, text: words }]
}

/** Plain stitches, each in the next one: "dc in next 3 sts", "dc", "3 dc". */
const isRun = (item: Item): boolean =>
  runOf(item) !== null ||
  (item.type === 'work' && !item.place && item.stitch.form === 'plain' && item.stitch.stitch !== 'sl st')

function longer(item: Item, more: number, text: string): Splice[] {
  if (more === 0) return []
  const part = runOf(item)
  if (part) {
    const words = text.slice(part.start, part.end)
    const many = /^(.*\b(?:next|last)\b)( \d+)?(.*)$/.exec(words)
    if (!many) return []
    const noun =
      part.count === 1
        ? many[3]!.replace(/\bst(itch)?\b/, (one) => (one === 'st' ? 'sts' : 'stitches'))
        : many[3]!
    return [{ start: part.start, end: part.end, text: `${many[1]} ${part.count + more}${noun}` }]
  }
  if (item.type !== 'work') return []
  if (item.count === null) return [{ start: item.start, end: item.start, text: `${1 + more} ` }]
  const number = numberIn(item, text, item.count + more)
  return number ? [number] : []
}
