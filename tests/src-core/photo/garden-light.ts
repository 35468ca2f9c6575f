/** The light of the garden: sun through leaves, windows, lamps near by, the shadow of who takes the picture. */
import { eased, hills, ink } from './garden-ground'
import type { Board, Chance, Rgb } from './garden-yarn'

export interface Lamp {
  /** Towards it from the motif, of length 1. */
  readonly to: readonly [number, number, number]
  /** Where it hangs, if near. */
  readonly place: readonly [number, number, number] | null
  readonly colour: Rgb
  /** How wide it is seen, in radians to each side. */
  readonly soft: number
  mask(x: number, y: number): number
}
export interface Light {
  readonly lamps: readonly [Lamp, Lamp]
  readonly sky: Rgb
  readonly name: string
}
export type Place = 'lawn' | 'café' | 'bed' | 'evening'

const scaled = (colour: Rgb, by: number): Rgb => [colour[0] * by, colour[1] * by, colour[2] * by]
const whole = () => 1

/** From so far round and so high up. */
const lampOf = (way: number, high: number, colour: Rgb, soft: number, mask: (x: number, y: number) => number, far?: number): Lamp => {
  const to = [Math.cos(way) * Math.cos(high), Math.sin(way) * Math.cos(high), Math.sin(high)] as const
  return { to, place: far ? [far * to[0], far * to[1], far * to[2]] : null, colour, soft, mask }
} // prettier-ignore

export function lightOf(place: Place, own: Chance): Light {
  const { between, roll, pick } = own
  const hill = hills(own)
  const way = between(0, 6.28)
  const [c, s] = [Math.cos(way), Math.sin(way)]
  const second = way + between(1.2, 4.6)
  if (place === 'lawn') {
    const kind = pick(['leaves', 'leaves', 'shade', 'sun'] as const)
    const sun = kind === 'shade' ? scaled(ink('fff4e6'), 0.35) : ink('fff0d6')
    const [size, least] = [between(22, 60), between(0.2, 0.45)]
    const leaves = (x: number, y: number) => {
      const [u, v] = [(c * x + s * y) / 1.3 / size, (c * y - s * x) / size]
      return least + (1 - least) * eased(-0.25, 0.3, hill(u, v) + 0.5 * hill(2.3 * u + 70, 2.3 * v))
    }
    const main = lampOf(way, between(0.75, 1.3), sun, kind === 'shade' ? 0.6 : kind === 'leaves' ? 0.09 : 0.03, kind === 'leaves' ? leaves : whole) // prettier-ignore
    const glow = lampOf(second, 1.1, scaled(ink('e6f0d0'), 0.12), 0.5, whole)
    return {
      lamps: [main, glow],
      sky: scaled(ink('d3e4ff'), kind === 'shade' ? 0.7 : between(0.3, 0.5)),
      name: kind,
    }
  }
  if (place === 'café') {
    const lamp = lampOf(way, between(0.8, 1.25), scaled(ink('ffdfb0'), between(0.6, 0.9)), 0.1, whole, between(550, 1100)) // prettier-ignore
    const other = lampOf(second, between(0.6, 1.1), scaled(ink(pick(['ffe2ba', 'e8f1ff'])), between(0.2, 0.6)), 0.12, whole, between(700, 1500)) // prettier-ignore
    return { lamps: [lamp, other], sky: scaled(ink('fff0dc'), between(0.25, 0.5)), name: 'lamps' }
  }
  if (place === 'bed') {
    const main = lampOf(way, between(0.6, 1.1), scaled(ink('f0f5ff'), 0.7), between(0.25, 0.5), whole, between(900, 1800)) // prettier-ignore
    const other = lampOf(second, 0.9, scaled(ink('ffe9cc'), between(0, 0.35)), 0.3, whole)
    return { lamps: [main, other], sky: scaled(ink('f6f3ee'), between(0.35, 0.6)), name: 'window' }
  }
  const [pane, bar, at, hasBars] = [between(110, 220), between(9, 20), between(0, 300), roll() < 0.5]
  const bars = (x: number, y: number) => {
    if (!hasBars) return 1
    const [u, v] = [c * x + s * y + at + 4000, c * y - s * x + at + 4000]
    const off = Math.min(Math.abs((v % pane) - pane / 2), Math.abs((u % (1.7 * pane)) - 0.85 * pane))
    return 0.45 + 0.55 * eased(0.4 * bar, 1.4 * bar, off)
  }
  const low = lampOf(way, between(0.38, 0.7), scaled(ink(pick(['ffc98a', 'ffd9a8', 'dfe6ff'])), 0.8), between(0.05, 0.16), bars) // prettier-ignore
  const inside = lampOf(second, between(0.7, 1.2), scaled(ink('ffd49a'), between(0.1, 0.55)), 0.12, whole, between(500, 1000)) // prettier-ignore
  return {
    lamps: [low, inside],
    sky: scaled(ink('dfe3f2'), between(0.3, 0.5)),
    name: hasBars ? 'bars' : 'evening',
  }
}

/** Light of both lamps and the sky over the table, three numbers each 2.5 mm. */
export class Fall {
  private readonly cells = new Float32Array(3 * 481 * 481)
  constructor({ lamps }: Light, hand: (x: number, y: number) => number) {
    for (let row = 0, at = 0; row <= 480; row++)
      for (let column = 0; column <= 480; column++) {
        const [x, y] = [2.5 * (column - 240), 2.5 * (row - 240)]
        const dark = hand(x, y)
        for (const { place, mask } of lamps) {
          let fall = mask(x, y) * (1 - dark)
          if (place) {
            const [far, away] = [Math.hypot(...place), Math.hypot(place[0] - x, place[1] - y, place[2])]
            fall *= (far / away) ** 3
          }
          this.cells[at++] = fall
        }
        this.cells[at++] = 1 - 0.45 * dark
      }
  }
  at(x: number, y: number, into: Float32Array): void {
    const u = Math.min(479.9, Math.max(0, x / 2.5 + 240))
    const v = Math.min(479.9, Math.max(0, y / 2.5 + 240))
    const s = u % 1
    const t = v % 1
    const from = 3 * (Math.floor(v) * 481 + Math.floor(u))
    for (let k = 0; k < 3; k++) {
      const upper = this.cells[from + k]! * (1 - s) + this.cells[from + 3 + k]! * s
      into[k] =
        upper * (1 - t) + t * (this.cells[from + 1443 + k]! * (1 - s) + this.cells[from + 1446 + k]! * s)
    }
  }
}

/** A phone and the arm that holds it, between the lamp and an edge of the sheet. */
export function handOver(own: Chance, width: number, height: number): (x: number, y: number) => number {
  const { between, roll, pick } = own
  const [way, deep] = [pick([0, 1.57, 3.14, 4.71]) + 0.3 * own.bell(), between(4, 40)]
  const [c, s] = [Math.cos(way), Math.sin(way)]
  const edge = Math.abs(c) * (width / 2) + Math.abs(s) * (height / 2) - deep
  const [half, soft, dark, along] = [between(38, 60), between(6, 26), between(0.3, 0.65), between(-50, 50)]
  const arm = roll() < 0.6 ? between(28, 40) : 0
  return (x, y) => {
    const [out, side] = [c * x + s * y - edge, c * y - s * x - along]
    const phone = Math.min(half - Math.abs(side), out, 150 - out)
    const held = arm ? Math.min(arm - Math.abs(side - 0.3 * out - 20), out - 25) : -99
    return dark * eased(-soft, soft, Math.max(phone, held))
  }
}

/** How high the shadow stands over each cell for a lamp in one direction: swept along, from the lamp's side. */
function swept(
  high: Float32Array,
  side: number,
  per: number,
  [lx, ly, lz]: readonly [number, number, number],
): Float32Array {
  // prettier-ignore
  const flat = Math.abs(lx) >= Math.abs(ly)
  const [main, cross] = flat ? [lx, ly] : [ly, lx]
  if (Math.abs(main) < 1e-3) return new Float32Array(high.length)
  const slant = cross / Math.abs(main)
  const drop = (Math.hypot(1, slant) / per) * (lz / Math.hypot(lx, ly))
  const [line, step] = flat ? [1, side] : [side, 1]
  const shade = new Float32Array(high.length)
  const toward = main > 0 ? 1 : -1
  const [lower, part] = [Math.floor(slant), slant - Math.floor(slant)]
  for (let k = 1; k < side; k++) {
    const here = (main > 0 ? side - 1 - k : k) * line
    const before = here + toward * line
    for (let j = 2; j < side - 2; j++) {
      const from = before + (j + lower) * step
      const a = Math.max(high[from]!, shade[from]!)
      const b = Math.max(high[from + step]!, shade[from + step]!)
      shade[here + j * step] = Math.max(0, a + part * (b - a) - drop)
    }
  }
  return shade
}

/** Means over squares of (2 near + 1) cells. */
function means(from: Float32Array, side: number, near: number): Float32Array {
  let read = from
  for (const step of [1, side]) {
    const write = new Float32Array(from.length)
    for (let i = 0; i < side; i++) {
      const start = i * (step === 1 ? side : 1)
      let sum = 0
      for (let k = 0; k < side + near; k++) {
        if (k < side) sum += read[start + k * step]!
        if (k > 2 * near) sum -= read[start + (k - 2 * near - 1) * step]!
        if (k >= near) write[start + (k - near) * step] = sum / (2 * near + 1)
      }
    }
    read = write
  }
  return read
}

/** What each cell of a board has of both lamps and of the sky, against a flat sheet in full light. */
export function litBoard({ high, side, per }: Board, { lamps }: Light, own: Chance): Float32Array {
  const lit = new Float32Array(3 * side * side)
  const ground = high.map((z) => Math.max(0, z))
  lamps.forEach(({ to, soft }, l) => {
    const shadow = new Float32Array(side * side)
    const rays = soft > 0.2 ? 6 : 4
    for (let ray = 0; ray < rays; ray++) {
      const turn = (2 * ray * Math.PI) / rays + own.roll()
      const [dx, dy] = [to[0] + soft * Math.cos(turn) * 0.8, to[1] + soft * Math.sin(turn) * 0.8]
      const shade = swept(ground, side, per, [dx, dy, to[2]])
      for (let at = 0; at < shade.length; at++) {
        const over = shade[at]! - ground[at]!
        if (over > 0) shadow[at]! += Math.min(1, over / 0.35) / rays
      }
    }
    for (let row = 1; row < side - 1; row++)
      for (let at = row * side + 1; at < row * side + side - 1; at++) {
        let lean = to[2]
        if (high[at]! >= 0) {
          const sx = 0.5 * per * (ground[at + 1]! - ground[at - 1]!)
          const sy = 0.5 * per * (ground[at + side]! - ground[at - side]!)
          const gx = Math.min(1.6, Math.max(-1.6, sx))
          const gy = Math.min(1.6, Math.max(-1.6, sy))
          lean = Math.max(0, (to[2] - gx * to[0] - gy * to[1]) / Math.sqrt(1 + gx * gx + gy * gy))
        }
        lit[3 * at + l] = ((lean + 0.2) / (to[2] + 0.2)) * (1 - 0.92 * shadow[at]!)
      }
  })
  const [near, far] = [means(ground, side, Math.round(0.9 * per)), means(ground, side, Math.round(3.5 * per))]
  for (let at = 0; at < ground.length; at++)
    lit[3 * at + 2] =
      1 / (1 + 0.55 * Math.max(0, near[at]! - ground[at]!) + 0.22 * Math.max(0, far[at]! - ground[at]!))
  return lit
}
