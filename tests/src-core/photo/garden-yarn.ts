/** Chance, and yarn that is laid: plied, of colours that pass into each other, with ends of fibres standing off. */

export type Rgb = readonly [number, number, number]

export interface Chance {
  roll(): number
  between(least: number, most: number): number
  /** Around nought, 1 is its usual distance. */
  bell(): number
  pick<T>(list: readonly T[]): T
}

/** A sequence of chance: steps of the golden ratio, each stirred (after Steele, Lea and Flood 2014). */
export function chance(seed: number): Chance {
  let at = Math.imul(seed + 0x1b873, 0x9e3779b1)
  const roll = () => {
    at = (at + 0x9e3779b9) | 0
    let mix = Math.imul(at ^ (at >>> 16), 0x21f0aaad)
    mix = Math.imul(mix ^ (mix >>> 15), 0x735a2d97)
    return ((mix ^ (mix >>> 15)) >>> 0) / 4_294_967_296
  }
  const between = (least: number, most: number) => least + (most - least) * roll()
  return {
    roll,
    between,
    bell: () => (roll() + roll() + roll() + roll() - 2) * 1.732,
    pick: (list) => list[Math.floor(roll() * list.length)]!,
  }
}

export interface GardenYarn {
  /** In the middle, in the petals, along their edge. */
  readonly inks: readonly [Rgb, Rgb, Rgb]
  /** The yarn passes through them one after another, in so many mm. */
  readonly passes: number | null
  readonly heather: number
  readonly other: Rgb
  readonly plies: number
  readonly hairs: number
}

/** Heights and tints of what was laid, in a square of `side` cells, `per` of them to a mm; no yarn is below nought. */
export class Board {
  readonly side: number
  readonly high: Float32Array
  /** The underside of the lowest strand: what is lifted can be looked under. */
  readonly low: Float32Array
  readonly tint: Float32Array
  readonly hair: Float32Array
  private along = 0
  private readonly flecks: Float32Array

  constructor(
    readonly half: number,
    readonly per: number,
    private readonly yarn: GardenYarn,
    private readonly own: Chance,
  ) {
    this.side = Math.ceil(2 * half * per)
    this.high = new Float32Array(this.side * this.side).fill(-1)
    this.low = new Float32Array(this.side * this.side).fill(1e9)
    this.tint = new Float32Array(3 * this.side * this.side)
    this.hair = new Float32Array(this.side * this.side)
    this.flecks = Float32Array.from({ length: 4096 }, () => own.roll())
  }

  private ink(zone: number): Rgb {
    const { inks, passes } = this.yarn
    if (passes === null) return inks[zone]!
    const at = (this.along / passes) % 3
    const [from, to] = [inks[Math.floor(at)]!, inks[(Math.floor(at) + 1) % 3]!]
    const share = Math.min(1, Math.max(0, ((at % 1) - 0.35) / 0.3))
    return [0, 1, 2].map((c) => from[c]! + share * (to[c]! - from[c]!)) as unknown as Rgb
  }

  /** One strand along x, y, z, x, y, z … */
  strand(path: readonly number[], radius: number, zone: number): void {
    const { half, per, side, high, low, tint, flecks } = this
    const { heather, other, plies } = this.yarn
    const ink = this.ink(zone)
    const [twist, pull] = [(0.5 * plies) / radius / 1.6, this.own.between(0.93, 1.07)]
    for (let i = 0; i + 5 < path.length; i += 3) {
      const [ax, ay, az, bx, by, bz] = path.slice(i, i + 6) as [
        number,
        number,
        number,
        number,
        number,
        number,
      ]
      const [dx, dy] = [bx - ax, by - ay]
      const long = Math.hypot(dx, dy) + 1e-6
      const cell = (value: number) => Math.max(0, Math.min(side - 1, Math.round((value + half) * per)))
      const [left, right] = [cell(Math.min(ax, bx) - radius), cell(Math.max(ax, bx) + radius)]
      const [top, bottom] = [cell(Math.min(ay, by) - radius), cell(Math.max(ay, by) + radius)]
      for (let row = top; row <= bottom; row++) {
        const oy = (row + 0.5) / per - half - ay
        for (let column = left; column <= right; column++) {
          const ox = (column + 0.5) / per - half - ax
          const t = Math.min(1, Math.max(0, (ox * dx + oy * dy) / (long * long)))
          const off = ((ox - t * dx) ** 2 + (oy - t * dy) ** 2) / (radius * radius)
          if (off >= 1) continue
          const across = (ox * dy - oy * dx) / long / radius
          const run = this.along + t * long
          const ply = Math.sqrt(Math.abs(Math.sin(0.5 * plies * 1.3 * across + twist * run)))
          const bulge = radius * 0.8 * Math.sqrt(1 - off)
          const z = az + t * (bz - az) + bulge + 0.2 * radius * ply
          const at = row * side + column
          low[at] = Math.min(low[at]!, az + t * (bz - az) - bulge)
          if (z <= high[at]!) continue
          high[at] = z
          const fleck = flecks[(Math.floor(run * 5) * 37 + Math.floor((across + 1) * 4) * 11) & 4095]!
          const [mix, light] = [
            fleck < heather ? 0.55 : 0,
            pull * (0.66 + 0.34 * ply) * (0.94 + 0.12 * fleck),
          ]
          for (let c = 0; c < 3; c++) tint[3 * at + c] = light * (ink[c]! + mix * (other[c]! - ink[c]!))
        }
      }
      this.along += long
    }
  }

  /** Ends of fibres that stand off the yarn: thin, bent, seen through. */
  halo(): void {
    const { side, high, tint, hair, per, own } = this
    const count = this.yarn.hairs * (side / per) ** 2
    for (let i = 0; i < count; i++) {
      let [x, y] = [own.roll() * side, own.roll() * side]
      const from = Math.floor(y) * side + Math.floor(x)
      if (high[from]! < 0) continue
      let way = own.between(0, 6.283)
      const [bend, thick] = [0.06 * own.bell(), own.between(0.15, 0.5)]
      for (let left = per * (0.4 + 1.6 * own.roll() ** 2); left > 0; left--, way += bend) {
        x += Math.cos(way)
        y += Math.sin(way)
        if (x < 1 || y < 1 || x >= side - 1 || y >= side - 1) break
        const at = Math.floor(y) * side + Math.floor(x)
        hair[at] = 1 - (1 - hair[at]!) * (1 - thick)
        if (high[at]! < 0) for (let c = 0; c < 3; c++) tint[3 * at + c] = tint[3 * from + c]!
      }
    }
  }
}
