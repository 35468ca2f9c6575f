/** The outline that a blanket is cut out in, as a way to a size: under it whole motifs come and go. */
import type { Project } from '../../shared-types/project'
import type { WishedSize } from '../../shared-types/ways'
import { BLANKET } from '../fields/blanket'
import { isWithin } from '../fields/field'
import type { BlanketCounts } from '../layout/blanket'
import type { Tryout } from '../layout/trials'
import { blanketOf } from '../plans/layouts'
import type { Planner } from '../plans/planner'
import { isBegun } from '../progress/progress'
import { settled } from '../settled'
import type { Millimetres } from '../units/quantity'
import { withCounts } from './changes'
import type { Change } from './changes'
import { WAYS } from './constants'
import { boxOfOutline, inMiddle, withOutlineBy } from './outline-by'
import { offBy } from './size'
import type { Size } from './size'
import { outlineWay } from './words'

/** An outline of another size, and the counts that reach to its edge. */
interface OutlineStep {
  readonly change: Change
  readonly counts: BlanketCounts
}

/** How many more stand in a row and below each other: an odd number moves the middle from a motif to between two. */
const MORE = [
  [0, 0],
  [1, 0],
  [0, 1],
  [1, 1],
] as const
type More = (typeof MORE)[number]

/** Counts that reach to the edge of an outline, with motifs added in pairs beside those that are asked for. */
function reaching(tryout: Tryout, outline: Size, [across, down]: More): BlanketCounts {
  const { counts, trials } = tryout
  const { column, rows } = trials.lattice(counts)
  const row = (rows[0] + rows[1]) / 2
  const missing = (length: Millimetres, pitch: Millimetres, many: number): number =>
    2 * Math.max(0, Math.ceil((Math.floor(length / pitch) + 1 - many) / 2))
  if (counts.arrangement === 'rings')
    return { ...counts, rings: counts.rings + missing(outline.height, row, 2 * counts.rings + 1) / 2 }
  return {
    ...counts,
    columns: counts.columns + across + missing(outline.width, column, counts.columns + across),
    rows: counts.rows + down + missing(outline.height, row, counts.rows + down),
  }
}

/** The outlines near a size that leave different motifs, those that come nearest to it first. */
export function outlineSteps(
  project: Project,
  tryout: Tryout,
  wish: WishedSize,
  planner: Planner,
): OutlineStep[] {
  const asked = blanketOf(project)?.outlineShape
  const box = boxOfOutline(asked)
  const now = planner.size(project)
  // What is made is not cut away, and nobody asked for a whole number of it.
  if (!asked || !box || !now || isBegun(project)) return []
  const { units } = settled(project)
  const tried = new Map<string, OutlineStep & { readonly off: number }>()
  const middles = tryout.counts.arrangement === 'rings' ? MORE.slice(0, 1) : MORE
  const attempt = (wider: number, longer: number): void => {
    const outline = { width: box.width * wider, height: box.height * longer }
    if (!isWithin(outline.width, BLANKET.outlineWidth) || !isWithin(outline.height, BLANKET.outlineHeight))
      return
    const change: Change = {
      kind: 'outline',
      words: outlineWay(outline, wider !== longer, units),
      edit: (before) => inMiddle(withOutlineBy(before, wider, longer)),
    }
    const changed = change.edit(project)
    for (const more of middles) {
      const counts = reaching(tryout, outline, more)
      const size = planner.size(withCounts(changed, tryout.counts, counts, true))
      if (!size) continue
      const name = `${size.width.toFixed(2)} ${size.height.toFixed(2)}`
      if (!tried.has(name)) tried.set(name, { change, counts, off: offBy(size, wish) })
    }
  }
  const { width = now.width, height = now.height } = wish
  const [across, down] = [width / now.width, height / now.height]
  /** From the middle outwards, in whole millimetres of the outline. */
  const around = (factor: number, length: Millimetres): number[] => {
    const step = Math.max(1, Math.round((length * factor * WAYS.outlineReach) / WAYS.outlineTries))
    const middle = Math.round(length * factor)
    return Array.from({ length: 2 * WAYS.outlineTries + 1 }, (_, i) => {
      const away = (i % 2 === 1 ? 1 : -1) * Math.ceil(i / 2) * step
      return (middle + away) / length
    })
  }
  const both = wish.width !== undefined ? across : down
  for (const factor of around(both, box.width)) attempt(factor, factor)
  // A rectangle and a triangle have a height of their own.
  if (asked.kind === 'rectangle' || asked.kind === 'triangle')
    for (const longer of around(down, box.height)) attempt(across, longer)
  return [...tried.values()].sort((a, b) => a.off - b.off).slice(0, WAYS.outlines)
}
