/** Keys for what lies on a panel: they move it, rotate it, lay it higher or lower, copy it and take it away. */
import type { UnitSystem } from '../../shared-types/project'
import { MM_PER_INCH } from '../../src-core/units/quantity'
import type { MapDrawing } from '../drawing/map-drawing'
import { kindOf } from '../kinds/kinds'
import { toolFor } from '../state/tools'
import type { WindowState } from '../state/window.svelte'
import { copyItems, deleteItems, nudgeItems, rotateItems, stackItems, tellMotif } from './map-acts'

type Key = Pick<KeyboardEvent, 'key' | 'shiftKey' | 'altKey' | 'ctrlKey' | 'metaKey'>

/** mm that an arrow key moves things by: alone, with Shift, with Alt. */
const NUDGE: Readonly<Record<UnitSystem, { plain: number; far: number; fine: number }>> = {
  metric: { plain: 1, far: 10, fine: 0.1 },
  imperial: { plain: MM_PER_INCH / 16, far: MM_PER_INCH / 2, fine: MM_PER_INCH / 64 },
}
/** Degrees that an arrow key rotates things by. */
const ROTATE = { plain: 1, far: 15, fine: 0.1 } as const

const TOWARDS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
}

const reachOf = ({ shiftKey, altKey }: Key): 'plain' | 'far' | 'fine' =>
  shiftKey ? 'far' : altKey ? 'fine' : 'plain'

/** Handles a key for the items of a panel; answers whether it was one. */
export function onPanelKey(event: Key, state: WindowState, drawing: MapDrawing): boolean {
  const { document, selection, view } = state
  const ids = selection.targets(document.plan)
  if (event.ctrlKey || event.metaKey) {
    if (event.key.toLowerCase() !== 'd' || event.shiftKey || ids.length === 0) return false
    copyItems(state, ids)
    return true
  }
  const way = TOWARDS[event.key]
  const tool = toolFor(kindOf(document.project).tools, view.tool)
  if (way && ids.length > 0 && tool !== 'select') {
    const reach = reachOf(event)
    if (tool === 'turn') {
      // Right and down: clockwise.
      rotateItems(state, ids, (way[0] || way[1]) * ROTATE[reach])
    } else {
      const step = NUDGE[document.project.units ?? 'metric'][reach]
      nudgeItems(state, ids, way[0] * step, way[1] * step)
      if (selection.focus) drawing.revealMotif(selection.focus)
    }
    drawing.showGaps()
    tellMotif(state)
    return true
  }
  if (event.altKey) return false
  if (event.key === ',' || event.key === '.') {
    goTo(state, drawing, event.key === '.' ? 1 : -1)
    return true
  }
  if (ids.length === 0) return false
  if (event.key === 'Delete' || event.key === 'Backspace') {
    deleteItems(state, ids)
    return true
  }
  // Page keys too: on many keyboards brackets need a key more.
  const isUp = event.key === ']' || event.key === '}' || event.key === 'PageUp'
  const isDown = event.key === '[' || event.key === '{' || event.key === 'PageDown'
  if (!isUp && !isDown) return false
  stackItems(state, ids, isUp, event.shiftKey ? 'all' : 'one')
  return true
}

/** Takes the item before or after the one in the hand, by number, round and round. */
function goTo(state: WindowState, drawing: MapDrawing, by: number): void {
  const { document, selection } = state
  const { motifs } = document.plan
  if (motifs.length === 0) return
  const index = motifs.findIndex(({ id }) => id === selection.focus)
  const from = index < 0 && by < 0 ? 0 : index
  const next = motifs[(from + by + motifs.length) % motifs.length]!
  selection.hold(next.id)
  drawing.revealMotif(next.id)
  tellMotif(state)
}
