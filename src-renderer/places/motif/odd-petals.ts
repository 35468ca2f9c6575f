/**
 * A ruler cannot lie tip to tip across an odd number of petals, so these measures may be taken otherwise.
 * Stored are always the diameters of the circles through tips and valleys, in mm.
 */
import type { MeasureKey } from '../../state/edits/motif'

export type Way = 'across' | 'centre' | 'opposite'

export const WAYS: Readonly<
  Record<Way, { readonly name: string; readonly labels: { readonly tips: string; readonly valleys: string } }>
> = {
  across: { name: 'over the circle', labels: { tips: 'Tip to tip', valleys: 'Between petals' } },
  centre: { name: 'from the centre', labels: { tips: 'Centre to tip', valleys: 'Centre to dip' } },
  opposite: {
    name: 'tip to opposite dip',
    labels: { tips: 'Tip to opposite dip', valleys: 'Between petals' },
  },
}

/** What the ruler shows for a stored diameter; `valleys` is the diameter through the valleys. */
export function toMeasured(key: MeasureKey, stored: number, way: Way, valleys: number): number {
  if (way === 'centre') return stored / 2
  return way === 'opposite' && key === 'overTips' ? (stored + valleys) / 2 : stored
}

/** The diameter to store for what the ruler shows. */
export function fromMeasured(key: MeasureKey, shown: number, way: Way, valleys: number): number {
  if (way === 'centre') return shown * 2
  return way === 'opposite' && key === 'overTips' ? 2 * shown - valleys : shown
}
