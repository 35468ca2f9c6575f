/** Reads the numbers of a kit; null with findings where one of them cannot be used. */
import type { Finding } from '../../../shared-types/finding'
import type { Kit } from '../../../shared-types/project'
import { finding } from '../../findings/finding'
import { formatNumber } from '../../units/format'
import { isUsableOrZero } from '../../units/usable'
import { KIT_CONSTANTS } from './constants'

export interface Extra {
  readonly name: string
  readonly perKit: number
  readonly price: number | null
  readonly grams: number | null
}

export interface KitNumbers {
  readonly count: number
  readonly windTo: number
  readonly sparePercent: number
  readonly packaging: number
  readonly packagingGrams: number | null
  readonly margin: number
  readonly feeFixed: number
  readonly feeShare: number
  readonly taxPercent: number
  readonly extras: readonly Extra[]
}

/** The numbers of a kit. */
export function readKit(kit: Kit): { numbers: KitNumbers | null; findings: Finding[] } {
  const findings: Finding[] = []
  const read = (
    value: number | undefined,
    where: string,
    what: string,
    otherwise: number,
    expected: string,
    accepts: (value: number) => boolean,
  ): number => {
    if (value === undefined) return otherwise
    if (accepts(value)) return value
    const received = formatNumber(value, 3)
    findings.push(finding('kit/value', `layout.kit.${where}`, { what, received, expected }))
    return otherwise
  }
  const money = (value: number | undefined, where: string, what: string): number =>
    read(value, where, what, 0, 'an amount from 0 on', isUsableOrZero)
  const { mostKits, mostSpares, mostTax, windSteps, windTo } = KIT_CONSTANTS
  const percent = (value: number | undefined, where: string, what: string, most: number): number =>
    read(value, where, what, 0, `a percentage from 0 to ${formatNumber(most)}`, (p) => p >= 0 && p <= most)
  const whole = `a whole number from 1 to ${formatNumber(mostKits)}`
  const numbers: KitNumbers = {
    count: read(
      kit.count,
      'count',
      'the run',
      1,
      whole,
      (n) => Number.isInteger(n) && n >= 1 && n <= mostKits,
    ),
    windTo: read(
      kit.windTo,
      'windTo',
      'the step of winding',
      windTo,
      `a number of grams from ${windSteps.least} to ${formatNumber(windSteps.most)}`,
      (grams) => grams >= windSteps.least && grams <= windSteps.most,
    ),
    sparePercent: percent(kit.sparePercent, 'sparePercent', 'the spares', mostSpares),
    packaging: money(kit.packaging, 'packaging', 'the packaging'),
    packagingGrams:
      kit.packagingGrams === undefined ? null : money(kit.packagingGrams, 'packagingGrams', 'its weight'),
    margin: percent(kit.marginPercent, 'marginPercent', 'the margin', 1e6),
    feeFixed: money(kit.fees?.fixed, 'fees.fixed', 'the fixed fees'),
    feeShare: percent(kit.fees?.sharePercent, 'fees.sharePercent', 'the share of fees', 1e6),
    taxPercent: percent(kit.taxPercent, 'taxPercent', 'the tax', mostTax),
    extras: (kit.extras ?? []).map((extra, i) => ({
      name: extra.name,
      perKit: read(
        extra.count,
        `extras[${i}].count`,
        extra.name,
        1,
        'a whole number from 0 to 10,000',
        (n) => Number.isInteger(n) && n >= 0 && n <= 10_000,
      ),
      price: extra.price === undefined ? null : money(extra.price, `extras[${i}].price`, extra.name),
      grams: extra.grams === undefined ? null : money(extra.grams, `extras[${i}].grams`, extra.name),
    })),
  }
  return { numbers: findings.length === 0 ? numbers : null, findings }
}
