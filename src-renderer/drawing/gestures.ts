/**
 * What the hand does on the drawing, from pointer and wheel events to intentions. It knows no canvas, and runs one
 * gesture at a time: each is a record in `hand-gestures.ts`. Escape, a lost pointer and a second finger give it up.
 */
import type { Point } from '../../shared-types/plan'
import type { HandleKind } from './dimension-frame'
import { isFree } from './gesture-arithmetic'
import { beginGesture, pan, pinch } from './hand-gestures'
import type { Gesture, Ground, Step } from './hand-gestures'

export type { Ground }

/** Wheel units (pixels) that zoom by a factor e. */
const WHEEL_ZOOM = 320
/** Pixels that one line, and one page, of a wheel stand for. */
const WHEEL_LINE = 24
const WHEEL_PAGE = 400
/** The cursor that says what a press would do; `grabbing` while a pan is under way. */
const CURSORS: Record<HandleKind, string> = { width: 'ew-resize', height: 'ns-resize', both: 'nwse-resize' }

export class Gestures {
  readonly #ground: Ground
  readonly #element: HTMLElement
  readonly #pointers = new Map<number, Point>()
  readonly #stop = new AbortController()
  #gesture: Gesture | null = null
  #space = false
  #over = false

  constructor(element: HTMLElement, ground: Ground) {
    this.#element = element
    this.#ground = ground
    const signal = this.#stop.signal
    const listen = <K extends keyof HTMLElementEventMap>(
      name: K,
      heard: (event: HTMLElementEventMap[K]) => void,
    ) => element.addEventListener(name, heard, { signal, passive: false })
    listen('pointerdown', (event) => this.#down(event))
    listen('pointermove', (event) => this.#move(event))
    listen('pointerup', (event) => this.#up(event))
    listen('pointercancel', (event) => this.#lost(event))
    listen('pointerenter', () => (this.#over = true))
    listen('pointerleave', () => {
      this.#over = false
      if (!this.#gesture) this.#ground.hover(null, null)
    })
    listen('wheel', (event) => this.#wheel(event))
    listen('contextmenu', (event) => this.#context(event))
    const page = element.ownerDocument
    page.addEventListener('keydown', (event) => this.#key(event, true), { signal })
    page.addEventListener('keyup', (event) => this.#key(event, false), { signal })
  }

  /** Whether a drag is under way. */
  get busy(): boolean {
    return this.#gesture !== null
  }

  destroy(): void {
    this.cancel()
    this.#stop.abort()
  }

  /** Gives up the gesture that is under way; what it tried out is undone by whoever hears of it. */
  cancel(): void {
    const gesture = this.#gesture
    this.#gesture = null
    gesture?.cancel()
    this.#cursor(null)
  }

  #place(event: MouseEvent): Point {
    const box = this.#element.getBoundingClientRect()
    return { x: event.clientX - box.left, y: event.clientY - box.top }
  }

  #step(event: PointerEvent): Step {
    const { pointerId, shiftKey, altKey, ctrlKey, metaKey } = event
    return {
      at: this.#place(event),
      before: this.#pointers.get(pointerId),
      between: () => (event.getCoalescedEvents?.() ?? []).map((one) => this.#place(one)),
      other: [...this.#pointers].find(([id]) => id !== pointerId)?.[1],
      isTouch: event.pointerType === 'touch',
      ...{ shiftKey, altKey, ctrlKey, metaKey },
    }
  }

  #down(event: PointerEvent): void {
    const step = this.#step(event)
    this.#pointers.set(event.pointerId, step.at)
    if (this.#pointers.size === 2) {
      // A second finger: the first one's beginnings are given up, both together move the paper.
      this.cancel()
      this.#gesture = pinch(this.#ground)
      return
    }
    if (this.#pointers.size > 2 || event.button === 2) return
    this.#element.setPointerCapture?.(event.pointerId)
    if (event.button === 1 || this.#space) {
      event.preventDefault()
      this.#gesture = pan(this.#ground, step.at)
      this.#cursor(step.at)
    } else if (event.button === 0) this.#gesture = beginGesture(this.#ground, step)
  }

  #move(event: PointerEvent): void {
    const step = this.#step(event)
    if (step.before) this.#pointers.set(event.pointerId, step.at)
    if (this.#gesture) this.#gesture = this.#gesture.move(step) ?? this.#gesture
    else if (!step.isTouch) this.#cursor(step.at)
  }

  #up(event: PointerEvent): void {
    const step = this.#step(event)
    this.#pointers.delete(event.pointerId)
    const gesture = this.#gesture
    if (!gesture || (gesture.isOfFingers && this.#pointers.size > 0)) return
    this.#gesture = null
    gesture.commit(step)
    if (!gesture.isOfFingers) this.#cursor(step.isTouch ? null : step.at)
  }

  #lost(event: PointerEvent): void {
    this.#pointers.delete(event.pointerId)
    this.cancel()
  }

  #wheel(event: WheelEvent): void {
    event.preventDefault()
    const unit = event.deltaMode === 1 ? WHEEL_LINE : event.deltaMode === 2 ? WHEEL_PAGE : 1
    // A pinch on a trackpad comes as a wheel with the control key; its steps are small.
    if (event.ctrlKey || event.metaKey || event.altKey) {
      const pinch = event.ctrlKey && event.deltaMode === 0 && Math.abs(event.deltaY) < 20 ? 3 : 1
      const step = Math.max(-160, Math.min(160, event.deltaY * unit * pinch))
      this.#ground.zoom(Math.exp(-step / WHEEL_ZOOM), this.#place(event))
      return
    }
    const sideways = event.shiftKey && event.deltaX === 0
    const dx = sideways ? event.deltaY : event.deltaX
    const dy = sideways ? 0 : event.deltaY
    this.#ground.pan(-dx * unit, -dy * unit)
  }

  #context(event: MouseEvent): void {
    event.preventDefault()
    if (this.#gesture) return
    const at = this.#place(event)
    this.#ground.context(this.#ground.motifAt(at), at)
  }

  #key(event: KeyboardEvent, down: boolean): void {
    if (event.key === 'Escape' && down && this.#gesture) {
      event.preventDefault()
      this.cancel()
    }
    if (event.code !== 'Space') return
    // The space bar moves the paper while the pointer is over it, unless it is meant for something else.
    if (down && (!this.#over || !isFree(event.target, this.#element))) return
    if (down) event.preventDefault()
    this.#space = down
    if (!this.#gesture?.cursor) this.#ground.cursor(down ? 'grab' : '')
  }

  #cursor(at: Point | null): void {
    const handle = at ? this.#ground.handleAt(at) : null
    const id = at && !handle ? this.#ground.motifAt(at) : null
    this.#ground.hover(id, handle)
    if (this.#gesture?.cursor) this.#ground.cursor(this.#gesture.cursor)
    else if (this.#space) this.#ground.cursor('grab')
    else if (handle) this.#ground.cursor(CURSORS[handle])
    else if (this.#ground.tool === 'paint' || this.#ground.tool === 'line') this.#ground.cursor('crosshair')
    else if (this.#ground.tool === 'move') this.#ground.cursor(id ? 'move' : '')
    else this.#ground.cursor(id ? 'pointer' : '')
  }
}
