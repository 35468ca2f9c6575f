/** Motifs and their measures in words. */
import { say } from '../../state/say'
import type { MotifAccount } from '../../../shared-types/plan'
import { RULERS } from '../../../shared-types/project'
import type { MeasuredOutline, RoundShape, Terms, UnitSystem } from '../../../shared-types/project'
import { capital } from '../../../src-core/figures/words'
import { layingOfAccount, rulerWords } from '../../../src-core/motif/ruler'
import type { Laying, Readings } from '../../../src-core/motif/ruler'
import { termWord } from '../../../src-core/stitches/terms'
import { formatLength } from '../../../src-core/units/format'

export const OUTLINE_WORDS: Readonly<Record<MeasuredOutline, string>> = {
  petals: 'flower with petals',
  round: 'round',
  square: 'square',
  hexagon: 'hexagon',
  octagon: 'octagon',
  leaf: 'leaf',
  traced: 'traced from a photo',
}

/** What written rounds can be said to be, by name. */
export function roundShapeWords(shape: RoundShape, corners: number): string {
  if (shape !== 'straight') return OUTLINE_WORDS[shape]
  return (
    { 4: OUTLINE_WORDS.square, 6: OUTLINE_WORDS.hexagon, 8: OUTLINE_WORDS.octagon }[corners] ??
    'straight sides'
  )
}

export const SHAPE_HELP =
  'A round over petals may keep them or pull them straight. Make one, look at it and choose its shape here.'

/** The shapes to choose from: as the rounds say, and what they can be besides. */
export function roundShapeOptions({ shapes = [], petals }: MotifAccount) {
  const [own] = shapes
  const named = shapes.map((value) => ({ value: value as string, label: roundShapeWords(value, petals) }))
  return [
    { value: '', label: `as the rounds say${own ? `: ${roundShapeWords(own, petals)}` : ''}` },
    ...named,
  ]
}

/** What undo calls the change of a measure. */
export const measureChange = (name: string): string => `change ${name.toLowerCase().replace(', across', '')}`

/** The labels of a flower's two measures: "Tip to tip, across", "Center to dip". */
export function rulerLabels(laying: Laying, terms: Terms): Readonly<Record<keyof Readings, string>> {
  const { lead, second } = rulerWords(laying, terms)
  const across = laying === 'across' ? ', across' : ''
  return { lead: `${capital(lead)}${across}`, second: `${capital(second)}${across}` }
}

/** The ways to measure an odd number of petals. */
export const rulerOptions = (terms: Terms) =>
  RULERS.map((value) => ({ value, label: rulerWords(value, terms).lead }))

/** Under a second measure that was not typed. */
export const ASSUMED = 'Assumed: it follows the first until you enter your own.'

/** Under sizes that nobody has measured yet. */
export const OF_ROUNDS =
  'These sizes come from the written rounds, not from a ruler. Measure a finished motif and enter what your ruler says.'

/** Under sizes that a pasted page states. */
export const OF_PAGE =
  'This size comes from the pattern, not from a ruler. Measure a finished motif and enter what your ruler says, even if it is the same.'

/** Under sizes that a way to a size worked out. */
export const aimedWords = (terms: Terms): string =>
  `Worked out from what you measured, for another ${termWord('gauge', terms)} or other rounds. Make one, measure it and enter it here.`

/** How to lay the ruler; `atStart` a square is measured from side to side alone. */
export function measureHow(outline: MeasuredOutline, laying: Laying, atStart = false): string {
  if (atStart && outline === 'square') return MEASURE_HOW.hexagon
  if (outline !== 'petals' && outline !== 'traced') return MEASURE_HOW[outline]
  switch (laying) {
    case 'across':
      return say`Lay the motif flat. Tip to tip runs over the centre to the tip across; dip to dip runs the same way between petals.`
    case 'opposite':
      return say`Lay the motif flat. With an odd number of petals a dip lies opposite every tip: measure from a tip over the centre to that dip, then from the centre to a dip.`
    case 'centre':
      return say`Lay the motif flat. Measure from the centre to a tip, then from the centre to a dip.`
  }
}

/** What the ruler's numbers come to, for an odd number of petals: "A flower of 104 mm through its tips." */
export const flowerWords = (account: MotifAccount, units: UnitSystem): string =>
  layingOfAccount(account) === 'across'
    ? ''
    : `A flower of ${formatLength(account.overTips, units)} through its tips.`

const MEASURE_HOW: Readonly<Record<Exclude<MeasuredOutline, 'petals' | 'traced'>, string>> = {
  round: 'Lay the motif flat and measure across the middle.',
  get square() {
    return say`Lay the motif flat. Side to side is where neighbours meet; point to point shows how sharp the corners are.`
  },
  hexagon: 'Lay the motif flat and measure from the middle of one side to the middle of the opposite side.',
  octagon: 'Lay the motif flat and measure from the middle of one side to the middle of the side across.',
  leaf: 'Lay the leaf flat: from stem to tip, and across where it is widest.',
}
