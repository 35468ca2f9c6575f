/**
 * Scatter: as many items as a panel takes at a least distance, by Poisson-disc sampling (R. Bridson, "Fast Poisson
 * disk sampling in arbitrary dimensions", SIGGRAPH sketches 2007). Each item is a disc or an outline; distances are
 * those of the outlines themselves. The same seed gives the same scatter.
 */
import type { Point } from '../../../shared-types/plan'
import { areaDistance, indexEdges, insideDistance, pointDistance } from '../../geometry/edges'
import type { Edges } from '../../geometry/edges'
import { placeOutline } from '../../geometry/place'
import { contains, distance, reachOf } from '../../geometry/points'
import type { Outline } from '../../geometry/points'
import { seededRandom } from '../../units/random'
import type { Random } from '../../units/random'
import type { Degrees, Millimetres } from '../../units/quantity'
import { MOST_ARRANGED } from './arranged'
import type { ArrangedItem } from './arranged'

/** A disc about the item's centre, or an outline about it. */
type ScatterShape = { readonly radius: Millimetres } | { readonly outline: Outline }

interface ScatterOptions {
  /** Edge of the panel. */
  readonly panel: Outline
  /** What stays free along the edge. */
  readonly allowance?: Millimetres
  /** Laid by turns, in this order as far as there is room. */
  readonly shapes: readonly ScatterShape[]
  /** Least distance between outlines. */
  readonly distance: Millimetres
  readonly seed: number
  /** Left out: every item turned by chance. */
  readonly turn?: Degrees
  readonly most?: number
  /** What lies there already and is kept clear. */
  readonly taken?: readonly Outline[]
}

interface ScatteredItem extends ArrangedItem {
  /** Index of its shape. */
  readonly shape: number
}

/** Tries round one item before it is left (Bridson's k). */
const TRIES = 30
/** Throws anywhere on the panel, at the start and after no item has room beside it, before it is full. */
const THROWS = 60

interface Laid extends ScatteredItem {
  readonly reach: Millimetres
  readonly edges: Edges | null
}

/** Items in the order laid. Empty where a number is no measure, or where there is no room for even one. */
export function scatter(options: ScatterOptions): ScatteredItem[] {
  const { panel, shapes, distance } = options
  const usable =
    shapes.length > 0 && panel.length > 2 && distance >= 0 && (options.allowance ?? 0) >= 0 &&
    Number.isFinite(distance + (options.allowance ?? 0) + (options.turn ?? 0) + options.seed) // prettier-ignore
  return usable ? new Scatter(options).fill() : []
}

class Scatter {
  private readonly random: Random
  private readonly panel: Edges
  private readonly laid: Laid[] = []
  private readonly cells = new Map<string, Laid[]>()
  private readonly cell: Millimetres
  /** Distance of centres, at the least and surely enough, for any two shapes. */
  private readonly nearest: Millimetres
  private readonly reaches: readonly Millimetres[]
  /** Radius of a disc that each shape covers whole. */
  private readonly inner: readonly Millimetres[]
  private readonly taken: readonly Edges[]
  private readonly most: number

  constructor(private readonly options: ScatterOptions) {
    this.random = seededRandom(options.seed)
    this.panel = indexEdges(options.panel)
    this.taken = (options.taken ?? []).map(indexEdges)
    this.most = Math.min(MOST_ARRANGED, options.most ?? MOST_ARRANGED)
    this.reaches = options.shapes.map((shape) => ('radius' in shape ? shape.radius : reachOf(shape.outline)))
    this.inner = options.shapes.map(innerReach)
    const smallest = this.inner.reduce((a, b) => Math.min(a, b))
    const farthest = this.reaches.reduce((a, b) => Math.max(a, b))
    this.nearest = Math.max(2 * smallest + options.distance, 0.1)
    this.cell = Math.max(2 * farthest + options.distance, 0.1)
  }

  fill(): ScatteredItem[] {
    const active: Laid[] = []
    while (this.laid.length < this.most) {
      const from = active.length > 0 ? this.random.below(active.length) : -1
      const found = from < 0 ? this.throwAnywhere() : this.throwBeside(active[from]!)
      if (found) active.push(found)
      else if (from < 0) break
      else active.splice(from, 1)
    }
    return this.laid.map(({ x, y, turn, shape }) => ({ x, y, turn, shape }))
  }

  private throwAnywhere(): Laid | null {
    const { left, top, right, bottom } = this.panel.box
    for (let i = 0; i < THROWS; i++) {
      const x = left + this.random.next() * (right - left)
      const y = top + this.random.next() * (bottom - top)
      const laid = this.lay({ x, y })
      if (laid) return laid
    }
    return null
  }

  /** Somewhere between once and twice the least distance of centres away, evenly over the ring's area. */
  private throwBeside(item: Laid): Laid | null {
    const far = Math.max(2 * this.nearest, item.reach + this.cell)
    for (let i = 0; i < TRIES; i++) {
      const share = this.random.next()
      const radius = Math.sqrt(this.nearest ** 2 + share * (far ** 2 - this.nearest ** 2))
      const angle = 2 * Math.PI * this.random.next()
      const laid = this.lay({ x: item.x + radius * Math.cos(angle), y: item.y + radius * Math.sin(angle) })
      if (laid) return laid
    }
    return null
  }

  private lay(centre: Point): Laid | null {
    const shape = this.laid.length % this.options.shapes.length
    const form = this.options.shapes[shape]!
    const own = this.inner[shape]! + this.options.distance
    const turn = this.options.turn ?? Math.floor(this.random.next() * 360)
    const reach = this.reaches[shape]!
    if (!contains(this.panel.outline, centre)) return null
    // Centres nearer than both discs can be: spares the look at outlines.
    const near = this.beside(centre)
    if (near.some((other) => distance(centre, other) < own + this.inner[other.shape]!)) return null
    const edges = 'radius' in form ? null : indexEdges(placeOutline(form.outline, { ...centre, turn }))
    const item: Laid = { ...centre, turn, shape, reach, edges }
    if (!this.fits(item) || near.some((other) => !this.apart(item, other))) return null
    this.laid.push(item)
    const key = this.keyOf(centre.x, centre.y)
    this.cells.set(key, [...(this.cells.get(key) ?? []), item])
    return item
  }

  private fits(item: Laid): boolean {
    const allowance = this.options.allowance ?? 0
    const { distance } = this.options
    if (item.edges) {
      if (insideDistance(item.edges, this.panel) < allowance) return false
      return this.taken.every((other) => keepApart(item.edges!, other, distance))
    }
    if (pointDistance(item, this.panel) < allowance + item.reach) return false
    return this.taken.every(
      (other) => !contains(other.outline, item) && pointDistance(item, other) >= item.reach + distance,
    )
  }

  private apart(item: Laid, other: Laid): boolean {
    const { distance } = this.options
    const between = Math.hypot(item.x - other.x, item.y - other.y) - item.reach - other.reach
    if (between >= distance) return true
    if (!item.edges && !other.edges) return false
    if (item.edges && other.edges) return keepApart(item.edges, other.edges, distance)
    const [disc, outline] = item.edges ? [other, item.edges] : [item, other.edges!]
    return !contains(outline.outline, disc) && pointDistance(disc, outline) >= disc.reach + distance
  }

  private keyOf(x: number, y: number): string {
    return `${Math.floor(x / this.cell)},${Math.floor(y / this.cell)}`
  }

  private beside({ x, y }: Point): Laid[] {
    const near: Laid[] = []
    for (let i = -1; i <= 1; i++)
      for (let j = -1; j <= 1; j++)
        near.push(...(this.cells.get(this.keyOf(x + i * this.cell, y + j * this.cell)) ?? []))
    return near
  }
}

/** Whether two outlines keep a distance; at 0 they may touch but not overlap. */
function keepApart(a: Edges, b: Edges, distance: Millimetres): boolean {
  const limit = Math.max(distance, 1e-6)
  return areaDistance(a, b, limit) >= limit
}

/** Radius of a disc about the centre that the shape covers whole. */
function innerReach(shape: ScatterShape): Millimetres {
  if ('radius' in shape) return Math.max(0, shape.radius)
  const origin = { x: 0, y: 0 }
  return contains(shape.outline, origin) ? pointDistance(origin, indexEdges(shape.outline)) : 0
}
