/** M7, M8: how much of what a round is too long by makes it larger; the rest ruffles (M17) and stands up from the table. */
import type { Millimetres } from '../../units/quantity'
import { FLATNESS } from './constants'

/**
 * The share of its growth that a round of so many mm of stitches keeps on a way around of so many mm: all of it up to
 * what still lies flat, none from where it ruffles, as folds take up what there is no room for (ours).
 */
export function standsOut(length: Millimetres, around: Millimetres): number {
  const { mayRuffle, ruffles } = FLATNESS
  const fullness = around > 0 ? length / around : 0
  return Math.min(1, Math.max(0, (ruffles - fullness) / (ruffles - mayRuffle)))
}
