/** The map under the finger: drag, pinch, wheel, keys; a tap selects. */
import type { PhoneData } from '../data'
import { byId, drawn } from './dom'
import type { Marks } from './marks'
import { beside, bringing, moved, nearest, wholeView, zoomed } from './view'
import type { View } from './view'

export interface PhoneMap {
  select(at: number, bring: boolean): void
  refresh(): void
}

const STEP = 0.7
/** px. A finger that moves less than this taps. */
const TAP = 8
/** Arrow keys as directions. */
const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
}

export function showMap(data: PhoneData, marks: Marks, onSelect: (at: number) => void): PhoneMap {
  const box = byId('map', HTMLElement)
  const svg = byId('whole', SVGSVGElement)
  const ring = byId('ring', SVGCircleElement)
  const ticks = byId('marks', SVGGElement)
  // A map that is wider than high leaves no empty box round it.
  box.style.setProperty('--shape', String(data.height / Math.max(1, data.width)))
  let whole: View = wholeView(data, { width: 1, height: 1 })
  let view = whole
  let selected = -1

  const draw = (next: View): void => {
    view = next
    svg.style.transform = ''
    svg.setAttribute('viewBox', `${view.x} ${view.y} ${view.width} ${view.height}`)
  }
  const fit = (): void => {
    // A page that is put away has no room.
    if (box.clientWidth === 0 || box.clientHeight === 0) return
    const wasWhole = view.width >= whole.width
    whole = wholeView(data, { width: box.clientWidth, height: box.clientHeight })
    // Turned on its side the same middle is shown, in the box's new shape.
    const middle = { x: view.x + view.width / 2, y: view.y + view.height / 2 }
    const height = (view.width * box.clientHeight) / Math.max(1, box.clientWidth)
    draw(
      wasWhole
        ? whole
        : moved({ ...view, height, x: middle.x - view.width / 2, y: middle.y - height / 2 }, whole, 0, 0),
    )
  }
  /** mm of the drawing for one px. */
  const scale = (): number => view.width / Math.max(1, box.clientWidth)
  const placeOf = (clientX: number, clientY: number): { x: number; y: number } => {
    const { left, top } = box.getBoundingClientRect()
    return { x: view.x + (clientX - left) * scale(), y: view.y + (clientY - top) * scale() }
  }
  const zoom = (factor: number): void => {
    const at = data.pieces[selected]
    const inView =
      at && at.x > view.x && at.x < view.x + view.width && at.y > view.y && at.y < view.y + view.height
    const middle = inView ? at : { x: view.x + view.width / 2, y: view.y + view.height / 2 }
    draw(zoomed(view, whole, factor, middle.x, middle.y))
  }

  byId('closer', HTMLElement).addEventListener('click', () => zoom(STEP))
  byId('wider', HTMLElement).addEventListener('click', () => zoom(1 / STEP))
  byId('everything', HTMLElement).addEventListener('click', () => draw(whole))

  box.addEventListener(
    'wheel',
    (event) => {
      event.preventDefault()
      const { x, y } = placeOf(event.clientX, event.clientY)
      draw(zoomed(view, whole, event.deltaY > 0 ? 1.15 : 1 / 1.15, x, y))
    },
    { passive: false },
  )
  followFingers(box, svg, {
    place: placeOf,
    scale,
    end: (factor, dx, dy, x, y) => draw(zoomed(moved(view, whole, dx, dy), whole, factor, x, y)),
    tap: (x, y) => {
      const at = nearest(data.pieces, x, y)
      if (at >= 0) onSelect(at)
    },
  })

  box.addEventListener('keydown', (event) => {
    if (event.altKey || event.ctrlKey || event.metaKey) return
    const piece = data.pieces[selected]
    const arrow = ARROWS[event.key]
    if (arrow) {
      const to = beside(data.pieces, selected, ...arrow)
      if (to >= 0) onSelect(to)
    } else if (event.key === '+' || event.key === '=') zoom(STEP)
    else if (event.key === '-') zoom(1 / STEP)
    else if (event.key === '0') draw(whole)
    else if (event.key === ' ' && piece) marks.set(piece.id, !marks.isMade(piece.id))
    else return
    event.preventDefault()
    if (arrow) api.select(selected, true)
  })
  new ResizeObserver(fit).observe(box)
  fit()

  const api: PhoneMap = {
    select(at, bring) {
      const piece = data.pieces[at]
      if (!piece) return
      selected = at
      ring.setAttribute('cx', String(piece.x))
      ring.setAttribute('cy', String(piece.y))
      ring.setAttribute('r', String(piece.reach + 0.6))
      if (bring) draw(bringing(view, whole, piece.x, piece.y, piece.reach))
    },
    refresh() {
      ticks.replaceChildren(
        ...data.pieces
          .filter(({ id }) => id !== '' && marks.isMade(id))
          .map(({ x, y, reach }) => tick(x, y, reach)),
      )
    },
  }
  ring.setAttribute('class', 'ring')
  return api
}

/** A tick on light ground below the middle, so that the number stays to be read. */
function tick(x: number, y: number, reach: number): SVGElement {
  const size = Math.max(0.8, reach * 0.24)
  const mark = drawn('g', { transform: `translate(${x} ${y + reach * 0.6})` })
  mark.append(
    drawn('circle', { r: size, fill: '#ffffff', stroke: '#1d4d3f', 'stroke-width': size * 0.14 }),
    drawn('path', {
      d: `M${-size * 0.5} 0L${-size * 0.12} ${size * 0.42}L${size * 0.54} ${-size * 0.4}`,
      fill: 'none',
      stroke: '#1d4d3f',
      'stroke-width': size * 0.3,
      'stroke-linecap': 'round',
    }),
  )
  return mark
}

interface Gesture {
  place(clientX: number, clientY: number): { x: number; y: number }
  /** mm of the drawing for one px. */
  scale(): number
  /** Closer by a factor about a place, after a move in mm. */
  end(factor: number, dx: number, dy: number, x: number, y: number): void
  tap(x: number, y: number): void
}

interface Finger {
  readonly x: number
  readonly y: number
}

/**
 * While fingers move the drawing is only moved and stretched, which costs nothing; it is drawn anew once they are
 * off it.
 */
function followFingers(box: HTMLElement, svg: SVGSVGElement, gesture: Gesture): void {
  const begun = new Map<number, Finger>()
  const now = new Map<number, Finger>()
  let farthest = 0

  const middleOf = (fingers: ReadonlyMap<number, Finger>): Finger => {
    const all = [...fingers.values()]
    return {
      x: all.reduce((sum, { x }) => sum + x, 0) / Math.max(1, all.length),
      y: all.reduce((sum, { y }) => sum + y, 0) / Math.max(1, all.length),
    }
  }
  const apart = (fingers: ReadonlyMap<number, Finger>): number => {
    const [a, b] = [...fingers.values()]
    return a && b ? Math.hypot(a.x - b.x, a.y - b.y) : 0
  }
  const settle = (): void => {
    const from = middleOf(begun)
    const to = middleOf(now)
    const factor = begun.size > 1 && apart(now) > 0 ? apart(begun) / apart(now) : 1
    const about = gesture.place(from.x, from.y)
    const scale = gesture.scale()
    svg.style.transform = ''
    const [dx, dy] = [(from.x - to.x) * scale, (from.y - to.y) * scale]
    gesture.end(factor, dx, dy, about.x, about.y)
    begun.clear()
    for (const [id, finger] of now) begun.set(id, finger)
  }

  box.addEventListener('pointerdown', (event) => {
    if (event.button !== 0) return
    if (now.size > 0) settle()
    else farthest = 0
    const finger = { x: event.clientX, y: event.clientY }
    begun.set(event.pointerId, finger)
    now.set(event.pointerId, finger)
    if (now.size > 1) farthest = Infinity
    box.setPointerCapture(event.pointerId)
  })
  box.addEventListener('pointermove', (event) => {
    if (!now.has(event.pointerId)) return
    now.set(event.pointerId, { x: event.clientX, y: event.clientY })
    const [from, to] = [middleOf(begun), middleOf(now)]
    farthest = Math.max(farthest, Math.hypot(to.x - from.x, to.y - from.y))
    if (farthest < TAP) return
    const stretch = begun.size > 1 && apart(begun) > 0 ? apart(now) / apart(begun) : 1
    const { left, top } = box.getBoundingClientRect()
    const [ox, oy] = [from.x - left, from.y - top]
    svg.style.transform = `translate(${to.x - from.x + ox * (1 - stretch)}px, ${to.y - from.y + oy * (1 - stretch)}px) scale(${stretch})`
  })
  const lift = (event: PointerEvent): void => {
    if (!now.has(event.pointerId)) return
    const isTap = farthest < TAP && now.size === 1 && event.type === 'pointerup'
    if (isTap) {
      const { x, y } = gesture.place(event.clientX, event.clientY)
      begun.clear()
      now.clear()
      gesture.tap(x, y)
      return
    }
    settle()
    begun.delete(event.pointerId)
    now.delete(event.pointerId)
  }
  box.addEventListener('pointerup', lift)
  box.addEventListener('pointercancel', lift)
}
