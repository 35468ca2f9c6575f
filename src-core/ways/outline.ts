/** The outline that a blanket is cut out in, as a way to a size: under it whole motifs come and go. */
import type { OutlineShape, Project } from '../../shared-types/project'
import type { WishedSize } from '../../shared-types/ways'
import { BLANKET } from '../fields/blanket'
import { isWithin } from '../fields/field'
import { holds } from '../joins/holding'
import type { BlanketCounts } from '../layout/blanket'
import type { Tryout } from '../layout/trials'
import { blanketOf } from '../plans/layouts'
import { atPoint } from '../layout/outline'
import { rowsStanding } from '../layout/standing'
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

/**
 * Counts that reach to the edge of an outline in their middle, with motifs added in pairs beside those that are asked
 * for; `tight` takes away, too, what lies beyond it.
 */
function reaching(tryout: Tryout, outline: Size, [across, down]: More, tight = false): BlanketCounts {
  const { counts, trials } = tryout
  const { column, rows } = trials.lattice(counts)
  const row = (rows[0] + rows[1]) / 2
  /** How many middles lie within a length, of an odd or an even number of them about its own middle. */
  const within = (length: Millimetres, pitch: Millimetres, many: number): number => {
    const halves = (length + ON_EDGE) / (2 * pitch)
    const inside = many % 2 === 1 ? 2 * Math.floor(halves) + 1 : 2 * Math.floor(halves + 0.5)
    return tight ? Math.max(inside, 2 - (many % 2)) : Math.max(inside, many)
  }
  if (counts.arrangement === 'rings')
    return { ...counts, rings: (within(outline.height, row, 2 * counts.rings + 1) - 1) / 2 }
  return {
    ...counts,
    columns: within(outline.width, column, counts.columns + across),
    rows: within(outline.height, row, counts.rows + down),
  }
}

/** A middle that lies on the edge lies within, as for the outline itself. */
const ON_EDGE: Millimetres = 0.02

/** An outline that was tried, and how far what is left under it is off the wish. */
interface Tried extends OutlineStep {
  readonly off: Millimetres
  readonly size: Size
}

/** Tries outlines by factors for their width and height; each size that comes of them is kept once. */
function outlineTrials(
  project: Project,
  box: Size,
  tryout: Tryout,
  wish: WishedSize,
  planner: Planner,
  isTight = false,
) {
  const { units } = settled(project)
  const tried = new Map<string, Tried>()
  const middles: readonly More[] = tryout.counts.arrangement === 'rings' ? MORE.slice(0, 1) : MORE
  /** How near an outline comes at best. */
  const attempt = (wider: number, longer: number): Millimetres => {
    const outline = { width: box.width * wider, height: box.height * longer }
    if (!isWithin(outline.width, BLANKET.outlineWidth) || !isWithin(outline.height, BLANKET.outlineHeight))
      return Infinity
    const change: Change = {
      kind: 'outline',
      words: outlineWay(outline, wider !== longer, units),
      edit: (before) => inMiddle(withOutlineBy(before, wider, longer)),
    }
    const changed = change.edit(project)
    return middles.reduce<Millimetres>((nearest, more) => {
      const counts = reaching(tryout, outline, more, isTight)
      const size = planner.size(withCounts(changed, tryout.counts, counts, true))
      if (!size) return nearest
      const name = `${size.width.toFixed(2)} ${size.height.toFixed(2)}`
      const off = offBy(size, wish)
      if (!tried.has(name)) tried.set(name, { change, counts, off, size })
      return Math.min(nearest, off)
    }, Infinity)
  }
  const nearestFirst = (most: number = WAYS.outlines): Tried[] =>
    [...tried.values()].sort((a, b) => a.off - b.off).slice(0, most)
  return { attempt, nearestFirst }
}

/** Factors from the middle outwards, in whole millimetres of the outline. */
function around(factor: number, length: Millimetres, reach = length * factor * WAYS.outlineReach): number[] {
  const step = Math.max(1, Math.round(reach / WAYS.outlineTries))
  const middle = Math.round(length * factor)
  return Array.from({ length: 2 * WAYS.outlineTries + 1 }, (_, i) => {
    const away = (i % 2 === 1 ? 1 : -1) * Math.ceil(i / 2) * step
    return (middle + away) / length
  })
}

/** A rectangle and a triangle have a height of their own. */
export const hasOwnHeight = ({ kind }: OutlineShape): boolean => kind === 'rectangle' || kind === 'triangle'

/** The outlines near a size that leave different motifs, those that come nearest to it first. */
export function outlineSteps(
  project: Project,
  tryout: Tryout,
  wish: WishedSize,
  planner: Planner,
): readonly OutlineStep[] {
  const asked = blanketOf(project)?.outlineShape
  const box = boxOfOutline(asked)
  const now = planner.size(project)
  // What is made is not cut away, and nobody asked for a whole number of it.
  if (!asked || !box || !now || isBegun(project)) return []
  const { attempt, nearestFirst } = outlineTrials(project, box, tryout, wish, planner)
  const { width = now.width, height = now.height } = wish
  const [across, down] = [width / now.width, height / now.height]
  const both = wish.width !== undefined ? across : down
  for (const factor of around(both, box.width)) attempt(factor, factor)
  if (hasOwnHeight(asked)) for (const longer of around(down, box.height)) attempt(across, longer)
  return nearestFirst()
}

/**
 * A project whose outline is as large as leaves whole motifs nearest to a size: motifs stand within an outline by their
 * middles, so that one of the size itself leaves up to a motif less. What holds goes before what comes nearest.
 */
export const outlineToward = (project: Project, wish: Size, planner: Planner): Project =>
  outlinesToward(project, wish, planner, 1)[0] ?? project

/** The same for the first `most` of them that hold, the nearest first; never none. */
export function outlinesToward(
  project: Project,
  wish: Size,
  planner: Planner,
  most: number,
): readonly Project[] {
  const asked = blanketOf(project)?.outlineShape
  const box = boxOfOutline(asked)
  const tryout = planner.tryout(project)
  if (!asked || !box || !tryout || isBegun(project)) return [project]
  const { attempt, nearestFirst } = outlineTrials(project, box, tryout, wish, planner, true)
  /** The factor by which an outline comes nearest, of those around the wish itself. */
  const best = (side: 'width' | 'height', offUnder: (factor: number) => Millimetres): number => {
    const reach = Math.max(wish[side] * WAYS.outlineReach, WAYS.outlinePitches * column)
    return around(wish[side] / box[side], box[side], reach).reduce<[number, Millimetres]>(
      ([nearest, least], factor) => {
        const off = offUnder(factor)
        return off < least ? [factor, off] : [nearest, least]
      },
      [1, Infinity],
    )[0]
  }
  const { column } = tryout.trials.lattice(tryout.counts)
  if (hasOwnHeight(asked)) {
    // One side after the other, and the first again, since what is left of each hangs on both.
    const first = best('width', (wider) => attempt(wider, wish.height / box.height))
    const longer = best('height', (height) => attempt(first, height))
    best('width', (wider) => attempt(wider, longer))
  } else best('width', (factor) => attempt(factor, factor))
  const laidBy = ({ change, counts, off }: Tried) => {
    const changed = withCounts(change.edit(project), tryout.counts, counts, true)
    return { changed, off, numbers: planner.numbers(changed) ?? planner.plan(changed) }
  }
  // Of a triangle one that comes to a point is worth half a motif, as an even edge is.
  const half = tryout.trials.ground.account.overTips / 2
  const isPointed = ({ change, counts, size }: Tried): boolean =>
    Math.max(Math.abs(size.width - wish.width), Math.abs(size.height - wish.height)) <= half &&
    atPoint(rowsStanding(withCounts(change.edit(project), tryout.counts, counts, true)), asked) === 1
  const pointed = asked.kind === 'triangle' ? nearestFirst(WAYS.outlinesPointed).filter(isPointed) : []
  const laid = [...pointed.slice(0, WAYS.outlines), ...nearestFirst()].map(laidBy)
  const firm = laid.filter(({ numbers }) => numbers.motifs.length > 1 && holds(numbers))
  if (firm.length > 0) return firm.slice(0, most).map(({ changed }) => changed)
  const now = planner.size(project)
  const isNearer = laid[0] && !(now && offBy(now, wish) <= laid[0].off)
  return [isNearer ? laid[0]!.changed : project]
}

/**
 * A project whose outline is scaled by a factor, as it is and with one motif more in a row, a row, or both, so that its
 * middle lies on a motif or between two; each with counts that reach to its edges. None beyond the bounds of outlines.
 */
export function outlinesScaled(project: Project, factor: number, planner: Planner): readonly Project[] {
  const asked = blanketOf(project)?.outlineShape
  const box = boxOfOutline(asked)
  const tryout = planner.tryout(project)
  if (!asked || !box || !tryout) return []
  const outline = { width: box.width * factor, height: box.height * factor }
  if (!isWithin(outline.width, BLANKET.outlineWidth) || !isWithin(outline.height, BLANKET.outlineHeight))
    return []
  const changed = inMiddle(withOutlineBy(project, factor, factor))
  const middles: readonly More[] = tryout.counts.arrangement === 'rings' ? MORE.slice(0, 1) : MORE
  return middles.map((more) =>
    withCounts(changed, tryout.counts, reaching(tryout, outline, more, true), true),
  )
}

/** A project whose outline is so much wider and longer, in mm, with counts that reach to its edges. */
export function outlineGrown(
  project: Project,
  wider: Millimetres,
  longer: Millimetres,
  planner: Planner,
): Project {
  const asked = blanketOf(project)?.outlineShape
  const box = boxOfOutline(asked)
  const tryout = planner.tryout(project)
  const isSame = wider === 0 && longer === 0
  if (!asked || !box || !tryout || isSame || isBegun(project)) return project
  const across = 1 + wider / box.width
  const [x, y] = hasOwnHeight(asked) ? [across, 1 + longer / box.height] : [across, across]
  const outline = { width: box.width * x, height: box.height * y }
  if (!isWithin(outline.width, BLANKET.outlineWidth) || !isWithin(outline.height, BLANKET.outlineHeight))
    return project
  const counts = reaching(tryout, outline, MORE[0], true)
  return withCounts(inMiddle(withOutlineBy(project, x, y)), tryout.counts, counts, true)
}
