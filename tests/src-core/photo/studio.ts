/**
 * A second renderer of pictures, apart from `camera.ts` and from the finder: the camera is a matrix of a turned and
 * moved pinhole with a lens that bends, the lamp a point over the table, the shadow the filled motif smeared, the
 * table planks or cloth; at the end the picture goes through JPEG.
 */
import { decode, encode } from 'jpeg-js'
import { SHEET_SIZES } from '../../../src-core/photo/sheet-sizes'
import type { SheetName } from '../../../src-core/photo/sheet-sizes'
import { chance } from './flowers'
import { motifOf, PETALS, plainOf } from './studio-motifs'
import type { Filled, Petal, Plain } from './studio-motifs'
import { calm, curved, harsh, patch } from './studio-weather'
import { bytesOf } from './tones'

export interface Studio {
  readonly name: string
  readonly sheet: SheetName
  readonly petal: Petal | Plain
  readonly motif: Filled
  readonly tilt: number
  readonly picture: { width: number; height: number; data: Uint8Array }
  readonly quality: number
}

/** Mean over a square, by running sums along rows and columns. */
function smeared(values: Float32Array, width: number, height: number, by: number): Float32Array {
  const pass = (from: Float32Array, count: number, length: number, next: number, stride: number) => {
    const to = new Float32Array(from.length)
    for (let line = 0; line < count; line++) {
      let sum = 0
      for (let i = -by; i < length; i++) {
        if (i + by < length) sum += from[line * stride + (i + by) * next]!
        if (i - by - 1 >= 0) sum -= from[line * stride + (i - by - 1) * next]!
        if (i >= 0) to[line * stride + i * next] = sum / (2 * by + 1)
      }
    }
    return to
  }
  return by < 1 ? values : pass(pass(values, height, width, 1, width), width, height, width, 1)
}

/** The bell of a lens, across and down. */
function lens(light: Float32Array, width: number, height: number, sigma: number): Float32Array {
  const reach = Math.ceil(3 * sigma)
  const bell = Float64Array.from({ length: 2 * reach + 1 }, (_, at) =>
    Math.exp(-((at - reach) ** 2) / (2 * sigma ** 2)),
  )
  const sum = bell.reduce((all, each) => all + each, 0)
  const pass = (from: Float32Array, dx: boolean) => {
    const to = new Float32Array(from.length)
    const step = dx ? 3 : 3 * width
    for (let y = 0; y < height; y++)
      for (let x = 0; x < width; x++) {
        let red = 0
        let green = 0
        let blue = 0
        // Asked at millions of places, nearly all of which have their neighbours within the picture.
        const [place, last] = dx ? [x, width - 1] : [y, height - 1]
        const isWithin = place >= reach && place + reach <= last
        const own = 3 * (y * width + x)
        for (let k = -reach; k <= reach; k++) {
          const off = isWithin ? k : Math.min(last, Math.max(0, place + k)) - place
          const at = own + off * step
          const weight = bell[k + reach]!
          red += weight * from[at]!
          green += weight * from[at + 1]!
          blue += weight * from[at + 2]!
        }
        to[own] = red / sum
        to[own + 1] = green / sum
        to[own + 2] = blue / sum
      }
    return to
  }
  return pass(pass(light, true), false)
}

const DARK = ['7a1020', '143a80', '14552a', '30202a', 'a03060', '804010', '202428', '0a6a70']
const LIGHT = ['f2eee2', 'f0d890', 'f0b8c0', 'b8dcea', 'd8f0c8']
const WHITE = ['f4f4f0', 'fbfbfb', 'ece8dc']
const BLACK = ['22242a', '2a2420', '1c2a3c']
const TABLES = ['8a5a34', 'b08050', '5a5e66', '6a4a3a', '3c5a50', '907a60']

const lightOf = (hex: string): number[] =>
  [0, 2, 4].map((at) => {
    const v = parseInt(hex.slice(at, at + 2), 16) / 255
    return v > 0.04045 ? Math.pow((v + 0.055) / 1.055, 2.4) : v / 12.92
  })

/** The picture of a number: the same each time; `rough` where whoever takes it takes no care. */
export function studio(number: number, { wide = 900, rough = false } = {}): Studio {
  const weather = rough ? harsh(number) : calm
  const random = chance(104_729 * number + 71)
  const between = (least: number, most: number) => least + (most - least) * random()
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!
  const petals = 3 + (number % 22)
  const { fuzz, checks, curl, tweed } = weather
  const sheet = weather.sheet ?? pick<SheetName>(['A4', 'Letter', 'A4', 'A5'])
  const beside = sheet === 'card'
  const { width: sheetWidth, height: sheetHeight } = SHEET_SIZES[sheet]
  // Hearts and picots of few millimetres are no shapes that a hook makes.
  const petal = pick(petals > 14 ? PETALS.filter((each) => each !== 'heart' && each !== 'picot') : PETALS)
  const largest = Math.min(150, beside ? 150 : sheetWidth - 20)
  const overTips = between(Math.min(largest - 5, Math.max(40, petals * 3.8)), largest)
  const core = petal === 'shell' ? between(0.62, 0.78) : between(0.35, 0.6)
  const wish = {
    ...{ petal, petals, overTips, core },
    width: petal === 'pointed' ? between(0.85, 1.1) : between(0.9, 1.25),
    turn: between(0, 6.28),
    uneven: pick([0, 0.02, 0.04, 0.05]),
    bump: between(0, 0.3),
    stitch: between(2.5, 4.5),
    seed: number,
  }
  const motif = weather.plain ? plainOf(weather.plain, wish) : motifOf(wish)
  const dark = random() < 0.4
  const yarns = [pick(dark ? LIGHT : DARK), pick(dark ? LIGHT : DARK)].map(lightOf)
  const rings = random() < 0.5 ? 1 : 2
  const ground = lightOf(pick(dark ? BLACK : WHITE))
  const cloth = lightOf(pick(TABLES))
  // A card lies beside the motif, on a plain table.
  const [paper, table] = beside ? [cloth, ground] : [ground, cloth]
  const planks = random() < 0.6

  const height = Math.round((wide * 4) / 3)
  const tilt = between(0, 35)
  const careful = Math.round(between(78, 96))
  const quality = weather.quality ?? careful
  // The camera: x = K (R X + t), on the plane z = 0 a matrix of three by three, which is turned round for the rays.
  const [yaw, pitch] = [between(0, 2 * Math.PI), (tilt * Math.PI) / 180]
  const spin = -yaw + between(-0.2, 0.2) + pick([0, Math.PI / 2, Math.PI])
  const rotZ = (a: number) => [Math.cos(a), -Math.sin(a), 0, Math.sin(a), Math.cos(a), 0, 0, 0, 1]
  const rotX = (a: number) => [1, 0, 0, 0, Math.cos(a), -Math.sin(a), 0, Math.sin(a), Math.cos(a)]
  const product = (m: number[], n: number[]) =>
    Array.from({ length: 9 }, (_, at) => {
      const row = at - (at % 3)
      return m[row]! * n[at % 3]! + m[row + 1]! * n[(at % 3) + 3]! + m[row + 2]! * n[(at % 3) + 6]!
    })
  const rotation = product(rotZ(spin), product(rotX(pitch), rotZ(yaw)))
  const focal = between(0.7, 1.1) * height
  const lengthwise = Math.abs(Math.sin(spin + yaw)) > 0.7
  const whole = beside
    ? { width: sheetWidth + 2 * motif.most + 14, height: Math.max(sheetHeight, 2 * motif.most) }
    : { width: sheetWidth, height: sheetHeight }
  const needs = lengthwise
    ? Math.max(whole.height / wide, whole.width / height)
    : Math.max(whole.width / wide, whole.height / height)
  const far = (needs * focal) / between(0.6, 0.76)
  const bend = between(-0.012, 0.012)
  const room = {
    x: Math.max(0, sheetWidth / 2 - motif.most - 7),
    y: Math.max(0, sheetHeight / 2 - motif.most - 7),
  }
  const laid = { x: between(-room.x, room.x), y: between(-room.y, room.y) }
  const at = beside ? { x: sheetWidth / 2 + 7, y: 0 } : laid
  const sheetAt = beside ? -motif.most - 7 : 0
  const lamp = { x: between(-500, 500), y: between(-500, 500), z: between(700, 1500) }
  const tint = pick([
    [1, 1, 1],
    [1, 0.88, 0.7],
    [0.88, 0.95, 1],
  ])
  // The shadow falls away from the lamp, as far as the motif is thick.
  const thick = between(1, 4)
  const shift = { x: (-lamp.x / lamp.z) * thick, y: (-lamp.y / lamp.z) * thick }
  const [lampSoft, lampDeep] = [between(0.6, 2.5), between(0, 0.4)]
  const { softness, depth } = weather.shadow ?? { softness: lampSoft, depth: lampDeep }
  const cover = smeared(
    smeared(Float32Array.from(motif.on), motif.size, motif.size, Math.round(softness * motif.fine)),
    motif.size,
    motif.size,
    Math.round(softness * motif.fine * 0.6),
  )
  const relief = between(0.03, 0.25)
  const stitch = between(2.5, 4.5)
  const grain = between(0.02, 0.25)
  const [r0, r1, r2, r3, r4, r5, r6, r7, r8] = rotation
  const light = new Float32Array(3 * wide * height)
  const fibres =
    fuzz.cover > 0
      ? smeared(Float32Array.from(motif.on), motif.size, motif.size, Math.round(fuzz.far * motif.fine))
      : null
  const half = motif.size / 2
  const place = (u: number, v: number) => {
    const column = Math.round(u * motif.fine + half)
    const row = Math.round(v * motif.fine + half)
    return column < 0 || row < 0 || column >= motif.size || row >= motif.size ? -1 : row * motif.size + column
  }
  const shade = (x: number, y: number, into: number, by: number) => {
    const mx = x - at.x
    const my = y - at.y
    const own = place(mx, my)
    let colour = paper
    let lit = 1
    if (own >= 0 && motif.on[own]) {
      const r = Math.sqrt(mx * mx + my * my)
      colour = yarns[rings > 1 && r > 0.5 * motif.most ? 1 : 0]!
      lit =
        1 -
        relief *
          (0.5 + 0.5 * Math.cos((2 * Math.PI * r) / stitch)) *
          (0.6 + 0.4 * Math.cos(Math.atan2(my, mx) * Math.round((2 * Math.PI * r) / stitch)))
      if (tweed > 0) lit *= 1 + tweed * patch(mx, my, 1.3)
    } else {
      const sx = x - sheetAt
      const bowed = curl * (1 - (2 * y) ** 2 / sheetHeight ** 2)
      if (Math.abs(sx) > sheetWidth / 2 + bowed || Math.abs(y) > sheetHeight / 2) {
        colour = table
        if (beside) lit = 1
        else if (checks > 0) lit = 1 + checks * (Math.sin(x / 9) > 0 !== Math.sin(y / 9) > 0 ? 1 : -1)
        else if (planks)
          lit = 1 + grain * Math.sin(0.35 * x + 2.2 * Math.sin(0.02 * y) + 0.8 * Math.sin(0.9 * x))
        else lit = 1 + grain * Math.sin(1.9 * x) * Math.sin(1.9 * y)
      }
      if (fibres && own >= 0 && fibres[own]! > 0) {
        const share = fuzz.cover * fibres[own]! * (1 + patch(mx, my, 0.4))
        const yarn = yarns[0]!
        colour = [0, 1, 2].map((c) => colour[c]! * (1 - share) + yarn[c]! * share)
      }
      const under = place(mx - shift.x, my - shift.y)
      if (under >= 0) lit *= 1 - depth * cover[under]!
    }
    const dx = x - lamp.x
    const dy = y - lamp.y
    const away = (dx * dx + dy * dy) / (lamp.z * lamp.z)
    lit *= (0.85 * by) / ((1 + away) * Math.sqrt(1 + away))
    light[into]! += colour[0]! * lit * tint[0]!
    light[into + 1]! += colour[1]! * lit * tint[1]!
    light[into + 2]! += colour[2]! * lit * tint[2]!
  }
  for (let row = 0; row < height; row++)
    for (let column = 0; column < wide; column++)
      for (let part = 0; part < 4; part++) {
        let px = (column + (part % 2 ? 0.25 : -0.25) - (wide - 1) / 2) / focal
        let py = (row + (part > 1 ? 0.25 : -0.25) - (height - 1) / 2) / focal
        const bent = 1 + bend * (px * px + py * py)
        px *= bent
        py *= bent
        // The ray in the world is Rᵀ p; it starts at −Rᵀ t, t = (0, 0, far).
        const dx = r0! * px + r3! * py + r6!
        const dy = r1! * px + r4! * py + r7!
        const dz = r2! * px + r5! * py + r8!
        const along = (r8! * far) / dz
        shade(
          along * dx - r6! * far,
          along * dy - r7! * far,
          3 * (row * wide + column),
          0.25 / (1 + (0.3 + 2 * weather.vignette) * (px * px + py * py)),
        )
      }
  const seen = lens(light, wide, height, between(0.5, 1.4))
  // A phone sharpens by what a wider lens would lose.
  const softer = weather.sharpen > 0 ? lens(seen, wide, height, 1.5) : seen
  const noise = between(0.002, 0.012)
  const byteOf = bytesOf((held) =>
    curved(held > 0.0031308 ? 1.055 * Math.pow(held, 1 / 2.4) - 0.055 : 12.92 * held, weather.steep),
  )
  const data = Buffer.alloc(4 * wide * height)
  for (let pixel = 0; pixel < wide * height; pixel++) {
    for (let c = 0; c < 3; c++) {
      const at = 3 * pixel + c
      const sharp = seen[at]! + weather.sharpen * (seen[at]! - softer[at]!)
      const value = Math.max(0, sharp * weather.exposure * weather.white[c]!)
      const hiss = (random() + random() + random() - 1.5) * 2 * noise * Math.sqrt(0.04 + value)
      data[4 * pixel + c] = byteOf(value + hiss)
    }
    data[4 * pixel + 3] = 255
  }
  const jpeg = encode({ width: wide, height, data }, quality).data
  return {
    ...{
      name: `${number}${rough ? ' rough' : ''} ${weather.plain ?? petal} ${motif.petals} ${sheet}`,
      sheet,
      motif,
      tilt,
      quality,
    },
    petal: weather.plain ?? petal,
    picture: decode(jpeg, { useTArray: true }),
  }
}
