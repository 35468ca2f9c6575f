import type { CatalogueEntry } from './catalogue'

export const JOIN_FINDINGS = {} as const satisfies Record<string, CatalogueEntry>
