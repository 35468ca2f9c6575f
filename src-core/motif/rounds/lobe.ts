/** One lobe of an outline, drawn as an edge: not every chain, picot and stitch of it by itself. */
import type { Millimetres } from '../../units/quantity'
import { at } from './ground'

/** A petal is what stands out by so much of the way from dip to tip; what lies lower is the ground between petals (by eye). */
const FOOT = 0.3
/** What rises less than these shares of that way, or of the radius, between two petals is the edge of a round below (by eye). */
const BUMP = { ofDepth: 0.3, ofRadius: 0.06 } as const

/**
 * The profile of a lobe (tip, dip, next tip; mirrored, of `count` lobes) without the hollows of its petal, between a picot
 * and the stitches beside it or along the steps of a point, and without bumps in the dip.
 */
export function edgeOfLobe(profile: Float64Array, count: number): Float64Array {
  const steps = profile.length - 1
  const half = Math.floor(steps / 2)
  const [dip, tip] = [Math.min(...profile), Math.max(...profile)]
  const turn = (2 * Math.PI) / count / steps
  const own = Array.from(profile.slice(0, half + 1))
  const below = own.findIndex((radius) => radius < dip + FOOT * (tip - dip))
  const foot = below < 0 ? half : below
  const petal = hull(own.slice(0, foot + 1), turn)
  let low = Math.min(own[foot]!, petal[foot]!)
  let least = Infinity
  const rises = Math.max(...own.slice(foot).map((radius) => radius - (least = Math.min(least, radius))))
  const isLobe = rises > Math.max(BUMP.ofDepth * (tip - dip), BUMP.ofRadius * tip)
  const edge = own.map((radius, k) => {
    if (k <= foot) return petal[k]!
    return isLobe ? radius : (low = Math.min(low, radius))
  })
  return Float64Array.from(profile, (_, k) => edge[Math.min(k, steps - k)]!)
}

/** Radii at even steps of `turn` from the middle of a petal outward, on the hull of both its sides. */
function hull(radii: readonly Millimetres[], turn: number): Millimetres[] {
  const last = radii.length - 1
  // A petal that is next to nothing is its tip alone.
  if (last < 1) return [...radii]
  const points = Array.from({ length: 2 * last + 1 }, (_, i) =>
    at(radii[Math.abs(i - last)]!, (i - last) * turn),
  )
  const kept: number[] = []
  const side = (a: number, b: number, c: number): number => {
    const [p, q, r] = [points[a]!, points[b]!, points[c]!]
    return (q.x - p.x) * (r.y - q.y) - (q.y - p.y) * (r.x - q.x)
  }
  points.forEach((_, i) => {
    while (kept.length > 1 && side(kept.at(-2)!, kept.at(-1)!, i) <= 0) kept.pop()
    kept.push(i)
  })
  let end = 1
  return radii.map((radius, k) => {
    const i = last + k
    while (end < kept.length - 1 && kept[end]! < i) end++
    const [a, b] = [points[kept[end - 1]!]!, points[kept[end]!]!]
    const out = at(1, k * turn)
    const across = out.x * (b.y - a.y) - out.y * (b.x - a.x)
    const reach = (a.x * (b.y - a.y) - a.y * (b.x - a.x)) / across
    return Number.isFinite(reach) ? Math.max(radius, reach) : radius
  })
}
