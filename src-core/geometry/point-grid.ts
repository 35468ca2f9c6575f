/**
 * Points by the square of a grid in which they lie. Who is near is looked for in nine squares at most: for points that
 * lie about as dense everywhere, as motifs do, that is several times as quick as a tree.
 */
import type { Millimetres } from '../units/quantity'

/** Squares for each point at most; where points lie far apart, squares grow. */
const SQUARES = 4

export class PointGrid {
  readonly #x: Float64Array
  readonly #y: Float64Array
  readonly #left: Millimetres
  readonly #top: Millimetres
  readonly #side: Millimetres
  readonly #columns: number
  readonly #rows: number
  /** Where the points of each square begin among `#points`; in a square they stand by index. */
  readonly #starts: Int32Array
  readonly #points: Int32Array
  /** What was found last, by index, in front of whatever was there before. */
  found: Int32Array = new Int32Array(64)

  /** Of at least one point; nobody looks farther than `range` mm. */
  constructor(x: Float64Array, y: Float64Array, range: Millimetres) {
    this.#x = x
    this.#y = y
    let [left, right, top, bottom] = [Infinity, -Infinity, Infinity, -Infinity]
    for (let i = 0; i < x.length; i++) {
      left = Math.min(left, x[i]!)
      right = Math.max(right, x[i]!)
      top = Math.min(top, y[i]!)
      bottom = Math.max(bottom, y[i]!)
    }
    const along = (from: Millimetres, to: Millimetres, side: Millimetres) =>
      Math.floor((to - from) / side) + 1
    let side = Math.max(range, Number.MIN_VALUE, (right - left) * 1e-6, (bottom - top) * 1e-6)
    while (along(left, right, side) * along(top, bottom, side) > SQUARES * x.length + SQUARES) side *= 2
    this.#left = left
    this.#top = top
    this.#side = side
    this.#columns = along(left, right, side)
    this.#rows = along(top, bottom, side)
    const squares = new Int32Array(x.length)
    this.#starts = new Int32Array(this.#columns * this.#rows + 1)
    for (let i = 0; i < x.length; i++) {
      const square = this.#column(x[i]!) + this.#columns * this.#row(y[i]!)
      squares[i] = square
      this.#starts[square + 1]!++
    }
    for (let k = 1; k < this.#starts.length; k++) this.#starts[k]! += this.#starts[k - 1]!
    const filled = this.#starts.slice()
    this.#points = new Int32Array(x.length)
    for (let i = 0; i < x.length; i++) this.#points[filled[squares[i]!]!++] = i
  }

  #column(x: Millimetres): number {
    return Math.floor((x - this.#left) / this.#side)
  }

  #row(y: Millimetres): number {
    return Math.floor((y - this.#top) / this.#side)
  }

  /** Finds the points after the `after`-th within `range` mm of a place, and says how many. */
  look(x: Millimetres, y: Millimetres, range: Millimetres, after: number): number {
    const row = this.#row(y)
    const from = Math.max(0, this.#column(x) - 1)
    const to = Math.min(this.#columns - 1, this.#column(x) + 1)
    const most = range * range
    let count = 0
    for (let at = Math.max(0, row - 1); at <= Math.min(this.#rows - 1, row + 1); at++) {
      const end = this.#starts[at * this.#columns + to + 1]!
      for (let k = this.#starts[at * this.#columns + from]!; k < end; k++) {
        const point = this.#points[k]!
        if (point <= after) continue
        const across = this.#x[point]! - x
        const down = this.#y[point]! - y
        if (across * across + down * down > most) continue
        if (count === this.found.length) this.#grow()
        // Points come nearly in order, and they are few.
        let place = count++
        for (; place > 0 && this.found[place - 1]! > point; place--)
          this.found[place] = this.found[place - 1]!
        this.found[place] = point
      }
    }
    return count
  }

  #grow(): void {
    const wider = new Int32Array(2 * this.found.length)
    wider.set(this.found)
    this.found = wider
  }
}
