/** Motifs and their measures in words. */
import type { OutlineKind } from '../../../shared-types/project'
import type { MeasureKey } from '../../state/edits/motif'

export const OUTLINE_WORDS: Readonly<Record<OutlineKind, string>> = {
  petals: 'flower with petals',
  round: 'round',
  square: 'square',
  hexagon: 'hexagon',
  octagon: 'octagon',
  leaf: 'leaf',
}

export const MEASURE_WORDS: Readonly<Record<MeasureKey, string>> = {
  overTips: 'Tip to tip',
  overValleys: 'Between petals',
  across: 'Across',
  sideToSide: 'Side to side',
  pointToPoint: 'Point to point',
  length: 'Length',
  width: 'Width',
}

/** What undo calls the change of a measure. */
export const measureChange = (key: MeasureKey): string => `change ${MEASURE_WORDS[key].toLowerCase()}`

export const MEASURE_HOW: Readonly<Record<OutlineKind, string>> = {
  petals:
    'Lay the motif flat. Tip to tip runs over the middle from petal end to petal end; between petals runs from dip to dip.',
  round: 'Lay the motif flat and measure across the middle.',
  square:
    'Lay the motif flat. Side to side is what neighbours need; point to point tells how sharp the corners are.',
  hexagon: 'Lay the motif flat and measure from the middle of one side to the middle of the side across.',
  octagon: 'Lay the motif flat and measure from the middle of one side to the middle of the side across.',
  leaf: 'Lay the leaf flat: from stem to tip, and across where it is widest.',
}
