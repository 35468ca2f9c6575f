/**
 * What a ruler shows of a flower, and the circles through its tips and dips that follow (M16). Over an even number
 * of petals it lies from tip to tip and from dip to dip. With an odd number a dip lies opposite every tip: it lies
 * from tip to opposite dip, which is the sum of the two radii, or begins at the centre. Kept are always the
 * diameters of the two circles, in mm.
 */
import type { MotifAccount } from '../../shared-types/plan'
import { RULERS } from '../../shared-types/project'
import type { Ruler, Terms } from '../../shared-types/project'
import { figureLead } from './forms'
import { saying } from '../stitches/spelling'
import type { Millimetres } from '../units/quantity'

/** How the ruler lies: across the whole flower, or as an odd number of petals lets it. */
export type Laying = 'across' | Ruler

/** Whether a ruler cannot lie from tip to tip. */
export const isOdd = (petals: number): boolean => petals % 2 === 1

/** How a flower of so many petals is measured; odd ones from tip to opposite dip unless it is said otherwise. */
export const layingOf = (petals: number, ruler: Ruler | undefined): Laying =>
  isOdd(petals) ? (ruler ?? RULERS[0]) : 'across'

/** How the measures of a motif are told. */
export const layingOfAccount = ({ shape, petals, ruler }: MotifAccount): Laying =>
  shape === 'petals' ? layingOf(petals, ruler) : 'across'

/** Diameters of the circles through tips and dips; the second undefined where it was not measured. */
interface Circles {
  readonly overTips: Millimetres
  readonly overValleys: Millimetres | undefined
}

/** The two numbers read off the ruler. */
export interface Readings {
  readonly lead: Millimetres
  readonly second: Millimetres | undefined
}

/** Sums and halves of inches leave dust that no ruler shows. */
const dusted = (mm: Millimetres): Millimetres => Math.round(mm * 1e6) / 1e6

/** What the ruler shows. `share` is that of the dips' circle in the tips' one, where it was not measured. */
export function readingsOf(laying: Laying, { overTips, overValleys }: Circles, share: number): Readings {
  if (laying === 'across') return { lead: overTips, second: overValleys }
  const second = overValleys === undefined ? undefined : dusted(overValleys / 2)
  const lead = laying === 'centre' ? overTips / 2 : (overTips + (overValleys ?? share * overTips)) / 2
  return { lead: dusted(lead), second }
}

/** The first number that a ruler shows of a motif as it is planned. */
const leadReading = (account: MotifAccount): Millimetres =>
  readingsOf(layingOfAccount(account), account, 1).lead

/** The measure that a motif is known by, as a ruler shows it, with its name: 130 mm, "side to side". */
export function leadMeasure(account: MotifAccount, terms: Terms): readonly [Millimetres, string] {
  if (account.shape === 'straight') return [account.overValleys, 'side to side']
  if (account.shape === 'round') return [account.overTips, 'across']
  if (account.shape === 'leaf') return figureLead(account)
  return [leadReading(account), rulerWords(layingOfAccount(account), terms).lead]
}

/** The circles that follow from what the ruler shows; the second follows the first until it is measured. */
export function circlesOf(laying: Laying, { lead, second }: Readings, share: number): Circles {
  if (laying === 'across') return { overTips: lead, overValleys: second }
  const overValleys = second === undefined ? undefined : dusted(2 * second)
  if (laying === 'centre') return { overTips: dusted(2 * lead), overValleys }
  return {
    overTips: dusted(second === undefined ? (2 * lead) / (1 + share) : 2 * (lead - second)),
    overValleys,
  }
}

/** The second number as it is assumed while it was not measured. */
export function assumedSecond(laying: Laying, lead: Millimetres, share: number): Millimetres {
  const { overTips } = circlesOf(laying, { lead, second: undefined }, share)
  return laying === 'across' ? share * overTips : (share * overTips) / 2
}

/** The names of the two measures, small: "tip to opposite dip", "center to dip" (US). */
export function rulerWords(laying: Laying, terms: Terms): { readonly lead: string; readonly second: string } {
  const say = saying(terms)
  if (laying === 'across') return { lead: 'tip to tip', second: 'dip to dip' }
  const lead = laying === 'centre' ? say`centre to tip` : 'tip to opposite dip'
  return { lead, second: say`centre to dip` }
}

/** The measure that a motif is known by: tip to tip, side to side, or across. */
export const knownSize = ({ shape, overTips, overValleys }: MotifAccount): Millimetres =>
  shape === 'straight' ? overValleys : overTips

/** The measure that a motif is known by, with its name. */
export function leadingMeasure(account: MotifAccount): { readonly value: number; readonly words: string } {
  if (account.shape === 'straight') return { value: account.overValleys, words: 'side to side' }
  if (account.shape === 'round') return { value: account.overTips, words: 'across' }
  if (account.shape === 'leaf') {
    const [value, words] = figureLead(account)
    return { value, words }
  }
  // No ruler lies from tip to tip over an odd number of petals: what is told is the circle through the tips.
  return { value: account.overTips, words: isOdd(account.petals) ? 'through its tips' : 'tip to tip' }
}
