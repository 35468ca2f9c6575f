/** The shipped text face in the two weights that paper uses, and the fonts that were chosen for other scripts. */
import type { MeasureText, TextWeight } from '../../../src-core/figures/figure'
import { MM_PER_POINT } from '../../../src-core/figures/figure'
import { packageFile } from '../../package-file'
import type { ChosenFont } from './fonts/chosen'
import type { EmbeddedFont } from './embedded'
import { Face, OtherFonts } from './face'
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
  /** The chosen fonts, as the file embeds them. */
  readonly others: readonly EmbeddedFont[]
}

/** The shipped faces with fonts for other scripts, for one file. */
export function readFaces(chosen: readonly ChosenFont[] = []): Faces {
  const others = new OtherFonts(chosen)
  return {
    regular: new Face(lettersOf('regular'), 'R', false, others),
    bold: new Face(lettersOf('bold'), 'B', true, others),
    others: others.all,
  }
}

/** Widths in mm of texts set in these faces. */
export function measureWith(faces: Faces): MeasureText {
  const measure = (text: string, size: number, weight: TextWeight): number =>
    (faces[weight].measure(text) * size * MM_PER_POINT) / 1000
  return faces.others.length > 0 ? Object.assign(measure, { manyScripts: true as const }) : measure
}
