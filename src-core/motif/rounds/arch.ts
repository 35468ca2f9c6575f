/** M9: a loop of chains over a chord is a circular arch, and a V when one stitch holds it in its middle. */
import type { Point } from '../../../shared-types/plan'
import type { Millimetres, Radians } from '../../units/quantity'

export interface Arch {
  readonly from: Point
  readonly to: Point
  /** Length of the loop: chains times stitch width. */
  readonly length: Millimetres
  /** Half of the arch's angle; 0 for a loop that is pulled straight. */
  readonly halfAngle: Radians
  readonly chord: Millimetres
  /** Of a loop that its neighbours press: how wide it is and how far it stands out. */
  readonly narrow?: { readonly width: Millimetres; readonly rise: Millimetres }
}

/** φ with sin φ / φ = `ratio`, in (0, π]; 0 where the ratio is 1 and more. */
export function archHalfAngle(ratio: number): Radians {
  if (ratio >= 1) return 0
  if (ratio <= 0) return Math.PI
  let low = 0
  let high = Math.PI
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if (Math.sin(middle) / middle > ratio) low = middle
    else high = middle
  }
  return (low + high) / 2
}

/** The arch of a loop between two points; its middle lies on the left of the way from one to the other. */
export function archBetween(from: Point, to: Point, length: Millimetres): Arch {
  const chord = Math.hypot(to.x - from.x, to.y - from.y)
  return { from, to, length, chord, halfAngle: archHalfAngle(length > 0 ? chord / length : 1) }
}

/**
 * A loop that is wider than its room is pressed: two sides and a half circle at their end, so long in all as its
 * chains are.
 */
export function pressedArch(arch: Arch, room: Millimetres): Arch {
  const { halfAngle, length, chord } = arch
  const widest = halfAngle > Math.PI / 2 ? length / halfAngle : chord
  const width = Math.max(room, chord)
  if (widest <= width) return arch
  const rise = length / 2 - (Math.PI / 4 - 1 / 2) * width
  return rise > archRise(arch) ? { ...arch, narrow: { width, rise } } : arch
}

/** Rise over the chord in the middle of the loop: ρ(1 − cos φ) with ρ = length / 2φ. */
export function archRise({ halfAngle, length, narrow }: Arch): Millimetres {
  if (narrow) return narrow.rise
  return halfAngle === 0 ? 0 : (length / (2 * halfAngle)) * (1 - Math.cos(halfAngle))
}

/** The arch over a chord that rises so far: what its length must be is found by halving. */
export function archOfRise(from: Point, to: Point, rise: Millimetres): Arch {
  const chord = Math.hypot(to.x - from.x, to.y - from.y)
  let low = chord
  // A full circle is the highest arch: π times its rise long, and the chord with it.
  let high = chord + Math.PI * Math.max(rise, 0)
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2
    if (archRise(archBetween(from, to, middle)) < rise) low = middle
    else high = middle
  }
  return archBetween(from, to, (low + high) / 2)
}

/** Rise of a loop that one stitch pulls to a V: ½√(length² − chord²). */
export const veeRise = ({ length, chord }: Arch): Millimetres =>
  0.5 * Math.sqrt(Math.max(0, length * length - chord * chord))

/**
 * The point at `share` (0 … 1) of the loop's length and the outward normal there. `outward` is the unit vector
 * from the chord's middle away from the motif's centre.
 */
export function archAt(arch: Arch, share: number, outward: Point): { point: Point; normal: Point } {
  const { from, to, chord, halfAngle, length, narrow } = arch
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }
  const along =
    chord > 1e-9
      ? { x: (to.x - from.x) / chord, y: (to.y - from.y) / chord }
      : { x: -outward.y, y: outward.x }
  // The normal of the chord that points outward.
  const side = along.y * outward.x - along.x * outward.y >= 0 ? 1 : -1
  const up = { x: along.y * side, y: -along.x * side }
  if (narrow) {
    // Up along one side, round the end and down along the other.
    const bulge = ((narrow.width - chord) / 2) * Math.sin(2 * Math.PI * share)
    const s = (share - 0.5) * chord - bulge
    const rise = narrow.rise * Math.sin(Math.PI * share)
    return {
      point: { x: middle.x + along.x * s + up.x * rise, y: middle.y + along.y * s + up.y * rise },
      normal: up,
    }
  }
  if (halfAngle === 0) {
    const s = (share - 0.5) * chord
    return { point: { x: middle.x + along.x * s, y: middle.y + along.y * s }, normal: up }
  }
  const radius = length / (2 * halfAngle)
  const angle = (share - 0.5) * 2 * halfAngle
  const centre = -radius * Math.cos(halfAngle)
  const s = radius * Math.sin(angle)
  const rise = centre + radius * Math.cos(angle)
  return {
    point: { x: middle.x + along.x * s + up.x * rise, y: middle.y + along.y * s + up.y * rise },
    normal: {
      x: along.x * Math.sin(angle) + up.x * Math.cos(angle),
      y: along.y * Math.sin(angle) + up.y * Math.cos(angle),
    },
  }
}
