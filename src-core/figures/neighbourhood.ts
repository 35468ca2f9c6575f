/** A motif among the neighbours that it is joined to, small: what one way of joining looks like on the map. */
import type { MotifAccount, Plan } from '../../shared-types/plan'
import type { Hand } from '../../shared-types/project'
import { accountAt } from '../layout/placed'
import type { PlacedPiece } from '../layout/placed'
import { numberedPlaces } from '../motif/numbering'
import { spacesMet } from '../motif/spaces'
import type { Figure, FigureItem, Paint, TextItem } from './figure'
import { drawPath, drawText, INK, MM_PER_POINT, PAPER, QUIET_INK } from './figure'
import { workingArrow } from './join-detail'
import { joinMarkItems } from './join-mark-items'
import { CAPITAL_HEIGHT, capitalDrop, FIGURE_WIDTH, SMALLEST_TYPE } from './lettering'
import { keptHalf, printedOutline } from './motif-parts'
import type { JoinWay, NamedNeighbour } from './order-list'
import { boundsOf, innerRadius, outerRadius, polygonPath, rectanglePath, turnAndScale } from './path'

/** Motifs are printed no larger than this across (mm): there is nothing more to see in them. */
const LARGEST = 20
const LETTER = 9
/** Of the numbers of petals, the largest first: a smaller one is taken where all of them fit then. */
const PETAL_TYPES = [8, 7.5, SMALLEST_TYPE] as const
const [PETAL_TYPE] = PETAL_TYPES
const DOT = 1.2
/** mm. Figures without tails that stand nearer than so run into each other. */
const TOUCHING = { down: 0.2, across: 0.15 } as const
/** mm between figures that are told apart at a glance. */
const APART = { down: 0.3, across: 0.4 } as const
/** How far from the cut of a half motif its numbers keep, in mm. */
const ASIDE = 1.8
/** mm round what is shown. */
const EDGE = 0.6
/** How much of a neighbour's radius is shown beyond its middle. */
const BEYOND = 0.5
/** Lines of the neighbours and of the motif itself, in mm. */
const THIN = 0.2
const THICK = 0.7
/** Of the frame that the neighbours run on beyond, in mm. */
const FRAME = 0.15
/** Radius of the arrow that shows the way of working, in mm. */
const ARROW = 1.5

/** A neighbour where it lies on paper: beyond the closing line of a round it is drawn where it will be. */
const laidBy = (plan: Plan, own: PlacedPiece, { piece, at }: NamedNeighbour): PlacedPiece => {
  if (!at.wraps || !plan.round) return piece
  const once = plan.round.circumference
  return { ...piece, x: piece.x + (piece.x > own.x ? -once : once) }
}

/** The drawing at the largest size that fits a box of printed mm; as high as it needs. */
export function neighbourhoodFigure(
  plan: Plan,
  way: JoinWay,
  hand: Hand,
  box: { readonly width: number; readonly height: number },
): Figure {
  const own = way.piece
  const account = accountAt(plan, own)
  if (!account) return { width: box.width, height: 0, items: [] }
  const named = way.neighbours.map((each) => ({ letter: each.letter, piece: laidBy(plan, own, each) }))
  const radius = (piece: PlacedPiece): number => outerRadius(accountAt(plan, piece)?.outline ?? [])
  const shown = boundsOf([
    ...turnAndScale(account.outline, own.turn, 1).map(({ x, y }) => ({ x: own.x + x, y: own.y + y })),
    ...named.flatMap(({ piece }) => {
      const r = radius(piece) * BEYOND
      return [
        { x: piece.x - r, y: piece.y - r },
        { x: piece.x + r, y: piece.y + r },
      ]
    }),
  ])
  const largest = Math.max(radius(own), ...named.map(({ piece }) => radius(piece)))
  const scale = Math.min(
    (box.width - 2 * EDGE) / shown.width,
    (box.height - 2 * EDGE) / shown.height,
    LARGEST / (2 * largest),
  )
  const height = shown.height * scale + 2 * EDGE
  const left = (box.width - shown.width * scale) / 2 - shown.x * scale
  const at = ({ x, y }: { x: number; y: number }): [number, number] => [
    left + x * scale,
    EDGE + (y - shown.y) * scale,
  ]
  const line = (piece: PlacedPiece, paint: Paint): FigureItem[] => {
    const half = piece.side && keptHalf({ side: piece.side })
    const outline = printedOutline(accountAt(plan, piece)?.outline ?? [], { turn: piece.turn, scale, half })
    const [x, y] = at(piece)
    return [drawPath(polygonPath(outline.map((p) => ({ x: p.x + x, y: p.y + y }))), paint)]
  }
  const items: FigureItem[] = [
    ...named.flatMap(({ piece }) => line(piece, { stroke: INK, width: THIN })),
    ...line(own, { fill: PAPER, stroke: INK, width: THICK }),
  ]
  const [x, y] = at(own)
  const numbers = petalNumbers(account, own, way, scale, x, y)
  items.push(...joinDots(account, own, way, scale, x, y), ...numbers)
  const nearest = Math.min(...numbers.map((item) => Math.hypot(item.x - x, item.y - y)), Infinity)
  const isFree = nearest > ARROW + PETAL_TYPE * MM_PER_POINT
  if (own.kind !== 'half' && isFree && innerRadius(account.outline) * scale > 2 * ARROW)
    items.push(...workingArrow(x, y, ARROW, hand))
  const clip = rectanglePath(0, 0, box.width, height)
  return {
    width: box.width,
    height,
    items: [
      { kind: 'group', clip, items },
      drawPath(rectanglePath(FRAME / 2, FRAME / 2, box.width - FRAME, height - FRAME), {
        ...{ stroke: QUIET_INK, width: FRAME },
      }),
      ...named.map(({ letter, piece }) => {
        const [px, py] = at(piece)
        return drawText(letter, px, py + capitalDrop(LETTER), LETTER, { anchor: 'middle', weight: 'bold' })
      }),
    ],
  }
}

/** A dot at each place that is joined, a ring where others are joined to the same place already. */
function joinDots(
  account: MotifAccount,
  own: PlacedPiece,
  { step }: JoinWay,
  scale: number,
  x: number,
  y: number,
): FigureItem[] {
  return step.joins.flatMap(({ anchor, with: members }) => {
    const place = account.anchors.find(({ id }) => id === anchor)
    if (!place) return []
    const [p] = turnAndScale([place], own.turn, scale)
    return joinMarkItems(members.length > 1 ? 'several' : 'two', x + p!.x, y + p!.y, DOT)
  })
}

/** The numbers of the petals or corners where they have room, else of the first and those that are joined, as far as these have. */
function petalNumbers(
  account: MotifAccount,
  own: PlacedPiece,
  { step }: JoinWay,
  scale: number,
  x: number,
  y: number,
): TextItem[] {
  // A half motif lacks the places beyond its cut.
  const there = new Set([...step.free, ...step.joins.map(({ anchor }) => anchor)])
  const numbered = numberedPlaces(account, own).filter(
    ({ anchor }) => account.spaces !== undefined || there.has(anchor.id),
  )
  const aside = own.side ? (keptHalf({ side: own.side }) === 'right' ? ASIDE : -ASIDE) : 0
  const placesAt = (size: number) => {
    const reach = (size * FIGURE_WIDTH + 2) * MM_PER_POINT + DOT
    return numbered.map(({ anchor, number }) => {
      const [p] = turnAndScale([anchor], own.turn, scale)
      const far = Math.hypot(p!.x, p!.y) || 1
      const share = Math.max(0.5, (far - reach) / far)
      const beside = Math.abs(p!.x * share) < ASIDE ? aside : 0
      return { id: anchor.id, number, size, x: x + p!.x * share + beside, y: y + p!.y * share }
    })
  }
  type Place = ReturnType<typeof placesAt>[number]
  const width = ({ number, size }: Place): number =>
    String(number).length * size * FIGURE_WIDTH * MM_PER_POINT
  const isOn = (one: Place, other: Place, apart: { down: number; across: number } = APART): boolean =>
    Math.abs(one.y - other.y) < one.size * CAPITAL_HEIGHT * MM_PER_POINT + apart.down &&
    Math.abs(one.x - other.x) < (width(one) + width(other)) / 2 + apart.across
  const isCrowded = (list: readonly Place[]): boolean =>
    list.some((one, i) => list.some((other, k) => k > i && isOn(one, other)))
  const joined = new Set(step.joins.map(({ anchor }) => anchor))
  const met = spacesMet(account, joined, own.firstPetal)
  const few = placesAt(PETAL_TYPE).filter(
    ({ id, number }) => number === 1 || joined.has(id) || met.has(number),
  )
  // Where even these stand too close, as many of them as do not touch: the first, and what is joined from there on.
  const fitting = few.reduce<readonly Place[]>(
    (list, place) => (list.some((other) => isOn(place, other, TOUCHING)) ? list : [...list, place]),
    [],
  )
  const shown = [...PETAL_TYPES.map(placesAt), few].find((list) => !isCrowded(list)) ?? fitting
  return shown.map(({ number, size, ...at }) =>
    drawText(String(number), at.x, at.y + capitalDrop(size), size, { anchor: 'middle' }),
  )
}
