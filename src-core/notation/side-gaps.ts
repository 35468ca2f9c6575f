/**
 * Grannies without chains along their sides: "3 tr in next sp" goes between two groups there, and into the chains at a
 * corner. Which is meant shows only by what goes in: a corner has chains of its own.
 */
import type { RoundState } from './state'
import { isSlip } from './stitch-name'
import { placeParts } from './tree'
import type { Item, Noun, Place, PlacePart } from './tree'
import { baseSource } from './work'
import type { Work } from './work'
import type { LeftPlace } from './worked'

const GAP: Noun = { kind: 'gap', of: 'group' }

/** "(3 tr, 2 ch, 3 tr)": with chains between stitches, as a corner has. */
const hasChainsWithin = (items: readonly Item[]): boolean => {
  const chain = items.findIndex(({ type }, at) => type === 'chain' && at > 0)
  return chain > 0 && items.slice(chain + 1).some(({ type }) => type === 'work')
}

const isBareSpace = ({ noun, which, round }: PlacePart): boolean =>
  noun.kind === 'space' &&
  noun.chains === null &&
  !noun.corner &&
  round === null &&
  (which === 'next' || which === 'each' || which === 'last')

/** The items of a round, with each space of no told size between two groups, unless a corner goes in; null where there is none. */
export function betweenGroups(items: readonly Item[]): readonly Item[] | null {
  let found = false
  const inPlace = (place: Place): Place => {
    const parts = place.parts.map((part) => (isBareSpace(part) ? { ...part, noun: GAP } : part))
    found ||= parts.some((part, at) => part !== place.parts[at])
    return { ...place, parts }
  }
  const one = (item: Item): Item => {
    // "Sl st to sp" leads to the corner where the round begins.
    if (item.type === 'work' && item.place && !isSlip(item.stitch))
      return { ...item, place: inPlace(item.place) }
    if (!('items' in item)) return item
    const inner = { ...item, items: item.items.map(one) }
    const corner = hasChainsWithin(item.items)
    return 'place' in inner && inner.place && !corner
      ? ({ ...inner, place: inPlace(inner.place) } as Item)
      : inner
  }
  const after = items.map(one)
  return found ? after : null
}

/** Whether groups of a round lie side by side with no chains between, while it has chains elsewhere. */
export function hasGapsBeside({ places, ordered, unknown }: RoundState): boolean {
  if (!ordered || unknown || places.every(({ kind }) => kind !== 'space')) return false
  const sizes = new Map<number, number>()
  for (const { group } of places) sizes.set(group, (sizes.get(group) ?? 0) + 1)
  const grouped = ({ kind, group }: LeftPlace): boolean =>
    kind === 'stitch' && group >= 0 && sizes.get(group)! > 1
  return places.some((place, at) => {
    const next = places[at + 1]
    return next !== undefined && grouped(place) && grouped(next) && next.group !== place.group
  })
}

/** Corners up to which a motif has as many as the round before, unless its text says otherwise (ours). */
const FEW = 6

const countCorners = ({ places }: RoundState): number =>
  places.filter(({ kind, corner }) => kind === 'space' && corner).length

/**
 * Whether a round that takes sides for corners has fewer corners than the one below: "*(…) in corner, 3 dc in next sp;
 * rep from * around" on four corners comes out even with two.
 */
export function losesCorners(below: RoundState, made: RoundState, items: readonly Item[]): boolean {
  const corners = countCorners(below)
  if (countCorners(made) >= corners) return false
  const isNamed = ({ noun }: PlacePart) => noun.kind === 'corner' || (noun.kind === 'space' && noun.corner)
  return corners <= FEW || [...placeParts(items)].some(isNamed)
}

/** Whether a round that goes between groups leaves none of their gaps out. */
export function usesAllGaps(work: Work): boolean {
  const source = baseSource(work)
  if (!source || source.gapsTaken === 0) return true
  // A beginning chain that is told apart from its group stands beside no gap.
  const groups = source.groupsBesideGaps
  const apart = groups !== null && groups[0] !== groups[1] && groups.indexOf(groups[0]!, 1) < 0
  return source.gapsTaken >= source.gaps - (apart ? 1 : 0)
}
