/** M20–M26: a blanket of one motif, laid out: where every motif stands and how large the whole becomes. */
import type { Finding } from '../../shared-types/finding'
import type { AlternateRows, Arrangement, BlanketLayout } from '../../shared-types/project'
import { BLANKET } from '../fields/blanket'
import { boundsOf, isWithin } from '../fields/field'
import { finding } from '../findings/finding'
import { boxOf } from '../geometry/points'
import type { Box, Outline } from '../geometry/points'
import { formatNumber } from '../units/format'
import type { Degrees, Millimetres } from '../units/quantity'
import { MOST_MOTIFS } from './constants'
import type { Lattice } from './lattice'
import { countPlaces, placesOf, rowSpans } from './places'
import type { Place, PlaceCounts } from './places'
import { DEFAULTS } from '../settled'

export interface BlanketCounts extends PlaceCounts {
  readonly turn: Degrees
  readonly alternateTurn: Degrees
}

export interface Placement extends Place {
  /** Centre in mm, from the top left of the box round all outlines. */
  readonly x: Millimetres
  readonly y: Millimetres
  readonly turn: Degrees
  /** Stands on an even row: takes the lattice's second outline. */
  readonly even: boolean
}

export interface Laid {
  readonly placements: readonly Placement[]
  readonly lattice: Lattice
  readonly width: Millimetres
  readonly height: Millimetres
}

/** The fields of a blanket that its counts are read from. */
export type CountFields = Pick<BlanketLayout, (typeof COUNT_FIELDS)[number]>

export const COUNT_FIELDS = [
  'arrangement',
  'columns',
  'rows',
  'alternateRows',
  'rings',
  'turn',
  'alternateTurn',
] as const

/** Reads the counts of a blanket; what the arrangement does not use is neither read nor checked. */
export function blanketCounts(layout: CountFields): { counts: BlanketCounts | null; findings: Finding[] } {
  const findings: Finding[] = []
  const arrangement: Arrangement = layout.arrangement ?? DEFAULTS.blanket.arrangement
  const alternateRows: AlternateRows = layout.alternateRows ?? DEFAULTS.blanket.alternateRows
  const whole = (key: 'columns' | 'rows' | 'rings', least: number = BLANKET[key].least): number => {
    const value = layout[key]
    const { most } = BLANKET[key]
    if (value !== undefined && isWithin(value, { ...BLANKET[key], least })) return value
    findings.push(
      finding('layout/count', `layout.${key}`, {
        what: key,
        received: value === undefined ? 'nothing' : formatNumber(value, 3),
        least,
        most: formatNumber(most),
      }),
    )
    return least
  }
  const rings = arrangement === 'rings' ? whole('rings') : 0
  const fewestColumns = arrangement === 'offset-rows' && alternateRows === 'oneFewer' ? 2 : 1
  const columns = arrangement === 'rings' ? 0 : whole('columns', fewestColumns)
  const rows = arrangement === 'rings' ? 0 : whole('rows')
  // Whole turns change nothing, and sines of numbers beyond all measure mean nothing.
  const turn = (layout.turn ?? DEFAULTS.blanket.turn) % 360
  const alternateTurn =
    arrangement === 'rings' ? 0 : (layout.alternateTurn ?? DEFAULTS.blanket.alternateTurn) % 360
  const counts = { arrangement, columns, rows, alternateRows, rings, turn, alternateTurn }
  if (findings.length === 0 && countPlaces(counts) > MOST_MOTIFS)
    findings.push(
      finding('layout/too-many', 'layout', {
        received: formatNumber(countPlaces(counts)),
        most: formatNumber(MOST_MOTIFS),
      }),
    )
  return { counts: findings.length === 0 ? counts : null, findings }
}

/** The factors by which blocking stretches the whole blanket; unusable ones are reported and taken as 1. */
export function blockingFactors(layout: BlanketLayout | null): {
  width: number
  height: number
  findings: Finding[]
} {
  const findings: Finding[] = []
  const factor = (key: 'width' | 'height'): number => {
    const field = key === 'width' ? BLANKET.wider : BLANKET.longer
    const value = layout?.blocking?.[key] ?? DEFAULTS.blocking[key]
    if (isWithin(value, field)) return value
    findings.push(
      finding('layout/blocking', `layout.blocking.${key}`, {
        received: formatNumber(value, 3),
        ...boundsOf(field),
      }),
    )
    return 1
  }
  return { width: factor('width'), height: factor('height'), findings }
}

/** The box round all outlines, from the first motif of row 1: only the ends of rows can stick out. */
function extent(lattice: Lattice, counts: BlanketCounts, ys: Float64Array): Box {
  const boxes = lattice.outlines.map((outline: Outline) => boxOf(outline)) as [Box, Box]
  let left = Infinity
  let right = -Infinity
  let top = Infinity
  let bottom = -Infinity
  for (const { row, start, count } of rowSpans(counts)) {
    const box = boxes[isEven(counts, row) ? 1 : 0]
    const y = ys[row - 1]!
    left = Math.min(left, (start * lattice.column) / 2 + box.left)
    right = Math.max(right, ((start + 2 * (count - 1)) * lattice.column) / 2 + box.right)
    top = Math.min(top, y + box.top)
    bottom = Math.max(bottom, y + box.bottom)
  }
  return { left, top, right, bottom }
}

const rowCount = ({ arrangement, rows, rings }: BlanketCounts): number =>
  arrangement === 'rings' ? 2 * rings + 1 : rows

const isEven = (counts: BlanketCounts, row: number): boolean =>
  counts.arrangement !== 'rings' && row % 2 === 0

/** Where each row stands under the first. */
function rowOffsets(lattice: Lattice, rows: number): Float64Array {
  const ys = new Float64Array(rows)
  for (let row = 1; row < rows; row++) ys[row] = ys[row - 1]! + lattice.rows[row % 2 === 1 ? 0 : 1]
  return ys
}

/** Size in mm of the box round all outlines, without laying out each motif for the caller. */
export function blanketSize(
  lattice: Lattice,
  counts: BlanketCounts,
): { width: Millimetres; height: Millimetres } {
  const box = extent(lattice, counts, rowOffsets(lattice, rowCount(counts)))
  return { width: box.right - box.left, height: box.bottom - box.top }
}

/** Every motif with its centre from the top left of the box round all outlines, row by row. */
export function layBlanket(lattice: Lattice, counts: BlanketCounts): Laid {
  const ys = rowOffsets(lattice, rowCount(counts))
  const box = extent(lattice, counts, ys)
  const placements = placesOf(counts).map((place): Placement => {
    const even = isEven(counts, place.row)
    return {
      id: place.id,
      row: place.row,
      column: place.column,
      halves: place.halves,
      x: (place.halves * lattice.column) / 2 - box.left,
      y: ys[place.row - 1]! - box.top,
      turn: lattice.turns[even ? 1 : 0],
      even,
    }
  })
  return { placements, lattice, width: box.right - box.left, height: box.bottom - box.top }
}
