/** M20–M26, M19: a blanket laid out: where every motif stands and how large the whole becomes. */
import type { Finding } from '../../shared-types/finding'
import type { Point } from '../../shared-types/plan'
import type { AlternateRows, Arrangement, BlanketLayout } from '../../shared-types/project'
import { BLANKET } from '../fields/blanket'
import { boundsOf, isWithin } from '../fields/field'
import { finding } from '../findings/finding'
import { boxOf } from '../geometry/points'
import type { Box } from '../geometry/points'
import { remembered } from '../memo'
import { formatNumber } from '../units/format'
import type { Degrees, Millimetres } from '../units/quantity'
import { LEAST_ROUND, MOST_MOTIFS } from './constants'
import { offPlace } from './blocks'
import { standsAt } from './cells'
import { outlineMiddle } from './outline-middle'
import type { Cells } from './cells'
import { pitchUnder } from './lattice'
import type { Lattice } from './lattice'
import { kindAt } from './pattern'
import { countPlaces, placesOf, rowSpans } from './places'
import type { Place, PlaceCounts } from './places'
import { DEFAULTS } from '../settled'

export interface BlanketCounts extends PlaceCounts {
  readonly turn: Degrees
  readonly alternateTurn: Degrees
  /** The last motif of each row is joined to the first. */
  readonly inTheRound: boolean
}

export interface Placement extends Place {
  /** Centre in mm, from the top left of the box round all outlines. */
  readonly x: Millimetres
  readonly y: Millimetres
  readonly turn: Degrees
  /** Stands on an even row: takes the lattice's second outline. */
  readonly even: boolean
  /** Which of the lattice's shapes it has: the number of its motif. */
  readonly kind: number
  /** How many rows and columns it takes, where that is more than one: it stands in the middle of them. */
  readonly size?: number
}

export interface Laid {
  readonly placements: readonly Placement[]
  readonly lattice: Lattice
  /** Of the box round all outlines. */
  readonly width: Millimetres
  readonly height: Millimetres
  /** Round an open end of what is joined in the round; 0 where nothing is. */
  readonly round: Millimetres
  /** Places that were left out by hand, in the same box. */
  readonly leftOut: readonly Pick<Placement, 'id' | 'x' | 'y'>[]
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
  'inTheRound',
] as const

/** Reads the counts of a blanket; what the arrangement does not use is neither read nor checked. */
export function blanketCounts(layout: CountFields): { counts: BlanketCounts | null; findings: Finding[] } {
  const findings: Finding[] = []
  const arrangement: Arrangement = layout.arrangement ?? DEFAULTS.blanket.arrangement
  const asked: AlternateRows = layout.alternateRows ?? DEFAULTS.blanket.alternateRows
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
  const wantsRound = layout.inTheRound ?? DEFAULTS.blanket.inTheRound
  if (wantsRound && arrangement === 'rings') findings.push(finding('layout/round-rings', 'layout.inTheRound'))
  const inTheRound = wantsRound && arrangement !== 'rings'
  // A row that is shorter than its neighbours does not close.
  const alternateRows = inTheRound ? 'same' : asked
  if (alternateRows !== asked && arrangement === 'offset-rows')
    findings.push(finding('layout/round-rows', 'layout.alternateRows'))
  const rings = arrangement === 'rings' ? whole('rings') : 0
  const fewestColumns = inTheRound
    ? LEAST_ROUND
    : arrangement === 'offset-rows' && alternateRows === 'oneFewer'
      ? 2
      : 1
  const columns = arrangement === 'rings' ? 0 : whole('columns', fewestColumns)
  const rows = arrangement === 'rings' ? 0 : whole('rows')
  // Whole turns change nothing, and sines of numbers beyond all measure mean nothing.
  const turn = (layout.turn ?? DEFAULTS.blanket.turn) % 360
  const alternateTurn =
    arrangement === 'rings' ? 0 : (layout.alternateTurn ?? DEFAULTS.blanket.alternateTurn) % 360
  const counts = { arrangement, columns, rows, alternateRows, rings, turn, alternateTurn, inTheRound }
  const isUsable = !findings.some(({ severity }) => severity === 'error')
  if (isUsable && countPlaces(counts) > MOST_MOTIFS)
    findings.push(
      finding('layout/too-many', 'layout', {
        received: formatNumber(countPlaces(counts)),
        most: formatNumber(MOST_MOTIFS),
      }),
    )
  return { counts: findings.some(({ severity }) => severity === 'error') ? null : counts, findings }
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

const rowCount = ({ arrangement, rows, rings }: BlanketCounts): number =>
  arrangement === 'rings' ? 2 * rings + 1 : rows

const isEven = (counts: BlanketCounts, row: number): boolean =>
  counts.arrangement !== 'rings' && row % 2 === 0

/** Where each row stands under the first. */
function rowOffsets(lattice: Lattice, rows: number): Float64Array {
  const ys = new Float64Array(rows)
  for (let row = 1; row < rows; row++) ys[row] = ys[row - 1]! + pitchUnder(lattice, row)
  return ys
}

/** Size in mm of the box round all outlines, and once round what is joined in the round, without laying out each motif. */
export function blanketSize(
  lattice: Lattice,
  counts: BlanketCounts,
  cells?: Cells,
  outline?: OutlineTest,
): Pick<Laid, 'width' | 'height' | 'round'> {
  if ((cells && cells.own.size > 0) || outline) return layBlanket(lattice, counts, cells, outline)
  // Only what stands at the ends of rows can stick out.
  const { pattern } = lattice
  const ys = rowOffsets(lattice, rowCount(counts))
  const ends = rowSpans(counts).flatMap(({ row, start, count }) =>
    Array.from({ length: Math.min(count, 2 * pattern.count) }, (_, i) => {
      const place = i < pattern.count ? i : count - 1 - (i - pattern.count)
      const halves = start + 2 * place
      const kind = kindAt(pattern, row, halves)
      return { kind, even: isEven(counts, row), x: (halves * lattice.column) / 2, y: ys[row - 1]! }
    }),
  )
  const box = boxRound(lattice, ends)
  return { width: box.right - box.left, height: box.bottom - box.top, round: roundOf(lattice, counts) }
}

/** Once round what is joined in the round, in mm; 0 where nothing is. */
const roundOf = ({ column }: Lattice, { columns, inTheRound }: BlanketCounts): Millimetres =>
  inTheRound ? columns * column : 0

/** An outline that is cut out. */
export interface OutlineTest {
  /** Whether a motif's middle, in mm from the middle of the outline, lies within it. */
  readonly contains: (middle: Point) => boolean
  /** Where its middle lies; in the middle of the arrangement where that is left out. */
  readonly middle: OutlineMiddle
}

/** In rows from the top, and in motifs from the left of row 1, parts of them counted. */
export interface OutlineMiddle {
  readonly row?: number
  readonly place?: number
}

/** The boxes of a lattice's outlines, by kind and row. */
const boxesOf = remembered((lattice: Lattice): readonly (readonly [Box, Box])[] =>
  lattice.shapes.map(([odd, even]) => [boxOf(odd), boxOf(even)] as const),
)

/** The box round placed outlines. */
function boxRound(
  lattice: Lattice,
  placements: readonly Pick<Placement, 'kind' | 'even' | 'x' | 'y'>[],
): Box {
  const boxes = boxesOf(lattice)
  let left = Infinity
  let right = -Infinity
  let top = Infinity
  let bottom = -Infinity
  for (const { kind, even, x, y } of placements) {
    const box = boxes[kind]![even ? 1 : 0]
    left = Math.min(left, x + box.left)
    right = Math.max(right, x + box.right)
    top = Math.min(top, y + box.top)
    bottom = Math.max(bottom, y + box.bottom)
  }
  return placements.length > 0 ? { left, right, top, bottom } : { left: 0, right: 0, top: 0, bottom: 0 }
}

/**
 * Every motif with its centre from the top left of the box round all outlines, row by row. `cells` and `outline` tell
 * what is put in or left out by hand; without them every place of the pattern is taken.
 */
export function layBlanket(
  lattice: Lattice,
  counts: BlanketCounts,
  cells: Pick<Cells, 'pattern' | 'own' | 'blocks' | 'covered'> = {
    ...{ pattern: lattice.pattern, own: NONE_BY_HAND, blocks: NO_BLOCKS, covered: NONE_COVERED },
  },
  outline?: OutlineTest,
): Laid {
  const ys = rowOffsets(lattice, rowCount(counts))
  const bare: Pick<Placement, 'id' | 'x' | 'y'>[] = []
  const all = placesOf(counts).flatMap((place): Placement | readonly [] => {
    const kind = standsAt(cells, place)
    if (kind === null) {
      if (!cells.covered.has(place.id))
        bare.push({ id: place.id, x: (place.halves * lattice.column) / 2, y: ys[place.row - 1]! })
      return []
    }
    const size = cells.blocks.get(place.id)
    const on = offPlace(size ?? 1)
    const even = isEven(counts, place.row)
    return {
      id: place.id,
      row: place.row,
      column: place.column,
      halves: place.halves,
      x: (place.halves / 2 + on) * lattice.column,
      y: ys[place.row - 1]! + (on > 0 ? on * pitchUnder(lattice, place.row) : 0),
      turn: lattice.turns[even ? 1 : 0],
      even,
      kind,
      ...(size !== undefined && { size }),
    }
  })
  const isWithin = outline ? within(lattice, counts, outline) : () => true
  const kept = all.filter(isWithin)
  const box = boxRound(lattice, kept)
  return {
    placements: kept.map((placement) => ({
      ...placement,
      x: placement.x - box.left,
      y: placement.y - box.top,
    })),
    lattice,
    width: box.right - box.left,
    height: box.bottom - box.top,
    round: roundOf(lattice, counts),
    leftOut: bare.filter(isWithin).map(({ id, x, y }) => ({ id, x: x - box.left, y: y - box.top })),
  }
}

const NONE_BY_HAND: Cells['own'] = new Map()
const NO_BLOCKS: Cells['blocks'] = new Map()
const NONE_COVERED: Cells['covered'] = new Set()

/** Whether a middle lies within an outline. */
function within(lattice: Lattice, counts: BlanketCounts, outline: OutlineTest): (middle: Point) => boolean {
  const { x: across, y: down } = outlineMiddle(lattice, counts, outline.middle)
  return ({ x, y }) => outline.contains({ x: x - across, y: y - down })
}
