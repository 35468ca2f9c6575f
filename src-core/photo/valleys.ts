/**
 * Where petals part. Petals that bulge leave a cleft between them that is narrower than the lens can show, so that a
 * line drawn at half the light ends too far out. What a blur keeps is the sum: along an arc across the cleft, the
 * light that is missing from the motif is the width of the cleft, however it is smeared. These widths, from where the
 * cleft is open down to where it closes, are fitted by a law of growth; the dip is where the width comes to nothing.
 */
import type { Evened } from './light'
import type { Spot } from './picture'
import type { Plane } from './rectify'
import { DIRECTIONS } from './symmetry'
import type { Symmetry } from './symmetry'
import { slitBehind, spaceBehind } from './slits'
import type { Slit } from './slits'
import { meanOf } from './tips'

/** How the width of a cleft grows with the distance from its dip: at once, round, straight, drawn out to a point. */
const GROWTHS = [0, 0.5, 1, 1.5, 2, 2.5]
/** The most, as a share of the widest, that stitches add to or take from all widths. */
const MOST_BASE = 0.03
/** Share of the sector on each side of its line that an arc takes in. */
const ARC = 0.4
/** Widths (in multiples of the blur, and in mm) up to which the law is fitted. */
const FIT_BLURS = 7
const FIT_WIDTH = 2.2
/** A cleft is closed under this share of its width; it narrows again under this share of its widest, of so many mm. */
const CLOSED = 0.12
const NARROWS = 0.88
const LEAST_WIDTH = 0.35
/** Beyond the cleft as it was seen further out: multiples of the blur, and mm (stitches, petals that bulge). */
const BEYOND_BLURS = 2.2
const BEYOND = 0.3
/** How far beside it the motif is looked at, in mm (some stitches), and the least share of that. */
const BESIDE = 8
const LEAST_BESIDE = 0.4
/** The ends of an arc that are nearer to the ground than this share of what they are from it elsewhere see no motif. */
const BARE_ENDS = 0.4
/** Yarn so many times as light as the ground has shadows that look like it. */
const LIGHTER = 1.5
/** The least distance between places that are looked at, in mm. */
const CLOSEST = 0.12
/** What stitches take from the width of a cleft or leave of it, in mm: two sides of a strand of fine yarn. */
const STITCHES = 0.4
/** The nearest to the middle that a dip is looked for, as a share of the tips. */
const NEAREST = 0.15

/** How a cleft opens. */
interface Law {
  /** Distance of the dip from the middle, in places. */
  readonly far: number
  /** Residue of the fit as a share of the widths it was fitted to. */
  readonly stray: number
  /** How its width grows from there; from 2 on it is drawn out so far that nobody sees where it ends. */
  readonly growth: number
}

export interface Valley extends Law {
  /** How much farther out it is as wide as stitches differ by: as far off its end may be, in places. */
  readonly thin: number
  /** Where it goes on behind a narrow. */
  readonly slit: Slit | null
  /** Where a space ends that petals close off which touch in front of it; null where there is none. */
  readonly space: number | null
}

/** What is seen along the line of a cleft, from near the middle outwards: distances, widths, lengths of the arcs. */
interface Cleft {
  readonly far: number[]
  readonly width: number[]
  readonly arc: number[]
  /** How much of the barest place of each arc is ground. */
  readonly barest: number[]
  /** Yarn is lighter than the ground, so that shadows on it look like ground that is half seen. */
  readonly shadows: boolean
}

/** What an arc across the cleft shows, from left to right. */
interface Arc {
  /** Three values for each place. */
  readonly values: Float32Array
  readonly count: number
  /** Places of the plane between its places, and along all of it. */
  readonly step: number
  readonly length: number
}

/** Distance between places that are looked at, in places of a plane: half of one, but no less than a lens can show. */
const stepOf = ({ scale }: Plane): number => Math.max(0.5, CLOSEST * scale)

/**
 * The colours of an arc round the middle from direction `from` on, `by` to each next place. As `colourAt` does, but with
 * nothing handed to and fro, and turning from place to place by multiplying: this is done a million times.
 */
function seenAlong(
  { width, height }: Plane,
  ratio: Float32Array,
  middle: Spot,
  r: number,
  from: number,
  by: number,
  values: Float32Array,
): void {
  const [mx, my] = [middle.x, middle.y]
  const [cosine, sine] = [Math.cos(by), Math.sin(by)]
  let dx = r * Math.sin(from)
  let dy = -r * Math.cos(from)
  for (let to = 0; to < values.length; to += 3) {
    const x = mx + dx
    const y = my + dy
    const left = Math.min(width - 2, Math.max(0, Math.floor(x)))
    const top = Math.min(height - 2, Math.max(0, Math.floor(y)))
    const u = Math.min(1, Math.max(0, x - left))
    const v = Math.min(1, Math.max(0, y - top))
    const at = 3 * (top * width + left)
    const below = at + 3 * width
    const w0 = (1 - u) * (1 - v)
    const w1 = u * (1 - v)
    const w2 = (1 - u) * v
    const w3 = u * v
    values[to] = ratio[at]! * w0 + ratio[at + 3]! * w1 + ratio[below]! * w2 + ratio[below + 3]! * w3
    values[to + 1] = ratio[at + 1]! * w0 + ratio[at + 4]! * w1 + ratio[below + 1]! * w2 + ratio[below + 4]! * w3 // prettier-ignore
    values[to + 2] = ratio[at + 2]! * w0 + ratio[at + 5]! * w1 + ratio[below + 2]! * w2 + ratio[below + 5]! * w3 // prettier-ignore
    const turned = dx * cosine - dy * sine
    dy = dx * sine + dy * cosine
    dx = turned
  }
}

/** Arcs across the cleft at distances `far` from the middle. */
function arcsAcross(
  plane: Plane,
  evened: Evened,
  middle: Spot,
  turn: number,
  sector: number,
  far: readonly number[],
): Arc[] {
  const wide = ARC * sector
  return far.map((r) => {
    const arc = wide * r
    const count = 2 * Math.max(4, Math.round(arc / stepOf(plane))) + 1
    const values = new Float32Array(3 * count)
    seenAlong(plane, evened.ratio, middle, r, turn - wide, (2 * wide) / (count - 1), values)
    return { values, count, step: (2 * arc) / (count - 1), length: 2 * arc }
  })
}

/** The ground in the cleft, with its shadow: the middle of the outermost arcs. */
function groundOf(arcs: readonly Arc[]): number[] {
  const outer = arcs.slice(-Math.max(4, Math.round(arcs.length * 0.08)))
  return [0, 1, 2].map((c) => {
    const values = outer.map(({ values, count }) => values[3 * ((count - 1) / 2) + c]!).sort((a, b) => a - b)
    return values[values.length >> 1]!
  })
}

/** How much of each place of an arc is ground rather than motif. */
function openShares(
  { values, count }: Arc,
  motif: readonly number[],
  ground: readonly number[],
): Float64Array {
  const span = motif.reduce((sum, value, c) => sum + (ground[c]! - value) ** 2, 0)
  const shares = new Float64Array(count)
  // One for each colour: how much of the share lies in it.
  const [red, green, blue] = [0, 1, 2].map((c) => (ground[c]! - motif[c]!) / Math.max(1e-6, span)) as [
    number,
    number,
    number,
  ]
  const least = red * motif[0]! + green * motif[1]! + blue * motif[2]!
  for (let at = 0; at < count; at++) {
    const share = red * values[3 * at]! + green * values[3 * at + 1]! + blue * values[3 * at + 2]! - least
    shares[at] = share > 1.1 ? 1.1 : share < -0.6 ? -0.6 : share
  }
  return shares
}

/**
 * Widths of the cleft along one line, from near the middle outwards. Stitches are light and dark, and the sharper the
 * picture the more: so the light is added up only where the cleft can be, a blur beyond where it was seen last, and
 * the motif that it is measured against is the one beside it, on the same arc and so in the same round.
 */
function widthsAlong(
  plane: Plane,
  evened: Evened,
  middle: Spot,
  turn: number,
  sector: number,
  tip: number,
  blur: number,
): Cleft {
  const far: number[] = []
  for (let r = NEAREST * tip; r <= tip; r += stepOf(plane)) far.push(r)
  const arcs = arcsAcross(plane, evened, middle, turn, sector, far)
  const ground = groundOf(arcs)
  // The motif roughly: both ends of the arcs, evened out over neighbours further in. Sums from the first arc on.
  const ends = new Float64Array(3 * (arcs.length + 1))
  arcs.forEach(({ values, count }, at) => {
    const part = Math.max(1, Math.round(count * 0.22))
    for (let c = 0; c < 3; c++) {
      let sum = 0
      for (let i = 0; i < part; i++) sum += values[3 * i + c]! + values[3 * (count - 1 - i) + c]!
      ends[3 * (at + 1) + c] = ends[3 * at + c]! + sum / (2 * part)
    }
  })
  const around = Math.max(2, Math.round(1.2 * plane.scale))
  const roughly = arcs.map((_, at) => {
    const first = Math.max(0, at - 2 * around)
    const mean = (c: number) => (ends[3 * (at + 1) + c]! - ends[3 * first + c]!) / (at + 1 - first)
    return [mean(0), mean(1), mean(2)]
  })
  // Beyond pointed petals the ends of an arc see ground, which is no motif to measure by: all of it is open.
  const apart = roughly.map((motif) => Math.hypot(...motif.map((each, c) => each - ground[c]!)))
  const usual = apart.slice().sort((a, b) => a - b)[apart.length >> 1]!
  const [width, barest] = [new Array<number>(arcs.length), new Array<number>(arcs.length)]
  const beyond = BEYOND_BLURS * blur + BEYOND * plane.scale
  // The cleft as it was seen on the arc further out, from the middle of the arc, in places of the plane.
  let [left, right] = [-Infinity, Infinity]
  const middles: number[] = []
  for (let at = arcs.length - 1; at >= 0; at--) {
    const arc = arcs[at]!
    if (left === -Infinity && apart[at]! < BARE_ENDS * usual) {
      width[at] = arc.length
      barest[at] = 1
      continue
    }
    const half = (arc.count - 1) / 2
    const [from, to] = [left - beyond, right + beyond].map((off) =>
      Math.min(arc.count - 1, Math.max(0, Math.round(half + off / arc.step))),
    ) as [number, number]
    const motif = besides(arc, from, to, BESIDE * plane.scale) ?? roughly[at]!
    const shares = openShares(arc, motif, ground)
    let open = 0
    let most = 0
    let [first, last] = [-1, -1]
    for (let i = from; i <= to; i++) {
      most = Math.max(most, shares[i]!)
      open += shares[i]! * arc.step
      if (shares[i]! > 0.5) {
        if (first < 0) first = i
        last = i
      }
    }
    width[at] = open
    barest[at] = most
    if (first >= 0) {
      ;[left, right] = [(first - half) * arc.step, (last - half) * arc.step]
      middles.push((left + right) / 2)
    } else {
      // No more than a blur is seen of it: it goes on where it was.
      const near = middles.slice(-Math.max(4, 2 * around))
      left = right = near.length > 0 ? meanOf(near) : 0
    }
  }
  const brightness = ([red, green, blue]: readonly number[]) =>
    0.2126 * red! + 0.7152 * green! + 0.0722 * blue!
  const yarn = meanOf(roughly.map(brightness))
  const shadows = yarn > LIGHTER * brightness(ground)
  return { far, width, barest, shadows, arc: arcs.map(({ length }) => length) }
}

/** The motif on an arc beside the places `from` to `to`, up to `reach` places of the plane away; null where little of it is there. */
function besides({ values, count, step }: Arc, from: number, to: number, reach: number): number[] | null {
  const most = Math.round(reach / step)
  const sum = [0, 0, 0]
  let places = 0
  for (let at = Math.max(0, from - most); at <= Math.min(count - 1, to + most); at++) {
    if (at >= from && at <= to) continue
    for (let c = 0; c < 3; c++) sum[c]! += values[3 * at + c]!
    places++
  }
  return places * step < LEAST_BESIDE * reach ? null : sum.map((each) => each / places)
}

/** A law (r − dip)^growth, blurred along r. */
function law(r: number, dip: number, growth: number, blur: number): number {
  let sum = 0
  for (const [off, weight] of [
    [-1.73, 1 / 6],
    [-0.6, 1 / 6],
    [0, 1 / 3],
    [0.6, 1 / 6],
    [1.73, 1 / 6],
  ] as const)
    sum += r - dip + off * blur > 0 ? weight * (r - dip + off * blur) ** growth : 0
  return sum
}

/** The straight line of `values` over `over`, by least squares, that begins within ±most: its slope and what it leaves. */
function straightFit(
  over: readonly number[],
  values: readonly number[],
  most: number,
): { slope: number; residue: number } {
  const n = over.length
  let [x, y, xx, xy, yy] = [0, 0, 0, 0, 0]
  for (let at = 0; at < n; at++) {
    const [a, b] = [over[at]!, values[at]!]
    x += a
    y += b
    xx += a * a
    xy += a * b
    yy += b * b
  }
  const across = xx - (x * x) / n
  if (across <= 1e-12) return { slope: 0, residue: Infinity }
  const slope = (xy - (x * y) / n) / across
  const base = Math.min(most, Math.max(-most, (y - slope * x) / n))
  const held = (xy - base * x) / xx
  return {
    slope: held,
    residue: Math.max(
      0,
      yy + n * base * base + held * held * xx - 2 * base * y - 2 * held * xy + 2 * base * held * x,
    ),
  }
}

/** The dip of one cleft; null where none opens. `blur` in places. */
function dipOf({ far, width, arc, barest, shadows }: Cleft, blur: number, scale: number): Valley | null {
  const smooth = width.map((_, at) => {
    const near = width.slice(Math.max(0, at - 2), at + 3)
    return near.reduce((sum, each) => sum + each, 0) / near.length
  })
  const full = Math.max(FIT_BLURS * blur, FIT_WIDTH * scale)
  // Inwards from the outermost place: the last one from which the cleft only narrows.
  let end = smooth.length - 1
  while (end > 0 && smooth[end]! > Math.min(full, 0.62 * arc[end]!)) end--
  if (end >= smooth.length - 2) return null
  let closed = end
  while (closed > 0 && smooth[closed]! > CLOSED * smooth[end]!) closed--
  // Petals that bulge towards each other: the cleft widens from its dip and narrows again; the law holds that far.
  let widest = closed
  for (let at = closed; at <= end; at++) {
    if (smooth[at]! > smooth[widest]!) widest = at
    else if (smooth[at]! < NARROWS * smooth[widest]! && smooth[widest]! > LEAST_WIDTH * scale) {
      end = widest
      break
    }
  }
  const highest = smooth[end]!
  const start = Math.max(0, closed - Math.max(6, Math.round((end - closed) * 0.8), Math.round(4 * blur)))
  const r = far.slice(start, end + 1)
  const g = width.slice(start, end + 1)
  let best: (Law & { residue: number; slope: number }) | null = null
  const tryDip = (growth: number, dip: number) => {
    const shape = r.map((each) => law(each, dip, growth, blur))
    const { slope, residue } = straightFit(shape, g, MOST_BASE * highest)
    if (slope > 0 && (!best || residue < best.residue))
      best = { far: dip, residue, growth, slope, stray: Math.sqrt(residue / g.length) / highest }
  }
  for (const growth of GROWTHS) {
    for (let dip = r[0]!; dip < far[end]! - 0.5; dip += 1) tryDip(growth, dip)
    const near = (best as Law | null)?.far ?? r[0]!
    for (let by = -0.75; by < 1; by += 0.25) tryDip(growth, near + by)
  }
  const chosen = best as (Law & { slope: number }) | null
  if (!chosen) return null
  const bare = shadows ? barest : undefined
  const slit = slitBehind(far, width, chosen.far, blur, scale, bare)
  const space = slit ? null : spaceBehind(far, width, chosen.far, blur, scale, bare)
  // Of a law slope · (r − dip)^growth.
  const thin = chosen.growth === 0 ? 0 : ((STITCHES * scale) / chosen.slope) ** (1 / chosen.growth)
  return { far: chosen.far, stray: chosen.stray, growth: chosen.growth, thin, slit, space }
}

/** The dips between all petals, about the directions `at`; null for each that cannot be made out. */
export function valleysOf(
  plane: Plane,
  evened: Evened,
  { middle, order }: Symmetry,
  tips: readonly { far: number; at: number }[],
  dips: readonly { at: number }[],
  blur: number,
): (Valley | null)[] {
  return tips.map((tip, petal) => {
    const next = tips[(petal + 1) % order]!
    let between = next.at - tip.at
    while (between < 0) between += DIRECTIONS
    while (between >= DIRECTIONS) between -= DIRECTIONS
    const turn = (dips[petal]!.at * 2 * Math.PI) / DIRECTIONS
    const sector = (between * 2 * Math.PI) / DIRECTIONS
    const cleft = widthsAlong(plane, evened, middle, turn, sector, Math.min(tip.far, next.far), blur)
    return dipOf(cleft, blur, plane.scale)
  })
}
