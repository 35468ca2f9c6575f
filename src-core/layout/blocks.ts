/**
 * M19: a large motif that takes a block of places in straight rows, as a medallion does among small squares. It is kept
 * under the place in the middle of its block; of an even number of places under the one above and to the left of it.
 */
import type { Finding } from '../../shared-types/finding'
import type { BlanketLayout } from '../../shared-types/project'
import { BLANKET } from '../fields/blanket'
import { isWithin } from '../fields/field'
import { finding } from '../findings/finding'
import { formatNumber } from '../units/format'
import { tidyAddress } from './addresses'
import { placeId } from './places'
import type { PlaceCounts } from './places'

/** Rows and columns by address: how many places each way a motif takes. */
export type Blocks = ReadonlyMap<string, number>

/** How far the middle of a block lies below and to the right of the place that it is kept under, in places. */
export const offPlace = (size: number): number => (size % 2 === 0 ? 0.5 : 0)

/** Places of a block above (and to the left of) the one that it is kept under. */
const before = (size: number): number => Math.floor((size - 1) / 2)

/** The first row and the first place of a row that a block takes. */
export const firstOf = (row: number, column: number, size: number) => ({
  row: row - before(size),
  column: column - before(size),
})

/** The place that a block is kept under, by its first row and place. */
export const keptUnder = (row: number, column: number, size: number): string =>
  placeId(row + before(size), column + before(size))

/** The addresses of all places of a block. */
export function placesUnder(row: number, column: number, size: number): string[] {
  const first = firstOf(row, column, size)
  return Array.from({ length: size * size }, (_, i) =>
    placeId(first.row + Math.floor(i / size), first.column + (i % size)),
  )
}

/** The block that some places fill, by its first row and place; null where they fill none of two rows or more. */
export function blockOf(
  ids: readonly string[],
): { readonly row: number; readonly column: number; readonly size: number } | null {
  const at = ids.map((id) => id.split(',').map(Number) as [number, number])
  const size = Math.round(Math.sqrt(ids.length))
  if (size < 2 || size * size !== new Set(ids).size) return null
  const row = Math.min(...at.map(([each]) => each))
  const column = Math.min(...at.map(([, each]) => each))
  const isFilled = at.every(([r, c]) => r < row + size && c < column + size)
  return isFilled ? { row, column, size } : null
}

interface ReadBlocks {
  readonly blocks: Blocks
  /** Places that blocks take beside those that they are kept under. */
  readonly covered: ReadonlySet<string>
  /** Entries that cannot be had: the pattern stands there. */
  readonly refused: ReadonlySet<string>
  readonly findings: readonly Finding[]
}

const NONE: ReadBlocks = { blocks: new Map(), covered: new Set(), refused: new Set(), findings: [] }

/** Reads which motifs take a block of places; `standing` tells which addresses have a motif put in by hand. */
export function readBlocks(
  large: NonNullable<BlanketLayout['cells']>['large'],
  counts: PlaceCounts,
  standing: (address: string) => boolean,
): ReadBlocks {
  const entries = Object.entries(large ?? {})
  if (entries.length === 0) return NONE
  const blocks = new Map<string, number>()
  const covered = new Set<string>()
  const refused = new Set<string>()
  const findings: Finding[] = []
  const taken = new Set<string>()
  for (const [key, size] of entries) {
    const address = tidyAddress(key)
    const where = `layout.cells.large["${key}"]`
    const [row = 0, column = 0] = address.split(',').map(Number)
    const refuse = (told: Finding): void => {
      refused.add(address)
      findings.push(told)
    }
    if (!Number.isInteger(size) || !isWithin(size, BLANKET.large)) {
      const values = { received: formatNumber(size, 3), most: formatNumber(BLANKET.large.most) }
      refuse(finding('layout/large-places', where, values))
    } else if (!standing(address)) {
      findings.push(finding('layout/large-none', where, { id: key }))
    } else if (size > 1) {
      const at = { row: formatNumber(row), place: formatNumber(column), size: formatNumber(size) }
      const first = firstOf(row, column, size)
      const ids = placesUnder(row, column, size)
      const isInside =
        first.row >= 1 &&
        first.column >= 1 &&
        first.row + size - 1 <= counts.rows &&
        first.column + size - 1 <= counts.columns
      if (counts.arrangement !== 'straight-rows') refuse(finding('layout/large-rows', where, at))
      else if (!isInside) refuse(finding('layout/large-beyond', where, at))
      else if (ids.some((id) => taken.has(id))) refuse(finding('layout/large-overlap', where, at))
      else {
        blocks.set(address, size)
        for (const id of ids) {
          taken.add(id)
          if (id !== address) covered.add(id)
        }
      }
    }
  }
  return { blocks, covered, refused, findings }
}
