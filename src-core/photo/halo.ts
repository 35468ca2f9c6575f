/**
 * What phones make of paper beside dark yarn: brighter than it is, most beside the yarn and less the farther from it.
 * Such a halo is no yarn. An edging of light yarn is as bright all across and ends at once.
 */
import { lightOutside } from './dark-round'
import type { Evened } from './light'
import { findMotif } from './motif-mask'
import type { FoundMotif } from './motif-mask'
import type { Plane } from './rectify'
import type { Millimetres } from '../units/quantity'

/** From this light on a sheet counts as white: nothing of its colour that lies on it is brighter by much. */
const WHITE = 0.35
/** How far outside the motif it is looked, one after the other. */
const FAR: readonly Millimetres[] = [1.2, 2.4, 3.6, 4.8, 6]
/** By what share a halo is brighter than the paper where it begins, at least; the most of that by which it falls from one to the next. */
const BRIGHTER = 0.05
const STEP = 0.5
/** And the most that is left of it at the last. */
const LEFT = 0.8
/** Yarn that is lighter than a white sheet by less than this nobody could tell from it: wide and even halos are no brighter. */
const FAINT = 0.25
/** Places of that kind, as a share of those of the motif, that are worth a look. */
const WORTH = 0.02

/** How many places are brighter than paper by more than it strays. */
function brighterPlaces({ ground }: Plane, { ratio }: Evened): number {
  let count = 0
  for (let at = 0; at < ground.length; at++)
    if (ground[at] && Math.min(ratio[3 * at]!, ratio[3 * at + 1]!, ratio[3 * at + 2]!) > 1 + BRIGHTER) count++
  return count
}

/** Whether the light outside falls from more than that of paper in small steps. */
export function fades(light: readonly number[]): boolean {
  const above = light.map((each) => each - 1)
  const [first, last] = [above[0] ?? 0, above.at(-1) ?? 0]
  if (first < BRIGHTER) return false
  if (Math.max(...above) < FAINT) return true
  if (last > LEFT * first) return false
  return above.every((each, at) => at === 0 || above[at - 1]! - each <= STEP * first)
}

/** What was found, or the same without the halo that a camera drew round it. */
export function withoutHalo(
  plane: Plane,
  evened: Evened,
  found: FoundMotif | null,
  other: ((x: number, y: number) => boolean) | undefined,
): FoundMotif | null {
  const { paper } = evened
  if (!found || 0.2126 * paper[0] + 0.7152 * paper[1] + 0.0722 * paper[2] < WHITE) return found
  const own = found.mask.on.reduce((sum, each) => sum + each, 0)
  if (brighterPlaces(plane, evened) < WORTH * own) return found
  const without = findMotif(plane, evened, other, found.shadow, true)
  if (!without) return found
  const light = FAR.map((far) => {
    const outside = lightOutside(plane, evened.ratio, without.mask, far)
    return outside[outside.length >> 1] ?? 1
  })
  return fades(light) ? without : found
}
