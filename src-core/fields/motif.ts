/** The fields of a motif: its measures, its gauge, what it weighs and how long it takes. */
import { MOTIF_SIZE, PETALS } from '../motif/constants'
import type { Laying, Readings } from '../motif/ruler'
import { LIMITS } from '../notation/limits'
import { GAUGE_CONSTANTS } from '../stitches/gauge'
import { USABLE, USABLE_OR_ZERO } from '../units/usable'
import { field } from './field'
import type { Bounds } from './field'

/** 0 in a file is not measured. */
const size = { code: 'motif/size-range', kind: 'length', ...MOTIF_SIZE, zeroIsNone: true } as const
const gauge = { code: 'gauge/invalid-value', optional: true, change: 'change the {gauge}' } as const
const counted = { ...gauge, kind: 'number', ...USABLE, placeholder: 'not counted' } as const
const weighed = { code: 'yarn/invalid-weighing', optional: true } as const

export const MOTIF = {
  petals: field('motif', 'petals', {
    ...{ code: 'motif/petal-count', kind: 'count', ...PETALS },
    label: 'Petals',
    change: 'change the petals',
  }),
  minutes: field('motif', 'minutes', {
    ...{
      ...USABLE_OR_ZERO,
      kind: 'minutes',
      optional: true,
      placeholder: 'minutes',
      what: 'the minutes for a motif',
    },
    label: 'One takes',
    doc: 'time for one motif',
    change: 'change the minutes for a motif',
  }),
  /** `{name}` is the motif that it goes with. */
  goesWith: field('motif', 'goesWith.each', {
    ...{ kind: 'count', least: 1, most: 1000, optional: true, placeholder: 'not said' },
    what: 'the number that goes with each motif',
    label: 'With each {name}',
    doc: 'how many of it are made with each of the motif that it goes with',
    change: 'change how many go with each {name}',
  }),
} as const

/** The measures of a motif; a flower's are told in the words of its ruler, and written rounds keep theirs in `measured`. */
const measure = <const Key extends string>(key: Key, label: string) =>
  field('motif', key, {
    ...{ ...size, label, change: `change ${label.toLowerCase()}` },
    placeholder: 'not measured',
  })

export const MEASURE = {
  overTips: measure('overTips', 'Tip to tip'),
  overValleys: measure('overValleys', 'Dip to dip'),
  across: measure('across', 'Across'),
  sideToSide: measure('sideToSide', 'Side to side'),
  pointToPoint: measure('pointToPoint', 'Point to point'),
  length: measure('length', 'Length'),
  width: measure('width', 'Width'),
} as const

/** Bounds of what a ruler shows of a flower: half as much where it is laid at the centre. */
export const readingBounds = (laying: Laying, part: keyof Readings): Bounds =>
  laying === 'centre' || (laying === 'opposite' && part === 'second')
    ? { least: MOTIF_SIZE.least / 2, most: MOTIF_SIZE.most / 2 }
    : MOTIF_SIZE

/** Of written rounds, that one of them comes out with. */
export const ACROSS = field('round', 'across', {
  ...{ ...size, optional: true, placeholder: 'not measured' },
  label: 'Widest measure after {name}',
  doc: 'diameter after that round, at its widest: from corner to corner, from tip to tip',
  change: 'change the measure of {name}',
})

export const GAUGE = {
  stitches: field('motif', 'gauge.stitches', {
    ...counted,
    label: 'Stitches',
    doc: 'stitches of the swatch',
  }),
  rows: field('motif', 'gauge.rows', { ...counted, label: 'Rows', doc: 'rows of the swatch' }),
  over: field('motif', 'gauge.over', {
    ...{ ...gauge, kind: 'length', ...USABLE, optional: false },
    label: 'Counted over',
  }),
  hook: field('motif', 'gauge.hook', {
    ...{ ...gauge, kind: 'number', ...GAUGE_CONSTANTS.hooks, placeholder: 'mm', change: 'change the hook' },
    label: 'Hook (mm)',
  }),
  rounds: field('motif', 'gauge.rounds', {
    ...{ ...gauge, kind: 'count', ...GAUGE_CONSTANTS.rounds, placeholder: 'not said' },
    label: 'The first rounds',
    doc: 'rounds that were measured together',
  }),
  across: field('motif', 'gauge.across', {
    ...{ ...gauge, kind: 'length', ...MOTIF_SIZE, placeholder: 'not measured' },
    label: 'measure across',
    doc: 'diameter after those rounds; of straight sides, from side to side',
  }),
} as const

export const WEIGHT = {
  motifs: field('motif', 'weighed.motifs', {
    ...{ ...weighed, ...USABLE, kind: 'count', placeholder: '10' },
    label: 'Motifs weighed',
    change: 'change the motifs weighed',
  }),
  grams: field('motif', 'weighed.grams', {
    ...{ ...weighed, ...USABLE, kind: 'mass', placeholder: 'not weighed' },
    label: 'Together they weigh',
    doc: 'weight of all of them together',
    change: 'change the weight',
  }),
  resolution: field('motif', 'weighed.resolution', {
    ...{ ...weighed, ...USABLE_OR_ZERO, kind: 'mass', placeholder: '1 g' },
    label: 'The scale shows steps of',
    doc: 'steps that the scale shows',
    change: 'change the steps of the scale',
  }),
  /** `{slot}` is the name of the colour. */
  slot: field('motif', 'slots[].grams', {
    ...{
      ...USABLE_OR_ZERO,
      kind: 'mass',
      optional: true,
      placeholder: 'if known',
      what: 'the weight of a colour',
    },
    label: 'Weight of {slot} in one motif',
    doc: 'weight of one colour in one motif',
    change: 'change the weight of {slot}',
  }),
  share: field('motif', 'weighed.shares[]', {
    ...{ kind: 'percent', least: 0, most: 1, shown: { times: 100 }, what: 'the share of a colour' },
    ...{ optional: true, placeholder: 'by stitches' },
    label: 'Share of {slot} in the weight',
    doc: 'share of one colour in the weight, from 0 to 1',
    change: 'change the share of {slot}',
  }),
} as const

const chains = { code: 'motif/chains', kind: 'count', least: 0, most: LIMITS.chains } as const

/** What written rounds begin with: a ring of chains, or a chain that is worked on both sides. */
export const FOUNDATION = {
  ring: field('motif', 'foundation.chains', { ...chains, label: 'Chains', change: 'change the chains' }),
  chain: field('motif', 'foundation.chain', { ...chains, label: 'Chains', change: 'change the chains' }),
} as const
