/**
 * The colour of the paper and the light on it, fitted as one and divided out: the logarithm of each colour is a
 * polynomial of the place (vignetting and lamps are smooth), found by least squares from what looks like paper.
 */
import type { Plane } from './rectify'

/** Places between samples of the paper, in mm. */
const SPACING = 1.2
/** Share of a sheet along its edges from which the fit begins: a motif hardly ever lies there. */
const RIM = 0.12
/** The least light that a logarithm is taken of. */
const DARKEST = 0.0008
const ROUNDS = 8

/** Powers of x and y up to the third together. */
function terms(x: number, y: number): number[] {
  return [1, x, y, x * x, x * y, y * y, x * x * x, x * x * y, x * y * y, y * y * y]
}

/** Solves the normal equations of least squares (Gauss with pivots, a touch of damping). */
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
  for (let i = 0; i < n; i++) m[i]![i]! += 1e-6
  for (let i = 0; i < n; i++) {
    let pivot = i
    for (let k = i + 1; k < n; k++) if (Math.abs(m[k]![i]!) > Math.abs(m[pivot]![i]!)) pivot = k
    ;[m[i], m[pivot]] = [m[pivot]!, m[i]!]
    for (let k = 0; k < n; k++) {
      if (k === i) continue
      const by = m[k]![i]! / m[i]![i]!
      for (let j = i; j <= n; j++) m[k]![j]! -= by * m[i]![j]!
    }
  }
  return m.map((row, i) => row[n]! / row[i]!)
}

const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[Math.floor(sorted.length / 2)] ?? 0
}

export interface Evened {
  /** Light as a share of that of paper at the same place. */
  readonly ratio: Float32Array
  /** The light of the paper itself, on average: its colour under this lamp. */
  readonly paper: readonly [number, number, number]
  /** Share of the samples that are paper in full light. */
  readonly share: number
}

/** Divides paper and light out of a plane. */
export function evenLight(plane: Plane, beside: boolean): Evened {
  const { width, height, light, ground } = plane
  const step = Math.max(1, Math.round(SPACING * plane.scale))
  const where = (at: number): [number, number] => [
    (2 * (at % width)) / width - 1,
    (2 * Math.floor(at / width)) / height - 1,
  ]
  const samples: number[] = []
  for (let y = step >> 1; y < height; y += step)
    for (let x = step >> 1; x < width; x += step) if (ground[y * width + x]) samples.push(y * width + x)
  const logs = [0, 1, 2].map((c) => samples.map((at) => Math.log(Math.max(DARKEST, light[3 * at + c]!))))
  const rows = samples.map((at) => terms(...where(at)))
  const middle = logs.map(median)
  let weights = samples.map((at, index) => {
    const [x, y] = where(at)
    const near = Math.hypot(...logs.map((log, c) => log[index]! - middle[c]!)) < 0.6 ? 1 : 0
    return beside ? near : Math.max(Math.abs(x), Math.abs(y)) > 1 - 2 * RIM ? 1 : near * 0.02
  })
  let fits: number[][] = []
  let kept = 0
  for (let round = 0; round < ROUNDS; round++) {
    // The first rounds bend little, so that a motif is not taken for light.
    const powers = round < 2 ? 3 : round < 4 ? 6 : 10
    fits = logs.map((log) =>
      leastSquares(
        rows.map((row) => row.slice(0, powers)),
        log,
        weights,
      ),
    )
    const off = rows.map((row, index) =>
      logs.map((log, c) => log[index]! - fits[c]!.reduce((sum, by, i) => sum + by * row[i]!, 0)),
    )
    const counted = off.filter((_, index) => weights[index]! > 0.5)
    const scales = [0, 1, 2].map((c) =>
      Math.max(
        0.012,
        1.4826 * median((counted.length > 20 ? counted : off).map((each) => Math.abs(each[c]!))),
      ),
    )
    const bound = round < 3 ? 6 : 4
    weights = off.map((each) => {
      const far = Math.max(...each.map((by, c) => Math.abs(by) / (bound * scales[c]!)))
      return far < 1 ? (1 - far * far) ** 2 : 0
    })
    kept = weights.filter((weight) => weight > 0).length / samples.length
  }
  const ratio = new Float32Array(light.length)
  const paper = [0, 0, 0]
  for (let at = 0; at < ground.length; at++) {
    const row = terms(...where(at))
    for (let c = 0; c < 3; c++) {
      let log = 0
      for (let i = 0; i < row.length; i++) log += fits[c]![i]! * row[i]!
      const held = Math.exp(Math.min(1, Math.max(Math.log(DARKEST), log)))
      ratio[3 * at + c] = light[3 * at + c]! / held
      paper[c]! += held / ground.length
    }
  }
  return { ratio, paper: paper as [number, number, number], share: kept }
}
