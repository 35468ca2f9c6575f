/** Traced outlines for tests: by hand, and of motifs that were measured. */
import type { MeasuredMotif, Trace } from '../../../shared-types/project'
import { measuredAccount } from '../../../src-core/motif/measured'

export const accountOfMeasured = (
  motif: Omit<MeasuredMotif, 'id' | 'kind'>,
  hand: 'left' | 'right' = 'right',
  growth = 0,
) => measuredAccount({ id: 'm', kind: 'measured', ...motif } as MeasuredMotif, { hand, growth, terms: 'US' })

/** A flower as it is measured, traced to hundredths of a millimetre: by its own outline, tips and dips. */
export function traceOf(petals: number, overTips: number, overValleys: number): Required<Trace> {
  const { account } = accountOfMeasured({ outline: 'petals', petals, overTips, overValleys })
  const each = account!.outline.length / petals
  const hundredths = (value: number) => Math.round(value * 100) / 100
  return {
    points: account!.outline.map(({ x, y }) => [hundredths(x), hundredths(y)]),
    tips: Array.from({ length: petals }, (_, k) => k * each),
    dips: Array.from({ length: petals }, (_, k) => (k + 0.5) * each),
  }
}
