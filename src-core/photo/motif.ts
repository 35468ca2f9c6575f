/** What was measured in a picture as a motif of a project. */
import type { MeasuredMotif, Trace } from '../../shared-types/project'
import { simplify } from '../geometry/simplify'
import { TRACE_POINTS } from '../motif/constants'
import { tracedOutline } from '../motif/traced'
import type { Millimetres } from '../units/quantity'
import { evenOutline } from './even'
import type { PhotoMeasures } from './photo'
import { reaches } from './symmetry'
import { hollowsOf, meanOf, tipsOf } from './tips'

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
      return asItIs(lineAsItIs(measures.outline))
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

/** The even line with a tip at 12 o'clock: as many points to each petal, a dip between each two tips. */
function evenLine({ evenOutline, petals }: PhotoMeasures): Trace {
  const each = evenOutline.length / petals
  const reach = evenOutline.map(([x, y]) => Math.hypot(x, y))
  const place = (at: number) => ((at % reach.length) + reach.length) % reach.length
  // Tips of petals that take turns lie where they lie, and so do the dips between them.
  const extreme = (about: number, by: number, sign: 1 | -1) => {
    let best = place(about)
    for (let at = Math.ceil(about - by); at <= about + by; at++)
      if (sign * (reach[place(at)]! - reach[best]!) > 1e-9) best = place(at)
    return best
  }
  const all = Array.from({ length: petals }, (_, k) => k * each)
  const tips = all.map((tip) => extreme(tip, each / 2 - 1, 1))
  const dips = tips.map((tip, k) => {
    const between = (k + 1 < petals ? tips[k + 1]! : tips[0]! + reach.length) - tip
    return extreme(Math.floor(tip + between / 2), Math.floor(between / 2) - 1, -1)
  })
  return { points: rounded(evenOutline), tips, dips }
}

/** With the tips and sizes that the line has as it is planned. */
function asItIs(traced: Trace): Measured {
  const read = tracedOutline(traced)
  if ('refused' in read) return { outline: 'traced', traced }
  const [overTips, overValleys] = [tenth(2 * read.tip), tenth(2 * read.valley)]
  return { outline: 'traced', petals: read.tips.length, overTips, overValleys, traced }
}

/** The line as it lies, in as many points as its shape needs; its tips are found in it. */
function lineAsItIs(line: Line): Trace {
  const points = line.map(([x, y]) => ({ x, y }))
  let kept = simplify(points, PLAIN)
  for (let by = PLAIN; kept.length > TRACE_POINTS; by *= 1.5) kept = simplify(points, by)
  return { points: rounded(kept.map(({ x, y }) => [x, y] as const)) }
}

/** Direction of the first tip of a reach that repeats `order` times, clockwise from 12 o'clock, in radians. */
function firstTip(reach: Float64Array, order: number): number {
  let [cosine, sine] = [0, 0]
  reach.forEach((far, at) => {
    const turn = (2 * Math.PI * at * order) / reach.length
    cosine += far * Math.cos(turn)
    sine += far * Math.sin(turn)
  })
  return Math.atan2(sine, cosine) / order
}

/** Other sizes of the same picture, as sure as those that were measured. */
function sizes({ overTips, overValleys, range, rangeOverValleys }: PhotoMeasures, tip: number, dip: number) {
  const about = ({ low, high }: PhotoMeasures['range'], of: number, is: number) => ({
    low: (low / of) * is,
    high: (high / of) * is,
  })
  return {
    ...{ overTips: 2 * tip, overValleys: 2 * dip },
    range: about(range, overTips, 2 * tip),
    rangeOverValleys: about(rangeOverValleys, overValleys, 2 * dip),
  }
}

/** Sides of straight-sided kinds. */
const SIDES = { square: 4, hexagon: 6, octagon: 8 } as const
/** Petals to begin with where none were found. */
const FIRST_PETALS = 6

/** The measures of the same line taken as another kind of motif, or with another number of petals than was found. */
export function takenAs(
  measures: PhotoMeasures,
  kind: PhotoMeasures['kind'],
  petals = measures.petals || FIRST_PETALS,
): PhotoMeasures {
  const order = kind === 'petals' ? petals : kind in SIDES ? SIDES[kind as keyof typeof SIDES] : 0
  if (kind === measures.kind && order === measures.petals) return measures
  const reach = reaches(
    measures.outline.map(([x, y]) => ({ x, y })),
    { x: 0, y: 0 },
  )
  const mean = meanOf([...reach])
  const taken = { ...measures, kind, petals: order, symmetry: order }
  if (order === 0) {
    const [tip, dip] = kind === 'round' ? [mean, mean] : [Math.max(...reach), Math.min(...reach)]
    return { ...taken, ...sizes(measures, tip, dip), evenOutline: [], turn: 0 }
  }
  const turn = firstTip(reach, order)
  const symmetry = {
    ...{ middle: { x: 0, y: 0 }, reach, mean, order, repeat: order, within: false, doubtful: false, turn },
    ...{ share: 1, depth: 0, rest: 0, rival: 0, finer: 0, stands: true, hidden: false },
    ...{ spectrum: { powers: [], mean }, slits: null, astride: false },
  }
  const tip = meanOf(tipsOf(symmetry, 0).map(({ far }) => far))
  const dip = Math.min(tip, meanOf(hollowsOf(symmetry)))
  return {
    ...taken,
    ...sizes(measures, tip, dip),
    evenOutline: evenOutline(symmetry, tip, dip, 1),
    turn: (((turn * 180) / Math.PI) % (360 / order)) + (turn < 0 ? 360 / order : 0),
  }
}
