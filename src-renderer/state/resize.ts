/** From a size that a hand or a typed number asks for to the counts that come nearest to it. Lengths in mm. */
import type { Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { blanketOf, patchBlanket } from './edits/layout'

interface Wish {
  readonly width: number
  readonly height: number
}

/** The count that makes `now` mm (with `count` of them) come nearest to `wished`, each adding `pitch`. */
const countFor = (count: number, now: number, wished: number, pitch: number, least: number): number =>
  pitch > 0 ? Math.max(least, Math.round(count + (wished - now) / pitch)) : count

/** The project with the counts that come nearest to `wish`, in the arrangement that it has. */
export function resized(project: Project, plan: Plan, wish: Wish): Project {
  const blanket = blanketOf(project)
  if (!blanket || plan.motifs.length === 0) return project
  const { pitch, size } = plan
  if (blanket.arrangement === 'rings') {
    // A ring more lies on both sides: two columns across, two rows down.
    const across = (wish.width - size.width) / (2 * pitch.column)
    const down = (wish.height - size.height) / (2 * pitch.row)
    const more = Math.abs(across) > Math.abs(down) ? across : down
    const rings = Math.max(0, Math.round((blanket.rings ?? 0) + more))
    return rings === blanket.rings ? project : patchBlanket(project, { rings })
  }
  const isShort = blanket.arrangement === 'offset-rows' && blanket.alternateRows === 'oneFewer'
  const columns = countFor(blanket.columns ?? 1, size.width, wish.width, pitch.column, isShort ? 2 : 1)
  const rows = countFor(blanket.rows ?? 1, size.height, wish.height, pitch.row, 1)
  if (columns === blanket.columns && rows === blanket.rows) return project
  return patchBlanket(project, { columns, rows })
}

/** The same, and the wish is remembered as what the blanket is to be. */
export const fitted = (project: Project, plan: Plan, wish: Wish): Project =>
  patchBlanket(resized(project, plan, wish), { target: { width: wish.width, height: wish.height } })
