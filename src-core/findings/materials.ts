import type { CatalogueEntry } from './catalogue'

/** Gauge, yarn, time. */
export const MATERIAL_FINDINGS = {
  'gauge/unknown-stitch': {
    severity: 'warning',
    message:
      "the {gauge} is counted in '{received}'; {expected} is expected. A rule of thumb is used instead.",
    mend: "Name the stitch of the swatch in the project's own terms, such as sc (US) or dc (UK).",
  },
  'gauge/invalid-value': {
    severity: 'warning',
    message: "the {gauge} says '{received}' where {expected} is expected; it is left out.",
    mend: 'Measure a swatch and enter stitches, rows and the length that they were counted over.',
  },
  'gauge/other-hook': {
    severity: 'warning',
    message:
      'the {gauge} was counted with a {before} hook, and the hook is {now} now: sizes and yarn follow the old one.',
    mend: 'Work a swatch with the new hook, count it and enter it.',
  },
  'gauge/missing': {
    severity: 'note',
    message:
      '{edging} or joining chains are counted with a rule of thumb, {width} to a stitch (±{spread} %), as there is no {gauge}.',
    mend: 'Enter the {gauge} of a swatch: stitches and rows over {over}, and the hook.',
  },
  'yarn/no-weight': {
    severity: 'warning',
    message: '{motif} is not weighed yet: the yarn of {slots} is not counted.',
    mend: 'Weigh a few finished motifs, or give the written rounds and a {gauge}.',
  },
  'yarn/weights-differ': {
    severity: 'warning',
    message: '{motif}: its colours weigh {sum}, the whole motif {whole}. The colours are counted.',
    mend: 'Weigh it again, or correct the grams of its colours.',
  },
  'yarn/weighed-with-other-hook': {
    severity: 'warning',
    message:
      '{motif} was weighed at {weighed} with a {before} hook, and the hook is {now} now: that is no longer its weight. By the {gauge} it comes to about {expected}.',
    mend: 'Make some with the {now} hook and weigh them, or take what the {gauge} gives as an estimate under Motif.',
  },
  'yarn/weight-too-light': {
    severity: 'warning',
    message:
      'one {motif} comes out at {grams}, {density}: crochet weighs from {least} to {most} (common practice, no source).',
    mend: 'Is {lot} the weight of {count} {count|motif|motifs}? Enter how many were weighed together.',
  },
  'yarn/weight-too-heavy': {
    severity: 'warning',
    message:
      'one {motif} comes out at {grams}, {density}: crochet weighs from {least} to {most} (common practice, no source).',
    mend: 'Is {lot} the weight of {count} {count|motif|motifs}? Enter how many were weighed together, and check the measures.',
  },
  'yarn/split-by-stitches': {
    severity: 'note',
    message:
      'the weight of {motif} is split over its colours by their stitches: {parts}, each within ±{spread} %. The whole motif is as sure as it was weighed.',
    mend: 'Weigh the {ball} before and after each colour, and enter the share of each in per cent.',
  },
  'yarn/split-by-area': {
    severity: 'note',
    message:
      'the weight of {motif} is split over its colours by the areas of the drawing: {parts}, each ±{spread} %. The whole motif is as sure as it was weighed.',
    mend: 'Weigh the {ball} before and after each colour, and enter the shares or the grams of each.',
  },
  'yarn/split-evenly': {
    severity: 'note',
    message:
      'the weight of {motif} is split evenly over its {slots} colours, each ±{spread} %, as nothing says how it divides.',
    mend: 'Weigh the {ball} before and after each colour, and enter the shares or the grams of each.',
  },
  'yarn/weighed-other-colours': {
    severity: 'warning',
    message:
      '{motif}: what was weighed of {slots} counts for nothing, as it has no {count|colour|colours} of {count|this name|these names}.',
    mend: 'Name the colours of its rounds as they were weighed, or enter the share of each colour anew.',
  },
  'yarn/shares': {
    severity: 'warning',
    message: 'the shares of the weight add up to {sum}, not 1; they are scaled to 1.',
    mend: 'Correct the shares so that they add up to 1.',
  },
  'yarn/invalid-weighing': {
    severity: 'warning',
    message: "{motif}: '{received}' cannot be the {field} of a weighing; it is left out.",
    mend: 'Enter how many motifs were weighed, what they weighed together, and the steps of the scale.',
  },
  'yarn/invalid-allowance': {
    severity: 'warning',
    message: "'{received}' cannot be an allowance; {taken} is taken instead.",
    mend: 'Enter a number from 0 on.',
  },
  'yarn/no-colourway': {
    severity: 'warning',
    message: 'no colourway is chosen for {motifs} of the motifs, so their yarn is not counted.',
    mend: 'Fill or paint these motifs with a colourway.',
  },
  'yarn/invalid-value': {
    severity: 'warning',
    message: "{yarn}: found '{received}', expected {expected}; it is left out.",
    mend: 'Correct the value from the {ball} band.',
  },
  'yarn/no-ball-band': {
    severity: 'warning',
    message:
      '{yarns}: this length follows from stitches, tails or seams, but without the {ball} band it cannot be shown in grams and {balls}.',
    mend: 'Enter grams and metres from the {ball} band.',
  },
  'yarn/no-ball-weight': {
    severity: 'warning',
    message: '{yarns}: the weight of a {ball} is missing, so {balls} cannot be counted.',
    mend: 'Enter the grams of one {ball} from its band.',
  },
  'yarn/no-ball-length': {
    severity: 'note',
    message: '{yarns}: the length of a {ball} is missing, so the yarn is given in grams alone.',
    mend: 'Enter the metres of one {ball} from its band.',
  },
  'yarn/band-assumed': {
    severity: 'note',
    message:
      '{yarns}: nobody entered this from the {ball} band. It is assumed, and so is every number that is marked as assumed.',
    mend: 'Enter grams, metres and price from the {ball} band, or say that they are right.',
  },
  'yarn/no-price': {
    severity: 'note',
    message: '{yarns}: the price of a {ball} is missing, so no cost can be calculated.',
    mend: 'Enter the price of one {ball}.',
  },
  'yarn/stash-short': {
    severity: 'warning',
    message: '{yarn}: {onHand} on hand, {need} needed: {reach}; up to {missing} are missing.',
    mend: '{ways}.',
  },
  'yarn/stash-tight': {
    severity: 'note',
    message:
      '{yarn}: {onHand} on hand should be enough for {need}, but if the estimate runs high, {missing} are missing.',
    mend: '{ways}.',
  },
  'yarn/dye-lot': {
    severity: 'note',
    message:
      '{count} {count|{ball}|{balls}} to buy in {yarns}: all of a yarn should have one dye lot, with those on hand.',
    mend: 'Buy all {balls} of a yarn at once, in the lot that is there already; lots differ.',
  },
  'yarn/weight-far-from-stitches': {
    severity: 'warning',
    message:
      'by its weight the motif takes {percent} % of the yarn that its stitches come to, so one of the two is wrong. The motif is counted by its weight, {edging} and joins by their stitches.',
    mend: 'Check that one motif alone was weighed and that all its rounds are entered, then the {gauge}, and grams and metres on the {ball} band.',
  },
  'yarn/edging-stitch': {
    severity: 'warning',
    message: "'{stitch}' is not a stitch that the {edging} can count; it is counted as sc (US terms).",
    mend: "Name the {edging}'s rounds by their stitch, in the project's terms.",
  },
  'yarn/no-edging-yarn': {
    severity: 'warning',
    message: 'nothing says which yarn the {edging} is worked in, so its yarn is not counted.',
    mend: 'Choose a yarn for the {edging}.',
  },
  'yarn/edging-yarn-assumed': {
    severity: 'note',
    message: 'no yarn is chosen for the {edging}; it is counted in “{yarn}”, which the motifs end with.',
    mend: 'Choose a yarn for the {edging}.',
  },
  'yarn/edging-yarn-of-several': {
    severity: 'note',
    message:
      'no yarn is chosen for the {edging}, and the motifs end with several: it is counted in “{yarn}”, the last yarn of colourway {way}{most}.',
    mend: 'Choose a yarn for the {edging}.',
  },
  'yarn/no-joining-yarn': {
    severity: 'warning',
    message: 'nothing says which yarn the joins are worked in, so their yarn is not counted.',
    mend: 'Choose a yarn for joining.',
  },
  'yarn/no-closing-yarn': {
    severity: 'warning',
    message: 'nothing says which yarn the ends are closed in, so the yarn of these seams is not counted.',
    mend: 'Choose a yarn for joining.',
  },
  'yarn/joining-yarn-of-several': {
    severity: 'note',
    message:
      'no yarn is chosen for joining, and the motifs end with several: the joins are counted in “{yarn}”, the last yarn of colourway {way}{most}.',
    mend: 'Choose a yarn for joining.',
  },
  'yarn/joining-yarn-assumed': {
    severity: 'note',
    message: 'no yarn is chosen for joining; the joins are counted in “{yarn}”, which the motifs end with.',
    mend: 'Choose a yarn for joining.',
  },
  'time/no-minutes': {
    severity: 'note',
    message: 'nothing says how long one {motif} takes, so no time can be calculated.',
    mend: 'Time a motif and enter its minutes.',
  },
  'time/ends': {
    severity: 'note',
    message: '{ends} ends to weave in: about {time} of the work.',
    mend: 'Weave in as you go, or crochet over the ends.',
  },
} as const satisfies Record<string, CatalogueEntry>
