/** Draw lists as SVG attributes, in the window's own inks. */
import type { Colour, Matrix, Path } from '../../src-core/figures/figure'
import { SECOND_INK } from '../../src-core/figures/chart'
import { INK, PAPER } from '../../src-core/figures/figure'

const told = (value: number): string => String(Math.round(value * 1000) / 1000)

/** Path data; points in the figure's mm. */
export const pathData = (path: Path): string =>
  path.map(([letter, ...numbers]) => letter + numbers.map(told).join(' ')).join('')

export const matrixWords = (matrix: Matrix | undefined): string | undefined =>
  matrix && `matrix(${matrix.map(told).join(' ')})`

/** Printed inks are black and white; on screen they follow the theme. */
export function screenInk(colour: Colour | undefined): string {
  if (colour === undefined) return 'none'
  if (colour === INK) return 'var(--ink)'
  if (colour === SECOND_INK.colour) return 'var(--accent)'
  return colour === PAPER ? 'var(--paper)' : 'var(--edge)'
}
