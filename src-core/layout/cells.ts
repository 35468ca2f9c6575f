/** M19: the cells of a blanket, each with its motif or none: what alternates, and what was put in or left out by hand. */
import type { Finding } from '../../shared-types/finding'
import type { BlanketLayout } from '../../shared-types/project'
import { finding } from '../findings/finding'
import type { BlanketCounts } from './blanket'
import { readBlocks, offPlace } from './blocks'
import type { Blocks } from './blocks'
import type { OwnPair } from './lattice'
import { kindAt } from './pattern'
import type { Pattern } from './pattern'
import { placesOf } from './places'
import type { Place } from './places'

export interface Cells {
  readonly pattern: Pattern
  /** Ids of the motifs by kind: first those that alternate, then those that were put in by hand alone. */
  readonly motifs: readonly string[]
  /** What stands by hand at "row,place": a kind, or null where nothing does. */
  readonly own: ReadonlyMap<string, number | null>
  /** How many rows and columns a motif takes, by address, where that is more than one. */
  readonly blocks: Blocks
  /** Places that belong to the block of a large motif: nothing stands there, and nothing is left out. */
  readonly covered: ReadonlySet<string>
  readonly findings: readonly Finding[]
}

/** The address of a place as it is kept, without the blanks that a hand may have typed. */
const addressOf = (key: string): string => key.replace(/\s/g, '')

/**
 * Reads which motif stands where; `known` are the ids of the project's motifs, set apart by line breaks. Names that
 * nothing answers to are told by the checks of references.
 */
export function cellsOf(
  motif: string,
  alternate: BlanketLayout['alternate'],
  byHand: NonNullable<BlanketLayout['cells']>['motifs'],
  counts: BlanketCounts,
  known: string,
  large?: NonNullable<BlanketLayout['cells']>['large'],
): Cells {
  const ids = new Set(known.split('\n'))
  const findings: Finding[] = []
  const others = (alternate?.motifs ?? []).filter((id) => ids.has(id))
  // The layout's motif comes first, wherever the list has it.
  const alternating =
    others.length > 1 ? shortest([motif, ...others.slice(others[0] === motif ? 1 : 0)]) : [motif]
  const motifs = [...alternating]
  const own = new Map<string, number | null>()
  const entries = Object.entries(byHand ?? {})
  const places = entries.length > 0 ? new Set(placesOf(counts).map(({ id }) => id)) : new Set<string>()
  for (const [key, id] of entries) {
    const address = addressOf(key)
    if (!places.has(address))
      findings.push(finding('file/unknown-cell', `layout.cells.motifs["${key}"]`, { id: key }))
    else if (id === null) own.set(address, null)
    else if (ids.has(id)) {
      const kind = motifs.indexOf(id)
      own.set(address, kind < 0 ? motifs.push(id) - 1 : kind)
    }
  }
  const read = readBlocks(large, counts, (address) => (own.get(address) ?? null) !== null)
  for (const address of read.refused) own.delete(address)
  for (const address of read.covered) own.set(address, null)
  findings.push(...read.findings)
  const { arrangement, rings } = counts
  const pattern: Pattern = { arrangement, count: alternating.length, by: alternate?.by ?? 'cell', rings }
  return { pattern, motifs, own, blocks: read.blocks, covered: read.covered, findings }
}

/** A list that says the same over and over (A B A B) once: the same pattern, with fewer kinds to meet each other. */
function shortest(list: readonly string[]): readonly string[] {
  const period = list.findIndex(
    (_, at) => at > 0 && list.length % at === 0 && list.every((id, i) => id === list[i % at]),
  )
  return period < 0 ? list : list.slice(0, period)
}

/** The kind of motif at a place; null where it is left out. */
export function standsAt({ pattern, own }: Pick<Cells, 'pattern' | 'own'>, place: Place): number | null {
  const byHand = own.size > 0 ? own.get(place.id) : undefined
  return byHand === undefined ? kindAt(pattern, place.row, place.halves) : byHand
}

/** What stands at a place, and where the middle of it lies: in rows, and in half column pitches. */
interface Standing {
  readonly place: Place
  readonly kind: number
  readonly size: number
  readonly row: number
  readonly at: number
}

/** A number for each row and half pitch; there are at most some thousands of either, and shifted rows begin at −1. */
const placeKey = (row: number, halves: number): number => row * 100_000 + halves

/** Whether motifs were put in or left out by hand, or the pattern breaks where the round closes. */
export const hasOwnPairs = ({ pattern, own }: Cells, counts: BlanketCounts): boolean =>
  own.size > 0 || breaksWhereItCloses(pattern, counts)

const breaksWhereItCloses = ({ by, count }: Pattern, { inTheRound, columns }: BlanketCounts): boolean =>
  inTheRound && by === 'cell' && columns % count > 0

/**
 * Every two motifs that stand within so many half columns and rows of each other and that the pattern alone does not
 * have so: one of them was put in by hand, or the pattern breaks where the round closes.
 */
export function ownPairs(cells: Cells, counts: BlanketCounts, halves: number, rows: number): OwnPair[] {
  const { pattern } = cells
  const period = 2 * counts.columns
  if (!hasOwnPairs(cells, counts)) return []
  const breaks = breaksWhereItCloses(pattern, counts)
  const standing = new Map<number, Standing>()
  const seeds: Standing[] = []
  for (const place of placesOf(counts)) {
    const kind = standsAt(cells, place)
    if (kind === null) continue
    const size = cells.blocks.get(place.id) ?? 1
    const [row, at] = [place.row + offPlace(size), place.halves + 2 * offPlace(size)]
    const entry = { place, kind, size, row, at }
    standing.set(placeKey(place.row, place.halves), entry)
    const isOwn = cells.own.has(place.id)
    if (isOwn || (breaks && (place.column <= pattern.count || place.column > counts.columns - pattern.count)))
      seeds.push(entry)
  }
  const found = new Map<string, OwnPair>()
  const look = (row: number, at: number) => {
    const here = standing.get(placeKey(row, at))
    if (here || !counts.inTheRound) return here
    return standing.get(placeKey(row, at + period)) ?? standing.get(placeKey(row, at - period))
  }
  for (const { place, kind, size, row, at } of seeds)
    for (let down = -rows; down <= rows; down++)
      for (let across = -halves; across <= halves; across++) {
        if (down === 0 && across === 0) continue
        const other = look(place.row + down, place.halves + across)
        if (!other || other.place === place) continue
        // Blocks of an even number stand half a place on; round a close the other one may lie at its far side.
        const lower = other.row - row
        const far = other.at - at
        const right = counts.inTheRound ? far - period * Math.round((far - across) / period) : far
        const isFirst = lower > 0 || (lower === 0 && right > 0)
        const reach = (size + other.size) / 2
        const isBeside = reach > 1 && Math.abs(lower) < reach - 1e-9
        const pair: OwnPair = isFirst
          ? { row, down: lower, across: right, first: kind, second: other.kind, isBeside }
          : {
              ...{ row: other.row, down: -lower, across: -right },
              ...{ first: other.kind, second: kind, isBeside },
            }
        found.set(`${pair.row} ${pair.down} ${pair.across} ${pair.first} ${pair.second} ${isBeside}`, pair)
      }
  return [...found.values()]
}
