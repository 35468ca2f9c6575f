/** The shipped text face in the two weights that paper uses. */
import type { MeasureText, TextWeight } from '../../../src-core/figures/figure'
import { MM_PER_POINT } from '../../../src-core/figures/figure'
import { packageFile } from '../../package-file'
import { Face } from './face'
import { Letters } from './letters'

const FILES: Readonly<Record<TextWeight, string>> = {
  regular: 'SourceSans3_400Regular.ttf',
  bold: 'SourceSans3_600SemiBold.ttf',
}

const read = new Map<TextWeight, Letters>()

function lettersOf(weight: TextWeight): Letters {
  const known = read.get(weight)
  if (known) return known
  const letters = new Letters(packageFile('paper', FILES[weight]))
  read.set(weight, letters)
  return letters
}

/** The faces of one file: each file embeds a subset of its own. */
export interface Faces {
  readonly regular: Face
  readonly bold: Face
}

/** The shipped faces, for one file. */
export const readFaces = (): Faces => ({
  regular: new Face(lettersOf('regular'), 'R'),
  bold: new Face(lettersOf('bold'), 'B'),
})

/** Widths in mm of texts set in these faces. */
export const measureWith =
  (faces: Faces): MeasureText =>
  (text, size, weight) =>
    (faces[weight].measure(text) * size * MM_PER_POINT) / 1000
