/** Spaces between stitches of one name, and those beside them that chains lead over. */
import type { Source } from './source'
import { answersTo } from './answers-to'
import { placeParts } from './tree'
import type { Item, Noun } from './tree'
import type { StitchName } from './stitch-name'

/** Whether a space lies between two stitches of that name. */
const isBetween = ({ places, state }: Source, at: number, name: StitchName): boolean => {
  const count = places.length
  const beside = (step: number): boolean => {
    for (let steps = 1; steps < count; steps++) {
      const to = at + step * steps
      if (!state.joined && (to < 0 || to >= count)) return false
      const place = places[(to + count) % count]!
      if (place.kind === 'stitch') return answersTo(place, name)
    }
    return false
  }
  return beside(-1) && beside(1)
}

const known = new WeakMap<Source['state'], Map<Noun, ReadonlySet<number>>>()

/** The spaces that answer to their chains and lie between those stitches; null where nothing is told, or none does. */
export function betweenNamed(source: Source, noun: Noun): ReadonlySet<number> | null {
  const { state, places } = source
  const name = noun.kind === 'space' ? noun.between : undefined
  if (!name || noun.kind !== 'space' || !state.ordered) return null
  const ofState = known.get(state) ?? new Map<Noun, ReadonlySet<number>>()
  known.set(state, ofState)
  let meant = ofState.get(noun)
  if (!meant) {
    const chained = places.flatMap(({ kind, chains }, at) =>
      kind === 'space' && chains === noun.chains ? [at] : [],
    )
    meant = new Set(chained.filter((at) => isBetween(source, at, name)))
    ofState.set(noun, meant)
  }
  return meant.size > 0 ? meant : null
}

/** Spaces that chains lead over, since others of their size are told apart by the stitches around them. */
export function besideNamed(source: Source, items: readonly Item[]): ReadonlySet<number> {
  const passed = new Set<number>()
  for (const { noun } of placeParts(items)) {
    const meant = betweenNamed(source, noun)
    if (!meant || noun.kind !== 'space') continue
    source.places.forEach(({ kind, chains }, at) => {
      if (kind === 'space' && chains === noun.chains && !meant.has(at)) passed.add(at)
    })
  }
  return passed
}
