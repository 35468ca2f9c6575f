/** What every map of a plan is drawn from: its rows, marks, numbers and edging, worked out once. */
import type { Plan, Point } from '../../shared-types/plan'
import type { SheetStyle } from '../../shared-types/project'
import { blockingFactors } from '../layout/blanket'
import { blanketOf } from '../plans/layouts'
import { edgingBorder } from './edging-line'
import { edgingShapes } from './edging-shapes'
import type { EdgingShapes } from './edging-shapes'
import type { ColourwayMark } from './marks'
import { colourwayMarks, fillerMarks } from './marks'
import type { Stretch } from './motif-parts'
import { innerLines } from './map-edging'
import { scaleForNumber } from './number-disc'
import { numberPlaces } from './number-places'
import type { NumberPlaces } from './number-places'
import { outerRadius } from './path'
import type { MapRow } from './rows'
import { mapRows, placeColumns, workedByRows } from './rows'

/** What every map of a plan needs, worked out once. */
export interface MapGround {
  readonly plan: Plan
  readonly style: SheetStyle
  readonly rows: readonly MapRow[]
  readonly places: readonly { readonly place: number; readonly x: number }[]
  readonly byRows: boolean
  readonly marks: readonly ColourwayMark[]
  readonly fillerMarks: readonly ColourwayMark[]
  /** Tip radius in plan mm. */
  readonly tip: number
  readonly numbers: NumberPlaces
  /** The outer border of the edging, in plan mm. */
  readonly edge: readonly (readonly Point[])[]
  /** The lines that it begins at, round the motifs. */
  readonly inner: readonly (readonly Point[])[]
  /** Its written rounds as they are; null without any. */
  readonly shapes: EdgingShapes | null
  readonly stretch: Stretch
}

/** Motifs from which on a blanket counts as large: its edging is drawn with no more detail than print can show. */
const LARGE = 600
/** Parts of a motif's radius that the line of an edging is drawn to. */
const FINE_DETAIL = 200
const COARSE_DETAIL = 40

/** Prepares a plan for its maps. */
export function mapGround(plan: Plan, style: SheetStyle): MapGround {
  const { settled } = plan
  const rows = mapRows(plan)
  const outlines = plan.accounts.length > 0 ? plan.accounts : plan.motif ? [plan.motif] : []
  // As the plan takes them: a factor that was refused stretches nothing.
  const { width: x, height: y } = blockingFactors(blanketOf(settled))
  const stretch = { x, y }
  const looks = {
    ...{ plan, style, stretch },
    marks: colourwayMarks(plan),
    fillerMarks: fillerMarks(plan),
  }
  const tip = Math.max(0, ...outlines.map(({ outline }) => outerRadius(outline)))
  return {
    ...looks,
    rows,
    places: placeColumns(plan, rows),
    byRows: workedByRows(rows),
    tip: tip * Math.max(stretch.x, stretch.y),
    numbers: numberPlaces(looks),
    shapes: edgingShapes(plan),
    inner: innerLines({ plan }),
    edge: edgingBorder(plan, tip / (plan.motifs.length > LARGE ? COARSE_DETAIL : FINE_DETAIL)),
  }
}

/** Whether halves that have no room for their number as wholes have it carry it along their straight side. */
export const areHalvesTurned = ({ plan }: Pick<MapGround, 'plan'>): boolean => plan.motifs.length > LARGE

/** The smallest scale, in printed mm per plan mm, at which the motifs can carry their numbers at 7 pt. */
export function smallestNumberedScale({ plan, numbers }: MapGround): number {
  if (!numbers.motif) return Infinity
  // Rings are left out where a half has no room for them; a large map would take four times as many sheets for its halves.
  const halves = areHalvesTurned({ plan }) ? [] : [...numbers.halves.values()]
  return Math.max(
    scaleForNumber(numbers.motif),
    ...[...numbers.byMotif.values()].map(scaleForNumber),
    ...halves.map((half) => scaleForNumber({ ...half, marks: [] })),
  )
}

/** Every entry of the key: the colourways of the motifs, then those of the fillers. */
export const keyMarks = ({ marks, fillerMarks }: MapGround): readonly ColourwayMark[] =>
  fillerMarks.length > 0 ? [...marks, ...fillerMarks] : marks
