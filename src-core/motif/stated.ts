/**
 * Sizes of a motif that the page of its rounds states: they rule as a measure does, but nobody has put a ruler on a
 * motif, so that they are told as stated, and held against the gauge.
 */
import type { Finding } from '../../shared-types/finding'
import type { MeasuredSizes, Motif } from '../../shared-types/project'
import { finding } from '../findings/finding'
import { lengthValue } from '../findings/quantities'
import { GAUGE_CONSTANTS, sizeSpread } from '../stitches/gauge'
import type { ResolvedGauge } from '../stitches/gauge'
import type { StitchKey } from '../stitches/table'
import { formatNumber } from '../units/format'
import type { Millimetres } from '../units/quantity'
import { MEASURED_SPREAD } from './constants'

export type SizeName = Exclude<keyof MeasuredSizes & string, 'ruler' | 'blocked' | 'asMeasured'>

/** mm. Less than a file keeps: a size that differs by more was entered. */
const SAME = 1e-3

/** Whether some sizes of a motif are as the page states them: at least one is given, and none was measured. */
export function areStated(
  { stated = {} }: Pick<Motif, 'stated'>,
  sizes: MeasuredSizes,
  names: readonly SizeName[],
): boolean {
  const isGiven = (name: SizeName): boolean => typeof sizes[name] === 'number' && sizes[name] > 0
  const given = names.filter(isGiven)
  const isStated = (name: SizeName): boolean => Math.abs((stated[name] ?? 0) - (sizes[name] as number)) < SAME
  return given.length > 0 && given.every(isStated)
}

/** The motif with a size that somebody entered, be it the one that the page states. */
export function withoutStated<Kind extends Motif>(motif: Kind, name: string): Kind {
  if (motif.stated?.[name] === undefined) return motif
  const { [name]: _, ...stated } = motif.stated
  const { stated: _all, ...rest } = motif
  return (Object.keys(stated).length > 0 ? { ...rest, stated } : rest) as Kind
}

/** How far the next motif may be off a stated size: as far as the gauge of whoever works it is. */
export function statedSpread(gauge: ResolvedGauge, tallest?: StitchKey): number {
  if (gauge.provenance === 'rule-of-thumb') return GAUGE_CONSTANTS.yarnSpread
  return tallest === undefined ? gauge.spread : sizeSpread(gauge, tallest)
}

/**
 * A stated size against the one that rounds and gauge come to: a note from 1 % on, a warning where both can no longer
 * be right, the gauge within its spread and the page within what a ruler may be off.
 */
export function statedFindings(
  stated: Millimetres,
  expected: Millimetres,
  gauge: ResolvedGauge,
  tallest: StitchKey,
): Finding[] {
  if (gauge.provenance === 'rule-of-thumb') return []
  const percent = (stated / expected - 1) * 100
  if (Math.abs(percent) < 1) return []
  const spread = sizeSpread(gauge, tallest)
  const apart =
    stated * (1 + MEASURED_SPREAD) < expected * (1 - spread) ||
    stated * (1 - MEASURED_SPREAD) > expected * (1 + spread)
  const values = {
    percent: formatNumber(Math.abs(percent), 0),
    direction: percent > 0 ? 'larger' : 'smaller',
    stated: lengthValue(stated),
    expected: lengthValue(expected),
  }
  return [finding(apart ? 'motif/stated-against-gauge' : 'motif/stated-size', '', values)]
}
