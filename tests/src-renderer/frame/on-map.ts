/** The map of an example, with the keys that it hears. */
import type { Project } from '../../../shared-types/project'
import type { MapDrawing } from '../../../src-renderer/drawing/map-drawing'
import { onMapKey } from '../../../src-renderer/frame/map-keys'
import MapTable from '../../../src-renderer/frame/MapTable.svelte'
import { inWindow } from '../in-window'
import { example } from '../projects'

export const CUSHION = 'quince-wreath-cushion'
export const GARLAND = 'orchard-gate-garland'

/** Stands in for the drawing, which needs a canvas. */
function fakeDrawing() {
  const heard: string[] = []
  const hand = { isBusy: false }
  const drawing = {
    cancelGesture: () => {
      const { isBusy } = hand
      hand.isBusy = false
      return isBusy
    },
    revealMotif: (id: string) => heard.push(`reveal ${id}`),
    showGaps: () => heard.push('gaps'),
    stepFrom: () => '1,2',
    zoomBy: () => heard.push('zoom'),
    fit: () => heard.push('fit'),
  }
  return { drawing: drawing as unknown as MapDrawing, heard, hand }
}

export async function onMap(name: string, change: (project: Project) => Project = (project) => project) {
  const { app } = await inWindow(MapTable, {}, change(example(name)))
  const { drawing, heard, hand } = fakeDrawing()
  const press = (key: string, more: KeyboardEventInit = {}) => {
    const event = new KeyboardEvent('keydown', { key, cancelable: true, ...more })
    onMapKey(event, app, drawing)
    return event.defaultPrevented
  }
  return { app, press, heard, hand }
}
