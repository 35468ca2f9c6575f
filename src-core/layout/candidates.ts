/** M26: counts of an arrangement in a rotation that come near to a size, and which of them goes before another. */
import type { Degrees } from '../units/quantity'
import { BLANKET } from '../fields/blanket'
import { betweenLevel } from '../joins/between'
import { gapesMostly } from '../joins/checks'
import { holds } from '../joins/holding'
import type { BlanketCounts } from './blanket'
import { LEAST_ROUND, MOST_MOTIFS } from './constants'
import { countPlaces } from './places'
import type { Kind, Tryout } from './trials'

export interface Wish {
  readonly width: number
  readonly height: number
}

/** How the motifs of an arrangement are rotated. */
export interface Rotation {
  readonly turn: Degrees
  readonly alternateTurn: Degrees
}

export interface Candidate {
  readonly counts: BlanketCounts
  /** One motif by itself does hold, but is nothing to put before others. */
  readonly holds: boolean
  readonly miss: number
  /** Most of its join points gape. */
  readonly gapes: boolean
  /** How much of it is joined between spaces, in quarters. */
  readonly between: number
}

/**
 * What holds comes first, whatever its size; then what closes without a gap at most joins; then what meets at its
 * spaces; then what comes nearer.
 */
export const byHolding = (a: Omit<Candidate, 'counts'>, b: Omit<Candidate, 'counts'>): number =>
  Number(b.holds) - Number(a.holds) ||
  Number(a.gapes) - Number(b.gapes) ||
  a.between - b.between ||
  a.miss - b.miss

/** How counts are joined, by their patch. */
export function judgedByPatch(
  { trials }: Tryout,
  counts: BlanketCounts,
): Pick<Candidate, 'holds' | 'gapes' | 'between'> {
  const trial = trials.of(counts)
  return {
    holds: countPlaces(counts) > 1 && holds(trial),
    gapes: gapesMostly(trial.wide),
    between: betweenLevel(trial.between),
  }
}

export const missOf = (size: Wish, wish: Wish): number =>
  Math.abs(size.width - wish.width) / wish.width + Math.abs(size.height - wish.height) / wish.height

/** What a kind of arrangement in a rotation has of counts: whatever else the rotation is part of stays out of it. */
const inRotation = (kind: Kind, { turn, alternateTurn }: Rotation) => ({
  ...{ inTheRound: false, ...kind },
  ...{ turn, alternateTurn },
})

/** The counts of one kind of arrangement in one rotation that come nearest to `wish`, in no order. */
export function nearest(tryout: Tryout, kind: Kind, rotation: Rotation, wish: Wish): Candidate[] {
  const bare = { ...inRotation(kind, rotation), columns: 0, rows: 0 }
  const candidate = (counts: BlanketCounts): Candidate => ({
    counts,
    ...judgedByPatch(tryout, counts),
    miss: missOf(tryout.size(counts), wish),
  })
  if (kind.arrangement === 'rings') {
    const at = (rings: number) => ({ ...bare, alternateTurn: 0, rings })
    return ringCounts((rings) => tryout.size(at(rings)), wish).map((rings) => candidate(at(rings)))
  }
  return countsNear(tryout, kind, rotation, wish)
    .filter((counts) => countPlaces(counts) <= MOST_MOTIFS)
    .map(candidate)
}

/** Columns and rows nearest `wish` (mm), however many motifs that are. */
export function countsNear(tryout: Tryout, kind: Kind, rotation: Rotation, wish: Wish): BlanketCounts[] {
  const { arrangement, alternateRows } = kind
  const at = (columns: number, rows: number) => ({ ...inRotation(kind, rotation), rings: 0, columns, rows })
  const shortest = alternateRows === 'oneFewer' && arrangement === 'offset-rows' ? 2 : 1
  const least = kind.inTheRound ? LEAST_ROUND : shortest
  const size = (columns: number, rows: number) => tryout.size(at(columns, rows))
  const small = size(least, 3)
  const across = size(least + 1, 3).width - small.width
  const down = (size(least, 5).height - small.height) / 2
  const wide = near(small.width - (least - 1) * across, across, wish.width, least)
  return evenRound(
    tryout,
    kind,
  )(wide).flatMap((columns) =>
    near(small.height - 2 * down, down, wish.height, 1).map((rows) => at(columns, rows)),
  )
}

/** Motifs that alternate in a row that closes come out even in whole turns of so many: else two alike meet there. */
export function evenTurn({ trials }: Tryout, { inTheRound = false }: Pick<Kind, 'inTheRound'>): number {
  const { by, count } = trials.ground.cells.pattern
  return inTheRound && by === 'cell' ? count : 1
}

/** Of numbers in a row, those that come out even where it closes. */
const evenRound =
  (tryout: Tryout, kind: Kind) =>
  (columns: readonly number[]): readonly number[] => {
    const count = evenTurn(tryout, kind)
    if (count === 1) return columns
    const most = Math.floor(BLANKET.columns.most / count)
    const turns = columns.flatMap((each) => [Math.floor(each / count), Math.ceil(each / count)])
    const least = Math.ceil(LEAST_ROUND / count)
    return [...new Set(turns.map((times) => count * Math.min(most, Math.max(least, times))))]
  }

/** The counts round the one that fits best, `first` being the size with one and `step` what each more adds. */
function near(first: number, step: number, wish: number, least: number): number[] {
  const best = step > 0 ? Math.floor(1 + (wish - first) / step) : least
  return [...new Set([-1, 0, 1, 2].map((d) => Math.min(BLANKET.rows.most, Math.max(least, best + d))))]
}

/** The numbers of rings round the one that fits best. */
function ringCounts(size: (rings: number) => Wish, wish: Wish): number[] {
  const one = size(1)
  const two = size(2)
  const reach = (wished: number, a: number, b: number) => 1 + (wished - a) / (b - a)
  const best = (reach(wish.width, one.width, two.width) + reach(wish.height, one.height, two.height)) / 2
  return [
    ...new Set([-1, 0, 1, 2].map((d) => Math.min(BLANKET.rings.most, Math.max(0, Math.floor(best) + d)))),
  ]
}

/** The fields of a blanket that an arrangement with its counts and rotation fills. */
export const layoutOf = ({
  arrangement,
  alternateRows,
  turn,
  alternateTurn,
  ...counts
}: Omit<BlanketCounts, 'inTheRound'>) => ({
  arrangement,
  alternateRows,
  turn,
  ...(arrangement === 'rings'
    ? { rings: counts.rings }
    : { columns: counts.columns, rows: counts.rows, alternateTurn }),
})
