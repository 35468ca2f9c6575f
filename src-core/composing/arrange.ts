/**
 * Arrangers on a project: a wreath, a row along a line, a corner spray, a scatter. What is not asked for follows
 * from the panel and the motifs: a wreath as wide as there is room, as many items as keep the asked distance.
 * Lengths in mm, turns in degrees clockwise.
 */
import polylabel from 'polylabel'
import type { Finding } from '../../shared-types/finding'
import type { Point } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { MOST_APPLIQUE_ITEMS } from '../fields/applique'
import { finding } from '../findings/finding'
import { areaDistance, indexEdges, insideDistance, pointDistance } from '../geometry/edges'
import { placeOutline } from '../geometry/place'
import { boxOf, directionOf, distance, reachOf } from '../geometry/points'
import type { Outline } from '../geometry/points'
import { APPLIQUE } from '../layout/applique/constants'
import type { Panel } from '../layout/applique/panel'
import type { ArrangedItem, Facing } from '../layout/arrangers/arranged'
import { rowAlong } from '../layout/arrangers/row'
import { scatter } from '../layout/arrangers/scatter'
import { cornerSpray, SPRAY_OPENING } from '../layout/arrangers/spray'
import { wreath } from '../layout/arrangers/wreath'
import { formatNumber } from '../units/format'
import { degrees } from '../units/quantity'
import type { Degrees, Millimetres } from '../units/quantity'
import { groundOf, isWithinSeam, middleOf } from './ground'
import type { AppliqueItem, Ground } from './ground'

export const FACINGS = ['outward', 'inward', 'along', 'up'] as const satisfies readonly Facing[]
export const CORNERS = ['top-left', 'top-right', 'bottom-right', 'bottom-left'] as const
export type Corner = (typeof CORNERS)[number]

/** One of the motifs that are laid by turns. */
export interface LaidByTurns {
  readonly motif: string
  readonly colourway?: string
}

export interface WreathWish {
  readonly how: 'wreath'
  readonly count?: number
  readonly centre?: Point
  /** Half of the width and of the height of the line that centres lie on. */
  readonly radiusX?: Millimetres
  readonly radiusY?: Millimetres
  readonly start?: Degrees
  readonly facing?: Facing
  readonly turn?: Degrees
}

export interface RowWish {
  readonly how: 'row'
  readonly points: readonly Point[]
  readonly closed?: boolean
  readonly count?: number
  readonly facing?: Facing
  readonly turn?: Degrees
}

export interface SprayWish {
  readonly how: 'spray'
  readonly corner: Corner
  readonly count?: number
  readonly first?: Millimetres
  readonly step?: Millimetres
  readonly opening?: Degrees
  readonly turn?: Degrees
}

export interface ScatterWish {
  readonly how: 'scatter'
  readonly distance?: Millimetres
  readonly seed: number
  readonly most?: number
  /** Left out: every item turned by chance. */
  readonly turn?: Degrees
}

export type Wish = WreathWish | RowWish | SprayWish | ScatterWish
/** A wish with every number in it. */
type Complete<W> = Required<Omit<W, 'turn' | 'most'>> & Pick<W, keyof W & ('turn' | 'most')>

/** Items of a spray that nobody counted: arcs of one, two and three. */
const SPRAY_COUNT = 6
/** From the corner to the first centre, in its reach: in a square corner a disc just keeps inside at √2. */
const SPRAY_FIRST = 1.5
/** No line is filled with more than this unasked. */
const MOST_UNASKED = 240
/** mm. Places are kept to a thousandth, and a scatter keeps that much more, so that rounding takes nothing away. */
const DUST = 0.002
const placed = (mm: number): number => Math.round(mm * 1000) / 1000

/** Those that have an outline, with it. */
function outlinesOf({ accounts }: Ground, turns: readonly LaidByTurns[]) {
  return turns.flatMap((laid) => {
    const account = accounts.get(laid.motif)
    return account ? [{ laid, outline: account.outline }] : []
  })
}

const reachOfAll = (outlines: readonly { readonly outline: Outline }[]): Millimetres =>
  outlines.reduce((most, { outline }) => Math.max(most, reachOf(outline)), 0)

/**
 * The middle of the room for a wreath, and how far it is from there to the seam line: the middle of the panel, or
 * of the largest circle within an outline of any other shape (its pole of inaccessibility).
 */
function roomOf(panel: Panel): { centre: Point; far: Millimetres } {
  const pieces = panel.inner.length > 0 ? panel.inner : [panel.outline]
  if (panel.shape !== 'outline') {
    const box = boxOf(...pieces)
    const far = Math.min(box.right - box.left, box.bottom - box.top) / 2
    return { centre: middleOf(panel), far }
  }
  const poles = pieces.map((piece) => {
    const [x = 0, y = 0] = polylabel([piece.map((p): [number, number] => [p.x, p.y])], 0.5)
    return { centre: { x: placed(x), y: placed(y) }, far: pointDistance({ x, y }, indexEdges(piece)) }
  })
  return poles.reduce((best, pole) => (pole.far > best.far ? pole : best))
}

/** The wish with everything that was left out; a wreath of one radius is a circle. */
export function completeWreath(
  ground: Ground & { readonly panel: Panel },
  turns: readonly LaidByTurns[],
  wish: WreathWish,
): Complete<WreathWish> {
  const outlines = outlinesOf(ground, turns)
  const room = roomOf(ground.panel)
  const widest = Math.max(1, placed(room.far - reachOfAll(outlines)))
  const radiusX = wish.radiusX ?? wish.radiusY ?? widest
  const round = {
    ...wish,
    centre: wish.centre ?? room.centre,
    radiusX,
    radiusY: wish.radiusY ?? radiusX,
    start: wish.start ?? 0,
    facing: wish.facing ?? ('outward' as const),
  }
  const about = Math.PI * (round.radiusX + round.radiusY)
  const lay = (count: number) => wreath({ ...round, count })
  return { ...round, count: wish.count ?? mostThatFit(outlines, ground.clearance, about, true, lay) }
}

/** The wish with everything that was left out. */
export function completeRow(ground: Ground, turns: readonly LaidByTurns[], wish: RowWish): Complete<RowWish> {
  const { points, closed = false } = wish
  const line = { ...wish, closed, facing: wish.facing ?? ('outward' as const) }
  const length = points.reduce((sum, point, i) => sum + (i > 0 ? distance(point, points[i - 1]!) : 0), 0)
  const about = closed && points.length > 1 ? length + distance(points[0]!, points.at(-1)!) : length
  const lay = (count: number) => rowAlong({ ...line, count })
  const count = wish.count ?? mostThatFit(outlinesOf(ground, turns), ground.clearance, about, closed, lay)
  return { ...line, count }
}

/** Openings of a spray that are tried until all of it keeps within the seam line, in degrees. */
const OPENINGS: readonly Degrees[] = [SPRAY_OPENING, 65, 60, 55, 50, 45, 40, 35, 30, 25, 20]

/** The wish with everything that was left out: as wide open as the corner lets it. */
export function completeSpray(
  ground: Ground & { readonly panel: Panel },
  turns: readonly LaidByTurns[],
  wish: SprayWish,
): Complete<SprayWish> {
  const outlines = outlinesOf(ground, turns)
  const reach = reachOfAll(outlines)
  const { panel } = ground
  const spray = {
    ...wish,
    count: wish.count ?? SPRAY_COUNT,
    first: wish.first ?? placed(SPRAY_FIRST * reach),
    step: wish.step ?? Math.max(1, placed(2 * reach + ground.clearance)),
  }
  if (wish.opening !== undefined || outlines.length === 0)
    return { ...spray, opening: wish.opening ?? SPRAY_OPENING }
  const place = cornerPlace(panel, wish.corner)
  const keepsIn = (opening: Degrees): boolean =>
    cornerSpray({ ...spray, ...place, opening }).every((item, i) => {
      const { outline } = outlines[i % outlines.length]!
      return insideDistance(indexEdges(placeOutline(outline, item)), panel.edges) >= panel.allowance
    })
  return { ...spray, opening: OPENINGS.find(keepsIn) ?? SPRAY_OPENING }
}

/** The wish with everything that was left out. */
const completeScatter = (ground: Ground, wish: ScatterWish): Complete<ScatterWish> => ({
  ...wish,
  distance: wish.distance ?? ground.clearance,
})

/** The most items, in whole turns of the motifs, that keep the asked distance from the next ones on their line. */
function mostThatFit(
  outlines: readonly { readonly outline: Outline }[],
  clearance: Millimetres,
  length: Millimetres,
  closed: boolean,
  lay: (count: number) => readonly ArrangedItem[],
): number {
  const turn = outlines.length
  if (turn === 0) return 0
  const fits = (rounds: number): boolean => {
    const items = lay(rounds * turn)
    const edges = items.map((item, i) => indexEdges(placeOutline(outlines[i % turn]!.outline, item)))
    const least = Math.max(clearance, APPLIQUE.judged)
    return edges.every((one, i) => {
      for (let k = 1; k <= turn + 1; k++) {
        const next = closed ? edges[(i + k) % edges.length]! : edges[i + k]
        if (next && next !== one && areaDistance(one, next, least) < least) return false
      }
      return true
    })
  }
  const smallest = outlines.reduce((least, { outline }) => Math.min(least, narrowest(outline)), Infinity)
  const bound = Math.min(MOST_UNASKED, length / Math.max(1, smallest + clearance) + 1)
  let low = 0
  let high = Math.floor(bound / turn) + 1
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (fits(middle)) low = middle
    else high = middle
  }
  return low * turn
}

/** The smaller side of an outline's box, over its turns by eighths: no row is packed closer. */
function narrowest(outline: Outline): Millimetres {
  const sides = Array.from({ length: 4 }, (_, i) => {
    const box = boxOf(placeOutline(outline, { x: 0, y: 0, turn: i * 22.5 }))
    return Math.min(box.right - box.left, box.bottom - box.top)
  })
  return Math.min(...sides)
}

/**
 * Where the stems of a spray meet, on the seam line, and which way its middle faces: along the diagonal of a
 * rectangle's corner, towards the middle of any other panel.
 */
function cornerPlace(panel: Panel, corner: Corner): { corner: Point; toward: Degrees } {
  const box = boxOf(panel.outline)
  const middle = middleOf(panel)
  const from = {
    x: corner.endsWith('left') ? box.left : box.right,
    y: corner.startsWith('top') ? box.top : box.bottom,
  }
  const [dx, dy] = [middle.x - from.x, middle.y - from.y]
  const far = Math.min(Math.abs(dx), Math.abs(dy))
  const way =
    panel.shape === 'rectangle' ? { x: Math.sign(dx) * far, y: Math.sign(dy) * far } : { x: dx, y: dy }
  const at = (share: number): Point => ({ x: from.x + way.x * share, y: from.y + way.y * share })
  const steps = Math.max(1, Math.ceil(Math.hypot(way.x, way.y)))
  let step = 0
  while (step < steps && !isWithinSeam(panel, at(step / steps))) step++
  return { corner: at(step / steps), toward: degrees(directionOf(way)) }
}

/**
 * A finding where a wish asks for more items than keep the asked distance: on the line of a wreath or a row, or
 * (`laid` being as many as came of it) of a scatter. null where there is room, or nobody counted.
 */
export function roomFinding(
  ground: Ground,
  turns: readonly LaidByTurns[],
  wish: Wish,
  laid: number,
): Finding | null {
  const { panel } = ground
  if (!panel || wish.how === 'spray') return null
  const asked = wish.how === 'scatter' ? wish.most : wish.count
  if (asked === undefined) return null
  const { count: _, ...uncounted } = { count: 0, ...wish }
  const room =
    uncounted.how === 'wreath'
      ? completeWreath({ ...ground, panel }, turns, uncounted).count
      : uncounted.how === 'row'
        ? completeRow(ground, turns, uncounted).count
        : laid
  if (asked <= room) return null
  const values = { asked: formatNumber(asked), room: formatNumber(room) }
  return finding('applique/room', 'layout.panel', values)
}

/**
 * Where nobody counted and there is room for a single item, it lies in the middle of the room, as a hand would put
 * it, and not on a line or by chance; also where chance found no place. null where the middle has no room.
 */
function inTheMiddle(panel: Panel, ground: Ground, outline: Outline, turn: Degrees): ArrangedItem | null {
  if (ground.items.length > 0) return null
  const { x, y } = roomOf(panel).centre
  const edges = indexEdges(placeOutline(outline, { x, y, turn }))
  return insideDistance(edges, panel.edges) >= panel.allowance ? { x, y, turn } : null
}

/** The items that a wish lays, in their order. Empty without a panel or a motif that has an outline. */
function itemsFor(ground: Ground, turns: readonly LaidByTurns[], wish: Wish): AppliqueItem[] {
  const { panel } = ground
  const outlines = outlinesOf(ground, turns)
  if (!panel || outlines.length === 0) return []
  const room = Math.max(0, MOST_APPLIQUE_ITEMS - ground.items.length)
  const by = (item: ArrangedItem, shape: number): AppliqueItem => {
    const { motif, colourway } = outlines[shape % outlines.length]!.laid
    const { x, y, turn } = item
    return { motif, ...(colourway && { colourway }), x: placed(x), y: placed(y), turn }
  }
  const inTurns = (items: readonly ArrangedItem[]) => items.slice(0, room).map(by)
  const alone = (items: AppliqueItem[]): AppliqueItem[] => {
    if (items.length > 1) return items
    const middle = inTheMiddle(panel, ground, outlines[0]!.outline, items[0]?.turn ?? wish.turn ?? 0)
    return middle ? [by(middle, 0)] : items
  }
  switch (wish.how) {
    case 'wreath': {
      const items = inTurns(wreath(completeWreath({ ...ground, panel }, turns, wish)))
      const asked = wish.count ?? wish.radiusX ?? wish.radiusY ?? wish.centre
      return asked === undefined ? alone(items) : items
    }
    case 'row':
      return inTurns(rowAlong(completeRow(ground, turns, wish)))
    case 'spray': {
      const spray = completeSpray({ ...ground, panel }, turns, wish)
      return inTurns(cornerSpray({ ...spray, ...cornerPlace(panel, wish.corner) }))
    }
    case 'scatter': {
      const { distance: apart, seed, most = room, turn } = completeScatter(ground, wish)
      const items = scatter({
        panel: panel.outline,
        allowance: panel.allowance + DUST,
        shapes: outlines.map(({ outline }) => ({ outline })),
        distance: apart + DUST,
        seed,
        ...(turn !== undefined && { turn }),
        most: Math.min(most, room),
        taken: ground.laid.map(({ edges }) => edges.outline),
      })
      const laid = items.map((item) => by(item, item.shape))
      return wish.most === undefined ? alone(laid) : laid
    }
  }
}

/** What lies on the panel while a wish is laid: everything, or nothing where it takes their place. */
export const groundFor = (ground: Ground, keep: boolean): Ground =>
  keep ? ground : { ...ground, items: [], laid: [] }

/** The project with what a wish lays; `keep` what lies there, or put it in its place. */
export function arrange(project: Project, turns: readonly LaidByTurns[], wish: Wish, keep: boolean): Project {
  const whole = groundOf(project)
  if (!whole) return project
  const ground = groundFor(whole, keep)
  const items = itemsFor(ground, turns, wish)
  if (items.length === 0) return project
  return { ...project, layout: { ...whole.layout, items: [...ground.items, ...items] } }
}
