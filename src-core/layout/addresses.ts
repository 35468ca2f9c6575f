/**
 * Addresses of what stands between and beside the motifs of a blanket: the keys by which it is painted, selected
 * and listed. They are told by the places round them, so that a row or a column more leaves them as they are.
 */
import type { PlacedHalf } from '../../shared-types/plan'

/** A half motif by its row and side: "4,left". */
export const halfId = (row: number, side: PlacedHalf['side']): string => `${row},${side}`

/** A filler by the motifs round it, by row and place: "1,1+1,2+2,1+2,2". */
export const fillerId = (motifs: readonly string[]): string => motifs.join('+')

const HALF = /^\d+,(left|right)$/

/** Whether an address is one of a filler or a half motif, whether or not something stands there. */
export const isAddition = (id: string): boolean => id.includes('+') || HALF.test(id)

/** An address as it may be written in a file, without its blanks. */
export const tidyAddress = (key: string): string => key.replace(/\s/g, '')

/** So many are named; of the others their number is told. */
const MOST_NAMED = 4

/** A motif's address by row and place. */
const PLACE = /^(\d+),(\d+)$/

const placeIn = (id: string): readonly [row: number, place: number] | null => {
  const [, row, place] = PLACE.exec(tidyAddress(id)) ?? []
  return row === undefined ? null : [Number(row), Number(place)]
}

/**
 * Which motif of its row each one is, from the left, of the motifs that stand: places that are cut out or left out are
 * not there to be counted. Keys in the file go on counting the places.
 */
export function nthInRows(standing: Iterable<string>): ReadonlyMap<string, number> {
  const rows = new Map<number, { readonly id: string; readonly place: number }[]>()
  for (const id of standing) {
    const at = placeIn(id)
    if (!at) continue
    const [row, place] = at
    const known = rows.get(row)
    if (known) known.push({ id, place })
    else rows.set(row, [{ id, place }])
  }
  const nth = new Map<string, number>()
  for (const row of rows.values())
    row.sort((a, b) => a.place - b.place).forEach(({ id }, i) => nth.set(id, i + 1))
  return nth
}

/**
 * The first few of a list, as "row 1, motif 2; row 4, left half motif and 7 more"; counted among the motifs that stand,
 * by its place what is not among them.
 */
export function addressWords(ids: readonly string[], standing: Iterable<string>): string {
  const nth = nthInRows(standing)
  const named = ids.slice(0, MOST_NAMED).map((id) => {
    const at = placeIn(id)
    if (at) return `row ${at[0]}, motif ${nth.get(tidyAddress(id)) ?? at[1]}`
    return tidyAddress(id).replace(/^(\d+),(left|right)$/, 'row $1, $2 half motif')
  })
  return named.join('; ') + (ids.length > MOST_NAMED ? ` and ${ids.length - MOST_NAMED} more` : '')
}

/**
 * Where motifs were left out, by the one before each: "row 4, after motif 3", "row 4, before motif 1"; several beside
 * each other are counted: "row 4, after motif 3, 2 of 5".
 */
export function leftOutWords(
  leftOut: readonly string[],
  standing: Iterable<string>,
): ReadonlyMap<string, string> {
  const rows = new Map<number, number[]>()
  for (const id of standing) {
    const at = placeIn(id)
    if (at) rows.set(at[0], [...(rows.get(at[0]) ?? []), at[1]])
  }
  const told = leftOut.flatMap((id) => {
    const at = placeIn(id)
    if (!at) return []
    const [row, place] = at
    const inRow = rows.get(row) ?? []
    const before = inRow.filter((other) => other < place).length
    const where = inRow.length === 0 ? '' : before === 0 ? ', before motif 1' : `, after motif ${before}`
    return [{ id, place, words: `row ${row}${where}` }]
  })
  const gaps = new Map<string, number[]>()
  for (const { words, place } of told) gaps.set(words, [...(gaps.get(words) ?? []), place])
  return new Map(
    told.map(({ id, place, words }) => {
      const beside = gaps.get(words)!
      const nth = beside.filter((other) => other <= place).length
      return [id, beside.length > 1 ? `${words}, ${nth} of ${beside.length}` : words]
    }),
  )
}
