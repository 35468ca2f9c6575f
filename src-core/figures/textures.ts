/**
 * Ink textures, so that colourways can be told apart on a sheet printed in black. Spacing is in printed mm and
 * does not grow with the motif; every texture keeps its direction however the motif is turned.
 * Line widths and spacings: our own, judged on prints at 300 and 600 dots per inch.
 */
import type { Bounds, Path, PathItem, PathSegment } from './figure'
import { drawPath, INK } from './figure'
import { circlePath, dotPath, linePath, rectanglePath } from './path'

/** Lines at an angle (degrees clockwise from horizontal), `gap` mm apart, over a box. */
function hatch(box: Bounds, angle: number, gap: number): PathSegment[] {
  const radians = (angle * Math.PI) / 180
  const ux = Math.cos(radians)
  const uy = Math.sin(radians)
  const reach = Math.hypot(box.width, box.height) / 2
  const cx = box.x + box.width / 2
  const cy = box.y + box.height / 2
  const count = Math.floor(reach / gap)
  const segments: PathSegment[] = []
  for (let i = -count; i <= count; i++) {
    const half = Math.sqrt(Math.max(0, reach * reach - (i * gap) ** 2))
    if (half === 0) continue
    const x = cx - uy * i * gap
    const y = cy + ux * i * gap
    segments.push(...linePath(x - ux * half, y - uy * half, x + ux * half, y + uy * half))
  }
  return segments
}

/** Calls back for a grid of places over a box; odd rows are shifted by half a gap when `staggered`. */
function grid(box: Bounds, gap: number, staggered: boolean, mark: (x: number, y: number) => Path): Path {
  const segments: PathSegment[] = []
  const rowGap = staggered ? gap * 0.866 : gap
  const rows = Math.ceil(box.height / 2 / rowGap)
  const columns = Math.ceil(box.width / 2 / gap)
  for (let j = -rows; j <= rows; j++) {
    const shift = staggered && j % 2 !== 0 ? gap / 2 : 0
    for (let i = -columns; i <= columns; i++) {
      segments.push(...mark(box.x + box.width / 2 + i * gap + shift, box.y + box.height / 2 + j * rowGap))
    }
  }
  return segments
}

const line = (path: Path, width: number): PathItem => drawPath(path, { stroke: INK, width })
const dots = (path: Path, diameter: number): PathItem =>
  drawPath(path, { stroke: INK, width: diameter, cap: 'round' })

type Texture = (box: Bounds, grain: number) => PathItem[]

const plus =
  (arm: number) =>
  (x: number, y: number): Path => [...linePath(x - arm, y, x + arm, y), ...linePath(x, y - arm, x, y + arm)]

/** Name and drawing of every texture, in the order in which colourways take them. `grain` is 1 at full size. */
const TEXTURES: readonly (readonly [string, Texture])[] = [
  ['steep lines', (box, g) => [line(hatch(box, 72, 0.85 * g), 0.22)]],
  ['dots', (box, g) => [dots(grid(box, 1.15 * g, true, dotPath), 0.34)]],
  ['blank', () => []],
  ['grid', (box, g) => [line([...hatch(box, 8, 0.95 * g), ...hatch(box, 98, 0.95 * g)], 0.2)]],
  ['level lines', (box, g) => [line(hatch(box, 0, 0.8 * g), 0.26)]],
  ['checks', (box, g) => [checks(box, 0.72 * g)]],
  ['slanting lines', (box, g) => [line(hatch(box, -40, 1.5 * g), 0.24)]],
  ['dense dots', (box, g) => [dots(grid(box, 0.85 * g, true, dotPath), 0.52)]],
  ['crossed lines', (box, g) => [line([...hatch(box, 45, 1.05 * g), ...hatch(box, -45, 1.05 * g)], 0.2)]],
  [
    'rings',
    (box, g) => [
      line(
        grid(box, 1.5 * g, true, (x, y) => circlePath(x, y, 0.42 * g)),
        0.18,
      ),
    ],
  ],
  ['dense lines', (box, g) => [line(hatch(box, 36, 0.6 * g), 0.36)]],
  ['plus signs', (box, g) => [line(grid(box, 1.4 * g, true, plus(0.36 * g)), 0.22)]],
  ['double lines', (box, g) => [line(doubleLines(box, 104, 1.7 * g, 0.5 * g), 0.22)]],
  [
    'dashes',
    (box, g) => [
      line(
        grid(box, 1.3 * g, true, (x, y) => linePath(x - 0.4 * g, y, x + 0.4 * g, y)),
        0.3,
      ),
    ],
  ],
  ['waves', (box, g) => [line(waves(box, 1.15 * g), 0.22)]],
  ['grey', (box) => [drawPath(rectanglePath(box.x, box.y, box.width, box.height), { fill: '#8c8c8c' })]],
]

function checks(box: Bounds, side: number): PathItem {
  const path = grid(box, 2 * side, false, (x, y) => [
    ...rectanglePath(x - side, y - side, side, side),
    ...rectanglePath(x, y, side, side),
  ])
  return drawPath(path, { fill: INK })
}

function doubleLines(box: Bounds, angle: number, gap: number, between: number): PathSegment[] {
  const radians = (angle * Math.PI) / 180
  const shifted = { ...box, x: box.x - Math.sin(radians) * between, y: box.y + Math.cos(radians) * between }
  return [...hatch(box, angle, gap), ...hatch(shifted, angle, gap)]
}

function waves(box: Bounds, gap: number): PathSegment[] {
  const segments: PathSegment[] = []
  const rows = Math.ceil(box.height / 2 / gap)
  const length = 1.6 * gap
  const columns = Math.ceil(box.width / 2 / length)
  const cx = box.x + box.width / 2
  for (let j = -rows; j <= rows; j++) {
    const y = box.y + box.height / 2 + j * gap
    segments.push(['M', cx - columns * length, y])
    for (let i = -columns; i < columns; i++) {
      const x = cx + i * length
      const lift = 0.62 * gap
      segments.push(['C', x + length / 3, y - lift, x + (2 * length) / 3, y + lift, x + length, y])
    }
  }
  return segments
}

export const TEXTURE_COUNT = TEXTURES.length

/** Name of the texture that the colourway number `index` (from 0) takes. */
export const textureName = (index: number): string => TEXTURES[index % TEXTURE_COUNT]![0]

/**
 * The ink of texture number `index` over a box, to be clipped to the motif. `across` is the printed size of the
 * motif in mm: below 10 mm the texture gets finer, down to six tenths.
 */
export function textureItems(index: number, box: Bounds, across: number): PathItem[] {
  const grain = Math.min(1, Math.max(0.6, across / 10))
  return TEXTURES[index % TEXTURE_COUNT]![1](box, grain)
}
