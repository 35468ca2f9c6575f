/**
 * Distances that are remembered for as long as both outlines lie where they lay: a drag moves one of many items,
 * and what the others keep from each other stays what it was.
 */
import { areaDistance, boxDistance, insideDistance } from '../../geometry/edges'
import type { Edges } from '../../geometry/edges'
import type { Millimetres } from '../../units/quantity'

interface Known {
  readonly distance: Millimetres
  /** The distance is exact below this; one as large as this may be larger. */
  readonly limit: Millimetres
}

const pairs = new WeakMap<Edges, WeakMap<Edges, Known>>()

/** As `areaDistance`: the distance between two areas; what is not below `limit` may be told as `limit`. */
export function distanceOf(a: Edges, b: Edges, limit: Millimetres): Millimetres {
  if (boxDistance(a.box, b.box) >= limit) return limit
  let others = pairs.get(a)
  if (!others) pairs.set(a, (others = new WeakMap()))
  const known = others.get(b)
  if (known && (known.distance < known.limit || limit <= known.limit)) return Math.min(known.distance, limit)
  const distance = areaDistance(a, b, limit)
  others.set(b, { distance, limit })
  return distance
}

const kept = new WeakMap<Edges, { readonly outer: Edges; readonly distance: Millimetres }>()

/** As `insideDistance`: how far an outline keeps from the line of the one that it lies in. */
export function distanceWithin(inner: Edges, outer: Edges): Millimetres {
  const known = kept.get(inner)
  if (known?.outer === outer) return known.distance
  const distance = insideDistance(inner, outer)
  kept.set(inner, { outer, distance })
  return distance
}
