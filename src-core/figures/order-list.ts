/**
 * The working order made short: motifs that are joined to alike neighbours in the same way share one way of joining,
 * told once with letters for the neighbours, and rows that are made of the same ways are of one kind. What is rare is
 * told step by step. Whoever puts a neighbour's number in the place of its letter has the step's own words again.
 */
import type { OrderStep, PieceKind, Plan } from '../../shared-types/plan'
import { ringAt } from '../joins/sequence'
import { namedIn, wordsOf } from '../joins/words'
import { accountAt, pieceAt, placedPieces } from '../layout/placed'
import type { PlacedPiece } from '../layout/placed'
import { remembered } from '../memo'
import { keyMarks, mapGround } from './map-ground'
import { neighbourAt, neighbourWords } from './neighbours'
import type { Neighbour } from './neighbours'
import { mapRows, workedByRows } from './rows'

/** A way of joining that is told fewer times than this many is told where it comes. */
const LEAST_USES = 3

/** What neighbours are called: letters far from those of colourways; others, then doubled ones, where these have them. */
const LETTERS: readonly string[] = ['PQRSTUVWXYZ', 'NMLKJHGFEDCBA'].flatMap((letters) => [...letters])
const DOUBLED: readonly string[] = LETTERS.map((letter) => letter + letter)

/** A neighbour of a way of joining: its letter, where it lies, and that of the example. */
export interface NamedNeighbour {
  readonly letter: string
  /** "upper left", "right, across the dashed line". */
  readonly where: string
  readonly at: Neighbour
  readonly piece: PlacedPiece
}

/** One way of joining, for all the steps that are worked alike. */
export interface JoinWay {
  /** Counted from 1 in the order in which they are first used. */
  readonly number: number
  readonly kind: PieceKind
  /** The step in words, its neighbours by their letters. */
  readonly words: string
  readonly neighbours: readonly NamedNeighbour[]
  /** The first step of it, and where that is. */
  readonly step: OrderStep
  readonly piece: PlacedPiece
  readonly uses: number
}

/** Steps that follow each other and are worked in one way; one by itself where `way` is null. */
export interface OrderRun {
  readonly way: JoinWay | null
  readonly steps: readonly OrderStep[]
}

/** What a part of the order is about: a row, a ring from the middle, a colourway; all of it where it has no parts. */
export interface OrderPart {
  readonly of: 'row' | 'ring' | 'colourway' | 'all'
  /** Number of the row or ring (0 is the middle). */
  readonly number: number
  /** Id of the colourway. */
  readonly colourway: string
  readonly runs: readonly OrderRun[]
}

/** A kind of row: the rows that are made of the same ways. */
export interface RowKind {
  readonly rows: readonly number[]
  readonly runs: readonly OrderRun[]
  /** Every row has as many motifs in each run; else the one long run is as long as the row wants. */
  readonly sameLength: boolean
}

export interface OrderList {
  readonly ways: readonly JoinWay[]
  readonly parts: readonly OrderPart[]
  /** Of work that goes by rows: those kinds that more than one row is of. */
  readonly kinds: readonly RowKind[]
}

/** What makes two steps alike, whichever of those that meet at a place was there first; null for one that cannot share its words. */
interface Manner {
  readonly key: string
  readonly neighbours: ReadonlyMap<string, Neighbour>
}

function mannerOf(plan: Plan, byLabel: ReadonlyMap<string, PlacedPiece>, step: OrderStep): Manner | null {
  const piece = pieceAt(plan, step.motif)
  if (!piece) return null
  const neighbours = new Map<string, Neighbour>()
  const places = new Map<string, string>()
  for (const label of namedIn(step.pattern)) {
    const other = byLabel.get(label)
    if (!other) return null
    const at = neighbourAt(plan, piece, other)
    neighbours.set(label, at)
    const words = neighbourWords(at)
    // Two that lie in the same direction could not be told apart.
    if ((places.get(words) ?? label) !== label) return null
    places.set(words, label)
  }
  const pattern = wordsOf(step.pattern, (label) => `<${keyOf(neighbours.get(label)!)}>`)
  const alike = pattern.replace(/where ((?:<[^>]*>(?:, | and )?)+) meet(?!, seen)/g, (_, all: string) =>
    all
      .match(/<[^>]*>/g)!
      .sort()
      .join(),
  )
  const joins = step.joins.map(({ anchor, with: members, chains = 0 }) => {
    const others = members.map((member) => {
      const other = pieceAt(plan, member.motif)
      return `${other ? keyOf(neighbourAt(plan, piece, other)) : ''} ${member.anchor}`
    })
    return `${anchor}>${others.sort().join('+')} ${chains}`
  })
  const own = accountAt(plan, piece)?.id
  const key = [step.kind, own, piece.turn, piece.firstPetal, piece.side, step.free, joins, alike].join('|')
  return { key, neighbours }
}

const keyOf = ({ across, down, wraps }: Neighbour): string => `${across},${down}${wraps ? ' wraps' : ''}`

/** Letters for the places at which neighbours lie, from the left clockwise; null where there are too many. */
function lettersFor(plan: Plan, places: readonly Neighbour[]): ReadonlyMap<string, string> | null {
  const taken = new Set(keyMarks(mapGround(plan, 'ink')).map(({ code }) => code))
  const free = [...LETTERS, ...DOUBLED].filter((letter) => !taken.has(letter))
  const angle = ({ across, down }: Neighbour): number => Math.atan2(down, across)
  const far = ({ across, down }: Neighbour): number => Math.hypot(across, down)
  const turn = (at: Neighbour): number => (angle(at) + 3 * Math.PI) % (2 * Math.PI)
  const unique = new Map(places.map((at) => [`${at.across},${at.down}`, at]))
  if (unique.size > free.length) return null
  const sorted = [...unique].sort(([, a], [, b]) => turn(a) - turn(b) || far(a) - far(b))
  return new Map(sorted.map(([key], i) => [key, free[i]!]))
}

function waysOf(plan: Plan): ReadonlyMap<OrderStep, JoinWay> {
  const byLabel = new Map(placedPieces(plan).map((piece) => [piece.label, piece]))
  const groups = new Map<string, { steps: OrderStep[]; manner: Manner }>()
  for (const step of plan.order) {
    const manner = step.words === '' ? null : mannerOf(plan, byLabel, step)
    if (!manner) continue
    const group = groups.get(manner.key)
    if (group) group.steps.push(step)
    else groups.set(manner.key, { steps: [step], manner })
  }
  const shared = [...groups.values()].filter(({ steps }) => steps.length >= LEAST_USES)
  const letters = lettersFor(
    plan,
    shared.flatMap(({ manner }) => [...manner.neighbours.values()]),
  )
  const ways = new Map<OrderStep, JoinWay>()
  if (!letters) return ways
  shared.forEach(({ steps, manner }, i) => {
    const [step] = steps as [OrderStep]
    const letterOf = (at: Neighbour): string => letters.get(`${at.across},${at.down}`)!
    const neighbours = [...manner.neighbours].map(([label, at]) => ({
      letter: letterOf(at),
      where: neighbourWords(at),
      at,
      piece: byLabel.get(label)!,
    }))
    const way: JoinWay = {
      number: i + 1,
      kind: step.kind,
      words: wordsOf(step.pattern, (label) => letterOf(manner.neighbours.get(label)!)),
      neighbours: neighbours.sort((a, b) => (a.letter < b.letter ? -1 : 1)),
      step,
      piece: pieceAt(plan, step.motif)!,
      uses: steps.length,
    }
    for (const each of steps) ways.set(each, way)
  })
  return ways
}

/** Into which part of the order each step comes: fillers and half motifs into that of the motif before them. */
function partsOf(plan: Plan): ((piece: PlacedPiece) => Omit<OrderPart, 'runs'>) | null {
  const { order } = plan.settled
  const none = { number: 0, colourway: '' }
  if (order === 'colourway') return ({ colourway }) => ({ ...none, of: 'colourway', colourway })
  if (workedByRows(mapRows(plan))) return ({ row }) => ({ ...none, of: 'row', number: row })
  const [first] = plan.order
  const middle = pieceAt(plan, first?.motif)
  if (order !== 'centre' || !middle) return null
  const offset = plan.arrangement !== 'straight-rows'
  return ({ row, x }) => {
    const halves = Math.round(Math.abs(x - middle.x) / (plan.pitch.column / 2))
    return { ...none, of: 'ring', number: Math.ceil(ringAt(Math.abs(row - middle.row), halves, offset)) }
  }
}

/** Which ways a row is made of, and how often each: rows of one kind have the same. */
function kindOf(runs: readonly OrderRun[]): string | null {
  if (runs.some(({ way }) => way === null)) return null
  const long = runs.filter(({ steps }) => steps.length > 1)
  return runs
    .map(({ way, steps }) => {
      const count = long.length === 1 && steps.length > 1 ? 'n' : String(steps.length)
      return `${way!.number}×${count}`
    })
    .join(' ')
}

function rowKinds(parts: readonly OrderPart[]): RowKind[] {
  const kinds = new Map<string, { rows: number[]; runs: readonly OrderRun[]; sameLength: boolean }>()
  const lengths = (runs: readonly OrderRun[]): string => runs.map(({ steps }) => steps.length).join(' ')
  for (const { of, number, runs } of parts) {
    const key = of === 'row' ? kindOf(runs) : null
    if (key === null) continue
    const kind = kinds.get(key)
    if (!kind) kinds.set(key, { rows: [number], runs, sameLength: true })
    else {
      kind.rows.push(number)
      kind.sameLength &&= lengths(runs) === lengths(kind.runs)
    }
  }
  return [...kinds.values()].filter(({ rows }) => rows.length > 1)
}

/** Half motifs or fillers that follow each other from a run on, but for those that are told by themselves. */
export function additionsFrom(runs: readonly OrderRun[], from: number, told: boolean): readonly OrderRun[] {
  const { kind } = runs[from]!.steps[0]!
  const end = runs.findIndex(
    ({ way, steps }, i) => i > from && (steps[0]!.kind !== kind || (told && way === null)),
  )
  return runs.slice(from, end < 0 ? runs.length : end)
}

/** The same where nothing is told of how each is joined. */
export const withoutWays = ({ parts }: OrderList): OrderList => ({
  ...{ ways: [], kinds: [] },
  parts: parts.map((part) => ({ ...part, runs: part.runs.map(({ steps }) => ({ way: null, steps })) })),
})

/**
 * The same where motifs are joined by the dots of the map, since nearly every one would have words of its own: the motifs
 * of each part row by row.
 */
export const byRows = ({ parts }: OrderList, plan: Plan): OrderList => ({
  ...{ ways: [], kinds: [] },
  parts: parts.map((part) => {
    const runs: { way: null; row: number; steps: OrderStep[] }[] = []
    for (const step of part.runs.flatMap(({ steps }) => steps)) {
      const row = pieceAt(plan, step.motif)?.row ?? 0
      const run = runs.at(-1)
      if (run && run.row === row && run.steps[0]!.kind === step.kind) run.steps.push(step)
      else runs.push({ way: null, row, steps: [step] })
    }
    return { ...part, runs }
  }),
})

/** The whole order of work: ways of joining, the steps part by part, and the kinds of its rows. */
export const orderList = remembered((plan: Plan): OrderList => {
  const ways = waysOf(plan)
  const partOf = partsOf(plan)
  const parts: (Omit<OrderPart, 'runs'> & { runs: { way: JoinWay | null; steps: OrderStep[] }[] })[] = []
  const told = plan.order.some(({ words }) => words !== '')
  for (const step of plan.order) {
    const piece = pieceAt(plan, step.motif)
    const own =
      piece && partOf && step.kind === 'motif'
        ? partOf(piece)
        : (parts.at(-1) ?? { of: 'all' as const, number: 0, colourway: '' })
    const { of, number, colourway } = own
    let part = parts.at(-1)
    if (!part || part.of !== of || part.number !== number || part.colourway !== colourway) {
      part = { of, number, colourway, runs: [] }
      parts.push(part)
    }
    const way = ways.get(step) ?? null
    const run = part.runs.at(-1)
    const isAlike = run && run.way === way && run.steps[0]!.kind === step.kind
    if (isAlike && (way !== null || !told)) run.steps.push(step)
    else part.runs.push({ way, steps: [step] })
  }
  const used = [...new Set(ways.values())]
  return { ways: used, parts, kinds: rowKinds(parts) }
})
