/** Where the drawing looks: pure view arithmetic. Plan lengths in mm, screen lengths in CSS pixels. */
import type { Point } from '../../shared-types/plan'
import type { ScreenBox, Size } from './scene'

export interface Camera {
  /** CSS pixels for one mm. */
  readonly scale: number
  /** Where the plan's top left corner stands on screen. */
  readonly x: number
  readonly y: number
}

export interface Viewport {
  readonly width: number
  readonly height: number
}

/** Room round a fitted plan: dimension lines stand over it and on its left. Low windows leave less of it. */
const FIT_MARGIN = { left: 76, top: 76, right: 40, bottom: 40 } as const
const NARROW_MARGIN = { left: 56, top: 56, right: 32, bottom: 28 } as const
const LEAST_MARGIN = { left: 56, top: 46, right: 32, bottom: 28 } as const
/** CSS pixels of height under which every one goes to the map; and under which there are hardly any. */
const LOW = 480
const LOWEST = 280

/** What stays free round a fitted plan, the handle at its lower right corner included. */
export const fitMargin = ({
  height,
}: Pick<Viewport, 'height'>): Record<'left' | 'top' | 'right' | 'bottom', number> =>
  height < LOWEST ? LEAST_MARGIN : height < LOW ? NARROW_MARGIN : FIT_MARGIN

/** A motif is never drawn larger than this many times its real size on a 96 dpi screen. */
const MOST_MAGNIFIED = 4
/** CSS pixels for one mm where a screen keeps to 96 of them an inch. */
export const PIXELS_PER_MM = 96 / 25.4
/** How far one can zoom out, as a share of the fitted scale. */
const LEAST_OF_FIT = 0.5
/** CSS pixels of the plan that always stay in view. */
const KEPT_IN_VIEW = 60

export const toScreen = (camera: Camera, point: Point): Point => ({
  x: point.x * camera.scale + camera.x,
  y: point.y * camera.scale + camera.y,
})

export const toPlan = (camera: Camera, point: Point): Point => ({
  x: (point.x - camera.x) / camera.scale,
  y: (point.y - camera.y) / camera.scale,
})

/** Where a size from the plan's top left corner lies on screen. */
export const boxOnScreen = ({ scale, x, y }: Camera, { width, height }: Size): ScreenBox => ({
  left: x,
  top: y,
  width: width * scale,
  height: height * scale,
})

/** The camera that shows a whole size with its dimension lines, in the middle of the room that is left. */
export function fitCamera(size: Size, viewport: Viewport): Camera {
  const margin = fitMargin(viewport)
  const width = Math.max(40, viewport.width - margin.left - margin.right)
  const height = Math.max(40, viewport.height - margin.top - margin.bottom)
  const most = MOST_MAGNIFIED * PIXELS_PER_MM
  const scale = Math.min(most, width / Math.max(1, size.width), height / Math.max(1, size.height))
  return {
    scale,
    x: margin.left + (width - size.width * scale) / 2,
    y: margin.top + (height - size.height * scale) / 2,
  }
}

/** Smallest and largest scale for a plan in a viewport. */
export function scaleLimits(size: Size, viewport: Viewport): { least: number; most: number } {
  const fit = fitCamera(size, viewport).scale
  return { least: fit * LEAST_OF_FIT, most: Math.max(fit, MOST_MAGNIFIED * PIXELS_PER_MM) }
}

/** Zooms by a factor with the plan's point under `at` staying under it. */
export function zoomAt(
  camera: Camera,
  factor: number,
  at: Point,
  limits: { least: number; most: number },
): Camera {
  const scale = Math.min(limits.most, Math.max(limits.least, camera.scale * factor))
  const real = scale / camera.scale
  return { scale, x: at.x - (at.x - camera.x) * real, y: at.y - (at.y - camera.y) * real }
}

export const panned = (camera: Camera, dx: number, dy: number): Camera => ({
  ...camera,
  x: camera.x + dx,
  y: camera.y + dy,
})

/** The camera moved so that a strip of the plan stays in view. */
export function keptInView(camera: Camera, size: Size, viewport: Viewport): Camera {
  const within = (start: number, length: number, room: number) =>
    Math.min(room - KEPT_IN_VIEW, Math.max(KEPT_IN_VIEW - length, start))
  return {
    scale: camera.scale,
    x: within(camera.x, size.width * camera.scale, viewport.width),
    y: within(camera.y, size.height * camera.scale, viewport.height),
  }
}

/** Whether all of a plan is in view. */
export function showsWhole(camera: Camera, size: Size, viewport: Viewport): boolean {
  const end = toScreen(camera, { x: size.width, y: size.height })
  const { width, height } = viewport
  return camera.x >= 0 && camera.y >= 0 && end.x <= width && end.y <= height
}

/** The camera moved as little as needed to bring a point at least `margin` pixels into the viewport. */
export function revealing(camera: Camera, point: Point, viewport: Viewport, margin: number): Camera {
  const at = toScreen(camera, point)
  const shift = (value: number, room: number) => {
    const edge = Math.min(margin, room / 2)
    return value < edge ? edge - value : value > room - edge ? room - edge - value : 0
  }
  const { width, height } = viewport
  return panned(camera, shift(at.x, width), shift(at.y, height))
}

/** Between two cameras: scale in proportion, so that a zoom runs evenly. `share` from 0 to 1. */
export function between(from: Camera, to: Camera, share: number): Camera {
  if (share >= 1) return to
  const scale = from.scale * (to.scale / from.scale) ** share
  const moved = to.scale === from.scale ? share : (scale - from.scale) / (to.scale - from.scale)
  return { scale, x: from.x + (to.x - from.x) * moved, y: from.y + (to.y - from.y) * moved }
}

export const sameCamera = (a: Camera, b: Camera): boolean => a.scale === b.scale && a.x === b.x && a.y === b.y
