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
  'layout/alternate-first': {
    severity: 'warning',
    message:
      'the motifs alternate beginning with {motif}; the list of those that alternate begins with {listed}.',
    mend: 'Put the motif of the arrangement first in the list.',
  },
  'layout/count': {
    severity: 'error',
    message: '{what}: found {received}, expected a whole number from {least} to {most}.',
    mend: 'Enter how many you want, or enter a target size and choose one of the arrangements that fit it.',
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
    message: 'a gap of {received} between motifs is not from 0 to {most}.',
    mend: 'Enter the distance between the outlines of neighbours.',
  },
  'layout/target': {
    severity: 'error',
    message: 'a target size of {received} cannot be fitted.',
    mend: 'Enter a width and a height above zero.',
  },
  'layout/off-target': {
    severity: 'note',
    message: 'comes out at {size}; you asked for {wish}.',
    mend: 'Look at “What fits best”: another arrangement may come nearer. “Find ways” lists what to change for exactly that size.',
  },
  'layout/round-rings': {
    severity: 'warning',
    message: 'rings cannot be joined in the round: they have no row ends.',
    mend: 'Choose straight or offset rows for a bag, cowl or cushion.',
  },
  'layout/round-rows': {
    severity: 'note',
    message:
      'rows that are one motif shorter or longer than others do not close: every row has the same number.',
    mend: 'Choose the same number of motifs in every row.',
  },
  'layout/round-pattern': {
    severity: 'note',
    message:
      'the motifs alternate by {count} and a row has {columns}: where the round closes, two alike meet.',
    mend: 'Choose a number of motifs in a row that is a multiple of {count}.',
  },
  'layout/nothing-left': {
    severity: 'error',
    message: 'every motif is left out: nothing is left of the blanket.',
    mend: 'Bring motifs back, or make the outline larger.',
  },
  'layout/outline-size': {
    severity: 'error',
    message: 'the outline’s {what}: found {received}, expected {least} to {most}.',
    mend: 'Enter the width of the outline, or choose none.',
  },
  'layout/outline-path': {
    severity: 'error',
    message: 'the outline’s path cannot be used: {trouble}.',
    mend: 'Paste what stands in the d of an SVG path that closes and does not cross itself, in mm.',
  },
  'layout/outline-larger': {
    severity: 'note',
    message: 'the outline is {outline}, but the rows cover only {rows}.',
    mend: 'Add rows and motifs in a row until they cover the outline.',
  },
  'layout/outline-aside': {
    severity: 'note',
    message: 'the outline is {outline}, lies off the middle and reaches past the rows, which cover {rows}.',
    mend: 'Add rows and motifs in a row until they cover the outline, or put the outline in the middle.',
  },
  'layout/loose-kind': {
    severity: 'warning',
    message: '{count} {count|motif is joined to nothing|motifs are joined to nothing}: {cells}.',
    mend: 'Make that motif larger, allow a larger gap at the join, or work joining chains. Where motifs beside it are left out, bring one back.',
  },
  'layout/large-places': {
    severity: 'error',
    message: 'a large motif takes {received} places each way, which is not a whole number from 1 to {most}.',
    mend: 'Say how many rows, and motifs of a row, it takes.',
  },
  'layout/large-none': {
    severity: 'warning',
    message: 'a large motif is asked for at {id}, and no motif was put in there.',
    mend: 'Put the motif in there, or bring the small ones back.',
  },
  'layout/large-rows': {
    severity: 'warning',
    message:
      'the large motif of {size} × {size} places at row {row}, motif {place} is not there: only straight rows have such places.',
    mend: 'Choose straight rows, or bring the small motifs back.',
  },
  'layout/large-beyond': {
    severity: 'warning',
    message:
      'the large motif at row {row}, motif {place} is not there: its {size} × {size} places do not lie within the rows.',
    mend: 'Add rows or motifs in a row, or bring the small motifs back.',
  },
  'layout/large-overlap': {
    severity: 'warning',
    message:
      'the large motif at row {row}, motif {place} is not there: another one takes some of its {size} × {size} places.',
    mend: 'Bring the small motifs back there, and select the places of one large motif.',
  },
  'layout/large-gapes': {
    severity: 'warning',
    message:
      '{name} is {measured}, but the {size} × {size} places that it takes are {places}: the gap round it, {gap}, is too wide to join.',
    mend: 'Make it {wanted}: a plain round or two more, or choose another number of places.',
  },
  'layout/large-pushes': {
    severity: 'warning',
    message:
      '{name} is {measured}, but the {size} × {size} places that it takes are {places}: it pushes the others {gap} apart, too far to join.',
    mend: 'Make it {wanted}: a round less, or choose another number of places.',
  },
  'layout/pair-motifs': {
    severity: 'error',
    message: 'a joining rule for a pair names {count} {count|motif|motifs}.',
    mend: 'Name two motifs, or one motif twice.',
  },
  'layout/filler-large': {
    severity: 'warning',
    message:
      'the filler between {count} {count|motif|motifs} measures {across} and the openings take one of {fits}: it overlaps the motifs round it by up to {overlap}.',
    mend: 'Work the filler smaller (a round less, a smaller hook), or leave more air between the motifs.',
  },
  'layout/filler-small': {
    severity: 'note',
    message:
      'the filler between {count} {count|motif|motifs} measures {across} and the openings take one of {fits}: gaps of up to {bridge} are left at its joins.',
    mend: 'Work the filler a round larger or a chain more where it joins, or choose one that faces every motif round it.',
  },
  'layout/filler-short': {
    severity: 'warning',
    message:
      'the filler between {count} {count|motif|motifs} measures {across} and the openings take one of {fits}: it does not join every motif round it, as a gap of {gap} is more than the joining distance of {reach}.',
    mend: 'Work the filler larger, choose one that faces every motif round it, or change the size or the distance of the motifs.',
  },
  'layout/filler-far': {
    severity: 'warning',
    message:
      'the filler between {count} {count|motif|motifs} measures {across} and the openings take one of {fits}: gaps of up to {bridge} are left at its joins, more than the joining distance of {reach}.',
    mend: 'Work the filler a round or more larger, or leave it out.',
  },
  'layout/filler-nowhere': {
    severity: 'note',
    message: 'a filler is asked for, but no opening lies between three or more motifs.',
    mend: 'Leave the filler out, or rotate or arrange the motifs so that openings stay between them.',
  },
  'layout/filler-kind-missing': {
    severity: 'note',
    message:
      'a filler is chosen for openings between {count} {count|motif|motifs}, {motifs}, and there are none of this kind.',
    mend: 'Keep it if such openings will come back, or choose a filler for the openings there are.',
  },
  'layout/filler-stays-open': {
    severity: 'note',
    message:
      'the openings are {size} across; one round of {stitch} takes about {least}, so they stay open without the filler.',
    mend: 'Leave the filler out, or choose larger motifs or another arrangement.',
  },
  'layout/halves-nothing': {
    severity: 'note',
    message: 'you asked for half motifs, but there is nothing to fill: only offset rows end unevenly.',
    mend: 'Leave the half motifs out, or choose offset rows, two or more of them.',
  },
  'layout/halves-no-end': {
    severity: 'note',
    message:
      'you asked for half motifs, but there is nothing to fill: no row ends half a motif short of the side.',
    mend: 'Leave the half motifs out.',
  },
  'layout/halves-odd': {
    severity: 'note',
    message: 'a motif with {petals} {places} has no true half; the closest are {less} or {more}.',
    mend: 'Work {less} {places} at one end of a row and {more} at the other, or choose a motif with an even number.',
  },
  'layout/half-design': {
    severity: 'note',
    message:
      '{motif}: nothing says how a half of it is worked. Its straight side has to be {length} long, about {stitches} {stitches|stitch|stitches}.',
    mend: 'Take the half of its designer, or work one back and forth until it fits beside a whole one, and say in its instructions how. Or leave the half motifs out: the sides stay in steps, which an edging can level.',
  },
  'layout/half-rows': {
    severity: 'note',
    message:
      '{motif}: its rounds do not say how a half of it is worked. Back and forth it takes {rows} {rows|row|rows}; its straight side has to be {length} long, about {stitches} {stitches|stitch|stitches}, and its last row makes half of the {made} {made|stitch|stitches} of the last round.',
    mend: 'Take the half of its designer, or work one until it fits beside a whole one, and say in its instructions how. Or leave the half motifs out: the sides stay in steps, which an edging can level.',
  },
  'layout/half-suggested': {
    severity: 'note',
    message:
      '{motif}: no pattern says how a half of it is worked, but one follows from its rounds: {rows} {rows|row|rows} back and forth, {stitches} {stitches|stitch|stitches} in the last.',
    mend: 'Work one before you count on it, and lay it beside a whole motif. Its rows stand at Gaps and sides and are printed with the motif; what you say of halves in the instructions takes their place.',
  },
  'layout/fit-no-yarn': {
    severity: 'error',
    message: 'how much of each yarn a motif takes is not known, so the yarn on hand gives no size.',
    mend: 'Weigh some motifs, choose colourways for the blanket, and enter what is on hand of each yarn.',
  },
  'layout/fit-stash': {
    severity: 'warning',
    message: 'the yarn on hand is not enough for a single motif: there is too little {yarns}.',
    mend: 'Enter what is on hand of each yarn, or choose colourways in yarns that are on hand.',
  },
  'layout/fit-piles': {
    severity: 'warning',
    message:
      'no arrangement of so many motifs keeps to those that there are of each colourway; the closest takes {count} {count|motif|motifs} more than there are.',
    mend: 'Choose another pattern, or make what is missing.',
  },
  'layout/fit-kind': {
    severity: 'error',
    message: 'only a blanket is fitted to a size; this is {kind}.',
    mend: 'For a garland enter the length of the cord, or span and drop; for an appliqué the panel.',
  },
} as const satisfies Record<string, CatalogueEntry>
