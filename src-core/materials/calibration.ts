/** How a weighed motif corrects the stitch model (M42, M44): what it weighs over what its stitches say. */
import type { MotifAccount } from '../../shared-types/plan'
import type { Colourway, Motif, Yarn } from '../../shared-types/project'
import { MATERIAL_CONSTANTS } from './constants'
import { gramsPerMetre } from './ledger'
import type { MotifYarn } from './motif-yarn'
import { colourSections, yarnOfSlot } from './sections'

export interface Calibration {
  /** Real yarn over modelled yarn; 1 without calibration. */
  readonly factor: number
  readonly calibrated: boolean
  /** Relative half width of what the stitch model says from here on. */
  readonly spread: number
  /** The ratio that was found but is too far off to be believed, or null. */
  readonly refused: number | null
}

const UNCALIBRATED: Calibration = {
  factor: 1,
  calibrated: false,
  spread: MATERIAL_CONSTANTS.modelSpread,
  refused: null,
}

/**
 * The calibration that a motif gives: its weighed grams over the grams of its stitches and tails in the
 * yarns of `colourway`. Needs written rounds, a weight for every colour and the ball bands of its yarns.
 */
export function calibrate(
  yarns: readonly Yarn[] | undefined,
  motif: Motif | null,
  account: MotifAccount | null,
  yarn: MotifYarn,
  colourway: Colourway | undefined,
  tail: number,
): Calibration {
  const rounds = motif?.kind === 'rounds' && account !== null && Object.keys(account.stitches).length > 0
  if (!rounds || yarn.slots.some((slot) => slot.source !== 'weighed')) return UNCALIBRATED
  const perMetre = (id: string | undefined): number | null => {
    const found = yarns?.find((candidate) => candidate.id === id)
    return found ? gramsPerMetre(found) : null
  }
  let weighed = 0
  let modelled = 0
  for (const { slot, amount } of yarn.slots) {
    const density = perMetre(yarnOfSlot(colourway, slot))
    const metres = account.metres[slot]
    if (density === null || metres === undefined || !(metres > 0)) return UNCALIBRATED
    weighed += amount.expected
    modelled += metres * density
  }
  for (const section of colourSections(motif, colourway)) {
    modelled += ((MATERIAL_CONSTANTS.tailsPerSection * tail) / 1000) * (perMetre(section.yarn) ?? 0)
  }
  const factor = weighed / modelled
  const { low, high } = MATERIAL_CONSTANTS.calibrationLimits
  if (!Number.isFinite(factor) || factor <= 0) return UNCALIBRATED
  if (factor < low || factor > high) return { ...UNCALIBRATED, refused: factor }
  return { factor, calibrated: true, spread: MATERIAL_CONSTANTS.calibratedSpread, refused: null }
}
