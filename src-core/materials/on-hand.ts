/** What is on hand of a yarn: grams that were weighed, and balls that were counted. */
import type { Yarn } from '../../shared-types/project'
import type { Grams } from '../units/quantity'
import { isUsable, isUsableOrZero } from '../units/usable'

/** Grams on hand in all; balls whose weight is not known are left out. */
export function gramsOnHand({ onHandGrams, onHandBalls, ballGrams }: Yarn): Grams {
  const weighed = isUsableOrZero(onHandGrams) ? onHandGrams : 0
  const counted = isUsableOrZero(onHandBalls) && isUsable(ballGrams) ? onHandBalls * ballGrams : 0
  return weighed + counted
}
