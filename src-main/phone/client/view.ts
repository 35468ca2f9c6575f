/** The part of the drawing that the map shows, in mm of the drawing: pure arithmetic. */
export interface View {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

interface Size {
  readonly width: number
  readonly height: number
}

/** No closer than so many mm across. */
const CLOSEST = 12
/** Air round the whole. */
const AIR = 1.04

/** All of the drawing, in the shape of the box that shows it. */
export function wholeView({ width, height }: Size, box: Size): View {
  const shape = box.width / Math.max(1, box.height)
  const across = Math.max(width, height * shape) * AIR
  const down = across / shape
  return { x: (width - across) / 2, y: (height - down) / 2, width: across, height: down }
}

/** Closer (factor below 1) or wider about a place of the drawing; never wider than the whole. */
export function zoomed(view: View, whole: View, factor: number, x: number, y: number): View {
  const width = Math.min(whole.width, Math.max(Math.min(CLOSEST, whole.width), view.width * factor))
  const share = width / view.width
  return within(
    {
      x: x - (x - view.x) * share,
      y: y - (y - view.y) * share,
      width,
      height: view.height * share,
    },
    whole,
  )
}

/** Moved by mm of the drawing, no farther than its edge. */
export const moved = (view: View, whole: View, dx: number, dy: number): View =>
  within({ ...view, x: view.x + dx, y: view.y + dy }, whole)

/** With a place in the middle, where it is not well inside. */
export function bringing(view: View, whole: View, x: number, y: number, reach: number): View {
  const inside =
    x - reach >= view.x &&
    x + reach <= view.x + view.width &&
    y - reach >= view.y &&
    y + reach <= view.y + view.height
  return inside ? view : within({ ...view, x: x - view.width / 2, y: y - view.height / 2 }, whole)
}

function within(view: View, whole: View): View {
  const clamp = (value: number, least: number, most: number): number =>
    Math.min(Math.max(value, least), Math.max(least, most))
  return {
    ...view,
    x: clamp(view.x, whole.x, whole.x + whole.width - view.width),
    y: clamp(view.y, whole.y, whole.y + whole.height - view.height),
  }
}

interface Middle {
  readonly x: number
  readonly y: number
}

/** The nearest of some places within its reach; -1 where there is none. */
export function nearest(places: readonly (Middle & { reach: number })[], x: number, y: number): number {
  let best = -1
  let least = Infinity
  places.forEach((place, i) => {
    const away = Math.hypot(place.x - x, place.y - y)
    if (away <= Math.max(place.reach, 3) && away < least) {
      least = away
      best = i
    }
  })
  return best
}

/** The nearest place in a direction, as arrow keys go: what lies far aside counts as farther. -1 where there is none. */
export function beside(places: readonly Middle[], from: number, dx: number, dy: number): number {
  const here = places[from]
  if (!here) return places.length > 0 ? 0 : -1
  let best = -1
  let least = Infinity
  places.forEach((place, i) => {
    const ahead = (place.x - here.x) * dx + (place.y - here.y) * dy
    const aside = Math.abs((place.x - here.x) * dy) + Math.abs((place.y - here.y) * dx)
    if (i === from || ahead <= 1e-6 || aside > 2 * ahead) return
    const cost = ahead + 2 * aside
    if (cost < least) {
      least = cost
      best = i
    }
  })
  return best
}
