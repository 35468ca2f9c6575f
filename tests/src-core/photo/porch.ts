/**
 * A fourth renderer of pictures, apart from camera, studio, kitchen and finder: daylight from one side on yarn that has
 * height, so that stitches light and shade each other; window bars and leaves that throw shadows, hard or soft; tables
 * of planks with knots, checked linen, terrazzo, pebbles, or nearly the paper; a lens with a bend of two terms and an
 * iris that is a disc, a sensor of red, green and blue places, noise by light, a phone that smooths colours and sharpens.
 */
import { decode, encode } from 'jpeg-js'
import { SHEET_SIZES } from '../../../src-core/photo/sheet-sizes'
import type { SheetName } from '../../../src-core/photo/sheet-sizes'
import { crochet, draws, SHAPES } from './porch-motifs'
import type { Crocheted } from './porch-motifs'
import { bytesOf } from './tones'

export interface Porch {
  readonly name: string
  readonly sheet: SheetName
  readonly motif: Crocheted
  readonly picture: { width: number; height: number; data: Uint8Array }
}

type Rgb = readonly [number, number, number]
const YARNS: { dark: Rgb[]; pale: Rgb[] } = {
  dark: [[0.3, 0.02, 0.06], [0.02, 0.08, 0.28], [0.03, 0.16, 0.07], [0.24, 0.1, 0.02], [0.05, 0.05, 0.06], [0.16, 0.03, 0.2], [0.4, 0.12, 0.14], [0.02, 0.2, 0.24], [0.5, 0.2, 0.02]], // prettier-ignore
  pale: [
    [0.84, 0.82, 0.74],
    [0.8, 0.62, 0.24],
    [0.8, 0.5, 0.52],
    [0.5, 0.7, 0.78],
    [0.62, 0.76, 0.5],
  ],
}
const PAPERS: { white: Rgb[]; black: Rgb[] } = {
  white: [
    [0.84, 0.84, 0.83],
    [0.78, 0.8, 0.84],
    [0.8, 0.76, 0.66],
  ],
  black: [
    [0.03, 0.03, 0.034],
    [0.045, 0.03, 0.03],
    [0.02, 0.04, 0.035],
  ],
}

/** A number between 0 and 1 that belongs to a cell. */
const cell = (x: number, y: number, seed: number): number => {
  let word = Math.imul(x * 374_761_393 + y * 668_265_263 + seed * 2_147_483_629, 0x9e3779b1) >>> 0
  word = Math.imul(word ^ (word >>> 15), 0x85ebca6b) >>> 0
  return ((word ^ (word >>> 13)) >>> 0) / 4_294_967_296
}
/** Chance that runs smoothly from place to place. */
const ease = (t: number): number => t * t * t * (t * (6 * t - 15) + 10)
const cloud = (x: number, y: number, seed: number): number => {
  const [i, j] = [Math.floor(x), Math.floor(y)]
  const [u, v] = [ease(x - i), ease(y - j)]
  const upper = cell(i, j, seed) * (1 - u) + cell(i + 1, j, seed) * u
  return upper * (1 - v) + (cell(i, j + 1, seed) * (1 - u) + cell(i + 1, j + 1, seed) * u) * v
}

const TABLES: Record<string, (x: number, y: number, seed: number) => Rgb> = {
  planks: (x, y, seed) => {
    const plank = Math.floor(x / 70)
    const knot = Math.hypot(x - 70 * plank - 35, 0.4 * (y - 200 * cell(plank, 1, seed) + 90))
    const v = 0.7 + 0.3 * Math.sin(0.6 * x + 4 * cloud(x / 30, y / 140, seed) + 20 / (1 + knot / 6)) * cloud(x / 4, y / 60, seed + 1) + 0.25 * cell(plank, 2, seed) // prettier-ignore
    const gap = x - 70 * plank < 0.9 ? 0.3 : 1
    return [0.3 * v * gap, 0.17 * v * gap, 0.09 * v * gap]
  },
  linen: (x, y, seed) => {
    const check = (Math.floor(x / 22) + Math.floor(y / 22)) & 1
    const weave = 0.85 + 0.15 * Math.sin(5 * x) * Math.sin(5 * y) + 0.1 * cloud(x, y / 8, seed)
    return check ? [0.55 * weave, 0.5 * weave, 0.4 * weave] : [0.12 * weave, 0.2 * weave, 0.34 * weave]
  },
  terrazzo: (x, y, seed) => {
    const [i, j] = [Math.floor(x / 9), Math.floor(y / 9)]
    const far = Math.hypot(
      x / 9 - i - 0.25 - 0.5 * cell(i, j, seed),
      y / 9 - j - 0.25 - 0.5 * cell(j, i, seed),
    )
    const chip = far < 0.15 + 0.25 * cell(i, j, seed + 2) ? 0.1 + 0.5 * cell(i, j, seed + 3) : 0.46
    return [chip, chip * 0.97, chip * 0.92]
  },
  pebbles: (x, y, seed) => {
    const v = 0.05 + 0.22 * cloud(x / 5, y / 5, seed) * cloud(x / 2, y / 2, seed + 1)
    return [v, v * 1.02, v * 1.05]
  },
  desk: (x, y, seed) => {
    const v = 0.56 + 0.06 * cloud(x / 50, y / 6, seed)
    return [v, v * 0.95, v * 0.86]
  },
  cloth: (x, y, seed) => {
    const dot = Math.hypot(x - 18 * Math.round(x / 18), y - 18 * Math.round(y / 18)) < 4
    const v = 0.9 + 0.2 * cloud(2 * x, 2 * y, seed)
    return dot ? [0.6 * v, 0.58 * v, 0.5 * v] : [0.1 * v, 0.22 * v, 0.16 * v]
  },
}

/** Means over a square of places, by sums over all that lies above and left. */
function evened(values: Float32Array, size: number, by: number): Float32Array {
  const sums = new Float64Array((size + 1) ** 2)
  for (let y = 0; y < size; y++)
    for (let x = 0; x < size; x++)
      sums[(y + 1) * (size + 1) + x + 1] =
        values[y * size + x]! + sums[y * (size + 1) + x + 1]! + sums[(y + 1) * (size + 1) + x]! - sums[y * (size + 1) + x]! // prettier-ignore
  return values.map((_, at) => {
    const [x, y] = [at % size, Math.floor(at / size)]
    const [l, r, t, b] = [
      Math.max(0, x - by),
      Math.min(size, x + by + 1),
      Math.max(0, y - by),
      Math.min(size, y + by + 1),
    ]
    const sum = sums[b * (size + 1) + r]! - sums[t * (size + 1) + r]! - sums[b * (size + 1) + l]! + sums[t * (size + 1) + l]! // prettier-ignore
    return sum / ((r - l) * (b - t))
  })
}

/** How light each place of the motif's board is, on yarn or on the paper beside it: the window's side, shadows, hollows. */
function litBoard(
  { size, fine, height, along }: Crocheted,
  sun: Rgb,
  soft: number,
  sky: number,
  twist: number,
) {
  const around = evened(height, size, Math.round(1.2 * fine))
  const shadow = new Float32Array(size * size)
  for (let y = 1; y < size - 1; y++)
    for (let x = 1; x < size - 1; x++) {
      const at = y * size + x
      // Towards the window in steps: what stands higher than the ray shades, the farther it is the softer.
      let most = 0
      for (let k = 1; k <= 14; k++) {
        const away = 0.35 * k
        const [u, v] = [Math.round(x + sun[0] * away * fine), Math.round(y + sun[1] * away * fine)]
        if (u < 0 || v < 0 || u >= size || v >= size) break
        most = Math.max(most, (height[v * size + u]! - height[at]! - sun[2] * away) / (soft * (0.2 + away)))
      }
      shadow[at] = Math.min(1, most)
    }
  const shaded = evened(shadow, size, Math.max(1, Math.round(0.25 * soft * fine)))
  return Float32Array.from({ length: size * size }, (_, at) => {
    const own = height[at]!
    const hollow = Math.max(0, around[at]! - own)
    const open = sky / (1 + 0.5 * hollow)
    const [dx, dy] = own > 0 ? [(height[at + 1]! - height[at - 1]!) * fine * 0.5, (height[at + size]! - height[at - size]!) * fine * 0.5] : [0, 0] // prettier-ignore
    const up = 1 / Math.sqrt(1 + 0.3 * (dx * dx + dy * dy))
    const toSun = Math.max(0.1, up * (1 - 0.55 * (dx * sun[0] + dy * sun[1])))
    const ply = own > 0 ? 1 + twist * Math.sin(7 * along[at]!) : 1
    return ply * (open + (1 - sky) * Math.min(1.4, toSun) * (1 - 0.9 * shaded[at]!))
  })
}

/** The picture of a number: the same each time. */
export function porch(number: number, wide = 800): Porch {
  const random = draws(number + 1)
  const between = (least: number, most: number) => least + (most - least) * random()
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!
  const some = (share: number) => random() < share
  const sheet = pick<SheetName>(['A4', 'A4', 'Letter', 'A5', 'A5', 'A4', 'card', 'A4', 'Letter', 'A4'])
  const beside = sheet === 'card'
  const size = SHEET_SIZES[sheet]
  const shape = SHAPES[number % SHAPES.length]!
  const strand = between(0.7, 1.5)
  // Petals of stitches have a breadth: as many as a hook finds room for.
  const largest = Math.min(150, beside ? 110 : size.width - 20)
  const most = shape === 'heart' ? 10 : shape === 'fan' || shape === 'arches' ? 24 : 16
  // Wide shells of three leave more paper than yarn.
  const fewest = shape === 'leaf' || shape === 'pointed' ? 3 : 5
  const petals = fewest + ((number * 5 + Math.floor(number / 8)) % (most - fewest + 1))
  const least = Math.min(largest - 4, Math.max(45, petals * strand * (shape === 'leaf' ? 4.2 : 5.5)))
  const broad = { shell: 1, pointed: 1.05, leaf: 0.95, heart: 0.9, overlapping: 1.35, arches: 1.02, fan: 0.98, clusters: 1 }[shape] // prettier-ignore
  const motif = crochet({
    ...{ shape, petals, strand, random, turn: between(0, 6.28), overTips: between(least, largest) },
    core: shape === 'fan' || shape === 'arches' ? between(0.55, 0.78) : shape === 'heart' ? between(0.25, 0.4) : petals > 10 ? between(0.5, 0.65) : between(0.3, 0.5), // prettier-ignore
    ...{ width: broad * between(0.92, 1.08), uneven: pick([0, 0.015, 0.03]), yarns: pick([1, 1, 2, 3]) },
  })
  const isDark = some(0.35)
  const paper = pick(isDark ? PAPERS.black : PAPERS.white)
  const yarns = [0, 1, 2].map(() => pick(isDark ? YARNS.pale : YARNS.dark))
  const tableName = pick(Object.keys(TABLES).filter((each) => !isDark || each !== 'pebbles'))
  const table = TABLES[tableName]!

  const aside = between(0, 6.28)
  const sun: Rgb = [Math.cos(aside), Math.sin(aside), between(0.7, 2.2)]
  const [sky, soft] = [between(0.35, 0.8), between(0.3, 2)]
  const lit = litBoard(motif, sun, soft, sky, between(0, 0.12))
  const bars = some(0.35) ? { wide: between(40, 120), turn: between(0, 3.1), edge: pick([0.8, 6, 20]), depth: between(0.12, 0.4), off: between(0, 100) } : null // prettier-ignore
  const falls = between(0, 0.3)

  const tall = Math.round((wide * 4) / 3)
  const tilt = (between(0, 33) * Math.PI) / 180
  const [head, around] = [
    between(-0.25, 0.25) + pick([0, Math.PI / 2, Math.PI, -Math.PI / 2]),
    between(0, 6.28),
  ]
  const focal = between(0.68, 1.2) * tall
  const span = beside ? { x: size.width + 2 * motif.most + 10, y: Math.max(size.height, 2 * motif.most) } : { x: size.width, y: size.height } // prettier-ignore
  const isLying = Math.abs(Math.sin(head)) > 0.7
  const needs = isLying ? Math.max(span.y / wide, span.x / tall) : Math.max(span.x / wide, span.y / tall)
  const away = (needs * focal) / between(0.58, 0.74)
  const aim = { x: between(-6, 6), y: between(-6, 6) }
  const bend = [between(-0.02, 0.015), between(-0.01, 0.01)] as const
  const room = {
    x: Math.max(0, size.width / 2 - motif.most - 5),
    y: Math.max(0, size.height / 2 - motif.most - 5),
  }
  const laid = beside
    ? { x: span.x / 2 - motif.most, y: 0 }
    : { x: between(-room.x, room.x), y: between(-room.y, room.y) }
  const sheetX = beside ? size.width / 2 - span.x / 2 : 0
  const half = (motif.size - 1) / 2
  const into = new Float64Array(3)
  const shine = (x: number, y: number) => {
    const sx = x - sheetX
    const [inX, inY] = [size.width / 2 - Math.abs(sx), size.height / 2 - Math.abs(y)]
    const onSheet = inX > 0 && inY > 0
    let colour: Rgb = onSheet ? (beside ? [0.1, 0.28, 0.5] : paper) : beside ? paper : table(x, y, number)
    let by = 1 - falls * (0.5 - (x * sun[0] + y * sun[1]) / 500)
    if (!onSheet && inX > -0.8 && inY > -0.8) by *= 0.85
    const [u, v] = [
      Math.round(half + (x - laid.x) * motif.fine),
      Math.round(half + (y - laid.y) * motif.fine),
    ]
    if (u >= 0 && v >= 0 && u < motif.size && v < motif.size) {
      const at = v * motif.size + u
      by *= lit[at]!
      if (motif.height[at]! > 0) colour = yarns[motif.yarn[at]!]!
    }
    if (bars) {
      const place = (((x * Math.cos(bars.turn) + y * Math.sin(bars.turn) + bars.off) % (2 * bars.wide)) + 2 * bars.wide) % (2 * bars.wide) // prettier-ignore
      const inside = bars.wide / 2 - Math.abs(place - bars.wide)
      by *= 1 - bars.depth / (1 + Math.exp((-4 * inside) / bars.edge))
    }
    for (let c = 0; c < 3; c++) into[c]! += colour[c]! * by
  }
  // The camera hangs over `aim`, leaning: axes of its own by two turns.
  const [ct, st, ca, sa, ch, sh] = [Math.cos(tilt), Math.sin(tilt), Math.cos(around), Math.sin(around), Math.cos(head - around), Math.sin(head - around)] as const // prettier-ignore
  const light = new Float32Array(3 * wide * tall)
  const PLACES = [[-0.375, -0.125], [0.125, -0.375], [0.375, 0.125], [-0.125, 0.375]] as const // prettier-ignore
  for (let row = 0; row < tall; row++)
    for (let column = 0; column < wide; column++) {
      into.fill(0)
      let cosine = 1
      for (const [ox, oy] of PLACES) {
        let u = (column + ox - (wide - 1) / 2) / focal
        let v = (row + oy - (tall - 1) / 2) / focal
        const r2 = u * u + v * v
        const bent = 1 + bend[0] * r2 + bend[1] * r2 * r2
        ;[u, v] = [u * bent, v * bent]
        // Turned by the head, leaned about its own axis, turned back: the table is where the ray comes down.
        const [p, q] = [u * ch - v * sh, u * sh + v * ch]
        const [lean, down] = [p * ct + st, ct - p * st]
        const t = (away * ct) / down
        const [gx, gy] = [t * lean - away * st, t * q]
        shine(aim.x + gx * ca - gy * sa, aim.y + gx * sa + gy * ca)
        cosine = 1 / Math.sqrt(1 + r2)
      }
      for (let c = 0; c < 3; c++) light[3 * (row * wide + column) + c] = 0.25 * into[c]! * cosine ** 3
    }
  const picture = developed(light, wide, tall, { between, random, some, pick })
  return { name: `${number} porch ${shape} ${petals} ${sheet} ${isDark ? 'dark' : 'white'} ${tableName}${bars ? ' bars' : ''}`, sheet, motif, picture } // prettier-ignore
}

/** Light beyond which the shoulder of the phone's curve lies flat; a power of two, which takes no digit away. */
const BRIGHTEST = 4

interface Chance {
  readonly between: (least: number, most: number) => number
  readonly random: () => number
  readonly some: (share: number) => boolean
  readonly pick: <T>(list: readonly T[]) => T
}

/** What the phone makes of the light: iris, sensor, noise, colours smoothed, sharpened, a curve, JPEG. */
function developed(light: Float32Array, wide: number, tall: number, { between, random, some, pick }: Chance) {
  const iris = between(0.5, 1.6)
  const offs: (readonly [number, number, number])[] = []
  for (let y = -2; y <= 2; y++)
    for (let x = -2; x <= 2; x++) {
      const share = Math.min(1, Math.max(0, iris + 0.5 - Math.hypot(x, y)))
      if (share > 0) offs.push([x, y, share])
    }
  const all = offs.reduce((sum, [, , share]) => sum + share, 0)
  const glow = pick<Rgb>([[1, 1, 1], [1.08, 0.95, 0.78], [0.9, 1, 1.12]]) // prettier-ignore
  const [exposure, hiss] = [between(0.75, 1.12), between(0.002, 0.011)]
  const inside = (x: number, most: number) => Math.min(most - 1, Math.max(0, x))
  // One colour to each place of the sensor: red and green in one row, green and blue in the next.
  const colourOf = (x: number, y: number) => ((x & 1) + (y & 1) === 1 ? 1 : y & 1 ? 2 : 0)
  const raw = new Float32Array(wide * tall)
  for (let y = 0; y < tall; y++)
    for (let x = 0; x < wide; x++) {
      const c = colourOf(x, y)
      let sum = 0
      const isWithin = x > 1 && y > 1 && x < wide - 2 && y < tall - 2
      for (let k = 0; k < offs.length; k++) {
        const off = offs[k]!
        const place = isWithin ? (y + off[1]) * wide + x + off[0] : inside(y + off[1], tall) * wide + inside(x + off[0], wide) // prettier-ignore
        sum += off[2] * light[3 * place + c]!
      }
      const value = (exposure * glow[c]! * sum) / all
      const bell = random() + random() + random() + random() - 2
      raw[y * wide + x] = Math.max(0, value + hiss * 1.7 * bell * Math.sqrt(0.03 + value))
    }
  const full = new Float32Array(3 * wide * tall)
  const [sums, counts] = [new Float64Array(3), new Float64Array(3)]
  for (let y = 0; y < tall; y++)
    for (let x = 0; x < wide; x++) {
      sums.fill(0)
      counts.fill(0)
      for (let dy = -1; dy <= 1; dy++)
        for (let dx = -1; dx <= 1; dx++) {
          const [u, v] = [inside(x + dx, wide), inside(y + dy, tall)]
          const c = colourOf(u, v)
          const share = c === colourOf(x, y) && (dx || dy) ? 0 : 1 / (1 + Math.abs(dx) + Math.abs(dy))
          sums[c]! += share * raw[v * wide + u]!
          counts[c]! += share
        }
      for (let c = 0; c < 3; c++) full[3 * (y * wide + x) + c] = sums[c]! / counts[c]!
    }
  const sharpen = some(0.6) ? between(0.2, 0.8) : 0
  const steep = between(0, 0.5)
  const balance = glow.map((each) => 1 / (1 + 0.7 * (each - 1)))
  const data = Buffer.alloc(4 * wide * tall, 255)
  const byteOf = bytesOf((share) => {
    const value = BRIGHTEST * share
    const shoulder = value > 0.8 ? 0.8 + 0.2 * Math.tanh((value - 0.8) / 0.2) : value
    const shown = shoulder > 0.0031308 ? 1.055 * shoulder ** (1 / 2.4) - 0.055 : 12.92 * shoulder
    return shown + steep * (shown * shown * (3 - 2 * shown) - shown)
  })
  const luma = Float32Array.from({ length: wide * tall }, (_, at) => {
    return 0.25 * full[3 * at]! + 0.6 * full[3 * at + 1]! + 0.15 * full[3 * at + 2]!
  })
  for (let y = 0; y < tall; y++)
    for (let x = 0; x < wide; x++) {
      const at = y * wide + x
      const [l, r] = [y * wide + inside(x - 1, wide), y * wide + inside(x + 1, wide)]
      const [u, d] = [inside(y - 1, tall) * wide + x, inside(y + 1, tall) * wide + x]
      const own = luma[at]!
      const near = luma[l]! + luma[r]! + luma[u]! + luma[d]!
      for (let c = 0; c < 3; c++) {
        // Colour is evened out over neighbours, light is not.
        const all =
          full[3 * at + c]! + full[3 * l + c]! + full[3 * r + c]! + full[3 * u + c]! + full[3 * d + c]!
        const value = balance[c]! * (own + (all - own - near) / 5 + sharpen * (own - near / 4))
        data[4 * at + c] = byteOf(value / BRIGHTEST)
      }
    }
  return decode(encode({ width: wide, height: tall, data }, Math.round(between(62, 95))).data, {
    useTArray: true,
  })
}
