/** Every join of the examples in every order and for both hands, and what words and pictures number it. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { JoinNode, MotifAccount, OrderJoin, PlacedMotif, Plan } from '../../../shared-types/plan'
import type { Hand, Order, Project } from '../../../shared-types/project'
import { pieceAt } from '../../../src-core/layout/placed'
import type { PlacedPiece } from '../../../src-core/layout/placed'
import { createPlanner } from '../../../src-core/plan'

/** The examples that are worked in an order. */
export const BLANKETS = [
  'dovecote-runner',
  'ferry-rope-wrap',
  'hearthstone-hexagon',
  'hedgerow-baby-throw',
  'lantern-table-mat',
  'limekiln-cushion',
  'market-stall-throw',
  'orangery-cloth',
  'orchard-wall-throw',
  'slate-roof-lap-blanket',
] as const

export const HANDS: readonly Hand[] = ['right', 'left']

const NAMED_ORDERS = ['there-and-back', 'one-way', 'centre', 'colourway'] as const

export interface Planned {
  readonly title: string
  readonly project: Project
  readonly plan: Plan
}

const read = (name: string): Project =>
  JSON.parse(readFileSync(join('examples', `${name}.petalyard`), 'utf8')) as Project

const known = new Map<string, readonly Planned[]>()

/**
 * An example for one hand in every order, one by hand among them: every third motif first, from the end. Planned once
 * for all that ask.
 */
export function inEveryOrder(name: string, hand: Hand): readonly Planned[] {
  const key = `${name} ${hand}`
  const planned = known.get(key) ?? planEveryOrder(name, hand)
  known.set(key, planned)
  return planned
}

function planEveryOrder(name: string, hand: Hand): readonly Planned[] {
  const own = read(name)
  const planner = createPlanner()
  const inOrder = (order: Order, title: string): Planned => {
    const project: Project = { ...own, hand, order }
    return { title: `${name}, ${hand}, ${title}`, project, plan: planner.plan(project) }
  }
  const named = NAMED_ORDERS.map((order) => inOrder(order, order))
  const byHand = named[0]!.plan.motifs
    .map(({ id }) => id)
    .filter((_, i) => i % 3 === 0)
    .reverse()
  return [...named, inOrder(byHand, 'by hand')]
}

/** The number that an instruction gives to the place that is joined; null where none is told. */
export function numberIn(words: string): number | null {
  const found =
    /^(?:sew |crochet )?(?:(?:first|second) shoulder of |place \d of )?(?:petal|corner|side|mark) (\d+)/.exec(
      words,
    )
  return found ? Number(found[1]) : null
}

/** The hour that an instruction gives to the place that is joined, in degrees clockwise from 12; null without. */
export function hourIn(words: string): number | null {
  const found = /^(?:sew |crochet )?at (half past )?(\d+)(?: o'clock)?/.exec(words)
  return found ? (Number(found[2]) % 12) * 30 + (found[1] ? 15 : 0) : null
}

/** Direction from a motif's middle in degrees clockwise from 12 o'clock. */
export const directionTo = ({ x, y }: { x: number; y: number }): number =>
  ((Math.atan2(x, -y) * 180) / Math.PI + 360) % 360

/** Difference of two directions, 0 to 180. */
export const apart = (a: number, b: number): number => Math.abs(((a - b + 540) % 360) - 180)

/** Where the petal (corner) lies that a place of a motif belongs to, on the map; a side belongs to the corner before it. */
export function petalDirection(account: MotifAccount, placed: PlacedMotif, anchor: string): number {
  const { petal } = account.anchors.find(({ id }) => id === anchor)!
  const leading = account.anchors.find(
    (entry) => entry.petal === petal && (entry.kind === 'tip' || entry.kind === 'corner'),
  )!
  return (directionTo(leading) + placed.turn + 360) % 360
}

/** The number that stands in a direction, of those drawn round a middle; null where none does. */
export function numberDrawn(
  numbers: readonly { readonly text: string; readonly x: number; readonly y: number }[],
  middle: { readonly x: number; readonly y: number },
  direction: number,
): number | null {
  const seen = numbers.filter(
    ({ x, y }) => apart(directionTo({ x: x - middle.x, y: y - middle.y }), direction) < 4,
  )
  return seen.length === 1 ? Number(seen[0]!.text) : null
}

interface JoinSeen {
  readonly motif: PlacedMotif
  readonly join: OrderJoin
  /** The join point that it makes. */
  readonly node: JoinNode
}

/** Every join of whole motifs that is told, with the motif that is worked. */
export function joinsSeen(plan: Plan): JoinSeen[] {
  const placed = new Map(plan.motifs.map((motif) => [motif.id, motif]))
  const nodes = new Map(
    plan.joins.flatMap((node) => node.members.map(({ motif, anchor }) => [`${motif} ${anchor}`, node])),
  )
  const steps = plan.order.filter(({ kind }) => kind === 'motif')
  return steps.flatMap(({ motif, joins }) =>
    joins.map((made) => ({
      motif: placed.get(motif)!,
      join: made,
      node: nodes.get(`${motif} ${made.anchor}`)!,
    })),
  )
}

/** Every join of half motifs and fillers that is told. */
export const additionsSeen = (plan: Plan): { piece: PlacedPiece; join: OrderJoin }[] =>
  plan.order
    .filter(({ kind }) => kind !== 'motif')
    .flatMap(({ motif, joins }) => joins.map((made) => ({ piece: pieceAt(plan, motif)!, join: made })))
