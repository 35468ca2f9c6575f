import type { CatalogueEntry } from './catalogue'

export const MOTIF_FINDINGS = {} as const satisfies Record<string, CatalogueEntry>
