/** What hands and keys do to motifs on the map. */
import type { Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { PIECE_NAME } from '../../src-core/figures/piece-words'
import { pieceAt } from '../../src-core/layout/placed'
import type { PlacedPiece } from '../../src-core/layout/placed'
import type { DocumentState } from '../state/document.svelte'
import {
  addedIds,
  duplicateItems,
  findItem,
  lowerItems,
  moveItems,
  raiseItems,
  removeItems,
  setItem,
  turnItems,
  waysFor,
} from '../state/edits/applique'
import { garlandOf, itemOfMotif, patchPart } from '../state/edits/garland'
import { layoutKindOf } from '../state/edits/layout-kind'
import { paint } from '../state/edits/layout'
import { findColourway } from '../state/edits/yarn'
import { counted } from '../state/summaries'
import type { WindowState } from '../state/window.svelte'
import { motifWords } from './map-words'

/**
 * Paints cells with a colourway (null wipes), as a preview or as a change of its own. On a garland the parts of
 * the sequence are painted that hang there, so that every repeat follows; a colourway of another motif paints
 * nothing.
 */
export function paintCells(
  document: DocumentState,
  cells: readonly string[],
  colourway: string | null,
  how: 'preview' | 'change',
): void {
  const { plan } = document
  const { count, edit } = painting(document.settled, plan, cells, colourway)
  const label = colourway === null ? `free ${count}` : `paint ${count}`
  if (how === 'preview') document.preview(label, edit)
  else document.change(label, edit)
}

function painting(
  project: Project,
  plan: Plan,
  cells: readonly string[],
  colourway: string | null,
): { readonly count: string; readonly edit: (project: Project) => Project } {
  const unique = [...new Set(cells)]
  switch (layoutKindOf(project)) {
    case 'garland': {
      const suits = (part: number) => isFor(project, garlandOf(project)?.items?.[part]?.motif, colourway)
      const parts = [...new Set(unique.map((id) => itemOfMotif(plan, id)?.item.part ?? -1))].filter(suits)
      return {
        count: `${counted(parts.length, 'part')} of the sequence`,
        edit: (before) =>
          parts.reduce((now, part) => patchPart(now, part, { colourway: colourway ?? undefined }), before),
      }
    }
    case 'applique': {
      const ids = unique.filter((id) => isFor(project, findItem(project, id)?.motif, colourway))
      const patch = { colourway: colourway ?? undefined }
      return { count: counted(ids.length, 'item'), edit: (before) => setItem(before, ids, patch) }
    }
    default: {
      const pieces = unique.flatMap((id) => pieceAt(plan, id) ?? [])
      const motifOf = ({ motif }: PlacedPiece) => motif ?? plan.motif?.id
      const suiting = pieces.filter((piece) => isFor(project, motifOf(piece), colourway))
      return {
        count: piecesCounted(suiting),
        edit: (before) =>
          paint(
            before,
            suiting.map(({ id }) => id),
            colourway,
          ),
      }
    }
  }
}

/** "3 motifs", "2 fillers and 1 half motif". */
export function piecesCounted(pieces: readonly PlacedPiece[]): string {
  const of = (kind: PlacedPiece['kind']) => pieces.filter((piece) => piece.kind === kind).length
  const parts = (['motif', 'filler', 'half'] as const)
    .filter((kind) => of(kind) > 0)
    .map((kind) => counted(of(kind), PIECE_NAME[kind]))
  return parts.length > 0 ? parts.join(' and ') : counted(0, 'motif')
}

/** Whether a motif may be worked in a colourway. */
const isFor = (project: Project, motif: string | undefined, colourway: string | null): boolean =>
  motif !== undefined && (colourway === null || waysFor(project, motif).some(({ id }) => id === colourway))

/** Moves items of a panel by mm; `key` joins nudges that follow each other into one step. */
export function nudgeItems(state: WindowState, ids: readonly string[], dx: number, dy: number): void {
  state.document.change(
    `move ${counted(ids.length, 'item')}`,
    (project) => moveItems(project, ids, { dx, dy }),
    `nudge ${ids.join()}`,
  )
}

export function rotateItems(state: WindowState, ids: readonly string[], degrees: number): void {
  state.document.change(
    `rotate ${counted(ids.length, 'item')}`,
    (project) => turnItems(project, ids, degrees),
    `rotate ${ids.join()}`,
  )
}

export function deleteItems(state: WindowState, ids: readonly string[]): void {
  const words = counted(ids.length, 'item')
  state.document.change(`remove ${words}`, (project) => removeItems(project, ids))
  state.selection.hold(null)
  state.say(`${words} removed`)
}

/** Lays copies beside items, and takes the copies in the hand. */
export function copyItems(state: WindowState, ids: readonly string[]): void {
  const { document, selection } = state
  const before = document.settled
  document.change(`duplicate ${counted(ids.length, 'item')}`, (project) => duplicateItems(project, ids))
  const added = addedIds(before, document.settled)
  selection.replace(added)
  selection.focus = added.at(-1) ?? null
  state.say([`${counted(added.length, 'item')} duplicated`, heldWords(state)].filter(Boolean).join('. '))
}

export function stackItems(
  state: WindowState,
  ids: readonly string[],
  up: boolean,
  reach: 'one' | 'all',
): void {
  const { overlaps } = state.document.plan
  const far = reach === 'all' ? (up ? ' to the top' : ' to the bottom') : ''
  const words = counted(ids.length, 'item')
  const edit = up ? raiseItems : lowerItems
  state.document.change(`${up ? 'raise' : 'lower'} ${words}${far}`, (project) =>
    edit(project, ids, reach, overlaps),
  )
  state.say(`${words} ${up ? 'raised' : 'lowered'}${far}`)
}

/** Selects a row, a column or what is alike, and says how many. */
export function selectGroup(state: WindowState, ids: readonly string[]): void {
  state.selection.replace(ids)
  const pieces = ids.flatMap((id) => pieceAt(state.document.plan, id) ?? [])
  state.say(`${piecesCounted(pieces)} selected`)
}

/** The colourway in words, for a list to choose from. */
export const wayName = (project: Project, id: string): string => {
  const way = findColourway(project, id)
  return way ? `${way.code ?? ''} ${way.name ?? ''}`.trim() || way.id : ''
}

/** The motif in the hand in words; empty where there is none. */
export function heldWords({ document, selection }: WindowState): string {
  const motif = pieceAt(document.plan, selection.focus)
  return motif ? motifWords(document.project, document.plan, motif) : ''
}

/** Says the motif in the hand to screen readers. */
export function tellMotif(state: WindowState): void {
  const words = heldWords(state)
  if (words) state.say(words)
}
