/** The middle of the motif and how many times its outline repeats round it. */
import { clearestOrder, standing } from './comb'
import type { Spectrum } from './comb'
import type { Spot } from './picture'

/** Directions in which the outline's reach is taken. */
export const DIRECTIONS = 1440
/** Orders of symmetry that are looked for. */
export const ORDER = { least: 3, most: 24 }
const HIGHEST = 96
/** A finer repeat is taken where it explains this share of what the best one does. */
const AS_GOOD = 0.72

/** How far the outline reaches from a middle in each direction, clockwise from 12 o'clock: its outermost crossing. */
export function reaches(outline: readonly Spot[], middle: Spot): Float64Array {
  const reach = new Float64Array(DIRECTIONS)
  const n = outline.length
  const step = (2 * Math.PI) / DIRECTIONS
  const polar = outline.map(({ x, y }) => ({
    turn: Math.atan2(x - middle.x, middle.y - y),
    far: Math.hypot(x - middle.x, y - middle.y),
  }))
  for (let at = 0; at < n; at++) {
    const from = polar[at]!
    const to = polar[(at + 1) % n]!
    let by = to.turn - from.turn
    if (by > Math.PI) by -= 2 * Math.PI
    if (by < -Math.PI) by += 2 * Math.PI
    const [low, high] = by >= 0 ? [from.turn, from.turn + by] : [from.turn + by, from.turn]
    for (let k = Math.ceil(low / step); k * step <= high; k++) {
      const t = by === 0 ? 0 : (k * step - from.turn) / by
      const far = from.far + t * (to.far - from.far)
      const index = ((k % DIRECTIONS) + DIRECTIONS) % DIRECTIONS
      if (far > reach[index]!) reach[index] = far
    }
  }
  for (let at = 0; at < DIRECTIONS; at++)
    if (reach[at] === 0) reach[at] = reach[(at + DIRECTIONS - 1) % DIRECTIONS]!
  return reach
}

const COSINES = Float64Array.from({ length: DIRECTIONS }, (_, at) =>
  Math.cos((2 * Math.PI * at) / DIRECTIONS),
)
const SINES = Float64Array.from({ length: DIRECTIONS }, (_, at) => Math.sin((2 * Math.PI * at) / DIRECTIONS))

/** Fourier coefficients of the reach: cosine and sine parts by order, the mean first. */
function spectrum(reach: Float64Array, highest = HIGHEST): { cosine: number; sine: number }[] {
  return Array.from({ length: highest + 1 }, (_, order) => {
    let cosine = 0
    let sine = 0
    for (let at = 0, turn = 0; at < DIRECTIONS; at++) {
      cosine += reach[at]! * COSINES[turn]!
      sine += reach[at]! * SINES[turn]!
      turn += order
      if (turn >= DIRECTIONS) turn -= DIRECTIONS
    }
    const by = (order === 0 ? 1 : 2) / DIRECTIONS
    return { cosine: cosine * by, sine: sine * by }
  })
}

export interface Symmetry {
  readonly middle: Spot
  readonly reach: Float64Array
  readonly mean: number
  /** How often the outline repeats, 3 to 24; 0 where it does not. */
  readonly order: number
  /** Direction of the first tip, clockwise from 12 o'clock, in radians. */
  readonly turn: number
  /** Share of all unevenness of the outline that the repeat explains, 0 to 1. */
  readonly share: number
  /** rms of the repeat as a share of the mean reach. */
  readonly depth: number
  /** rms of what the repeat does not explain, as a share of the mean reach. */
  readonly rest: number
  /** How much the next best order explains, as a share of this one; and the best of its own multiples. */
  readonly rival: number
  readonly finer: number
  /** Whether the repeat stands out so clearly that no chance of stitches makes it, however little it explains. */
  readonly stands: boolean
  /** The outline does not show it, only slits behind it do. */
  readonly hidden: boolean
  /** What the reach holds of each order. */
  readonly spectrum: Spectrum
  /** Slits behind the outline that repeat by themselves, one to each petal. */
  readonly slits: Slits | null
  /** They lie where the outline has its tips: petals so wide that the corners where they meet stand out farther than they. */
  readonly astride: boolean
}

/** How often slits repeat, and the first direction midway between two of them, in radians. */
export interface Slits {
  readonly order: number
  readonly turn: number
}

/** Least depth of a repeat that is more than stitches on a round outline, and of one that explains nearly all of it. */
const LEAST_DEPTH = 0.008
const LEAST_CLEAR_DEPTH = 0.003
const NEARLY_ALL = 0.9
/** Shells that all but close a circle meet in notches, whose multiples are strong: no bent sheet makes a round like that. */
const NOTCHED = { depth: 0.0015, finer: 0.2 } as const
/** Share of the unevenness from which a repeat, however shallow, is no chance of stitches. */
export const CLEAR = 0.65
/** From where on a repeat stands out (rounds of the tests' renderers come to 9), and from where on another one does so more. */
const STANDING = 13
export const BY_FAR = 12
/** What petals of one motif may differ by, rms as a share of the mean reach: more, and it is three arms and no repeat. */
const MOST_UNLIKE = 0.12

/**
 * Finds middle and order of an outline. Petals that touch at their tips leave nothing in the outline, but slits behind
 * it: where it shows no repeat, that of `open` counts, how much of the motif is open along each ray from the middle.
 */
export function findSymmetry(
  outline: readonly Spot[],
  first: Spot,
  open?: (middle: Spot, reach: Float64Array) => Float64Array,
): Symmetry {
  let middle = first
  let reach = reaches(outline, middle)
  for (let round = 0; round < 6; round++) {
    const one = spectrum(reach, 1)[1]!
    middle = { x: middle.x + one.sine, y: middle.y - one.cosine }
    reach = reaches(outline, middle)
    if (Math.hypot(one.cosine, one.sine) < 0.01) break
  }
  const own = repeatOf(reach)
  const length = open?.(middle, reach)
  const along = length?.map((each, at) => Math.min(each, MOST_OPEN * reach[at]!))
  const behind = along && repeatOf(along.map((each) => own.mean - each))
  const slits =
    behind?.stands && isLone(along!, behind.order) ? { order: behind.order, turn: behind.turn } : null

  const isSeen = !behind?.stands || (own.order > 0 && (own.stands || own.share > CLEAR))
  const hidden = { hidden: true, mean: own.mean, rest: own.rest, spectrum: own.spectrum }
  const astride = isSeen && behind?.stands === true && liesAstride(own, behind, length!, reach)
  return { middle, reach, ...(isSeen ? own : { ...behind, ...hidden }), slits, astride }
}

/** The most of the reach that one slit counts for: that it parts petals counts, not how much of it happens to be seen. */
const MOST_OPEN = 0.06

/**
 * How shallow an outline is, and of how many, whose tips may be corners between petals; how far off its dips slits are
 * that part petals, and how much of the reach is open there, as shares: picots and spaces of lace are shorter.
 */
const ASTRIDE = { depth: 0.08, most: 6, off: 0.35, open: 0.2 } as const

/** Whether slits lie behind the tips of a shallow outline, and not behind its dips. */
function liesAstride(
  own: Pick<Symmetry, 'order' | 'depth' | 'turn'>,
  behind: Slits,
  length: Float64Array,
  reach: Float64Array,
): boolean {
  if (own.order === 0 || own.order > ASTRIDE.most || own.order !== behind.order) return false
  if (own.depth > ASTRIDE.depth) return false
  const off = ((own.turn - behind.turn) * own.order) / (2 * Math.PI)
  if (Math.abs(off - Math.round(off)) < ASTRIDE.off) return false
  const sector = DIRECTIONS / own.order
  const first = (behind.turn * DIRECTIONS) / (2 * Math.PI) + sector / 2
  return Array.from({ length: own.order }, (_, petal) => {
    const near = Array.from({ length: Math.round(sector / 4) }, (__, by) => {
      const at = Math.round(first + petal * sector + by - sector / 8)
      return ((at % DIRECTIONS) + DIRECTIONS) % DIRECTIONS
    })
    return Math.max(...near.map((at) => length[at]! / reach[at]!))
  }).every((share) => share > ASTRIDE.open)
}

/** Places of a repeat; the most of the slits that may stand elsewhere in it, and how far from them, as shares. */
const PLACES = 60
const ELSEWHERE = 0.3
const APART = 0.3

/** Whether all slits of a repeat stand at one place of it. */
function isLone(open: Float64Array, order: number): boolean {
  const folded = new Float64Array(PLACES)
  open.forEach((each, at) => (folded[Math.floor((((at * order) / DIRECTIONS) % 1) * PLACES)]! += each))
  const near = folded.map(
    (each, at) => folded[(at + PLACES - 1) % PLACES]! + each + folded[(at + 1) % PLACES]!,
  )
  // The blur of the rim is everywhere.
  const [least, most] = [Math.min(...near), Math.max(...near)]
  const widest = near.indexOf(most)
  return near.every((each, at) => {
    const far = Math.abs(((at - widest + 1.5 * PLACES) % PLACES) - PLACES / 2)
    return far <= APART * PLACES || each - least < ELSEWHERE * (most - least)
  })
}

/** How often a reach repeats. */
function repeatOf(reach: Float64Array): Omit<Symmetry, 'middle' | 'reach' | 'slits' | 'astride'> {
  const parts = spectrum(reach)
  const mean = parts[0]!.cosine
  const powers = parts.map(({ cosine, sine }) => (cosine * cosine + sine * sine) / 2)
  const total = powers.slice(2).reduce((sum, each) => sum + each, 0)
  const explained = (order: number): number => {
    let sum = 0
    for (let k = order; k <= HIGHEST; k += order) sum += powers[k]!
    return sum
  }
  const orders = Array.from({ length: ORDER.most - ORDER.least + 1 }, (_, at) => ORDER.least + at)
  const most = Math.max(...orders.map(explained))
  const strongest = orders.reduce(
    (best, each) => (explained(each) >= AS_GOOD * most ? each : best),
    ORDER.least,
  )
  // A multiple that no petals repeat as often as, and that explains as much, is that of the stitches.
  const multiples = Array.from({ length: Math.floor(HIGHEST / strongest) }, (_, at) => (at + 1) * strongest)
  const stitches = multiples.find(
    (each) => each > ORDER.most && explained(each) >= AS_GOOD * explained(strongest),
  )
  const largest = stitches ?? strongest
  const clearest = clearestOrder({ powers, mean }, orders)
  // A finer one of the same holds all that is clear in it, or more: no other has to stand out by far.
  const by = clearest.standing >= STANDING && clearest.order % largest === 0 ? 0 : BY_FAR
  const isClearer = clearest.standing > standing({ powers, mean }, largest) + by
  const order = isClearer ? clearest.order : largest
  const own = explained(order)
  const rival = Math.max(
    0,
    ...orders.filter((each) => each % order !== 0 && order % each !== 0).map((each) => explained(each) / own),
  )
  const finer = Math.max(
    0,
    ...orders.filter((each) => each > order && each % order === 0).map((each) => explained(each) / own),
  )
  const depth = Math.sqrt(own) / mean
  const clear = own > NEARLY_ALL * total
  const stands = standing({ powers, mean }, order) >= STANDING
  const isNotched = stands && finer > NOTCHED.finer
  const least = isNotched ? NOTCHED.depth : clear || stands ? LEAST_CLEAR_DEPTH : LEAST_DEPTH
  const repeats =
    order <= ORDER.most &&
    depth >= least &&
    (stands || (own / total > 0.3 && Math.sqrt(total - own) < MOST_UNLIKE * mean))
  const lead = parts[order]!
  return {
    mean,
    order: repeats ? order : 0,
    turn: Math.atan2(lead.sine, lead.cosine) / order,
    share: total > 0 ? own / total : 0,
    depth,
    rest: Math.sqrt(Math.max(0, total - (repeats ? own : 0))) / mean,
    rival,
    finer,
    stands: repeats && stands,
    hidden: false,
    spectrum: { powers, mean },
  }
}
