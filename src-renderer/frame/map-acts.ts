/** What hands and keys do to motifs on the map. */
import type { Project } from '../../shared-types/project'
import { counted } from '../../src-core/figures/words'
import { pieceAt } from '../../src-core/layout/placed'
import { kindOf } from '../kinds/kinds'
import { piecesCounted } from '../kinds/words'
import type { DocumentState } from '../state/document.svelte'
import {
  addedIds,
  duplicateItems,
  lowerItems,
  moveItems,
  raiseItems,
  removeItems,
  turnItems,
} from '../state/edits/applique'
import { findColourway } from '../state/edits/yarn'
import type { WindowState } from '../state/window.svelte'

/** Paints cells with a colourway (null wipes), as a preview or as a change of its own. */
export function paintCells(
  document: DocumentState,
  cells: readonly string[],
  colourway: string | null,
  how: 'preview' | 'change',
): void {
  const { plan, committed } = document
  const { count, edit } = kindOf(committed).painting(committed, plan, [...new Set(cells)], colourway)
  const label = colourway === null ? `free ${count}` : `paint ${count}`
  if (how === 'preview') document.preview(label, edit)
  else document.change(label, edit)
}

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
  const before = document.committed
  document.change(`duplicate ${counted(ids.length, 'item')}`, (project) => duplicateItems(project, ids))
  const added = addedIds(before, document.committed)
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
  const how = `${up ? 'over' : 'under'}${reach === 'all' ? ' all' : ''}`
  const words = counted(ids.length, 'item')
  const edit = up ? raiseItems : lowerItems
  state.document.change(`${up ? 'lay' : 'tuck'} ${words} ${how}`, (project) =>
    edit(project, ids, reach, overlaps),
  )
  state.say(`${words} ${up ? 'laid' : 'tucked'} ${how}`)
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
  return motif ? kindOf(document.project).pieceWords(document.project, document.plan, motif) : ''
}

/** Says the motif in the hand to screen readers. */
export function tellMotif(state: WindowState): void {
  const words = heldWords(state)
  if (words) state.say(words)
}
