/** Two motifs that are joined in a way of their own, marked between them on the map: in the window and on paper alike. */
import { counted } from './words'
import type { Plan, PlacedMotif, Point } from '../../shared-types/plan'
import type { PAIR_RULES } from '../../shared-types/project'
import { tidyAddress } from '../layout/addresses'
import { mapSize, pieceAt } from '../layout/placed'
import { remembered } from '../memo'
import type { Colour, FigureItem } from './figure'
import { hemmedLine } from './figure'
import { linePath } from './path'

type PairRule = (typeof PAIR_RULES)[number]

/** A mark, in the middle between two motifs. */
export interface PairMark extends Point {
  readonly one: PlacedMotif
  readonly other: PlacedMotif
  readonly rule: PairRule
  readonly chains: number
  /** From one motif to the other, in radians from the x axis. */
  readonly angle: number
}

/** The pairs of a plan whose motifs are there, each once; where a round closes at both ends of its map. */
export const pairMarks = remembered((plan: Plan): readonly PairMark[] => {
  const { joining } = plan.settled
  const { round } = plan
  const { width } = mapSize(plan)
  // Of two rules for the same pair the later one holds.
  const byPair = new Map<string, PairMark>()
  for (const { places, rule = joining.rule, bridgeChains = joining.bridgeChains } of joining.single ?? []) {
    const ids = places.map(tidyAddress)
    const [one, other] = ids.map((id) => pieceAt(plan, id))
    if (ids.length !== 2 || !one || !other || one === other) continue
    const across = other.x - one.x
    const turns = round ? Math.round(across / round.circumference) : 0
    const dx = across - turns * (round?.circumference ?? 0)
    const dy = other.y - one.y
    byPair.set([...ids].sort().join(' '), {
      ...{ one, other, rule: rule === 'seam' ? 'edges' : rule, chains: bridgeChains },
      ...{ x: one.x + dx / 2, y: one.y + dy / 2, angle: Math.atan2(dy, dx) },
    })
  }
  return [...byPair.values()].flatMap((mark) => {
    if (!round) return [mark]
    return [-1, 0, 1]
      .map((turn) => ({ ...mark, x: mark.x + turn * round.circumference }))
      .filter(({ x }) => x >= 0 && x <= width)
  })
})

/** How a mark is drawn, in the units of its list: how far it reaches from its middle, its lines and its colours. */
export interface PairLook {
  readonly reach: number
  readonly line: number
  readonly ink: Colour
  readonly paper: Colour
}

/** Share of the reach that the two strokes stand apart from the middle: a join point between them stays to be seen. */
const APART = 0.6
/** How much farther a stroke reaches that stands alone (by eye). */
const APART_REACH = 1.4

/** Two strokes from motif to motif; where they are not joined one stroke between them. */
export function pairMarkItems({ rule, angle }: PairMark, at: Point, look: PairLook): FigureItem[] {
  const { reach, line, ink, paper } = look
  const [along, beside] = [
    { x: Math.cos(angle), y: Math.sin(angle) },
    { x: -Math.sin(angle), y: Math.cos(angle) },
  ]
  const stroke = (from: Point, to: Point): FigureItem[] =>
    hemmedLine(
      linePath(at.x + from.x, at.y + from.y, at.x + to.x, at.y + to.y),
      { stroke: ink, width: line, cap: 'round' },
      paper,
      line,
    )
  const point = (a: number, b: number): Point => ({
    x: along.x * a + beside.x * b,
    y: along.y * a + beside.y * b,
  })
  if (rule === 'apart') return stroke(point(0, -APART_REACH * reach), point(0, APART_REACH * reach))
  return [-1, 1].flatMap((side) =>
    stroke(point(-reach, side * APART * reach), point(reach, side * APART * reach)),
  )
}

/** What of these marks a map has. */
const kindsIn = (plan: Plan) => {
  const marks = pairMarks(plan)
  return {
    joined: marks.some(({ rule }) => rule !== 'apart'),
    apart: marks.some(({ rule }) => rule === 'apart'),
  }
}

export const PAIR_WORDS = {
  joined: 'joined in their own way',
  apart: 'not joined to each other',
} as const

/** The entries of a legend. */
export const pairLegend = (plan: Plan): readonly (keyof typeof PAIR_WORDS)[] => {
  const kinds = kindsIn(plan)
  return (['joined', 'apart'] as const).filter((kind) => kinds[kind])
}

const HOW: Readonly<Record<PairRule, (mark: PairMark) => string>> = {
  tips: () => 'at the tips',
  edges: () => 'along the edge',
  bridge: ({ chains }) => `${counted(chains, 'chain')} between`,
  apart: () => 'not joined',
}

/** Pairs that are told one by one on paper (ours: what stands beside a map). */
const TOLD = 12

/** "Two strokes between two motifs: joined in their own way (14 and 15, ch 3 between)."; empty where there are none. */
export function pairSentence(plan: Plan): string {
  const kinds = kindsIn(plan)
  if (!kinds.joined && !kinds.apart) return ''
  const shapes = [
    ...(kinds.joined ? ['Two strokes between two motifs: joined in their own way'] : []),
    ...(kinds.apart ? [`${kinds.joined ? 'one' : 'One'} stroke between them: ${PAIR_WORDS.apart}`] : []),
  ].join('; ')
  const pairs = [
    ...new Set(
      pairMarks(plan).map((mark) => `${mark.one.label} and ${mark.other.label}, ${HOW[mark.rule](mark)}`),
    ),
  ]
  const told = pairs.length <= TOLD ? ` (${pairs.join('; ')})` : ''
  return `${shapes}${told}.`
}
