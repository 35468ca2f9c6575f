/** The map's layer: from tiles while the scale stands still, directly while it changes and the plan is small. */
import type { Camera, Viewport } from './camera'
import { paintCost, paintMap } from './map-painter'
import type { Placing } from './pen'
import type { Difference, Picture } from './picture'
import { TILE, TileStore } from './tiles'
import type { Screen, Surface } from './tiles'

/** Paths that may be drawn anew in a frame without the hand noticing: about 3 ms of script. */
const DIRECT_COST = 1500
/** Milliseconds after which a scale counts as standing still. */
const STILL_AFTER = 110
/** Milliseconds of script in one frame that may go into tiles. */
const TILE_TIME = 4

export class MapLayer {
  readonly #store = new TileStore(makeSurface)
  readonly #again: () => void
  #picture: Picture | null = null
  #camera: Camera | null = null
  #viewport: Viewport = { width: 0, height: 0 }
  #whole = 1
  /** The picture changed altogether: half of the old and half of the new must not be seen side by side. */
  #replaced = true
  #zoomedAt = -Infinity
  #timer: ReturnType<typeof setTimeout> | undefined

  constructor(again: () => void) {
    this.#again = again
  }

  take(picture: Picture, difference: Difference): void {
    this.#picture = picture
    if (difference === 'everything') this.#replaced = true
    this.#store.update(picture, difference)
  }

  look(camera: Camera, viewport: Viewport, whole: number): void {
    if (this.#camera && camera.scale !== this.#camera.scale) this.#zoomedAt = performance.now()
    this.#camera = camera
    this.#viewport = viewport
    this.#whole = whole
  }

  /** Forgets what is painted (another resolution, another face). */
  forget(): void {
    this.#store.clear()
    this.#replaced = true
  }

  destroy(): void {
    clearTimeout(this.#timer)
    this.#store.clear()
  }

  draw = (context: CanvasRenderingContext2D): void => {
    const picture = this.#picture
    if (!picture || !this.#camera) return
    const ratio = context.canvas.width / Math.max(1, this.#viewport.width)
    const { scale, x, y } = this.#camera
    const placing: Placing = {
      scale: scale * ratio,
      x: Math.round(x * ratio),
      y: Math.round(y * ratio),
      ratio,
    }
    const window = { width: context.canvas.width, height: context.canvas.height }
    const zooming = performance.now() - this.#zoomedAt < STILL_AFTER
    if (zooming) {
      this.#later()
      if (this.#drawDirectly(context, picture, placing, window)) return
      if (!this.#replaced) {
        this.#store.showStretched(screenOn(context), window, placing)
        return
      }
    }
    const until = performance.now() + TILE_TIME
    const goOn = this.#replaced ? () => true : () => performance.now() < until
    const complete = this.#store.show(screenOn(context), window, placing, goOn)
    this.#replaced = false
    if (!complete) this.#again()
    else if (performance.now() < until && this.#store.prepareWhole(this.#whole * ratio, ratio)) this.#again()
  }

  /** Paints what is visible straight onto the screen, where that is cheap. */
  #drawDirectly(
    context: CanvasRenderingContext2D,
    picture: Picture,
    placing: Placing,
    window: { width: number; height: number },
  ): boolean {
    const box = {
      left: -placing.x / placing.scale,
      top: -placing.y / placing.scale,
      right: (window.width - placing.x) / placing.scale,
      bottom: (window.height - placing.y) / placing.scale,
    }
    const visible = picture.hit.meeting(box).length
    if (paintCost(picture, placing.scale / placing.ratio, visible) > DIRECT_COST) return false
    context.save()
    paintMap(context, picture, placing, box)
    context.restore()
    return true
  }

  #later(): void {
    clearTimeout(this.#timer)
    this.#timer = setTimeout(this.#again, STILL_AFTER + 10)
  }
}

function makeSurface(): Surface {
  const canvas = document.createElement('canvas')
  canvas.width = TILE
  canvas.height = TILE
  const pen = canvas.getContext('2d')
  if (!pen) throw new Error('the browser gave no 2d canvas for a tile')
  return { image: canvas, pen }
}

function screenOn(context: CanvasRenderingContext2D): Screen {
  context.setTransform(1, 0, 0, 1, 0, 0)
  return {
    copy: (image, left, top, width, height) => context.drawImage(image, left, top, width, height),
    clear: (left, top, width, height) => context.clearRect(left, top, width, height),
    within: (rectangles, draw) => {
      context.save()
      context.beginPath()
      for (const [left, top, width, height] of rectangles) context.rect(left, top, width, height)
      context.clip()
      draw()
      context.restore()
    },
  }
}
