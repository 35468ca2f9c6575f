/**
 * What is on hand of the yarn of a batch. The price counts all of it as bought new; what is still to be ordered is less by
 * the whole balls that lie there. Opened balls, and yarn that was weighed, are not counted on: nobody knows their lengths.
 */
import type { BoughtPack } from '../../../shared-types/plan'
import type { Yarn } from '../../../shared-types/project'
import { isUsableOrZero } from '../../units/usable'

/** Of the packs to be bought, how many lie there: whole balls of that size. */
export function ballsOnHand(yarn: Yarn | undefined, { grams, count }: BoughtPack): number {
  if (!yarn || yarn.ballGrams !== grams || !isUsableOrZero(yarn.onHandBalls)) return 0
  return Math.min(count, Math.floor(yarn.onHandBalls))
}
