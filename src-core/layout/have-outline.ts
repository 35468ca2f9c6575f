/** M26: what is cut out in an outline, as large as what there is to make it from allows. */
import type { Project } from '../../shared-types/project'
import { blanketOf } from '../plans/layouts'
import type { Planner } from '../plans/planner'
import { boxOfOutline } from '../ways/outline-by'
import { outlinesScaled } from '../ways/outline'
import { crookedSteps } from './nearness'
import { rowsStanding } from './standing'

/** The largest factor that is tried, and the smallest; steps by which it is narrowed, and by which it is tried below. */
const MOST = 8
const LEAST = 1 / 64
const NARROWED = 9
const BELOW = { share: 0.12, steps: 16 } as const

/** What an uneven edge weighs against the share that is left over (our own choice). */
const UNEVEN = 0.06

/** A blanket that is cut out of what there is. */
export interface CutFrom {
  readonly project: Project
  readonly motifs: number
  readonly crooked: 0 | 1
}

/** What speaks against it where there are at most so many: the share that stays over, and an uneven edge. */
export const missOfCut = ({ motifs, crooked }: CutFrom, most: number): number =>
  (most - motifs) / most + UNEVEN * crooked

const countOf = (project: Project): number => rowsStanding(project).reduce((sum, count) => sum + count, 0)

/**
 * The outlines of a project's kind and proportions that leave at most so many motifs, for which `reaches` holds, the best
 * first: those that use most, but that edges that run evenly are worth a few motifs.
 */
export function cutFrom(
  project: Project,
  most: number,
  reaches: (laid: Project) => boolean,
  planner: Planner,
): readonly CutFrom[] {
  const outline = blanketOf(project)?.outlineShape
  if (!boxOfOutline(outline)) return []
  const fewest = (factor: number): number =>
    Math.min(Infinity, ...outlinesScaled(project, factor, planner).map(countOf))
  // What is cut out grows with its outline, but for a motif here and there.
  let [known, beyond] = [LEAST, MOST]
  for (let step = 0; step < NARROWED; step++) {
    const middle = Math.sqrt(known * beyond)
    if (fewest(middle) <= most) known = middle
    else beyond = middle
  }
  const found = new Map<string, CutFrom>()
  for (let step = 0; step <= BELOW.steps; step++) {
    const factor = beyond * (1 - (BELOW.share * step) / BELOW.steps)
    for (const laid of outlinesScaled(project, factor, planner)) {
      const lengths = rowsStanding(laid)
      const motifs = lengths.reduce((sum, count) => sum + count, 0)
      const name = lengths.join()
      if (motifs < 2 || motifs > most || found.has(name)) continue
      found.set(name, { project: laid, motifs, crooked: crookedSteps(lengths, outline) })
    }
  }
  const sorted = [...found.values()].sort((a, b) => missOfCut(a, most) - missOfCut(b, most))
  return sorted.filter(({ project: laid }) => reaches(laid))
}
