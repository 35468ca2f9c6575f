/**
 * M15: measures and weights that were taken with another hook than the one that is worked with now. They stay until
 * somebody takes them again, and what the gauge alone would make of them can be taken as an estimate.
 */
import type { Finding } from '../../shared-types/finding'
import type { MotifAccount } from '../../shared-types/plan'
import type { MeasuredSizes, Motif, StitchGauge, Terms } from '../../shared-types/project'
import { finding } from '../findings/finding'
import { fineLengthValue, massValue } from '../findings/quantities'
import { isWithin } from '../fields/field'
import { GAUGE } from '../fields/motif'
import { resolveGauge } from '../stitches/gauge'
import { hookWords } from '../stitches/gauge-findings'
import type { Grams, Millimetres } from '../units/quantity'
import { isUsable } from '../units/usable'
import { comparedSizes } from './against-rounds'

/** What was taken of a motif: its sizes with a ruler, its weight on a scale. */
export const TAKEN = { sizes: 'measuredWith', weight: 'weighedWith' } as const
export type Taken = keyof typeof TAKEN

/** How something that was taken with another hook stands to what is worked now. */
export interface OtherHook {
  readonly before: Millimetres
  readonly now: Millimetres
  /** How many times as large every stitch is now, by gauge; by the hooks while the new one was not counted. */
  readonly factor: number
}

const hookOf = (gauge: StitchGauge | undefined): Millimetres | undefined =>
  isUsable(gauge?.hook) && isWithin(gauge.hook, GAUGE.hook) ? gauge.hook : undefined

/** With which other hook something of a motif was taken; null where it was taken with the one that it has. */
export function otherHookOf(motif: Motif, taken: Taken, terms: Terms): OtherHook | null {
  const with_ = motif[TAKEN[taken]]
  const [before, now] = [hookOf(with_), hookOf(motif.gauge)]
  if (before === undefined || now === undefined || before === now) return null
  const isCountedAgain = motif.gauge?.countedWith === undefined
  const [one, other] = [resolveGauge(with_, terms), resolveGauge(motif.gauge, terms)]
  const byGauge =
    one.roundsMeasure && other.roundsMeasure && with_?.rounds === motif.gauge?.rounds
      ? (motif.gauge?.across ?? 0) / (with_?.across ?? 1)
      : one.provenance === other.provenance
        ? other.width / one.width
        : 0
  return { before, now, factor: isCountedAgain && isUsable(byGauge) ? byGauge : now / before }
}

const hooks = ({ before, now }: OtherHook) => ({ before: hookWords(before), now: hookWords(now) })

/** The sizes of a motif, wherever its kind keeps them. */
export const sizesOf = (motif: Motif): MeasuredSizes =>
  motif.kind === 'measured' ? motif : (motif.measured ?? {})

/** A warning where sizes were measured with another hook. */
export function otherHookSizes(motif: Motif, account: MotifAccount, terms: Terms): Finding[] {
  const other = otherHookOf(motif, 'sizes', terms)
  if (!other || account.provenance !== 'other-hook') return []
  const { shape, petals, overTips, overValleys } = account
  const grown = {
    ...{ shape, petals },
    overTips: overTips * other.factor,
    overValleys: overValleys * other.factor,
  }
  const sizes = comparedSizes(sizesOf(motif), account, grown)
  const values = {
    ...{ what: sizes.what, ...hooks(other) },
    measured: fineLengthValue(sizes.measured),
    expected: fineLengthValue(sizes.expected),
  }
  return [finding('motif/measured-with-other-hook', `motif ${motif.id}`, values, { motif: motif.id })]
}

/** A warning where a motif of so many grams was weighed with another hook. */
export function otherHookWeight(motif: Motif, grams: Grams, where: string, terms: Terms): Finding[] {
  const other = otherHookOf(motif, 'weight', terms)
  if (!other || !isUsable(grams)) return []
  const values = {
    ...{ motif: motif.name ?? motif.id, ...hooks(other) },
    weighed: massValue(grams),
    expected: massValue(grams * other.factor),
  }
  return [finding('yarn/weighed-with-other-hook', where, values, { motif: motif.id })]
}
