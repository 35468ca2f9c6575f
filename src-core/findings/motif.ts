import type { CatalogueEntry } from './catalogue'

/** Motifs: their measures, and later their rounds. */
export const MOTIF_FINDINGS = {
  'motif/petal-count': {
    severity: 'error',
    message: '{received} petals; a whole number from {least} to {most} can be planned.',
    mend: 'Count the petals of the finished motif and enter that number.',
  },
  'motif/missing-size': {
    severity: 'error',
    message: 'there is no measure {what}.',
    mend: 'Lay the motif flat, block it first if you will, and measure it with a ruler.',
  },
  'motif/size-range': {
    severity: 'error',
    message: '{what} is {received} mm; measures from {least} to {most} mm can be planned.',
    mend: 'Check the number and its unit.',
  },
  'motif/size-order': {
    severity: 'error',
    message: '{inner} ({small} mm) must be smaller than {outer} ({large} mm), but not below {least} % of it.',
    mend: 'Measure both again: the smaller one runs through the lowest places between petals or the middles of sides.',
  },
  'motif/assumed-size': {
    severity: 'note',
    message: '{what} was not measured; {assumed} mm is assumed.',
    mend: 'Measure it: it decides how the motifs nestle.',
  },
  'motif/not-regular': {
    severity: 'note',
    message:
      'side to side {side} mm and point to point {point} mm do not belong to the same straight-sided shape (it would be {regular} mm); the sides are drawn bowed.',
    mend: 'Measure again, or block the motif square.',
  },
  'motif/grows-in-blocking': {
    severity: 'note',
    message: 'measured before blocking; {percent} % growth is reckoned with for cotton thread.',
    mend: 'Block one motif, measure it again and say that it is blocked.',
  },
  'motif/no-outline': {
    severity: 'error',
    message: 'neither its rounds nor its measures give an outline.',
    mend: 'Enter the measures of a finished motif.',
  },
} as const satisfies Record<string, CatalogueEntry>
