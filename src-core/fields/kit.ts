/** The fields of a kit. Money in the project's currency. */
import { USABLE_OR_ZERO } from '../units/usable'
import { field } from './field'

const value = { code: 'kit/value' } as const
const money = { ...value, kind: 'money', ...USABLE_OR_ZERO, optional: true } as const
const mass = { ...value, kind: 'mass', ...USABLE_OR_ZERO, optional: true, placeholder: 'unknown' } as const
/** %. Of a price something must be left for the cost. */
const share = {
  code: 'kit/margin',
  kind: 'percent',
  least: 0,
  most: 99.99,
  under: 100,
  optional: true,
} as const
const percent = { ...value, kind: 'percent', least: 0, optional: true } as const

export const KIT = {
  count: field('kit', 'count', {
    ...{ ...value, kind: 'count', least: 1, most: 100_000, initial: 1, what: 'the batch' },
    label: 'Kits in the batch',
    doc: 'kits in the batch',
    change: 'change the number of kits',
  }),
  /** g. From a good scale to a whole cone (ours). */
  windTo: field('kit', 'windTo', {
    ...{ ...value, kind: 'mass', least: 0.1, most: 1000, initial: 1, what: 'the step of winding' },
    label: 'Round up to whole',
    doc: 'step that wound yarn is rounded up to',
    change: 'change the step of winding',
    hint: 'Wound from the high end of each range, so that nobody runs out. Enter what a {ball} weighs to put in whole {balls}.',
  }),
  sparePercent: field('kit', 'sparePercent', {
    ...{ ...percent, most: 500, placeholder: '0 %', what: 'the spares' },
    label: 'To spare',
    doc: 'spare kits, of the batch',
    change: 'change the spares',
  }),
  packaging: field('kit', 'packaging', {
    ...{ ...money, placeholder: 'none', what: 'the packaging' },
    label: 'Packaging per kit ({currency})',
    change: 'change the packaging',
  }),
  packagingGrams: field('kit', 'packagingGrams', {
    ...{ ...mass, what: 'its weight' },
    label: 'It weighs',
    doc: 'weight of the packaging per kit',
    change: 'change the packaging',
    hint: 'Box, card and label together, for the weight of the parcel.',
  }),
  marginPercent: field('kit', 'marginPercent', {
    ...{ ...share, placeholder: '0 %', what: 'the margin' },
    label: 'Margin',
    change: 'change the margin',
    hint: 'What is left for you, as a share of the price before tax.',
  }),
  feeShare: field('kit', 'fees.sharePercent', {
    ...{ ...share, placeholder: '0 %', what: 'the share of fees' },
    label: 'Marketplace fees',
    doc: 'marketplace fees, of the price before tax or of what the buyer pays (`fees.on`)',
    change: 'change the fees',
  }),
  feeFixed: field('kit', 'fees.fixed', {
    ...{ ...money, placeholder: 'none', what: 'the fixed fees' },
    label: 'and for each kit ({currency})',
    doc: 'marketplace fees for each kit',
    change: 'change the fees',
  }),
  taxPercent: field('kit', 'taxPercent', {
    ...{ ...percent, most: 1000, placeholder: 'none', what: 'the tax' },
    label: 'Tax on the price',
    change: 'change the tax',
    hint: 'Left empty, no tax is calculated and none is in the price.',
  }),
} as const

/** Of something else that is put in; `{name}` is what it is called. */
export const EXTRA = {
  count: field('extra', 'count', {
    ...{ ...value, kind: 'count', least: 0, most: 10_000, initial: 1 },
    label: 'In each kit',
    change: 'change {name}',
  }),
  price: field('extra', 'price', {
    ...{ ...money, placeholder: 'unknown' },
    label: 'Price of one ({currency})',
    change: 'change {name}',
  }),
  grams: field('extra', 'grams', { ...mass, label: 'Weight of one', change: 'change {name}' }),
} as const
