/** The Konva stage of the drawing: three layers with one shape of its own in each, without Konva's hit tests. */
import Konva from 'konva'
import type { Viewport } from './camera'

type Draw = (pen: CanvasRenderingContext2D) => void
/** Map, marks, overlay. */
export type Layers = readonly [Konva.Layer, Konva.Layer, Konva.Layer]

/** Puts a stage into a container; each of the three layers draws what it is given. */
export function makeStage(
  container: HTMLElement,
  viewport: Viewport,
  draws: readonly [Draw, Draw, Draw],
): { stage: Konva.Stage; layers: Layers } {
  const holder = container.ownerDocument.createElement('div')
  holder.style.position = 'absolute'
  holder.style.inset = '0'
  container.append(holder)
  container.style.touchAction = 'none'
  const stage = new Konva.Stage({ container: holder, ...viewport, listening: false })
  const layerFor = (draw: Draw): Konva.Layer => {
    const layer = new Konva.Layer({ listening: false })
    const sceneFunc = (context: Konva.Context) => draw(context._context)
    layer.add(new Konva.Shape({ sceneFunc, listening: false, perfectDrawEnabled: false }))
    stage.add(layer)
    return layer
  }
  return { stage, layers: [layerFor(draws[0]), layerFor(draws[1]), layerFor(draws[2])] }
}

/** Calls back whenever the window comes to a screen of another resolution, or the page is zoomed. */
export function onResolution(signal: AbortSignal, heard: () => void): void {
  const query = matchMedia(`(resolution: ${devicePixelRatio}dppx)`)
  query.addEventListener(
    'change',
    () => {
      heard()
      onResolution(signal, heard)
    },
    { once: true, signal },
  )
}
