/** What was measured in a picture as a motif of a project. */
import type { MeasuredMotif, Trace } from '../../shared-types/project'
import { simplify } from '../geometry/simplify'
import { TRACE_POINTS } from '../motif/constants'
import type { Millimetres } from '../units/quantity'
import type { PhotoMeasures } from './photo'

const tenth = (value: number): number => Math.round(value * 10) / 10
const hundredth = (value: number): number => Math.round(value * 100) / 100

/** Points off the line of their neighbours by less than this are stitches, not shape. */
const PLAIN: Millimetres = 0.1

type Line = PhotoMeasures['outline']

/** What a motif of a project takes from a photo, in tenths of a millimetre. */
export type Measured = Pick<
  MeasuredMotif,
  'outline' | 'petals' | 'overTips' | 'overValleys' | 'across' | 'sideToSide' | 'pointToPoint' | 'traced'
>

/**
 * The outline and measures of a motif. Petals keep their own line, evened out: the next motif has the same petals, but
 * not the same one that is bent. Where nothing repeats the line stands as it is.
 */
export function measuredOf(measures: PhotoMeasures): Measured {
  const { kind, petals } = measures
  const overTips = tenth(measures.overTips)
  const overValleys = tenth(measures.overValleys)
  switch (kind) {
    case 'other':
      return { outline: 'traced', traced: lineAsItIs(measures.outline) }
    case 'petals':
      return { outline: 'traced', petals, overTips, overValleys, traced: evenLine(measures) }
    case 'round':
      return { outline: 'round', across: overTips }
    default:
      return { outline: kind, sideToSide: overValleys, pointToPoint: overTips }
  }
}

/** The measured motif of a new project. */
export const measuredFrom = (measures: PhotoMeasures, name: string): MeasuredMotif => ({
  ...{ id: 'motif', name, kind: 'measured' },
  ...measuredOf(measures),
})

const rounded = (line: Line): number[][] => line.map((point) => point.map(hundredth))

/** The even line with a tip at 12 o'clock: as many points to each petal, a dip halfway between two tips. */
function evenLine({ evenOutline, petals }: PhotoMeasures): Trace {
  const each = evenOutline.length / petals
  const tips = Array.from({ length: petals }, (_, k) => k * each)
  return { points: rounded(evenOutline), tips, dips: tips.map((tip) => tip + each / 2) }
}

/** The line as it lies, in as many points as its shape needs; its tips are found in it. */
function lineAsItIs(line: Line): Trace {
  const points = line.map(([x, y]) => ({ x, y }))
  let kept = simplify(points, PLAIN)
  for (let by = PLAIN; kept.length > TRACE_POINTS; by *= 1.5) kept = simplify(points, by)
  return { points: rounded(kept.map(({ x, y }) => [x, y] as const)) }
}
