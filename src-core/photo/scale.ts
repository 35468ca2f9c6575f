/** What gives a picture its millimetres: a sheet that is found in it, its corners as they were set, or a ruler. */
import type { FindingCode } from '../findings/catalogue'
import type { Told } from '../findings/finding'
import { formatNumber } from '../units/format'
import { smaller } from './homography'
import type { Corners } from './homography'
import type { Picture, Reduced } from './picture'
import { asSheet, bestPose } from './pose'
import type { Pose } from './pose'
import { rulerFault, sheetByRuler } from './ruler'
import type { Ruler } from './ruler'
import { fineCorners, otherCorners } from './sheet-edges'
import type { SheetEdges } from './sheet-edges'
import { findSheet } from './sheet'
import { SHEET_SIZES } from './sheet-sizes'
import type { SheetChoice, SheetName, SheetSize } from './sheet-sizes'

/** Where a sheet stops being good enough to be sure. */
const DOUBT = {
  /** Degrees of tilt. */
  tilt: 40,
  /** Shape of the sheet: misfit of the best camera. */
  misfit: 0.035,
  /** Up to here it has the shape that was asked for, whatever else it may have. */
  likely: 0.01,
  /** From here on an edge that was taken for finer has gone astray where it made the shape so many times as bad. */
  astray: { misfit: 0.02, times: 2.5 },
  /** Another line along an edge is the sheet's where it leaves no more than this share of the misfit, and what is likely. */
  seam: 0.25,
  /** Share of each edge that was found. */
  edges: 0.55,
} as const

/** What is told on the way. */
export type Tell = <Code extends FindingCode>(code: Code, ...values: Told<Code>) => void

export interface Asked {
  readonly sheet: SheetChoice
  /** Corners of the sheet set by hand; found where they are not given. */
  readonly corners?: Corners | undefined
  /** The points of a ruler, where that is chosen. */
  readonly ruler?: Ruler | undefined
}

/** The plane in which the motif lies, as far as it was made out. */
export interface Scale {
  /** Another sheet than was asked for where only that has its shape. */
  readonly name: SheetChoice
  readonly corners: Corners | null
  /** Null where it cannot be measured by; what was told says why. */
  readonly plane: {
    readonly size: SheetSize
    readonly corners: Corners
    /** Standard deviation of the blur across its edges, in pixels; null where it has none. */
    readonly blur: number | null
  } | null
}

const larger = (corners: Corners, { step }: Reduced): Corners =>
  corners.map(({ x, y }) => ({ x: (x + 0.5) * step - 0.5, y: (y + 0.5) * step - 0.5 })) as unknown as Corners

/** The sheet whose shape four sides have by far rather than that of the one that was asked for. */
function otherSheet(
  asked: SheetName,
  misfit: number,
  corners: Corners,
  picture: Picture,
): { name: SheetName; corners: Corners; pose: Pose } | null {
  if ('beside' in SHEET_SIZES[asked]) return null
  const most = Math.min(DOUBT.misfit, misfit / 2)
  for (const [name, sheet] of Object.entries(SHEET_SIZES) as [SheetName, (typeof SHEET_SIZES)[SheetName]][]) {
    if (name === asked || 'beside' in sheet) continue
    const turned = asSheet(corners, sheet, picture)
    if (turned.pose.misfit <= most) return { name, ...turned }
  }
  return null
}

/** By two points on a ruler: one number for the whole picture. A slant is neither seen nor corrected. */
function scaleByRuler(picture: Picture, ruler: Ruler | undefined, tell: Tell): Scale {
  const fault = ruler ? rulerFault(ruler, picture) : 'none are set'
  if (!ruler || fault !== null) {
    tell('photo/ruler-points', { why: fault ?? '' })
    return { name: 'ruler', corners: null, plane: null }
  }
  tell('photo/by-ruler')
  const sheet = sheetByRuler(ruler, picture)
  return { name: 'ruler', corners: sheet.corners, plane: { ...sheet, blur: null } }
}

/**
 * The edges of a sheet from rough corners. A seam of the table beside one of them may be the stronger line: where the
 * shape is off, that of the sheet which another line gives is the sheet's.
 */
function likeliest(picture: Picture, rough: Corners, size: SheetSize): SheetEdges | null {
  const edges = fineCorners(picture, rough)
  if (!edges) return null
  const misfitOf = ({ corners }: SheetEdges) => bestPose(corners, size, picture).misfit
  const misfit = misfitOf(edges)
  if (misfit <= DOUBT.astray.misfit) return edges
  const fitting = otherCorners(picture, rough).filter(
    (each) => each.found >= DOUBT.edges && misfitOf(each) <= DOUBT.likely + DOUBT.seam * misfit,
  )
  return fitting.reduce((best, each) => (misfitOf(each) < misfitOf(best) ? each : best), edges)
}

/** Finds the plane of a picture, `small` being the same picture reduced. */
export function findScale(
  picture: Picture,
  small: Reduced,
  { sheet: asked, corners: given, ruler }: Asked,
  tell: Tell,
): Scale {
  if (asked === 'ruler') return scaleByRuler(picture, ruler, tell)
  let name = asked
  let size: SheetSize = SHEET_SIZES[name]
  const refused = (corners: Corners | null): Scale => ({ name, corners, plane: null })
  const inSmall = given
    ? { corners: smaller(given, small), cutOff: false, known: true }
    : findSheet(small, size)
  if (!inSmall) {
    tell('photo/no-sheet', { sheet: name })
    return refused(null)
  }
  const rough = larger(inSmall.corners, small)
  if (!inSmall.known) {
    tell('photo/sheet-cut-off', { sheet: name })
    return refused(rough)
  }
  const edges = given ? fineCorners(picture, rough) : likeliest(picture, rough, size)
  if (inSmall.cutOff && !(edges && edges.found >= DOUBT.edges)) {
    tell('photo/sheet-cut-off', { sheet: name })
    return refused(rough)
  }
  if (inSmall.cutOff) tell('photo/corner-outside', { sheet: name })
  if (!edges) {
    tell('photo/no-sheet', { sheet: name })
    return refused(rough)
  }
  let corners = given ?? edges.corners
  let pose = bestPose(corners, size, picture)
  const other = !given && pose.misfit > DOUBT.likely ? otherSheet(asked, pose.misfit, corners, picture) : null
  if (other) {
    ;({ name, corners, pose } = other)
    size = SHEET_SIZES[name]
    tell('photo/other-sheet', { sheet: name, asked })
  }
  if (pose.tilt > DOUBT.tilt) tell('photo/tilt', { tilt: formatNumber(pose.tilt, 0), most: DOUBT.tilt })
  // A seam of the table along an edge is as straight as the edge is.
  const isAstray =
    !given &&
    'misfit' in inSmall &&
    pose.misfit > Math.max(DOUBT.astray.misfit, DOUBT.astray.times * inSmall.misfit)
  const isGuessed = inSmall.cutOff && pose.misfit > DOUBT.likely
  if (pose.misfit > DOUBT.misfit || isAstray || isGuessed || edges.found < DOUBT.edges)
    tell('photo/sheet-shape', { sheet: name })
  return { name, corners, plane: { size, corners, blur: edges.blur } }
}
