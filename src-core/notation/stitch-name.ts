/** Stitches as a text names them. */
import type { StitchKey } from '../stitches/table'
import type { Span } from './tokens'

export type StitchForm =
  | 'plain'
  /** "dc3tog": a cluster in one place, a decrease over several; the place decides. */
  | 'together'
  | 'cluster'
  | 'puff'
  | 'popcorn'
  | 'bobble'
  | 'picot'
  | 'shell'
  | 'v-stitch'
  | 'increase'
  | 'decrease'
  /** A stitch that the text defines itself. */
  | 'special'

/** A stitch as named in the text. */
export interface StitchName extends Span {
  readonly form: StitchForm
  /** US key of the stitch it is made of, or null where the name does not say. */
  readonly stitch: StitchKey | null
  /** Legs of a cluster or decrease, stitches of a shell, chains of a picot; 0 where not said. */
  readonly size: number
  readonly post: 'front' | 'back' | null
  readonly loop: Loop | null
  /** "beg cl", "first shell": the one that the round begins with. */
  readonly beginning: boolean
  /** "standing sc": made without a slip stitch. */
  readonly standing: boolean
  readonly reverse: boolean
  /** Belongs to the other set of terms than the text is marked with. */
  readonly foreign: boolean
  readonly name: string
}

/** A stitch that is named by its count or its place alone ("2 in next st"). */
export const NO_NAME: Omit<StitchName, keyof Span> = {
  form: 'plain',
  stitch: null,
  size: 0,
  post: null,
  loop: null,
  beginning: false,
  standing: false,
  reverse: false,
  foreign: false,
  name: '',
}

export type Loop = 'front' | 'back' | 'both'

/** A plain slip stitch. */
export const isSlip = (name: StitchName): boolean => name.form === 'plain' && name.stitch === 'sl st'
