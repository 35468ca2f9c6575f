import type { CatalogueEntry } from './catalogue'

/** Gauge, yarn, time. */
export const MATERIAL_FINDINGS = {
  'gauge/unknown-stitch': {
    severity: 'warning',
    message: "the gauge is counted in '{received}'; {expected} is expected. A rule of thumb is used instead.",
    mend: "Name the stitch of the swatch in the project's own terms, such as sc (US) or dc (UK).",
  },
  'gauge/invalid-value': {
    severity: 'warning',
    message: "the gauge says '{received}' where {expected} is expected; it is left out.",
    mend: 'Measure a swatch and enter stitches, rows and the length that they were counted over.',
  },
} as const satisfies Record<string, CatalogueEntry>
