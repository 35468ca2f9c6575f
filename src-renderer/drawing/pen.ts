/** What the painters of the map share: how the canvas lies on the plan, from which size on what is drawn. */

/** How the canvas lies on the plan: device pixels per mm, and where the plan's origin falls, in device pixels. */
export interface Placing {
  readonly scale: number
  readonly x: number
  readonly y: number
  /** Device pixels per CSS pixel. */
  readonly ratio: number
}

/** From which size of a motif on screen (CSS pixels, tip to tip) things are drawn. */
export const DETAIL = {
  contour: 16,
  joins: 10,
  petals: 30,
  rounds: 48,
  number: 30,
  letter: 56,
} as const

/** `value` within bounds. */
export const clamp = (value: number, least: number, most: number) => Math.min(most, Math.max(least, value))

/** A copy of a motif: a placed motif, a filler or the whole that a half motif is cut from. */
export interface Copy {
  readonly x: number
  readonly y: number
  readonly turn: number
  readonly flipped?: boolean
}

/** A number for each way to lie: turns are degrees within a few whole ones. */
export const lieOf = ({ turn, flipped }: Copy): number => (flipped ? turn + 1e6 : turn)
