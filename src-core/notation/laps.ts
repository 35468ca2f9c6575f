/** What one lap of a repeat takes of the round before: it is worked on a fork, and what it took is counted. */
import { findingOf } from '../findings/finding'
import { forkWork } from './fork'
import { SKIPPED, TRAVELLED } from './source'
import type { Source } from './source'
import { spaceKey } from './state'
import type { ItemRunner } from './stitching'
import { placeParts } from './tree'
import type { CountEntry, Item } from './tree'
import { baseSource } from './work'
import type { Work } from './work'

export interface Lap {
  /** The round that it is worked in; null where it takes nothing of any. */
  readonly source: Source | null
  readonly stitches: number
  /** Slip stitches of the round before that it works into. */
  readonly slips: number
  /** "ch-5" → how many. */
  readonly spaces: ReadonlyMap<string, number>
  readonly gaps: number
  /** Loops of chains that it makes. */
  readonly loops: number
  /** The state after it. */
  readonly after: Work
}

/** "4 sts", "2 ch-3 sps". */
export function amountWords(count: number, kind: string): string {
  const plural = count === 1 ? '' : 's'
  if (kind === 'st') return `${count} st${plural}`
  if (kind === 'gap') return `${count} sp${plural} between sts`
  if (kind === 'corner') return `${count} corner${plural}`
  if (kind === 'sp') return `${count} sp${plural}`
  return `${count} ${kind} sp${plural}`
}

/** Whether an item is a repeat that goes on around. */
const goesAround = (item: Item): boolean =>
  (item.type === 'group' && item.around && !item.toCorner) ||
  (item.type === 'star' && item.repeat?.amount === null && !item.repeat.toCorner)

/** What stands behind a repeat; of another one that goes around, one lap is left. */
export function tailOf(items: readonly Item[]): readonly Item[] {
  return items.some(goesAround)
    ? items.flatMap((item) => (goesAround(item) && 'items' in item ? onceOf(item) : [item]))
    : items
}

/** One lap of a repeat. */
const onceOf = (item: Extract<Item, { readonly items: readonly Item[] }>): readonly Item[] =>
  item.type === 'group' && item.place ? [{ ...item, around: false, times: null }] : item.items

/** Whether a part takes all that is there ("in each rem st"), so that nothing can be said of one lap. */
export const sweeps = (items: readonly Item[]): boolean =>
  items.some((item) => item.type === 'evenly' || (item.type === 'group' && item.around)) ||
  [...placeParts(items)].some(({ which, extent }) => (which === 'each' || which === 'every') && !extent)

/** Stretches up to the tip or valley of a petal, which share what is over. */
export const landmarksIn = (items: readonly Item[]): number =>
  [...placeParts(items)].filter(({ extent }) => extent?.to === 'landmark').length

/** What was used meanwhile; where places are picked out of an earlier round, without those that were passed for them. */
function usedBetween(before: Source | undefined, after: Source, picks: boolean) {
  const least = picks ? SKIPPED : TRAVELLED
  const spaces = new Map<string, number>()
  let stitches = after.overStitches - (before?.overStitches ?? 0)
  let slips = 0
  after.places.forEach((place, at) => {
    if (after.used[at]! <= least || (before && before.used[at]! > least)) return
    if (place.kind === 'stitch') stitches++
    else if (place.kind === 'slip') slips++
    else spaces.set(spaceKey(place.chains), (spaces.get(spaceKey(place.chains)) ?? 0) + 1)
  })
  let over = after.overSpaces - (before?.overSpaces ?? 0)
  // Those that are missing are of the kind that is asked for.
  for (const [chains, count] of after.overByChains) {
    const more = count - (before?.overByChains.get(chains) ?? 0)
    if (more === 0) continue
    const key = spaceKey(chains)
    spaces.set(key, (spaces.get(key) ?? 0) + more)
    over -= more
  }
  const [only] = spaces.keys()
  if (over > 0 && only !== undefined) spaces.set(only, spaces.get(only)! + over)
  const gaps = after.gapsTaken + after.overGaps - (before ? before.gapsTaken + before.overGaps : 0)
  return { stitches, slips, spaces, gaps }
}

/** "next sp" takes spaces of any size that no other part asks for by its chains: they are counted as one kind. */
function asNamed(spaces: ReadonlyMap<string, number>, items: readonly Item[]): ReadonlyMap<string, number> {
  const named = new Set<string>()
  let any = false
  for (const { noun } of placeParts(items)) {
    if (noun.kind !== 'space' || noun.corner) continue
    if (noun.chains === null) any = true
    else named.add(spaceKey(noun.chains))
  }
  if (!any || spaces.size === 0) return spaces
  const kinds = new Map<string, number>()
  for (const [key, count] of spaces) {
    const kind = named.has(key) ? key : 'sp'
    kinds.set(kind, (kinds.get(kind) ?? 0) + count)
  }
  return kinds
}

/** Whether a space of so many chains is of a kind that a lap takes. */
export const takesSpace = (lap: Lap, chains: number): boolean =>
  lap.spaces.has(spaceKey(chains)) || lap.spaces.has('sp')

/** Works items on a fork and counts what they took. */
export function lapOf(work: Work, items: readonly Item[], run: ItemRunner): Lap {
  const after = forkWork(work)
  run(after, items)
  const base = baseSource(after)
  let found: Omit<Lap, 'loops' | 'after'> = {
    source: base,
    stitches: 0,
    slips: 0,
    spaces: new Map(),
    gaps: 0,
  }
  let most = 0
  for (const source of after.sources.values()) {
    const used = usedBetween(work.sources.get(source.state), source, after.picked && source !== base)
    const sum = used.stitches + used.slips + used.gaps + [...used.spaces.values()].reduce((a, b) => a + b, 0)
    if (sum <= most && source !== base) continue
    if (source === base && sum < most) continue
    most = sum
    found = { source, ...used, spaces: asNamed(used.spaces, items) }
  }
  let loops = 0
  for (let at = work.elements.length; at < after.elements.length; at++) {
    const { role } = after.elements[at]!
    if (role === 'space' && after.elements[at - 1]?.role !== 'space') loops++
  }
  return { ...found, loops, after }
}

/** Takes a kind of place: "st", "gap", "ch-5". */
export const unitOf = (lap: Lap, kind: string): number =>
  kind === 'st' ? lap.stitches + lap.slips : kind === 'gap' ? lap.gaps : (lap.spaces.get(kind) ?? 0)

/** What decides how often a lap fits: its spaces where it has some, else its gaps, else its stitches. */
export const kindsOf = (lap: Lap): readonly string[] =>
  lap.spaces.size > 0 ? [...lap.spaces.keys()] : lap.gaps > 0 ? ['gap'] : unitOf(lap, 'st') > 0 ? ['st'] : []

export const isError = (found: Work['findings'][number]): boolean => findingOf(found, '').severity === 'error'

export const errorsOf = (work: Work): number => work.findings.filter(isError).length

/** "Ch 5, * tr in ring, ch 1; rep from * until there are 16 tr": laps up to a count that takes in what stands there already. */
export function lapsUpTo({ count, noun }: CountEntry, work: Work, after: Work): number {
  const standing = ({ elements }: Work) => elements.filter((element) => element.standing).length
  const each = standing(after) - standing(work)
  const left = count - standing(work)
  return noun.kind === 'stitch' && each > 0 && left > 0 && left % each === 0 ? left / each : count
}
