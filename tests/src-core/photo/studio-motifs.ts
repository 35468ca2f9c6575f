/**
 * Motifs for the studio, a second renderer of pictures: every petal a closed line of its own (pointed, heart, spoon,
 * shell, picot, round), laid over each other and filled by lines. Their true measures are walked out of what was filled.
 */
import { chance } from './flowers'

export const PETALS = ['round', 'pointed', 'heart', 'spoon', 'shell', 'picot'] as const
export type Petal = (typeof PETALS)[number]

/** Motifs without petals, by their corners. */
export const PLAIN = { disc: 0, square: 4, hexagon: 6, octagon: 8 } as const
export type Plain = keyof typeof PLAIN

/** A motif as filled places: 1 where yarn lies. `size` places to each side, `fine` places per millimetre. */
export interface Filled {
  readonly size: number
  readonly fine: number
  readonly on: Uint8Array
  readonly petals: number
  readonly overTips: number
  readonly overValleys: number
  readonly most: number
}

export interface MotifWish {
  readonly petal: Petal
  readonly petals: number
  readonly overTips: number
  /** Radius of the middle as a share of the tips. */
  readonly core: number
  /** Width of a petal as a share of what it has at its widest before it meets its neighbour. */
  readonly width: number
  readonly turn: number
  readonly uneven: number
  /** Height of the bumps of stitches along the edge, in mm, and their length. */
  readonly bump: number
  readonly stitch: number
  readonly seed: number
}

type Line = [number, number][]

/** Half the width of a petal at a share of its length from foot to tip, as a share of its widest. */
const HALF_WIDTHS: Record<Petal, (t: number) => number> = {
  round: (t) => Math.sqrt(Math.max(0, 1 - (2 * t - 1) ** 2)),
  pointed: (t) => (t < 0.45 ? Math.sin((Math.PI / 2) * (t / 0.45)) ** 0.7 : 1 - ((t - 0.45) / 0.55) ** 1.6),
  heart: (t) =>
    0.35 * (1 - t) + 0.98 * Math.sqrt(Math.max(0, 1 - ((t - 0.68) / 0.34) ** 2)) * Math.min(1, t + 0.35),
  spoon: (t) => (t < 0.45 ? 0.45 + 0.4 * t * t : Math.sqrt(Math.max(0, 1 - ((t - 0.68) / 0.32) ** 2))),
  shell: (t) => (t < 0.6 ? 0.55 + 0.75 * t : Math.sqrt(Math.max(0, 1 - ((t - 0.6) / 0.4) ** 2))),
  picot: (t) => (t < 0.9 ? Math.sqrt(Math.max(0, 1 - ((2 * t) / 0.92 - 1) ** 2)) : 0),
}

/** The closed line of a petal along the y axis from `foot` to `tip`, half as wide as `half`. */
function petalLine(wish: MotifWish, foot: number, tip: number, half: number, phase: number): Line {
  const steps = 160
  const length = tip - foot
  const bump = (along: number) => wish.bump * Math.sin((2 * Math.PI * along) / wish.stitch + phase)
  const right: Line = []
  const left: Line = []
  for (let at = 0; at <= steps; at++) {
    const t = (1 - Math.cos((Math.PI * at) / steps)) / 2
    const wide = HALF_WIDTHS[wish.petal](t) * half
    const bumped = wide + (wide > 3 * wish.bump ? bump(t * length) : 0)
    right.push([bumped, foot + t * length])
    left.push([-bumped, foot + t * length])
  }
  const line = [...right, ...left.reverse()]
  if (wish.petal === 'heart') {
    // The notch in the middle of the tip: the rim sinks towards the axis.
    const sunk = Math.min(0.12 * length, 0.4 * half)
    return line.map(([x, y]) => {
      const near = Math.max(0, 1 - Math.abs(x) / (0.55 * half))
      return y > foot + 0.8 * length ? [x, y - sunk * near * ((y - foot) / length)] : [x, y]
    })
  }
  return line
}

/** Fills a closed line into places, by the crossings of each row (even and odd). */
function fill(on: Uint8Array, size: number, fine: number, line: Line): void {
  const points = line.map(([x, y]) => [x * fine + size / 2, y * fine + size / 2] as const)
  const ys = points.map(([, y]) => y)
  const crossings: number[] = []
  for (
    let row = Math.max(0, Math.ceil(Math.min(...ys)));
    row <= Math.min(size - 1, Math.floor(Math.max(...ys)));
    row++
  ) {
    crossings.length = 0
    points.forEach(([x0, y0], at) => {
      const [x1, y1] = points[(at + 1) % points.length]!
      if (y0 <= row !== y1 <= row) crossings.push(x0 + ((row - y0) / (y1 - y0)) * (x1 - x0))
    })
    crossings.sort((a, b) => a - b)
    // Lines that cross themselves at a bump fill all the same.
    if (crossings.length > 1)
      on.fill(
        1,
        row * size + Math.max(0, Math.ceil(crossings[0]!)),
        row * size + Math.min(size - 1, Math.floor(crossings.at(-1)!)) + 1,
      )
  }
}

const turned = (line: Line, by: number): Line =>
  line.map(([x, y]) => [x * Math.cos(by) - y * Math.sin(by), x * Math.sin(by) + y * Math.cos(by)])

/** How far out anything is in a direction, in mm. */
function reachOf({ on, size, fine }: { on: Uint8Array; size: number; fine: number }, angle: number): number {
  for (let r = size / 2 - 1; r > 0; r -= 0.25) {
    const x = Math.round(size / 2 + r * -Math.sin(angle))
    const y = Math.round(size / 2 + r * Math.cos(angle))
    if (on[y * size + x]) return r / fine
  }
  return 0
}

/** Lays the petals of a motif and measures what came of it. */
export function motifOf(wish: MotifWish): Filled {
  const { petals, petal } = wish
  const tip = wish.overTips / 2
  const fine = Math.min(14, 1500 / (2.3 * tip))
  const size = Math.ceil(2.3 * tip * fine)
  const on = new Uint8Array(size * size)
  const core = wish.core * tip
  const sector = (2 * Math.PI) / petals
  // Where a petal is widest, and how wide its sector is there.
  const widest = { round: 0.5, pointed: 0.45, heart: 0.66, spoon: 0.68, shell: 0.6, picot: 0.46 }[petal]
  const lay = (bumps: boolean): Filled => {
    on.fill(0)
    const own = chance(wish.seed + 1)
    const round: Line = Array.from({ length: 360 }, (_, at) => {
      const angle = (at * Math.PI) / 180
      return [core * Math.cos(angle), core * Math.sin(angle)]
    })
    fill(on, size, fine, round)
    for (let k = 0; k < petals; k++) {
      const length = tip * (1 + wish.uneven * (2 * own() - 1))
      const foot = core * (petal === 'shell' ? 0.75 : 0.5)
      const half = wish.width * Math.tan(Math.min(1.2, sector / 2)) * (foot + widest * (length - foot))
      const most = Math.min(half, 0.6 * (length - foot) + 0.3 * core)
      const angle = wish.turn + k * sector + wish.uneven * sector * (own() - 0.5)
      const made = { ...wish, bump: bumps ? wish.bump : 0 }
      fill(on, size, fine, turned(petalLine(made, foot, length, most, 6 * own()), angle))
      if (petal === 'picot') {
        const width = Math.min(1.6, 0.4 * most)
        const spike: Line = [
          [-width, foot + 0.86 * (length - foot)],
          [width, foot + 0.86 * (length - foot)],
          [0.7 * width, length],
          [-0.7 * width, length],
        ]
        fill(on, size, fine, turned(spike, angle))
      }
    }
    const grid = 1440
    const reach = Array.from({ length: grid }, (_, at) =>
      reachOf({ on, size, fine }, wish.turn + (at * 2 * Math.PI) / grid),
    )
    const each = grid / petals
    let tips = 0
    let dips = 0
    for (let k = 0; k < petals; k++) {
      const part = (from: number, to: number) =>
        Array.from(
          { length: Math.max(1, Math.round(to) - Math.round(from)) },
          (_, at) => reach[(Math.round(from) + at + 2 * grid) % grid]!,
        )
      tips += Math.max(...part((k - 0.4) * each, (k + 0.4) * each))
      dips += Math.min(...part((k + 0.3) * each, (k + 0.7) * each))
    }
    return {
      ...{ size, fine, on, petals },
      overTips: (2 * tips) / petals,
      overValleys: (2 * dips) / petals,
      most: Math.max(...reach),
    }
  }
  const { overTips, overValleys } = lay(false)
  return { ...lay(true), overTips, overValleys }
}

/** A motif without petals: a disc, or a polygon whose corners are rounded as crochet rounds them. */
export function plainOf(shape: Plain, wish: Omit<MotifWish, 'petal' | 'petals'>): Filled {
  const tip = wish.overTips / 2
  const fine = Math.min(14, 1500 / (2.3 * tip))
  const size = Math.ceil(2.3 * tip * fine)
  const on = new Uint8Array(size * size)
  const sides = PLAIN[shape]
  const rounding = 0.06 * tip
  const half = Math.PI / Math.max(3, sides)
  const apothem = (tip - rounding) * Math.cos(half) + rounding
  const line: Line = Array.from({ length: 1440 }, (_, at) => {
    const angle = (at * Math.PI) / 720
    const off = (((angle % (2 * half)) + 2 * half) % (2 * half)) - half
    // To the straight side, or to the rounding about the corner's own middle, whichever is nearer.
    const straight = apothem / Math.cos(off)
    const centre = tip - rounding
    const turn = half - Math.abs(off)
    const round =
      centre * Math.cos(turn) + Math.sqrt(Math.max(0, rounding ** 2 - (centre * Math.sin(turn)) ** 2))
    const beyond = Math.tan(Math.abs(off)) * apothem > (apothem - rounding) * Math.tan(half)
    const far = sides === 0 ? tip : beyond ? Math.min(round, straight) : straight
    const bumped = far + wish.bump * Math.sin((2 * Math.PI * angle * far) / wish.stitch)
    return [bumped * Math.sin(angle), bumped * Math.cos(angle)]
  })
  fill(on, size, fine, turned(line, wish.turn))
  return {
    ...{ size, fine, on, petals: sides, overTips: 2 * tip, most: tip + wish.bump },
    overValleys: 2 * (sides === 0 ? tip : apothem),
  }
}
