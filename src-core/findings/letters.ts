import type { CatalogueEntry } from './catalogue'

/** Texts with characters that the type on paper has not got. */
export const LETTER_FINDINGS = {
  'letters/missing': {
    severity: 'warning',
    message: '{what}: the font used on paper has no {characters}.',
    mend: 'On paper they are spelled in Latin letters, or printed as “?”. Choose a font that has them: in the window under Settings, “Fonts for other scripts”; on the command line with --font.',
  },
  'letters/code': {
    severity: 'warning',
    message: '{what}: the font used on paper has no {characters}.',
    mend: 'Another letter stands for it on paper. Choose a font that has it (in the window under Settings, “Fonts for other scripts”; on the command line with --font), or another letter.',
  },
} as const satisfies Record<string, CatalogueEntry>
