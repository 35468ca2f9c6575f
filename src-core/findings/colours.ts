import type { CatalogueEntry } from './catalogue'

/** Where colours go, and whether they can be told apart. */
export const COLOUR_FINDINGS = {
  'colours/none-chosen': {
    severity: 'warning',
    message: 'a pattern is chosen for the colours, but no colourway to fill it with.',
    mend: 'Make a colourway and add it to the fill.',
  },
  'colours/painted-alike': {
    severity: 'note',
    message:
      '{pairs} {pairs|pair of neighbours is|pairs of neighbours are} painted alike by hand and {pairs|stays|stay} as painted.',
    mend: 'Paint one of each pair in another colourway, or clear it so that it can be filled.',
  },
  'colours/impossible': {
    severity: 'warning',
    message:
      'with {colourways} {colourways|colourway|colourways} no filling keeps all neighbours apart (every one was ruled out); {pairs} {pairs|pair stays|pairs stay} alike.',
    mend: '{advice}, or clear what is painted by hand round these places.',
  },
  'colours/not-found': {
    severity: 'warning',
    message:
      'no filling with {colourways} {colourways|colourway|colourways} was found that keeps all neighbours apart, though there may be one; {pairs} {pairs|pair stays|pairs stay} alike.',
    mend: 'Try another seed, choose one more colourway, or clear what is painted by hand round these places.',
  },
  'colours/uneven': {
    severity: 'note',
    message: 'neighbours are kept apart, but the colourways do not come out even: {counts}.',
    mend: 'Shuffle them, choose one more colourway, or paint a few motifs by hand.',
  },
  'colours/close': {
    severity: 'warning',
    message:
      '{first} and {second} are hard to tell apart (colour difference {difference}, under {limit}), and colourways {colourways} differ by them.',
    mend: 'Choose a yarn that stands off more, or go by the letters on the map.',
  },
  'colours/same-grey': {
    severity: 'note',
    message: '{first} and {second} print to the same grey, and colourways {colourways} differ by them.',
    mend: 'Print the map in colour, or go by the letters and textures on it.',
  },
  'colours/unreadable': {
    severity: 'warning',
    message: "{yarn}: '{received}' is no colour that can be read.",
    mend: 'Write the colour as #rrggbb, such as #7fb5a8.',
  },
} as const satisfies Record<string, CatalogueEntry>
