/**
 * The gestures of a hand on the drawing, one record each: how it begins, follows the hand, is kept and is given up.
 * Where things are they ask of `Ground`, what is to happen they tell `Ground`; `Gestures` runs them.
 */
import type { Point } from '../../shared-types/plan'
import type { HandleKind } from './dimension-frame'
import { angle, boxBetween, shortest, stepped, straight } from './gesture-arithmetic'
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
  /** Marks as made what the hand meets. */
  mark(ids: readonly string[], phase: Phase): void
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

/** Where a pointer is, and what is held down with it. */
export interface Step {
  readonly at: Point
  /** Where it was before; and every place between, where the browser tells them. */
  readonly before: Point | undefined
  between(): readonly Point[]
  /** Where another finger is. */
  readonly other: Point | undefined
  readonly isTouch: boolean
  readonly shiftKey: boolean
  readonly altKey: boolean
  readonly ctrlKey: boolean
  readonly metaKey: boolean
}

export interface Gesture {
  /** Follows the hand; answers what it goes on as, where it becomes another gesture. */
  move(step: Step): Gesture | void
  commit(step: Step): void
  /** What it tried out is undone by whoever hears of it. */
  cancel(): void
  /** The cursor while it is under way, where that is not told by what is under it. */
  readonly cursor?: string
  /** It lasts until the last finger is lifted. */
  readonly isOfFingers?: true
}

/** Begins a gesture where one of its kind begins at this place with this tool; else null. */
type Begin = (ground: Ground, step: Step) => Gesture | null

/** CSS pixels that a press may wander before it is a drag. */
const SLOP = 4
/** With the alt key things move by this share of the way of the hand. */
const FINE = 0.1
/** CSS pixels from one place of a line drawn by hand to the next. */
const LINE_STEP = 3

const distance = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y)
const nothing = (): void => undefined

/** Moves the paper. */
export function pan(ground: Ground, from: Point): Gesture {
  let last = from
  return {
    cursor: 'grabbing',
    move({ at }) {
      ground.pan(at.x - last.x, at.y - last.y)
      last = at
    },
    commit: nothing,
    cancel: nothing,
  }
}

/** Two fingers move and zoom the paper. */
export const pinch = (ground: Ground): Gesture => ({
  isOfFingers: true,
  move({ at, before, other }) {
    if (!before || !other) return
    const [old, now] = [distance(before, other), distance(at, other)]
    ground.pan((at.x - before.x) / 2, (at.y - before.y) / 2)
    if (old > 0 && now > 0) ground.zoom(now / old, { x: (at.x + other.x) / 2, y: (at.y + other.y) / 2 })
  },
  commit: nothing,
  cancel: nothing,
})

/** A handle of the frame is dragged to another size. */
const resize: Begin = (ground, { at: start }) => {
  const handle = ground.handleAt(start)
  if (!handle) return null
  ground.resize(handle, 0, 0, 'start')
  return {
    move: ({ at }) => ground.resize(handle, at.x - start.x, at.y - start.y, 'move'),
    commit: ({ at }) => ground.resize(handle, at.x - start.x, at.y - start.y, 'end'),
    cancel: () => ground.resize(handle, 0, 0, 'cancel'),
  }
}

/** A brush paints, or marks, what it meets, each motif once in a stroke. */
const paint: Begin = (ground, { at }) => {
  if (ground.tool !== 'paint' && ground.tool !== 'mark') return null
  const stroke = ground[ground.tool].bind(ground)
  const id = ground.motifAt(at)
  const met = new Set(id ? [id] : [])
  let last = at
  stroke([...met], 'start')
  if (id) ground.focus(id)
  return {
    /** Every place the pointer was at since the last event, joined by straight strokes: none is missed. */
    move({ at, between }) {
      const fresh: string[] = []
      for (const place of [...between(), at]) {
        for (const motif of ground.motifsAlong(last, place)) {
          if (met.has(motif)) continue
          met.add(motif)
          fresh.push(motif)
        }
        last = place
      }
      if (fresh.length > 0) stroke(fresh, 'move')
    },
    commit: () => stroke([], 'end'),
    cancel: () => stroke([], 'cancel'),
  }
}

/** A line is drawn by hand. */
const line: Begin = (ground, { at }) => {
  if (ground.tool !== 'line') return null
  const points = [at]
  ground.line([at], 'start')
  return {
    move({ at }) {
      if (distance(at, points.at(-1)!) < LINE_STEP) return
      points.push(at)
      ground.line([...points], 'move')
    },
    commit: () => ground.line([...points], 'end'),
    cancel: () => ground.line([], 'cancel'),
  }
}

/** What is pressed turns about its middle. */
const turn: Begin = (ground, { at }) => {
  const id = ground.motifAt(at)
  const centre = id && ground.tool === 'turn' ? ground.pivotOf(id) : null
  if (!id || !centre) return null
  let last = angle(centre, at)
  let turned = 0
  ground.focus(id)
  ground.turn(0, 'start', id)
  return {
    move(step) {
      const now = angle(centre, step.at)
      turned += shortest(now - last)
      last = now
      ground.turn(stepped(turned, step), 'move', id)
    },
    commit: (step) => ground.turn(stepped(turned, step), 'end', id),
    cancel: () => ground.turn(0, 'cancel', id),
  }
}

/** What was pressed is moved. Alt makes the hand finer from where it is pressed; Shift keeps to straight across or down. */
function drag(ground: Ground, id: string, how: SelectHow, from: Point): Gesture {
  let last = from
  let way = { dx: 0, dy: 0 }
  ground.take(id, how)
  ground.focus(id)
  ground.move(0, 0, 'start', id)
  const told = (phase: Phase, isStraight: boolean): void => {
    const { dx, dy } = straight(way, isStraight)
    ground.move(dx, dy, phase, id)
  }
  return {
    move({ at, altKey, shiftKey }) {
      const share = altKey ? FINE : 1
      way = { dx: way.dx + (at.x - last.x) * share, dy: way.dy + (at.y - last.y) * share }
      last = at
      told('move', shiftKey)
    },
    commit: ({ shiftKey }) => told('end', shiftKey),
    cancel: () => ground.move(0, 0, 'cancel', id),
  }
}

/** Everything within a band is selected. */
function band(ground: Ground, start: Point, how: SelectHow): Gesture {
  return {
    move: ({ at }) => ground.band(boxBetween(start, at)),
    commit({ at }) {
      ground.band(null)
      ground.select(ground.motifsWithin(boxBetween(start, at)), how)
    },
    cancel: () => ground.band(null),
  }
}

/** A press selects; one that wanders becomes a drag, a band, or under a finger a way of the paper. */
const press: Begin = (ground, { at: start, isTouch, shiftKey, ctrlKey, metaKey }) => {
  const id = ground.motifAt(start)
  const how = shiftKey ? 'add' : ctrlKey || metaKey ? 'toggle' : 'replace'
  return {
    move(step) {
      if (distance(step.at, start) < SLOP) return
      if (!(id && ground.tool === 'move') && isTouch) return pan(ground, step.at)
      const next = id && ground.tool === 'move' ? drag(ground, id, how, start) : band(ground, start, how)
      next.move(step)
      return next
    },
    commit() {
      if (id) {
        ground.select([id], how)
        ground.focus(id)
      } else if (how === 'replace') {
        ground.select([], 'replace')
        ground.focus(null)
      }
    },
    cancel: nothing,
  }
}

/** The first that begins at a place is the one that is meant. */
const BEGINS: readonly Begin[] = [resize, paint, line, turn, press]

export function beginGesture(ground: Ground, step: Step): Gesture | null {
  for (const begin of BEGINS) {
    const begun = begin(ground, step)
    if (begun) return begun
  }
  return null
}
