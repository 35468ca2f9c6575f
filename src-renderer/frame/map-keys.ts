/** Keys while the map has the keyboard. */
import type { MapDrawing } from '../drawing/map-drawing'
import type { Direction } from '../drawing/scene'
import { columnOf, rowOf } from '../drawing/groups'
import { stepInOrder } from '../drawing/steps'
import { layoutKindOf } from '../state/edits/layout-kind'
import type { WindowState } from '../state/window.svelte'
import { heldWords, selectGroup, tellMotif } from './map-acts'
import { freeColours, paintAndTell } from './paint-acts'
import { onPanelKey } from './panel-keys'

const ARROWS: Readonly<Record<string, Direction>> = {
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ArrowUp: 'up',
  ArrowDown: 'down',
}

/** Before and after in the order of work: on a blanket fillers and half motifs are reached so, too. */
const ALONG: Readonly<Record<string, 1 | -1>> = { ',': -1, '.': 1 }

function step(event: KeyboardEvent, state: WindowState, drawing: MapDrawing, direction: Direction): void {
  go(event, state, drawing, drawing.stepFrom(state.selection.focus, direction))
}

function go(event: KeyboardEvent, state: WindowState, drawing: MapDrawing, next: string | null): void {
  const { selection } = state
  const before = selection.focus
  if (!next) return
  if (event.shiftKey) {
    if (before) selection.add([before])
    selection.add([next])
    selection.focus = next
  } else selection.hold(next)
  drawing.revealMotif(next)
  tellMotif(state)
}

/** Paints with the colourway of a letter; answers whether there is one. */
function paintWith(letter: string, state: WindowState): boolean {
  const { document, selection } = state
  const way = document.project.colourways?.find((entry) => entry.code?.toUpperCase() === letter.toUpperCase())
  const cells = selection.targets(document.plan)
  if (!way || cells.length === 0) return false
  state.view.brush = way.id
  paintAndTell(state, cells, way.id, () => heldWords(state))
  return true
}

/** Takes the paint off: on a blanket what is fixed is free again, elsewhere an item has no colourway. */
function freeBlanketOrPaint(state: WindowState, cells: readonly string[]): void {
  if (layoutKindOf(state.document.project) === 'blanket') freeColours(state, cells)
  else paintAndTell(state, cells, null)
}

/** Handles a key press on the map. Other keys with Ctrl or Command are the menu's. */
export function onMapKey(event: KeyboardEvent, state: WindowState, drawing: MapDrawing | null): void {
  if (!drawing) return
  const isPanel = layoutKindOf(state.document.project) === 'applique'
  if (isPanel && onPanelKey(event, state, drawing)) return done(event)
  if (event.ctrlKey || event.metaKey || event.altKey) return
  const { document, selection, view } = state
  const { plan } = document
  const direction = ARROWS[event.key]
  const along = layoutKindOf(document.project) === 'blanket' ? ALONG[event.key] : undefined
  const focus = selection.focus
  const hasRows = plan.arrangement !== null
  let isDone = true
  if (direction) step(event, state, drawing, direction)
  else if (along) go(event, state, drawing, stepInOrder(plan, focus, along))
  else if (event.key === ' ') {
    if (event.shiftKey && focus && hasRows) selectGroup(state, rowOf(plan, focus))
    else if (focus) selection.toggle([focus])
  } else if (event.key === 'Enter') {
    if (event.shiftKey && focus && hasRows) selectGroup(state, columnOf(plan, focus))
    else view.place = null
  } else if (event.key === 'Escape') {
    if (drawing.cancelGesture()) return done(event)
    if (document.isPreviewing) document.cancel()
    else selection.hold(null)
    view.flagged = new Set()
    view.painted = null
    view.drawnLine = null
  } else if (event.key === 'Delete' || event.key === 'Backspace') {
    const cells = selection.targets(plan)
    if (cells.length > 0) freeBlanketOrPaint(state, cells)
  } else if (event.key === '+' || event.key === '=') drawing.zoomBy(1.25)
  else if (event.key === '-') drawing.zoomBy(0.8)
  else if (event.key === '0') drawing.fit()
  else if (/^[a-z]$/i.test(event.key)) isDone = paintWith(event.key, state)
  else isDone = false
  if (isDone) done(event)
}

function done(event: KeyboardEvent): void {
  event.preventDefault()
  event.stopPropagation()
}
