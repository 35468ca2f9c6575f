import type { CatalogueEntry } from './catalogue'

export const LAYOUT_FINDINGS = {} as const satisfies Record<string, CatalogueEntry>
