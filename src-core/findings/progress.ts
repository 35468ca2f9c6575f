import type { CatalogueEntry } from './catalogue'

/** What is made, and how far weighed yarn goes. */
export const PROGRESS_FINDINGS = {
  'progress/unknown-place': {
    severity: 'warning',
    message:
      '{count} {count|motif is|motifs are} marked as made or joined where this layout has none: {places}. The marks are kept and not counted.',
    mend: 'Make the layout as large as it was, or clear these marks.',
  },
  'progress/other-motif': {
    severity: 'warning',
    message:
      '{count} {count|motif is|motifs are} marked as made in a colourway of another motif than {motif}: {places}.',
    mend: 'Choose the motif again that they were made from, or clear these marks.',
  },
  'progress/day': {
    severity: 'warning',
    message: "'{received}' is not a day; what was made there is counted without one.",
    mend: 'Write the day as year, month and day, such as 2026-12-01, or leave it empty.',
  },
  'progress/joined-not-made': {
    severity: 'warning',
    message:
      '{count} {count|motif is|motifs are} marked as joined but not as made: {places}. They are not counted.',
    mend: 'Mark them as made too, or clear that they are joined.',
  },
  'progress/weighed-value': {
    severity: 'warning',
    message: "{yarn}: '{received}' cannot be {what}; how far it goes is not shown.",
    mend: 'Weigh what is left, and enter its weight and how many motifs were made by then.',
  },
  'progress/weighed-ahead': {
    severity: 'warning',
    message:
      '{yarn}: weighed with {pieces} made, but {made} {made|is|are} marked. The next in working order are taken as made.',
    mend: 'Mark the motifs that were made, or correct the number.',
  },
  'progress/weighed-beyond': {
    severity: 'warning',
    message:
      '{yarn}: weighed at {at} made motifs, but there are {total} in all; how far it goes is not shown.',
    mend: 'Correct how many motifs were made when it was weighed.',
  },
  'progress/nothing-used': {
    severity: 'note',
    message:
      '{yarn}: {left} left after {pieces}, and {start} before them: that does not say how fast it goes, so what is left is held against the plan.',
    mend: 'If this is what you have now, say with how many motifs made you counted what is on hand; else correct how much there was at the start.',
  },
  'progress/none-in-yarn': {
    severity: 'warning',
    message:
      '{yarn}: {used} were used, but none of the first {at} made {at|motif is|motifs are} worked in it; how far it goes is not shown.',
    mend: 'Check the colourways of the made motifs, and which {ball} was weighed.',
  },
  'progress/no-start': {
    severity: 'note',
    message:
      '{yarn}: nothing says how much there was at the start, so what was weighed is held against the plan.',
    mend: 'To see how fast it goes, weigh it again later, or enter what there was at the start, in grams or {balls}.',
  },
  'progress/counted-ahead': {
    severity: 'warning',
    message:
      '{yarn}: what is on hand was counted with {pieces} made, but {made} {made|is|are} marked. The next in working order are taken as made.',
    mend: 'Mark the motifs that were made, or correct the number.',
  },
  'progress/plan-short': {
    severity: 'warning',
    message:
      '{yarn}: by the plan, the {left} on hand with {pieces} made {reach}; up to {missing} more are needed.',
    mend: '{ways}.',
  },
  'progress/plan-tight': {
    severity: 'note',
    message:
      '{yarn}: the {left} on hand with {pieces} made should be enough for what is left, but if the estimate runs high, {missing} more are needed.',
    mend: 'Weigh it again after some motifs, and see how fast it goes.',
  },
  'progress/rate-far': {
    severity: 'note',
    message: '{yarn}: {percent} % of what the plan says was used for {at} {at|motif|motifs}.',
    mend: 'Check the weights, what there was at the start, and the weight of a motif.',
  },
  'progress/rate-far-joins': {
    severity: 'note',
    message:
      '{yarn}: {percent} % of what the plan says was used for {joined} {joined|motif|motifs} joined by then.',
    mend: 'Check the weights, what there was at the start, and which motifs are marked as joined.',
  },
  'progress/runs-out': {
    severity: 'warning',
    message: 'at this rate {yarn} lasts to motif {last} of {total}; {missing} more are needed.',
    mend: '{ways}.',
  },
  'progress/spent': {
    severity: 'warning',
    message:
      'at this rate the {left} left of {yarn} are not enough for the next motif in it, number {next}; {missing} more are needed.',
    mend: '{ways}.',
  },
  'progress/edging-short': {
    severity: 'warning',
    message:
      'at this rate {yarn} is enough for all motifs but not for what comes after them; {missing} more are needed.',
    mend: '{ways}.',
  },
} as const satisfies Record<string, CatalogueEntry>
