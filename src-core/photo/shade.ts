/**
 * Shadows that no lamp explains: a hand or a phone darkens a part of the sheet with an edge as soft as it is far away.
 * Whatever can be reached from the rim of the sheet in small steps of its own colour is paper, however light or dark,
 * and what it strays by is divided out, under the motif evened over from round it.
 */
import type { Evened } from './light'
import type { Plane } from './rectify'

/** Width of a cell in mm, and the most that the logarithm of light changes from one to the next within a soft shadow. */
const CELL = 1.5
const STEP = 0.09
/** The most that paper in shadow, or out of it, is lighter or darker than what was taken for its light; and off in colour. */
const MOST = 0.8
const TINT = 0.12
/** The least share of the ground that has to be reached. */
const LEAST_REACHED = 0.3

/** Logarithms of light by cells, over a plane. */
export interface Shade {
  readonly columns: number
  readonly rows: number
  readonly left: number
  readonly top: number
  readonly logs: Float32Array
}

/** Finds what is left of shadows on the paper of a plane; null where too little of it hangs together. */
export function findShade(plane: Plane, { ratio }: Evened): Shade | null {
  const { width, height, scale, ground, left, top } = plane
  const side = CELL * scale
  const [columns, rows] = [Math.max(1, Math.floor(width / side)), Math.max(1, Math.floor(height / side))]
  const count = columns * rows
  const sums = new Float64Array(3 * count)
  const seen = new Uint32Array(count)
  for (let at = 0; at < ground.length; at++) {
    if (!ground[at]) continue
    const column = Math.min(columns - 1, Math.floor((at % width) / side))
    const cell = Math.min(rows - 1, Math.floor(Math.floor(at / width) / side)) * columns + column
    for (let c = 0; c < 3; c++) sums[3 * cell + c]! += ratio[3 * at + c]!
    seen[cell]!++
  }
  const own = Float32Array.from(sums, (sum, at) => {
    const places = seen[Math.floor(at / 3)]!
    return places > 0 ? Math.log(Math.max(1e-3, sum / places)) : NaN
  })
  const like = (cell: number) => {
    const [red, green, blue] = [own[3 * cell]!, own[3 * cell + 1]!, own[3 * cell + 2]!]
    return Math.abs(green) < MOST && Math.abs(red - green) < TINT && Math.abs(blue - green) < TINT
  }
  const reached = reachedFromRim(columns, rows, own, like)
  const all = seen.reduce((sum, each) => sum + (each > 0 ? 1 : 0), 0)
  if (reached.reduce((sum, each) => sum + each, 0) < LEAST_REACHED * all) return null
  return { columns, rows, left, top, logs: evenedOver(columns, rows, own, reached) }
}

/** 1 for each cell that is reached from the rim by steps that are small enough. */
function reachedFromRim(
  columns: number,
  rows: number,
  own: Float32Array,
  like: (cell: number) => boolean,
): Uint8Array {
  const reached = new Uint8Array(columns * rows)
  const stack: number[] = []
  const add = (cell: number) => {
    if (reached[cell] || !like(cell)) return
    reached[cell] = 1
    stack.push(cell)
  }
  for (let x = 0; x < columns; x++) {
    add(x)
    add((rows - 1) * columns + x)
  }
  for (let y = 0; y < rows; y++) {
    add(y * columns)
    add(y * columns + columns - 1)
  }
  for (let cell = stack.pop(); cell !== undefined; cell = stack.pop()) {
    const from = cell
    const x = from % columns
    const step = (to: number) => {
      for (let c = 0; c < 3; c++) if (!(Math.abs(own[3 * to + c]! - own[3 * from + c]!) < STEP)) return
      add(to)
    }
    if (x > 0) step(from - 1)
    if (x + 1 < columns) step(from + 1)
    if (from >= columns) step(from - columns)
    if (from + columns < columns * rows) step(from + columns)
  }
  return reached
}

/** The same, with what was not reached evened over from its neighbours, ever coarser: cells of half as many to a side. */
function evenedOver(columns: number, rows: number, own: Float32Array, reached: Uint8Array): Float32Array {
  if (columns < 2 && rows < 2) return own.map((log, at) => (reached[Math.floor(at / 3)] ? log : 0))
  const [half, halfRows] = [Math.ceil(columns / 2), Math.ceil(rows / 2)]
  const sums = new Float32Array(3 * half * halfRows)
  const counts = new Uint8Array(half * halfRows)
  for (let cell = 0; cell < reached.length; cell++) {
    if (!reached[cell]) continue
    const to = (Math.floor(cell / columns) >> 1) * half + ((cell % columns) >> 1)
    for (let c = 0; c < 3; c++) sums[3 * to + c]! += own[3 * cell + c]!
    counts[to]!++
  }
  const means = sums.map((sum, at) => sum / Math.max(1, counts[Math.floor(at / 3)]!))
  const coarser = evenedOver(
    half,
    halfRows,
    means,
    counts.map((each) => (each > 0 ? 1 : 0)),
  )
  return own.map((log, at) => {
    const cell = Math.floor(at / 3)
    if (reached[cell]) return log
    const [x, y] = [((cell % columns) - 0.5) / 2, (Math.floor(cell / columns) - 0.5) / 2]
    return between(half, halfRows, coarser, x, y, at % 3)
  })
}

/** A value between the middles of cells. */
function between(columns: number, rows: number, logs: Float32Array, x: number, y: number, c: number): number {
  const [u, v] = [Math.min(columns - 1, Math.max(0, x)), Math.min(rows - 1, Math.max(0, y))]
  const [column, row] = [Math.min(columns - 1, Math.floor(u)), Math.min(rows - 1, Math.floor(v))]
  const [next, below] = [Math.min(columns - 1, column + 1), Math.min(rows - 1, row + 1)]
  const at = (i: number, j: number) => logs[3 * (j * columns + i) + c]!
  const upper = at(column, row) * (1 - (u - column)) + at(next, row) * (u - column)
  const lower = at(column, below) * (1 - (u - column)) + at(next, below) * (u - column)
  return upper * (1 - (v - row)) + lower * (v - row)
}

/** Divides a shade out of a plane of the same sheet, finer or not. */
export function withoutShade(plane: Plane, { ratio, paper }: Evened, shade: Shade): Evened {
  const { width, scale, left, top } = plane
  const evened = new Float32Array(ratio.length)
  const { columns, rows, logs } = shade
  const height = ratio.length / (3 * width)
  // Cells to both sides of each column, and how near to the second.
  const [first, second, near] = [new Int32Array(width), new Int32Array(width), new Float64Array(width)]
  for (let x = 0; x < width; x++) {
    const u = Math.min(columns - 1, Math.max(0, (left + x / scale - shade.left) / CELL - 0.5))
    first[x] = 3 * Math.floor(u)
    second[x] = 3 * Math.min(columns - 1, Math.floor(u) + 1)
    near[x] = u - Math.floor(u)
  }
  for (let y = 0, at = 0; y < height; y++) {
    const v = Math.min(rows - 1, Math.max(0, (top + y / scale - shade.top) / CELL - 0.5))
    const row = Math.floor(v)
    const upper = 3 * columns * row
    const lower = 3 * columns * Math.min(rows - 1, row + 1)
    const t = v - row
    for (let x = 0; x < width; x++) {
      const [one, other, s] = [first[x]!, second[x]!, near[x]!]
      for (let c = 0; c < 3; c++, at++) {
        const above = logs[upper + one + c]! * (1 - s) + logs[upper + other + c]! * s
        const below = logs[lower + one + c]! * (1 - s) + logs[lower + other + c]! * s
        evened[at] = ratio[at]! / Math.exp(above * (1 - t) + below * t)
      }
    }
  }
  return { ratio: evened, paper }
}
