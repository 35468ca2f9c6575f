/** The motif as it is found at first: coarsely, on paper whose shadows may have to be taken away. */
import type { Corners } from './homography'
import { evenLight, fitLight } from './light'
import { findMotif } from './motif-mask'
import type { Reduced } from './picture'
import { MARGIN, within } from './rectify'
import type { Plane } from './rectify'
import { onRuler } from './ruler'
import type { Asked } from './scale'
import { findShade, withoutShade } from './shade'
import { findSheetUnder } from './sheet'
import type { SheetSize } from './sheet-sizes'

/** A motif that stands out by so many multiples of the paper's straying lies on paper without shadows that matter. */
const CLEAR = 20

/** Finds the motif coarsely: by a ruler on a sheet that lies under it, where there is one, else anywhere. */
export function findFirst(small: Reduced, coarse: Plane, size: SheetSize, { ruler }: Pick<Asked, 'ruler'>) {
  const other = ruler && size.whole ? onRuler(ruler) : undefined
  const on = (ground: Plane) => {
    const light = fitLight(ground, size.beside === true || size.whole === true)
    const evened = evenLight(ground, light)
    const found = { light, first: findMotif(ground, evened, other) }
    const { first } = found
    if (first && !first.overEdge && first.contrast >= CLEAR) return found
    // A shadow that reaches over the edge is no motif that does, and one with hard edges hides what lies half in it.
    const shade = findShade(ground, evened)
    const without = shade && findMotif(ground, withoutShade(ground, evened, shade), other)
    const isBetter =
      without && !without.overEdge && !(first && !first.overEdge && first.contrast >= without.contrast)
    return isBetter ? { light: { ...light, shade }, first: without } : found
  }
  const under = size.whole ? findSheetUnder(small) : null
  if (under) {
    const each = size.width / (small.width - 1)
    const corners = under.map(({ x, y }) => ({ x: x * each, y: y * each })) as unknown as Corners
    const found = on(within(coarse, corners, MARGIN))
    if (found.first && !found.first.overEdge) return found
  }
  return on(coarse)
}
