/** The fields of joining. */
import { LIMITS } from '../notation/limits'
import { USABLE_OR_ZERO } from '../units/usable'
import { field } from './field'

export const JOINING = {
  /** With the stitch width they make a gap, which has bounds of its own. */
  bridgeChains: field('project', 'joining.bridgeChains', {
    ...{ code: 'layout/gap', kind: 'count', least: 0, most: LIMITS.chains, initial: 0 },
    label: 'Chains between',
    doc: 'chains of a joining chain',
    change: 'change the joining chains',
  }),
  gap: field('project', 'joining.gap', {
    ...{ code: 'layout/gap', kind: 'length', least: 0, most: 500, initial: 0 },
    label: 'Apart by',
    doc: 'gap where motifs lie apart',
    change: 'change the gap',
  }),
  reach: field('project', 'joining.reach', {
    ...{ code: 'joins/reach', kind: 'length', least: 0, most: 500, optional: true, placeholder: 'automatic' },
    label: 'Petals this far apart are joined',
    doc: 'how far apart petals are still joined',
    change: 'change the joining distance',
    hint: 'Left empty it follows from the stitch width and the size of the motif.',
  }),
  minutes: field('project', 'joining.minutes', {
    ...{
      ...USABLE_OR_ZERO,
      kind: 'number',
      optional: true,
      placeholder: '1',
      what: 'the minutes for a join',
    },
    label: 'Minutes for a join',
    hint: 'Where motifs are sewn, for the whole seam between two. Left empty, 1 minute is assumed, of a seam by its stitches.',
    change: 'change the minutes for a join',
  }),
} as const

/** The same for a garland, where everything is fastened to the cord. */
export const FASTENING = {
  ...JOINING.minutes,
  label: 'Minutes to fasten one',
  change: 'change the minutes to fasten one',
} as const
