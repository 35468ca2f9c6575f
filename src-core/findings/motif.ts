import type { CatalogueEntry } from './catalogue'

/** Motifs: their measures, and later their rounds. */
export const MOTIF_FINDINGS = {
  'motif/petal-count': {
    severity: 'error',
    message: '{received} {received|petal|petals}; a whole number from {least} to {most} can be planned.',
    mend: 'Count the petals of the finished motif and enter that number.',
  },
  'motif/missing-size': {
    severity: 'error',
    message: 'the measure {what} is missing.',
    mend: 'Block the motif if you are going to, lay it flat, and measure it with a ruler.',
  },
  'motif/size-range': {
    severity: 'error',
    message: '{what} is {received}; measures from {least} to {most} can be planned.',
    mend: 'Check the number and its unit.',
  },
  'motif/chains': {
    severity: 'error',
    message: '{what}: found {received}, expected a whole number of chains up to {most}; it is left out.',
    mend: 'Enter how many chains there are.',
  },
  'motif/size-order': {
    severity: 'error',
    message: '{inner} ({small}) must be smaller than {outer} ({large}), but not below {least} % of it.',
    mend: 'Measure both again: the smaller one runs through the dips, or through the middles of the sides.',
  },
  'motif/assumed-size': {
    severity: 'note',
    message: '{what} was not measured; {assumed} is assumed.',
    mend: 'Measure it: it decides how the motifs nestle.',
  },
  'motif/too-large-for-chart': {
    severity: 'note',
    message: 'a chart of {symbols} stitches and chains cannot be read; up to {most} are drawn.',
    mend: 'The rounds are planned and printed in words.',
  },
  'motif/other-piece': {
    severity: 'warning',
    message: 'a separate piece begins at {round}: size, chart and yarn are for the rounds before it only.',
    mend: 'Make it a motif of its own.',
  },
  'motif/goes-with': {
    severity: 'warning',
    message:
      '{motif} goes with {with}, but how many go with each is not known: it is printed, and its yarn is not counted.',
    mend: 'Enter how many under Motif.',
  },
  'motif/trace-numbers': {
    severity: 'error',
    message: 'its traced outline has points that are not two numbers each.',
    mend: 'Measure the photo again, or choose an outline that follows from measures.',
  },
  'motif/trace-short': {
    severity: 'error',
    message: 'its traced outline has {received} {received|point|points}; at least {least} are needed.',
    mend: 'Measure a photo of it, or choose an outline that follows from measures.',
  },
  'motif/trace-crosses': {
    severity: 'error',
    message: 'its traced outline crosses itself.',
    mend: 'Measure the photo again, or choose an outline that follows from measures.',
  },
  'motif/trace-middle': {
    severity: 'error',
    message: 'its traced outline does not go round its middle.',
    mend: 'Measure the photo again, or choose an outline that follows from measures.',
  },
  'motif/trace-places': {
    severity: 'error',
    message:
      'the {tips} {tips|tip|tips} and {dips} {dips|dip|dips} of its traced outline do not alternate; from {least} to {most} of each can be planned.',
    mend: 'Measure the photo again, or choose an outline that follows from measures.',
  },
  'motif/not-regular': {
    severity: 'note',
    message:
      'side to side {side} and point to point {point} do not belong to the same straight-sided shape (it would be {regular}); the sides are drawn bowed.',
    mend: 'Measure again, or block the motif square.',
  },
  'motif/grows-in-blocking': {
    severity: 'note',
    message: 'measured before blocking; {percent} % growth is assumed for cotton thread.',
    mend: 'Block one motif, measure it again and say that it is blocked.',
  },
  'motif/no-rounds': {
    severity: 'error',
    message: 'it has no written rounds yet.',
    mend: 'Write or paste its rounds, or enter the measures of a finished motif.',
  },
  'motif/ring-over-full': {
    severity: 'note',
    message:
      '{stitches} {stitches|stitch|stitches} in a ring of {chains} {chains|chain|chains}; about {holds} fit with ease.',
    mend: 'Begin with a longer ring, or push the stitches together and let the ring stretch.',
  },
  'motif/tight-loop': {
    severity: 'warning',
    message:
      'its loops of chains are up to {short} shorter than the distance they span: they pull the round in.',
    mend: 'Work a chain or two more in each loop, or skip fewer stitches.',
  },
  'motif/legs-assumed': {
    severity: 'note',
    message:
      'the text does not say how many legs a {what} has; it is counted as {legs} {stitch} worked together, as is common.',
    mend: 'Write its size ("4-dc cluster"), or explain it under Special stitches.',
  },
  'motif/petal-full': {
    severity: 'note',
    message: 'petals are full: {crowding} stitches in the space of one (noted from {limit}).',
    mend: 'They will stand up a little, as in a rose. For a flat petal use fewer stitches or a longer loop.',
  },
  'motif/petal-too-full': {
    severity: 'warning',
    message: 'petal too full: {crowding} stitches in the space of one (flat up to about {limit}).',
    mend: 'Use fewer stitches in each petal, or a longer loop under it.',
  },
  'motif/cups': {
    severity: 'warning',
    message: 'cups: its stitches are {flatness} % of what a flat round needs (flat: 90 to 125 %).',
    mend: 'Add more increases in this round or the one before.',
  },
  'motif/may-cup': {
    severity: 'note',
    message: 'may cup: its stitches are {flatness} % of what a flat round needs (flat: 90 to 125 %).',
    mend: 'Blocking may settle it; else add an increase or two.',
  },
  'motif/may-ruffle': {
    severity: 'note',
    message: 'may ruffle: its stitches are {flatness} % of what a flat round needs (flat: 90 to 125 %).',
    mend: 'Blocking may settle it; else leave out an increase or two.',
  },
  'motif/petals-pulled': {
    severity: 'note',
    message:
      'goes over the tips of the petals and is assumed to pull them straight, as an even edge does: a motif with {corners} {corners|corner|corners}.',
    mend: 'Make one and look at it: where it keeps its petals, say so at Motif, under Shape.',
  },
  'motif/other-shape': {
    severity: 'warning',
    message: 'its rounds cannot make {what}, the shape that is chosen; the plan follows the rounds.',
    mend: 'Choose its shape again at Motif, or enter the measures of a finished one.',
  },
  'motif/in-rows': {
    severity: 'note',
    message:
      'its rows go back and forth: they are counted as written, but size and chart treat them as closed rounds.',
    mend: 'For a half motif or a piece in rows, enter its sizes as measured.',
  },
  'motif/ruffles': {
    severity: 'warning',
    message: 'ruffles: its stitches are {flatness} % of what a flat round needs (flat: 90 to 125 %).',
    mend: 'Leave out increases in this round, unless the ruffle is wanted.',
  },
  'motif/other-than-gauge': {
    severity: 'note',
    message: 'yours comes out {percent} % {direction} than the {gauge} says; your measure counts.',
    mend: 'Nothing to do: the rest follows it.',
  },
  'motif/measured-against-gauge': {
    severity: 'warning',
    message:
      'measured {measured} {what}, but by the {gauge} its rounds come to {expected}: {percent} % {direction} than they make, more than hand and blocking explain. The measure counts.',
    mend: 'Check the measure, the {gauge}, and that these are the rounds of this motif.',
  },
  'motif/measured-against-hook': {
    severity: 'warning',
    message:
      'measured {measured} {what}, but with its hook its rounds come to about {expected}: {percent} % {direction} than they make, more than hand and blocking explain. The measure counts.',
    mend: 'Check the measure, the hook, and that these are the rounds of this motif.',
  },
  'motif/measured-with-other-hook': {
    severity: 'warning',
    message:
      'measured {measured} {what} with a {before} hook, and the hook is {now} now: that is no longer its size. By the {gauge} it comes to about {expected}.',
    mend: 'Make one with the {now} hook and measure it, or take what the {gauge} gives as an estimate under Motif.',
  },
  'motif/stated-size': {
    severity: 'note',
    message:
      'the page states {stated}, {percent} % {direction} than the {gauge} says; the page counts until one is measured.',
    mend: 'Make one and measure it.',
  },
  'motif/stated-against-gauge': {
    severity: 'warning',
    message:
      'its finished size and its {gauge} contradict each other: the page states {stated}, and by the {gauge} its rounds come to {expected}, so the page is {percent} % {direction}.',
    mend: 'Make one and measure it, or correct whichever of the two is wrong; until then the stated size counts.',
  },
  'motif/kept-photo': {
    severity: 'warning',
    message: 'the photo that is kept with it is not a JPEG of up to {most} pixels a side; it is not shown.',
    mend: 'Measure a photo of it again, or remove the one that is kept.',
  },
  'motif/no-outline': {
    severity: 'error',
    message: 'neither its rounds nor its measures give an outline.',
    mend: 'Enter the measures of a finished motif.',
  },
} as const satisfies Record<string, CatalogueEntry>
