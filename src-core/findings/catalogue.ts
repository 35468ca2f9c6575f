/**
 * The catalogue of findings: every code with its severity, its words and what would mend it. One file per
 * room keeps the list readable; docs/findings.md is generated from here. Codes are stable: other programs
 * and saved settings rely on them.
 */
import type { Severity } from '../../shared-types/finding'
import { APPLIQUE_FINDINGS } from './applique'
import { COLOUR_FINDINGS } from './colours'
import { EDGING_FINDINGS } from './edging'
import { FILE_FINDINGS } from './file'
import { GARLAND_FINDINGS } from './garland'
import { HOST_FINDINGS } from './host'
import { JOIN_FINDINGS } from './joins'
import { KIT_FINDINGS } from './kit'
import { LAYOUT_FINDINGS } from './layout'
import { LETTER_FINDINGS } from './letters'
import { MATERIAL_FINDINGS } from './materials'
import { MOTIF_FINDINGS } from './motif'
import { NOTATION_FINDINGS } from './notation'
import { NUMBER_FINDINGS } from './numbers'
import { PHOTO_FINDINGS } from './photo'
import { PROGRESS_FINDINGS } from './progress'

export interface CatalogueEntry {
  readonly severity: Severity
  /** What is wrong; `{name}` places are filled with the finding's values. */
  readonly message: string
  readonly mend: string
}

export const CATALOGUE = {
  ...FILE_FINDINGS,
  ...HOST_FINDINGS,
  ...MOTIF_FINDINGS,
  ...NOTATION_FINDINGS,
  ...LAYOUT_FINDINGS,
  ...APPLIQUE_FINDINGS,
  ...GARLAND_FINDINGS,
  ...JOIN_FINDINGS,
  ...COLOUR_FINDINGS,
  ...MATERIAL_FINDINGS,
  ...EDGING_FINDINGS,
  ...KIT_FINDINGS,
  ...PHOTO_FINDINGS,
  ...PROGRESS_FINDINGS,
  ...NUMBER_FINDINGS,
  ...LETTER_FINDINGS,
} as const satisfies Record<string, CatalogueEntry>

export type FindingCode = keyof typeof CATALOGUE
