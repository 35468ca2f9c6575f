/** M14: half a motif, worked back and forth from a ring: half a circle, a hexagon or a square, cut from corner to corner. */
import type { FigureForm } from '../../../shared-types/plan'
import type { Outline } from '../../geometry/points'
import type { Millimetres } from '../../units/quantity'
import { OUTLINE_POINTS } from '../constants'
import { loopedGroups } from './corners'
import { at } from './ground'
import type { LocatedRound } from './ground'

/** So much of the way around its radius is half a motif long: chains and loose edges make it differ (ours). */
const HALF = { least: 0.4, most: 0.75 } as const

const FORMS: readonly FigureForm[] = ['half-circle', 'triangle', 'half-hexagon']

export interface Half {
  readonly form: FigureForm
  readonly outline: Outline
  readonly width: Millimetres
  readonly height: Millimetres
}

/** Whether rounds go back and forth and come half the way around; `located` as if they went all around. */
export function isHalf(located: readonly LocatedRound[]): boolean {
  const last = located.at(-1)
  if (!last || located.length < 2 || !(last.radius > 0)) return false
  const areRows = located.every(
    ({ round }, i) =>
      !round.joined && round.elements.every(({ role }) => role !== 'join') && (i === 0 || round.turned),
  )
  const share = last.length / (2 * Math.PI * last.radius)
  return areRows && share >= HALF.least && share <= HALF.most
}

/** Half a motif, its straight edge below; `located` with stitches twice as wide, so that half of them go all around. */
export function halfOf(located: readonly LocatedRound[]): Half {
  const radius = Math.max(...located.map((entry) => entry.radius))
  const counts = located.map(({ round }) => loopedGroups(round))
  // Corners stand over each other in several rows.
  const corners = [1, 2].find((own) => counts.filter((count) => count === own).length > 1) ?? 0
  const form = FORMS[corners] ?? 'half-circle'
  const sides = form === 'half-circle' ? 0 : corners + 1
  const half = Math.PI / 2 / Math.max(1, sides)
  const steps = OUTLINE_POINTS / 2
  const curve = Array.from({ length: steps + 1 }, (_, i) => {
    const angle = -Math.PI / 2 + (Math.PI * i) / steps
    const within = sides === 0 ? 0 : (((angle + Math.PI / 2) % (2 * half)) + 2 * half) % (2 * half)
    return at(sides === 0 ? radius : radius / Math.cos(within - half), angle)
  })
  const top = Math.min(...curve.map(({ y }) => y))
  const width = 2 * Math.max(...curve.map(({ x }) => x))
  return { form, width, height: -top, outline: curve.map(({ x, y }) => ({ x, y: y - top / 2 })) }
}
