/** A few motifs round a busy place, large enough to read every meeting point, petal and host. */
import type { JoinNode, MotifAccount, PlacedMotif, Plan } from '../../shared-types/plan'
import type { Hand } from '../../shared-types/project'
import { namedIn } from '../joins/words'
import { accountAt, pieceAt } from '../layout/placed'
import type { PlacedPiece } from '../layout/placed'
import { numberedPlaces } from '../motif/numbering'
import type { Figure, FigureItem, MeasureText } from './figure'
import { drawPath, drawText, INK, MM_PER_POINT, PAPER, QUIET_INK, useAt } from './figure'
import { joinMarkItems } from './join-mark-items'
import { JOIN_MARKS, joinMarkOf } from './join-marks'
import type { JoinMark } from './join-marks'
import { arrowReach, labelWithin, numberShare, PETAL_TYPE, smallestLabel } from './join-lettering'
import { capitalDrop, fitLabel } from './lettering'
import { breakLines } from './lines'
import type { ColourwayMark } from './marks'
import { keptHalf, printedOutline } from './motif-parts'
import { MotifSymbols } from './motif-symbol'
import {
  arcPath,
  arrowHead,
  arrowPath,
  boundsOf,
  circlePath,
  dotPath,
  innerRadius,
  outerRadius,
  polygonPath,
  turnAndScale,
} from './path'

/** Motifs in the detail are printed no larger than this across (mm). */
const LARGEST = 46
const DOT = 1.5

/** One kind of meeting point: how many motifs meet, and how often. */
interface NodeKind {
  readonly members: number
  readonly count: number
  /** Largest gap to bridge among them, in mm. */
  readonly spread: number
}

/** The kinds of meeting points, by how many motifs meet. */
export function nodeKinds(plan: Plan): NodeKind[] {
  const kinds = new Map<number, { count: number; spread: number }>()
  for (const node of plan.joins) {
    const kind = kinds.get(node.members.length) ?? { count: 0, spread: 0 }
    kinds.set(node.members.length, { count: kind.count + 1, spread: Math.max(kind.spread, node.spread) })
  }
  return [...kinds].sort(([a], [b]) => a - b).map(([members, kind]) => ({ members, ...kind }))
}

interface JoinDetailChoice {
  /** The motif in the middle, whose step is told in words. */
  readonly focus: PlacedMotif
  readonly shown: readonly PlacedMotif[]
  readonly nodes: readonly JoinNode[]
  /** Half motifs and fillers that are joined to the motif in the middle. */
  readonly additions?: readonly PlacedPiece[]
}

/**
 * The motif that meets the most others in the most ways, the nearest to the middle of those, with all that it
 * meets. Null when nothing is joined.
 */
export function chooseJoinDetail(plan: Plan): JoinDetailChoice | null {
  const nodesOf = new Map<string, JoinNode[]>()
  for (const node of plan.joins) {
    for (const { motif } of node.members) {
      const nodes = nodesOf.get(motif)
      if (nodes) nodes.push(node)
      else nodesOf.set(motif, [node])
    }
  }
  const worked = new Map(plan.order.map((step) => [step.motif, step.joins.length]))
  let focus: PlacedMotif | null = null
  let best = -Infinity
  for (const motif of plan.motifs) {
    const nodes = nodesOf.get(motif.id)
    if (!nodes) continue
    const away = Math.hypot(motif.x - plan.size.width / 2, motif.y - plan.size.height / 2)
    const reach = Math.hypot(plan.size.width, plan.size.height) / 2 || 1
    const kinds = new Set(nodes.map((node) => node.members.length)).size
    const score = 2 * nodes.length + kinds + (worked.get(motif.id) ?? 0) / 4 - (3 * away) / reach
    if (score > best) {
      best = score
      focus = motif
    }
  }
  if (!focus) return null
  const ids = new Set(nodesOf.get(focus.id)!.flatMap((node) => node.members.map((member) => member.motif)))
  // Where its step counts from a motif that it does not meet itself, that one is shown too.
  const named = new Set(namedIn(plan.order.find(({ motif }) => motif === focus.id)?.pattern ?? ''))
  for (const { id, label } of plan.motifs) if (named.has(label)) ids.add(id)
  const shown = plan.motifs.filter((motif) => ids.has(motif.id))
  const nodes = plan.joins.filter((node) => node.members.every((member) => ids.has(member.motif)))
  const own = focus.id
  const additions = plan.order
    .filter(
      ({ kind, joins }) =>
        kind !== 'motif' && joins.some((join) => join.with.some(({ motif }) => motif === own)),
    )
    .flatMap(({ motif }) => pieceAt(plan, motif) ?? [])
  return { focus, shown, nodes, additions }
}

interface JoinDetailLook {
  readonly marks: readonly ColourwayMark[]
  readonly hand: Hand
  /** Motifs are joined while they are worked: the one that was there first is marked. */
  readonly hosts: boolean
  /** One motif is told about, and stands out. */
  readonly told: boolean
}

interface Box {
  readonly width: number
  readonly height: number
}

/** What the shown motifs cover, and the largest scale at which they fit a box of printed mm. */
function fittedIn(plan: Plan, { shown }: JoinDetailChoice, box: Box) {
  const placed = shown.flatMap((motif) =>
    turnAndScale(outlineOf(plan, motif), motif.turn, 1).map((p) => ({ x: p.x + motif.x, y: p.y + motif.y })),
  )
  const bounds = boundsOf(placed)
  const tip = Math.max(...shown.map((motif) => outerRadius(outlineOf(plan, motif))))
  const scale = Math.min(
    (box.width - 2) / bounds.width,
    (box.height - 2) / bounds.height,
    LARGEST / Math.max(2 * tip, 1),
  )
  return { bounds, scale }
}

/** Whether every motif has room for its number inside those of its petals, drawn as large as the box lets them be. */
export function isDetailLegible(plan: Plan, choice: JoinDetailChoice, box: Box): boolean {
  const { scale } = fittedIn(plan, choice, box)
  return choice.shown.every(
    (shown) => labelWithin(numberRing(plan, shown, scale), shown.label.length, 1) !== null,
  )
}

interface Drawing {
  readonly plan: Plan
  readonly choice: JoinDetailChoice
  readonly look: JoinDetailLook
  readonly scale: number
  readonly left: number
  readonly top: number
}

/** The detail at the largest size that fits a box of printed mm; its height is what it needs. */
export function joinDetailFigure(
  plan: Plan,
  choice: JoinDetailChoice,
  look: JoinDetailLook,
  box: Box,
): Figure {
  if (!plan.motif) return { ...box, items: [] }
  const { bounds, scale } = fittedIn(plan, choice, box)
  const left = (box.width - bounds.width * scale) / 2 - bounds.x * scale
  const drawing: Drawing = { plan, choice, look, scale, left, top: 1 - bounds.y * scale }
  const letters = new Map(look.marks.map((mark) => [mark.id, mark.code]))
  const symbols = new Map<MotifAccount, MotifSymbols>()
  const symbolOf = (shown: PlacedMotif) => {
    const account = accountAt(plan, shown)!
    const known =
      symbols.get(account) ?? new MotifSymbols(account, new Map(), { scale, look: 'plain', disc: 0 })
    symbols.set(account, known)
    return known.get('', shown.turn)
  }
  const items: FigureItem[] = []
  for (const shown of choice.shown) {
    items.push(useAt(symbolOf(shown), ...spot(drawing, shown.x, shown.y)))
  }
  for (const piece of choice.additions ?? []) items.push(...additionItems(drawing, plan, piece))
  if (look.told) items.push(focusOutline(drawing))
  for (const node of choice.nodes) items.push(...nodeMark(drawing, node))
  for (const shown of choice.shown)
    items.push(...motifWords(drawing, shown, letters.get(shown.colourway) ?? ''))
  const ring = arrowRadius(drawing, letters.get(choice.focus.colourway) ?? '')
  const [x, y] = spot(drawing, choice.focus.x, choice.focus.y)
  // Where it has no room round the number, what the marks mean shows it: away from its motif nobody would know what for.
  if (ring !== null) items.push(...workingArrow(x, y, ring, look.hand))
  return { width: box.width, height: bounds.height * scale + 2, items }
}

const outlineOf = (plan: Plan, placed: PlacedMotif): MotifAccount['outline'] =>
  accountAt(plan, placed)?.outline ?? []

const spot = (d: Drawing, x: number, y: number): [number, number] => [
  d.left + x * d.scale,
  d.top + y * d.scale,
]

function focusOutline(d: Drawing): FigureItem {
  const [x, y] = spot(d, d.choice.focus.x, d.choice.focus.y)
  const outline = printedOutline(outlineOf(d.plan, d.choice.focus), {
    turn: d.choice.focus.turn,
    scale: d.scale,
  })
  return drawPath(polygonPath(outline.map((p) => ({ x: p.x + x, y: p.y + y }))), { stroke: INK, width: 0.8 })
}

/** A half motif or filler: its outline, its number and letter where they have room, its join points. */
function additionItems(d: Drawing, plan: Plan, piece: PlacedPiece): FigureItem[] {
  const account = accountAt(plan, piece)
  if (!account) return []
  const half = piece.side && keptHalf({ side: piece.side })
  const [x, y] = spot(d, piece.x, piece.y)
  const symbols = new MotifSymbols(account, new Map(), { scale: d.scale, look: 'plain', disc: 0 })
  const items: FigureItem[] = [useAt(symbols.get('', piece.turn, { half }), x, y)]
  const inner = (innerRadius(account.outline) * d.scale) / (half ? 2 : 1)
  const letter = d.look.marks.find(({ id }) => id === piece.colourway)?.code ?? ''
  const label = fitLabel(inner, 2 * inner, piece.label.length, [...letter].length)
  if (label) {
    const aside = half ? (half === 'right' ? inner : -inner) : 0
    const at = { anchor: 'middle' } as const
    items.push(
      drawText(piece.label, x + aside, y + label.numberBaseline, label.number, { ...at, weight: 'bold' }),
    )
    if (letter !== '') items.push(drawText(letter, x + aside, y + label.letterBaseline, label.letter, at))
  }
  const points = [...plan.fillers, ...plan.halves].find(({ id }) => id === piece.id)?.points ?? []
  for (const point of points) items.push(...joinMarkItems('two', ...spot(d, point.x, point.y), DOT))
  return items
}

/** The mark of the join point, and an arrow from it into the motif that was there first. */
function nodeMark(d: Drawing, node: JoinNode): FigureItem[] {
  const [x, y] = spot(d, node.x, node.y)
  const items: FigureItem[] = joinMarkItems(joinMarkOf(node), x, y, DOT)
  const host = d.look.hosts && d.choice.shown.find((motif) => motif.id === node.host)
  if (host) {
    const [hx, hy] = spot(d, host.x, host.y)
    const length = Math.hypot(hx - x, hy - y) || 1
    const reach = arrowReach(length)
    const end = { x: x + ((hx - x) / length) * reach, y: y + ((hy - y) / length) * reach }
    items.push(drawPath(arrowPath(x, y, end.x, end.y, 1.3), { stroke: INK, width: 0.4, cap: 'round' }))
  }
  return items
}

/** mm: the arrow round a number and letter keeps so far from them and from the numbers of the petals. */
const ARROW = { air: 1.1, clear: 1.7 } as const

/** How far from the middle the nearest number of a petal stands, in printed mm. */
function numberRing(plan: Plan, shown: PlacedMotif, scale: number): number {
  const account = accountAt(plan, shown)!
  const ways = numberedPlaces(account, shown).map(({ anchor }) => {
    const away = Math.hypot(anchor.x, anchor.y) * scale || 1
    return away * numberShare(away)
  })
  return Math.min(...ways, Infinity)
}

function labelOf(d: Drawing, shown: PlacedMotif, letter: string) {
  const ring = numberRing(d.plan, shown, d.scale)
  const [digits, letters] = [shown.label.length, [...letter].length]
  return labelWithin(ring, digits, letters) ?? smallestLabel(digits, letters)
}

/** Radius of the arrow round the number of the motif in the middle; null where it would run into those of its petals. */
function arrowRadius(d: Drawing, letter: string): number | null {
  const { focus } = d.choice
  const account = accountAt(d.plan, focus)!
  const ring = labelOf(d, focus, letter).disc + ARROW.air
  const room = Math.min(
    innerRadius(account.outline) * d.scale - 1.5,
    numberRing(d.plan, focus, d.scale) - ARROW.clear,
  )
  return ring < room ? ring : null
}

/** Working number and letter, and the numbers of the petals. */
function motifWords(d: Drawing, shown: PlacedMotif, letter: string): FigureItem[] {
  const [x, y] = spot(d, shown.x, shown.y)
  const focus = shown.id === d.choice.focus.id
  const label = labelOf(d, shown, letter)
  const items: FigureItem[] = [
    drawText(shown.label, x, y + label.numberBaseline, label.number, { anchor: 'middle', weight: 'bold' }),
  ]
  if (letter !== '')
    items.push(drawText(letter, x, y + label.letterBaseline, label.letter, { anchor: 'middle' }))
  const drop = capitalDrop(PETAL_TYPE)
  const account = accountAt(d.plan, shown)!
  for (const { anchor, number } of numberedPlaces(account, shown)) {
    const [at] = turnAndScale([anchor], shown.turn, d.scale)
    const reach = Math.hypot(at!.x, at!.y) || 1
    const share = numberShare(reach)
    items.push(
      drawText(String(number), x + at!.x * share, y + at!.y * share + drop, PETAL_TYPE, {
        anchor: 'middle',
        colour: focus ? INK : QUIET_INK,
      }),
    )
  }
  return items
}

/** An open circle with a head: counter-clockwise for right-handers, as seen from the right side. */
export function workingArrow(x: number, y: number, radius: number, hand: Hand): FigureItem[] {
  const way = hand === 'left' ? 1 : -1
  const from = way * 0.5
  const to = way * (2 * Math.PI - 0.75)
  const tipX = x + radius * Math.sin(to)
  const tipY = y - radius * Math.cos(to)
  const head = arrowHead(tipX, tipY, way * Math.cos(to + way * 0.12), way * Math.sin(to + way * 0.12), 1.6)
  return [drawPath([...arcPath(x, y, radius, from, to), ...head], { stroke: INK, width: 0.35, cap: 'round' })]
}

/** What each mark means; a mark without words is left out. */
export interface JoinLegendWords {
  /** The kinds of join points that are there. */
  readonly marks: Partial<Readonly<Record<JoinMark, string>>>
  readonly host?: string
  readonly way: string
  readonly focus?: string
}

type Sample = JoinMark | Exclude<keyof JoinLegendWords, 'marks'>

const samples = (
  hand: Hand,
  outline: MotifAccount['outline'],
): Readonly<Record<Sample, readonly FigureItem[]>> => ({
  two: joinMarkItems('two', 3.5, 0, DOT),
  several: joinMarkItems('several', 3.5, 0, DOT),
  stretched: joinMarkItems('stretched', 3.5, 0, DOT),
  host: [
    drawPath(dotPath(1.6, 0), { stroke: INK, width: DOT, cap: 'round' }),
    drawPath(arrowPath(1.6, 0, 6, 0, 1.3), { stroke: INK, width: 0.4, cap: 'round' }),
  ],
  way: workingArrow(3.5, 0, 1.7, hand),
  focus: [drawPath(smallOutline(outline), { fill: PAPER, stroke: INK, width: 0.8 })],
})

/** Radius of a motif among the marks, in mm. */
const SMALL = 1.9

/** A motif as small as the other marks, in its own shape: a ring is a mark itself. */
function smallOutline(outline: MotifAccount['outline']) {
  const reach = outerRadius(outline)
  if (!(reach > 0)) return circlePath(3.5, 0, SMALL)
  return polygonPath(outline.map(({ x, y }) => ({ x: 3.5 + (x * SMALL) / reach, y: (y * SMALL) / reach })))
}

const LEGEND_INDENT = 10

/** What the marks of the detail mean, as small drawings with their words at their right, within a width. */
export function joinLegend(
  words: JoinLegendWords,
  { hand, outline }: { readonly hand: Hand; readonly outline: MotifAccount['outline'] },
  measure: MeasureText,
  size: number,
  width: number,
): Figure {
  const line = size * 1.36 * MM_PER_POINT
  const drop = capitalDrop(size)
  const items: FigureItem[] = []
  let y = 0
  const { marks, ...others } = words
  const told: Partial<Record<Sample, string>> = { ...marks, ...others }
  for (const key of [...JOIN_MARKS, 'host', 'way', 'focus'] as const) {
    const text = told[key]
    if (text === undefined) continue
    items.push({ kind: 'group', matrix: [1, 0, 0, 1, 0, y + line / 2], items: samples(hand, outline)[key] })
    for (const part of breakLines(text, width - LEGEND_INDENT, measure, size)) {
      items.push(drawText(part, LEGEND_INDENT, y + line / 2 + drop, size))
      y += line
    }
    y += 0.8
  }
  return { width, height: y, items }
}
