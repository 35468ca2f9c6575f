/** Reads the numbers of a kit; null with findings where one of them cannot be used. */
import type { Finding } from '../../../shared-types/finding'
import type { Kit } from '../../../shared-types/project'
import { isWithin } from '../../fields/field'
import type { Field } from '../../fields/field'
import { EXTRA, KIT } from '../../fields/kit'
import { finding } from '../../findings/finding'
import { formatNumber } from '../../units/format'
import { USABLE_OR_ZERO } from '../../units/usable'

export interface Extra {
  readonly name: string
  readonly perKit: number
  readonly price: number | null
  readonly grams: number | null
}

export interface KitNumbers {
  readonly count: number
  readonly windTo: number
  /** Every portion in whole lengths, or with joined ends where that saves yarn. */
  readonly lengths: 'whole' | 'joined'
  readonly sparePercent: number
  readonly packaging: number
  readonly packagingGrams: number | null
  readonly margin: number
  readonly feeFixed: number
  readonly feeShare: number
  /** The share of fees is charged on all that the buyer pays, tax included. */
  readonly feesOnTax: boolean
  readonly taxPercent: number
  readonly extras: readonly Extra[]
}

/** What each kind of number is called where another one is expected. */
const EXPECTED: Readonly<Partial<Record<Field['kind'], string>>> = {
  count: 'a whole number',
  mass: 'a number of grams',
  percent: 'a percentage',
}

/** "a whole number from 1 to 100,000", "an amount from 0 on". */
function expected({ kind, least = 0, most = 0 }: Field): string {
  if (most === USABLE_OR_ZERO.most) return 'an amount from 0 on'
  return `${EXPECTED[kind] ?? 'an amount'} from ${formatNumber(least, 1)} to ${formatNumber(most)}`
}

/** The numbers of a kit. */
export function readKit(kit: Kit): { numbers: KitNumbers | null; findings: Finding[] } {
  const findings: Finding[] = []
  const read = (
    value: number | undefined,
    field: Field,
    what = field.what ?? '',
    where = field.path,
  ): number | undefined => {
    if (value === undefined || isWithin(value, field)) return value
    const values = { what, received: formatNumber(value, 3), expected: expected(field) }
    findings.push(finding('kit/value', where, values))
    return undefined
  }
  /** A share of the price that leaves nothing of it is told together with the other one (kit/margin). */
  const share = (value: number | undefined, field: Field): number =>
    read(value, { ...field, most: USABLE_OR_ZERO.most }) ?? 0
  const numbers: KitNumbers = {
    count: read(kit.count, KIT.count) ?? KIT.count.initial,
    windTo: read(kit.windTo, KIT.windTo) ?? KIT.windTo.initial,
    lengths: kit.lengths ?? 'joined',
    sparePercent: read(kit.sparePercent, KIT.sparePercent) ?? 0,
    packaging: read(kit.packaging, KIT.packaging) ?? 0,
    packagingGrams: read(kit.packagingGrams, KIT.packagingGrams) ?? null,
    margin: share(kit.marginPercent, KIT.marginPercent),
    feeFixed: read(kit.fees?.fixed, KIT.feeFixed) ?? 0,
    feeShare: share(kit.fees?.sharePercent, KIT.feeShare),
    feesOnTax: kit.fees?.on === 'paid',
    taxPercent: read(kit.taxPercent, KIT.taxPercent) ?? 0,
    extras: (kit.extras ?? []).map(({ name, count, price, grams }, i) => {
      const own = (value: number | undefined, field: Field) =>
        read(value, field, name, field.path.replace('[]', `[${i}]`))
      return {
        name,
        perKit: own(count, EXTRA.count) ?? EXTRA.count.initial,
        price: own(price, EXTRA.price) ?? null,
        grams: own(grams, EXTRA.grams) ?? null,
      }
    }),
  }
  return { numbers: findings.length === 0 ? numbers : null, findings }
}
