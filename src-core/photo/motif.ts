/** What was measured in a picture as a motif of a project. */
import type { MeasuredMotif } from '../../shared-types/project'
import type { PhotoMeasures } from './photo'

const tenth = (value: number): number => Math.round(value * 10) / 10

/** The measured motif, in tenths of a millimetre; null where the outline does not repeat. */
export function measuredFrom(measures: PhotoMeasures, name: string): MeasuredMotif | null {
  const { kind, petals } = measures
  const overTips = tenth(measures.overTips)
  const overValleys = tenth(measures.overValleys)
  const common = { id: 'motif', name, kind: 'measured' } as const
  switch (kind) {
    case 'other':
      return null
    case 'petals':
      return { ...common, outline: 'petals', petals, overTips, overValleys }
    case 'round':
      return { ...common, outline: 'round', across: overTips }
    default:
      return { ...common, outline: kind, sideToSide: overValleys, pointToPoint: overTips }
  }
}
