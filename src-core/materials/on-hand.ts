/** What is on hand of a yarn: grams that were weighed, and balls that were counted. */
import type { Yarn } from '../../shared-types/project'
import type { Grams } from '../units/quantity'
import { isWithin } from '../fields/field'
import { YARN } from '../fields/yarn'
import { isUsable, isUsableOrZero } from '../units/usable'

/** Grams on hand in all; balls whose weight is not known are left out. */
export function gramsOnHand({ onHandGrams, onHandBalls, ballGrams }: Yarn): Grams {
  const weighed = isUsableOrZero(onHandGrams) ? onHandGrams : 0
  const counted = isUsableOrZero(onHandBalls) && isUsable(ballGrams) ? onHandBalls * ballGrams : 0
  return weighed + counted
}

/**
 * How many motifs were made when what is on hand was counted: it is held against what was left to make then. 0: at the
 * beginning, or nobody said what there is.
 */
export function countedAt({ onHandGrams, onHandBalls, onHandAt }: Yarn): number {
  const isTold = isUsableOrZero(onHandGrams) || isUsableOrZero(onHandBalls)
  return isTold && onHandAt !== undefined && isWithin(onHandAt, YARN.onHandAt) ? onHandAt : 0
}
