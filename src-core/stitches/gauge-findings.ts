import type { Finding, FindingTarget } from '../../shared-types/finding'
import type { StitchGauge } from '../../shared-types/project'
import { finding } from '../findings/finding'
import { formatNumber } from '../units/format'
import { GAUGE_CONSTANTS, resolveGauge } from './gauge'
import type { ResolvedGauge } from './gauge'

/** A warning for each value of a gauge that could not be used. `where` names whose gauge it is. */
export const gaugeFindings = (gauge: ResolvedGauge, where: string, target?: FindingTarget): Finding[] =>
  gauge.problems.map(({ field, received, expected }) =>
    finding(
      field === 'stitch' ? 'gauge/unknown-stitch' : 'gauge/invalid-value',
      `${where}.${field}`,
      { received, expected },
      target,
    ),
  )

/** A warning where a gauge was counted with another hook than the one that is worked with. */
export function otherHookFindings(
  gauge: StitchGauge | undefined,
  where: string,
  target?: FindingTarget,
): Finding[] {
  const { countedWith = 0, hook = 0 } = gauge ?? {}
  const isHook = (mm: number) => mm >= GAUGE_CONSTANTS.hooks.least && mm <= GAUGE_CONSTANTS.hooks.most
  if (!isCounted(gauge) || !isHook(countedWith) || !isHook(hook) || countedWith === hook) return []
  const values = { before: hookWords(countedWith), now: hookWords(hook) }
  return [finding('gauge/other-hook', `${where}.hook`, values, target)]
}

/** Hooks are sold by millimetres everywhere, whatever else they are called. */
export const hookWords = (mm: number): string => `${formatNumber(mm, 2)} mm`

/** Whether a gauge tells sizes by itself: a swatch that was counted, or rounds that were measured. */
export function isCounted(gauge: StitchGauge | undefined): boolean {
  if (!gauge) return false
  // Which terms its stitch is in tells nothing of that.
  const { provenance, roundsMeasure } = resolveGauge({ ...gauge, stitch: undefined }, 'US')
  return provenance === 'gauge' || roundsMeasure !== null
}
