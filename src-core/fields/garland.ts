/** The fields of a garland. Bounds keep a slip of the finger from asking for a cord round the town (ours). */
import { USABLE, USABLE_OR_ZERO } from '../units/usable'
import { field } from './field'
import type { BoundedField } from './field'

const measure = { code: 'garland/measure' } as const
const whole = { code: 'garland/whole-number', kind: 'count' } as const
/** Of something that is bought; nothing follows from a price that is not known. */
const price = { kind: 'money', ...USABLE_OR_ZERO, optional: true, placeholder: 'unknown' } as const
const grams = { kind: 'mass', ...USABLE_OR_ZERO, optional: true, placeholder: 'unknown' } as const

/** Most things on one cord. */
export const MOST_ITEMS = 10_000

export const GARLAND = {
  length: field('garland', 'cord.length', {
    ...{ ...measure, kind: 'span', least: 10, most: 1_000_000, what: 'the cord' },
    label: 'Length between the ties',
    change: 'change the length of the cord',
  }),
  ties: field('garland', 'cord.ties', {
    ...{ ...measure, kind: 'span', least: 0, most: 100_000, what: 'a tie' },
    ...{ optional: true, placeholder: 'none' },
    label: 'To tie at each end',
    doc: 'length to tie at each end',
    change: 'change the ties',
  }),
  chains: field('garland', 'cord.gauge.chains', {
    ...{
      kind: 'number',
      ...USABLE,
      code: 'garland/chain-gauge',
      optional: true,
      placeholder: 'by the {gauge}',
    },
    label: 'Chains',
    doc: 'chains of the cord that were counted',
    change: 'change the chains of the cord',
  }),
  over: field('garland', 'cord.gauge.over', {
    ...{ kind: 'length', ...USABLE, code: 'garland/chain-gauge', initial: 100 },
    label: 'over',
    doc: 'what the chains of the cord were counted over',
    change: 'change the chains of the cord',
    hint: 'Work some 20 chains, pull them straight, count and measure.',
  }),
  price: field('garland', 'cord.price', {
    ...price,
    what: 'the price of the cord',
    label: 'Price of the cord ({currency})',
    change: 'change the price of the cord',
  }),
  grams: field('garland', 'cord.grams', {
    ...grams,
    what: 'the weight of the cord',
    label: 'Weight of the cord',
    change: 'change the weight of the cord',
    hint: 'As it is cut for one, ties and all. A kit is priced and weighed with it.',
  }),
  spacing: field('garland', 'spacing.mm', {
    ...{ ...measure, kind: 'length', least: 0, most: 100_000, what: 'the spacing', initial: 0 },
    label: 'Distance',
    doc: 'distance between what hangs on the cord',
    change: 'change the spacing',
  }),
  items: field('garland', 'spacing.count', {
    ...{ ...whole, least: 1, most: MOST_ITEMS, what: 'what is to hang on the cord' },
    label: 'How many hang on it',
    change: 'change how many hang on the cord',
  }),
  by: field('garland', 'hang.by', {
    ...{ ...whole, least: 1, most: 2, what: 'the places to hang by', initial: 2 },
    label: 'Fastened by',
    doc: 'petals or corners that a motif hangs by',
    change: 'change how motifs are fastened',
  }),
  chainsBetween: field('garland', 'hang.chains', {
    ...{ ...whole, least: 0, most: 200, what: 'the chains between', optional: true },
    placeholder: '{usual}, as usual',
    label: 'Chains between the two',
    change: 'change the chains between the two',
    hint: 'Few chains draw the two together; with as many as reach from one to the other it hangs flat.',
  }),
  swags: field('garland', 'swags.count', {
    ...{ ...whole, least: 1, most: 1000, what: 'the swags', initial: 1 },
    label: 'Swags',
    change: 'change the swags',
  }),
  span: field('garland', 'swags.span', {
    ...{ ...measure, kind: 'span', least: 10, most: 100_000, what: 'the span' },
    label: 'Span of one swag',
    change: 'change the span',
  }),
  drop: field('garland', 'swags.drop', {
    ...{ ...measure, kind: 'length', least: 0, most: 100_000, what: 'the drop' },
    label: 'Drop',
    change: 'change the drop',
    hint: 'How far the lowest point hangs below the points. An eighth to a quarter of the span is usual.',
  }),
} as const

/** From centre to centre: centres cannot lie on one spot. */
export const CENTRES = { ...GARLAND.spacing, least: 1 } as const

/** Of one part of the sequence. */
export const PART = {
  size: field('part', 'size', {
    ...{ ...measure, kind: 'length', least: 0.5, most: 1000, what: 'a bead' },
    label: 'Size along the cord',
    doc: 'size of a bead along the cord',
    change: 'change the size of the bead',
  }),
  price: field('part', 'price', {
    ...price,
    what: 'the price of a bead',
    label: 'Price of one ({currency})',
    doc: 'price of one bead',
    change: 'change the price of the bead',
  }),
  grams: field('part', 'grams', {
    ...grams,
    what: 'the weight of a bead',
    label: 'Weight of one',
    doc: 'weight of one bead',
    change: 'change the weight of the bead',
    hint: 'A kit is priced and weighed with it. Beads are small parts: not for children under three.',
  }),
  room: field('part', 'gap', {
    ...{ ...measure, kind: 'length', least: 0, most: 100_000, what: 'a gap' },
    ...{ optional: true, placeholder: 'none' },
    label: 'More room behind it',
    doc: 'more room behind a part of the sequence',
    change: 'change the gap',
  }),
} as const

/** A part that is nothing but a gap. */
export const GAP = {
  ...PART.room,
  optional: false,
  label: 'Gap',
  hint: 'On top of the spacing between what hangs before and after it.',
} as const

/** What the stages of a garland read, each with a finding about its bounds. */
export type GarlandField = BoundedField & {
  readonly what: string
  readonly code: 'garland/measure' | 'garland/whole-number'
}
