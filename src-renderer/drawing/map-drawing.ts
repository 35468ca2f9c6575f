/**
 * The drawing of a plan: three layers on a Konva stage (the map, the marks on it, the overlay), each with one
 * shape of its own. Everything is drawn at most once a frame; Konva's own hit tests are off, the engine knows
 * better what lies where.
 */
import type Konva from 'konva'
import type { Point } from '../../shared-types/plan'
import { ownJoins } from '../../src-core/figures/join-marks'
import { memoised } from '../../src-core/memo'
import { pieceAt } from '../../src-core/layout/placed'
import { drawnAs } from '../kinds/drawn'
import * as cameras from './camera'
import { mapSize } from '../../src-core/layout/placed'
import { dimensionFrame, handleAt, resized } from './dimension-frame'
import type { DimensionFrame, HandleKind } from './dimension-frame'
import { Gestures } from './gestures'
import type { Ground } from './gestures'
import { FaultFinder } from './faults'
import type { Faults } from './faults'
import { Handling } from './handling'
import { measuredOf } from './measured'
import { Look } from './look'
import { MapLayer } from './map-layer'
import { paintMarks } from './marks-painter'
import { paintOverlay } from './overlay-painter'
import { readPalette } from './palette'
import type { Palette } from './palette'
import { differenceOf, PictureMaker } from './picture'
import type { Picture } from './picture'
import type { Direction, DrawingCallbacks, DrawingView, Phase, Scene, ScreenBox, Size } from './scene'
import { makeStage, onResolution } from './stage'
import type { Layers } from './stage'
import { stepFrom } from './steps'

/** CSS pixels by which a press may miss a motif. */
const SLACK = 3
const NONE: ReadonlySet<string> = new Set()

/** What has to be drawn, or told, in the next frame. */
type Part = 'map' | 'marks' | 'overlay' | 'view'
const LAYERS: readonly Part[] = ['map', 'marks', 'overlay']
const ALL: readonly Part[] = [...LAYERS, 'view']

/** What of a scene the marks show, and what the overlay does. */
const MARKED = ['selection', 'focus', 'flagged', 'changed', 'fixed', 'made', 'joined', 'theme'] as const
const OVERLAID = ['previous', 'line', 'theme'] as const

export class MapDrawing {
  readonly #container: HTMLElement
  readonly #callbacks: DrawingCallbacks
  readonly #stage: Konva.Stage
  readonly #layers: Layers
  readonly #look: Look
  readonly #map: MapLayer
  readonly #maker = new PictureMaker()
  readonly #gestures: Gestures
  readonly #watch: ResizeObserver
  readonly #stop = new AbortController()
  #scene: Scene | null = null
  #picture: Picture | null = null
  readonly #finder = new FaultFinder()
  #faults: Faults | null = null
  readonly #handling: Handling
  #palette: Palette | null = null
  readonly #ownJoins = memoised(ownJoins)
  #hover: string | null = null
  #hot: HandleKind | null = null
  #band: ScreenBox | null = null
  #resizing: { readonly start: Size; wished: Size } | null = null
  #frame = 0
  #dirty = new Set<Part>(ALL)

  constructor(container: HTMLElement, callbacks: DrawingCallbacks) {
    this.#container = container
    this.#callbacks = callbacks
    this.#look = new Look(sizeOf(container), this.#size, () => this.#redraw(...ALL))
    this.#map = new MapLayer(() => this.#redraw('map'))
    const { stage, layers } = makeStage(container, this.#look.viewport, [
      this.#map.draw,
      this.#drawMarks,
      this.#drawOverlay,
    ])
    this.#stage = stage
    this.#layers = layers
    this.#handling = new Handling(
      {
        scene: () => this.#scene,
        picture: () => this.#picture,
        camera: () => this.#look.camera,
        redraw: () => this.#redraw('overlay'),
      },
      callbacks,
    )
    this.#gestures = new Gestures(container, this.#ground())
    this.#watch = new ResizeObserver(() => this.#measure())
    this.#watch.observe(container)
    onResolution(this.#stop.signal, () => {
      for (const layer of this.#layers) layer.getCanvas().setPixelRatio(devicePixelRatio)
      this.#refreshAll()
    })
    // Labels may have been drawn before the program's own face was there.
    void container.ownerDocument.fonts?.ready.then(() => this.#refreshAll())
  }

  /** Shows a scene; what did not change since the last one is not drawn again. */
  show(scene: Scene): void {
    const before = this.#scene
    this.#scene = scene
    if (!this.#palette || before?.theme !== scene.theme) this.#palette = readPalette(this.#container)
    const picture = this.#maker.make(scene, this.#palette)
    const difference = differenceOf(this.#picture, picture)
    const grown =
      before?.plan.size.width !== scene.plan.size.width || before.plan.size.height !== scene.plan.size.height
    const faults = this.#finder.find(scene.project, scene.plan)
    const marked = this.#faults !== faults
    this.#picture = picture
    this.#faults = faults
    this.#map.take(picture, difference)
    if (grown && this.#look.isFitted && !this.#resizing) this.#look.fit(before !== null && !scene.previous)
    const another = difference !== 'nothing'
    if (another) this.#redraw('map')
    if (another || marked || MARKED.some((what) => before?.[what] !== scene[what])) this.#redraw('marks')
    if (
      grown ||
      this.#handling.busy ||
      before?.plan.garland !== scene.plan.garland ||
      OVERLAID.some((what) => before?.[what] !== scene[what])
    )
      this.#redraw('overlay')
    if (grown) this.#redraw('view')
  }

  /** Shows the whole plan, with its dimension lines. */
  fit(): void {
    this.#look.fit(true)
  }

  /** Zooms about the middle of the window (keys, buttons). */
  zoomBy(factor: number): void {
    this.#look.zoomBy(factor)
  }

  /** Shows the plan in its real size, as far as the screen keeps to 96 pixels an inch. */
  realSize(): void {
    this.#look.realSize()
  }

  /** Moves the paper by CSS pixels. */
  panBy(dx: number, dy: number): void {
    this.#look.panBy(dx, dy)
  }

  /** Brings a placed motif into view, moving as little as possible. */
  revealMotif(id: string): void {
    const motif = this.#scene && pieceAt(this.#scene.plan, id)
    if (motif) this.#look.reveal(motif)
  }

  /** The motif that an arrow key leads to from another one. */
  stepFrom(id: string | null, direction: Direction): string | null {
    return this.#scene ? stepFrom(this.#scene.plan, id, direction) : null
  }

  /** Where a placed motif stands, in CSS pixels in the container; for menus and notes beside it. */
  placeOf(id: string): Point | null {
    const motif = this.#scene && pieceAt(this.#scene.plan, id)
    return motif ? cameras.toScreen(this.#look.camera, motif) : null
  }

  /** Shows for a moment how far the chosen things of a panel keep from others: a key moved them. */
  showGaps(): void {
    this.#handling.linger()
  }

  /** Gives up a drag that is under way; answers whether there was one. */
  cancelGesture(): boolean {
    const { busy } = this.#gestures
    this.#gestures.cancel()
    return busy
  }

  destroy(): void {
    this.#stop.abort()
    this.#gestures.destroy()
    this.#handling.destroy()
    this.#watch.disconnect()
    cancelAnimationFrame(this.#frame)
    this.#map.destroy()
    const holder = this.#stage.container()
    this.#stage.destroy()
    holder.remove()
    this.#container.style.cursor = ''
  }

  // ——— view

  #size = (): Size => (this.#scene ? mapSize(this.#scene.plan) : { width: 0, height: 0 })

  #measure(): void {
    const size = sizeOf(this.#container)
    if (this.#look.resize(size)) this.#stage.size(size)
  }

  #refreshAll(): void {
    if (this.#stop.signal.aborted) return
    this.#map.forget()
    this.#redraw(...LAYERS)
  }

  // ——— drawing

  #redraw(...parts: readonly Part[]): void {
    for (const part of parts) this.#dirty.add(part)
    if (this.#frame === 0) this.#frame = requestAnimationFrame(this.#tick)
  }

  #tick = (now: number): void => {
    this.#frame = 0
    if (this.#look.glideOn(now)) this.#dirty = new Set(ALL)
    const dirty = this.#dirty
    this.#dirty = new Set()
    if (dirty.has('map')) this.#map.look(this.#look.camera, this.#look.viewport, this.#look.fitting.scale)
    LAYERS.forEach((part, i) => dirty.has(part) && this.#layers[i]!.draw())
    if (this.#look.isGliding) this.#redraw('map')
    if (dirty.has('view') && this.#scene) this.#callbacks.onView(this.#view())
  }

  #drawMarks = (pen: CanvasRenderingContext2D): void => {
    if (!this.#picture || !this.#scene) return
    const {
      selection,
      focus,
      flagged,
      changed = NONE,
      fixed = NONE,
      made = NONE,
      joined = NONE,
    } = this.#scene
    const marks = {
      ...{ selection, flagged, changed, fixed, made, joined },
      // While something is dragged its contour says enough.
      focus: this.#handling.isDragging ? null : focus,
      // Panning draws again and again: they are looked for once for each motif that is selected.
      own: focus && !this.#handling.isDragging ? this.#ownJoins(this.#picture.plan, focus) : [],
      hover: this.#hover,
      warned: this.#faults?.warned ?? NONE,
      faults: this.#faults?.parts ?? [],
    }
    paintMarks(pen, this.#picture, this.#look.camera, this.#look.viewport, marks, devicePixelRatio)
  }

  #drawOverlay = (pen: CanvasRenderingContext2D): void => {
    if (!this.#palette) return
    const before = this.#scene?.previous?.size
    const now = this.#size()
    const changed = before && (before.width !== now.width || before.height !== now.height)
    paintOverlay(
      pen,
      {
        dimensions: this.#dimensions(),
        previous: changed ? this.#boxOf(before) : null,
        wished: this.#resizing ? this.#boxOf(this.#resizing.wished) : null,
        band: this.#band,
        hot: this.#hot,
        line:
          (this.#handling.line ?? this.#scene?.line)?.map((at) => cameras.toScreen(this.#look.camera, at)) ??
          null,
        gaps: this.#handling.gaps(),
        pivot: this.#handling.pivot(),
      },
      this.#look.viewport,
      this.#palette,
    )
  }

  #boxOf = (size: Size): ScreenBox => cameras.boxOnScreen(this.#look.camera, size)

  #dimensions(): DimensionFrame | null {
    const plan = this.#scene?.plan
    return plan
      ? dimensionFrame(this.#look.camera, mapSize(plan), this.#look.viewport, measuredOf(plan))
      : null
  }

  #view(): DrawingView {
    const dimensions = this.#dimensions()
    return {
      scale: this.#look.camera.scale,
      zoom: this.#look.camera.scale / this.#look.fitting.scale,
      frame: this.#boxOf(this.#size()),
      widthNumber: dimensions?.widthNumber ?? null,
      heightNumber: dimensions?.heightNumber ?? null,
      levelHeight: dimensions?.levelHeight ?? false,
    }
  }

  // ——— gestures

  #ground(): Ground {
    const plan = (at: Point) => cameras.toPlan(this.#look.camera, at)
    const tool = () => this.#scene?.tool ?? 'select'
    return {
      get tool() {
        return tool()
      },
      motifAt: (at) => this.#picture?.pieces.at(plan(at), SLACK / this.#look.camera.scale) ?? null,
      handleAt: (at) => {
        const dimensions = this.#dimensions()
        return dimensions && handleAt(dimensions, at)
      },
      motifsAlong: (from, to) => this.#picture?.pieces.along(plan(from), plan(to)) ?? [],
      pivotOf: (id) => {
        if (!this.#scene || !drawnAs(this.#scene.plan).turnsEach) return this.placeOf(id)
        const pivot = this.#handling.pivotOf(id)
        return pivot && cameras.toScreen(this.#look.camera, pivot)
      },
      motifsWithin: ({ left, top, width, height }) => {
        const from = plan({ x: left, y: top })
        const to = plan({ x: left + width, y: top + height })
        return this.#picture?.pieces.within({ left: from.x, top: from.y, right: to.x, bottom: to.y }) ?? []
      },
      pan: (dx, dy) => this.panBy(dx, dy),
      zoom: (factor, at) => this.#look.zoomAt(factor, at),
      select: (ids, how) => this.#callbacks.onSelect(ids, how),
      focus: (id) => this.#callbacks.onFocus(id),
      paint: (ids, phase) => this.#callbacks.onPaint(ids, phase),
      mark: (ids, phase) => this.#callbacks.onMark?.(ids, phase),
      turn: (degrees, phase, pressed) => this.#handling.turn(degrees, phase, pressed),
      take: (id, how) => this.#handling.take(id, how),
      move: (dx, dy, phase, pressed) => this.#handling.move(dx, dy, phase, pressed),
      line: (points, phase) => this.#handling.drawLine(points, phase),
      resize: (kind, dx, dy, phase) => this.#resize(kind, dx, dy, phase),
      band: (box) => {
        this.#band = box
        this.#redraw('overlay')
      },
      hover: (id, handle) => this.#pointAt(id, handle),
      context: (id, at) => this.#callbacks.onContext?.(id, at),
      cursor: (name) => {
        if (this.#container.style.cursor !== name) this.#container.style.cursor = name
      },
    }
  }

  #resize(kind: HandleKind, dx: number, dy: number, phase: Phase): void {
    if (phase === 'start') this.#resizing = { start: { ...this.#size() }, wished: this.#size() }
    if (!this.#resizing) return
    const wished = resized(this.#resizing.start, kind, dx, dy, this.#look.camera.scale)
    this.#resizing.wished = wished
    this.#hot = phase === 'start' || phase === 'move' ? kind : null
    if (phase === 'end' || phase === 'cancel') this.#resizing = null
    this.#callbacks.onResize({ width: wished.width, height: wished.height }, phase)
    if (!this.#resizing && this.#look.isFitted) this.#look.fit(true)
    this.#redraw('overlay')
  }

  #pointAt(id: string | null, handle: HandleKind | null): void {
    if (handle !== this.#hot && !this.#resizing) {
      this.#hot = handle
      this.#redraw('overlay')
    }
    if (id === this.#hover) return
    this.#hover = id
    this.#redraw('marks')
    this.#callbacks.onHover?.(id)
  }
}

const sizeOf = ({ clientWidth, clientHeight }: HTMLElement): Size => ({
  width: clientWidth,
  height: clientHeight,
})
