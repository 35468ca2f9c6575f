import type { CatalogueEntry } from './catalogue'

/** A motif measured from a picture: what keeps it from being sure. */
export const PHOTO_FINDINGS = {
  'photo/no-sheet': {
    severity: 'error',
    message: 'no {sheet} sheet can be made out in the picture.',
    mend: 'Lay the motif on one whole sheet, on a table of another colour, and take the picture from straight above; or say which sheet it is.',
  },
  'photo/sheet-cut-off': {
    severity: 'error',
    message: 'the sheet ({sheet}) runs off the edge of the picture.',
    mend: 'Take the picture from further away, so that all four corners are in it.',
  },
  'photo/corner-outside': {
    severity: 'note',
    message:
      'not all corners of the sheet ({sheet}) are in the picture: those outside are taken to be where the edges meet.',
    mend: 'Take the picture from further away, so that all four corners are in it.',
  },
  'photo/sheet-shape': {
    severity: 'warning',
    message: 'the sheet in the picture is not quite the shape of {sheet}, or its edges are bent.',
    mend: 'Check which sheet it is, lay it flat, and set its corners by hand where they are off.',
  },
  'photo/other-sheet': {
    severity: 'warning',
    message: 'the sheet has the shape of {sheet}, not of {asked}, and is measured as {sheet}.',
    mend: 'Check which sheet it is, and choose it.',
  },
  'photo/ruler-points': {
    severity: 'error',
    message: 'the two points on the ruler give no scale: {why}.',
    mend: 'Set them on two marks of the ruler that are far apart, and say how far.',
  },
  'photo/by-ruler': {
    severity: 'warning',
    message: 'the scale comes from a ruler: a picture taken at a slant is not corrected.',
    mend: 'Hold the camera right above the motif, with the ruler flat beside it; or lay the motif on a sheet of paper.',
  },
  'photo/tilt': {
    severity: 'warning',
    message: 'the picture is taken {tilt}° from straight above; beyond {most}° measures come out rough.',
    mend: 'Hold the camera right over the motif.',
  },
  'photo/few-pixels': {
    severity: 'warning',
    message: 'the picture has few pixels for the sheet.',
    mend: 'Move closer, so that the sheet fills the picture, or use it at the full size that the camera made.',
  },
  'photo/blurred': {
    severity: 'warning',
    message: 'the picture is blurred.',
    mend: 'Rest the camera on something and tap on the motif to focus.',
  },
  'photo/no-motif': {
    severity: 'error',
    message: 'nothing on the sheet stands out from it.',
    mend: 'Lay light yarn on a dark sheet, dark yarn on a white one.',
  },
  'photo/like-paper': {
    severity: 'warning',
    message: 'the motif hardly stands out from the sheet.',
    mend: 'Lay light yarn on a dark sheet, dark yarn on a white one, grey and beige on a sheet of another colour, with the lamp high above it.',
  },
  'photo/no-motif-by-ruler': {
    severity: 'error',
    message: 'nothing beside the ruler stands out from the ground.',
    mend: 'Lay the motif a finger away from the ruler, on a plain ground of another colour.',
  },
  'photo/motif-over-edge': {
    severity: 'error',
    message: 'the motif reaches the edge of the sheet.',
    mend: 'Lay it in the middle of the sheet, or take a larger one.',
  },
  'photo/petals-unsure': {
    severity: 'warning',
    message: 'the number of petals is uncertain: {petals} fits best.',
    mend: 'Count them.',
  },
  'photo/petals-take-turns': {
    severity: 'note',
    message:
      'long and short petals alternate: {petals} of them are counted, and tip to tip is that of the longest.',
    mend: 'Count them, and check tip to tip.',
  },
  'photo/thread-tails': {
    severity: 'note',
    message:
      '{count} {count|end|ends} of thread {count|lies|lie} out beside the motif and {count|was|were} left out of its measures.',
    mend: 'Tuck thread ends under the motif for a picture that is sure.',
  },
  'photo/nearly-round': {
    severity: 'warning',
    message: 'the motif is nearly round: whether it has petals, and how many, is uncertain.',
    mend: 'Choose its shape, and count the petals.',
  },
  'photo/no-repeat': {
    severity: 'warning',
    message: 'the outline does not repeat round the middle.',
    mend: 'Pull the motif into shape and pin it, or enter its measures by hand.',
  },
  'photo/dips-hidden': {
    severity: 'warning',
    message: 'the dips between the petals cannot be made out well.',
    mend: 'Spread the petals a little and light the motif from above, or measure from dip to dip with a ruler.',
  },
} as const satisfies Record<string, CatalogueEntry>
