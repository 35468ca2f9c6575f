/** What the commands of the menu do, and which keys call them where the host has no menu of its own. */
import type { CommandId } from '../../shared-types/commands'
import { COMMANDS } from '../../shared-types/commands'
import { placedPieces } from '../../src-core/layout/placed'
import { kindOf } from '../kinds/kinds'
import type { WindowState } from '../state/window.svelte'
import type { MapControl } from './map-control'
import { selectGroup } from './map-acts'
import { freeColours, keepColours } from './paint-acts'

/** Does what a command says. `map` is the drawing, where there is one. */
export function runCommand(id: CommandId, state: WindowState, map: MapControl | null): void {
  const { bridge, document, view } = state
  switch (id) {
    case 'new':
      view.dialog = 'start'
      return
    case 'open':
      void state.ask(bridge.openProject())
      return
    case 'save':
      void state.save()
      return
    case 'save-as':
      void state.saveAs()
      return
    case 'duplicate':
      void state.ask(bridge.duplicateProject(state.change()))
      return
    case 'take-from':
      view.dialog = 'take'
      return
    case 'print':
      state.print()
      return
    case 'export-map':
      view.place = 'paper'
      state.startExport({ kind: 'map', ...state.paper.choice })
      return
    case 'export-picture':
      view.place = 'paper'
      state.startExport({ kind: 'picture' })
      return
    case 'export-materials':
      view.place = 'paper'
      state.startExport({ kind: 'table', table: 'materials' })
      return
    case 'export-order':
      view.place = 'paper'
      state.startExport({ kind: 'table', table: kindOf(document.project).paper.list.list })
      return
    case 'undo':
      state.undo()
      return
    case 'redo':
      state.redo()
      return
    case 'select-all':
      selectGroup(
        state,
        placedPieces(document.plan).map(({ id }) => id),
      )
      return
    case 'keep-colours':
      keepColours(state)
      return
    case 'free-colours':
      freeColours(state)
      return
    case 'zoom-in':
      map?.zoomBy(1.25)
      return
    case 'zoom-out':
      map?.zoomBy(0.8)
      return
    case 'zoom-fit':
      map?.fit()
      return
    case 'zoom-actual':
      map?.realSize()
      return
    case 'settings':
    case 'keys':
    case 'help':
    case 'about':
      view.dialog = id
  }
}

/** A shortcut as people write it: "Ctrl+Shift+S", "⇧⌘S". */
export function shortcutWords(shortcut: string, isMac: boolean): string {
  if (!isMac) return shortcut.replace('Mod', 'Ctrl').replace('Plus', '+')
  return shortcut.replace('Shift+', '⇧').replace('Mod+', '⌘').replace('Plus', '+')
}

const keyOf = (shortcut: string): string => shortcut.split('+').at(-1)!.replace('Plus', '+').toLowerCase()

/** The command that a key press calls, or null. */
export function commandOfKey(event: KeyboardEvent, isMac: boolean): CommandId | null {
  for (const entry of COMMANDS) {
    const shortcut = (!isMac && entry.shortcutElsewhere) || entry.shortcut
    if (!shortcut) continue
    const wantsMod = shortcut.includes('Mod+')
    const hasMod = isMac ? event.metaKey : event.ctrlKey
    const key = event.key.toLowerCase()
    const isKey = key === keyOf(shortcut) || (keyOf(shortcut) === '+' && key === '=')
    if (!isKey || hasMod !== wantsMod || event.altKey) continue
    // "+" and "?" need Shift on many keyboards, so it is asked of letters alone.
    if (/^[a-z]$/.test(key) && event.shiftKey !== shortcut.includes('Shift+')) continue
    return entry.id
  }
  return null
}
