/**
 * Arrangements of one motif that look different from each other: rows side by side, rows half a place aside, rings, each
 * in the rotation in which it is joined best, and in one more that an eye tells apart. The start offers them, and they
 * are among what fits best.
 */
import type { MotifAccount } from '../../shared-types/plan'
import type { BlanketLayout, JoinRule } from '../../shared-types/project'
import { gapesMostly } from '../joins/checks'
import { holds } from '../joins/holding'
import { byHolding, nearest } from './candidates'
import type { Candidate, Wish } from './candidates'
import { periodOf } from './trials'
import type { Depth, Kind, Trial, Tryout } from './trials'

/**
 * Of two arrangements that hold, the one that is usual for the shape goes first, unless the other has this many
 * times its joins, of those that close by themselves.
 */
const USUAL_WEIGHT = 1.15

/** Rings come as near to a size as they may and still be worth a picture: |Δw|/W + |Δh|/H. */
const RINGS_MISS = 0.35

/** Motifs with four or eight sides or petals lie side by side; everything else nestles in offset rows. */
const isSquarish = ({ shape, petals }: MotifAccount): boolean =>
  (shape === 'straight' || shape === 'petals') && (petals === 4 || petals === 8)

/** Whether rings close evenly: every neighbour in the six directions sees the same of the motif. */
const isSixfold = ({ shape, petals }: MotifAccount): boolean =>
  shape === 'round' || ((shape === 'straight' || shape === 'petals') && petals % 6 === 0)

/** One arrangement in one rotation, with the counts that come nearest. */
export interface Look {
  readonly kind: Kind
  readonly rule: JoinRule
  readonly trial: Trial
  readonly candidate: Candidate
  readonly weight: number
}

/** The looks of one motif that hold and lie closed at most joins, the best first; where none does, the best of them. */
export function looksWorth(
  tryout: Tryout,
  rule: JoinRule,
  wish: Wish,
  layout: BlanketLayout,
): readonly Look[] {
  const holding = (depth: Depth) => looksOf(tryout, rule, wish, depth, layout)
  const usual = holding('usual')
  const looks = usual.some(({ candidate }) => candidate.holds) ? usual : holding('fine')
  const firm = looks.filter(({ candidate }) => candidate.holds && !candidate.gapes)
  return firm.length > 0 ? firm : looks.slice(0, 1)
}

/** Share of the wished size, both sides added, by which other rows must come nearer to be proposed (our own choice). */
const CLEARLY_NEARER = 0.02

/** The looks of one motif, the best first. */
export function looksOf(
  tryout: Tryout,
  rule: JoinRule,
  wish: Wish,
  depth: Depth,
  { inTheRound = false, outlineShape }: Pick<BlanketLayout, 'inTheRound' | 'outlineShape'>,
): Look[] {
  const isCutOut = outlineShape !== undefined
  const { account } = tryout.trials.ground
  const straight: Kind = { arrangement: 'straight-rows', alternateRows: 'same', inTheRound }
  // Rows that all have the same number lie half a place aside: what is cut out of them is not alike left and right.
  const offset: Kind = {
    ...{ arrangement: 'offset-rows', inTheRound },
    alternateRows: isCutOut ? 'oneFewer' : 'same',
  }
  const uneven: Kind = { arrangement: 'offset-rows', alternateRows: 'oneFewer' }
  const usual = isSquarish(account) ? straight : offset
  /** None where its motifs would be more than one plan can hold. */
  const look = (kind: Kind, trial: Trial): Look[] =>
    nearest(tryout, kind, trial, wish)
      .sort(byHolding)
      .slice(0, 1)
      .map((candidate) => ({
        ...{ kind, rule, trial, candidate },
        weight: trial.closing * (kind === usual ? USUAL_WEIGHT : 1),
      }))
  const firsts: Look[] = []
  const seconds: Look[] = []
  for (const kind of [straight, offset]) {
    const [best, ...others] = closingFirst(tryout.trials.rotations(kind, depth))
    if (!best) continue
    const [even] = look(kind, best)
    const [fewer] = kind === offset && !inTheRound ? look(uneven, best) : []
    if (even) firsts.push(fewer ? nearerOf(even, fewer) : even)
    const other = others.find(
      (trial) => holds(trial) && isPlain(trial, account) && isUnlike(trial, best, account),
    )
    if (other) seconds.push(...look(kind, other))
  }
  // Rows that end evenly hold where none that end unevenly do; joined in the round, none end.
  if (!inTheRound && !firsts.some(({ candidate }) => candidate.holds)) {
    const [best] = tryout.trials.rotations(uneven, depth)
    if (best) firsts.push(...look(uneven, best))
  }
  const rings: Kind = { arrangement: 'rings', alternateRows: 'same' }
  const anyHolds = firsts.some(({ candidate }) => candidate.holds)
  if (!inTheRound && (isSixfold(account) || !anyHolds)) {
    const [best] = tryout.trials.rotations(rings, depth)
    const [round] = best ? look(rings, best) : []
    if (round && (round.candidate.miss <= RINGS_MISS || !anyHolds)) seconds.unshift(round)
  }
  const better = (a: Look, b: Look) =>
    Number(b.candidate.holds) - Number(a.candidate.holds) ||
    a.trial.pieces - b.trial.pieces ||
    a.trial.single - b.trial.single ||
    Number(a.candidate.gapes) - Number(b.candidate.gapes) ||
    a.candidate.between - b.candidate.between ||
    b.weight - a.weight
  // The usual one of squares goes first whatever the count of joins: that is how squares are laid.
  const sorted = firsts.sort(better)
  const isSquare = account.shape === 'straight' && isSquarish(account)
  const leading = isSquare
    ? sorted.findIndex(({ kind, candidate }) => kind === usual && candidate.holds && !candidate.gapes)
    : -1
  if (leading > 0) sorted.unshift(...sorted.splice(leading, 1))
  return [...sorted, ...seconds].sort(
    (a, b) =>
      Number(b.candidate.holds) - Number(a.candidate.holds) ||
      Number(a.candidate.gapes) - Number(b.candidate.gapes) ||
      a.candidate.between - b.candidate.between,
  )
}

/** Of rotations that hold, one that closes at most of its join points goes before those that do not. */
function closingFirst(trials: readonly Trial[]): readonly Trial[] {
  if (!gapesMostly(trials[0]?.wide)) return trials
  const better = trials.find((trial) => holds(trial) && !gapesMostly(trial.wide))
  return better ? [better, ...trials.filter((trial) => trial !== better)] : trials
}

/** Rows that are shifted end evenly, unless shorter ones hold as well and come clearly nearer to the size. */
const nearerOf = (even: Look, uneven: Look): Look =>
  uneven.candidate.holds && uneven.candidate.miss + CLEARLY_NEARER < even.candidate.miss ? uneven : even

/** Straight up or between two petals, every row alike or by half a petal: what an eye tells apart. */
function isPlain({ turn, alternateTurn }: Trial, account: MotifAccount): boolean {
  const half = periodOf(account) / 2
  const isOf = (degrees: number) =>
    Math.abs(degrees % half) < 1e-6 || Math.abs((degrees % half) - half) < 1e-6
  return isOf(turn) && isOf(alternateTurn)
}

/** Two rotations look alike where their rows are the same two, whichever comes first. */
function isUnlike(a: Trial, b: Trial, account: MotifAccount): boolean {
  const period = account.shape === 'leaf' ? 180 : periodOf(account)
  const rows = ({ turn, alternateTurn }: Trial) =>
    [turn, turn + alternateTurn]
      .map((degrees) => Math.round((degrees % period) * 1000))
      .sort((one, other) => one - other)
      .join()
  return rows(a) !== rows(b)
}
