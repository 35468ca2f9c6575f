/**
 * M35: how a levelling edging fills the dips of an edge. From tip to tip every stitch is as tall as the edge lies deep
 * under it; where the tallest does not reach and the dip is wide there, rows worked back and forth fill it first.
 */
import type { Finding } from '../../shared-types/finding'
import type { EdgingDip } from '../../shared-types/plan'
import type { Terms } from '../../shared-types/project'
import { finding } from '../findings/finding'
import { fineLengthValue, lengthValue } from '../findings/quantities'
import { remembered } from '../memo'
import type { ResolvedGauge } from '../stitches/gauge'
import { stitchAbbreviation } from '../stitches/terms'
import type { StitchKey } from '../stitches/table'
import { formatNumber } from '../units/format'
import type { Millimetres } from '../units/quantity'
import { EDGING } from './constants'

/** A dip of an edge under the straight line from tip to tip, in mm. */
export interface EdgeDip {
  readonly width: Millimetres
  /** The edge from one tip to the next: how far along, and how deep under the line. */
  readonly profile: readonly { readonly along: Millimetres; readonly depth: Millimetres }[]
}

/** Stitches that may fill a dip, the shortest first: who levels an edge reaches for these (common practice). */
const FILLING = ['sc', 'hdc', 'dc', 'tr', 'dtr'] as const satisfies readonly StitchKey[]

/** How deep the edge lies at each of these places, from the first on, as seen from the line; 0 beside the dip. */
function depthsAt({ profile, width }: EdgeDip, places: readonly Millimetres[]): Millimetres[] {
  const depths = places.map(() => Infinity)
  for (let i = 1; i < profile.length; i++) {
    const [a, b] = [profile[i - 1]!, profile[i]!]
    const [left, right] = a.along < b.along ? [a, b] : [b, a]
    const span = right.along - left.along
    for (let k = firstFrom(places, left.along); k < places.length && places[k]! <= right.along; k++) {
      const along = places[k]!
      const at =
        span > 0 ? left.depth + ((right.depth - left.depth) * (along - left.along)) / span : left.depth
      if (at < depths[k]!) depths[k] = at
    }
  }
  return depths.map((depth, k) => (places[k]! <= 0 || places[k]! >= width || depth === Infinity ? 0 : depth))
}

/** Which of the places is the first that is as far along. */
function firstFrom(places: readonly Millimetres[], along: Millimetres): number {
  let [from, to] = [0, places.length]
  while (from < to) {
    const middle = (from + to) >> 1
    if (places[middle]! < along) from = middle + 1
    else to = middle
  }
  return from
}

interface Leveling {
  /** The stitch of the round itself. */
  readonly own: StitchKey
  readonly gauge: ResolvedGauge
}

/** The stitches that a round may take for its own and for taller ones, the shortest first. */
function stitchesFrom({ own, gauge }: Leveling): StitchKey[] {
  const taller = FILLING.filter((stitch) => gauge.height(stitch) > gauge.height(own))
  return [own, ...taller]
}

/** The stitch nearest in height to what is needed; null where even the tallest is too short by half a step. */
function nearestStitch(
  needed: Millimetres,
  stitches: readonly StitchKey[],
  heights: readonly Millimetres[],
): StitchKey | null {
  const [tallest = 0, before = 0] = [heights.at(-1), heights.at(-2)]
  if (needed > tallest + (tallest - before) / 2) return null
  let best = 0
  heights.forEach((height, i) => {
    if (Math.abs(height - needed) < Math.abs(heights[best]! - needed)) best = i
  })
  return stitches[best]!
}

/** How a dip is filled; null where the stitch of the round does it. */
function fillDip(dip: EdgeDip, leveling: Leveling): EdgingDip | null {
  const { own, gauge } = leveling
  const { width: stitch } = gauge
  const count = Math.round(dip.width / stitch)
  if (count === 0) return null
  const step = dip.width / count
  const stitches = stitchesFrom(leveling)
  // A stitch stands on what is under both of its edges: the bottom of a cleft is no ground.
  const edges = depthsAt(
    dip,
    Array.from({ length: count + 1 }, (_, i) => i * step),
  )
  const depths = Array.from({ length: count }, (_, i) => (edges[i]! + edges[i + 1]!) / 2)
  const depth = Math.max(...depths)
  const heights = stitches.map((each) => gauge.height(each))
  const chosen = depths.map((each) => nearestStitch(heights[0]! + each, stitches, heights))
  if (chosen.every((each) => each === own)) return null
  const tallest = stitches.at(-1)!
  const [first, last] = [chosen.indexOf(null), chosen.lastIndexOf(null)]
  const deepest = Math.max(...dip.profile.map((point) => point.depth))
  const told = { count: 1, width: dip.width, depth: deepest }
  // Two stitches, one into either side, close a cleft; what lies below stays open, as between petals.
  if (first < 0 || last - first < EDGING.cleft)
    return { ...told, work: runs(chosen.map((each) => each ?? tallest)), rows: [], cleft: first >= 0 }
  const rows = rowsOf(dip, depth, leveling)
  return { ...told, work: [{ stitch: own, count }], ...rows, cleft: false }
}

/** Stitches of a kind in a row, together. */
function runs(stitches: readonly StitchKey[]): EdgingDip['work'] {
  const told: { stitch: StitchKey; count: number }[] = []
  for (const stitch of stitches) {
    const last = told.at(-1)
    if (last?.stitch === stitch) last.count++
    else told.push({ stitch, count: 1 })
  }
  return told
}

/** Rows that fill a dip, from its bottom up: each as long as the dip is wide there. */
function rowsOf(
  dip: EdgeDip,
  depth: Millimetres,
  { own, gauge }: Leveling,
): Pick<EdgingDip, 'rows' | 'rowStitch'> {
  const rowStitch = own === 'sl st' || own === 'ch' ? 'sc' : own
  const count = Math.max(1, Math.round(depth / gauge.height(rowStitch)))
  const places = EDGING.dipSamples * Math.max(1, Math.ceil(dip.width / gauge.width))
  const depths = depthsAt(
    dip,
    Array.from({ length: places }, (_, i) => ((i + 0.5) * dip.width) / places),
  )
  const rows = Array.from({ length: count }, (_, row) => {
    const level = depth * (1 - (row + 0.5) / count)
    const wide = (depths.filter((each) => each > level).length * dip.width) / places
    return Math.max(1, Math.round(wide / gauge.width))
  })
  return { rows, rowStitch }
}

/** What levels an edge. */
export interface Level {
  /** Dips that are filled in one way, once. */
  readonly dips: readonly EdgingDip[]
  /** Stitches of the first round besides its own, by US key. */
  readonly taller: Readonly<Partial<Record<StitchKey, number>>>
  /** Stitches of all rows, which are of `rowStitch`, with a slip stitch at both ends of each. */
  readonly inRows: number
  readonly rowStitch: StitchKey
  readonly rows: number
  /** Dips that are filled with rows: each has yarn of its own. */
  readonly filled: number
}

/** Levels dips with a first round of a stitch: once, however often its yarn is told while a work grows. */
export const levelDips = remembered(level)

function level(dips: readonly EdgeDip[], own: StitchKey, gauge: ResolvedGauge): Level {
  const kinds = new Map<string, EdgingDip>()
  for (const dip of dips) {
    const filled = fillDip(dip, { own, gauge })
    if (!filled) continue
    const key = JSON.stringify([filled.work, filled.rows])
    const known = kinds.get(key)
    kinds.set(
      key,
      known
        ? {
            ...known,
            count: known.count + 1,
            width: Math.max(known.width, filled.width),
            depth: Math.max(known.depth, filled.depth),
          }
        : filled,
    )
  }
  const told = [...kinds.values()].sort((a, b) => b.count - a.count || b.depth - a.depth)
  const taller: Partial<Record<StitchKey, number>> = {}
  for (const { work, count } of told)
    for (const { stitch, count: each } of work)
      if (stitch !== own) taller[stitch as StitchKey] = (taller[stitch as StitchKey] ?? 0) + count * each
  const sum = (of: (dip: EdgingDip) => number) => told.reduce((total, dip) => total + dip.count * of(dip), 0)
  return {
    dips: told,
    taller,
    inRows: sum(({ rows }) => rows.reduce((total, each) => total + each, 0)),
    rowStitch: (told.find(({ rowStitch }) => rowStitch)?.rowStitch as StitchKey | undefined) ?? 'sc',
    rows: sum(({ rows }) => rows.length),
    filled: sum(({ rows }) => (rows.length > 0 ? 1 : 0)),
  }
}

/** A warning where dips are too deep for any stitch. */
export function deepDips({ dips }: Level, own: StitchKey, terms: Terms, gauge: ResolvedGauge): Finding[] {
  const deep = dips.filter(({ rows }) => rows.length > 0)
  if (deep.length === 0) return []
  const tallest = stitchesFrom({ own, gauge }).at(-1)!
  const most = (of: (dip: EdgingDip) => number) => Math.max(...deep.map(of))
  const values = {
    count: deep.reduce((sum, { count }) => sum + count, 0),
    depth: fineLengthValue(most(({ depth }) => depth)),
    width: lengthValue(most(({ width }) => width)),
    stitch: stitchAbbreviation(tallest, terms),
    reach: fineLengthValue(gauge.height(tallest) - gauge.height(own)),
    rows: formatNumber(most(({ rows }) => rows.length)),
  }
  return [finding('edging/deep-dips', 'layout.edging.style', values)]
}
