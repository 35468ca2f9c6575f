/** What is there of a yarn, held against what it is needed for: the whole, or what is left to make. */
import type { PlanNumbers, YarnNeed } from '../../shared-types/plan'
import type { Grams } from '../units/quantity'

export interface HeldAgainst {
  /** Grams needed at the most: of the whole, or of what was left when it was weighed or counted again. */
  readonly need: Grams
  /** Grams there are: on hand at the beginning, or what was weighed or counted. */
  readonly there: Grams
}

/** Of a yarn that was weighed or counted again what is left counts, of all others the whole. */
export function heldAgainst(
  { id, grams, onHand }: Pick<YarnNeed, 'id' | 'grams' | 'onHand'>,
  { forecast }: PlanNumbers['progress'],
): HeldAgainst {
  const again = forecast.find(({ yarn }) => yarn === id)
  if (!again) return { need: grams.high, there: onHand }
  const { left, missing, over } = again
  return { need: Math.max(0, left + missing - over), there: left }
}
