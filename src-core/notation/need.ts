/** What a part of a round takes of the round before, from its words alone: what one repeat of it uses. */
import { spaceKey } from './state'
import type { StitchKey } from '../stitches/table'
import type { Item, Noun, Place, PlacePart, RepeatClause, StarItem } from './tree'

export interface Need {
  stitches: number
  /** "ch-5", "sp" (any chain space) or "corner" → how many. */
  spaces: Map<string, number>
  gaps: number
  chains: number
  /** Depends on where it stands ("to next corner"). */
  dynamic: boolean
  /** Stretches up to the tip or valley of a petal: they share what is over. */
  landmarks: number
  /** Loops of chains that it makes. */
  loops: number
  /** Kinds of stitches that are named; null: any. */
  kinds: Set<StitchKey | null>
  /** Only stitches that the round between left out. */
  unworked: boolean
}

const nothing = (): Need => ({
  stitches: 0,
  spaces: new Map(),
  gaps: 0,
  chains: 0,
  dynamic: false,
  landmarks: 0,
  loops: 0,
  kinds: new Set(),
  unworked: false,
})

function add(sum: Need, other: Need, times = 1): void {
  sum.stitches += other.stitches * times
  sum.gaps += other.gaps * times
  sum.chains += other.chains * times
  sum.landmarks += other.landmarks * times
  sum.loops += other.loops * times
  sum.dynamic ||= other.dynamic
  sum.unworked ||= other.unworked
  for (const kind of other.kinds) sum.kinds.add(kind)
  for (const [key, count] of other.spaces) sum.spaces.set(key, (sum.spaces.get(key) ?? 0) + count * times)
}

/** Name of a space in counts: its chains, or what it is called. */
export function spaceName(noun: Noun): string | null {
  if (noun.kind === 'space')
    return noun.corner ? 'corner' : noun.chains === null ? 'sp' : spaceKey(noun.chains)
  if (noun.kind === 'corner') return 'corner'
  if (noun.kind === 'within' && noun.what === 'space') return 'sp'
  return null
}

function needOfPart(sum: Need, part: PlacePart, stepOver: number): void {
  if (
    part.which === 'same' ||
    part.which === 'made' ||
    part.which === 'from-hook' ||
    part.noun.kind === 'own'
  )
    return
  const count = part.which === 'nth' || part.which === 'any' ? 1 : part.count
  if (part.which === 'each' || part.which === 'every') {
    if (part.extent?.to === 'landmark') sum.landmarks += 1
    else sum.dynamic = true
    return
  }
  const space = spaceName(part.noun)
  if (space !== null) sum.spaces.set(space, (sum.spaces.get(space) ?? 0) + count * stepOver)
  else if (part.noun.kind === 'gap') sum.gaps += count
  else if (part.noun.kind === 'chain') sum.chains += count
  else if (part.noun.kind !== 'ring') {
    sum.stitches += count * stepOver
    sum.unworked ||= part.unworked
    const name = part.noun.kind === 'stitch' ? part.noun.name : null
    sum.kinds.add(name && name.form === 'plain' ? name.stitch : null)
  }
}

export function needOfPlace(sum: Need, place: Place, stepOver = 1): void {
  for (const part of place.parts) needOfPart(sum, part, stepOver)
}

function timesOf(clause: RepeatClause, closed: boolean): number {
  const amount = clause.amount ?? 1
  return closed || clause.said === 'in-all' ? amount : amount + 1
}

/** How often a star runs in all, where it says so; null where it goes around. */
export function starTimes(star: StarItem): number | null {
  if (!star.repeat || star.repeat.amount === null) return null
  return timesOf(star.repeat, star.closed)
}

/** Items up to `**`, or all. */
export function upToDouble(items: readonly Item[]): readonly Item[] | null {
  const at = items.findIndex((item) => item.type === 'double')
  return at < 0 ? null : items.slice(0, at)
}

/** Sums up items; `placed`: they go into one place that is named around them. */
export function needOf(items: readonly Item[], placed = false): Need {
  const sum = nothing()
  let chains = false
  for (const item of items) {
    switch (item.type) {
      case 'work': {
        const afterChains = chains
        chains = false
        const { stitch, place } = item
        const slip = stitch.stitch === 'sl st' && stitch.form === 'plain'
        const only = place?.parts.length === 1 ? place.parts[0]! : null
        // A stitch in the first one closes the round, a slip stitch in the last one a picot.
        const closes =
          only !== null &&
          only.noun.kind === 'stitch' &&
          only.round === null &&
          (only.which === 'first' || (slip && only.which === 'last' && afterChains))
        if (closes) break
        if (place) {
          const pairs = stitch.form === 'together' || stitch.form === 'decrease'
          const several = pairs && place.parts.some((part) => part.which === 'each')
          needOfPlace(sum, place)
          if (several) sum.dynamic = true
        } else if (!placed) {
          if (stitch.form === 'picot') break
          const each = stitch.form === 'together' || stitch.form === 'decrease' ? Math.max(2, stitch.size) : 1
          sum.stitches += (item.count ?? 1) * each
          sum.kinds.add(null)
        } else if (slip) break
        break
      }
      case 'chain':
        if (!chains) sum.loops += 1
        chains = true
        break
      case 'skip':
        needOfPlace(sum, item.place)
        break
      case 'group': {
        chains = false
        const inner = needOf(item.items, placed || item.place !== null)
        const times = item.times ?? 1
        if (item.around) sum.dynamic = true
        if (item.place) {
          add(sum, inner, times)
          const outer = item.times !== null && item.place.end !== item.end ? times : 1
          needOfPlace(sum, item.place, outer)
        } else add(sum, inner, times)
        break
      }
      case 'placed':
        add(sum, needOf(item.items, true))
        needOfPlace(sum, item.place)
        break
      case 'star': {
        const times = starTimes(item)
        if (times === null) sum.dynamic = item.repeat !== null || sum.dynamic
        add(sum, needOf(item.items, placed), times ?? 1)
        break
      }
      case 'colour':
        if (item.stitch && item.stitch.stitch !== 'sl st' && item.place) needOfPlace(sum, item.place)
        break
      case 'evenly':
        sum.dynamic = true
        break
      case 'described':
        if (item.place) needOfPlace(sum, item.place)
        break
      default:
        break
    }
  }
  return sum
}
