import type { Finding, FindingTarget } from '../../shared-types/finding'
import { finding } from '../findings/finding'
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
