/** What arrangers have in common: they answer with places, and never look at a project. */
import type { Point } from '../../../shared-types/plan'
import type { Degrees, Millimetres, Radians } from '../../units/quantity'
import { degrees } from '../../units/quantity'

export interface ArrangedItem {
  readonly x: Millimetres
  readonly y: Millimetres
  readonly turn: Degrees
}

/** Which way 12 o'clock of an item faces: away from the middle, towards it, the way the line runs, or up. */
export type Facing = 'outward' | 'inward' | 'along' | 'up'

/** Most items that one arranger lays. */
export const MOST_ARRANGED = 2000

/** A count as a whole number from 0 to MOST_ARRANGED; anything else is 0. */
export const wholeCount = (count: number): number =>
  Number.isFinite(count) ? Math.min(MOST_ARRANGED, Math.max(0, Math.floor(count))) : 0

/** The turn that faces an item whose line runs in direction `along` and whose left-hand outside is `outward`. */
export function facingTurn(facing: Facing, outward: Radians, along: Radians, extra: Degrees): Degrees {
  const faced = { outward, inward: outward + Math.PI, along, up: 0 }[facing]
  return roundTurn(degrees(faced) + extra)
}

/** A turn from 0 up to, but not including, 360, without the dust of sums. */
export function roundTurn(turn: Degrees): Degrees {
  const whole = Math.round((((turn % 360) + 360) % 360) * 1e6) / 1e6
  return whole === 360 ? 0 : whole
}

/** A closed or open line of straight pieces, walked by length. */
export class Line {
  private readonly sums: number[] = [0]

  constructor(private readonly points: readonly Point[]) {
    for (let i = 1; i < points.length; i++) {
      const [a, b] = [points[i - 1]!, points[i]!]
      this.sums.push(this.sums[i - 1]! + Math.hypot(b.x - a.x, b.y - a.y))
    }
  }

  get length(): Millimetres {
    return this.sums.at(-1)!
  }

  /** The place so far along, and the direction in which the line runs there (clockwise from 12 o'clock). */
  at(along: Millimetres): { point: Point; direction: Radians } {
    let low = 0
    let high = this.points.length - 2
    while (low < high) {
      const middle = (low + high + 1) >> 1
      if (this.sums[middle]! <= along) low = middle
      else high = middle - 1
    }
    const [a, b] = [this.points[low]!, this.points[low + 1]!]
    const piece = this.sums[low + 1]! - this.sums[low]!
    const share = piece > 0 ? Math.min(1, Math.max(0, (along - this.sums[low]!) / piece)) : 0
    return {
      point: { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share },
      direction: Math.atan2(b.x - a.x, a.y - b.y),
    }
  }
}
