/**
 * Polygon algebra through clipper2-ts, in millimetres. Clipper works on whole numbers; `DECIMALS` sets its
 * grid at a tenth of a micrometre, far under anything yarn can do.
 */
import { areaD, ClipType, ClipperD, EndType, FillRule, inflatePathsD, JoinType } from 'clipper2-ts'
import type { PathD, PathsD } from 'clipper2-ts'
import type { Millimetres } from '../units/quantity'
import { signedArea } from './points'
import type { Outline } from './points'

const DECIMALS = 4
/** Largest distance between a rounded corner and its polygon. */
const ARC_TOLERANCE: Millimetres = 0.002

const toPath = (outline: Outline): PathD => outline.map((point) => ({ x: point.x, y: point.y }))
const toOutline = (path: PathD): Outline => path.map((point) => ({ x: point.x, y: point.y }))

function clip(type: ClipType, subject: readonly Outline[], other: readonly Outline[]): PathsD {
  const clipper = new ClipperD(DECIMALS)
  clipper.addSubjectPaths(subject.map(toPath))
  if (other.length > 0) clipper.addClipPaths(other.map(toPath))
  const solution: PathsD = []
  clipper.execute(type, FillRule.NonZero, solution)
  return solution
}

/** Union of outlines: outer contours run clockwise on paper (positive area), holes the other way. */
export function union(outlines: readonly Outline[]): Outline[] {
  return clip(ClipType.Union, outlines.map(clockwise), []).map(toOutline)
}

/** Area in mm² that two sets of outlines share. */
export function sharedArea(a: readonly Outline[], b: readonly Outline[]): number {
  let area = 0
  for (const path of clip(ClipType.Intersection, a.map(clockwise), b.map(clockwise))) area += areaD(path)
  return Math.abs(area)
}

/** What two sets of outlines share, as outlines. */
export function intersection(a: readonly Outline[], b: readonly Outline[]): Outline[] {
  return clip(ClipType.Intersection, a.map(clockwise), b.map(clockwise)).map(toOutline)
}

/** What is left of `a` without `b`. */
export function difference(a: readonly Outline[], b: readonly Outline[]): Outline[] {
  return clip(ClipType.Difference, a.map(clockwise), b.map(clockwise)).map(toOutline)
}

/** Enough for lengths and openings, where a twentieth of a millimetre is nothing. */
export const COARSE: Millimetres = 0.05

/** Outlines grown (or, below zero, shrunk) by `by` mm, corners rounded to within `tolerance` mm. */
export function grow(
  outlines: readonly Outline[],
  by: Millimetres,
  tolerance: Millimetres = ARC_TOLERANCE,
): Outline[] {
  if (by === 0) return [...outlines]
  return inflatePathsD(outlines.map(toPath), by, JoinType.Round, EndType.Polygon, 2, DECIMALS, tolerance).map(
    toOutline,
  )
}

/** One outline grown by half of a gap, so that two of them touch where the gap is kept. */
export function growOne(outline: Outline, by: Millimetres): Outline {
  if (by === 0) return outline
  const grown = grow([clockwise(outline)], by)
  return grown.reduce(
    (best, candidate) => (signedArea(candidate) > signedArea(best) ? candidate : best),
    grown[0]!,
  )
}

/** The same outline, running clockwise on paper. */
export function clockwise(outline: Outline): Outline {
  return signedArea(outline) < 0 ? [...outline].reverse() : outline
}
