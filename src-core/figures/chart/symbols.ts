/**
 * The symbols of crochet charts, as strokes: what a stitch looks like from its base to its top. The shapes are the
 * common ones of published charts (open oval for a chain, T with a slash for each yarn over); single crochet is
 * drawn as +, of the two that are in use. Lengths in mm; `unit` is the width of a stitch as printed.
 */
import type { Point } from '../../../shared-types/plan'
import type { StitchKey } from '../../stitches/table'
import type { Path, PathSegment } from '../figure'

/** Strokes and filled shapes of a symbol. */
export interface Ink {
  readonly strokes: Path
  readonly fills: Path
}

/** A foot on the work and a head at the top, as printed. */
export interface Stand {
  readonly base: Point
  readonly top: Point
  readonly unit: number
  /** Distance to the nearest neighbour's middle and top: bars keep within. */
  readonly room: { readonly middle: number; readonly top: number }
}

/** Proportions in stitch widths, by eye: neighbours a stitch apart never touch. */
export const PROPORTION = {
  /** Free room above what a symbol stands on, and below what stands on it. */
  foot: 0.16,
  /** The same over chains, which are as thick as their ovals. */
  spaceFoot: 0.22,
  /** Over the bar of a stitch that a post stitch goes around, and how far the hook hangs down from the post. */
  loopFoot: 0.1,
  hook: 0.26,
  clear: 0.07,
  head: 0.06,
  bar: 0.27,
  cross: 0.25,
  slash: 0.16,
  slashRise: 0.09,
  slashStep: 0.24,
  ovalLength: 0.8,
  ovalWidth: 0.3,
  dot: 0.13,
  bulge: 0.34,
} as const

/** Yarn overs: slashes across the post. */
const SLASHES: Readonly<Record<StitchKey, number>> = {
  ch: 0,
  'sl st': 0,
  sc: 0,
  hdc: 0,
  dc: 1,
  tr: 2,
  dtr: 3,
  trtr: 4,
}

/** An oval is at least so much longer than wide. */
const OVAL_LEAST = 1.2

const K = 0.5522847498

/** Coordinates along the way from base to top (`up`) and to its right. */
class Frame {
  readonly length: number
  private readonly d: Point

  constructor(
    readonly base: Point,
    top: Point,
  ) {
    const dx = top.x - base.x
    const dy = top.y - base.y
    this.length = Math.hypot(dx, dy)
    this.d = this.length > 1e-9 ? { x: dx / this.length, y: dy / this.length } : { x: 0, y: -1 }
  }

  at(right: number, up: number): Point {
    return {
      x: this.base.x + this.d.x * up - this.d.y * right,
      y: this.base.y + this.d.y * up + this.d.x * right,
    }
  }
}

const line = (a: Point, b: Point): Path => [
  ['M', a.x, a.y],
  ['L', b.x, b.y],
]

const quadratic = (a: Point, control: Point, b: Point): Path => {
  const mix = (p: Point): [number, number] => [
    p.x + ((control.x - p.x) * 2) / 3,
    p.y + ((control.y - p.y) * 2) / 3,
  ]
  return [
    ['M', a.x, a.y],
    ['C', ...mix(a), ...mix(b), b.x, b.y],
  ]
}

/** An ellipse about `centre`, its long axis in the direction of `along`. */
export function ovalPath(centre: Point, along: Point, length: number, width: number): Path {
  const size = Math.hypot(along.x, along.y) || 1
  const a = { x: ((along.x / size) * length) / 2, y: ((along.y / size) * length) / 2 }
  const b = { x: ((-along.y / size) * width) / 2, y: ((along.x / size) * width) / 2 }
  const p = (s: number, t: number): [number, number] => [
    centre.x + a.x * s + b.x * t,
    centre.y + a.y * s + b.y * t,
  ]
  const curve = (...points: [number, number][]): PathSegment => [
    'C',
    ...(points.flat() as [number, number, number, number, number, number]),
  ]
  return [
    ['M', ...p(1, 0)],
    curve(p(1, K), p(K, 1), p(0, 1)),
    curve(p(-K, 1), p(-1, K), p(-1, 0)),
    curve(p(-1, -K), p(-K, -1), p(0, -1)),
    curve(p(K, -1), p(1, -K), p(1, 0)),
    ['Z'],
  ]
}

const none: Ink = { strokes: [], fills: [] }
const inked = (...strokes: Path[]): Ink => ({ strokes: strokes.flat(), fills: [] })

/** The filled dot of a slip stitch. */
export const slipInk = (point: Point, unit: number): Ink => ({
  ...none,
  fills: ovalPath(point, { x: 1, y: 0 }, 2 * PROPORTION.dot * unit, 2 * PROPORTION.dot * unit),
})

/** Slashes across a post at a height, leaning. */
function slashes(frame: Frame, count: number, middle: number, right: number, unit: number): Path {
  const step = PROPORTION.slashStep * unit
  const path: PathSegment[] = []
  for (let i = 0; i < count; i++) {
    const up = middle + (i - (count - 1) / 2) * step
    const half = PROPORTION.slash * unit
    const rise = PROPORTION.slashRise * unit
    path.push(...line(frame.at(right - half, up + rise), frame.at(right + half, up - rise)))
  }
  return path
}

/** Half of a bar: as wide as it is meant to be, less where neighbours stand close. */
const halfBar = ({ unit, room }: Stand): number => Math.min(PROPORTION.bar * unit, 0.4 * room.top)
const halfCross = ({ unit, room }: Stand): number => Math.min(PROPORTION.cross * unit, 0.36 * room.middle)

/** A post begins at most at this share of its height; one around another post, which hides its foot, at more. */
const LOWEST = 0.45
const LOWEST_POST = 0.72

/**
 * One plain stitch: + for sc, T with its slashes for the others. `foot`: where the post begins, above the base;
 * `around`: it goes around the post of another stitch.
 */
export function postInk(stitch: StitchKey, stand: Stand, foot: number, around = false): Ink {
  const { base, top, unit } = stand
  const frame = new Frame(base, top)
  const low = Math.min(foot, frame.length * (around ? LOWEST_POST : LOWEST))
  const high = frame.length - PROPORTION.head * unit
  const post = line(frame.at(0, low), frame.at(0, high))
  if (stitch === 'sc') {
    const middle = low + (high - low) * 0.55
    const half = halfCross(stand)
    return inked(post, line(frame.at(-half, middle), frame.at(half, middle)))
  }
  const half = halfBar(stand)
  const bar = line(frame.at(-half, high), frame.at(half, high))
  return inked(post, bar, slashes(frame, SLASHES[stitch], low + (high - low) * 0.52, 0, unit))
}

/** Several posts in one place, drawn together at the top: a lens of legs. */
export function bunchInk(
  stitch: StitchKey,
  legs: number,
  form: 'cluster' | 'puff' | 'popcorn',
  stand: Stand,
  foot: number,
): Ink {
  const { base, top, unit } = stand
  const frame = new Frame(base, top)
  const low = Math.min(foot, frame.length * 0.3)
  const high = frame.length - PROPORTION.head * unit
  const middle = (low + high) / 2
  const count = Math.max(2, Math.min(5, legs))
  const bulge = Math.min(PROPORTION.bulge * unit, 0.42 * stand.room.middle)
  const strokes: Path[] = []
  for (let i = 0; i < count; i++) {
    const out = ((2 * i) / (count - 1) - 1) * bulge
    strokes.push(quadratic(frame.at(0, low), frame.at(out * 2, middle), frame.at(0, high)))
    if (form === 'cluster') {
      const small = new Frame(frame.at(0, 0), frame.at(0, 1))
      strokes.push(slashes(small, SLASHES[stitch], middle, out, unit * (count > 3 ? 0.55 : 0.7)))
    }
  }
  const half = halfBar(stand)
  if (form === 'popcorn')
    strokes.push(ovalPath(frame.at(0, high), minus(frame.at(1, 0), frame.at(0, 0)), 2 * half, 0.2 * unit))
  else strokes.push(line(frame.at(-half, high), frame.at(half, high)))
  return inked(...strokes)
}

/** Legs from several places that meet at the top. */
export function decreaseInk(stitch: StitchKey, feet: readonly Point[], stand: Stand, foot: number): Ink {
  const { base, top, unit } = stand
  const whole = new Frame(base, top)
  const head = whole.at(0, whole.length - PROPORTION.head * unit)
  const half = halfBar(stand)
  const strokes = feet.flatMap((from) => {
    const leg = new Frame(from, head)
    const low = Math.min(foot, leg.length * 0.45)
    const middle = low + (leg.length - low) * 0.45
    const cross = PROPORTION.cross * 0.7 * unit
    return [
      line(leg.at(0, low), head),
      stitch === 'sc'
        ? line(leg.at(-cross, middle), leg.at(cross, middle))
        : slashes(leg, SLASHES[stitch], middle, 0, unit),
    ]
  })
  const bar =
    stitch === 'sc'
      ? []
      : line(
          whole.at(-half, whole.length - PROPORTION.head * unit),
          whole.at(half, whole.length - PROPORTION.head * unit),
        )
  return inked(...strokes, bar)
}

/** Open ovals on the way from base to top: a beginning chain. */
export function stackInk(count: number, { base, top, unit, room }: Stand, foot: number): Ink {
  const frame = new Frame(base, top)
  const low = Math.min(foot, frame.length * 0.3)
  const step = (frame.length - low) / Math.max(1, count)
  const length = Math.min(PROPORTION.ovalLength * unit, step * 0.9)
  const along = minus(frame.at(0, 1), frame.at(0, 0))
  const width = Math.min(PROPORTION.ovalWidth * unit, 0.6 * room.middle)
  return inked(
    ...Array.from({ length: count }, (_, i) =>
      ovalPath(frame.at(0, low + (i + 0.5) * step), along, length, width),
    ),
  )
}

/** Open ovals along a chain: each lies in the direction of its neighbours. */
export function chainInk(points: readonly Point[], ends: readonly [Point, Point], unit: number): Ink {
  return inked(
    ...points.map((point, i) => {
      const before = points[i - 1] ?? ends[0]
      const after = points[i + 1] ?? ends[1]
      const near = Math.min(
        i > 0 ? distance(point, points[i - 1]!) : Infinity,
        i + 1 < points.length ? distance(point, points[i + 1]!) : Infinity,
        unit,
      )
      const length = Math.min(PROPORTION.ovalLength * unit, near * 0.86)
      return ovalPath(
        point,
        minus(after, before),
        length,
        Math.min(PROPORTION.ovalWidth * unit, length / OVAL_LEAST),
      )
    }),
  )
}

/** A closed loop of chains with the dot that closes it. */
export function picotInk(points: readonly Point[], base: Point, top: Point, unit: number): Ink {
  const centre = { x: (base.x + top.x) / 2, y: (base.y + top.y) / 2 }
  const radius = distance(base, top) / 2
  const step = 2 * radius * Math.sin(Math.PI / (points.length + 1))
  const ovals = points.map((point) => {
    const out = minus(point, centre)
    return ovalPath(point, { x: -out.y, y: out.x }, Math.min(0.62 * unit, step * 0.84), 0.24 * unit)
  })
  const dot = new Frame(base, top).at(0, PROPORTION.dot * unit)
  return { strokes: ovals.flat(), fills: ovalPath(dot, { x: 1, y: 0 }, 0.2 * unit, 0.2 * unit) }
}

/** A small arc under the symbol: front loop opens towards the stitch, back loop away from it. */
export function loopInk(loop: 'front' | 'back', { base, top, unit }: Stand): Ink {
  const frame = new Frame(base, top)
  const half = 0.24 * unit
  const sign = loop === 'front' ? 1 : -1
  const up = 0.16 * unit
  const deep = 0.09 * unit * sign
  return inked(quadratic(frame.at(-half, up + deep), frame.at(0, up - deep), frame.at(half, up + deep)))
}

/** The foot of a post stitch: a hook that opens to one side (1: right, −1: left, seen along the stitch). */
export function hookInk(side: 1 | -1, stand: Stand, foot: number): Ink {
  const { base, top, unit } = stand
  const frame = new Frame(base, top)
  const low = Math.min(foot, frame.length * LOWEST_POST)
  const deep = PROPORTION.hook * unit
  const wide = side * Math.min(0.3 * unit, 0.35 * stand.room.middle)
  const p = (right: number, up: number): [number, number] => {
    const point = frame.at(right, up)
    return [point.x, point.y]
  }
  return inked([
    ['M', ...p(0, low)],
    ['C', ...p(0, low - deep * 1.3), ...p(wide, low - deep * 1.3), ...p(wide, low - deep * 0.1)],
  ])
}

/** A small wave over the symbol: worked backwards. */
export function reverseInk({ base, top, unit }: Stand): Ink {
  const frame = new Frame(base, top)
  const up = frame.length + 0.1 * unit
  const p = (right: number, more: number): [number, number] => {
    const point = frame.at(right * unit, up + more * unit)
    return [point.x, point.y]
  }
  return inked([
    ['M', ...p(-0.24, 0)],
    ['C', ...p(-0.08, 0.16), ...p(0.08, -0.16), ...p(0.24, 0)],
  ])
}

export const distance = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y)
const minus = (a: Point, b: Point): Point => ({ x: a.x - b.x, y: a.y - b.y })

/** Two inks as one. */
export const together = (...inks: readonly Ink[]): Ink => ({
  strokes: inks.flatMap((ink) => ink.strokes),
  fills: inks.flatMap((ink) => ink.fills),
})
