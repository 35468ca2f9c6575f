/**
 * M26: of motifs with straight sides, what closes between them goes before what leaves openings: hexagons half a place
 * aside, squares side on side. Open lace is offered behind it, and says how wide it is open. The one place that decides
 * it: for what a start offers, for fits and for what there is.
 */
import type { Millimetres } from '../units/quantity'
import { LEAST_ACROSS } from './holes'

interface Judged {
  readonly holds: boolean
  /** Whether any of its joins does. */
  readonly gapes: boolean
  /** How wide across its widest opening is. */
  readonly leaves: Millimetres
  /** Whether it comes to the size: then it goes before all that is open, else only the first of them. */
  readonly isNear: boolean
}

/** Those that hold and close, or open least where nothing closes. */
export function closingOf<Of>(list: readonly Of[], of: (one: Of) => Judged): Of[] {
  const firm = list.map((one) => ({ one, ...of(one) })).filter(({ holds, gapes }) => holds && !gapes)
  const least = Math.min(...firm.map(({ leaves }) => leaves))
  return firm.filter(({ leaves }) => leaves < least + LEAST_ACROSS).map(({ one }) => one)
}

/** What closes first, as far as it comes near to the size; the best of it in any case. Among equals the order stays. */
export function closingOnesFirst<Of>(list: readonly Of[], of: (one: Of) => Judged): Of[] {
  const closing = closingOf(list, of)
  const near = closing.filter((one) => of(one).isNear)
  const first = near.length > 0 ? near : closing.slice(0, 1)
  return [...first, ...list.filter((one) => !first.includes(one))]
}
