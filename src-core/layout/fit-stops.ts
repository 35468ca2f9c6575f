/**
 * M26: what keeps the largest arrangement from the yarn on hand from being larger: what one more row would need, and how
 * many motifs more there were without one of the rules that the colours keep to.
 */
import type { FitArrangement, FitStops, PlanNumbers } from '../../shared-types/plan'
import type { BlanketLayout, Project } from '../../shared-types/project'
import { blanketOf } from '../plans/layouts'
import { missingOf } from '../materials/no-more'
import { heldAgainst } from '../progress/held-against'
import type { BlanketCounts } from './blanket'
import { MOST_MOTIFS } from './constants'
import { countPlaces } from './places'

type Fill = NonNullable<NonNullable<BlanketLayout['cells']>['fill']>
type Rule = FitStops['rules'][number]['rule']

/** A project without one of its rules for colours; null where it has no such rule. */
const WITHOUT: Readonly<Record<Rule, (fill: Fill) => Fill | null>> = {
  apart: (fill) => (fill.pattern === 'no-two-alike' ? { ...fill, pattern: 'scatter' } : null),
  limits: ({ most, mostGrams, ...fill }) =>
    [most, mostGrams].some((limits) => Object.keys(limits ?? {}).length > 0) ? fill : null,
  symmetry: ({ symmetry, ...fill }) => (symmetry ? fill : null),
}

/** Grams of each yarn that a plan lacks. */
const lacked = ({ yarns, progress }: PlanNumbers): { id: string; grams: number }[] =>
  yarns.flatMap((each) => {
    const { need, there } = heldAgainst(each, progress)
    const grams = missingOf(need, there)
    return grams > 0 ? [{ id: each.id, grams }] : []
  })

/** What one more row, or ring, takes that is not there; null where it cannot be tried. */
function nextRow(counts: BlanketCounts, told: (counts: BlanketCounts) => PlanNumbers): FitStops['next'] {
  const isRings = counts.arrangement === 'rings'
  const next = isRings ? { ...counts, rings: counts.rings + 1 } : { ...counts, rows: counts.rows + 1 }
  const motifs = countPlaces(next) - countPlaces(counts)
  if (countPlaces(next) > MOST_MOTIFS) return undefined
  const missing = lacked(told(next))
  return missing.length > 0 ? { of: isRings ? 'ring' : 'row', motifs, missing } : undefined
}

/** Rules of the colours without which there were more motifs, and how many; `motifsIn` says how many a project has then. */
function costly(
  project: Project,
  motifs: number,
  motifsIn: (changed: Project) => number,
): FitStops['rules'][number][] {
  const layout = blanketOf(project)
  const fill = layout?.cells?.fill
  if (!layout || !fill) return []
  return (Object.keys(WITHOUT) as Rule[]).flatMap((rule) => {
    const free = WITHOUT[rule](fill)
    if (!free) return []
    const changed = { ...project, layout: { ...layout, cells: { ...layout.cells, fill: free } } }
    const more = motifsIn(changed) - motifs
    return more > 0 ? [{ rule, motifs: more }] : []
  })
}

/**
 * The fits with what stops each of them; rules are tried for the first alone, which takes as long as finding it.
 * `motifsIn` is how many a project has in the arrangement of the first, as large as the yarn allows.
 */
export function withStops(
  project: Project,
  fits: readonly FitArrangement[],
  told: (counts: BlanketCounts) => PlanNumbers,
  motifsIn: (changed: Project, like: BlanketCounts) => number,
): FitArrangement[] {
  const inTheRound = blanketOf(project)?.inTheRound ?? false
  return fits.map((fit, at) => {
    const { arrangement, columns, rows, rings, alternateRows, turn, alternateTurn } = fit
    const counts = { arrangement, columns, rows, rings, alternateRows, turn, alternateTurn, inTheRound }
    const next = nextRow(counts, told)
    const rules = at === 0 ? costly(project, fit.motifs, (changed) => motifsIn(changed, counts)) : []
    return next || rules.length > 0 ? { ...fit, stops: { ...(next && { next }), rules } } : fit
  })
}
