/** Small sums and questions of gestures: rectangles, directions, steps, whose a key is. */
import type { Point } from '../../shared-types/plan'
import type { ScreenBox } from './scene'

/** Steps in degrees that the turn tool keeps to: without a key, with the shift key, with the alt key. */
const TURN_STEP = { free: 1, shift: 15, fine: 0.1 } as const

/** The rectangle between two corners. */
export const boxBetween = (a: Point, b: Point): ScreenBox => ({
  left: Math.min(a.x, b.x),
  top: Math.min(a.y, b.y),
  width: Math.abs(a.x - b.x),
  height: Math.abs(a.y - b.y),
})

/** Direction from a centre to a place, in degrees. */
export const angle = (centre: Point, at: Point): number =>
  (Math.atan2(at.y - centre.y, at.x - centre.x) * 180) / Math.PI

/** The same turn, between −180 and 180 degrees. */
export const shortest = (degrees: number): number => ((((degrees + 180) % 360) + 360) % 360) - 180

/** Degrees in the steps that the keys ask for. */
export function stepped(
  degrees: number,
  { shiftKey, altKey }: { shiftKey: boolean; altKey: boolean },
): number {
  const step = shiftKey ? TURN_STEP.shift : altKey ? TURN_STEP.fine : TURN_STEP.free
  return Number((Math.round(degrees / step) * step).toFixed(1))
}

/** With the shift key only the longer of two ways counts. */
export function straight(way: { dx: number; dy: number }, isStraight: boolean): { dx: number; dy: number } {
  if (!isStraight) return way
  return Math.abs(way.dx) >= Math.abs(way.dy) ? { dx: way.dx, dy: 0 } : { dx: 0, dy: way.dy }
}

/** Whether a key is free for the drawing: the focus is on it, or on nothing that uses the key. */
export function isFree(target: EventTarget | null, element: HTMLElement): boolean {
  if (!(target instanceof Element)) return true
  return target === element || element.contains(target) || target === element.ownerDocument.body
}
