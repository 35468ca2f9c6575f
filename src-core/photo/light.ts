/**
 * The colour of the paper and the light on it, fitted as one and divided out: the logarithm of each colour is a
 * polynomial of the place (vignetting and lamps are smooth), found by least squares from what looks like paper.
 */
import type { Plane } from './rectify'
import { withoutShade } from './shade'
import type { Shade } from './shade'

/** Places between samples of the paper, in mm. */
const SPACING = 2.4
/** Share of a sheet along its edges from which the fit begins: a motif hardly ever lies there. */
const RIM = 0.12
/** The least light that a logarithm is taken of. */
const DARKEST = 0.0008
const ROUNDS = 8
const TERMS = 10

/** Powers of x and y up to the third together. */
function terms(x: number, y: number): number[] {
  return [1, x, y, x * x, x * y, y * y, x * x * x, x * x * y, x * y * y, y * y * y]
}

/** Normal equations, with what they equal behind each row, to a diagonal: Gauss with pivots, a touch of damping. */
function reduce(m: Float64Array[]): void {
  const n = m.length
  const length = m[0]!.length
  for (let i = 0; i < n; i++) m[i]![i]! += 1e-6
  for (let i = 0; i < n; i++) {
    let pivot = i
    for (let k = i + 1; k < n; k++) if (Math.abs(m[k]![i]!) > Math.abs(m[pivot]![i]!)) pivot = k
    ;[m[i], m[pivot]] = [m[pivot]!, m[i]!]
    for (let k = 0; k < n; k++) {
      if (k === i) continue
      const by = m[k]![i]! / m[i]![i]!
      for (let j = i; j < length; j++) m[k]![j]! -= by * m[i]![j]!
    }
  }
}

/** Least squares. */
export function leastSquares(
  rows: readonly number[][],
  values: readonly number[],
  weights: readonly number[],
): number[] {
  const n = rows[0]!.length
  const m = Array.from({ length: n }, () => new Float64Array(n + 1))
  rows.forEach((row, at) => {
    const weight = weights[at]!
    if (weight === 0) return
    for (let i = 0; i < n; i++) {
      const by = weight * row[i]!
      for (let j = 0; j < n; j++) m[i]![j]! += by * row[j]!
      m[i]![n]! += by * values[at]!
    }
  })
  reduce(m)
  return m.map((row, i) => row[n]! / row[i]!)
}

const median = (values: Float64Array): number => values.sort()[values.length >> 1] ?? 0

/** Paper and light as polynomials (of the logarithm, for each colour) of the place in mm. */
export interface LightFit {
  readonly powers: readonly Float64Array[]
  readonly middle: { readonly x: number; readonly y: number }
  readonly half: { readonly x: number; readonly y: number }
  /** The light of the paper itself, on average: its colour under this lamp. */
  readonly paper: readonly [number, number, number]
  /** Shadows that no lamp explains, where they had to be looked for. */
  readonly shade?: Shade
}

export interface Evened {
  /** Light as a share of that of paper at the same place. */
  readonly ratio: Float32Array
  readonly paper: readonly [number, number, number]
}

/** Weighted least squares of three values at once over the same rows of `powers` terms. */
function fitThree(rows: Float64Array, logs: readonly Float64Array[], weights: Float64Array, powers: number) {
  const m = Array.from({ length: powers }, () => new Float64Array(powers + 3))
  for (let at = 0; at < weights.length; at++) {
    const weight = weights[at]!
    if (weight === 0) continue
    for (let i = 0; i < powers; i++) {
      const by = weight * rows[TERMS * at + i]!
      const row = m[i]!
      for (let j = 0; j < powers; j++) row[j]! += by * rows[TERMS * at + j]!
      for (let c = 0; c < 3; c++) row[powers + c]! += by * logs[c]![at]!
    }
  }
  reduce(m)
  return [0, 1, 2].map((c) =>
    Float64Array.from({ length: TERMS }, (_, i) => (i < powers ? m[i]![powers + c]! / m[i]![i]! : 0)),
  )
}

const valueOf = (powers: Float64Array, rows: Float64Array, at: number): number => {
  let sum = 0
  for (let i = 0; i < TERMS; i++) sum += powers[i]! * rows[TERMS * at + i]!
  return sum
}

/** Finds paper and light of a plane. */
export function fitLight(plane: Plane, beside: boolean): LightFit {
  const { width, height, light, ground, scale, left, top } = plane
  const step = Math.max(1, Math.round(SPACING * scale))
  const half = { x: width / scale / 2, y: height / scale / 2 }
  const places: number[] = []
  for (let y = step >> 1; y < height; y += step)
    for (let x = step >> 1; x < width; x += step) if (ground[y * width + x]) places.push(y * width + x)
  const count = places.length
  const rows = new Float64Array(TERMS * count)
  const logs = [0, 1, 2].map((c) =>
    Float64Array.from(places, (at) => Math.log(Math.max(DARKEST, light[3 * at + c]!))),
  )
  const middle = logs.map((log) => median(log.slice()))
  let weights: Float64Array = new Float64Array(count)
  places.forEach((at, index) => {
    const x = (2 * (at % width)) / width - 1
    const y = (2 * Math.floor(at / width)) / height - 1
    rows.set(terms(x, y), TERMS * index)
    const near = Math.hypot(...logs.map((log, c) => log[index]! - middle[c]!)) < 0.6 ? 1 : 0
    weights[index] = beside ? near : Math.max(Math.abs(x), Math.abs(y)) > 1 - 2 * RIM ? 1 : near * 0.02
  })
  let fits: Float64Array[] = []
  const off = [0, 1, 2].map(() => new Float64Array(count))
  for (let round = 0; round < ROUNDS; round++) {
    // The first rounds bend little, so that a motif is not taken for light.
    fits = fitThree(rows, logs, weights, round < 2 ? 3 : round < 4 ? 6 : TERMS)
    for (let c = 0; c < 3; c++)
      for (let at = 0; at < count; at++) off[c]![at] = Math.abs(logs[c]![at]! - valueOf(fits[c]!, rows, at))
    const bound = round < 3 ? 6 : 4
    const bounds = off.map((each) => {
      const counted = each.filter((_, at) => weights[at]! > 0.5)
      return bound * Math.max(0.012, 1.4826 * median(counted.length > 20 ? counted : each.slice()))
    })
    weights = Float64Array.from(weights, (_, at) => {
      const far = Math.max(off[0]![at]! / bounds[0]!, off[1]![at]! / bounds[1]!, off[2]![at]! / bounds[2]!)
      return far < 1 ? (1 - far * far) ** 2 : 0
    })
  }
  const paper = fits.map((powers) => {
    let sum = 0
    for (let at = 0; at < count; at++) sum += held(valueOf(powers, rows, at))
    return sum / Math.max(1, count)
  }) as [number, number, number]
  return { powers: fits, middle: { x: left + half.x, y: top + half.y }, half, paper }
}

/** Light of a logarithm that was fitted, within what a picture can say. */
const held = (log: number): number => Math.exp(Math.min(1, Math.max(Math.log(DARKEST), log)))

/** A value and the factors of its first, second and third step. */
type Steps = [number, number, number, number]

/** One colour of a row divided by values that go on by multiplying: a function of its own, which is made fast after some rows. */
function divideRow(
  ratio: Float32Array,
  light: Float32Array,
  from: number,
  end: number,
  [first, step, bent, twist]: Steps,
  dark: number,
  bright: number,
): void {
  let value = first
  let by = step
  let bend = bent
  for (let at = from; at < end; at += 3) {
    ratio[at] = light[at]! / (value > bright ? bright : value < dark ? dark : value)
    value *= by
    by *= bend
    bend *= twist
  }
}

/** Divides paper and light out of a plane. */
export function evenLight(plane: Plane, fit: LightFit): Evened {
  const { width, height, light, scale, left, top } = plane
  const ratio = new Float32Array(light.length)
  const { powers, middle, half, paper } = fit
  const first = (left - middle.x) / half.x
  const each = 1 / (scale * half.x)
  const [dark, bright] = [held(-Infinity), held(Infinity)]
  for (let row = 0; row < height; row++) {
    const y = (top + row / scale - middle.y) / half.y
    for (let c = 0; c < 3; c++) {
      // In a row it is a polynomial of x alone.
      const [p0, p1, p2, p3, p4, p5, p6, p7, p8, p9] = powers[c]! as unknown as number[]
      const k0 = p0! + y * (p2! + y * (p5! + y * p9!))
      const k1 = p1! + y * (p4! + y * p8!)
      const k2 = p3! + y * p7!
      // Of a polynomial of the third degree the third differences are all alike: its powers of e by multiplying alone.
      const log = (column: number) => {
        const x = first + column * each
        return k0 + x * (k1 + x * (k2 + x * p6!))
      }
      const [l0, l1, l2, l3] = [log(0), log(1), log(2), log(3)]
      const steps = [l0, l1 - l0, l2 - 2 * l1 + l0, l3 - 3 * l2 + 3 * l1 - l0].map(Math.exp)
      divideRow(ratio, light, 3 * row * width + c, 3 * (row + 1) * width, steps as Steps, dark, bright)
    }
  }
  const evened = { ratio, paper }
  return fit.shade ? withoutShade(plane, evened, fit.shade) : evened
}
