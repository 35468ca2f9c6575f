/**
 * M26: the arrangements nearest a wished size, best first by |Δw|/W + |Δh|/H. Straight and offset rows are
 * tried with the project's own rotation, rings where the project already has them.
 */
import type { Finding } from '../../shared-types/finding'
import type { FitArrangement, Plan } from '../../shared-types/plan'
import type { AlternateRows, Arrangement, BlanketLayout, Project } from '../../shared-types/project'
import { finding } from '../findings/finding'
import { formatSize } from '../units/format'
import type { Planner } from '../plan'
import { MOST_MOTIFS, MOST_RINGS, MOST_ROWS } from './constants'
import { countPlaces } from './places'

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

/** The finished size of the project's layout with a change. */
type SizeOf = (change: Partial<BlanketLayout>) => Wish

/**
 * The arrangements nearest `wish` (mm), best first. `planner` answers
 * sizes, and the yarn of those that are offered.
 */
export function fitArrangements(
  project: Project,
  wish: Wish,
  planner: Planner,
): { arrangements: FitArrangement[]; findings: readonly Finding[] } {
  if (project.layout && project.layout.kind !== 'blanket') {
    const kind = project.layout.kind === 'garland' ? 'a garland' : 'an appliqué'
    return { arrangements: [], findings: [finding('layout/fit-kind', 'layout.kind', { kind })] }
  }
  const layout: BlanketLayout = project.layout ?? { kind: 'blanket', motif: project.motifs?.[0]?.id }
  if (!(wish.width > 0 && wish.height > 0 && Number.isFinite(wish.width + wish.height))) {
    const units = project.units ?? 'metric'
    const received = formatSize(wish.width || 0, wish.height || 0, units)
    return { arrangements: [], findings: [finding('layout/target', 'target', { received })] }
  }
  const planOf = (change: Partial<BlanketLayout>): Plan =>
    planner.plan({ ...project, layout: { ...layout, target: undefined, ...change } })
  const trial = planOf({ arrangement: 'straight-rows', columns: 1, rows: 1 })
  if (!trial.motif || trial.motifs.length === 0) return { arrangements: [], findings: trial.findings }

  const sizeOf: SizeOf = (change) =>
    planner.size({ ...project, layout: { ...layout, ...change } }) ?? { width: 0, height: 0 }
  const candidates = [
    ...rowCandidates(sizeOf, wish, 'straight-rows', 'same'),
    ...rowCandidates(sizeOf, wish, 'offset-rows', 'same'),
    ...rowCandidates(sizeOf, wish, 'offset-rows', layout.alternateRows ?? 'oneFewer'),
    ...(layout.arrangement === 'rings' ? ringCandidates(sizeOf, wish) : []),
  ]
  const offered = unlike(candidates.sort((a, b) => a.miss - b.miss)).slice(0, OFFERED)
  return {
    arrangements: offered.map((candidate) => describe(candidate, planOf, wish)),
    findings: trial.findings.filter((entry) => entry.severity === 'error'),
  }
}

const missOf = (size: Wish, wish: Wish): number =>
  Math.abs(size.width - wish.width) / wish.width + Math.abs(size.height - wish.height) / wish.height

/** The counts round the one that fits best, `first` being the size with one and `step` what each more adds. */
function near(first: number, step: number, wish: number, least: number): number[] {
  const best = step > 0 ? Math.floor(1 + (wish - first) / step) : least
  return [...new Set([-1, 0, 1, 2].map((d) => Math.min(MOST_ROWS, Math.max(least, best + d))))]
}

function rowCandidates(
  sizeOf: SizeOf,
  wish: Wish,
  arrangement: 'straight-rows' | 'offset-rows',
  alternateRows: AlternateRows,
): Candidate[] {
  const at = (columns: number, rows: number) => sizeOf({ arrangement, columns, rows, alternateRows })
  const least = alternateRows === 'oneFewer' && arrangement === 'offset-rows' ? 2 : 1
  const small = at(least, 3)
  const across = at(least + 1, 3).width - small.width
  const down = (at(least, 5).height - small.height) / 2
  const found: Candidate[] = []
  for (const columns of near(small.width - (least - 1) * across, across, wish.width, least))
    for (const rows of near(small.height - 2 * down, down, wish.height, 1)) {
      const counts = { arrangement, columns, rows, alternateRows, rings: 0 }
      if (countPlaces(counts) > MOST_MOTIFS) continue
      const size = at(columns, rows)
      found.push({ ...counts, ...size, miss: missOf(size, wish) })
    }
  return found
}

function ringCandidates(sizeOf: SizeOf, wish: Wish): Candidate[] {
  const at = (rings: number) => sizeOf({ arrangement: 'rings', rings })
  const one = at(1)
  const two = at(2)
  const reach = (wished: number, a: number, b: number) => 1 + (wished - a) / (b - a)
  const best = (reach(wish.width, one.width, two.width) + reach(wish.height, one.height, two.height)) / 2
  const tried = new Set([-1, 0, 1, 2].map((d) => Math.min(MOST_RINGS, Math.max(0, Math.floor(best) + d))))
  return [...tried].map((rings) => {
    const { width, height } = at(rings)
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
