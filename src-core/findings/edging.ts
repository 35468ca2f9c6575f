/** Findings on the written rounds of an edging. */
import type { CatalogueEntry } from './catalogue'

export const EDGING_FINDINGS = {
  'edging/marks-missed': {
    severity: 'error',
    message:
      'round {round} of the {edging} names corners, tips or dips, and does not come out even between them on this edge.',
    mend: 'Work fewer stitches between them, or count on to the next one: "sc in each st to next corner" (US terms).',
  },
  'edging/no-multiple': {
    severity: 'warning',
    message:
      'no number of stitches up to {most} lets the rounds of the {edging} come out even; their counts are not sure.',
    mend: 'Check that what a repeat uses is worked or skipped to its last stitch.',
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
