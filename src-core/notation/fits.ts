/** How many laps of a repeat fit: tried on forks of the round in hand. */
import { besideNamed } from './beside-named'
import { LIMITS } from './limits'
import { forkWork } from './fork'
import { errorsOf, takesSpace } from './laps'
import type { Lap } from './laps'
import { SKIPPED, TRAVELLED, WORKED } from './source'
import type { Source } from './source'
import { chainsOf, spaceKey } from './state'
import type { ItemRunner } from './stitching'
import { placeParts } from './tree'
import type { GroupItem, Item, Place, PlacePart, StarItem } from './tree'
import { hasBody, spend, spendLooking } from './work'
import type { Work } from './work'

export interface AroundPart {
  readonly item: GroupItem | StarItem
  readonly items: readonly Item[]
  readonly place: Place | null
  readonly lastCount: number
  /** "across to next corner". */
  readonly toCorner: boolean
  readonly rest: readonly Item[]
}

/** What of a kind is still free in the round that a lap is worked in. */
export function freeOf(source: Source, kind: string, lap: Lap, items: readonly Item[]): number {
  if (kind === 'gap') return (lap.after.sources.get(source.state) ?? source).gaps - source.gapsTaken
  if (kind === 'sp') return source.free('space', (place) => !lap.spaces.has(spaceKey(place.chains)))
  if (kind !== 'st') return source.free('space', (place) => place.chains === chainsOf(kind))
  if (lap.slips > 0) return source.free('slip') + (lap.stitches > 0 ? source.free('stitch') : 0)
  const parts = [...placeParts(items)]
  const names = parts.map(({ noun }) => (noun.kind === 'stitch' ? noun.name : null))
  const unworked = parts.some((part) => part.unworked)
  const named = (stitch: string | null) =>
    stitch === null || names.some((name) => name?.form === 'plain' && name.stitch === stitch)
  const any =
    names.length === 0 ||
    names.some((name) => name?.form !== 'plain') ||
    items.some(isBare) ||
    !source.places.some((place) => place.kind === 'stitch' && named(place.stitch))
  const open = (index: number) => !unworked || (source.state.touched[index] ?? 0) < WORKED
  return source.free('stitch', (place, index) => (any || named(place.stitch)) && open(index))
}

const isBare = (item: Item): boolean =>
  (item.type === 'work' && item.place === null) ||
  ('items' in item && item.type !== 'placed' && !('place' in item && item.place) && item.items.some(isBare))

/**
 * "Sl st in next dc, 5 dc in same st, sk 1, sc in next st, *sk 1, 5 dc in next st, …": the stitches that the slip stitches
 * went over stand for what a lap skips before its first; 0 where they do not.
 */
function slippedOver({ places, used }: Source, body: readonly Item[]): number {
  const begins = body.find(({ type }) => type !== 'note' && type !== 'count' && type !== 'statement')
  if (begins?.type !== 'skip' || begins.place.parts.length !== 1) return 0
  const { count } = begins.place.parts[0]!
  const stitches = used.filter((_, at) => places[at]!.kind === 'stitch')
  const slipped = stitches.slice(0, count).every((how) => how <= TRAVELLED)
  return slipped && (stitches[count] ?? 0) > TRAVELLED ? count : 0
}

/** Whether nothing is left over of what a part works into. */
function comesOut(
  work: Work,
  before: Work,
  source: Source,
  lap: Lap,
  body: readonly Item[],
  lastCount: number,
  overlaps: boolean,
): boolean {
  const worked = work.sources.get(source.state)
  if (!worked || work.open) return false
  const over = worked.over - (before.sources.get(source.state)?.over ?? 0)
  if (over > (overlaps ? 1 : 0)) return false
  if (overlaps) return over === 1 && work.elements[work.elements.length - 1]?.role === 'slip'
  if (errorsOf(work) > errorsOf(before)) return false
  if (lap.spaces.size === 0 && lap.gaps === 0) {
    const joined = work.joinedAt?.place
    const spare = joined?.kind === 'stitch' && worked.used[joined.index]! <= TRAVELLED ? 1 : 0
    // Beside stitches, slip stitches may be left: those at the tips of points.
    const left = lap.slips > 0 && lap.stitches === 0 ? worked.free('slip') : worked.free('stitch') - spare
    return left === 0 || left === lastCount || left === slippedOver(worked, body)
  }
  if (lap.gaps > 0 && lap.spaces.size === 0) return worked.gapsTaken === worked.gaps
  const beside = besideNamed(worked, work.node.items)
  return worked.places.every(
    (place, at) =>
      place.kind !== 'space' ||
      worked.used[at]! > TRAVELLED ||
      !takesSpace(lap, place.chains) ||
      beside.has(at),
  )
}

/** How often a lap that is tried looks through all places. */
const LOOKS_PER_LAP = 6

/** What uses nothing of the round before. */
export const TAKES_NOTHING = new Set<Item['type']>(['join', 'note', 'count', 'statement', 'chain'])

/** How often a part goes so that the round comes out even, tried on forks; null where no number of laps does. */
export function lapsThatFit(
  work: Work,
  part: AroundPart,
  laps: Laps,
  lap: Lap,
  run: ItemRunner,
): number | null {
  const { source } = lap
  if (!source) return null
  const most = source.places.length + source.gapUsed.length + 1
  // "*Ch 9, sl st in same st, sl st in next st": the last one closes where the first began.
  const chained = [...placeParts(laps.body)][0]?.which === 'same' && !hasBody(work)
  const over = source.over
  let trial = lap.after
  let times = 1
  const before = work.sources.get(source.state)?.over ?? 0
  if (over > before) times = 0
  const closesNext =
    laps.last === laps.body && part.rest.every(({ type }) => TAKES_NOTHING.has(type)) && !chained
  while (times > 0 && times < most) {
    const now = trial.sources.get(source.state)!
    const used = usedCount(now)
    spendLooking(work, LOOKS_PER_LAP * source.places.length, part.item)
    // Mostly nothing stands behind a repeat but the join: where a lap comes out even, that is all.
    if (closesNext && comesOut(trial, work, source, lap, laps.body, part.lastCount, false)) return times
    run(trial, laps.body)
    if (now.over > before || trial.open) break
    if (usedCount(now) === used) return null
    times++
  }
  for (const count of [...(chained ? [times + 1] : []), times, times + 1, times - 1, times - 2]) {
    if (count < 1 || count > LIMITS.repeats) continue
    trial = forkWork(work)
    for (let at = 1; at < count; at++) run(trial, laps.body)
    runLast(trial, laps.body, laps.last, run)
    const { repeated } = trial
    trial.repeated = Math.max(0, repeated - 1)
    run(trial, part.rest)
    if (comesOut(trial, work, source, lap, laps.body, part.lastCount, chained && count > times)) return count
  }
  const picks = !work.picked || [...placeParts(laps.body)].some(picksInGroup)
  if (!lap.after.picked || !picks || times === 0) return null
  // "…, ending last rep with sl st in first sc" takes none, so one more has room.
  const closing = forkWork(work)
  if (laps.last !== laps.body) {
    for (let at = 0; at < times; at++) run(closing, laps.body)
    runLast(closing, laps.body, laps.last, run)
  }
  const room = laps.last !== laps.body && closing.sources.get(source.state)!.over === before
  return room && errorsOf(closing) === errorsOf(work) ? times + 1 : times
}

/** "Center tr of next petal": the others of the petal are passed. */
const picksInGroup = ({ noun }: PlacePart): boolean => noun.kind === 'within' && noun.run !== 'all'

const usedCount = (source: Source): number =>
  source.count('stitch', SKIPPED) +
  source.count('space', SKIPPED) +
  source.count('slip', SKIPPED) +
  source.gapsTaken

export interface Laps {
  readonly body: readonly Item[]
  readonly last: readonly Item[]
}

export function runLaps(
  work: Work,
  part: AroundPart,
  body: readonly Item[],
  last: readonly Item[],
  times: number,
  run: ItemRunner,
): void {
  work.repeats.set(part.item, times)
  for (let lap = 1; lap <= times; lap++) {
    spend(work, part.item)
    if (lap === times) runLast(work, body, last, run)
    else run(work, body)
  }
}

/** The last repeat may close the round ("ending with ch 3, dc in first sc"), which no other one can. */
export function runLast(work: Work, body: readonly Item[], last: readonly Item[], run: ItemRunner): void {
  if (last === body) return run(work, last)
  const { repeated } = work
  work.repeated = 0
  run(work, last)
  work.repeated = repeated
}

/** What is left over of a kind is passed without being worked. */
export function skipRest(source: Source, kind: string): void {
  const wanted = kind === 'st' ? 'stitch' : 'space'
  source.places.forEach((place, index) => {
    if (place.kind === wanted && source.used[index]! <= TRAVELLED) source.used[index] = SKIPPED
  })
}
