/**
 * M51, the hanging cord: y = a·cosh(x/a) between two points at one height. Everything is told through
 * u = S/2a (span over twice a), which stays a plain number from a nearly straight cord (u → 0) to a deep
 * loop: drop/span = sinh²(u/2)/u, length/span = sinh(u)/u. Lengths in mm, y down as on paper.
 */
import type { Point } from '../../shared-types/plan'
import type { Millimetres, Radians } from '../units/quantity'

export interface Catenary {
  readonly span: Millimetres
  readonly drop: Millimetres
  /** Length of the cord from one point to the other. */
  readonly length: Millimetres
  /** The parameter of the curve: its radius of curvature at the lowest point; infinite for a straight cord. */
  readonly a: Millimetres
}

/** A place on the cord: the left point it hangs from is (0, 0). */
interface CordPlace extends Point {
  /** Direction of the cord, clockwise from level: above zero where it falls to the right. */
  readonly slope: Radians
}

/** Newton's steps that always suffice; each doubles the digits once it is near. */
const STEPS = 200
/** Relative change at which a step changes nothing more. */
const STILL = 1e-15
/** A cord that hangs down by a smaller share of its length is straight: its curve would be a number of no use. */
const STRAIGHT = 1e-12

/** Logarithm of sinh(x), for x > 0 of any size. */
const logSinh = (x: number): number =>
  x < 1 ? Math.log(Math.sinh(x)) : x - Math.LN2 + Math.log1p(-Math.exp(-2 * x))

/** Solves f(u) = 0 by Newton's steps in ln u; `step` gives f over its derivative by ln u. */
function solve(start: number, step: (u: number) => number): number {
  let u = start
  for (let i = 0; i < STEPS; i++) {
    // A step of more than e² would be a leap into the dark.
    const change = Math.max(-2, Math.min(2, step(u)))
    u *= Math.exp(-change)
    if (Math.abs(change) < STILL) break
  }
  return u
}

/** Refuses what no cord can be: a caller's mistake, not a user's. */
function expect(holds: boolean, what: string): void {
  if (!holds) throw new Error(`no cord hangs like this: ${what}`)
}

function catenaryOf(span: Millimetres, u: number): Catenary {
  if (u === 0) return { span, drop: 0, length: span, a: Infinity }
  return {
    span,
    drop: (span * Math.sinh(u / 2) ** 2) / u,
    length: (span * Math.sinh(u)) / u,
    a: span / (2 * u),
  }
}

/**
 * The cord over a span that hangs down by `drop` in the middle: D = a·(cosh(S/2a) − 1), solved for a. Throws
 * for a span that is not above 0 or a drop below 0.
 */
export function catenaryFromDrop(span: Millimetres, drop: Millimetres): Catenary {
  expect(span > 0 && drop >= 0, `span ${span}, drop ${drop}`)
  if (drop <= STRAIGHT * span) return { ...catenaryOf(span, 0), drop }
  const wanted = Math.log(drop / span)
  // 4·drop/span is never less than the answer, and the function bends upwards: steps come down to it.
  const u = solve((4 * drop) / span, (at) => {
    const value = 2 * logSinh(at / 2) - Math.log(at) - wanted
    return value / (at / Math.tanh(at / 2) - 1)
  })
  return { ...catenaryOf(span, u), drop }
}

/** ln(sinh(u)/u) without loss of digits where u is small (its Taylor series to u⁸ up to 0.1). */
function logStretch(u: number): number {
  if (u > 0.1) return logSinh(u) - Math.log(u)
  const s = u * u
  return s * (1 / 6 - s * (1 / 180 - s * (1 / 2835 - s / 37800)))
}

/** u·coth(u) − 1, likewise. */
function stretchSlope(u: number): number {
  if (u > 0.1) return u / Math.tanh(u) - 1
  const s = u * u
  return s * (1 / 3 - s * (1 / 45 - s * (2 / 945 - s / 4725)))
}

/**
 * A cord of a given length over a span: L = 2a·sinh(S/2a), solved for a. Throws for a span that is not above
 * 0 or a cord that is shorter than it.
 */
export function catenaryFromLength(span: Millimetres, length: Millimetres): Catenary {
  expect(span > 0 && length >= span && length < Infinity, `span ${span}, length ${length}`)
  const wanted = Math.log1p((length - span) / span)
  if (wanted === 0) return catenaryOf(span, 0)
  const u = solve(Math.sqrt(6 * wanted), (at) => {
    const stretch = logStretch(at)
    return (Math.log(stretch / wanted) * stretch) / stretchSlope(at)
  })
  return { ...catenaryOf(span, u), length }
}

/**
 * The cord of a given length that hangs down by `drop`: a = (L²/4 − D²)/2D, S = 2a·asinh(L/2a). Throws where
 * the cord is not longer than twice the drop.
 */
export function catenaryFromLengthAndDrop(length: Millimetres, drop: Millimetres): Catenary {
  expect(drop >= 0 && length > 2 * drop && length < Infinity, `length ${length}, drop ${drop}`)
  if (drop <= STRAIGHT * length) return { span: length, drop, length, a: Infinity }
  const a = ((length / 2 - drop) * (length / 2 + drop)) / (2 * drop)
  return { span: 2 * a * Math.asinh(length / (2 * a)), drop, length, a }
}

/** The place on the cord at an arc length `along` from its left point, 0 to its length. */
export function placeOnCord(cord: Catenary, along: Millimetres): CordPlace {
  const { span, drop, length, a } = cord
  const fromMiddle = along - length / 2
  if (a === Infinity) return { x: along, y: 0, slope: 0 }
  const x = span / 2 + a * Math.asinh(fromMiddle / a)
  // √(a² + s²) − a, without the difference of two large numbers.
  const above = fromMiddle ** 2 / (Math.hypot(a, fromMiddle) + a)
  return { x, y: drop - above, slope: Math.atan2(-fromMiddle, a) }
}
