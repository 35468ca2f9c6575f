/** The map in words: what it is, what lies on it, what a motif of it is. */
import type { PlacedMotif, Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import type { PlacedPiece } from '../../src-core/layout/placed'
import { PIECE_NAME, standsWords } from '../../src-core/figures/piece-words'
import { formatLength } from '../../src-core/units/format'
import { itemOfMotif } from '../state/edits/garland'
import { blanketOf } from '../state/edits/layout'
import type { LayoutKind } from '../state/edits/layout-kind'
import { layoutKindOf } from '../state/edits/layout-kind'
import { findMotif } from '../state/edits/motif'
import { findColourway } from '../state/edits/yarn'
import { counted } from '../state/summaries'

/** What one thing on the map is called. */
export const THING: Readonly<Record<LayoutKind, string>> = {
  blanket: 'motif',
  garland: 'item',
  applique: 'item',
}

/** "Map of 120 motifs", "Garland of 29 items", "Panel of 27 items". */
export function mapLabel(project: Project, plan: Plan): string {
  switch (layoutKindOf(project)) {
    case 'garland':
      return `Garland of ${counted(plan.items?.length ?? plan.motifs.length, 'item')}`
    case 'applique':
      return `Panel of ${counted(plan.motifs.length, 'item')}`
    default:
      return `Map of ${counted(plan.counts.motifs, 'motif')}`
  }
}

/** What its keys do, for ears. */
export const MAP_HELP: Readonly<Record<LayoutKind, string>> = {
  blanket:
    'Arrow keys move from motif to motif, comma and full stop go through fillers and half motifs too, letters paint colourways, question mark lists all keys. The map is also there as a table.',
  garland:
    'Arrow keys move along the cord, letters paint colourways, question mark lists all keys. The garland is also there as a table.',
  applique:
    'Comma and full stop lead from item to item, arrow keys move the item, letters paint colourways, question mark lists all keys. The panel is also there as a table.',
}

interface EmptyMap {
  readonly what: string
  readonly then: string
  /** On the button that leads there. */
  readonly way: string
}

/** What is said where there is nothing to draw, and what to do then. */
export const EMPTY_MAP: Readonly<Record<LayoutKind, EmptyMap>> = {
  blanket: {
    what: 'Nothing is laid out yet.',
    then: 'Start from the motif on your table, or from one of the examples.',
    way: 'Start',
  },
  garland: {
    what: 'Nothing hangs on the cord yet.',
    then: 'What is missing or cannot be used of it is told at Arrangement.',
    way: 'To the cord',
  },
  applique: {
    what: 'There is no panel to lay anything on.',
    then: 'What is missing or cannot be used of it is told at Arrangement.',
    way: 'To the panel',
  },
}

/** Colourway of a placed motif: "colourway A Dawn". */
function wayWords(project: Project, motif: PlacedMotif): string {
  const way = findColourway(project, motif.colourway)
  return way ? `colourway ${way.code ?? ''} ${way.name ?? ''}`.trim() : 'no colourway'
}

/** Whether the colour of a motif is fixed: painted by hand or kept. */
const fixedWords = (project: Project, { id }: PlacedPiece): string[] =>
  blanketOf(project)?.cells?.painted?.[id] === undefined ? [] : ['fixed']

const nameOf = (project: Project, motif: PlacedMotif): string =>
  findMotif(project, motif.motif)?.name ?? motif.motif ?? ''

/** "55, row 5, place 7, colourway A Dawn, 4 join points". */
export function motifWords(project: Project, plan: Plan, motif: PlacedPiece): string {
  const units = project.units ?? 'metric'
  if (plan.garland) {
    const found = itemOfMotif(plan, motif.id)
    return [
      `item ${found?.number ?? motif.label}`,
      nameOf(project, motif),
      wayWords(project, motif),
      ...(found ? [`${formatLength(found.item.along, units)} along the cord`] : []),
    ].join(', ')
  }
  if (plan.panel)
    return [
      `item ${motif.label}`,
      nameOf(project, motif),
      wayWords(project, motif),
      `${formatLength(motif.x, units)} from the left`,
      `${formatLength(motif.y, units)} from the top`,
      `rotated ${Math.round(motif.turn * 10) / 10} degrees`,
      ...(motif.flipped ? ['wrong side up'] : []),
    ].join(', ')
  if (motif.kind !== 'motif')
    return [
      `${PIECE_NAME[motif.kind]} ${motif.label}`,
      standsWords(plan, motif),
      wayWords(project, motif),
      ...fixedWords(project, motif),
    ].join(', ')
  const joins = plan.joins.filter((node) => node.members.some((member) => member.motif === motif.id)).length
  return [
    `motif ${motif.label}`,
    `row ${motif.row}`,
    `place ${motif.column}`,
    wayWords(project, motif),
    ...fixedWords(project, motif),
    counted(joins, 'join point'),
  ].join(', ')
}
