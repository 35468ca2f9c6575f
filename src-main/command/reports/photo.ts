/** What was measured in a picture, in lines. */
import type { Yarn } from '../../../shared-types/project'
import type { PhotoMeasures } from '../../../src-core/photo/photo'
import { yarnLike } from '../../../src-core/photo/yarns'
import { formatLength } from '../../../src-core/units/format'

const KINDS = {
  petals: 'petals',
  round: 'round',
  square: 'square',
  hexagon: 'hexagon',
  octagon: 'octagon',
  other: 'no shape that repeats',
} as const

const length = (value: number): string =>
  `${formatLength(value, 'metric')} (${formatLength(value, 'imperial')})`

const likeness = (colour: string, yarns: readonly Yarn[]): string => {
  const like = yarnLike(colour, yarns)?.yarn
  return like ? ` like ${like.name ?? like.id}` : ''
}

/** Sizes in both units, petals, colours from the middle outwards. */
export function photoReport(measures: PhotoMeasures, yarns: readonly Yarn[]): string[] {
  const { kind, petals, overTips, overValleys, range, rangeOverValleys, colours } = measures
  const sided = kind !== 'petals' && kind !== 'other'
  return [
    kind === 'petals' ? `Petals: ${petals}` : `Shape: ${KINDS[kind]}`,
    ...(kind === 'round'
      ? [`Across: ${length(overTips)}`]
      : [
          `${sided ? 'Corner to corner' : 'Tip to tip'}: ${length(overTips)}`,
          `${sided ? 'Side to side' : 'Dip to dip'}: ${length(overValleys)}`,
        ]),
    `${kind === 'petals' ? 'Tip to tip lies between' : 'Between'} ${length(range.low)} and ${length(range.high)}`,
    ...(kind === 'petals'
      ? [`Dip to dip lies between ${length(rangeOverValleys.low)} and ${length(rangeOverValleys.high)}`]
      : []),
    `Yarn: ${colours.map(({ colour, share }) => `${colour} ${Math.round(100 * share)} %${likeness(colour, yarns)}`).join(', ')}`,
  ]
}
