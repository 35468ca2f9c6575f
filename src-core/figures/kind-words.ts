/** Words of each kind of layout that findings, window and sheets share: what it is called, what to take care of. */
import type { LayoutKind } from '../plans/layouts'

/** A paragraph under a short heading. */
export interface Caution {
  readonly title: string
  readonly text: string
}

interface KindWords {
  /** "a garland" */
  readonly one: string
  /** What a card or a label says of it, in a line or two; `crib` is the bed's name in the terms of the sheet. */
  caution(crib: string, forChild: boolean): string
  /** What a sheet says of it. Both defer to local rules. */
  cautions(crib: string, forChild: boolean): Caution[]
}

const forBabies = (crib: string): Caution => ({
  title: 'Blankets for babies',
  text: `Not for sleep under 12 months: keep loose blankets out of the ${crib}. Check it often for loose loops and for gaps that fingers, hands or a head could enter, and repair or remove it when you find any. Follow the advice that is given where you live.`,
})

const FURNISHINGS: Caution = {
  title: 'Cushions and other furnishings',
  text: 'If it becomes a cushion or a cover, check the rules on fire safety of furnishings that apply where you live, for fabric, filling and yarn together.',
}

const SEWN_FOR_CHILD: Caution = {
  title: 'For a small child',
  text: 'Sew every motif down all round and firmly, so that nothing can be pulled off and no loop catches a finger, and check it often. Follow the advice that is given where you live.',
}

const hanging = (crib: string): string =>
  `Hang it out of children’s reach, never on or across a ${crib}, and remove it before a child can pull itself up. Keep it clear of stoves, candles and lamps.`

export const KIND_WORDS: Readonly<Record<LayoutKind, KindWords>> = {
  blanket: {
    one: 'a blanket',
    caution: (crib, forChild) =>
      forChild ? `Not for sleep under 12 months: keep loose blankets out of the ${crib}.` : '',
    cautions: (crib, forChild) => (forChild ? [forBabies(crib)] : []),
  },
  garland: {
    one: 'a garland',
    caution: (crib) => `Decoration, not a toy. ${hanging(crib)}`,
    cautions: (crib, forChild) => [
      ...(forChild ? [forBabies(crib)] : []),
      { title: 'Garlands', text: `A garland is decoration, not a toy. ${hanging(crib)}` },
    ],
  },
  applique: {
    one: 'an appliqué',
    caution: () => 'Cushions and covers: rules on fire safety of furnishings may apply.',
    cautions: (_, forChild) => (forChild ? [FURNISHINGS, SEWN_FOR_CHILD] : [FURNISHINGS]),
  },
}

/** The bed of a small child. */
export const cribWord = (terms: 'US' | 'UK'): string => (terms === 'US' ? 'crib' : 'cot')
