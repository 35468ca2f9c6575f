/**
 * A ninth renderer of pictures, written from what a photo is asked to be: lace with picots in dark yarn on a table of
 * wood, beside a bank card or on a sheet. It draws from the things to the picture and not along rays: each stitch is an
 * oval whose corners go through a pinhole and the bent lens of a phone (Brown 1966: two radial and two tangential terms)
 * and are filled in, those nearer to the eye last. Wood is cut from trunks with rings. What the phone saves is a real
 * JPEG with half of the colour each way (4:2:0), read again by the program's own decoder.
 */
import { SHEET_SIZES } from '../../../src-core/photo/sheet-sizes'
import type { SheetName } from '../../../src-core/photo/sheet-sizes'
import { encodeJpeg } from '../../../src-main/photo/codecs'
import { decodePicture } from '../../../src-main/photo/decode'
import { LACES, laceOf } from './pantry-motifs'
import { bytesOf } from './tones'

type Rgb = readonly [number, number, number]

export interface Pantry {
  readonly name: string
  readonly sheet: SheetName
  readonly motif: { readonly petals: number; readonly overTips: number; readonly overValleys: number }
  readonly picture: { width: number; height: number; data: Uint8Array | Uint8ClampedArray }
  /** The file that the phone saves. */
  readonly file: Uint8Array
}

const YARNS: Rgb[] = [[0.3, 0.015, 0.03], [0.015, 0.03, 0.16], [0.02, 0.11, 0.05], [0.14, 0.02, 0.13], [0.03, 0.03, 0.032], [0.01, 0.12, 0.14], [0.09, 0.035, 0.02], [0.26, 0.05, 0.01]] // prettier-ignore
const WOODS: Rgb[] = [[0.62, 0.47, 0.3], [0.55, 0.38, 0.22], [0.68, 0.55, 0.38], [0.5, 0.4, 0.27], [0.6, 0.5, 0.4]] // prettier-ignore
const SHEETS: Rgb[] = [[0.84, 0.84, 0.83], [0.86, 0.83, 0.76], [0.78, 0.81, 0.84]] // prettier-ignore
const CARDS: Rgb[] = [[0.03, 0.07, 0.3], [0.88, 0.88, 0.9], [0.02, 0.03, 0.03], [0.03, 0.2, 0.16], [0.4, 0.03, 0.05], [0.2, 0.3, 0.55]] // prettier-ignore

/** A chance after Marsaglia: multiply with carry, two words of it. */
function carry(seed: number): () => number {
  let [z, w] = [(362_436_069 + Math.imul(seed, 0x9e3779b1)) | 1, (521_288_629 ^ Math.imul(seed + 7, 0x85ebca77)) | 1] // prettier-ignore
  const next = () => {
    z = (Math.imul(36_969, z & 0xffff) + (z >>> 16)) | 0
    w = (Math.imul(18_000, w & 0xffff) + (w >>> 16)) | 0
    return (((z << 16) + (w & 0xffff)) >>> 0) / 4_294_967_296
  }
  for (let i = 0; i < 40; i++) next()
  return next
}

/** A sum of waves in directions of chance: what waves, and never the same twice. */
function waves(roll: () => number, count: number): (x: number, y: number) => number {
  const all = Array.from({ length: count }, () => [roll() * 6.2832, (roll() - 0.5) * 2, (roll() - 0.5) * 2] as const) // prettier-ignore
  // Asked at millions of places.
  const flat = Float64Array.from(all.flat())
  const root = Math.sqrt(count)
  return (x, y) => {
    let sum = 0
    for (let k = 0; k < flat.length; k += 3)
      sum += Math.sin(flat[k]! + 6.2832 * (flat[k + 1]! * x + flat[k + 2]! * y))
    return sum / root
  }
}

/** Boards cut from trunks: rings by the distance from the pith, which lies askew under each board; fibres along it. */
function woodOf(roll: () => number, own: Rgb) {
  const wide = 70 + 70 * roll()
  const lean = roll() * 6.2832
  const boards = Array.from({ length: 40 }, () => ({
    side: (roll() - 0.5) * 2 * wide,
    deep: 8 + 60 * roll(),
    askew: (roll() - 0.5) * 0.06,
    ring: 2.5 + 3.5 * roll(),
    tone: 0.92 + 0.14 * roll(),
  }))
  const [bent, fibre] = [waves(roll, 5), waves(roll, 7)]
  const strong = 0.05 + 0.14 * roll()
  const [cos, sin] = [Math.cos(lean), Math.sin(lean)]
  return (x: number, y: number, into: Float64Array): void => {
    const along = x * cos + y * sin + 4000
    const across = y * cos - x * sin + 4000
    const number = Math.floor(across / wide)
    const board = boards[number % 40]!
    const off = across - (number + 0.5) * wide
    const gap = Math.abs(off) > wide / 2 - 0.35 ? 0.5 : 1
    const depth = board.deep + board.askew * (along - 4000)
    const far = Math.hypot(off - board.side, depth) + 1.2 * bent(along / 190, across / 50)
    const ring = far / board.ring
    // Late wood grows dark and ends at once.
    const part = ring - Math.floor(ring)
    const late = part * part * part
    const light = gap * board.tone * (1 - strong * late + 0.018 * fibre(along / 40, across * 0.7))
    into[0] = own[0] * light
    into[1] = own[1] * light * (1 - 0.12 * strong * late)
    into[2] = own[2] * light * (1 - 0.3 * strong * late)
  }
}

/** Places of the picture to a side of one pixel. */
const FINE = 2

/** The picture of a number: the same each time. */
export async function pantry(number: number, wide = 1000): Promise<Pantry> {
  const roll = carry(number)
  const between = (least: number, most: number) => least + (most - least) * roll()
  const pick = <T>(list: readonly T[]): T => list[Math.floor(roll() * list.length)]!
  const tall = Math.round(wide * 0.75)
  const sheet = (['card', 'A4', 'card', 'Letter', 'card', 'A5', 'card'] as const)[number % 7]!
  const beside = sheet === 'card'
  const size = SHEET_SIZES[sheet]
  const lace = LACES[(number + Math.floor(number / 22)) % LACES.length]!
  const petals = 3 + ((number * 13 + 6) % 22)
  const largest = beside ? 120 : Math.min(150, size.width - 20)
  const motif = laceOf(lace, petals, between(Math.min(largest, Math.max(46, 4.6 * petals)), largest), between)
  // A card lies the long way up, left of the motif; the sheet about it.
  const at = beside
    ? { x: size.width / 2 + motif.most + between(6, 18), y: between(-15, 15) }
    : { x: between(-1, 1) * (size.width / 2 - motif.most - 6), y: between(-1, 1) * (size.height / 2 - motif.most - 6) } // prettier-ignore
  const wood = woodOf(roll, pick(WOODS))
  const own = pick(YARNS)
  const second = roll() < 0.4 ? pick(YARNS) : own
  const yarns = [own, second, roll() < 0.5 ? own : second]
  const cardColour = pick(CARDS)
  const paper = pick(SHEETS)

  // The pinhole.
  const look = beside
    ? { x: (at.x + motif.most - size.width / 2) / 2, y: at.y / 2, wide: at.x + motif.most + size.width / 2, tall: Math.max(size.height, 2 * motif.most + Math.abs(at.y)) } // prettier-ignore
    : { x: 0, y: 0, wide: size.width, tall: size.height }
  const [tilt, towards] = [between(0, 0.5), between(0, 2 * Math.PI)]
  const spin = (beside ? 0 : Math.PI / 2) + between(-0.2, 0.2) + pick([0, Math.PI])
  const focal = wide * between(0.72, 1)
  // Turned about the plumb line, then tipped about an axis in the table.
  const tip = [Math.cos(towards), Math.sin(towards)] as const
  const [ct, st] = [Math.cos(tilt), Math.sin(tilt)]
  const rotated = (x: number, y: number, z: number): readonly [number, number, number] => {
    const along = x * tip[0] + y * tip[1]
    const off = y * tip[0] - x * tip[1]
    const [o, h] = [off * ct + z * st, z * ct - off * st]
    const [px, py] = [along * tip[0] - o * tip[1], along * tip[1] + o * tip[0]]
    return [px * Math.cos(spin) + py * Math.sin(spin), py * Math.cos(spin) - px * Math.sin(spin), h]
  }
  const lens = { k1: between(-0.03, 0.02), k2: between(-0.01, 0.01), p1: between(-0.0015, 0.0015), p2: between(-0.0015, 0.0015) } // prettier-ignore
  const bent = (u: number, v: number): readonly [number, number] => {
    const r = u * u + v * v
    const by = 1 + lens.k1 * r + lens.k2 * r * r
    return [
      u * by + 2 * lens.p1 * u * v + lens.p2 * (r + 2 * u * u),
      v * by + lens.p1 * (r + 2 * v * v) + 2 * lens.p2 * u * v,
    ]
  }
  let high = 100
  /** Where a place of the table, and `z` above it, is seen, in places of the picture. */
  const seen = (x: number, y: number, z: number): readonly [number, number] => {
    const [a, b, h] = rotated(x - look.x, y - look.y, z)
    const [u, v] = bent(a / (high - h), b / (high - h))
    return [FINE * (focal * u + wide / 2), FINE * (focal * v + tall / 2)]
  }
  const room = between(0.04, 0.13)
  const rim = [-0.5, 0.5].flatMap((u) => [-0.5, 0.5].map((v) => [look.x + u * look.wide, look.y + v * look.tall] as const)) // prettier-ignore
  while (rim.some(([x, y]) => { const [px, py] = seen(x, y, 0); return Math.abs(px / FINE / wide - 0.5) > 0.5 - room || Math.abs(py / FINE / tall - 0.5) > 0.5 - room })) high *= 1.015 // prettier-ignore

  // Shadows of the yarn on what lies under it: the motif once more on a board, moved aside and smeared.
  const lamp = { x: between(-1, 1), y: between(-1, 1), deep: between(0.15, 0.45), soft: between(0.4, 1.6), falls: between(0, 0.002) } // prettier-ignore
  const PER = 4
  const side = Math.ceil(2 * PER * (motif.most + 6))
  let shade: Float32Array = new Float32Array(side * side)
  for (const { line, half } of motif.cords)
    for (let k = 0; k + 1 < line.length; k++) {
      const [from, to] = [line[k]!, line[k + 1]!]
      const steps = Math.max(1, Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) * PER))
      for (let s = 0; s <= steps; s++) {
        const x = from[0] + ((to[0] - from[0]) * s) / steps + lamp.x * half
        const y = from[1] + ((to[1] - from[1]) * s) / steps + lamp.y * half
        for (let j = Math.ceil((y - half) * PER); j <= (y + half) * PER; j++)
          for (let i = Math.ceil((x - half) * PER); i <= (x + half) * PER; i++)
            if (Math.hypot(i / PER - x, j / PER - y) < half) {
              const place = (j + (side >> 1)) * side + i + (side >> 1)
              if (place >= 0 && place < shade.length) shade[place] = 1
            }
      }
    }
  for (let round = 0; round < 2; round++) shade = boxed(shade, side, side, 1, Math.max(1, Math.round(lamp.soft * PER))) // prettier-ignore
  const shadeAt = (x: number, y: number): number => {
    const i = Math.round((x - at.x) * PER) + (side >> 1)
    const j = Math.round((y - at.y) * PER) + (side >> 1)
    return i >= 0 && j >= 0 && i < side && j < side ? shade[j * side + i]! : 0
  }

  // The table, the sheet and the card, place by place: out through the lens, down to the table.
  const [columns, rows] = [FINE * wide, FINE * tall]
  const light = new Float32Array(3 * columns * rows)
  const colour = new Float64Array(3)
  // Rows of the rotation are what the camera's axes are on the table.
  const [ex0, ex1, ex2] = rotated(1, 0, 0)
  const [ey0, ey1, ey2] = rotated(0, 1, 0)
  const { k1, k2, p1, p2 } = lens
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const u = ((column + 0.5) / FINE - wide / 2) / focal
      const v = ((row + 0.5) / FINE - tall / 2) / focal
      let a = u
      let b = v
      // As `bent`, without a pair for each of millions of places.
      for (let round = 0; round < 4; round++) {
        const r = a * a + b * b
        const by = 1 + k1 * r + k2 * r * r
        const du = a * by + 2 * p1 * a * b + p2 * (r + 2 * a * a)
        const dv = b * by + p1 * (r + 2 * b * b) + 2 * p2 * a * b
        a += u - du
        b += v - dv
      }
      // Solves rotated(x, y, 0) = (a d, b d, high − d) for x, y and the depth d.
      const m1 = ex0 + a * ex2
      const m2 = ey0 + a * ey2
      const m3 = a * high
      const n1 = ex1 + b * ex2
      const n2 = ey1 + b * ey2
      const n3 = b * high
      const det = m1 * n2 - m2 * n1
      const x = look.x + (m3 * n2 - m2 * n3) / det
      const y = look.y + (m1 * n3 - m3 * n1) / det
      const ox = Math.abs(x) - size.width / 2
      const oy = Math.abs(y) - size.height / 2
      let lit = 1
      if (beside && Math.hypot(Math.max(0, ox + 3.18), Math.max(0, oy + 3.18)) < 3.18) {
        // A stripe and letters in relief on the card.
        for (let c = 0; c < 3; c++) colour[c] = cardColour[c]!
        if (x > 12 && x < 16) for (let c = 0; c < 3; c++) colour[c] = 0.7 * cardColour[c]! + 0.04
      } else if (!beside && ox < 0 && oy < 0) for (let c = 0; c < 3; c++) colour[c] = paper[c]!
      else {
        wood(x, y, colour)
        // Where the sheet or card lies it throws a thin shadow.
        const round = beside ? 3.18 : 0
        lit = Math.hypot(Math.max(0, ox + round), Math.max(0, oy + round)) < round + 0.45 ? 0.75 : 1
      }
      lit *= (1 - lamp.deep * shadeAt(x, y)) * (1 + lamp.falls * (lamp.x * x + lamp.y * y))
      const place = 3 * (row * columns + column)
      for (let c = 0; c < 3; c++) light[place + c] = Math.max(0, colour[c]! * lit)
    }

  // The stitches, from the middle outwards.
  const relief = between(0.1, 0.45)
  const [lx, ly] = [-lamp.x, -lamp.y]
  for (const { line, half, yarn } of motif.cords) {
    let before = 0
    let far = 0
    const each = 2.6 * half
    for (let k = 0; k + 1 < line.length; k++) {
      const [from, to] = [line[k]!, line[k + 1]!]
      const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
      const long = Math.hypot(dx, dy)
      far += long
      while (before <= far) {
        const t = 1 - (far - before) / Math.max(1e-9, long)
        const [x, y] = [at.x + from[0] + t * dx, at.y + from[1] + t * dy]
        const [ax, ay] = [dx / Math.max(1e-9, long), dy / Math.max(1e-9, long)]
        const tone = 1 + relief * (roll() - 0.5)
        oval(light, columns, rows, seen, x, y, half, [ax, ay], 1.15 * 1.3 * half, half, yarns[yarn]!, 0.85 * tone) // prettier-ignore
        oval(light, columns, rows, seen, x + 0.25 * half * lx, y + 0.25 * half * ly, 1.6 * half, [ax, ay], 0.9 * half, 0.55 * half, yarns[yarn]!, tone * (1 + relief)) // prettier-ignore
        before += each
      }
    }
  }
  // From 80 on the encoder keeps more of the colour.
  const quality = Math.round(between(62, 79))
  const file = await encodeJpeg(developed(light, wide, tall, roll, between), quality)
  return {
    name: `${number} pantry ${lace} ${petals} ${sheet} ${Math.round((tilt * 180) / Math.PI)}° q${quality}`,
    sheet,
    motif: { petals, overTips: motif.overTips, overValleys: motif.overValleys },
    picture: await decodePicture(file),
    file,
  }
}

/** Means along both ways over `by` places to each side. */
function boxed(from: Float32Array, wide: number, tall: number, each: number, by: number): Float32Array {
  const along = (values: Float32Array, count: number, lines: number, next: number, line: number) => {
    const to = new Float32Array(values.length)
    for (let l = 0; l < lines; l++)
      for (let c = 0; c < each; c++) {
        const start = l * line + c
        let sum = 0
        for (let i = -by; i < count + by; i++) {
          sum += values[start + Math.min(count - 1, Math.max(0, i)) * next]!
          if (i >= by) {
            to[start + (i - by) * next] = sum / (2 * by + 1)
            sum -= values[start + Math.max(0, i - 2 * by) * next]!
          }
        }
      }
    return to
  }
  return along(along(from, wide, tall, each, each * wide), tall, wide, each * wide, each)
}

/** Fills an oval of the table, its long way along `way`, as the eye sees it. */
function oval(
  light: Float32Array,
  columns: number,
  rows: number,
  seen: (x: number, y: number, z: number) => readonly [number, number],
  x: number,
  y: number,
  z: number,
  way: readonly [number, number],
  long: number,
  half: number,
  colour: Rgb,
  tone: number,
): void {
  const corners = Array.from({ length: 14 }, (_, k) => {
    const [u, v] = [long * Math.cos((k * Math.PI) / 7), half * Math.sin((k * Math.PI) / 7)]
    return seen(x + u * way[0] - v * way[1], y + u * way[1] + v * way[0], z)
  })
  const top = Math.max(0, Math.ceil(Math.min(...corners.map(([, row]) => row)) - 0.5))
  const bottom = Math.min(rows - 1, Math.floor(Math.max(...corners.map(([, row]) => row)) - 0.5))
  for (let row = top; row <= bottom; row++) {
    let [left, right] = [Infinity, -Infinity]
    corners.forEach(([ax, ay], k) => {
      const [bx, by] = corners[(k + 1) % corners.length]!
      if (ay <= row + 0.5 === by <= row + 0.5) return
      const cross = ax + ((row + 0.5 - ay) / (by - ay)) * (bx - ax)
      left = Math.min(left, cross)
      right = Math.max(right, cross)
    })
    for (
      let column = Math.max(0, Math.ceil(left - 0.5));
      column <= Math.min(columns - 1, right - 0.5);
      column++
    )
      for (let c = 0; c < 3; c++) light[3 * (row * columns + column) + c] = colour[c]! * tone
  }
}

/** What is out of focus is a disc; grains of light are counted; the phone's own curve. */
function developed(
  fine: Float32Array,
  wide: number,
  tall: number,
  roll: () => number,
  between: (least: number, most: number) => number,
) {
  const columns = FINE * wide
  const [disc, exposure, full, read] = [between(0.5, 1.5) * FINE, between(0.85, 1.1), between(1500, 9000), between(0.001, 0.004)] // prettier-ignore
  const warm = between(-0.07, 0.07)
  // The disc over all places of a pixel at once.
  const reach = Math.ceil(disc + 0.5)
  const kernel: (readonly [number, number, number])[] = []
  for (let j = -reach; j < reach + FINE; j++)
    for (let i = -reach; i < reach + FINE; i++) {
      let weight = 0
      for (let part = 0; part < FINE * FINE; part++)
        weight += Math.min(1, Math.max(0, disc + 0.5 - Math.hypot(i - (part & 1), j - (part >> 1))))
      if (weight > 0) kernel.push([i, j, weight])
    }
  const total = kernel.reduce((sum, [, , weight]) => sum + weight, 0)
  const byteOf = bytesOf((held) => (held <= 0.0031308 ? 12.92 * held : 1.055 * held ** (1 / 2.4) - 0.055))
  const data = new Uint8Array(4 * wide * tall).fill(255)
  const sums = new Float64Array(3)
  const across = Int32Array.from(kernel, ([i]) => i)
  const down = Int32Array.from(kernel, ([, j]) => j)
  const weights = Float64Array.from(kernel, ([, , weight]) => weight)
  for (let y = 0; y < tall; y++)
    for (let x = 0; x < wide; x++) {
      let red = 0
      let green = 0
      let blue = 0
      for (let k = 0; k < weights.length; k++) {
        const column = Math.min(columns - 1, Math.max(0, FINE * x + across[k]!))
        const place = 3 * (Math.min(FINE * tall - 1, Math.max(0, FINE * y + down[k]!)) * columns + column)
        const weight = weights[k]!
        red += weight * fine[place]!
        green += weight * fine[place + 1]!
        blue += weight * fine[place + 2]!
      }
      sums[0] = red
      sums[1] = green
      sums[2] = blue
      for (let c = 0; c < 3; c++) {
        const value = (exposure * (1 + (1 - c) * warm) * sums[c]!) / total
        const bell = Math.sqrt(-2 * Math.log(1 - roll())) * Math.cos(6.2832 * roll())
        const noisy = value + bell * Math.sqrt(Math.max(0, value) / full + read * read)
        data[4 * (y * wide + x) + c] = byteOf(noisy)
      }
    }
  return { width: wide, height: tall, data }
}
