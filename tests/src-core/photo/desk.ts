/**
 * A sixth renderer of pictures, written from what a photo is asked to be and from nothing else here: rays of a pinhole
 * that looks at a place of the sheet from anywhere up to 35° off, onto wood, cloth or tiles, a sheet or a bank card, a
 * motif of some thickness with lit stitches; a lamp's falling off, the soft shadow of a hand or a phone; the lens' bell,
 * the sensor's noise, JPEG of 60 to 95.
 */
import { decode, encode } from 'jpeg-js'
import { SHEET_SIZES } from '../../../src-core/photo/sheet-sizes'
import type { SheetName } from '../../../src-core/photo/sheet-sizes'
import { dice, FORMS, laid } from './desk-motifs'
import type { Form } from './desk-motifs'
import { bytesOf } from './tones'

type Rgb = readonly [number, number, number]

export interface Desk {
  readonly name: string
  readonly sheet: SheetName
  readonly motif: { readonly petals: number; readonly overTips: number; readonly overValleys: number }
  readonly picture: { width: number; height: number; data: Uint8Array }
}

const DARK: Rgb[] = [[0.4, 0.02, 0.03], [0.02, 0.06, 0.28], [0.03, 0.2, 0.07], [0.25, 0.03, 0.2], [0.5, 0.18, 0.02], [0.02, 0.22, 0.25], [0.05, 0.05, 0.06], [0.16, 0.08, 0.04], [0.5, 0.1, 0.22]] // prettier-ignore
const LIGHT: Rgb[] = [[0.82, 0.8, 0.74], [0.85, 0.66, 0.25], [0.8, 0.5, 0.55], [0.5, 0.68, 0.8], [0.62, 0.76, 0.5], [0.85, 0.72, 0.6]] // prettier-ignore
const WHITE: Rgb[] = [
  [0.8, 0.8, 0.8],
  [0.74, 0.74, 0.76],
  [0.8, 0.78, 0.72],
]
const BLACK: Rgb[] = [
  [0.03, 0.03, 0.035],
  [0.02, 0.03, 0.06],
  [0.05, 0.05, 0.05],
  [0.06, 0.03, 0.03],
]
const CARDS: Rgb[] = [[0.05, 0.12, 0.4], [0.4, 0.4, 0.42], [0.6, 0.5, 0.2], [0.03, 0.03, 0.03], [0.05, 0.3, 0.2], [0.7, 0.7, 0.72]] // prettier-ignore

/** A value between 0 and 1 that belongs to a place of a lattice, and evened between places. */
const cell = (i: number, j: number): number => {
  let h = Math.imul(i, 0x27d4eb2d) ^ Math.imul(j, 0x165667b1)
  h = Math.imul(h ^ (h >>> 15), 0x85ebca6b)
  return ((h ^ (h >>> 13)) >>> 0) / 4_294_967_296
}
const cloud = (x: number, y: number): number => {
  const [i, j] = [Math.floor(x), Math.floor(y)]
  const [u, v] = [x - i, y - j]
  const [s, t] = [u * u * (3 - 2 * u), v * v * (3 - 2 * v)]
  return (cell(i, j) * (1 - s) + cell(i + 1, j) * s) * (1 - t) + (cell(i, j + 1) * (1 - s) + cell(i + 1, j + 1) * s) * t // prettier-ignore
}

const WOODS: Rgb[] = [
  [0.4, 0.24, 0.12],
  [0.2, 0.1, 0.05],
  [0.5, 0.36, 0.2],
  [0.28, 0.2, 0.14],
]
const CLOTHS: Rgb[] = [[0.12, 0.2, 0.34], [0.35, 0.1, 0.1], [0.16, 0.28, 0.18], [0.4, 0.38, 0.34], [0.3, 0.26, 0.18]] // prettier-ignore
const TILES: Rgb[] = [
  [0.36, 0.34, 0.32],
  [0.3, 0.16, 0.1],
  [0.16, 0.2, 0.24],
  [0.45, 0.43, 0.38],
]
const TABLES = {
  wood: (x: number, y: number) => {
    const ring = 0.11 * y + 1.5 * cloud(x / 90, y / 22) + 0.25 * cloud(x / 12, y / 2)
    const plank = Math.abs((((y + 9000) / 95) % 1) - 0.5) > 0.495 ? 0.45 : 1
    return plank * (0.82 + 0.3 * Math.abs((ring % 1) - 0.5) * 2 - 0.12 * cloud(x / 6, y * 2))
  },
  cloth: (x: number, y: number) => {
    const over = (Math.floor(x / 0.9) + Math.floor(y / 0.9)) & 1
    const thread = over ? Math.sin((Math.PI * y) / 0.9) : Math.sin((Math.PI * x) / 0.9)
    return 0.8 + 0.16 * Math.abs(thread) + 0.14 * cloud(x / 3, y / 3) - 0.08 * over
  },
  tile: (x: number, y: number) => {
    const [u, v] = [(x + 9040) % 100, (y + 9030) % 100]
    if (u < 3 || v < 3) return 1.45 - 0.2 * cloud(x, y)
    return 0.86 + 0.2 * cloud(x / 25, y / 25) + 0.08 * cell(Math.floor((x + 9040) / 100), Math.floor((y + 9030) / 100)) // prettier-ignore
  },
} as const

/** Everything of a scene but the motif. */
function sceneOf(number: number) {
  const roll = dice(number * 2_654_435 + 17)
  const between = (least: number, most: number) => least + (most - least) * roll()
  const pick = <T>(list: readonly T[]): T => list[Math.floor(roll() * list.length)]!
  const sheet = pick<SheetName>(['A4', 'Letter', 'A4', 'A5', 'A4', 'Letter', 'A4', 'A5', 'A4', 'card'])
  const isDark = roll() < 0.4
  const kind = pick(['wood', 'cloth', 'tile'] as const)
  const table = pick({ wood: WOODS, cloth: CLOTHS, tile: TILES }[kind])
  return { roll, between, pick, sheet, isDark, kind, table }
}

/** The picture of a number: the same each time. */
export function desk(number: number, wide = 1000): Desk {
  const { roll, between, pick, sheet, isDark, kind, table } = sceneOf(number)
  const tall = Math.round((wide * 4) / 3)
  const form: Form = FORMS[(number + Math.floor(number / 22)) % FORMS.length]!
  const petals = 3 + ((number * 5) % 22)
  const size = SHEET_SIZES[sheet]
  const isCard = sheet === 'card'
  // A card lies with the motif on a plain sheet that is larger than all that is seen of it, or on cloth.
  const most = Math.min(150, isCard ? 120 : size.width - 20)
  const least = Math.min(most - 2, Math.max(40, petals * 4.2))
  const motif = laid({
    ...{ form, petals, roll },
    overTips: between(least, most),
    uneven: pick([0, 0.01, 0.02, 0.035]),
    stitch: between(2.4, 4.4),
    crimp: between(0, 0.3),
  })
  const paper = pick(isDark ? BLACK : WHITE)
  const yarns = [pick(isDark ? LIGHT : DARK), pick(isDark ? LIGHT : DARK)]
  const rings = roll() < 0.5 ? between(0.3, 0.7) * motif.most : 0
  const thick = roll() < 0.4 ? between(0.8, 2.2) : 0.4
  const cardOn = pick(['paper', 'cloth'] as const)
  const cardColour = pick(CARDS.filter((each) => Math.abs(each[1] - (cardOn === 'paper' ? paper : table)[1]) > 0.15)) // prettier-ignore
  const room = (length: number) => Math.max(0, length / 2 - motif.most - 6)
  const at = isCard
    ? { x: size.width / 2 + motif.most + between(6, 20), y: between(-15, 15) }
    : { x: between(-1, 1) * room(size.width), y: between(-1, 1) * room(size.height) }

  // The camera looks at the middle of what matters, from a direction off the plumb line, rolled about its own axis.
  const view = isCard
    ? { x: at.x / 2 + motif.most / 2 - size.width / 4, y: 0, wide: size.width + 2 * motif.most + 30, tall: 2 * motif.most + 30 } // prettier-ignore
    : { x: between(-10, 10), y: between(-10, 10), wide: size.width, tall: size.height }
  const [tilt, towards] = [(between(0, 35) * Math.PI) / 180, between(0, 2 * Math.PI)]
  const ahead = [Math.sin(tilt) * Math.cos(towards), Math.sin(tilt) * Math.sin(towards), -Math.cos(tilt)] as const // prettier-ignore
  const spin = between(-0.25, 0.25) + (view.wide > view.tall ? Math.PI / 2 : 0) + pick([0, Math.PI])
  // Right and down of the picture: an axis of the table made square to where it looks.
  const flat = [Math.cos(spin), Math.sin(spin), 0]
  const dot = flat[0]! * ahead[0] + flat[1]! * ahead[1]
  const long = Math.hypot(flat[0]! - dot * ahead[0], flat[1]! - dot * ahead[1], -dot * ahead[2])
  const right = [0, 1, 2].map((k) => (flat[k]! - dot * ahead[k]!) / long)
  const down = [
    ahead[1] * right[2]! - ahead[2] * right[1]!,
    ahead[2] * right[0]! - ahead[0] * right[2]!,
    ahead[0] * right[1]! - ahead[1] * right[0]!,
  ]
  const focal = tall * between(0.75, 1.15)
  const corners = [-0.5, 0.5].flatMap((u) => [-0.5, 0.5].map((v) => [view.wide * u, view.tall * v] as const))
  const seenFrom = (far: number, [x, y]: readonly [number, number]) => {
    // From the eye, which is `far` back from what it looks at.
    const dx = x - (isCard ? 0 : view.x) + far * ahead[0]
    const dy = y - (isCard ? 0 : view.y) + far * ahead[1]
    const dz = far * ahead[2]
    const depth = dx * ahead[0] + dy * ahead[1] + dz * ahead[2]
    return [
      (focal * (dx * right[0]! + dy * right[1]! + dz * right[2]!)) / depth,
      (focal * (dx * down[0]! + dy * down[1]! + dz * down[2]!)) / depth,
    ]
  }
  const margin = between(0.04, 0.16)
  let far = 200
  while (
    corners.some((corner) => {
      const [u, v] = seenFrom(far, corner) as [number, number]
      return Math.abs(u) > wide * (0.5 - margin) || Math.abs(v) > tall * (0.5 - margin)
    })
  )
    far *= 1.02
  const eye = [view.x - far * ahead[0], view.y - far * ahead[1], -far * ahead[2]]

  const lamp = { towards: between(0, 6.28), falls: between(0, 0.35), slope: between(0, 0.9), deep: between(0.1, 0.5), soft: between(0.5, 2) } // prettier-ignore
  const tint = pick<Rgb>([[1, 1, 1], [1.05, 0.97, 0.8], [0.93, 0.99, 1.08], [1, 1, 1]]) // prettier-ignore
  const relief = between(0.05, 0.28)
  const shade = roll() < 0.45 ? { x: between(-90, 90), y: between(-90, 90), wide: between(25, 60), tall: between(50, 110), turn: between(0, 3.14), soft: between(10, 40), deep: between(0.12, 0.4) } : null // prettier-ignore
  const [away, sideways] = [Math.cos(lamp.towards), Math.sin(lamp.towards)]
  const isOn = (x: number, y: number): number => {
    const column = Math.round((x - at.x) * motif.fine) + motif.half
    const row = Math.round((y - at.y) * motif.fine) + motif.half
    if (column < 0 || row < 0 || column >= motif.side || row >= motif.side) return -1
    const place = row * motif.side + column
    return motif.covers[place] ? place : -1
  }
  const ring = Array.from({ length: 8 }, (_, k) => [Math.cos((k * Math.PI) / 4), Math.sin((k * Math.PI) / 4)] as const) // prettier-ignore
  const colour = new Float64Array(3)
  const trace = (dx: number, dy: number, dz: number): void => {
    let t = -eye[2]! / dz
    const [x, y] = [eye[0]! + t * dx, eye[1]! + t * dy]
    let lit = 1
    let hit = -1
    for (const high of [thick, thick / 2, 0]) {
      t = (high - eye[2]!) / dz
      hit = isOn(eye[0]! + t * dx, eye[1]! + t * dy)
      if (hit >= 0) {
        if (high < thick) lit *= 0.75
        break
      }
    }
    let base: Rgb
    if (hit >= 0) {
      const [mx, my] = [eye[0]! + t * dx - at.x, eye[1]! + t * dy - at.y]
      base = yarns[rings > 0 && Math.hypot(mx, my) < rings ? 1 : 0]!
      lit *= 1 + relief * (motif.leans[2 * hit]! * away + motif.leans[2 * hit + 1]! * sideways) - 0.5 * relief * cloud(4 * mx, 4 * my) // prettier-ignore
    } else {
      const onSheet = Math.abs(x) < size.width / 2 && Math.abs(y) < size.height / 2
      const [cx, cy] = [Math.max(0, Math.abs(x) - size.width / 2 + 3.2), Math.max(0, Math.abs(y) - size.height / 2 + 3.2)] // prettier-ignore
      if (isCard && onSheet && Math.hypot(cx, cy) < 3.2) {
        base = cardColour
        if (y > -18 && y < -9) lit = 0.75
        if (x > -33 && x < -22 && y > -3 && y < 6) base = [0.55, 0.42, 0.14]
      } else if (isCard ? cardOn === 'paper' : onSheet) base = paper
      else {
        base = table
        lit = TABLES[isCard ? 'cloth' : kind](x, y)
      }
      // The motif's shadow: how much of a lamp as wide as this is hidden.
      let hidden = 0
      const reach = Math.hypot(x - at.x, y - at.y)
      if (reach < motif.most + 8) {
        const [sx, sy] = [x + away * lamp.slope * thick, y + sideways * lamp.slope * thick]
        for (const [u, v] of ring) if (isOn(sx + lamp.soft * u, sy + lamp.soft * v) >= 0) hidden++
      }
      lit *= 1 - (lamp.deep * hidden) / ring.length
    }
    lit *= 1 + lamp.falls * ((x * away + y * sideways) / 300) - 0.3 * lamp.falls
    if (shade) {
      const [ux, uy] = [x - shade.x, y - shade.y]
      const [u, v] = [ux * Math.cos(shade.turn) + uy * Math.sin(shade.turn), uy * Math.cos(shade.turn) - ux * Math.sin(shade.turn)] // prettier-ignore
      const outside = Math.hypot(Math.max(0, Math.abs(u) - shade.wide), Math.max(0, Math.abs(v) - shade.tall))
      lit *= 1 - shade.deep * Math.max(0, 1 - outside / shade.soft) ** 2
    }
    for (let c = 0; c < 3; c++) colour[c] = Math.max(0, base[c]! * tint[c]! * lit)
  }
  const light = new Float32Array(3 * wide * tall)
  const within = [[-0.375, -0.125], [0.125, -0.375], [0.375, 0.125], [-0.125, 0.375]] as const // prettier-ignore
  for (let row = 0; row < tall; row++)
    for (let column = 0; column < wide; column++)
      for (const [u, v] of within) {
        const px = (column + u + 0.5 - wide / 2) / focal
        const py = (row + v + 0.5 - tall / 2) / focal
        trace(
          ahead[0] + px * right[0]! + py * down[0]!,
          ahead[1] + px * right[1]! + py * down[1]!,
          ahead[2] + px * right[2]! + py * down[2]!,
        )
        for (let c = 0; c < 3; c++) light[3 * (row * wide + column) + c]! += colour[c]! / 4
      }
  const quality = Math.round(between(60, 95))
  return {
    name: `${number} ${form} ${petals} ${sheet} ${isDark ? 'dark' : 'white'} ${isCard ? cardOn : kind} ${Math.round((tilt * 180) / Math.PI)}°${shade ? ' shade' : ''} q${quality}`, // prettier-ignore
    sheet,
    motif: { petals, overTips: motif.overTips, overValleys: motif.overValleys },
    picture: developed(light, wide, tall, { roll, quality, blur: between(0.5, 1.5), noise: between(0.003, 0.014), exposure: between(0.8, 1.15) }), // prettier-ignore
  }
}

interface Darkroom {
  readonly roll: () => number
  readonly quality: number
  readonly blur: number
  readonly noise: number
  readonly exposure: number
}

/** Lens, sensor, curve and JPEG. */
function developed(
  light: Float32Array,
  wide: number,
  tall: number,
  { roll, quality, blur, noise, exposure }: Darkroom,
) {
  const reach = Math.ceil(3 * blur)
  const weights = Array.from({ length: 2 * reach + 1 }, (_, k) => Math.exp(-(((k - reach) / blur) ** 2) / 2))
  const total = weights.reduce((sum, each) => sum + each, 0)
  const smear = (from: Float32Array, next: number, count: number, lines: number, stride: number) => {
    const to = new Float32Array(from.length)
    for (let line = 0; line < lines; line++)
      for (let at = 0; at < count; at++)
        for (let c = 0; c < 3; c++) {
          let sum = 0
          const isWithin = at >= reach && at + reach < count
          for (let k = -reach; k <= reach; k++) {
            const held = isWithin ? at + k : Math.min(count - 1, Math.max(0, at + k))
            sum += weights[k + reach]! * from[line * stride + held * next + c]!
          }
          to[line * stride + at * next + c] = sum / total
        }
    return to
  }
  const seen = smear(smear(light, 3, wide, tall, 3 * wide), 3 * wide, tall, wide, 3)
  const byteOf = bytesOf((held) => (held <= 0.0031308 ? 12.92 * held : 1.055 * held ** (1 / 2.4) - 0.055))
  const data = new Uint8Array(4 * wide * tall)
  for (let pixel = 0; pixel < wide * tall; pixel++) {
    for (let c = 0; c < 3; c++) {
      const value = exposure * seen[3 * pixel + c]!
      // A bell of two chances (Box and Muller).
      const bell = Math.sqrt(-2 * Math.log(1 - roll())) * Math.cos(2 * Math.PI * roll())
      data[4 * pixel + c] = byteOf(value + noise * bell * Math.sqrt(0.05 + value))
    }
    data[4 * pixel + 3] = 255
  }
  return decode(encode({ width: wide, height: tall, data }, quality).data, { useTArray: true })
}
