/** Tips of petals that earlier stitches made: where "in top of next petal" and "in each tip" are worked. */
import type { Source } from './source'
import { TRAVELLED } from './source'
import { missing, sourceFor, takeAt } from './taking'
import type { Taking } from './taking'
import type { AroundPart, Laps } from './fits'
import { placeParts } from './tree'
import type { Item, PlacePart } from './tree'
import { hasBody, spend } from './work'
import type { Target, Work } from './work'

/** What stands between slip stitches, as indices of places; of a ring the last petal may go on in the first. */
function betweenSlips({ places, state }: Source): number[][] {
  const runs: number[][] = [[]]
  places.forEach(({ kind }, at) => {
    if (kind === 'slip') runs.push([])
    else runs.at(-1)!.push(at)
  })
  if (runs.length > 1 && state.joined) runs[0]!.unshift(...runs.pop()!)
  return runs
}

/** Stitches that share a place, with the spaces among them. */
function inGroups(source: Source): number[][] {
  const groups = new Set(source.places.map(({ group }) => group).filter((group) => source.isGroup(group)))
  return [...groups].map((group) => [...source.membersOf(group)])
}

/** The middle of a petal: chains at its sides are none of it; −1 where it has no stitch. */
function middleOf({ places }: Source, members: readonly number[]): number {
  const stands = (at: number): boolean => places[at]!.kind === 'stitch'
  const first = members.findIndex(stands)
  if (first < 0) return -1
  const petal = members.slice(first, members.findLastIndex(stands) + 1)
  return petal[(petal.length - 1) >> 1]!
}

const known = new WeakMap<Source, readonly number[]>()

/** The tip of each petal, in order; none where the round has no petals, or some of another kind. */
function tipsOf(source: Source): readonly number[] {
  const before = known.get(source)
  if (before) return before
  const slips = source.places.some(({ kind }) => kind === 'slip')
  const petals = slips ? betweenSlips(source) : inGroups(source)
  const tips = petals.map((members) => middleOf(source, members)).filter((at) => at >= 0)
  const kinds = new Set(tips.map((at) => source.places[at]!.kind))
  const found = tips.length > 1 && kinds.size === 1 ? tips : []
  known.set(source, found)
  return found
}

/** The tips that a place names: the next one, or all that are left; null where the round has no petals. */
export function tipTargets(work: Work, part: PlacePart, taking: Taking): Target[] | null {
  const source = sourceFor(work, part)
  if (!source?.state.ordered || source.state.unknown) return null
  const tips = new Set(tipsOf(source))
  if (tips.size === 0) return null
  // The sides of petals are left on purpose.
  work.picked = true
  const { kind } = source.places[[...tips][0]!]!
  const free = [...tips].filter((at) => source.used[at]! <= TRAVELLED).length
  const count = part.which === 'each' ? free : Math.max(1, part.count)
  return Array.from({ length: count }, () => {
    spend(work, part)
    const index = source.find(kind, 'tip', (_, at) => tips.has(at))
    if (index < 0) return missing(work, source, kind, part)
    // The sides of a petal are passed on the way, but for those behind a tip where the round begins.
    const begins = !hasBody(work) && /\bany\b/i.test(work.tree.text.slice(part.start, part.end))
    if (taking.as > TRAVELLED && !begins) source.passTo(index)
    return takeAt(work, source, index, part, taking)
  })
}

const isTip = ({ noun, extent, round }: PlacePart): boolean =>
  noun.kind === 'landmark' && noun.name === 'tip' && !extent && !round

/** "(Sc in tip of each petal, ch 5) around": the next one in each lap. */
const oneByOne = (items: readonly Item[]): readonly Item[] =>
  items.map((item) => {
    if (item.type !== 'work' || !item.place?.parts.some(isTip)) return item
    const parts = item.place.parts.map((part) =>
      isTip(part) && part.which === 'each' ? ({ ...part, which: 'next', each: false } as const) : part,
    )
    return { ...item, place: { ...item.place, parts } }
  })

/** How often a part goes around that goes from tip to tip, whatever the petals have between them; null for another part. */
export function tipLaps(
  work: Work,
  part: AroundPart,
  laps: Laps,
): (Laps & { readonly times: number }) | null {
  const named = [...placeParts(laps.body)].filter(({ which }) => which !== 'same')
  const [tip] = named
  if (!tip || !named.every(isTip) || work.flex.length > 0) return null
  const source = sourceFor(work, tip)
  if (!source?.state.ordered || source.state.unknown) return null
  const free = tipsOf(source).filter((at) => source.used[at]! <= TRAVELLED).length
  const kept = [...placeParts(part.rest)].filter(isTip).length
  const times = (free - kept) / named.length
  if (!Number.isInteger(times) || times < 1) return null
  return { body: oneByOne(laps.body), last: oneByOne(laps.last), times }
}
