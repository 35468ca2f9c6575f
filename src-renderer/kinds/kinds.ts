/** The kinds of layout there are, and the one of a project. */
import type { Project } from '../../shared-types/project'
import type { LayoutKind } from '../state/edits/layout-kind'
import { layoutKindOf } from '../state/edits/layout-kind'
import { APPLIQUE_KIND } from './applique'
import { BLANKET_KIND } from './blanket'
import { GARLAND_KIND } from './garland'
import type { KindOfLayout } from './kind'

export const KINDS: Readonly<Record<LayoutKind, KindOfLayout>> = {
  blanket: BLANKET_KIND,
  garland: GARLAND_KIND,
  applique: APPLIQUE_KIND,
}

export const kindOf = (project: Project): KindOfLayout => KINDS[layoutKindOf(project)]
