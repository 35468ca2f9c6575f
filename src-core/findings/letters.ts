import type { CatalogueEntry } from './catalogue'

/** Texts with characters that the type on paper has not got. */
export const LETTER_FINDINGS = {
  'letters/missing': {
    severity: 'warning',
    message: '{what}: the type on paper lacks {characters}.',
    mend: 'On paper they are spelled in Latin letters, or stand as “?”: look at the page preview, and write it in Latin, Greek or Cyrillic letters where that is not good enough.',
  },
  'letters/code': {
    severity: 'warning',
    message: '{what}: the type on paper lacks {characters}.',
    mend: 'Another letter stands for it on paper: choose one in Latin, Greek or Cyrillic to have it the same everywhere.',
  },
} as const satisfies Record<string, CatalogueEntry>
