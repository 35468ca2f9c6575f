import type { CatalogueEntry } from './catalogue'

/** Arrangements: counts, sizes, gaps. */
export const LAYOUT_FINDINGS = {
  'layout/none': {
    severity: 'note',
    message: 'nothing is arranged yet.',
    mend: 'Choose an arrangement: straight rows, offset rows or rings.',
  },
  'layout/no-motif': {
    severity: 'error',
    message: 'the arrangement does not say which motif it is made of.',
    mend: 'Choose one of the motifs.',
  },
  'layout/count': {
    severity: 'error',
    message: '{what}: {received} stands where a whole number from {least} to {most} is expected.',
    mend: 'Enter how many there are to be, or enter the wished size and take one of the arrangements that fit it.',
  },
  'layout/too-many': {
    severity: 'error',
    message: '{received} motifs are more than the {most} that one plan can hold.',
    mend: 'Plan a part of it, or use larger motifs.',
  },
  'layout/blocking': {
    severity: 'error',
    message: 'a blocking factor of {received} is not between {least} and {most}.',
    mend: 'Enter the finished measure divided by the one before blocking: 1.05 for 5 % growth.',
  },
  'layout/gap': {
    severity: 'error',
    message: 'a gap of {received} between motifs is not from 0 to {most} mm.',
    mend: 'Enter the distance between the outlines of neighbours in mm.',
  },
  'layout/target': {
    severity: 'error',
    message: 'a wished size of {received} cannot be fitted.',
    mend: 'Enter a width and a height above zero, in mm.',
  },
  'layout/off-target': {
    severity: 'note',
    message: 'comes out at {size}, wished was {wish}.',
    mend: 'Look at the arrangements that fit better.',
  },
  'layout/other-kind': {
    severity: 'error',
    message: 'this version does not plan a {kind} yet.',
    mend: 'Use a newer version of the program for this file.',
  },
} as const satisfies Record<string, CatalogueEntry>
