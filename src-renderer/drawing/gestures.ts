/**
 * What the hand does on the drawing, from pointer and wheel events to intentions. It knows no canvas: where
 * things are it asks of `Ground`, what is to happen it tells `Ground`.
 */
import type { Point } from '../../shared-types/plan'
import type { HandleKind } from './dimension-frame'
import { angle, boxBetween, isFree, shortest, stepped, straight } from './gesture-arithmetic'
import type { Phase, ScreenBox, SelectHow, Tool } from './scene'

export interface Ground {
  readonly tool: Tool
  motifAt(at: Point): string | null
  handleAt(at: Point): HandleKind | null
  /** Motifs under the stroke between two places on screen. */
  motifsAlong(from: Point, to: Point): string[]
  /** What a motif turns about, on screen: its centre, or the middle of all that turn with it. */
  pivotOf(id: string): Point | null
  motifsWithin(box: ScreenBox): string[]
  pan(dx: number, dy: number): void
  zoom(factor: number, at: Point): void
  select(ids: readonly string[], how: SelectHow): void
  focus(id: string | null): void
  paint(ids: readonly string[], phase: Phase): void
  resize(kind: HandleKind, dx: number, dy: number, phase: Phase): void
  turn(degrees: number, phase: Phase, pressed: string): void
  /** Chooses what a drag of a motif moves: all that is chosen where it is one of them, else it alone. */
  take(id: string, how: SelectHow): void
  /** Moves what was taken by CSS pixels since the start. */
  move(dx: number, dy: number, phase: Phase, pressed: string): void
  /** A line drawn by hand, in CSS pixels. */
  line(points: readonly Point[], phase: Phase): void
  band(box: ScreenBox | null): void
  hover(id: string | null, handle: HandleKind | null): void
  context(id: string | null, at: Point): void
  cursor(name: string): void
}

type Gesture =
  | { readonly kind: 'pan'; last: Point; moved: boolean; readonly pressed: string | null }
  | {
      readonly kind: 'press'
      readonly start: Point
      readonly id: string | null
      readonly how: SelectHow
      readonly touch: boolean
    }
  | { readonly kind: 'band'; readonly start: Point; readonly how: SelectHow }
  | { readonly kind: 'paint'; last: Point; readonly met: Set<string> }
  | { readonly kind: 'resize'; readonly handle: HandleKind; readonly start: Point }
  | { readonly kind: 'turn'; readonly centre: Point; last: number; turned: number; readonly pressed: string }
  | { readonly kind: 'move'; last: Point; dx: number; dy: number; readonly pressed: string }
  | { readonly kind: 'line'; readonly points: Point[] }
  | { readonly kind: 'pinch' }

/** CSS pixels that a press may wander before it is a drag. */
const SLOP = 4
/** Wheel units (pixels) that zoom by a factor e. */
const WHEEL_ZOOM = 320
/** Pixels that one line, and one page, of a wheel stand for. */
const WHEEL_LINE = 24
const WHEEL_PAGE = 400
/** With the alt key things move by this share of the way of the hand. */
const FINE = 0.1
/** CSS pixels from one place of a line drawn by hand to the next. */
const LINE_STEP = 3

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
    switch (gesture?.kind) {
      case 'paint':
        this.#ground.paint([], 'cancel')
        break
      case 'resize':
        this.#ground.resize(gesture.handle, 0, 0, 'cancel')
        break
      case 'turn':
        this.#ground.turn(0, 'cancel', gesture.pressed)
        break
      case 'move':
        this.#ground.move(0, 0, 'cancel', gesture.pressed)
        break
      case 'line':
        this.#ground.line([], 'cancel')
        break
      case 'band':
        this.#ground.band(null)
        break
    }
    this.#cursor(null)
  }

  #place(event: MouseEvent): Point {
    const box = this.#element.getBoundingClientRect()
    return { x: event.clientX - box.left, y: event.clientY - box.top }
  }

  #down(event: PointerEvent): void {
    const at = this.#place(event)
    this.#pointers.set(event.pointerId, at)
    if (this.#pointers.size === 2) {
      // A second finger: the first one's beginnings are given up, both together move the paper.
      this.cancel()
      this.#gesture = { kind: 'pinch' }
      return
    }
    if (this.#pointers.size > 2 || event.button === 2) return
    this.#element.setPointerCapture?.(event.pointerId)
    if (event.button === 1 || this.#space) {
      event.preventDefault()
      this.#gesture = { kind: 'pan', last: at, moved: true, pressed: null }
      this.#cursor(at)
      return
    }
    if (event.button === 0) this.#begin(event, at)
  }

  #begin(event: PointerEvent, at: Point): void {
    const handle = this.#ground.handleAt(at)
    if (handle) {
      this.#gesture = { kind: 'resize', handle, start: at }
      this.#ground.resize(handle, 0, 0, 'start')
      return
    }
    const id = this.#ground.motifAt(at)
    if (this.#ground.tool === 'paint') {
      const met = new Set(id ? [id] : [])
      this.#gesture = { kind: 'paint', last: at, met }
      this.#ground.paint([...met], 'start')
      if (id) this.#ground.focus(id)
      return
    }
    if (this.#ground.tool === 'line') {
      this.#gesture = { kind: 'line', points: [at] }
      this.#ground.line([at], 'start')
      return
    }
    const centre = id && this.#ground.tool === 'turn' ? this.#ground.pivotOf(id) : null
    if (id && centre) {
      this.#gesture = { kind: 'turn', centre, last: angle(centre, at), turned: 0, pressed: id }
      this.#ground.focus(id)
      this.#ground.turn(0, 'start', id)
      return
    }
    const how = event.shiftKey ? 'add' : event.ctrlKey || event.metaKey ? 'toggle' : 'replace'
    this.#gesture = { kind: 'press', start: at, id, how, touch: event.pointerType === 'touch' }
  }

  #move(event: PointerEvent): void {
    const at = this.#place(event)
    const before = this.#pointers.get(event.pointerId)
    if (before) this.#pointers.set(event.pointerId, at)
    const gesture = this.#gesture
    if (!gesture) {
      if (event.pointerType !== 'touch') this.#cursor(at)
      return
    }
    switch (gesture.kind) {
      case 'pan':
        this.#ground.pan(at.x - gesture.last.x, at.y - gesture.last.y)
        gesture.last = at
        return
      case 'press':
        if (Math.hypot(at.x - gesture.start.x, at.y - gesture.start.y) < SLOP) return
        if (gesture.id && this.#ground.tool === 'move') {
          this.#startMove(gesture.id, gesture.how, gesture.start, event, at)
          return
        }
        // A finger moves the paper; a mouse or pen draws a band.
        this.#gesture = gesture.touch
          ? { kind: 'pan', last: at, moved: true, pressed: gesture.id }
          : { kind: 'band', start: gesture.start, how: gesture.how }
        if (!gesture.touch) this.#ground.band(boxBetween(gesture.start, at))
        return
      case 'band':
        this.#ground.band(boxBetween(gesture.start, at))
        return
      case 'paint':
        this.#stroke(gesture, event, at)
        return
      case 'resize':
        this.#ground.resize(gesture.handle, at.x - gesture.start.x, at.y - gesture.start.y, 'move')
        return
      case 'turn': {
        const now = angle(gesture.centre, at)
        gesture.turned += shortest(now - gesture.last)
        gesture.last = now
        this.#ground.turn(stepped(gesture.turned, event), 'move', gesture.pressed)
        return
      }
      case 'move':
        this.#drag(gesture, event, at)
        return
      case 'line': {
        const last = gesture.points.at(-1)!
        if (Math.hypot(at.x - last.x, at.y - last.y) < LINE_STEP) return
        gesture.points.push(at)
        this.#ground.line([...gesture.points], 'move')
        return
      }
      case 'pinch':
        if (before) this.#pinch(event.pointerId, before, at)
    }
  }

  #startMove(id: string, how: SelectHow, start: Point, event: PointerEvent, at: Point): void {
    const gesture = { kind: 'move', last: start, dx: 0, dy: 0, pressed: id } as const
    this.#gesture = gesture
    this.#ground.take(id, how)
    this.#ground.focus(id)
    this.#ground.move(0, 0, 'start', id)
    this.#drag({ ...gesture }, event, at)
  }

  /** Alt makes the hand finer from where it is pressed; Shift keeps to straight across or straight down. */
  #drag(gesture: Extract<Gesture, { kind: 'move' }>, event: PointerEvent, at: Point): void {
    const share = event.altKey ? FINE : 1
    const next: Gesture = {
      ...gesture,
      last: at,
      dx: gesture.dx + (at.x - gesture.last.x) * share,
      dy: gesture.dy + (at.y - gesture.last.y) * share,
    }
    this.#gesture = next
    const { dx, dy } = straight(next, event.shiftKey)
    this.#ground.move(dx, dy, 'move', gesture.pressed)
  }

  /** Every place the pointer was at since the last event, joined by straight strokes: none is missed. */
  #stroke(gesture: Extract<Gesture, { kind: 'paint' }>, event: PointerEvent, at: Point): void {
    const between = event.getCoalescedEvents?.() ?? []
    const places = [...between.map((one) => this.#place(one)), at]
    const fresh: string[] = []
    for (const place of places) {
      for (const id of this.#ground.motifsAlong(gesture.last, place)) {
        if (gesture.met.has(id)) continue
        gesture.met.add(id)
        fresh.push(id)
      }
      gesture.last = place
    }
    if (fresh.length > 0) this.#ground.paint(fresh, 'move')
  }

  #pinch(moved: number, before: Point, at: Point): void {
    const other = [...this.#pointers].find(([id]) => id !== moved)?.[1]
    if (!other) return
    const old = Math.hypot(before.x - other.x, before.y - other.y)
    const now = Math.hypot(at.x - other.x, at.y - other.y)
    this.#ground.pan((at.x - before.x) / 2, (at.y - before.y) / 2)
    if (old > 0 && now > 0) this.#ground.zoom(now / old, { x: (at.x + other.x) / 2, y: (at.y + other.y) / 2 })
  }

  #up(event: PointerEvent): void {
    const at = this.#place(event)
    this.#pointers.delete(event.pointerId)
    const gesture = this.#gesture
    if (!gesture) return
    if (gesture.kind === 'pinch') {
      if (this.#pointers.size === 0) this.#gesture = null
      return
    }
    this.#gesture = null
    switch (gesture.kind) {
      case 'press':
        this.#press(gesture)
        break
      case 'band': {
        this.#ground.band(null)
        this.#ground.select(this.#ground.motifsWithin(boxBetween(gesture.start, at)), gesture.how)
        break
      }
      case 'paint':
        this.#ground.paint([], 'end')
        break
      case 'resize':
        this.#ground.resize(gesture.handle, at.x - gesture.start.x, at.y - gesture.start.y, 'end')
        break
      case 'turn':
        this.#ground.turn(stepped(gesture.turned, event), 'end', gesture.pressed)
        break
      case 'move': {
        const { dx, dy } = straight(gesture, event.shiftKey)
        this.#ground.move(dx, dy, 'end', gesture.pressed)
        break
      }
      case 'line':
        this.#ground.line([...gesture.points], 'end')
        break
    }
    this.#cursor(event.pointerType === 'touch' ? null : at)
  }

  #press({ id, how }: Extract<Gesture, { kind: 'press' }>): void {
    if (id) {
      this.#ground.select([id], how)
      this.#ground.focus(id)
    } else if (how === 'replace') {
      this.#ground.select([], 'replace')
      this.#ground.focus(null)
    }
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
    if (this.#gesture?.kind !== 'pan') this.#ground.cursor(down ? 'grab' : '')
  }

  #cursor(at: Point | null): void {
    const handle = at ? this.#ground.handleAt(at) : null
    const id = at && !handle ? this.#ground.motifAt(at) : null
    this.#ground.hover(id, handle)
    if (this.#gesture?.kind === 'pan') this.#ground.cursor('grabbing')
    else if (this.#space) this.#ground.cursor('grab')
    else if (handle) this.#ground.cursor(CURSORS[handle])
    else if (this.#ground.tool === 'paint' || this.#ground.tool === 'line') this.#ground.cursor('crosshair')
    else if (this.#ground.tool === 'move') this.#ground.cursor(id ? 'move' : '')
    else this.#ground.cursor(id ? 'pointer' : '')
  }
}
