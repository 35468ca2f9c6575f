import type { CatalogueEntry } from './catalogue'

export const MATERIAL_FINDINGS = {} as const satisfies Record<string, CatalogueEntry>
