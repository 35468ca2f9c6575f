/** The motif as it is found at first: coarsely, on paper whose shadows may have to be taken away. */
import type { Corners } from './homography'
import { isDarkRound } from './dark-round'
import { withoutHalo } from './halo'
import { evenLight, fitLight } from './light'
import type { Evened } from './light'
import { findMotif, NO_SHADOW } from './motif-mask'
import type { FoundMotif } from './motif-mask'
import type { Reduced } from './picture'
import { MARGIN, within } from './rectify'
import type { Plane } from './rectify'
import { countOf } from './regions'
import { onRuler } from './ruler'
import type { Asked } from './scale'
import { findShade, withoutShade } from './shade'
import { findSheetUnder } from './sheet'
import type { SheetSize } from './sheet-sizes'

/** A motif that stands out by so many multiples of the paper's straying lies on paper without shadows that matter. */
const CLEAR = 20
/** And one as grey as a shadow, at least. */
const GRAY = 12

/**
 * The motif where nothing is taken for a shadow but what soft edges tell: on the paper as it is, or without its shade. It
 * lies about what was found before, if anything was.
 */
function asGray(
  ground: Plane,
  papers: readonly Evened[],
  before: FoundMotif | null,
  other: ((x: number, y: number) => boolean) | undefined,
) {
  for (const paper of papers) {
    const found = withoutHalo(ground, paper, findMotif(ground, paper, other, NO_SHADOW), other)
    if (!found || found.overEdge || found.contrast < GRAY) continue
    if (liesAbout(found, before)) return { paper, found: { ...found, likePaper: true } }
  }
  return null
}

/** How much of what was found before lies in what was found now, as a share, at least: the line itself may stray. */
const WITHIN = 0.95

/** Whether a motif was found about another one of the same plane, or about none. */
function liesAbout({ mask }: FoundMotif, before: FoundMotif | null): boolean {
  if (!before) return true
  let shared = 0
  for (let at = 0; at < mask.on.length; at++) shared += mask.on[at]! & before.mask.on[at]!
  return shared >= WITHIN * countOf(before.mask)
}

/** Finds the motif coarsely: by a ruler on a sheet that lies under it, where there is one, else anywhere. */
export function findFirst(small: Reduced, coarse: Plane, size: SheetSize, { ruler }: Pick<Asked, 'ruler'>) {
  const other = ruler && size.whole ? onRuler(ruler) : undefined
  const on = (ground: Plane) => {
    const light = fitLight(ground, size.beside === true || size.whole === true)
    const evened = evenLight(ground, light)
    const first = withoutHalo(ground, evened, findMotif(ground, evened, other), other)
    if (first && !first.overEdge && first.contrast >= CLEAR && !isDarkRound(ground, evened, first.mask))
      return { light, first }
    // A shadow that reaches over the edge is no motif that does, and one with hard edges hides what lies half in it.
    const shade = findShade(ground, evened)
    const shaded = shade ? withoutShade(ground, evened, shade) : evened
    const without = shade && withoutHalo(ground, shaded, findMotif(ground, shaded, other), other)
    const isBetter =
      without && !without.overEdge && !(first && !first.overEdge && first.contrast >= without.contrast)
    const [found, paper] = isBetter ? [without, shaded] : [first, evened]
    const shadedOr = (on: Evened) => (shade && on === shaded ? { ...light, shade } : light)
    if (found && !isDarkRound(ground, paper, found.mask)) return { light: shadedOr(paper), first: found }
    const gray = asGray(ground, [evened, shaded], found, other)
    if (gray) return { light: shadedOr(gray.paper), first: gray.found }
    const isShadow = without && !isDarkRound(ground, shaded, without.mask)
    return { light: shadedOr(paper), first: found && { ...found, likePaper: !isShadow } }
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
