/** M19: the shape that a blanket is cut out in: motifs whose middle lies outside of it are left out. */
import type { Finding } from '../../shared-types/finding'
import type { Point } from '../../shared-types/plan'
import type { OutlineShape, UnitSystem } from '../../shared-types/project'
import { BLANKET } from '../fields/blanket'
import { isWithin } from '../fields/field'
import { finding } from '../findings/finding'
import { boundValues, lengthValue } from '../findings/quantities'
import { indexEdges, selfCrossing } from '../geometry/edges'
import { boxOf, contains, moveOutline, scaleOutline } from '../geometry/points'
import type { Outline } from '../geometry/points'
import { readPath } from '../geometry/svg-path'
import { formatSize } from '../units/format'
import type { Millimetres } from '../units/quantity'
import { blanketSize } from './blanket'
import type { BlanketCounts, OutlineMiddle, OutlineTest } from './blanket'
import type { Lattice } from './lattice'
import { outlineMiddle } from './outline-middle'

export interface CutOut {
  /** About its middle; null where nothing is cut out. */
  readonly shape: Outline | null
  readonly test: OutlineTest | undefined
  readonly findings: readonly Finding[]
}

const NOTHING: CutOut = { shape: null, test: undefined, findings: [] }

/** A middle that lies on the outline to so much of a millimetre lies within it. */
const ON_OUTLINE: Millimetres = 0.01

/** Corners of the polygon that stands for a circle: it misses no middle by more than a hundredth of its size. */
const CIRCLE_CORNERS = 180

/** Reads the outline that is asked for. */
export function cutOut(asked: OutlineShape | undefined): CutOut {
  if (!asked?.kind) return NOTHING
  const findings: Finding[] = []
  const measure = (key: 'size' | 'height'): Millimetres | null => {
    const value = asked[key]
    const bounds = BLANKET[key === 'size' ? 'outlineWidth' : 'outlineHeight']
    if (value === undefined && key === 'height') return null
    if (value !== undefined && isWithin(value, bounds)) return value
    if (value === undefined && asked.kind === 'path') return null
    const received = value === undefined ? 'nothing' : lengthValue(value)
    const values = { what: key === 'size' ? 'width' : 'height', received, ...boundValues(bounds) }
    findings.push(finding('layout/outline-size', `layout.outlineShape.${key}`, values))
    return null
  }
  const width = measure('size')
  const height = measure('height')
  const drawn = asked.kind === 'path' ? pathOutline(asked.path ?? '', width, findings) : null
  if (findings.length > 0 || (width === null && !drawn)) return { ...NOTHING, findings }
  const shape = drawn ?? shapeOf(asked, width!, height)
  const rim = scaleOutline(shape, 1 + ON_OUTLINE / reach(shape))
  const test = { contains: (middle: Point) => contains(rim, middle), middle: middleAsked(asked) }
  return { shape, test, findings }
}

/** Where the middle is asked for; what cannot be used is told by the checks of bounds. */
function middleAsked({ middle }: OutlineShape): OutlineMiddle {
  const { row, place } = middle ?? {}
  return {
    ...(row !== undefined && isWithin(row, BLANKET.outlineRow) && { row }),
    ...(place !== undefined && isWithin(place, BLANKET.outlinePlace) && { place }),
  }
}

/** How many motifs stand in the row at the point of a triangle, of rows from the top; 0 without one. */
export const atPoint = (lengths: readonly number[], outline: OutlineShape | undefined): number =>
  outline?.kind !== 'triangle' ? 0 : ((outline.points === 'up' ? lengths[0] : lengths.at(-1)) ?? 0)

const reach = (shape: Outline): Millimetres => {
  const box = boxOf(shape)
  return Math.max(box.right, box.bottom, 1)
}

function shapeOf({ kind, points }: OutlineShape, width: Millimetres, asked: Millimetres | null): Outline {
  const x = width / 2
  if (kind === 'circle') return regular(CIRCLE_CORNERS, x)
  // Corners to the left and right, as in rings of motifs.
  if (kind === 'hexagon') return regular(6, x)
  // Left out: as high as wide, and of a triangle with three equal sides.
  const y = (asked ?? (kind === 'triangle' ? (width * Math.sqrt(3)) / 2 : width)) / 2
  if (kind === 'triangle') {
    const sign = points === 'up' ? -1 : 1
    const corners = [
      { x: -x, y: -sign * y },
      { x, y: -sign * y },
      { x: 0, y: sign * y },
    ]
    return sign > 0 ? corners : corners.reverse()
  }
  return [
    { x: -x, y: -y },
    { x, y: -y },
    { x, y },
    { x: -x, y },
  ]
}

const regular = (corners: number, radius: Millimetres): Outline =>
  Array.from({ length: corners }, (_, i) => {
    const angle = (2 * Math.PI * i) / corners
    return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) }
  })

/** The outline of path data about its middle, as wide as is asked for; null with a finding where it is none. */
function pathOutline(path: string, width: Millimetres | null, findings: Finding[]): Outline | null {
  const refuse = (trouble: string): null => {
    findings.push(finding('layout/outline-path', 'layout.outlineShape.path', { trouble }))
    return null
  }
  if (path.trim() === '') return refuse('there is none')
  const read = readPath(path)
  if ('trouble' in read) return refuse('it is not path data')
  const pieces = read.subPaths.filter(({ points }) => points.length > 2)
  if (pieces.length !== 1) return refuse(`it draws ${pieces.length} shapes where one is expected`)
  const { points } = pieces[0]!
  const box = boxOf(points)
  const across = box.right - box.left
  if (!(across >= 1 && box.bottom - box.top >= 1)) return refuse('it has no area')
  if (selfCrossing(indexEdges(points))) return refuse('it crosses itself')
  const middled = moveOutline(points, -(box.left + box.right) / 2, -(box.top + box.bottom) / 2)
  return width === null ? middled : scaleOutline(middled, width / across)
}

/** Whether the rows reach to the edges of an outline, across and down. */
export function coverage(cut: CutOut, lattice: Lattice, counts: BlanketCounts) {
  const size = cut.shape ? sizeOf(cut.shape) : { width: 0, height: 0 }
  const full = blanketSize(lattice, counts)
  const [middle, own] = [{}, cut.test?.middle ?? {}].map((asked) => outlineMiddle(lattice, counts, asked))
  const off = { x: Math.abs(own!.x - middle!.x), y: Math.abs(own!.y - middle!.y) }
  const row = (lattice.rows[0] + lattice.rows[1]) / 2
  return {
    ...{ size, full, isAside: Math.max(off.x, off.y) > ON_OUTLINE },
    // What is left of a place is too little for one more motif.
    across: size.width + 2 * off.x < full.width + lattice.column / 2,
    down: size.height + 2 * off.y < full.height + row / 2,
  }
}

const sizeOf = (shape: Outline) => {
  const box = boxOf(shape)
  return { width: box.right - box.left, height: box.bottom - box.top }
}

/** A note where the rows end before the outline does. */
export function outlineReach(
  cut: CutOut,
  lattice: Lattice,
  counts: BlanketCounts,
  units: UnitSystem,
): Finding[] {
  if (!cut.shape) return []
  const { size, full, isAside, across, down } = coverage(cut, lattice, counts)
  if (across && down) return []
  const values = {
    outline: formatSize(size.width, size.height, units),
    rows: formatSize(full.width, full.height, units),
  }
  return [finding(isAside ? 'layout/outline-aside' : 'layout/outline-larger', 'layout.outlineShape', values)]
}
