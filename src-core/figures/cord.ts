/** The cord of a garland, on paper and in the window: how it hangs, what it goes through, what is fastened to it. */
import type { GarlandAccount, GarlandItem, Point } from '../../shared-types/plan'
import { remembered } from '../memo'
import type { Colour, FigureItem, Paint, Path, TextWeight } from './figure'
import { drawPath, drawText } from './figure'
import { circlePath, linePath, polygonPath } from './path'

/** What a cord is drawn with; lengths in units of the drawing. */
export interface CordLook {
  /** A line, or a band and before it its rim. */
  readonly strands: readonly Paint[]
  readonly loops: Paint
  /** Longest piece of a tie that is shown. */
  readonly tie: number
  readonly hook: Paint & { readonly radius: number }
  readonly bead: Paint & { readonly least: number }
  /** The line of the wall, and how far beside the hooks it goes on; not drawn without. */
  readonly wall?: Paint & { readonly beyond: number }
  /** Places that things are fastened by, each in these paints; not drawn without. */
  readonly fastenings?: { readonly radius: number; readonly paints: readonly Paint[] } | undefined
}

/** How a plan lies on its drawing, and which places across it (plan mm) are shown. */
interface CordDrawing {
  readonly scale: number
  readonly left?: number
  readonly top?: number
  readonly shows?: (x: number) => boolean
}

/** Under this a loop is hidden in the cord. mm. */
const LEAST_LOOP = 0.5

/** Where the cord slopes, what hangs straight down is fastened a little above or below it: from there to the cord. */
const loopsOf = remembered(({ line, items }: GarlandAccount): (readonly [Point, Point])[] => {
  let at = 1
  return items.flatMap(({ held }) =>
    held.flatMap((place): (readonly [Point, Point])[] => {
      while (at > 1 && line[at - 1]!.x > place.x) at--
      while (at < line.length - 1 && line[at]!.x < place.x) at++
      const [a, b] = [line[at - 1], line[at]]
      if (!a || !b || b.x <= a.x || place.x < a.x || place.x > b.x) return []
      const y = a.y + ((b.y - a.y) * (place.x - a.x)) / (b.x - a.x)
      return Math.abs(y - place.y) < LEAST_LOOP ? [] : [[place, { x: place.x, y }]]
    }),
  )
})

/**
 * A cord: what lies under the motifs that hang from it, and what over them. A bead is thicker than a motif and has
 * the cord in its middle, so that it lies over both.
 */
export function cordItems(
  garland: GarlandAccount,
  { strands, loops, tie, hook, bead, wall, fastenings }: CordLook,
  { scale, left = 0, top = 0, shows = () => true }: CordDrawing,
): { under: FigureItem[]; over: FigureItem[] } {
  const { line, hooks, cord, items, swags } = garland
  const at = ({ x, y }: Point): Point => ({ x: left + x * scale, y: top + y * scale })
  const seen = hooks.filter(({ x }) => shows(x))
  const [first, last] = [hooks[0], hooks.at(-1)]
  const circles = (places: readonly Point[], radius: number): Path =>
    places.map(at).flatMap(({ x, y }) => circlePath(x, y, radius))
  const long = Math.min(tie, cord.ties.length * scale)
  const ties = seen
    .filter((place) => long > 0 && (place === first || place === last))
    .map(at)
    .flatMap(({ x, y }) => linePath(x, y, x, y + long))
  const strand = [...polygonPath(line.map(at), false), ...ties]
  const looped = loopsOf(garland)
    .filter(([{ x }]) => shows(x))
    .flatMap((ends) => polygonPath(ends.map(at), false))
  const [from, to] = [at(first ?? ORIGIN), at(last ?? ORIGIN)]
  return {
    under: [
      ...(wall && swags
        ? [drawPath(linePath(from.x - wall.beyond, from.y, to.x + wall.beyond, to.y), wall)]
        : []),
      ...strands.map((paint) => drawPath(strand, paint)),
      ...(looped.length > 0 ? [drawPath(looped, loops)] : []),
      drawPath(circles(seen, hook.radius), hook),
    ],
    over: [
      ...items
        .filter((item) => item.bead !== '' && shows(item.x))
        .map((item) => drawPath(circles([item], Math.max(bead.least, (item.extent / 2) * scale)), bead)),
      ...(fastenings?.paints.map((paint) =>
        drawPath(
          circles(
            items.flatMap(({ held }) => held),
            fastenings.radius,
          ),
          paint,
        ),
      ) ?? []),
    ],
  }
}

const ORIGIN: Point = { x: 0, y: 0 }

interface NumberLook {
  /** Points. */
  readonly size: number
  readonly weight?: TextWeight
  readonly colour?: Colour
  /** What each number takes of the drawing, across. */
  readonly room: number
}

/**
 * The number of each thing on the cord where `seat` has it (its middle and its baseline on the drawing); every
 * second, third… where they are close.
 */
export function cordNumbers(
  { items }: GarlandAccount,
  { size, room, ...style }: NumberLook,
  scale: number,
  seat: (item: GarlandItem, place: number) => Point | null,
): FigureItem[] {
  const pitch = (((items.at(-1)?.x ?? 0) - (items[0]?.x ?? 0)) * scale) / Math.max(1, items.length - 1)
  const every = Math.max(1, Math.ceil(room / Math.max(pitch, 1e-3)))
  return items.flatMap((item, i) => {
    const at = i % every === 0 && seat(item, i)
    return at ? [drawText(String(i + 1), at.x, at.y, size, { ...style, anchor: 'middle' })] : []
  })
}
