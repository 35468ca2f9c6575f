import type { CatalogueEntry } from './catalogue'

/** Join points and the order of work. */
export const JOIN_FINDINGS = {
  'joins/pieces': {
    severity: 'warning',
    message: 'the motifs fall into {pieces} separate pieces.',
    mend: 'Rotate motifs that have petals so that these meet, allow a larger gap at the join, or choose another way of joining.',
  },
  'joins/one-node': {
    severity: 'warning',
    message: '{count} {count|motif hangs|motifs hang} on a single join point and will spin: {cells}.',
    mend: 'Join them at two places: rotate motifs that have petals, or choose another arrangement.',
  },
  'joins/weak': {
    severity: 'note',
    message: 'neighbours meet at one point only; the fabric will be loose.',
    mend: 'Two points to each side hold better: rotate the motifs so that two petals face each neighbour.',
  },
  'joins/weak-round': {
    severity: 'note',
    message: 'circles meet at one point only, however they are rotated; the fabric will be loose.',
    mend: 'Fillers in the openings join them at more points. In offset rows each circle has six neighbours, in straight rows four.',
  },
  'joins/between-spaces': {
    severity: 'warning',
    message:
      '{joins} of {of} {of|join point|join points} {joins|lies|lie} between two spaces of a motif, which has {spaces} {spaces|space|spaces}, and not at one: there neighbours can only be joined across a chain.',
    mend: 'In straight rows motifs with 4, 8, 12 … spaces meet space to space, in offset rows and rings those with 6, 12, 18 …: choose the arrangement that suits yours, or work the joining chains where the instructions tell them.',
  },
  'joins/weak-sides': {
    severity: 'note',
    message: 'neighbours meet at one point only; the fabric will be loose.',
    mend: 'Join them all along their sides, or rotate them so that sides meet.',
  },
  'joins/corners-alone': {
    severity: 'warning',
    message:
      'the motifs are joined at their corners alone: they hang by points, and nothing holds their sides together.',
    mend: 'Join them along the sides too, or sew them, in an arrangement in which sides lie on sides.',
  },
  'joins/stretched': {
    severity: 'note',
    message:
      '{count} {count|join point has|join points have} a gap of {spread}; gaps of up to {limit} draw closed as you join.',
    mend: 'Work a chain more where they join, choose another rotation, or measure the motif again.',
  },
  'joins/stretched-seam': {
    severity: 'note',
    message:
      '{count} {count|join point has|join points have} a gap of {spread}; gaps of up to {limit} draw closed as you join.',
    mend: 'Sew loosely there, so that the seam bridges the gap and does not pull the motifs out of shape, choose another rotation, or measure the motif again.',
  },
  'joins/many-tips': {
    severity: 'note',
    message: 'with {petals} petals several tips of neighbours come within reach of each other.',
    mend: 'Check the join detail: choose the petals that you want to join and a shorter joining distance.',
  },
  'joins/single-count': {
    severity: 'error',
    message: 'a joining rule for two motifs names {count} {count|motif|motifs}.',
    mend: 'Name two motifs that lie side by side.',
  },
  'joins/single-place': {
    severity: 'warning',
    message: 'a joining rule for two motifs names {places}, where there is no motif.',
    mend: 'Select the two motifs and choose how they are joined, or remove the rule at Joins.',
  },
  'joins/single-far': {
    severity: 'warning',
    message: '{places} have a joining rule of their own, but do not come close enough to be joined.',
    mend: 'Allow more chains between them, choose another rule, or join them as all others.',
  },
  'joins/single-apart': {
    severity: 'note',
    message:
      '{places} are kept apart by a joining rule of their own, but lie too far from each other to meet: it changes nothing.',
    mend: 'Remove the rule at Joins, or choose two motifs that lie side by side.',
  },
  'joins/pair-absent': {
    severity: 'note',
    message: 'a joining rule for two motifs names {motif}, which is placed nowhere: it changes nothing.',
    mend: 'Remove the rule at Joins, or place the motif.',
  },
  'joins/pair-apart': {
    severity: 'note',
    message:
      'a joining rule says how {one} and {other} are joined, but no two of them meet: it changes nothing.',
    mend: 'Remove the rule at Joins, or allow a larger gap or more chains for these two.',
  },
  'joins/gap-for-hands': {
    severity: 'warning',
    message: 'openings of {size} are left between the motifs; at {limit} or more, small hands fit through.',
    mend: 'For a child choose an arrangement that closes them, smaller motifs or fillers, and check for loose loops.',
  },
  'joins/gap-for-fingers': {
    severity: 'note',
    message: 'openings of {size} are left between the motifs.',
    mend: 'For a child check that no finger can be caught, and check for loose loops.',
  },
  'joins/reach': {
    severity: 'error',
    message: 'a joining distance of {received} is not from 0 to {most}.',
    mend: 'Enter how far apart two petals may be and still be joined, or leave it out.',
  },
  'joins/no-chain-width': {
    severity: 'note',
    message:
      'joining chains are estimated with a rule of thumb for the stitch width ({width}), since there is no {gauge}.',
    mend: 'Enter a {gauge}, or measure ten chains.',
  },
  'order/unknown-place': {
    severity: 'warning',
    message: "the order names motif '{id}', which this arrangement does not have.",
    mend: 'Leave it out of the order, or choose another order.',
  },
  'order/incomplete': {
    severity: 'warning',
    message: 'the order leaves out {count} {count|motif; it is|motifs; they are} worked last, row by row.',
    mend: 'Add them to the list.',
  },
  'order/repeated': {
    severity: 'warning',
    message: "the order names motif '{id}' twice.",
    mend: 'Remove one of them; the first counts.',
  },
} as const satisfies Record<string, CatalogueEntry>
