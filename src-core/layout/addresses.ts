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

/** The first few of a list, as "row 1, motif 2; row 4, left half motif and 7 more". */
export function addressWords(ids: readonly string[]): string {
  const named = ids.slice(0, MOST_NAMED).map((id) =>
    tidyAddress(id)
      .replace(/^(\d+),(\d+)$/, 'row $1, motif $2')
      .replace(/^(\d+),(left|right)$/, 'row $1, $2 half motif'),
  )
  return named.join('; ') + (ids.length > MOST_NAMED ? ` and ${ids.length - MOST_NAMED} more` : '')
}
