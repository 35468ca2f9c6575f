/** Where the drawing looks: at the whole, whose size it follows, or where the hand sent it; and its way there. */
import type { Point } from '../../shared-types/plan'
import * as cameras from './camera'
import type { Camera, Viewport } from './camera'
import type { Size } from './scene'

/** Milliseconds that the view takes to glide to where it was sent; none where motion is to be reduced. */
const GLIDE = 180
/** CSS pixels from the window's edge within which a revealed motif must not stay. */
const REVEAL_MARGIN = 90

export class Look {
  readonly #size: () => Size
  readonly #changed: () => void
  #viewport: Viewport
  #camera: Camera = { scale: 1, x: 0, y: 0 }
  /** The view still shows the whole: it follows when the size changes. */
  #fitted = true
  #glide: { readonly from: Camera; readonly to: Camera; readonly start: number } | null = null

  /** `size`: of what is looked at, in mm; `changed` is called whenever the view is another one, or is about to be. */
  constructor(viewport: Viewport, size: () => Size, changed: () => void) {
    this.#viewport = viewport
    this.#size = size
    this.#changed = changed
  }

  get camera(): Camera {
    return this.#camera
  }

  get viewport(): Viewport {
    return this.#viewport
  }

  get isFitted(): boolean {
    return this.#fitted
  }

  get isGliding(): boolean {
    return this.#glide !== null
  }

  /** The camera that shows the whole. */
  get fitting(): Camera {
    return cameras.fitCamera(this.#size(), this.#viewport)
  }

  /** Shows the whole, with its dimension lines. */
  fit(gliding: boolean): void {
    this.#fitted = true
    this.#lookAt(this.fitting, gliding)
  }

  /** Zooms about the middle of the window (keys, buttons). */
  zoomBy(factor: number): void {
    this.#zoom(this.#aim, factor, { x: this.#viewport.width / 2, y: this.#viewport.height / 2 }, true)
  }

  /** Zooms at once, with what is under `at` staying under it. */
  zoomAt(factor: number, at: Point): void {
    this.#zoom(this.#camera, factor, at, false)
  }

  /** Shows things in their real size, as far as the screen keeps to 96 pixels an inch. */
  realSize(): void {
    this.zoomBy(cameras.PIXELS_PER_MM / this.#aim.scale)
  }

  /** Moves the paper by CSS pixels. */
  panBy(dx: number, dy: number): void {
    this.#fitted = false
    this.#lookAt(this.#kept(cameras.panned(this.#camera, dx, dy)), false)
  }

  /** Brings a place of the plan into view, moving as little as possible. */
  reveal(place: Point): void {
    // Where all is in view nothing is revealed, and the view goes on following the size.
    if (cameras.showsWhole(this.#aim, this.#size(), this.#viewport)) return
    const camera = cameras.revealing(this.#aim, place, this.#viewport, REVEAL_MARGIN)
    if (cameras.sameCamera(camera, this.#aim)) return
    this.#fitted = false
    this.#lookAt(camera, true)
  }

  /** The window became another size; answers whether it is one. */
  resize(viewport: Viewport): boolean {
    const { width, height } = this.#viewport
    if (viewport.width === width && viewport.height === height) return false
    this.#viewport = viewport
    this.#lookAt(this.#fitted ? this.fitting : this.#kept(this.#camera), false)
    return true
  }

  /** Goes on with its way; answers whether it moved. */
  glideOn(now: number): boolean {
    if (!this.#glide) return false
    const { from, to, start } = this.#glide
    const share = Math.min(1, Math.max(0, (now - start) / GLIDE))
    this.#camera = cameras.between(from, to, 1 - (1 - share) ** 3)
    if (share === 1) this.#glide = null
    return true
  }

  /** Where the view is, or is on its way to. */
  get #aim(): Camera {
    return this.#glide?.to ?? this.#camera
  }

  #kept = (camera: Camera): Camera => cameras.keptInView(camera, this.#size(), this.#viewport)

  #zoom(from: Camera, factor: number, at: Point, gliding: boolean): void {
    this.#fitted = false
    const limits = cameras.scaleLimits(this.#size(), this.#viewport)
    this.#lookAt(this.#kept(cameras.zoomAt(from, factor, at, limits)), gliding)
  }

  #lookAt(camera: Camera, gliding: boolean): void {
    const still = matchMedia('(prefers-reduced-motion: reduce)').matches
    this.#glide =
      gliding && !still && !cameras.sameCamera(camera, this.#camera)
        ? { from: this.#camera, to: camera, start: performance.now() }
        : null
    if (!this.#glide) this.#camera = camera
    this.#changed()
  }
}
