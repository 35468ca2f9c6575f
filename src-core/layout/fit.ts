/**
 * M26: the arrangements nearest a wished size, best first by |Δw|/W + |Δh|/H. Straight and offset rows are
 * tried with the project's own rotation, rings where the project already has them.
 */
import type { Finding } from '../../shared-types/finding'
import type { FitArrangement, Plan } from '../../shared-types/plan'
import type { Arrangement, BlanketLayout, Project } from '../../shared-types/project'
import { finding } from '../findings/finding'
import { formatSize } from '../units/format'
import type { Planner } from '../plan'
import { MOST_MOTIFS, MOST_RINGS, MOST_ROWS } from './constants'
import { countPlaces } from './places'
import type { AlternateRows } from './places'

export interface Wish {
  readonly width: number
  readonly height: number
}

/** How many arrangements are offered. */
const OFFERED = 8

interface Candidate {
  readonly arrangement: Arrangement
  readonly columns: number
  readonly rows: number
  readonly rings: number
  readonly alternateRows: AlternateRows
  readonly width: number
  readonly height: number
  readonly miss: number
}

/** A size that grows evenly with a count: `first` with one, `step` more with each further one. */
interface Even {
  readonly first: number
  readonly step: number
}

/**
 * The arrangements nearest `wish` (mm), best first. `sizeOf` answers the finished size of a layout,
 * `planner` the yarn of those that are offered.
 */
export function fitArrangements(
  project: Project,
  wish: Wish,
  planner: Planner,
): { arrangements: FitArrangement[]; findings: readonly Finding[] } {
  const layout: BlanketLayout =
    project.layout?.kind === 'blanket' ? project.layout : { kind: 'blanket', motif: project.motifs?.[0]?.id }
  if (!(wish.width > 0 && wish.height > 0 && Number.isFinite(wish.width + wish.height))) {
    const units = project.units ?? 'metric'
    const received = formatSize(wish.width || 0, wish.height || 0, units)
    return { arrangements: [], findings: [finding('layout/target', 'target', { received })] }
  }
  const planOf = (change: Partial<BlanketLayout>): Plan =>
    planner.plan({ ...project, layout: { ...layout, target: undefined, ...change } })
  const trial = planOf({ arrangement: 'straight-rows', columns: 1, rows: 1 })
  if (!trial.motif || trial.motifs.length === 0) return { arrangements: [], findings: trial.findings }

  const candidates = [
    ...rowCandidates(planOf, wish, 'straight-rows', 'same'),
    ...rowCandidates(planOf, wish, 'offset-rows', 'same'),
    ...rowCandidates(planOf, wish, 'offset-rows', layout.alternateRows ?? 'oneFewer'),
    ...(layout.arrangement === 'rings' ? ringCandidates(planOf, wish) : []),
  ]
  const offered = unlike(candidates.sort((a, b) => a.miss - b.miss)).slice(0, OFFERED)
  return {
    arrangements: offered.map((candidate) => describe(candidate, planOf, wish)),
    findings: trial.findings.filter((entry) => entry.severity === 'error'),
  }
}

const missOf = (size: Wish, wish: Wish): number =>
  Math.abs(size.width - wish.width) / wish.width + Math.abs(size.height - wish.height) / wish.height

/** The counts round the one that fits best. */
function near({ first, step }: Even, wish: number, least: number): number[] {
  const best = step > 0 ? 1 + (wish - first) / step : least
  const around = [Math.floor(best) - 1, Math.floor(best), Math.ceil(best), Math.ceil(best) + 1]
  return [...new Set(around.map((n) => Math.min(MOST_ROWS, Math.max(least, n))))]
}

function rowCandidates(
  planOf: (change: Partial<BlanketLayout>) => Plan,
  wish: Wish,
  arrangement: 'straight-rows' | 'offset-rows',
  alternateRows: AlternateRows,
): Candidate[] {
  const sizeOf = (columns: number, rows: number) => planOf({ arrangement, columns, rows, alternateRows }).size
  const least = alternateRows === 'oneFewer' && arrangement === 'offset-rows' ? 2 : 1
  // Width steps evenly from two rows on; height alternates between two steps.
  const narrow = sizeOf(least, 2).width
  const across: Even = {
    first: narrow - (least - 1) * step(narrow, sizeOf(least + 1, 2).width),
    step: step(narrow, sizeOf(least + 1, 2).width),
  }
  const heights = [1, 2, 3].map((rows) => sizeOf(least, rows).height) as [number, number, number]
  const down: Even = { first: heights[0], step: (heights[2] - heights[0]) / 2 }
  const found: Candidate[] = []
  for (const columns of near(across, wish.width, least))
    for (const rows of near(down, wish.height, 1)) {
      const counts = { arrangement, columns, rows, alternateRows, rings: 0 }
      if (countPlaces(counts) > MOST_MOTIFS) continue
      const width = rows === 1 ? sizeOf(columns, 1).width : across.first + (columns - 1) * across.step
      const height =
        heights[0] +
        Math.floor(rows / 2) * (heights[1] - heights[0]) +
        Math.floor((rows - 1) / 2) * (heights[2] - heights[1])
      found.push({ ...counts, width, height, miss: missOf({ width, height }, wish) })
    }
  return found
}

const step = (a: number, b: number): number => b - a

function ringCandidates(planOf: (change: Partial<BlanketLayout>) => Plan, wish: Wish): Candidate[] {
  const sizeOf = (rings: number) => planOf({ arrangement: 'rings', rings }).size
  const one = sizeOf(1)
  const two = sizeOf(2)
  const reach = (wished: number, a: number, b: number) => 1 + (wished - a) / (b - a)
  const best = (reach(wish.width, one.width, two.width) + reach(wish.height, one.height, two.height)) / 2
  const tried = new Set([-1, 0, 1, 2].map((d) => Math.min(MOST_RINGS, Math.max(0, Math.floor(best) + d))))
  return [...tried].map((rings) => {
    const { width, height } = sizeOf(rings)
    const counts = {
      arrangement: 'rings' as const,
      columns: 0,
      rows: 0,
      alternateRows: 'same' as const,
      rings,
    }
    return { ...counts, width, height, miss: missOf({ width, height }, wish) }
  })
}

/** Without arrangements that came twice. */
function unlike(candidates: readonly Candidate[]): Candidate[] {
  const seen = new Set<string>()
  return candidates.filter(({ arrangement, columns, rows, rings, alternateRows }) => {
    const key = [arrangement, columns, rows, rings, arrangement === 'offset-rows' ? alternateRows : ''].join()
    return !seen.has(key) && seen.add(key)
  })
}

function describe(
  { arrangement, columns, rows, rings, alternateRows }: Candidate,
  planOf: (change: Partial<BlanketLayout>) => Plan,
  wish: Wish,
): FitArrangement {
  const plan = planOf({ arrangement, columns, rows, rings, alternateRows })
  const size = { width: plan.size.width, height: plan.size.height }
  return {
    arrangement,
    columns,
    rows,
    rings,
    alternateRows,
    size,
    error: { width: size.width - wish.width, height: size.height - wish.height },
    motifs: plan.counts.motifs,
    yarns: plan.yarns.map(({ id, grams }) => ({ id, grams: grams.expected })),
  }
}
