/** What the painters of the map share: how the canvas lies on the plan, and a motif on the canvas. */
import { radians } from '../../src-core/units/quantity'

/** How the canvas lies on the plan: device pixels per mm, and where the plan's origin falls, in device pixels. */
export interface Placing {
  readonly scale: number
  readonly x: number
  readonly y: number
  /** Device pixels per CSS pixel. */
  readonly ratio: number
}

/** `value` within bounds. */
export const clamp = (value: number, least: number, most: number) => Math.min(most, Math.max(least, value))

/** A copy of a motif: a placed motif, a filler, a half motif. */
export interface Copy {
  readonly x: number
  readonly y: number
  readonly turn: number
  readonly flipped?: boolean
}

/** A number for each way to lie: turns are degrees within a few whole ones. */
export const lieOf = ({ turn, flipped }: Copy): number => (flipped ? turn + 1e6 : turn)

/** The first four numbers of the matrix that a copy lies by. */
export type Lay = readonly [number, number, number, number]

/** Mirrored where its wrong side is up, then turned, then stretched as by blocking, then scaled. */
export function layOf(
  { width, height }: { readonly width: number; readonly height: number },
  { turn, flipped }: Copy,
  scale: number,
): Lay {
  const across = flipped ? -1 : 1
  const [cos, sin] = [Math.cos(radians(turn)) * scale, Math.sin(radians(turn)) * scale]
  return [across * cos * width, across * sin * height, -sin * width, cos * height]
}
