/** From located rounds to one smooth outline: the envelope of their edges, folded over its petals. */
import type { Point } from '../../../shared-types/plan'
import type { Millimetres, Radians } from '../../units/quantity'
import { LEAST_LOBE } from '../constants'
import { angleOf, at, radiusOf, unwrap } from './ground'
import type { LocatedRound } from './ground'
import { edgeOfLobe } from './lobe'

/** Directions in which the envelope is kept; divisible by every likely number of petals. */
const SAMPLES = 2520
const TURN = 2 * Math.PI

/** How far rounds reach; 0 where they have no edge. */
export const farthest = (rounds: readonly LocatedRound[]): Millimetres =>
  rounds.reduce(
    (most, { edge }) => (edge.length < 3 ? most : edge.reduce((far, p) => Math.max(far, radiusOf(p)), most)),
    0,
  )

/** Radius in `SAMPLES` directions: the farthest point of any round's edge. */
export function envelope(rounds: readonly LocatedRound[]): Float64Array {
  const radii = new Float64Array(SAMPLES)
  for (const { edge } of rounds) {
    if (edge.length < 3) continue
    edge.forEach((a, i) => span(radii, a, edge[(i + 1) % edge.length]!))
  }
  return radii
}

function span(radii: Float64Array, a: Point, b: Point): void {
  const from = angleOf(a)
  const to = unwrap(angleOf(b), from)
  const [low, high] = from <= to ? [from, to] : [to, from]
  const fromRadius = radiusOf(a)
  const growth = radiusOf(b) - fromRadius
  const start = Math.ceil((low / TURN) * SAMPLES)
  const end = Math.floor((high / TURN) * SAMPLES)
  for (let i = start; i <= end; i++) {
    const angle = (i / SAMPLES) * TURN
    const share = high === low ? 0 : (angle - from) / (to - from)
    const radius = fromRadius + growth * share
    const slot = ((i % SAMPLES) + SAMPLES) % SAMPLES
    if (radius > radii[slot]!) radii[slot] = radius
  }
}

export interface Lobes {
  /** 0 where the outline is round. */
  readonly count: number
  /** Direction of the first tip. */
  readonly phase: Radians
  /** Radius from one tip (0) over the valley (0.5) to the next tip (1), at even steps, mirrored. */
  readonly profile: Float64Array
}

/** How many lobes an envelope has (`asked` when the rounds say so), where they are and how one looks. */
export function lobesOf(radii: Float64Array, asked: number | null): Lobes {
  const mean = radii.reduce((sum, r) => sum + r, 0) / radii.length
  const waves = asked === null ? strongest(radii) : asked
  const count = waves >= 3 && waves <= 24 ? waves : 0
  if (count === 0) return { count: 0, phase: 0, profile: Float64Array.of(mean) }
  const steps = Math.round(SAMPLES / count / 2) * 2
  const folded = new Float64Array(steps)
  for (let k = 0; k < steps; k++) {
    let sum = 0
    for (let lobe = 0; lobe < count; lobe++)
      sum += radii[Math.round(((lobe + k / steps) / count) * SAMPLES) % SAMPLES]!
    folded[k] = sum / count
  }
  const tip = phaseOf(folded)
  const profile = mirrored(folded, tip)
  sharpen(profile, radii, count, tip / steps)
  const least = Math.min(...profile)
  const most = Math.max(...profile)
  if (asked === null && most - least < LEAST_LOBE * mean)
    return { count: 0, phase: 0, profile: Float64Array.of(mean) }
  return { count, phase: ((tip / steps) * TURN) / count, profile }
}

/** A lobe whose sides differ by more than this share of its depth leans: it is worked back along a chain (by eye). */
const LEANS = 0.15

/** A lobe that is alike on both sides of its tip: the mean of both, or, where it leans, as wide as it is at every radius. */
function mirrored(folded: Float64Array, tip: number): Float64Array {
  const steps = folded.length
  const on = folded.map((_, k) => folded[(tip + k) % steps]!)
  const off = on.reduce((sum, radius, k) => sum + Math.abs(radius - on[(steps - k) % steps]!), 0) / steps
  const high = Float64Array.from(folded).sort().reverse()
  const leans = off > LEANS * (high[0]! - high[steps - 1]!)
  return Float64Array.from({ length: steps + 1 }, (_, k) => {
    const out = Math.min(k, steps - k)
    if (!leans) return (on[k % steps]! + on[(steps - k) % steps]!) / 2
    return (high[Math.max(0, 2 * out - 1)]! + high[Math.min(steps - 1, 2 * out)]!) / 2
  })
}

/** How unlike its lobes are: root mean square of what an envelope is off its own mean lobe, as a share of its mean radius. */
export function unlikeness(radii: Float64Array, asked: number | null): number {
  const waves = asked ?? strongest(radii)
  if (waves < 1) return 0
  const steps = SAMPLES / waves
  let squares = 0
  for (let k = 0; k < steps; k++) {
    const values = Array.from({ length: waves }, (_, lobe) => radii[Math.round(lobe * steps + k) % SAMPLES]!)
    const mean = values.reduce((sum, value) => sum + value, 0) / waves
    for (const value of values) squares += (value - mean) ** 2
  }
  const mean = radii.reduce((sum, r) => sum + r, 0) / radii.length
  return Math.sqrt(squares / SAMPLES) / mean
}

/**
 * Lobes that stand unevenly blur each other when they are folded: the profile is drawn out again to the mean of
 * the tips and of the valleys that the lobes have each for themselves.
 */
function sharpen(profile: Float64Array, radii: Float64Array, count: number, phase: number): void {
  let tips = 0
  let valleys = 0
  for (let lobe = 0; lobe < count; lobe++) {
    const at = (share: number) => Math.round(((lobe + phase + share) / count) * SAMPLES)
    let tip = -Infinity
    let valley = Infinity
    for (let i = at(-0.5); i <= at(0.5); i++) tip = Math.max(tip, radii[(i + SAMPLES) % SAMPLES]!)
    for (let i = at(0); i <= at(1); i++) valley = Math.min(valley, radii[(i + SAMPLES) % SAMPLES]!)
    tips += tip / count
    valleys += valley / count
  }
  const least = Math.min(...profile)
  const most = Math.max(...profile)
  if (most - least < 1e-9) return
  profile.forEach((r, k) => {
    profile[k] = valleys + ((r - least) / (most - least)) * (tips - valleys)
  })
}

/** Step of the folded lobe round which it is most alike on both sides, with the larger radius there. */
function phaseOf(folded: Float64Array): number {
  // The first harmonic of the folded lobe points at its middle, however many bumps it has.
  let cos = 0
  let sin = 0
  folded.forEach((r, k) => {
    cos += r * Math.cos((k / folded.length) * TURN)
    sin += r * Math.sin((k / folded.length) * TURN)
  })
  const steps = folded.length
  // Halfway between two steps the last digit of a sum would decide.
  return ((Math.round((Math.atan2(sin, cos) / TURN) * steps - 1e-6) % steps) + steps) % steps
}

const TABLE = Array.from({ length: SAMPLES }, (_, i) => (i / SAMPLES) * TURN)
const COSINES = Float64Array.from(TABLE, Math.cos)
const SINES = Float64Array.from(TABLE, Math.sin)

/** How far an envelope swings in so many waves round. */
export function amplitudeOf(radii: Float64Array, waves: number): number {
  let cos = 0
  let sin = 0
  for (let i = 0, at = 0; i < SAMPLES; i++, at = (at + waves) % SAMPLES) {
    cos += radii[i]! * COSINES[at]!
    sin += radii[i]! * SINES[at]!
  }
  return Math.hypot(cos, sin)
}

/** Number of waves with the largest amplitude. */
function strongest(radii: Float64Array): number {
  let best = 0
  let most = 0
  for (let waves = 3; waves <= 24; waves++) {
    const amplitude = amplitudeOf(radii, waves)
    if (amplitude > most * 1.001) {
      most = amplitude
      best = waves
    }
  }
  return best
}

/** Largest (tip) and smallest (valley) radius of a lobe. */
export const lobeExtremes = ({ profile }: Lobes): { tip: Millimetres; valley: Millimetres } => ({
  tip: Math.max(...profile),
  valley: Math.min(...profile),
})

/**
 * The outline of `count` alike lobes, the first tip at 12 o'clock: between tip and valley it follows the
 * profile, smoothed; tip and valley are points of it, and nothing reaches beyond the tip.
 */
export function lobedOutline({ count, profile: worked }: Lobes, points: number): Point[] {
  const half = Math.max(6, Math.round(points / count / 2))
  const profile = edgeOfLobe(worked, count)
  const [tip, valley] = [Math.max(...worked), Math.min(...worked)]
  const steps = profile.length - 1
  const radiusAt = (share: number): Millimetres => {
    // A running mean over a twelfth of the lobe takes the corners off single stitches.
    const window = Math.max(1, Math.round(steps / 24))
    const middle = Math.round(share * steps)
    let sum = 0
    for (let k = -window; k <= window; k++) sum += profile[(((middle + k) % steps) + steps) % steps]!
    return sum / (2 * window + 1)
  }
  const outline: Point[] = []
  for (let i = 0; i < count * 2 * half; i++) {
    const within = i % (2 * half)
    const radius =
      within === 0
        ? tip
        : within === half
          ? valley
          : Math.min(tip, Math.max(valley, radiusAt(within / (2 * half))))
    outline.push(at(radius, (i / (count * 2 * half)) * TURN))
  }
  return outline
}
