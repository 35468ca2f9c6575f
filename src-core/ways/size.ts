/** Sizes against a wish that may leave a side open. */
import type { WishedSize } from '../../shared-types/ways'
import type { Millimetres } from '../units/quantity'

export interface Size {
  readonly width: Millimetres
  readonly height: Millimetres
}

export const SIDES = ['width', 'height'] as const

/** Size minus wish, of the sides that were asked for. */
export const errorOf = (size: Size, wish: WishedSize): WishedSize =>
  Object.fromEntries(
    SIDES.flatMap((side) => {
      const wished = wish[side]
      return wished === undefined ? [] : [[side, size[side] - wished]]
    }),
  )

/** How far a size is off the wish on its worse side, in mm. */
export const offBy = (size: Size, wish: WishedSize): Millimetres =>
  Math.max(...Object.values(errorOf(size, wish) as Record<string, number>).map(Math.abs))
