/**
 * Rounds told by one before and by what has grown: "As Rnd 3, but with 2 groups on each side", "Continue as before,
 * having 1 more sc between increases". The words differ, the work does not: it is the round once more on what there is
 * now, so the round itself says how much more there is.
 */
import { isError } from './laps'
import { gatherLoose } from './loose-groups'
import type { Reading } from './reading'
import { workRound } from './rounds'
import type { Attempt } from './rounds'
import { statedStitches } from './told-counts'
import type { Span } from './tokens'
import { isSlip } from './stitch-name'
import { betweenGroups, hasGapsBeside, usesAllGaps } from './side-gaps'
import type { GroupItem, Item, Place, PlacePart, RoundNode, RoundsTree, StarItem, WorkItem } from './tree'

type Items = readonly Item[]

const isBetween = (items: Items): boolean => {
  const at = items.findIndex(({ type }) => type === 'chain')
  const makes = (item: Item) => item.type === 'work' || (item.type === 'chain' && items.indexOf(item) !== at)
  return at >= 0 && items.slice(at + 1).some(makes)
}

/** "(2 dc, ch 2, 2 dc) in next ch-2 sp": a corner of the round. */
export const isCorner = (item: Item): boolean =>
  (item.type === 'group' || item.type === 'placed') && item.place !== null && isBetween(item.items)

/** "dc in next 5 dc": a run of plain stitches, each in the next one; what it goes over. */
export function runOf(item: Item): PlacePart | null {
  if (item.type !== 'work' || item.place?.parts.length !== 1 || item.place.over) return null
  if ((item.count ?? 1) !== 1 || item.stitch.form !== 'plain' || isSlip(item.stitch)) return null
  const [part] = item.place.parts
  const next = part!.which === 'next' || part!.which === 'last'
  return next && part!.noun.kind === 'stitch' && !part!.round && !part!.around ? part! : null
}

const withPart = (item: WorkItem, part: PlacePart): WorkItem => ({
  ...item,
  place: { ...item.place!, parts: [part] },
})

/** Each run of stitches as far as the next corner, the last one to the end. */
function toCorners(items: Items, closes: boolean): Items {
  const lastCorner = items.findLastIndex(isRound)
  return items.map((item, at): Item => {
    if (item.type === 'star') return { ...item, items: toCorners(item.items, false) }
    const part = runOf(item)
    if (!part) return item
    const to = closes && at > lastCorner ? 'end' : 'corner'
    return withPart(item as WorkItem, { ...part, which: 'each', count: 1, each: true, extent: { to } })
  })
}

/** A corner, or a repeat that has some. */
const isRound = (item: Item): boolean => isCorner(item) || (item.type === 'star' && item.items.some(isCorner))

/** "3 dc in next ch-1 sp": what goes into a space or gap of the side, so often on each side. */
export const isOnSide = (item: Item): item is WorkItem | GroupItem => {
  if ((item.type !== 'work' && item.type !== 'group') || item.place?.parts.length !== 1) return false
  const [part] = item.place.parts
  const kind = part!.noun.kind
  const space = kind === 'gap' || (kind === 'space' && !part!.noun.corner)
  const one = (part!.which === 'next' || part!.which === 'last') && part!.count === 1
  return space && one && !isCorner(item)
}

/** "…, ending 2 dc in last sp": the last side grows as the others do. */
const grownEnding = ({ repeat }: StarItem, times: number): StarItem['repeat'] =>
  repeat?.ending
    ? { ...repeat, ending: { ...repeat.ending, items: withSpaces(repeat.ending.items, times) } }
    : repeat

/** Sides on which so many spaces are worked, each with the chains behind it. */
function withSpaces(items: Items, times: number): Items {
  const grown: Item[] = []
  for (let at = 0; at < items.length; at++) {
    const item = items[at]!
    if (item.type === 'star')
      grown.push({ ...item, items: withSpaces(item.items, times), repeat: grownEnding(item, times) })
    else if (item.type === 'group' && !item.place)
      grown.push({ ...item, items: withSpaces(item.items, times) })
    else if (!isOnSide(item)) grown.push(item)
    else {
      let end = at + 1
      while (items[end]?.type === 'chain') end++
      const unit = items.slice(at, end)
      for (let lap = 0; lap < times; lap++) grown.push(...unit)
      // Others alike behind it are of the same side.
      while (items[end] && isOnSide(items[end]!)) {
        end++
        while (items[end]?.type === 'chain') end++
      }
      at = end - 1
    }
  }
  return grown
}

/** Corners, and the yarn joined in one, at the corners that there are now: "any ch-1 sp" below was one of them. */
function atCorners(items: Items): Items {
  const toCorner = (place: Place): Place => {
    const [part, ...more] = place.parts
    const moves = part && more.length === 0 && part.noun.kind === 'space' && part.which !== 'same'
    return moves ? { ...place, parts: [{ ...part, noun: { kind: 'corner' } }] } : place
  }
  return items.map((item): Item => {
    if ('items' in item && !isCorner(item)) return { ...item, items: atCorners(item.items) } as Item
    const leads = item.type === 'colour' || (item.type === 'work' && isSlip(item.stitch))
    if ((!leads && !isCorner(item)) || !('place' in item) || !item.place) return item
    return { ...item, place: toCorner(item.place) }
  })
}

/** Runs of stitches so much longer: in the repeat by `more`, before and behind it by `outside`. */
function withRuns(items: Items, more: number, outside: number): Items {
  const longer = (item: Item, by: number): Item => {
    const part = runOf(item)
    return part ? withPart(item as WorkItem, { ...part, count: part.count + by }) : item
  }
  // "Sc around"-like runs of a bracket that is repeated are those of a repeat.
  const repeats = (item: Item): item is Extract<Item, { type: 'star' | 'group' }> =>
    item.type === 'star' || (item.type === 'group' && !item.place && (item.times !== null || item.around))
  return items.map((item) =>
    repeats(item) ? { ...item, items: item.items.map((each) => longer(each, more)) } : longer(item, outside),
  )
}

/** Work in "next st" alone is a run of one. */
const bareRuns = (items: Items): Items =>
  items.map((item): Item => {
    if (item.type === 'star' || (item.type === 'group' && !item.place))
      return { ...item, items: bareRuns(item.items) }
    if (item.type !== 'work' || item.place || item.stitch.form !== 'plain' || isSlip(item.stitch)) return item
    const { start, end, line, column } = item
    const span = { start, end, line, column }
    const part: PlacePart = {
      which: 'next',
      count: item.count ?? 1,
      each: false,
      noun: { kind: 'stitch', name: null },
      extent: null,
      loop: null,
      around: false,
      round: null,
      unworked: false,
      asBeginning: false,
      nounSpan: span,
      ...span,
    }
    return { ...item, count: null, place: { parts: [part], over: false, ...span } }
  })

/** Most spaces to a side, and most stitches that a run grows by: nobody tells more by reference (ours). */
const MOST = { spaces: 14, stitches: 8 }

/** The ways in which a round may have grown, the likeliest first; `gaps`: groups lie side by side below. */
function* waysToGrow(items: Items, gaps: boolean): Generator<Items> {
  const repeated = items.flatMap((item) =>
    item.type === 'star' || (item.type === 'group' && !item.place) ? item.items : [],
  )
  const all = [...items, ...repeated]
  const cornered = all.some(isCorner)
  if (gaps && cornered && all.some(isOnSide))
    for (let times = 2; times <= MOST.spaces; times++) {
      const between = betweenGroups(atCorners(withSpaces(items, times)))
      if (between) yield between
    }
  const run = all.find((item) => runOf(item))
  if (cornered && run) {
    const sides = toCorners(items, true)
    yield sides
    // A round that closed behind its last corner has stitches of it to work now.
    const corner = sides.findLastIndex(isRound)
    const part = { ...runOf(run)!, which: 'each', count: 1, each: true, extent: { to: 'end' } } as const
    yield [...sides.slice(0, corner + 1), withPart(run as WorkItem, part), ...sides.slice(corner + 1)]
  }
  if (all.some(isOnSide))
    for (let times = 2; times <= MOST.spaces; times++) {
      const spaced = withSpaces(items, times)
      yield spaced
    }
  const plain = cornered ? [] : bareRuns(items)
  const runs = plain.flatMap((item) => ('items' in item ? item.items : [item])).filter((item) => runOf(item))
  if (runs.length === 0) return
  for (let more = 1; more <= MOST.stitches; more++) {
    for (const outside of new Set([0, more, Math.ceil(more / 2), Math.floor(more / 2)]))
      yield withRuns(plain, more, outside)
    yield withFirstRun(withRuns(plain, more, 0), runs[0] as WorkItem, more)
  }
}

/** "Ch 3, 2 dc in next st, *dc in next st, …": the chain is the first run by itself, and gets others beside it. */
function withFirstRun(items: Items, run: WorkItem, count: number): Items {
  const chain = items.findIndex(({ type }) => type === 'chain')
  const at = items[chain + 1]?.type === 'statement' ? chain + 2 : chain + 1
  const part = { ...runOf(run)!, which: 'next', count } as const
  return [...items.slice(0, at), withPart(run, part), ...items.slice(at)]
}

/** Findings besides a count that differs: where there are none, the round goes round. */
const goesRound = ({ work, account }: Attempt): boolean =>
  !work.open &&
  account.made !== null &&
  usesAllGaps(work) &&
  work.findings.every(
    (found) =>
      found.code === 'rounds/wrong-end-count' || (!isError(found) && found.code !== 'rounds/stitches-passed'),
  )

/** The round as it has grown: the first way that goes round and comes to the count that is stated, else that goes round; null where none does. */
function grown(
  reading: Reading,
  tree: Omit<RoundsTree, 'repeats'>,
  node: RoundNode,
  number: number,
  items: Items,
  counts: Items,
): Items | null {
  let found: Items | null = null
  const stated = statedStitches(counts)
  const gaps = reading.base.kind === 'round' && hasGapsBeside(reading.base.state)
  for (const way of waysToGrow(items, gaps)) {
    const made = workRound(reading, tree, node, number, [...way, ...counts])
    if (!goesRound(made)) continue
    found ??= way
    if (stated === null || made.account.made === stated) return way
  }
  return found
}

/** Its stitches gathered into the spaces that they are told before, where groups stand side by side below. */
function gathered(reading: Reading, { text }: Pick<RoundsTree, 'text'>, items: Items): Items {
  const { base } = reading
  const known = reading.gathered.get(items)
  if (known || base.kind !== 'round' || !hasGapsBeside(base.state)) return known?.items ?? items
  return gatherLoose(items, text)?.items ?? items
}

/** A round that is worked again on what has grown; where no way of growing goes round, words that cannot be read. */
export function grownItems(
  reading: Reading,
  tree: Omit<RoundsTree, 'repeats'>,
  node: RoundNode,
  number: number,
  again: readonly Item[],
  behind: readonly Item[],
  grows: Span,
): readonly Item[] {
  // What leads to its beginning and what closes it is told by the round that is worked again.
  const counts = behind.filter(({ type }) => ['count', 'note', 'statement'].includes(type))
  const found = grown(reading, tree, node, number, gathered(reading, tree, again), counts)
  return found ? [...found, ...counts] : [{ type: 'note', effect: null, unread: 'work', ...grows }, ...counts]
}
