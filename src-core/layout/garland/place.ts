/** M51: where things hang on the wall, the line of the cord, and what runs into its neighbour there. */
import type { Point } from '../../../shared-types/plan'
import { placeOnCord } from '../../geometry/catenary'
import { boxOf, moveOutline, turnOutline, turnPoint } from '../../geometry/points'
import type { Box, Outline } from '../../geometry/points'
import { sharedArea } from '../../geometry/polygons'
import type { Millimetres, Radians } from '../../units/quantity'
import { LINE_POINTS, MOST_COLLISIONS, TOUCHING_AREA } from './constants'
import type { Hanging } from './hanging'
import type { Swags } from './read'
import { DEFAULTS } from '../../settled'

export interface HungItem {
  /** Where it hangs from. */
  readonly at: Point
  /** Centre of the motif. */
  readonly centre: Point
  /** Turned by the cord, clockwise. */
  readonly turn: Radians
  /** The outline, and the places that it hangs by, in place. */
  readonly outline: Outline
  readonly held: Outline
}

export interface HungGarland {
  readonly items: readonly HungItem[]
  readonly line: readonly Point[]
  readonly hooks: readonly Point[]
  readonly width: Millimetres
  readonly height: Millimetres
}

/** The place at so much cord from the first tie. */
function placeAt(swags: Swags | null, along: Millimetres): Point & { readonly slope: Radians } {
  if (!swags) return { x: along, y: 0, slope: 0 }
  const { cord, count } = swags
  const swag = Math.min(count - 1, Math.max(0, Math.floor(along / cord.length)))
  const { x, y, slope } = placeOnCord(cord, Math.min(cord.length, along - swag * cord.length))
  return { x: swag * cord.span + x, y, slope }
}

/** Hangs everything up, and moves it so that the box round cord and outlines begins at the origin. */
export function hangUp(
  hangings: readonly { readonly hanging: Hanging; readonly along: Millimetres }[],
  swags: Swags | null,
  length: Millimetres,
  alongCord: boolean,
): HungGarland {
  const items = hangings.map(({ hanging, along }): HungItem => {
    const { x, y, slope } = placeAt(swags, along)
    const turn = alongCord ? slope : 0
    const below = turnPoint({ x: 0, y: hanging.below }, turn)
    return {
      at: { x, y },
      centre: { x: x + below.x, y: y + below.y },
      turn,
      outline: moveOutline(turnOutline(hanging.outline, turn), x, y),
      held: moveOutline(turnOutline(hanging.held, turn), x, y),
    }
  })
  const count = swags?.count ?? DEFAULTS.swags.count
  const points = swags ? LINE_POINTS * count : 1
  const line = Array.from({ length: points + 1 }, (_, i) => {
    const { x, y } = placeAt(swags, (length * i) / points)
    return { x, y }
  })
  const hooks = Array.from({ length: count + 1 }, (_, i) => ({
    x: swags ? i * swags.cord.span : i * length,
    y: 0,
  }))
  const box = boxOf(line, ...items.map((item) => item.outline))
  const move = (point: Point): Point => ({ x: point.x - box.left, y: point.y - box.top })
  return {
    items: items.map(({ at, centre, turn, outline, held }) => ({
      at: move(at),
      centre: move(centre),
      turn,
      outline: moveOutline(outline, -box.left, -box.top),
      held: moveOutline(held, -box.left, -box.top),
    })),
    line: line.map(move),
    hooks: hooks.map(move),
    width: box.right - box.left,
    height: box.bottom - box.top,
  }
}

const apart = (a: Box, b: Box): boolean =>
  a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top

/** Pairs whose outlines overlap as they hang, each once, the earlier first; at most MOST_COLLISIONS. */
export function collisions(items: readonly HungItem[]): [number, number][] {
  const boxes = items.map((item) => boxOf(item.outline))
  const order = items.map((_, i) => i).sort((a, b) => boxes[a]!.left - boxes[b]!.left)
  const found: [number, number][] = []
  order.forEach((i, rank) => {
    for (let next = rank + 1; next < order.length && found.length < MOST_COLLISIONS; next++) {
      const j = order[next]!
      if (boxes[j]!.left >= boxes[i]!.right) break
      if (apart(boxes[i]!, boxes[j]!)) continue
      if (sharedArea([items[i]!.outline], [items[j]!.outline]) > TOUCHING_AREA)
        found.push(i < j ? [i, j] : [j, i])
    }
  })
  return found.sort((a, b) => a[0] - b[0] || a[1] - b[1])
}
