import type { CatalogueEntry } from './catalogue'

/** Where colours go, and whether they can be told apart. */
export const COLOUR_FINDINGS = {
  'colours/none-chosen': {
    severity: 'warning',
    message: 'a pattern is chosen for the colours, but there is no colourway to fill it with.',
    mend: 'Make a colourway and add it to the fill.',
  },
  'colours/painted-alike': {
    severity: 'note',
    message:
      '{pairs} {pairs|pair of neighbours is|pairs of neighbours are} painted or made alike and {pairs|stays|stay} so.',
    mend: 'Paint one of each pair in another colourway, or clear it so that it can be filled.',
  },
  'colours/impossible': {
    severity: 'warning',
    message:
      'with {colourways} {colourways|colourway|colourways} neighbours cannot all be kept apart (every way was ruled out); {pairs} {pairs|pair stays|pairs stay} alike.',
    mend: '{advice}{clear}.',
  },
  'colours/not-found': {
    severity: 'warning',
    message:
      'no way of placing {colourways} {colourways|colourway|colourways} was found that keeps all neighbours apart, though there may be one; {pairs} {pairs|pair stays|pairs stay} alike.',
    mend: 'Shuffle the colours, {advice}{clear}.',
  },
  'colours/uneven': {
    severity: 'note',
    message: 'neighbours are kept apart, but the colourways do not come out even: {counts}.',
    mend: 'Shuffle them, choose one more colourway, or paint a few motifs by hand.',
  },
  'colours/uneven-alone': {
    severity: 'note',
    message:
      'neighbours are kept apart, which goes in one way alone with {colourways} {colourways|colourway|colourways} here: they do not come out even: {counts}.',
    mend: 'Choose one more colourway for more even numbers.',
  },
  'colours/stash-unknown': {
    severity: 'note',
    message:
      'what is on hand does not say how many motifs there is yarn for in each colourway, so each colourway has about as many as the others.',
    mend: 'At Yarn, enter what is on hand of each yarn; at Motif, weigh a motif or enter its rounds.',
  },
  'colours/limits-impossible': {
    severity: 'warning',
    message:
      'the colourways cannot be placed within the limits. This is as close as they come: {short}{apart}.',
    mend: '{Room} one more colourway, or make fewer motifs.',
  },
  'colours/limits-nearest': {
    severity: 'warning',
    message:
      'the colourways cannot be placed within the limits: every way goes at least {least} over. Closest fit found: {short}{apart}.',
    mend: '{Room} one more colourway, or make fewer motifs.',
  },
  'colours/limits-not-found': {
    severity: 'warning',
    message:
      'found no way to place the colourways within the limits, though there may be one. Closest fit: {short}{apart}.',
    mend: '{ways} one more colourway{others}.',
  },
  'colours/rows-broken': {
    severity: 'note',
    message:
      '{rows} {rows|row changes|rows change} colourway on the way, as whole rows do not fit within the limits.',
    mend: '{Room} another pattern.',
  },
  'colours/mirror-alike': {
    severity: 'note',
    message:
      '{pairs} {pairs|pair of neighbours|pairs of neighbours} at the middle {pairs|mirrors|mirror} each other and {pairs|is|are} alike.',
    mend: 'Use an odd number of motifs across the middle, or no symmetry.',
  },
  'colours/close': {
    severity: 'warning',
    message:
      '{first} and {second} are hard to tell apart (colour difference {difference}, under {limit}), and colourways {colourways} differ in nothing else.',
    mend: 'Choose a yarn with more contrast, or go by the letters on the map.',
  },
  'colours/same-grey': {
    severity: 'note',
    message:
      '{first} and {second} come out the same grey in black and white, and colourways {colourways} differ in nothing else.',
    mend: 'Print the map in colour, or go by the letters and textures on it.',
  },
  'colours/more-alike': {
    severity: 'note',
    message:
      '{pairs} more {pairs|pair|pairs} of yarns in use are hard to tell apart, or come out the same grey in black and white.',
    mend: 'Go by the letters and textures on the map.',
  },
  'colours/letters-meet': {
    severity: 'note',
    message:
      'the letters {letters} mean colourways on the map and yarns in the rounds: “Join {letter}” in a round is a yarn of the pattern, not colourway {letter}.',
    mend: 'Give the colourways other letters under Colours, or rename those parts of the motif.',
  },
  'colours/unreadable': {
    severity: 'warning',
    message: "{yarn}: '{received}' is not a colour that can be read.",
    mend: 'Write the colour as #rrggbb, such as #7fb5a8.',
  },
} as const satisfies Record<string, CatalogueEntry>
