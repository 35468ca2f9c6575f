/**
 * M15: a motif that was measured against the size that its written rounds come to. The measure counts; but where both
 * are known and no hand and no blocking explains how far they are apart, one of them belongs to something else.
 */
import type { Finding, InTerms } from '../../shared-types/finding'
import type { MotifAccount } from '../../shared-types/plan'
import type { MeasuredSizes } from '../../shared-types/project'
import { finding, spelledValue } from '../findings/finding'
import { fineLengthValue } from '../findings/quantities'
import { sizeSpread } from '../stitches/gauge'
import type { ResolvedGauge } from '../stitches/gauge'
import type { StitchKey } from '../stitches/table'
import { formatNumber } from '../units/format'
import type { Millimetres } from '../units/quantity'
import { MEASURED_SPREAD, MOST_GROWTH } from './constants'
import { layingOf, readingsOf, rulerWords } from './ruler'
import { ruling } from './ruling'

/** Two sizes of one kind, in mm as a ruler shows them, before blocking where it was measured so. */
interface Compared {
  readonly what: string | InTerms
  readonly measured: Millimetres
  readonly expected: Millimetres
}

type Circles = Pick<MotifAccount, 'shape' | 'petals' | 'overTips' | 'overValleys'>

/** What is held against each other: of a flower what its ruler shows, else the measure that was taken. */
export function comparedSizes(measured: MeasuredSizes, own: Circles, expected: Circles): Compared {
  if (own.shape === 'petals') {
    const laying = layingOf(own.petals, measured.ruler)
    const lead = (circles: Circles) => readingsOf(laying, circles, 1).lead
    const { lead: what } = rulerWords(laying, 'US')
    return { what: spelledValue(what), measured: lead(own), expected: lead(expected) }
  }
  const isTips = own.shape === 'round' || ruling(measured, own.shape, 'tips') !== undefined
  const [one, other] = isTips ? [own.overTips, expected.overTips] : [own.overValleys, expected.overValleys]
  const what = own.shape === 'round' ? 'across' : isTips ? 'point to point' : 'side to side'
  return { what, measured: one, expected: other }
}

/** Beyond these shares of what the rounds come to a measure cannot be of the same motif. */
export function boundsAgainst(gauge: ResolvedGauge, tallest: StitchKey) {
  const spread = sizeSpread(gauge, tallest)
  // Whichever of the two was blocked, swatch or motif.
  return {
    least: (1 - spread) / (1 + MEASURED_SPREAD) / (1 + MOST_GROWTH),
    most: ((1 + spread) * (1 + MOST_GROWTH)) / (1 - MEASURED_SPREAD),
  }
}

/** A warning where a measure is farther from the rounds than gauge and blocking allow; null where they may agree. */
export function againstRounds(
  { what, measured, expected }: Compared,
  gauge: ResolvedGauge,
  tallest: StitchKey,
): Finding | null {
  const isByHook = gauge.provenance === 'rule-of-thumb'
  if (!(measured > 0 && expected > 0) || (isByHook && gauge.hook === null)) return null
  const { least, most } = boundsAgainst(gauge, tallest)
  const share = measured / expected
  if (share >= least && share <= most) return null
  const values = {
    what,
    measured: fineLengthValue(measured),
    expected: fineLengthValue(expected),
    percent: formatNumber(Math.abs(share - 1) * 100, 0),
    direction: share > 1 ? 'larger' : 'smaller',
  }
  return finding(isByHook ? 'motif/measured-against-hook' : 'motif/measured-against-gauge', '', values)
}
