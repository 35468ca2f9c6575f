/**
 * Motifs for the desk, a sixth renderer: petals as curves of their own (cosines, circles on a ring, superellipses,
 * almonds between two arcs, teardrops of a cubic, shells with a crimped rim), asked by place whether they cover it.
 * Stitches are bumps of a height whose slope is lit. True measures are taken along rays, before stitches crimp the rim.
 */

export const FORMS = ['cosine', 'scallop', 'super', 'almond', 'teardrop', 'crimped'] as const
export type Form = (typeof FORMS)[number]

/** Numbers between 0 and 1, the same each time (sfc32). */
export function dice(seed: number): () => number {
  let [a, b, c, d] = [0x9e3779b9, 0x243f6a88, 0xb7e15162, seed ^ 0xdeadbeef]
  const next = () => {
    const t = (a + b + d) | 0
    d = (d + 1) | 0
    a = b ^ (b >>> 9)
    b = (c + (c << 3)) | 0
    c = ((c << 21) | (c >>> 11)) + t
    return (t >>> 0) / 4_294_967_296
  }
  for (let i = 0; i < 16; i++) next()
  return next
}

export interface Wish {
  readonly form: Form
  readonly petals: number
  readonly overTips: number
  /** How uneven petals are: shares of their length, place and width. */
  readonly uneven: number
  readonly stitch: number
  /** Height of the crimps that stitches make in the rim, in mm. */
  readonly crimp: number
  readonly roll: () => number
}

/** A motif on a board of places about its middle: 1 where it covers. */
export interface Laid {
  readonly fine: number
  readonly half: number
  readonly side: number
  readonly covers: Uint8Array
  /** How much the slope of the stitches leans to the right and down. */
  readonly leans: Float32Array
  readonly petals: number
  readonly overTips: number
  readonly overValleys: number
  readonly most: number
}

interface Petal {
  readonly angle: number
  readonly length: number
  readonly wide: number
}

/** Whether a petal on its axis (out, and off to the side, in mm) covers; `by` is what stitches add to its rim. */
type Cover = (petal: Petal, out: number, off: number, by: number) => boolean

function coverOf({ form, petals, overTips, roll }: Wish): { core: number; petal: Cover } {
  const tip = overTips / 2
  const sector = Math.PI / petals
  const between = (least: number, most: number) => least + (most - least) * roll()
  // The more petals, the less room to part them.
  const shallow = Math.min(1, petals / 16)
  const core = tip * between(0.35 + 0.3 * shallow, 0.55 + 0.25 * shallow)
  const room = (at: number) => at * Math.tan(Math.min(1.1, sector))
  const bulge = between(0.86, 1.15)
  switch (form) {
    case 'cosine': {
      const power = between(0.5, 1.6)
      return {
        core,
        petal: ({ length }, out, off, by) => {
          const angle = Math.atan2(off, out)
          if (Math.abs(angle) > sector * 1.02) return false
          const high = (1 + Math.cos((angle * Math.PI) / sector)) / 2
          return Math.hypot(out, off) < core + (length - core) * high ** power + by
        },
      }
    }
    case 'scallop': {
      // A circle that ends at the tip; neighbours overlap or all but touch.
      const share = Math.sin(Math.min(1.2, sector))
      const radius = ((tip * share) / (1 + share)) * between(0.97, 1.35)
      return {
        core: Math.max(core, tip - 2 * radius),
        petal: ({ length, wide }, out, off, by) =>
          Math.hypot(out - length + radius, off / wide) < radius + by,
      }
    }
    case 'super': {
      const power = between(2, 3.4)
      const inner = 0.6 * core
      return {
        core,
        petal: ({ length, wide }, out, off, by) => {
          const middle = (length + inner) / 2
          const across = Math.min(room(middle) * bulge, 0.5 * length) * wide + by
          const u = Math.abs(out - middle) / ((length - inner) / 2 + by)
          return u < 1 && Math.abs(off) < across * (1 - u ** power) ** (1 / power)
        },
      }
    }
    case 'almond': {
      const inner = 0.5 * core
      return {
        core,
        petal: ({ length, wide }, out, off, by) => {
          const half = (length - inner) / 2
          const across = Math.min(room(inner + half) * bulge, 0.8 * half) * wide
          const radius = (half * half + across * across) / (2 * across)
          return Math.hypot(out - inner - half, Math.abs(off) + radius - across) < radius + 0.7 * by
        },
      }
    }
    case 'teardrop': {
      const inner = 0.7 * core
      return {
        core,
        petal: ({ length, wide }, out, off, by) => {
          const t = (out - inner) / (length + by - inner)
          if (t <= 0 || t >= 1) return false
          const across = Math.min(room(inner + 0.7 * (length - inner)) * bulge, 0.45 * length) * wide
          return Math.abs(off) < across * 2.6 * t * Math.sqrt(1 - t) * (0.55 + 0.45 * t) + by
        },
      }
    }
    case 'crimped': {
      // Shells: fans over a core that is nearly as large, their rim in small waves.
      const inner = tip * between(0.62, 0.78)
      const waves = petals > 14 ? 0 : Math.round(between(3, 5))
      return {
        core: inner,
        petal: ({ length, wide }, out, off, by) => {
          const rise = length - inner
          const r = Math.hypot(out, off)
          const u = Math.atan2(off, out) / (sector * wide * bulge)
          if (Math.abs(u) > 1) return false
          const wave = waves > 0 ? 0.06 * rise * (Math.cos(u * Math.PI * waves) - 1) : 0
          return r < inner + rise * Math.sqrt(1 - u * u) + wave + by
        },
      }
    }
  }
}

/** Places of the board for a mm. */
const FINE = 7
const RAYS = 2160

export function laid(wish: Wish): Laid {
  const { petals, overTips, uneven, stitch, crimp, roll } = wish
  const sector = (2 * Math.PI) / petals
  const turn = roll() * 2 * Math.PI
  const { core, petal } = coverOf(wish)
  const astray = () => uneven * (2 * roll() - 1)
  const each: Petal[] = Array.from({ length: petals }, (_, k) => ({
    angle: turn + k * sector + astray() * sector,
    length: (overTips / 2) * (1 + astray()),
    wide: 1 + 1.5 * astray(),
  }))
  const phase = roll() * 6
  const isIn = (x: number, y: number, crimped: boolean): boolean => {
    const r = Math.hypot(x, y)
    if (r < core) return true
    const about = Math.atan2(x, -y)
    const by = crimped ? crimp * Math.cos((2 * Math.PI * about * r) / stitch + phase) : 0
    const nearest = Math.round((about - turn) / sector)
    for (let k = nearest - 1; k <= nearest + 1; k++) {
      const one = each[((k % petals) + petals) % petals]!
      const off = about - one.angle
      if (petal(one, r * Math.cos(off), r * Math.sin(off), by)) return true
    }
    return false
  }
  const reachOf = (crimped: boolean) =>
    Float64Array.from({ length: RAYS }, (_, at) => {
      const angle = turn + (at / RAYS) * 2 * Math.PI
      let r = overTips * 0.57
      while (r > 0 && !isIn(r * Math.sin(angle), -r * Math.cos(angle), crimped)) r -= 0.03
      return r
    })
  const [reach, drawn] = [reachOf(false), reachOf(true)]
  const ofEach = (line: Float64Array, from: number, to: number, of: (...values: number[]) => number) =>
    Array.from({ length: petals }, (_, k) => {
      const part: number[] = []
      for (let i = Math.round(((k + from) * RAYS) / petals); i <= ((k + to) * RAYS) / petals; i++)
        part.push(line[((i % RAYS) + RAYS) % RAYS]!)
      return of(...part)
    })
  const mean = (values: readonly number[]) => values.reduce((sum, each) => sum + each, 0) / values.length
  // Stitches are no part of a measure, but where they close a cleft it is closed.
  const closed = ofEach(drawn, 0.2, 0.8, Math.min)
  const dips = ofEach(reach, 0.2, 0.8, Math.min).map((dip, k) => (closed[k]! > dip + 1 ? closed[k]! : dip))
  const most = Math.max(...reach) + crimp
  const half = Math.ceil((most + 1) * FINE)
  const side = 2 * half + 1
  const covers = new Uint8Array(side * side)
  const leans = new Float32Array(2 * side * side)
  for (let row = 0; row < side; row++)
    for (let column = 0; column < side; column++) {
      const [x, y] = [(column - half) / FINE, (row - half) / FINE]
      const at = row * side + column
      if (!isIn(x, y, true)) continue
      covers[at] = 1
      // Bumps in rounds: a height of two waves, along the round and across it, and which way it leans.
      const r = Math.hypot(x, y) + 1e-6
      const round = Math.floor(r / stitch)
      const count = Math.max(5, Math.round((2 * Math.PI * (round + 0.5) * stitch) / stitch))
      const along = count * Math.atan2(x, -y) + (round & 1) * Math.PI
      const out = (2 * Math.PI * r) / stitch
      const [upOut, upAlong] = [Math.sin(out), Math.sin(along)]
      leans[2 * at] = (upOut * x - upAlong * y) / r
      leans[2 * at + 1] = (upOut * y + upAlong * x) / r
    }
  return {
    ...{ fine: FINE, half, side, covers, leans, petals, most },
    overTips: 2 * mean(ofEach(reach, -0.4, 0.4, Math.max)),
    overValleys: 2 * mean(dips),
  }
}
