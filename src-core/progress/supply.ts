/** What the plan says of one yarn while a work grows, motif by motif. */
import type { ByKind, Range } from '../../shared-types/plan'
import { materials } from '../materials/materials'
import { NO_RANGE } from '../materials/range'
import { remembered } from '../memo'
import type { Grams } from '../units/quantity'
import { PROGRESS } from './constants'
import type { Marking } from './marks'
import { countKinds } from './pieces'
import { leftOf } from './work'
import type { Done, Work } from './work'

/** A work as it grows, piece by piece: first what is made, then the working order. One for all of its yarns. */
const growing = remembered((work: Work, marking: Marking) => {
  const others = work.pieces.map((_, i) => i).filter((piece) => !marking.isMade(piece))
  const sequence = [...marking.made, ...others]
  const place = new Int32Array(sequence.length)
  sequence.forEach((piece, i) => (place[piece] = i))
  /** Once so many are made; motifs still to come are joined as they are made. */
  const doneAt = (count: number): Done => {
    const isMade = (piece: number): boolean => place[piece]! < count
    return {
      isMade,
      isJoined: (piece) => isMade(piece) && (marking.isJoined(piece) || !marking.isMade(piece)),
      // Made before it was weighed, it is part of what was used.
      edging: marking.edging && count > 0,
    }
  }
  const known = new Map<number, ReadonlyMap<string, Range>>()
  /** What all that follows takes of every yarn once so many are made. */
  const gramsAfter = (count: number): ReadonlyMap<string, Range> => {
    let grams = known.get(count)
    if (!grams) {
      const { yarns } = materials(leftOf(work, doneAt(count)))
      known.set(count, (grams = new Map(yarns.map((need) => [need.id, need.grams]))))
    }
    return grams
  }
  return { sequence, doneAt, gramsAfter }
})

/** What the first so many pieces are: those that are made, then those that come next. */
export const kindsOf = (work: Work, marking: Marking, count: number): ByKind =>
  countKinds(
    growing(work, marking)
      .sequence.slice(0, count)
      .map((piece) => work.pieces[piece]!),
  )

/** What the plan says of one yarn while a work grows. */
export function supplyOf(work: Work, marking: Marking, yarn: string) {
  const { sequence, doneAt, gramsAfter } = growing(work, marking)
  const rangeAfter = (count: number): Range => gramsAfter(count).get(yarn) ?? NO_RANGE
  const after = (count: number): Grams => rangeAfter(count).expected
  return {
    /** What all that follows takes once so many are made: as expected, and with its range. */
    after,
    rangeAfter,
    /** Working number of the first piece in this yarn after so many. */
    nextIn(count: number): number {
      const more = firstWith(
        count,
        sequence.length,
        (later) => after(count) - after(later) > PROGRESS.tolerance,
      )
      return Number(work.pieces[sequence[more - 1] ?? -1]?.label ?? 0)
    },
    /** What the plan says the first piece in this yarn after so many takes of it; 0 where there is none. */
    oneAfter(count: number): Grams {
      const goes = (later: number) => after(count) - after(later)
      const next = firstWith(count, sequence.length, (later) => goes(later) > PROGRESS.tolerance)
      return goes(next)
    },
    /** How many count as joined once so many are made. */
    joinedAt: (count: number): number => sequence.filter(doneAt(count).isJoined).length,
    /** Working number of the last motif up to the last piece in this yarn among the first so many; 0 where there is none. */
    lastIn(count: number): number {
      const same = firstWith(0, count, (less) => after(less) - after(count) <= PROGRESS.tolerance)
      // Half motifs and fillers have the numbers after those of all motifs: they would be taken for a far one.
      const motif = sequence.slice(0, same).findLast((piece) => work.pieces[piece]!.kind === 'motif')
      return Number(work.pieces[motif ?? sequence[same - 1] ?? -1]?.label ?? 0)
    },
  }
}

/** The largest number from `low` to `high` that holds; all up to it do, and `low` does. */
export function lastWith(low: number, high: number, holds: (count: number) => boolean): number {
  let [from, to] = [low, high]
  while (from < to) {
    const middle = Math.ceil((from + to) / 2)
    if (holds(middle)) from = middle
    else to = middle - 1
  }
  return from
}

/** The smallest number from `low` to `high` that holds; all from it on do, and `high` does. */
const firstWith = (low: number, high: number, holds: (count: number) => boolean): number =>
  lastWith(low, high, (count) => count === low || !holds(count - 1))

export type Supply = ReturnType<typeof supplyOf>
