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
