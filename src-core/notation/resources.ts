/** What a part of the text asks of the round that it is worked in, and what that round still has of it. */
import type { Need } from './need'
import { WORKED, cornerPlaces } from './source'
import type { Source } from './source'
import { chainsOf } from './state'
import { sourceFor } from './taking'
import type { Item, PlacePart } from './tree'
import { baseSource, sourceOf } from './work'
import type { Work } from './work'

/** "4 sts", "2 ch-3 sps", "1 corner". */
export function amountWords(count: number, kind: string): string {
  const plural = count === 1 ? '' : 's'
  if (kind === 'st') return `${count} st${plural}`
  if (kind === 'gap') return `${count} sp${plural} between sts`
  if (kind === 'corner') return `${count} corner${plural}`
  if (kind === 'sp') return `${count} sp${plural}`
  return `${count} ${kind} sp${plural}`
}

interface Resource {
  readonly kind: string
  readonly unit: number
  readonly free: number
}

/** The round that a part is worked in: the one its places name, else where the round is worked. */
export function partSource(work: Work, items: readonly Item[]): Source | null {
  for (const part of placeParts(items)) if (part.round) return sourceFor(work, part)
  const state = work.scope.round === null ? null : work.history.get(work.scope.round)
  return state ? sourceOf(work, state) : baseSource(work)
}

function* placeParts(items: readonly Item[]): Generator<PlacePart> {
  for (const item of items) {
    if ('place' in item && item.place) yield* item.place.parts
    if ('items' in item) yield* placeParts(item.items)
  }
}

export function freeOf(source: Source, kind: string, need: Need): number {
  if (kind === 'st') {
    // "sl st in sl st between petals": slip stitches are no stitches of the count, but can be worked in.
    if (need.kinds.size === 1 && need.kinds.has('sl st')) return source.free('slip')
    const any = need.kinds.size === 0 || need.kinds.has(null)
    const named = (stitch: string | null) => stitch === null || need.kinds.has(stitch as never)
    const there = source.places.some((place) => place.kind === 'stitch' && named(place.stitch))
    const open = (index: number) => !need.unworked || (source.state.touched[index] ?? 0) < WORKED
    return source.free('stitch', (place, index) => (any || !there || named(place.stitch)) && open(index))
  }
  if (kind === 'gap') return source.gapUsed.length - source.gapsTaken
  if (kind === 'corner') {
    const corners = cornerPlaces(source)
    if (source.total('space') === 0) return source.free('stitch', (_, index) => corners.has(index))
    return source.free('space', (_, index) => corners.has(index))
  }
  if (kind === 'sp') {
    // "next sp" takes the spaces that no other part of the repeat asks for by name.
    const named = [...need.spaces.keys()].filter((key) => key !== 'sp' && key !== 'corner').map(chainsOf)
    return source.free('space', (place) => !named.includes(place.chains))
  }
  return source.free('space', (place) => place.chains === chainsOf(kind))
}

export function unitOf(need: Need, kind: string): number {
  return kind === 'st' ? need.stitches : kind === 'gap' ? need.gaps : (need.spaces.get(kind) ?? 0)
}

/** What decides how often a part fits: its spaces where it has some, else its gaps, else its stitches. */
export function resources(source: Source, need: Need): Resource[] {
  const kinds =
    need.spaces.size > 0 ? [...need.spaces.keys()] : need.gaps > 0 ? ['gap'] : need.stitches > 0 ? ['st'] : []
  return kinds.map((kind) => ({ kind, unit: unitOf(need, kind), free: freeOf(source, kind, need) }))
}
