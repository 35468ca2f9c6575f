/**
 * M32, for a child: what is offered without openings that small hands fit through goes first, then what has smaller
 * ones. The one place that decides it: for what a start offers, for fits and for ways to a size.
 */
import type { Millimetres } from '../units/quantity'
import { CHILD_OPENING } from './constants'

/** Whether small hands fit through openings that are so wide across. */
export const isForHands = (opening: Millimetres | undefined): boolean => (opening ?? 0) >= CHILD_OPENING

/** By what openings are compared for a child: none of those through which no hand fits is worse than another. */
export const openForHands = (opening: Millimetres | undefined): Millimetres =>
  isForHands(opening) ? opening! : 0

/**
 * What closes for a child first, what holds before all else; among equals the order stays. Where no opening is known,
 * as of what is for nobody small, all of it stays.
 */
export function closedForChild<Of>(
  list: readonly Of[],
  of: (one: Of) => { readonly holds: boolean; readonly opening: Millimetres | undefined },
): Of[] {
  const known = list.map((one) => ({ one, ...of(one) }))
  if (known.every(({ opening }) => opening === undefined)) return [...list]
  known.sort(
    (a, b) =>
      Number(b.holds) - Number(a.holds) ||
      (Math.abs(openForHands(a.opening) - openForHands(b.opening)) < SAME
        ? 0
        : openForHands(a.opening) - openForHands(b.opening)),
  )
  return known.map(({ one }) => one)
}

/** mm: openings that differ by less are as wide. */
const SAME: Millimetres = 0.01
