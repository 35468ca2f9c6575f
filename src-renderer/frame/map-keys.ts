/** Keys while the map has the keyboard. */
import type { MapDrawing } from '../drawing/map-drawing'
import type { LayoutKind } from '../state/edits/layout-kind'
import { layoutKindOf } from '../state/edits/layout-kind'
import type { WindowState } from '../state/window.svelte'
import { BLANKET_KEYS, FIELD_KEYS, GARLAND_KEYS, runKey, SENTENCE_KEYS, SEQUENCE_KEYS } from './keys'
import type { KeyRow, MapKey } from './keys'
import { PANEL_KEYS } from './panel-keys'

interface KeysOfKind {
  /** Where they are heard. */
  readonly where: string
  readonly keys: readonly MapKey[]
  /** Keys of lists that only this kind of layout has. */
  readonly lists?: readonly KeySheet[]
}

/** Keys that are told together. */
export type KeySheet = readonly [where: string, rows: readonly KeyRow[]]

export const MAP_KEYS: Readonly<Record<LayoutKind, KeysOfKind>> = {
  blanket: { where: 'On the map', keys: BLANKET_KEYS },
  garland: { where: 'On the garland', keys: GARLAND_KEYS, lists: [['In the sequence', SEQUENCE_KEYS]] },
  applique: { where: 'On the panel', keys: PANEL_KEYS },
}

/** Keys of a kind of layout, and those that are the same in all. */
export function keySheets(kind: LayoutKind): KeySheet[] {
  const { where, keys, lists = [] } = MAP_KEYS[kind]
  return [[where, keys], ...lists, ['In number fields', FIELD_KEYS], ['In the sentence', SENTENCE_KEYS]]
}

/** Handles a key press on the map. Keys with Ctrl or Command that are none of its own are the menu's. */
export function onMapKey(event: KeyboardEvent, state: WindowState, drawing: MapDrawing | null): void {
  if (!drawing) return
  const { key, shiftKey, altKey, ctrlKey, metaKey } = event
  const { keys } = MAP_KEYS[layoutKindOf(state.document.project)]
  if (!runKey(keys, { ...{ key, shiftKey, altKey, ctrlKey, metaKey }, state, drawing })) return
  event.preventDefault()
  event.stopPropagation()
}
