import type { CatalogueEntry } from './catalogue'

/** Garlands: the cord, what hangs on it, and how it hangs. */
export const GARLAND_FINDINGS = {
  'garland/no-items': {
    severity: 'error',
    message: 'nothing hangs on the cord yet.',
    mend: 'Add at least one motif or bead to the sequence.',
  },
  'garland/empty-item': {
    severity: 'warning',
    message: 'this part of the sequence names no motif, bead or gap; it is left out.',
    mend: 'Name a motif, a bead with its size, or a gap, or take the part out.',
  },
  'garland/other-colourway': {
    severity: 'warning',
    message: "colourway '{colourway}' belongs to another motif than '{motif}'.",
    mend: 'Choose a colourway of this motif.',
  },
  'garland/measure': {
    severity: 'error',
    message: '{what}: found {received}, expected {least} to {most}.',
    mend: 'Enter a length within these bounds.',
  },
  'garland/whole-number': {
    severity: 'error',
    message: '{what}: found {received}, expected a whole number from {least} to {most}.',
    mend: 'Enter how many you want.',
  },
  'garland/no-length': {
    severity: 'error',
    message: 'the length of the cord is not known.',
    mend: 'Enter the length of the cord, or span and drop of the swags, or a spacing together with a count.',
  },
  'garland/no-spacing': {
    severity: 'error',
    message: 'neither a distance between centres nor a count is entered.',
    mend: 'Enter the distance between centres, or a count.',
  },
  'garland/swags-open': {
    severity: 'error',
    message: 'one measure is not enough for the swags.',
    mend: 'Enter two of these three: the span, the drop, the length of the cord.',
  },
  'garland/cord-too-short': {
    severity: 'error',
    message: 'a swag of {length} does not reach across a span of {span}.',
    mend: 'Lengthen the cord, bring the points that it hangs from closer together, or hang it in fewer swags.',
  },
  'garland/drop-too-deep': {
    severity: 'error',
    message: 'a swag of {length} cannot hang down by {drop}.',
    mend: 'Enter a drop of less than half the length of cord in one swag.',
  },
  'garland/length-follows': {
    severity: 'warning',
    message: 'the length of the cord is {entered}, but span and drop need {follows}; the plan uses that.',
    mend: 'Leave out the length, or leave out the drop so that it follows from the length.',
  },
  'garland/does-not-fit': {
    severity: 'error',
    message: 'what hangs on the cord needs {needed}, but the cord is {length}.',
    mend: 'Lengthen the cord, hang fewer things on it, or space them closer together.',
  },
  'garland/too-many': {
    severity: 'error',
    message: 'more than {most} things would hang on this cord.',
    mend: 'Check the length and the spacing, or plan a part of it.',
  },
  'garland/collision': {
    severity: 'warning',
    message:
      'as it hangs, {pairs} {pairs|pair of neighbours overlaps|pairs of neighbours overlap}, first numbers {first} and {second}.',
    mend: 'Space them further apart, give the swags less drop, or choose smaller motifs.',
  },
  'garland/cut-repeat': {
    severity: 'note',
    message: 'the cord ends after {part} of the {size} parts of the sequence.',
    mend: 'Choose a length for whole repeats, or mirror the sequence about the middle.',
  },
  'garland/at-hook': {
    severity: 'note',
    message: 'number {number} hangs where the cord is hung up.',
    mend: 'Hang the cord up beside it, or shift the spacing a little.',
  },
  'garland/one-petal': {
    severity: 'warning',
    message: '{motif} hangs from one point only and will spin.',
    mend: 'Fasten it at two petals or corners that are next to each other.',
  },
  'garland/chains-between': {
    severity: 'note',
    message:
      '{motif} hangs from two points {apart} apart, with {chains} {chains|chain|chains} between them: they will pull together.',
    mend: 'With {flat} {flat|chain|chains} between them it hangs flat.',
  },
  'garland/cord-gives': {
    severity: 'note',
    message: 'a cord of chains stretches by 5 to 10 % under load, from {length} to between {low} and {high}.',
    mend: 'Stretch it well before you measure, work it with a smaller hook, or work slip stitches back along it.',
  },
  'garland/chain-by-thumb': {
    severity: 'note',
    message: 'the chains of the cord are estimated by a rule of thumb, {chain} to a chain (±{spread} %).',
    mend: 'Work 20 chains, measure them stretched out, and enter chains and length as the {gauge} of the cord.',
  },
  'garland/chain-gauge': {
    severity: 'warning',
    message: 'the {gauge} of the cord cannot be used: {chains} {chains|chain|chains} over {over}.',
    mend: 'Enter how many chains you counted, and over what length.',
  },
  'garland/no-cord-yarn': {
    severity: 'warning',
    message: 'nothing says which yarn the cord is worked in, so its yarn is not counted.',
    mend: 'Choose a yarn for the cord, or say that it is bought.',
  },
} as const satisfies Record<string, CatalogueEntry>
