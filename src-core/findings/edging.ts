/** Findings on the written rounds of an edging. */
import type { CatalogueEntry } from './catalogue'

export const EDGING_FINDINGS = {
  'edging/marks-missed': {
    severity: 'error',
    message:
      'round {round} of the {edging} names corners, tips or dips, and does not come out even between them on this edge.',
    mend: 'Begin at one of them and say it from one to the next: “*{example}; rep from * around”, or work fewer stitches between them.',
  },
  'edging/no-multiple': {
    severity: 'warning',
    message:
      'no number of stitches up to {most} lets the rounds of the {edging} come out even; their counts are uncertain.',
    mend: 'Check that what a repeat uses is worked or skipped to its last stitch.',
  },
  'edging/corners-differ': {
    severity: 'note',
    message:
      '{repeats} {repeats|repeat|repeats} of round {round} of the {edging} {repeats|does|do} not divide evenly over its sides: each of its {corners} {corners|corner|corners} falls on a different stitch of a repeat. {fewer} or {more} {more|repeat|repeats} {more|does|do}, over {less} or {much} {much|stitch|stitches} instead of {now}.',
    mend: 'The nearest number that comes out even on each side is {near}: in round {base}, {spread}. Or work the corners by themselves (“{example}”) and the repeat between them, or choose one of another width.',
  },
  'edging/deep-dips': {
    severity: 'warning',
    message:
      '{count} {count|dip|dips} of the edge {count|is|are} up to {depth} deep and {width} wide, more than the tallest stitch can make up for ({stitch}: {reach}): {count|it is|each is} filled first, with up to {rows} {rows|row|rows} back and forth.',
    mend: 'Let the {edging} follow the edge or bridge it. Half motifs at the ends of rows fill the dips at the sides.',
  },
  'edging/cups': {
    severity: 'warning',
    message:
      'round {round} of the {edging} has {percent} % of the stitches a flat round needs ({least}–{most} %): it may pull in.',
    mend: 'Work more stitches in the corners or in each repeat, or skip fewer.',
  },
  'edging/ruffles': {
    severity: 'note',
    message:
      'round {round} of the {edging} has {percent} % of the stitches a flat round needs ({least}–{most} %): it may ruffle.',
    mend: 'Work fewer stitches in each repeat, or skip more; where ruffles are wanted, leave it.',
  },
} as const satisfies Record<string, CatalogueEntry>
