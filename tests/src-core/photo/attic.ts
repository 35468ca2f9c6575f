/**
 * A fifth renderer of pictures, apart from the other four and from the finder: everything is a distance. Petals are
 * distances to drops, lenses, tiles and loops that melt into each other or lie over each other like a fan of cards, found
 * by rays that stride as far as nothing can be; mohair is a fog of hairs round the yarn, shadows fade with distance. The
 * phone is a poor one: a cast it did not correct, vignetting, colours that fringe, blotches of colour noise, a film's
 * curve, colours kept at half the size, JPEG of quality 60.
 */
import { SHEET_SIZES } from '../../../src-core/photo/sheet-sizes'
import type { SheetName } from '../../../src-core/photo/sheet-sizes'
import { printed } from './attic-phone'

export const SHAPES = ['drop', 'lens', 'tile', 'loop', 'fan', 'cards'] as const
type Rgb = readonly [number, number, number]

export interface Attic {
  readonly name: string
  readonly sheet: SheetName
  readonly motif: { readonly petals: number; readonly overTips: number; readonly overValleys: number }
  readonly picture: { width: number; height: number; data: Uint8Array }
}

/** Numbers between 0 and 1, the same each time (PCG, its upper bits). */
function rolls(seed: number): () => number {
  let state = BigInt(seed) * 2_862_933_555_777_941_757n + 3_037_000_493n
  return () => {
    state = (state * 6_364_136_223_846_793_005n + 1_442_695_040_888_963_407n) & 0xffff_ffff_ffff_ffffn
    return Number(state >> 40n) / 16_777_216
  }
}
const hashed = (x: number, y: number): number => {
  const value = Math.sin(x * 12.9898 + y * 78.233) * 43_758.5453
  return value - Math.floor(value)
}
const step = (from: number, to: number, x: number): number => {
  const t = Math.min(1, Math.max(0, (x - from) / (to - from)))
  return t * t * (3 - 2 * t)
}
/** Two distances melted together over a width. */
const melt = (a: number, b: number, by: number): number => {
  const h = Math.max(0, by - Math.abs(a - b)) / by
  return Math.min(a, b) - (h * h * by) / 4
}

/** Distance to a drop along y from foot to head: a cone with two round ends. */
function drop(x: number, y: number, foot: number, head: number, length: number): number {
  const ax = Math.abs(x)
  const b = (foot - head) / length
  const a = Math.sqrt(1 - b * b)
  const k = -b * ax + a * y
  if (k < 0) return Math.hypot(ax, y) - foot
  if (k > a * length) return Math.hypot(ax, y - length) - head
  return ax * a + y * b - foot
}
/** Distance to a lens along y: two arcs that meet in points. */
function lens(x: number, y: number, half: number, wide: number): number {
  const off = (half * half - wide * wide) / (2 * wide)
  const [ax, ay] = [Math.abs(x), Math.abs(y)]
  if ((ay - half) * off > ax * half) return Math.hypot(ax, ay - half)
  return Math.hypot(ax + off, ay) - (wide + off)
}
const tile = (x: number, y: number, wide: number, half: number, round: number): number => {
  const [qx, qy] = [Math.abs(x) - wide + round, Math.abs(y) - half + round]
  return Math.hypot(Math.max(qx, 0), Math.max(qy, 0)) + Math.min(Math.max(qx, qy), 0) - round
}

interface Wish {
  readonly shape: (typeof SHAPES)[number]
  readonly petals: number
  readonly tip: number
  readonly roll: () => number
}

/** Distance to the motif by place, in mm about its middle, and how light its stitches are there. */
function worked({ shape, petals, tip, roll }: Wish) {
  const between = (least: number, most: number) => least + (most - least) * roll()
  const turn = between(0, 6.28)
  const sector = (2 * Math.PI) / petals
  const core = tip * (petals > 12 ? between(0.55, 0.72) : between(0.3, 0.5))
  const uneven = [0, 0.015, 0.03][Math.floor(roll() * 3)]!
  const lean = shape === 'cards' ? between(0.1, 0.25) * sector : 0
  const petal = Array.from({ length: petals }, () => ({
    length: tip * (1 + uneven * (2 * roll() - 1)),
    off: uneven * 2 * (2 * roll() - 1) * sector,
  }))
  const free = (r: number) => r * Math.tan(Math.min(1.2, sector / 2))
  const width = between(0.8, 1.05)
  const melts = between(0.4, 1.6)
  const chain = Math.max(1.2, Math.min(2.4, tip * 0.045))
  const [bump, bumps] = [between(0.05, 0.3), between(2.6, 4.2)]
  const inner = shape === 'loop' ? core * 0.92 : core * 0.7
  const one = (x: number, y: number, length: number): number => {
    const long = length - inner
    const middle = (length + inner) / 2
    switch (shape) {
      case 'drop': {
        const head = Math.min(long * 0.42, free(length) * 0.72 * width)
        return drop(x, y - inner, head * 0.55, head, long - head)
      }
      case 'lens':
        return lens(x, y - middle, long / 2 + 0.6, Math.min(long * 0.4, free(middle) * 0.95 * width)) - 0.6
      case 'tile': {
        const wide = Math.min(long * 0.5, free(middle) * 0.86 * width)
        return tile(x, y - middle, wide, long / 2, wide * 0.55)
      }
      case 'loop': {
        const wide = Math.min(long * 0.5, free(middle) * 0.97 * width)
        return (
          Math.abs(tile(x, y - middle + chain / 2, wide - chain, long / 2 - chain / 2, wide - chain)) - chain
        )
      }
      case 'fan': {
        const head = Math.min(long * 0.5, free(length) * 0.9 * width)
        return melt(
          drop(x, y - inner, 0.5, head * 0.7, long - head),
          Math.hypot(x, y - length + head) - head,
          2,
        )
      }
      case 'cards': {
        const head = Math.min(long * 0.7, free(length) * 1.12 * width)
        return drop(x, y - inner, head * 0.8, head, long - head)
      }
    }
  }
  const distance = (x: number, y: number): { d: number; top: number; shade: number } => {
    const r = Math.hypot(x, y)
    const about = Math.atan2(x, -y) - turn
    const near = Math.round(about / sector)
    let d = r - core
    let [least, top, over] = [Infinity, 0, 0]
    for (const by of [-2, -1, 0, 1, 2]) {
      const k = (((near + by) % petals) + petals) % petals
      if (petals < 5 && Math.abs(by) === 2) continue
      const angle = about - (near + by) * sector - petal[k]!.off
      const [c, s] = [Math.cos(lean), Math.sin(lean)]
      const [px, py] = [r * Math.sin(angle), r * Math.cos(angle)]
      const off = one(px * c - (py - inner) * s, px * s + (py - inner) * c + inner, petal[k]!.length)
      const rim = off + bump * Math.cos((2 * Math.PI * (py + Math.abs(px))) / bumps)
      d = shape === 'cards' ? Math.min(d, rim) : melt(d, rim, melts)
      // Cards: each lies over the one before it.
      if (shape === 'cards' ? off < 0 && (least === Infinity || by > over) : off < least) {
        least = off
        top = by
        over = by
      }
    }
    const shade = shape === 'cards' && least < 0 ? 1 - 0.3 * Math.exp(least / 0.8) : 1
    return { d, top: near + top, shade }
  }
  // How far it reaches: rays from outside that stride inwards.
  const COUNT = 2880
  const reach = Float64Array.from({ length: COUNT }, (_, at) => {
    const angle = turn + (at / COUNT) * 2 * Math.PI
    let r = tip * 1.4
    for (let i = 0; i < 400 && r > 0; i++) {
      const { d } = distance(r * Math.sin(angle), -r * Math.cos(angle))
      if (d < 0.004) break
      r -= Math.max(0.004, d * 0.7)
    }
    return r
  })
  const each = COUNT / petals
  // Where tips are in a sector, leaning or not.
  const sums = Array.from({ length: Math.floor(each) }, (_, off) =>
    petal.reduce((sum, __, k) => sum + reach[Math.round(off + k * each) % COUNT]!, 0),
  )
  const shift = sums.indexOf(Math.max(...sums))
  const best = (from: number, to: number, most: boolean) => {
    let far = most ? 0 : Infinity
    for (let i = Math.round(from); i <= to; i++) {
      const value = reach[((i % COUNT) + COUNT) % COUNT]!
      far = most ? Math.max(far, value) : Math.min(far, value)
    }
    return far
  }
  const mean = (value: (k: number) => number) => petal.reduce((sum, _, k) => sum + value(k), 0) / petals
  return {
    distance,
    most: Math.max(...reach),
    core,
    overTips: 2 * mean((k) => best((k - 0.35) * each + shift, (k + 0.35) * each + shift, true)),
    overValleys: 2 * mean((k) => best((k + 0.15) * each + shift, (k + 0.85) * each + shift, false)),
  }
}

const DEEP: Rgb[] = [[0.34, 0.03, 0.05], [0.03, 0.09, 0.3], [0.05, 0.17, 0.06], [0.2, 0.05, 0.22], [0.42, 0.2, 0.02], [0.05, 0.2, 0.22], [0.07, 0.06, 0.06], [0.3, 0.24, 0.05], [0.45, 0.14, 0.2]] // prettier-ignore
const PALE: Rgb[] = [[0.82, 0.79, 0.7], [0.78, 0.6, 0.2], [0.78, 0.5, 0.52], [0.45, 0.66, 0.74], [0.6, 0.74, 0.5]] // prettier-ignore
const FELTS: Rgb[] = [[0.035, 0.035, 0.04], [0.03, 0.04, 0.08], [0.05, 0.035, 0.03]] // prettier-ignore
const SHEETS = ['plain', 'lined', 'squared', 'folded', 'flecked', 'plain'] as const

const TABLES: Record<string, (x: number, y: number) => Rgb> = {
  twill: (x, y) => {
    const v = 0.75 + 0.25 * Math.sign(Math.sin(2.1 * (x + y))) * Math.sin(2.1 * (x - y)) + 0.1 * hashed(Math.floor(x), Math.floor(y)) // prettier-ignore
    return [0.14 * v, 0.2 * v, 0.36 * v]
  },
  corduroy: (x) => {
    const v = 0.4 + 0.6 * Math.abs(Math.sin(0.9 * x))
    return [0.36 * v, 0.2 * v, 0.09 * v]
  },
  parquet: (x, y) => {
    const [i, j] = [Math.floor(x / 60), Math.floor(y / 60)]
    const along = (i + j) & 1 ? x : y
    const v = 0.8 + 0.3 * hashed(i, j + Math.floor(along / 15)) - (along % 15 < 0.6 ? 0.4 : 0)
    return [0.42 * v, 0.26 * v, 0.13 * v]
  },
  newsprint: (x, y) => {
    const ink =
      y % 3.4 < 1.9 && hashed(Math.floor(x / 1.3), Math.floor(y / 3.4)) < 0.7 && ((x % 50) + 50) % 50 > 4
    const v = ink ? 0.16 : 0.56
    return [v, v * 0.97, v * 0.88]
  },
  glass: (x, y) => {
    const v = 0.03 + 0.05 * step(-200, 300, x + y)
    return [v, v * 1.1, v * 1.2]
  },
}

/** The picture of a number: the same each time. */
export function attic(number: number, wide = 840): Attic {
  const roll = rolls(number + 7)
  const between = (least: number, most: number) => least + (most - least) * roll()
  const pick = <T>(list: readonly T[]): T => list[Math.floor(roll() * list.length)]!
  const tall = Math.round((wide * 4) / 3)
  const sheet = pick<SheetName>(['A4', 'Letter', 'A4', 'A5', 'A4'])
  const size = SHEET_SIZES[sheet]
  const shape = SHAPES[number % SHAPES.length]!
  const petals =
    3 + ((number * 7 + Math.floor(number / 6)) % (shape === 'cards' ? 12 : 22)) + (shape === 'cards' ? 2 : 0)
  const largest = Math.min(150, size.width - 22)
  const least = Math.min(largest - 3, Math.max(42, petals * (shape === 'loop' ? 6.5 : 4.6)))
  const made = worked({ shape, petals, tip: between(least, largest) / 2, roll })
  const isDark = roll() < 0.35
  const felt = pick(FELTS)
  const paper: Rgb = isDark ? felt : pick<Rgb>([[0.82, 0.82, 0.8], [0.76, 0.74, 0.66], [0.8, 0.82, 0.84]]) // prettier-ignore
  const surface = isDark ? 'felt' : pick(SHEETS)
  const yarns = [pick(isDark ? PALE : DEEP), pick(isDark ? PALE : DEEP)]
  const tableName = pick(Object.keys(TABLES).filter((name) => !(isDark && name === 'glass')))
  const table = TABLES[tableName]!
  const hair = roll() < 0.3 ? between(0.4, 1.1) : 0
  const relief = between(0.05, 0.3)
  const stitch = between(2.4, 4)

  // A board of distances, six to the mm.
  const fine = 6
  const half = Math.ceil((made.most + 6) * fine)
  const side = 2 * half + 1
  const [far, shade] = [new Float32Array(side * side), new Float32Array(side * side)]
  for (let row = 0; row < side; row++)
    for (let column = 0; column < side; column++) {
      const [x, y] = [(column - half) / fine, (row - half) / fine]
      const { d, top, shade: over } = made.distance(x, y)
      far[row * side + column] = d
      const r = Math.hypot(x, y)
      const rows = r / stitch
      const vees = (Math.atan2(x, y) * Math.max(6, Math.round((2 * Math.PI * r) / stitch))) / (2 * Math.PI) + 0.5 * (Math.floor(rows) & 1) // prettier-ignore
      const vee = Math.abs(vees - Math.floor(vees) - 0.5) + 0.5 * (rows - Math.floor(rows))
      shade[row * side + column] =
        over *
        (1 + relief * (Math.sin(6.28 * vee) + 0.3 * hashed(Math.floor(3 * x), Math.floor(3 * y) + top)))
    }
  const room = {
    x: Math.max(0, size.width / 2 - made.most - 6),
    y: Math.max(0, size.height / 2 - made.most - 6),
  }
  const laid = { x: between(-room.x, room.x), y: between(-room.y, room.y) }
  const boardAt = (board: Float32Array, x: number, y: number): number => {
    const [u, v] = [(x - laid.x) * fine + half, (y - laid.y) * fine + half]
    if (u < 0 || v < 0 || u >= side - 1 || v >= side - 1) return 9
    const [i, j] = [Math.floor(u), Math.floor(v)]
    const at = j * side + i
    const [s, t] = [u - i, v - j]
    return (board[at]! * (1 - s) + board[at + 1]! * s) * (1 - t) + (board[at + side]! * (1 - s) + board[at + side + 1]! * s) * t // prettier-ignore
  }
  const lamp = { x: between(-1.6, 1.6), y: between(-1.6, 1.6), deep: between(0.05, 0.45), soft: between(0.4, 1.8), falls: between(0, 0.3), towards: between(0, 6.28) } // prettier-ignore
  const hand = roll() < 0.35 ? { x: between(-110, 110), y: between(60, 160), turn: between(-0.6, 0.6), wide: between(18, 40), soft: between(4, 25), deep: between(0.15, 0.4) } : null // prettier-ignore
  const fold = { at: between(-40, 40), by: between(-0.09, 0.09) }
  const into: [number, number, number] = [0, 0, 0]
  /** The light that a place of the table sends up. */
  const seen = (x: number, y: number): Rgb => {
    const onSheet = Math.abs(x) < size.width / 2 && Math.abs(y) < size.height / 2
    let [red, green, blue] = onSheet ? paper : table(x, y)
    if (onSheet) {
      let by = 1
      if (surface === 'squared' && (Math.abs((x + 300) % 5) < 0.25 || Math.abs((y + 300) % 5) < 0.25))
        by = 0.78
      if (surface === 'lined' && Math.abs((y + 300) % 8) < 0.35) [red, green] = [red * 0.66, green * 0.78]
      if (surface === 'flecked' && hashed(Math.floor(1.5 * x), Math.floor(1.5 * y)) < 0.012) by = 0.62
      if (surface === 'folded') by = (y > fold.at ? 1 + fold.by : 1) * (1 - 0.14 * Math.exp(-(((y - fold.at) / 0.5) ** 2))) // prettier-ignore
      if (surface === 'felt') by = 0.8 + 0.4 * hashed(Math.floor(2 * x), Math.floor(2 * y))
      ;[red, green, blue] = [red * by, green * by, blue * by]
    }
    const d = boardAt(far, x, y)
    const under = boardAt(far, x - lamp.x, y - lamp.y)
    let lit = 1 - lamp.deep * Math.exp(-Math.max(0, under) / lamp.soft)
    lit *= 1 - 0.18 * Math.exp(-Math.max(0, d) / 0.7)
    // Yarn over what lies beneath; hairs stand out of it like a fog.
    let covers = d < 0 ? 1 : 0
    if (hair > 0 && d >= 0 && d < 5) covers = 0.3 * Math.exp(-d / hair) * (0.4 + 1.2 * hashed(Math.floor(4 * x), Math.floor(4 * y))) // prettier-ignore
    if (covers > 0) {
      const yarn = yarns[Math.hypot(x - laid.x, y - laid.y) < made.core * 0.8 ? 1 : 0]!
      const by = d < 0 ? boardAt(shade, x, y) * (1 - 0.25 * Math.exp(d / 0.6)) : 1
      red = red * lit * (1 - covers) + yarn[0] * by * covers
      green = green * lit * (1 - covers) + yarn[1] * by * covers
      blue = blue * lit * (1 - covers) + yarn[2] * by * covers
    } else [red, green, blue] = [red * lit, green * lit, blue * lit]
    let by = 1 - lamp.falls * (0.5 + (x * Math.cos(lamp.towards) + y * Math.sin(lamp.towards)) / 420)
    if (hand) {
      const [u, v] = [x - hand.x, y - hand.y]
      const shadow = drop(u * Math.cos(hand.turn) - v * Math.sin(hand.turn), u * Math.sin(hand.turn) + v * Math.cos(hand.turn), hand.wide, hand.wide * 1.3, 220) // prettier-ignore
      by *= 1 - hand.deep * (1 - step(-hand.soft, hand.soft, shadow))
    }
    into[0] = red * by
    into[1] = green * by
    into[2] = blue * by
    return into
  }

  // The camera: three rows that take a place of the table to a pixel; the picture asks them backwards.
  const tilt = (between(0, 34) * Math.PI) / 180
  const [towards, spin] = [between(0, 6.28), between(-0.3, 0.3) + pick([0, 0, Math.PI / 2, Math.PI])]
  const focal = between(0.75, 1.1) * tall
  const lying = Math.abs(Math.sin(spin)) > 0.7
  const away = (focal * Math.max((lying ? size.height : size.width) / wide, (lying ? size.width : size.height) / tall)) / between(0.56, 0.7) // prettier-ignore
  const [c, s, p, q] = [Math.cos(towards), Math.sin(towards), Math.cos(tilt), Math.sin(tilt)]
  const vignette = between(0, 0.55)
  const light = new Float32Array(3 * wide * tall)
  const [mx, my] = [(wide - 1) / 2, (tall - 1) / 2]
  const fringe = between(-0.0006, 0.0006)
  const toTable = (u: number, v: number): readonly [number, number] => {
    const [turned, over] = [Math.cos(spin - towards), Math.sin(spin - towards)]
    const [a, b] = [u * turned - v * over, u * over + v * turned]
    // Leaning by `tilt` in the direction of `a`.
    const t = (away * p) / (p - a * q)
    const along = t * (a * p + q) - away * q
    const aside = t * b
    return [along * c - aside * s, along * s + aside * c]
  }
  const PARTS = 3
  for (let row = 0; row < tall; row++)
    for (let column = 0; column < wide; column++) {
      const to = 3 * (row * wide + column)
      const r2 = ((column - mx) ** 2 + (row - my) ** 2) / (mx * mx + my * my)
      for (let part = 0; part < PARTS; part++) {
        const [ox, oy] = [hashed(column + 0.37 * part, row), (part + hashed(row, column + part)) / PARTS]
        const [x, y] = toTable((column + ox - 0.5 - mx) / focal, (row + oy - 0.5 - my) / focal)
        const sent = seen(x, y)
        for (let k = 0; k < 3; k++) light[to + k]! += (sent[k]! * (1 - vignette * r2 * r2)) / PARTS
      }
    }
  const picture = printed(light, wide, tall, { between, pick, roll, fringe })
  const motif = { petals, overTips: made.overTips, overValleys: made.overValleys }
  return { name: `${number} attic ${shape} ${petals} ${sheet} ${isDark ? 'dark' : 'white'} ${surface} ${tableName}${hair ? ' mohair' : ''}${hand ? ' hand' : ''}`, sheet, motif, picture } // prettier-ignore
}
