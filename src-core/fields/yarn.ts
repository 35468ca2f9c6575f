/** The fields of a yarn, and what is allowed for waste and tails. `{name}` is what the yarn is called. */
import { MOST_MOTIFS } from '../layout/constants'
import { USABLE, USABLE_OR_ZERO } from '../units/usable'
import { field } from './field'

const value = { code: 'yarn/invalid-value', optional: true } as const
const band = { ...value, ...USABLE } as const
const stash = {
  ...value,
  ...USABLE_OR_ZERO,
  placeholder: 'none',
  change: 'change what is on hand of {name}',
} as const
const pack = { change: 'change what {name} is sold in' } as const

export const YARN = {
  ballGrams: field('yarn', 'ballGrams', {
    ...{ ...band, kind: 'mass' },
    label: 'One {ball} weighs',
    doc: 'weight of one {ball}',
    change: 'change the {ball} of {name}',
  }),
  ballMetres: field('yarn', 'ballMetres', {
    ...{ ...band, kind: 'yarn-length' },
    label: 'and measures',
    doc: 'length of one {ball}',
    change: 'change the {ball} of {name}',
  }),
  price: field('yarn', 'price', {
    ...{ ...value, ...USABLE_OR_ZERO, kind: 'money' },
    label: 'Price of one ({currency})',
    doc: 'price of one {ball}',
    change: 'change the price of {name}',
  }),
  onHandBalls: field('yarn', 'onHandBalls', {
    ...{ ...stash, kind: 'number' },
    label: '{Balls} of {name} on hand',
    doc: '{balls} on hand',
  }),
  onHandGrams: field('yarn', 'onHandGrams', {
    ...{ ...stash, kind: 'mass' },
    label: '{name} on hand, by weight',
    doc: 'what is on hand besides whole {balls}',
  }),
  onHandAt: field('yarn', 'onHandAt', {
    ...{ kind: 'count', least: 0, most: MOST_MOTIFS, optional: true },
    label: '{Pieces} made when you counted it',
    placeholder: 'none yet',
    what: 'the number of motifs that were made when it was counted',
    doc: 'how many motifs, half motifs and fillers were made when what is on hand was counted',
    change: 'change when {name} was counted',
  }),
} as const

const again = {
  optional: true,
  code: 'progress/weighed-value',
  change: 'change what is left of {name}',
} as const

/** What is left of a yarn while a work is made, weighed again. */
export const YARN_LEFT = {
  grams: field('yarn', 'left.grams', {
    ...{ ...again, ...USABLE_OR_ZERO, kind: 'mass', placeholder: 'not weighed' },
    label: '{name}: left now',
    doc: 'weight of what is left, weighed again',
  }),
  at: field('yarn', 'left.at', {
    ...{ ...again, kind: 'count', least: 0, most: MOST_MOTIFS },
    label: 'made by then',
    doc: 'how many motifs, half motifs and fillers were made by then',
  }),
  of: field('yarn', 'left.of', {
    ...{ ...again, ...USABLE, kind: 'mass', placeholder: 'what is on hand' },
    label: 'weight at the start',
    doc: 'weight of what there was at the start',
  }),
} as const

/** Of one more size that a yarn is sold in. */
export const PACK = {
  /** From a sample skein to a pallet cone (ours). */
  grams: field('pack', 'grams', {
    ...{ ...pack, kind: 'mass', least: 0.1, most: 25_000, code: 'kit/pack' },
    label: 'also sold in',
    doc: 'another size that it is sold in',
  }),
  price: field('pack', 'price', {
    ...{ ...pack, kind: 'money', ...USABLE_OR_ZERO, optional: true, placeholder: 'unknown' },
    ...{ label: 'for ({currency})', code: 'kit/pack', doc: 'its price' },
  }),
} as const

export const ALLOWANCE = {
  waste: field('project', 'allowance.wastePercent', {
    ...{
      ...USABLE_OR_ZERO,
      code: 'yarn/invalid-allowance',
      kind: 'percent',
      optional: true,
      placeholder: '0 %',
    },
    label: 'For waste and mistakes',
    change: 'change the allowance',
  }),
  tail: field('project', 'allowance.tail', {
    ...{ ...USABLE_OR_ZERO, code: 'yarn/invalid-allowance', kind: 'length', optional: true },
    label: 'Length of a tail',
    change: 'change the tails',
  }),
} as const
