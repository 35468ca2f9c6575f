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

interface TextureKind {
  readonly name: string
  /** Neighbours of one family are told apart less well. */
  readonly family: 'plain' | 'dots' | 'lines' | 'crosses'
  /** Share of the paper that is inked at full size, measured on prints at 600 dots per inch. */
  readonly ink: number
  readonly draw: Texture
}

/** Finer grains would ink more of the paper if their lines did not get finer too; none under 0.14 mm. */
const fine = (width: number, grain: number): number => Math.max(0.14, width * grain)

/** Every texture, the one with the least ink first. `grain` is 1 at full size. */
const TEXTURES: readonly TextureKind[] = [
  { name: 'blank', family: 'plain', ink: 0, draw: () => [] },
  {
    ...{ name: 'dots', family: 'dots', ink: 0.08 },
    draw: (box, g) => [dots(grid(box, 1.15 * g, true, dotPath), fine(0.34, g))],
  },
  {
    ...{ name: 'slanting lines', family: 'lines', ink: 0.15 },
    draw: (box, g) => [line(hatch(box, -40, 1.5 * g), fine(0.22, g))],
  },
  {
    ...{ name: 'plus signs', family: 'crosses', ink: 0.17 },
    draw: (box, g) => [line(grid(box, 1.4 * g, true, plus(0.36 * g)), fine(0.22, g))],
  },
  {
    ...{ name: 'dashes', family: 'lines', ink: 0.2 },
    draw: (box, g) => [
      line(
        grid(box, 1.3 * g, true, (x, y) => linePath(x - 0.45 * g, y, x + 0.45 * g, y)),
        fine(0.34, g),
      ),
    ],
  },
  {
    ...{ name: 'rings', family: 'dots', ink: 0.245 },
    draw: (box, g) => [
      line(
        grid(box, 1.9 * g, true, (x, y) => circlePath(x, y, 0.5 * g)),
        fine(0.24, g),
      ),
    ],
  },
  {
    ...{ name: 'steep lines', family: 'lines', ink: 0.275 },
    draw: (box, g) => [line(hatch(box, 72, 0.85 * g), fine(0.23, g))],
  },
  {
    ...{ name: 'waves', family: 'lines', ink: 0.31 },
    draw: (box, g) => [line(waves(box, 1.15 * g), fine(0.31, g))],
  },
  {
    ...{ name: 'dense dots', family: 'dots', ink: 0.34 },
    draw: (box, g) => [dots(grid(box, 0.85 * g, true, dotPath), fine(0.52, g))],
  },
  {
    ...{ name: 'grid', family: 'crosses', ink: 0.38 },
    draw: (box, g) => [line([...hatch(box, 8, 1.15 * g), ...hatch(box, 98, 1.15 * g)], fine(0.24, g))],
  },
  {
    ...{ name: 'level lines', family: 'lines', ink: 0.43 },
    draw: (box, g) => [line(hatch(box, 0, 0.8 * g), fine(0.34, g))],
  },
  {
    ...{ name: 'crossed lines', family: 'crosses', ink: 0.47 },
    draw: (box, g) => [line([...hatch(box, 45, 1.05 * g), ...hatch(box, -45, 1.05 * g)], fine(0.28, g))],
  },
  {
    ...{ name: 'checks', family: 'plain', ink: 0.5 },
    draw: (box, g) => [checks(box, 0.72 * g)],
  },
  {
    ...{ name: 'double lines', family: 'lines', ink: 0.55 },
    draw: (box, g) => [line(doubleLines(box, 104, 1.7 * g, 0.7 * g), fine(0.46, g))],
  },
  {
    ...{ name: 'grey', family: 'plain', ink: 0.58 },
    draw: (box) => [drawPath(rectanglePath(box.x, box.y, box.width, box.height), { fill: '#6b6b6b' })],
  },
  {
    ...{ name: 'dense lines', family: 'lines', ink: 0.64 },
    draw: (box, g) => [line(hatch(box, 36, 0.62 * g), fine(0.39, g))],
  },
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

/** What is known of texture number `index`, from 0 for the one with the least ink. */
export const textureKind = (index: number): Omit<TextureKind, 'draw'> => TEXTURES[index % TEXTURE_COUNT]!

/**
 * The ink of texture number `index` over a box, to be clipped to the motif. `across` is the printed size of the
 * motif in mm: below 14 mm the texture gets finer, down to six tenths, so that it shows beside a number.
 */
export function textureItems(index: number, box: Bounds, across: number): PathItem[] {
  const grain = Math.min(1, Math.max(0.6, across / 14))
  return TEXTURES[index % TEXTURE_COUNT]!.draw(box, grain)
}
