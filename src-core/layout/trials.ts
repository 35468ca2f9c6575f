/**
 * M24: arrangements tried on a small patch. Where two motifs are joined follows from their rotations and from how
 * they lie to each other alone, and both repeat over a lattice: so a patch of a few rows tells whether a blanket of
 * any size holds, and how firmly, in under a millisecond.
 */
import type { BetweenSpaces, Holds, MotifAccount, WideGaps } from '../../shared-types/plan'
import type { Hand } from '../../shared-types/project'
import { compareHolding, holdingOf, holds } from '../joins/holding'
import { betweenSpaces, isIntoSpaces } from '../joins/between'
import { isStretched, wideGaps } from '../joins/checks'
import { findNodes } from '../joins/nodes'
import type { Node } from '../joins/nodes'
import { anchorsUnder, pairWay, stretchLimit } from '../joins/rule'
import type { Rule, Rules } from '../joins/rule'
import type { Joining } from '../../shared-types/project'
import type { ResolvedGauge } from '../stitches/gauge'
import { memoised } from '../memo'
import type { Degrees, Millimetres } from '../units/quantity'
import { layBlanket } from './blanket'
import type { BlanketCounts } from './blanket'
import { holeKinds, openingsOf } from './holes'
import type { Lattice } from './lattice'
import { latticeFor, placedAccounts } from './stages'
import type { Cells } from './cells'

/** Motifs under one way of joining: everything that joins follow from besides the arrangement. */
interface Asked {
  /** Of the motifs, by kind. */
  readonly accounts: readonly MotifAccount[]
  /** How they alternate; what was put in or left out by hand is not tried. */
  readonly cells: Pick<Cells, 'pattern'>
  readonly rules: Rules
  readonly joining: Joining | undefined
  readonly gauge: ResolvedGauge
  readonly hand: Hand
}

interface Ground extends Asked {
  /** Of the first motif. */
  readonly account: MotifAccount
  readonly rule: Rule
  /** The widest of all. */
  readonly reach: Millimetres
  readonly pair: ReturnType<typeof pairWay>
  /** Gap that closes by itself. */
  readonly stretchLimit: Millimetres
}

const joinsOf = (nodes: readonly Pick<Node, 'members'>[]): number =>
  nodes.reduce((sum, { members }) => sum + members.length - 1, 0)

/** How an arrangement is joined. Points and gaps are those of the patch: to be compared with each other only. */
export interface Trial extends Holds {
  readonly turn: Degrees
  readonly alternateTurn: Degrees
  /** Degrees after which the motif looks the same. */
  readonly period: Degrees
  readonly points: number
  /** A point of three motifs is worth two joins, as two separate ones would be. */
  readonly joins: number
  readonly spread: Millimetres
  /** Points that gape wider than what closes by itself; null where none does. */
  readonly wide: WideGaps | null
  /** Points at which a motif lies between two of its spaces; null where none does. */
  readonly between: BetweenSpaces | null
  /** Of the joins, those that close by themselves. */
  readonly closing: number
  /** Radius of the largest opening. Costs more than all the rest: asked for only where the rest is equal. */
  readonly opening: () => Millimetres
}

/** The usual rotations: some turns, every row alike or by half a petal. Fine: hundreds of pairs of turns. */
export type Depth = 'usual' | 'fine'

/** Which rows or rings, without how many and how they are rotated. */
export type Kind = Pick<BlanketCounts, 'arrangement' | 'alternateRows'> &
  Partial<Pick<BlanketCounts, 'inTheRound'>>

/** The largest patch: each kind of neighbourhood occurs in it, at the edges too. Rows keep their parity. */
const PATCH = { columns: 5, rows: 5, rings: 2 } as const

/** Lattices kept at a time. */
const LATTICES = 12

/** Rotations tried within the angle after which a motif looks the same: the usual ones, and where those do not hold. */
const STEPS = 12
const FINE_STEPS = 24

/** The counts of the patch that stands for a blanket. */
function patchOf(counts: BlanketCounts): BlanketCounts {
  const { columns, rows, rings } = counts
  return {
    ...counts,
    columns: Math.min(columns, PATCH.columns),
    rows: rows <= PATCH.rows ? rows : PATCH.rows + ((rows + 1) % 2),
    rings: Math.min(rings, PATCH.rings),
  }
}

/** Degrees after which a motif looks the same. */
export function periodOf({ shape, petals }: Pick<MotifAccount, 'shape' | 'petals'>): Degrees {
  return shape === 'round' || shape === 'leaf' ? 360 : 360 / petals
}

/** Gaps that differ by less than this are alike, in mm. */
const ALIKE: Millimetres = 0.01

/** Below zero when `a` is better: it holds better, has more joins, less to bridge. */
const compareTrials = (a: Trial, b: Trial): number =>
  compareHolding(a, b) || b.joins - a.joins || Math.round((a.spread - b.spread) / ALIKE)

/** Sorted, the best first; of those that are equal in all else, the one with the smallest openings. */
export function bestFirst(trials: readonly Trial[]): readonly Trial[] {
  const sorted = [...trials].sort(compareTrials)
  const equals = sorted.filter((trial) => compareTrials(trial, sorted[0]!) === 0)
  // Openings are costly to find, and most of what is equal is the same seen in a mirror or with its rows swapped.
  const seen = new Set<string>()
  const unlike = equals.filter((trial) => !seen.has(lookOf(trial)) && seen.add(lookOf(trial)))
  const best =
    unlike.length < 2
      ? unlike[0]
      : unlike.reduce((least, trial) => (trial.opening() < least.opening() - ALIKE ? trial : least))
  return best ? [best, ...sorted.filter((trial) => trial !== best)] : sorted
}

/** The same for rotations that look alike: their rows are the same two, whichever comes first, or mirrored. */
function lookOf({ turn, alternateTurn, period }: Trial): string {
  const rows = (sign: 1 | -1) =>
    [turn, turn + alternateTurn]
      .map(
        (degrees) =>
          ((Math.round(sign * degrees * 1000) % (period * 1000)) + period * 1000) % (period * 1000),
      )
      .map((each) => Math.round(each) % Math.round(period * 1000))
      .sort((a, b) => a - b)
      .join()
  const [one, mirrored] = [rows(1), rows(-1)]
  return one < mirrored ? one : mirrored
}

/** Whatever was tried of one ground, each once. */
export class Trials {
  readonly ground: Ground
  readonly #lattice = memoised(
    (arrangement: BlanketCounts['arrangement'], turn: Degrees, alternateTurn: Degrees) => {
      const { accounts, cells, rules } = this.ground
      const counts = { arrangement, turn, alternateTurn }
      const pattern = { ...cells.pattern, arrangement, rings: 0 }
      return latticeFor(
        accounts.map(({ outline }) => outline),
        pattern,
        counts,
        (one, other) => rules.of(one, other).gap,
      )
    },
    LATTICES,
  )
  readonly #tried = new Map<string, Trial>()
  readonly #rotations = new Map<string, readonly Trial[]>()

  constructor(ground: Ground) {
    this.ground = ground
  }

  lattice({
    arrangement,
    turn,
    alternateTurn,
  }: Pick<BlanketCounts, 'arrangement' | 'turn' | 'alternateTurn'>): Lattice {
    return this.#lattice(arrangement, turn, alternateTurn)
  }

  /** How a blanket of these counts is joined, judged on its patch. */
  of(counts: BlanketCounts): Trial {
    const patch = patchOf(counts)
    const { arrangement, alternateRows, columns, rows, rings, turn, alternateTurn, inTheRound } = patch
    const key = `${arrangement} ${inTheRound} ${alternateRows} ${columns} ${rows} ${rings} ${turn} ${alternateTurn}`
    return remembered(this.#tried, key, () => this.exactly(patch))
  }

  /** The same of every motif, however many there are. */
  exactly(counts: BlanketCounts): Trial {
    const { account, accounts, rules, reach, pair, hand } = this.ground
    const lattice = this.lattice(counts)
    const { placements, round } = layBlanket(lattice, counts)
    const placed = placedAccounts(accounts, lattice, hand)
    const anchors = anchorsUnder(placed, rules)
    const nodes = findNodes(
      placements.map(({ x, y, turn, kind }) => ({ x, y, turn, kind, anchors: anchors[kind]! })),
      reach,
      { round, pair: accounts.length > 1 ? pair : undefined },
    )
    const { pieces, single } = holdingOf(placements.length, nodes)
    const spread = nodes.reduce((most, node) => Math.max(most, node.spread), 0)
    const limit = this.ground.stretchLimit
    let opening = -1
    return {
      turn: counts.turn,
      alternateTurn: counts.alternateTurn,
      period: periodOf(account),
      pieces,
      single: single.length,
      points: nodes.length,
      joins: joinsOf(nodes),
      spread,
      wide: wideGaps(nodes, limit),
      between: isIntoSpaces(this.ground.rule.rule)
        ? betweenSpaces({ nodes, anchors, placements, accounts: placed })
        : null,
      closing: joinsOf(nodes.filter((node) => !isStretched(node, limit))),
      opening: () => {
        if (opening >= 0) return opening
        // Worked out again rather than kept: of hundreds of trials only a few are asked.
        const again = this.lattice(counts)
        const found = openingsOf(again, counts, layBlanket(again, counts).placements, Math.min(spread, reach))
        return (opening = holeKinds(found)[0]?.radius ?? 0)
      },
    }
  }

  /**
   * The rotations of a kind of arrangement, the best first; on a patch of its own, so that they are the same for
   * every count. Motifs are never flipped: their wrong side would show.
   */
  rotations({ arrangement, alternateRows }: Kind, depth: Depth): readonly Trial[] {
    return remembered(this.#rotations, `${arrangement} ${alternateRows} ${depth}`, () => {
      const { account, rule } = this.ground
      const counts = { arrangement, alternateRows, ...PATCH, rows: PATCH.rows + 1, inTheRound: false }
      const at = (turn: Degrees, alternateTurn: Degrees) => this.of({ ...counts, turn, alternateTurn })
      if (account.shape === 'round' || rule.rule === 'apart') return [at(0, 0)]
      const period = periodOf(account)
      // Straight sides are joined flat to each other, or corner to corner: nothing between is worth a try.
      const steps = depth === 'fine' ? FINE_STEPS : account.shape === 'straight' ? 2 : STEPS
      const turns = angles(period, steps)
      const others = arrangement === 'rings' ? [0] : depth === 'fine' ? turns : angles(period, 2)
      return bestFirst(others.flatMap((other) => turns.map((turn) => at(turn, other))))
    })
  }

  /** The best rotation of a blanket: the first that holds at its own counts, else the least bad one. */
  best(counts: BlanketCounts, depth: Depth): Trial {
    const tried = this.rotations(counts, depth)
    const own = (trial: Trial) => this.of({ ...counts, turn: trial.turn, alternateTurn: trial.alternateTurn })
    const first = own(tried[0]!)
    if (holds(first)) return first
    // Small blankets and odd counts of rows have edges of their own.
    return tried.slice(1).reduce((best, trial) => {
      if (holds(best)) return best
      const here = own(trial)
      return compareHolding(here, best) < 0 ? here : best
    }, first)
  }

  /** The best of the usual rotations where one of them holds, else of many. */
  bestOfAll(counts: BlanketCounts): Trial {
    const usual = this.best(counts, 'usual')
    return holds(usual) ? usual : bestFirst([usual, this.best(counts, 'fine')])[0]!
  }
}

const angles = (period: Degrees, steps: number): Degrees[] =>
  Array.from({ length: steps }, (_, step) => (step * period) / steps)

function remembered<Value>(known: Map<string, Value>, key: string, make: () => Value): Value {
  const there = known.get(key)
  if (there !== undefined) return there
  const made = make()
  known.set(key, made)
  return made
}

/** Grounds tried so far, by motif: a window asks for the same ones again and again. */
const known = new WeakMap<MotifAccount, Map<string, Trials>>()

/** Ways of joining one motif that are kept: reach and gap change with every key that is typed there. */
const MOST_GROUNDS = 6

/** Everything tried of one motif under one way of joining, for as long as its account is in use. */
export function trialsOf(asked: Asked): Trials {
  const { accounts, rules, hand, joining, gauge } = asked
  const [account] = accounts as [MotifAccount, ...MotifAccount[]]
  const pair = pairWay(joining, accounts, rules, gauge)
  const kinds = accounts.map((_, kind) => kind)
  const reach = Math.max(...kinds.flatMap((one) => kinds.map((other) => pair(one, other).reach)))
  const rule = rules.of(0, 0)
  const smallest = accounts.reduce((least, each) => (each.overTips < least.overTips ? each : least))
  const limit = stretchLimit({ gap: rules.widest }, smallest, gauge)
  const ground: Ground = { ...asked, account, rule, reach, pair, stretchLimit: limit }
  // Of several motifs too much can differ: they are tried anew.
  if (accounts.length > 1) return new Trials(ground)
  const own = known.get(account) ?? new Map<string, Trials>()
  known.set(account, own)
  if (own.size > MOST_GROUNDS) own.clear()
  return remembered(own, `${rule.rule} ${rule.gap} ${reach} ${limit} ${hand}`, () => new Trials(ground))
}

/** By what arrangements of one blanket are compared without planning each. */
export interface Tryout {
  readonly trials: Trials
  /** The present counts. */
  readonly counts: BlanketCounts
  /** Finished size with other counts and rotations, in mm. */
  readonly size: (counts: BlanketCounts) => { width: number; height: number }
}
