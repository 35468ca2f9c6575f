/** Where a neighbour lies, seen from a motif: on the lattice in half steps, and in words. */
import type { Plan } from '../../shared-types/plan'
import type { PlacedPiece } from '../layout/placed'

/** In half places across and half rows down. */
export interface Neighbour {
  readonly across: number
  readonly down: number
  /** It lies beyond the line at which a round closes. */
  readonly wraps: boolean
}

/** Where a piece lies, seen from another. */
export function neighbourAt({ pitch, round }: Plan, from: PlacedPiece, to: PlacedPiece): Neighbour {
  const dx = to.x - from.x
  const wraps = round !== undefined && Math.abs(dx) > round.circumference / 2
  const onward = wraps ? dx - Math.sign(dx) * round.circumference : dx
  return {
    across: Math.round(onward / (pitch.column / 2)) || 0,
    down: Math.round((to.y - from.y) / (pitch.row / 2)) || 0,
    wraps,
  }
}

const ordinal = (n: number): string => `${n}${['', 'st', 'nd', 'rd'][n] ?? 'th'}`

/** "left", "upper right", "above", "2 rows up, left"; each direction has words of its own. */
export function neighbourWords({ across, down, wraps }: Neighbour): string {
  const side = across < 0 ? 'left' : 'right'
  const along = Math.ceil(Math.abs(across) / 2)
  const rows = Math.ceil(Math.abs(down) / 2)
  const beside = along > 1 ? `${ordinal(along)} on the ${side}` : side
  const beyond = wraps ? ', across the dashed line' : ''
  if (rows === 0) return `${along === 0 ? 'itself' : beside}${beyond}`
  if (rows > 1) return `${rows} rows ${down < 0 ? 'up' : 'down'}${along === 0 ? '' : `, ${beside}`}${beyond}`
  if (along === 0) return `${down < 0 ? 'above' : 'below'}${beyond}`
  const level = down < 0 ? 'upper' : 'lower'
  return `${along > 1 ? `${level} row, ${beside}` : `${level} ${side}`}${beyond}`
}
