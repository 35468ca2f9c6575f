/**
 * Motifs of the kitchen, a third renderer of pictures: discs, lenses and waves about a middle, whose line is known as
 * how far it reaches in each direction, with lace holes behind it and stitches as cells that are light in their middle.
 */

/** Numbers between 0 and 1 (Lehmer, after Park and Miller), the same each time. */
export function dice(seed: number): () => number {
  let state = (seed * 48_271 + 11) % 2_147_483_647 || 1
  const next = () => {
    state = (state * 48_271) % 2_147_483_647
    return state / 2_147_483_647
  }
  for (let warm = 0; warm < 8; warm++) next()
  return next
}

export const MAKES = [
  'wave',
  'scallop',
  'lens',
  'alternate',
  'mixed',
  'spike',
  'ball',
  'frill',
  'lace',
  'arch',
] as const
export type Make = (typeof MAKES)[number]

export interface Laid {
  readonly make: Make
  readonly petals: number
  readonly overTips: number
  readonly overValleys: number
  readonly most: number
  /** 1 on yarn, 0 beside it and in holes. */
  readonly covers: (x: number, y: number) => boolean
  /** Light and dark of its stitches, about 1. */
  readonly stitched: (x: number, y: number) => number
}

export interface LaidWish {
  readonly make: Make
  readonly petals: number
  readonly overTips: number
  /** Dip as a share of the tip, where the make leaves it open. */
  readonly dip: number
  readonly turn: number
  readonly relief: number
  /** How far stitches stand out of the line, and how wide one is, in mm. */
  readonly bump: number
  readonly stitch: number
  readonly random: () => number
}

const STEPS = 4320
/** The farther crossing of a ray with a disc; 0 where it passes by. */
const discReach = (off: number, centre: number, radius: number): number => {
  const across = centre * Math.sin(off)
  if (Math.abs(off) > Math.PI / 2 || Math.abs(across) > radius) return 0
  return centre * Math.cos(off) + Math.sqrt(radius * radius - across * across)
}

/** How far a petal goes on beside its own half, as a share of it: no gap as narrow as a hair is left between two. */
const BESIDE = 1.1

/** A petal by how far it reaches `off` its own direction. `half` is half the angle that it has. */
function petalOf(make: Make, tip: number, half: number, wish: LaidWish): (off: number) => number {
  const { dip, random } = wish
  const wide = 0.88 + 0.3 * random()
  switch (make) {
    case 'wave':
    case 'arch': {
      const power = make === 'arch' ? 0.45 : 0.5 + 1.4 * dip
      return (off) =>
        Math.abs(off) > BESIDE * half
          ? 0
          : tip *
            (dip +
              (1 - dip) *
                Math.max(0, 0.5 + 0.5 * Math.cos(Math.min(Math.PI, (Math.PI * Math.abs(off)) / half))) **
                  power)
    }
    case 'spike':
      return (off) =>
        Math.abs(off) > BESIDE * half ? 0 : tip * (1 - (1 - dip) * (Math.abs(off) / half) ** 0.85)
    case 'lens': {
      // Two arcs that meet at the tip: half as wide as `broad` in its middle, which lies at 0.62 of the tip.
      const centre = 0.62 * tip
      const broad = wide * centre * Math.tan(Math.min(1, half))
      return (off) => {
        let far = 0
        for (let r = 0.3 * tip; r <= tip; r += tip / 400) {
          const [along, across] = [r * Math.cos(off), Math.abs(r * Math.sin(off))]
          const u = (along - centre) / (tip - centre)
          if (u <= 1 && across <= broad * (1 - u * u)) far = r
        }
        return far
      }
    }
    default: {
      // A disc as large as its sector has room for, a little more or less.
      const share = make === 'ball' ? 0.94 : make === 'scallop' || make === 'frill' ? 1.12 * wide : wide
      const sine = Math.min(0.6, share * Math.sin(half))
      const centre = tip / (1 + sine)
      // It stands on a stem: narrow under a ball, as wide as the disc under a shell.
      const stem = (make === 'ball' ? 0.55 : 0.9) * centre * sine
      return (off) => {
        const on =
          Math.abs(off) < Math.PI / 2 ? Math.min(centre, stem / Math.max(1e-6, Math.abs(Math.sin(off)))) : 0
        return Math.max(discReach(off, centre, centre * sine), on)
      }
    }
  }
}

/** Lays a motif out. */
export function lay(wish: LaidWish): Laid {
  const { make, petals, turn, random, bump, stitch, relief } = wish
  const half = Math.PI / petals
  const tip = wish.overTips / 2
  const uneven = make === 'mixed' ? 0.05 : 0.015 * random()
  const short = make === 'alternate' ? 0.8 + 0.12 * random() : 1
  const own = Array.from({ length: petals }, (_, k) => {
    const length = tip * (k % 2 ? short : 1) * (1 + uneven * (2 * random() - 1))
    const shape: Make = make === 'mixed' ? (['scallop', 'lens', 'wave'] as const)[k % 3]! : make
    return { at: 2 * half * k + uneven * half * (random() - 0.5), reach: petalOf(shape, length, half, wish) }
  })
  const core = tip * (make === 'ball' ? 0.45 : wish.dip * 0.9)
  const smooth = Float64Array.from({ length: STEPS }, (_, at) => {
    const angle = (2 * Math.PI * at) / STEPS
    let far = core
    for (const petal of own) {
      let off = angle - petal.at
      off -= 2 * Math.PI * Math.round(off / (2 * Math.PI))
      if (Math.abs(off) < 3 * half) far = Math.max(far, petal.reach(off))
    }
    return far
  })
  const around = (from: number, to: number) =>
    Array.from({ length: Math.round(to) - Math.round(from) }, (_, i) => {
      return smooth[(Math.round(from) + i + STEPS) % STEPS]!
    })
  const sector = STEPS / petals
  const mean = (values: number[]) => values.reduce((sum, each) => sum + each, 0) / values.length
  const each = Array.from({ length: petals }, (_, k) => k)
  // Of petals that take turns, tip to tip is that of the longer ones.
  const long = make === 'alternate' ? each.filter((k) => k % 2 === 0) : each
  const overTips = 2 * mean(long.map((k) => Math.max(...around((k - 0.35) * sector, (k + 0.35) * sector))))
  const overValleys = 2 * mean(each.map((k) => Math.min(...around((k + 0.25) * sector, (k + 0.75) * sector))))
  // A short petal that the round in the middle swallows is none: nobody sees it.
  const shorter = each.filter((k) => k % 2 === 1).map((k) => Math.max(...around((k - 0.35) * sector, (k + 0.35) * sector))) // prettier-ignore
  const isSwallowed = make === 'alternate' && mean(shorter) < core + bump
  // Stitches stand out of the line by chance, each about a stitch wide; a frill has its own.
  const knots = Math.max(12, Math.round((Math.PI * 1.8 * tip) / stitch))
  const heights = Array.from({ length: knots }, () => bump * (random() - 0.5))
  const frills = make === 'frill' ? 5 * petals : 0
  const line = smooth.map((far, at) => {
    const place = (at / STEPS) * knots
    const [low, share] = [Math.floor(place), place % 1]
    const ease = share * share * (3 - 2 * share)
    const own = heights[low]! * (1 - ease) + heights[(low + 1) % knots]! * ease
    return far + own + (frills > 0 ? 0.35 * Math.cos((2 * Math.PI * frills * at) / STEPS) : 0)
  })
  const holes = make === 'lace' ? 0.07 * tip + 0.6 : 0
  const place = (x: number, y: number) => {
    const angle = Math.atan2(x, -y) - turn
    return { r: Math.hypot(x, y), angle: angle - 2 * Math.PI * Math.floor(angle / (2 * Math.PI)) }
  }
  return {
    ...{ make, petals: isSwallowed ? petals / 2 : petals, overTips, overValleys, most: Math.max(...line) },
    covers: (x, y) => {
      const { r, angle } = place(x, y)
      if (r > line[Math.min(STEPS - 1, Math.floor((angle / (2 * Math.PI)) * STEPS))]!) return false
      if (holes === 0) return true
      const off = angle / (2 * half) - Math.round(angle / (2 * half))
      const ring = 0.58 * tip
      return (
        Math.hypot(r * Math.cos(2 * half * off) - ring, r * Math.sin(2 * half * off)) >
        Math.min(holes, 0.3 * ring * half * 2)
      )
    },
    stitched: (x, y) => {
      const { r, angle } = place(x, y)
      const round = Math.floor(r / (1.3 * stitch))
      const count = Math.max(5, Math.round((2 * Math.PI * (round + 0.5) * 1.3 * stitch) / stitch))
      const u = ((angle / (2 * Math.PI)) * count + 0.37 * round) % 1
      const v = (r / (1.3 * stitch)) % 1
      const away = (2 * u - 1) ** 2 * 0.8 + (2 * v - 1) ** 2 * 0.6
      return 1 + relief * (0.5 - away)
    },
  }
}
