/** The outline evened out: each petal the mean of all of its kind. */
import type { Millimetres } from '../units/quantity'
import { profileOf } from './kind'
import { repeatProfile } from './lobes'
import type { Petalled } from './lobes'

/** Points for each petal. */
const POINTS = 24

/** The outline with `scale` places of the reach to the mm, a tip at 12 o'clock, tips and dips exactly where they were measured. */
export function evenOutline(
  symmetry: Petalled,
  tip: number,
  dip: number,
  scale: number,
): [Millimetres, Millimetres][] {
  const { order, repeat } = symmetry
  const reach = order === repeat ? evenRepeat(symmetry, tip, dip) : turnsRepeat(symmetry, tip, dip)
  return Array.from({ length: reach.length * repeat }, (_, index) => {
    const angle = (2 * Math.PI * index) / (reach.length * repeat)
    const far = reach[index % reach.length]! / scale
    return [far * Math.sin(angle), -far * Math.cos(angle)]
  })
}

const held = (far: number, tip: number, dip: number) => Math.min(tip, Math.max(dip, far))

/** From one tip to the next, both flanks alike. */
function evenRepeat(symmetry: Petalled, tip: number, dip: number): number[] {
  const last = POINTS / 2
  const half = profileOf(symmetry, last + 1).map((far, at) =>
    at === 0 ? tip : at === last ? dip : held(far, tip, dip),
  )
  return Array.from({ length: POINTS }, (_, at) => half[at <= last ? at : POINTS - at]!)
}

/** Petals of several kinds: from the longest to the next of its kind, as they are; the nearest dip is the one measured. */
function turnsRepeat(symmetry: Petalled, tip: number, dip: number): number[] {
  const { order, repeat } = symmetry
  const profile = repeatProfile({ ...symmetry, order: repeat }, (POINTS * order) / repeat)
  const [high, low] = [Math.max(...profile), Math.min(...profile)]
  return profile.map((far) => (far === high ? tip : far === low ? dip : held(far, tip, dip)))
}
