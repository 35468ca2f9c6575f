/** What the commands of the menu do. */
import type { CommandId } from '../../shared-types/commands'
import { nextZoom, USUAL_ZOOM } from '../../shared-types/zoom'
import { placedPieces } from '../../src-core/layout/placed'
import { kindOf } from '../kinds/kinds'
import type { WindowState } from '../state/window.svelte'
import type { MapControl } from './map-control'
import { ZOOM } from './keys'
import { selectGroup } from './map-acts'
import { freeColours, keepColours } from './paint-acts'

/** Does what a command says. `map` is the drawing, where there is one. */
export function runCommand(id: CommandId, state: WindowState, map: MapControl | null): void {
  const { bridge, document, view } = state
  switch (id) {
    case 'new':
      // A window with a project of its own keeps it: another one opens, and asks there what to start with.
      if (state.isUntouched) view.dialog = 'start'
      else void state.ask(bridge.newProject({ from: 'blank' }))
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
    case 'duplicate-plan':
      void state.ask(bridge.duplicateAsPlan(state.change()))
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
      state.picture.ask()
      return
    case 'export-page':
      view.place = 'paper'
      state.startExport({ kind: 'page' })
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
      map?.zoomBy(ZOOM.in)
      return
    case 'zoom-out':
      map?.zoomBy(ZOOM.out)
      return
    case 'zoom-fit':
      map?.fit()
      return
    case 'zoom-actual':
      map?.realSize()
      return
    case 'larger':
      void state.changeSettings({ zoom: nextZoom(state.settings.zoom, 1) })
      return
    case 'smaller':
      void state.changeSettings({ zoom: nextZoom(state.settings.zoom, -1) })
      return
    case 'usual-size':
      void state.changeSettings({ zoom: USUAL_ZOOM })
      return
    case 'settings':
    case 'keys':
    case 'help':
    case 'licences':
    case 'about':
      view.dialog = id
  }
}
