/** An arrangement that fits, as a project has it once it is taken. */
import type { FitArrangement } from '../../shared-types/plan'
import type { BlanketLayout, Project } from '../../shared-types/project'
import { blanketOf } from '../plans/layouts'
import { layoutOf } from './candidates'
import { countsOf } from './standing'

/** The fields of a blanket that a fit fills: counts, rotation and all. */
export function layoutOfFit(project: Project, fit: FitArrangement): Partial<BlanketLayout> {
  const outlineShape = outlineIn(project, fit)
  return { ...layoutOf(fit), ...(outlineShape && { outlineShape }) }
}

/** The outline that a fit is cut out in: the same object where it is as large as now, so that it stays where it lies. */
function outlineIn(project: Project, { outline }: FitArrangement): BlanketLayout['outlineShape'] {
  const now = blanketOf(project)?.outlineShape
  if (!now || !outline || (now.size === outline.size && now.height === outline.height)) return now
  const { size: _size, height: _height, ...shape } = now
  return { ...shape, ...outline }
}

/** Whether a blanket is laid out as a fit says. */
export function isLaidAs(project: Project, fit: FitArrangement): boolean {
  const outline = blanketOf(project)?.outlineShape
  const counts = countsOf(project)
  return (
    counts !== null &&
    counts.arrangement === fit.arrangement &&
    counts.turn === fit.turn &&
    counts.rings === fit.rings &&
    counts.columns === fit.columns &&
    counts.rows === fit.rows &&
    counts.alternateTurn === fit.alternateTurn &&
    (fit.arrangement !== 'offset-rows' || counts.alternateRows === fit.alternateRows) &&
    outline?.size === fit.outline?.size &&
    outline?.height === fit.outline?.height
  )
}
