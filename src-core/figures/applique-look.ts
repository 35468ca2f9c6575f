/** The items of a template in their colourways: as bands along their parts at full size, filled in small. */
import type { Point } from '../../shared-types/plan'
import { indexEdges } from '../geometry/edges'
import { clockwise, COARSE, grow } from '../geometry/polygons'
import { distanceToEdge } from '../geometry/points'
import type { Outline } from '../geometry/points'
import { remembered } from '../memo'
import type { TemplateItem } from './applique-ground'
import type { FigureItem, Path, PathItem, PathSegment } from './figure'
import { drawPath } from './figure'
import { slotColours } from './motif-symbol'
import { bandPath } from './panel'
import { boundsOf, polygonPath } from './path'
import { textureItems } from './textures'

/** Width of a band in mm: a texture is told by it, and the middle stays free for marks and pencil. */
const BAND = 3.2
/** Marks of a texture (dots, rings, crosses) are no larger than this. mm. */
const LARGEST_MARK = 2

/** Segments by their beginnings: every line, dot or ring of a texture for itself. */
function marksOf(path: Path): PathSegment[][] {
  const marks: PathSegment[][] = []
  for (const segment of path) {
    if (segment[0] === 'M') marks.push([])
    marks.at(-1)?.push(segment)
  }
  return marks
}

const startOf = ([first]: readonly PathSegment[]): Point =>
  first && first[0] !== 'Z' ? { x: first[1], y: first[2] } : { x: 0, y: 0 }

/** Whether a mark is so small that it lies either in the band or beside it. */
function isSmall(mark: readonly PathSegment[]): boolean {
  const start = startOf(mark)
  return mark.every((segment) => {
    if (segment[0] === 'Z') return true
    const [x, y] = segment.slice(-2) as [number, number]
    return Math.hypot(x - start.x, y - start.y) <= LARGEST_MARK
  })
}

/** A texture without the small marks that a clip along the outline would hide: there are thousands of them. */
function besideEdge(item: PathItem, outline: Outline): PathItem {
  const reach = BAND + LARGEST_MARK
  const { tree } = indexEdges(outline)
  const isNear = (p: Point): boolean =>
    tree
      .search(p.x - reach, p.y - reach, p.x + reach, p.y + reach)
      .some((i) => distanceToEdge(p, outline[i]!, outline[(i + 1) % outline.length]!) <= reach)
  const kept = marksOf(item.path).filter((mark) => !isSmall(mark) || isNear(startOf(mark)))
  return { ...item, path: kept.flat() }
}

/** A band inside an outline, to be filled or to clip by. */
const bandInside = (outline: Outline): Path => bandPath(outline, grow([clockwise(outline)], -BAND, COARSE))

/**
 * Bands along the inside of the outline in the texture of the colourway, or of every part in its colour: made once for
 * all the sheets that show some of the item.
 */
export const bandItems = remembered(bandsOf)

function bandsOf({ outline, layers, mark, look }: TemplateItem): readonly FigureItem[] {
  if (!mark) return []
  if (look === 'colour')
    return layers.flatMap((layer): FigureItem[] => [
      drawPath(bandInside(layer.outline), { fill: slotColours(mark, [layer.slot])[0]! }),
    ])
  const texture = textureItems(mark.texture, boundsOf(outline), Infinity)
  if (texture.length === 0) return []
  const items = texture.map((item) => besideEdge(item, outline))
  return [{ kind: 'group', clip: bandInside(outline), items }]
}

/** The whole item in its colourway, printed at a scale; `at` moves it to its place. */
export function filledItems(
  { outline, layers, mark, look, bounds }: TemplateItem,
  at: (outline: Outline) => Outline,
  scale: number,
): FigureItem[] {
  if (!mark) return []
  if (look === 'colour')
    return layers.map((layer) =>
      drawPath(polygonPath(at(layer.outline)), { fill: slotColours(mark, [layer.slot])[0]! }),
    )
  const placed = at(outline)
  const across = Math.max(bounds.width, bounds.height) * scale
  const items = textureItems(mark.texture, boundsOf(placed), across)
  return items.length > 0 ? [{ kind: 'group', clip: polygonPath(placed), items }] : []
}
