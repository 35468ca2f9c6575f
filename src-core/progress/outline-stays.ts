/** An outline stays where it lies among the motifs while rows and columns come and go. */
import type { BlanketLayout, Project } from '../../shared-types/project'
import { groundOf } from '../layout/ground'
import { middleOf } from '../layout/outline-middle'
import { coverage } from '../layout/outline'
import { blanketOf } from '../plans/layouts'
import { DEFAULTS } from '../settled'
import { isMarked } from './marks'

/** Counts that move the middle of an arrangement. */
const COUNTS = ['columns', 'rows', 'alternateRows'] as const

/**
 * The project after an edit of its counts, with the outline over the same motifs as before it. Where nothing is made
 * and the rows do not reach to its edges yet, it goes on lying in the middle of them: they are only being filled up.
 */
export function withOutlineStaying(before: Project, after: Project): Project {
  const [was, is] = [blanketOf(before), blanketOf(after)]
  const shape = is?.outlineShape
  if (!is || !shape || was?.outlineShape !== shape) return after
  const kind = ({ arrangement = DEFAULTS.blanket.arrangement }: BlanketLayout) => arrangement
  if (kind(is) !== kind(was)) return shape.middle ? withMiddle(after, is, undefined) : after
  if (kind(is) === 'rings' || COUNTS.every((name) => was[name] === is[name])) return after
  const parts = groundOf(before)
  if (!parts) return after
  const { across, down } = coverage(parts.cut, parts.grid, parts.counts)
  const stays = isMarked(before)
  const { row, place } = { ...middleOf(parts.grid, parts.counts), ...shape.middle }
  const held = {
    ...shape.middle,
    ...((stays || down) && { row: rounded(row) }),
    ...((stays || across) && { place: rounded(place) }),
  }
  const middle = stays ? held : covered(withMiddle(after, is, held), held)
  const isSame = middle.row === shape.middle?.row && middle.place === shape.middle?.place
  return isSame ? after : withMiddle(after, is, middle)
}

/** What of a middle stays where nothing is made: no more than the rows reach round it. */
function covered(after: Project, held: Middle): Middle {
  const parts = groundOf(after)
  if (!parts) return held
  const { across, down } = coverage(parts.cut, parts.grid, parts.counts)
  const { row, place } = held
  return { ...(down && row !== undefined && { row }), ...(across && place !== undefined && { place }) }
}

/**
 * The project after an arrangement was taken as a whole: over what is made the outline stays, else it lies in the
 * middle of it.
 */
export function withOutlineTaken(before: Project, after: Project): Project {
  if (isMarked(before)) return withOutlineStaying(before, after)
  const layout = blanketOf(after)
  return layout?.outlineShape ? withMiddle(after, layout, undefined) : after
}

/** To a millionth of a row: the same motifs lie under it. */
const rounded = (value: number): number => Math.round(value * 1e6) / 1e6

type Middle = NonNullable<NonNullable<BlanketLayout['outlineShape']>['middle']>

function withMiddle(project: Project, layout: BlanketLayout, middle: Middle | undefined): Project {
  const { middle: _, ...shape } = layout.outlineShape ?? {}
  const isTold = middle?.row !== undefined || middle?.place !== undefined
  return { ...project, layout: { ...layout, outlineShape: isTold ? { ...shape, middle } : shape } }
}
