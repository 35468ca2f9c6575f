/** M26: what is cut out in an outline, as large as what there is to make it from allows. */
import type { Project } from '../../shared-types/project'
import { blanketOf } from '../plans/layouts'
import type { Planner } from '../plans/planner'
import { hasOwnHeight, outlinesScaled } from '../ways/outline'
import { boxOfOutline, withOutlineBy } from '../ways/outline-by'
import { MOST_MOTIFS } from './constants'
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
  /** How far its outline is from the proportions that it had, as a share. */
  readonly stretched: number
}

/** What speaks against it where there are at most so many: the share that stays over, and an uneven edge. */
export const missOfCut = ({ motifs, crooked }: CutFrom, most: number): number =>
  (most - motifs) / most + UNEVEN * crooked

/** Steps above and below the outline of about so many motifs, and shares by which one with a height of its own is wider. */
const ABOUT = { share: 0.2, steps: 40 } as const
const WIDER = [0, 0.02, -0.02, 0.04, -0.04, 0.06, -0.06] as const

/** What speaks against one that was to have so many motifs: every motif more or fewer, then its edge and its proportions. */
export const missOfCount = ({ motifs, crooked, stretched }: CutFrom, count: number): number =>
  (Math.abs(motifs - count) + 0.4 * crooked + 4 * stretched) / count

const countOf = (project: Project): number => rowsStanding(project).reduce((sum, count) => sum + count, 0)

/** Factors between which the outline that leaves at most so many motifs ends. */
function bounding(project: Project, most: number, planner: Planner): readonly [number, number] {
  const fewest = (factor: number): number =>
    Math.min(Infinity, ...outlinesScaled(project, factor, planner).map(countOf))
  // What is cut out grows with its outline, but for a motif here and there.
  let [known, beyond] = [LEAST, MOST]
  for (let step = 0; step < NARROWED; step++) {
    const middle = Math.sqrt(known * beyond)
    if (fewest(middle) <= most) known = middle
    else beyond = middle
  }
  return [known, beyond]
}

/**
 * The outlines of a project's kind that leave so many motifs, or the nearest number more or fewer, the best first. One
 * with a height of its own is a little wider or narrower where its own proportions leave another number.
 */
export function cutToCount(project: Project, count: number, planner: Planner): readonly CutFrom[] {
  const outline = blanketOf(project)?.outlineShape
  if (!outline || !boxOfOutline(outline)) return []
  const [, about] = bounding(project, count, planner)
  const found = new Map<string, CutFrom>()
  for (const wider of hasOwnHeight(outline) ? WIDER : [0]) {
    const asked = wider === 0 ? project : withOutlineBy(project, 1 + wider, 1 / (1 + wider))
    for (let step = -ABOUT.steps; step <= ABOUT.steps; step++) {
      const factor = about * (1 + (ABOUT.share * step) / ABOUT.steps)
      for (const laid of outlinesScaled(asked, factor, planner)) {
        const lengths = rowsStanding(laid)
        const motifs = lengths.reduce((sum, many) => sum + many, 0)
        const name = lengths.join()
        if (motifs < 1 || motifs > MOST_MOTIFS || found.has(name)) continue
        const crooked = crookedSteps(lengths, outline)
        found.set(name, { project: laid, motifs, crooked, stretched: Math.abs(wider) })
      }
    }
    if ([...found.values()].some(({ motifs }) => motifs === count)) break
  }
  return [...found.values()].sort((a, b) => missOfCount(a, count) - missOfCount(b, count))
}

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
  const [, beyond] = bounding(project, most, planner)
  const found = new Map<string, CutFrom>()
  for (let step = 0; step <= BELOW.steps; step++) {
    const factor = beyond * (1 - (BELOW.share * step) / BELOW.steps)
    for (const laid of outlinesScaled(project, factor, planner)) {
      const lengths = rowsStanding(laid)
      const motifs = lengths.reduce((sum, count) => sum + count, 0)
      const name = lengths.join()
      if (motifs < 2 || motifs > most || found.has(name)) continue
      found.set(name, { project: laid, motifs, crooked: crookedSteps(lengths, outline), stretched: 0 })
    }
  }
  const sorted = [...found.values()].sort((a, b) => missOfCut(a, most) - missOfCut(b, most))
  return sorted.filter(({ project: laid }) => reaches(laid))
}
