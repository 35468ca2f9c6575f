/**
 * A third renderer of pictures, apart from camera, studio and finder: a camera that stands somewhere and looks at a
 * place of the table, tables with patterns or as light as the sheet, sheets that are ruled, squared, folded, printed
 * at the rim or bowed, a hand's shadow over a part of them, yarns that are flecked or change their colour, a phone that
 * sharpens and saves coarsely.
 */
import { decode, encode } from 'jpeg-js'
import { SHEET_SIZES } from '../../../src-core/photo/sheet-sizes'
import type { SheetName } from '../../../src-core/photo/sheet-sizes'
import { dice, lay, MAKES } from './kitchen-motifs'
import type { Laid } from './kitchen-motifs'
import { bytesOf } from './tones'

export interface Kitchen {
  readonly name: string
  readonly sheet: SheetName
  readonly motif: Laid
  readonly picture: { width: number; height: number; data: Uint8Array }
}

type Rgb = readonly [number, number, number]
/** Colours as amounts of light, of a hundred. */
const DEEP: Rgb[] = [[32, 3, 5], [3, 10, 34], [4, 18, 6], [20, 4, 22], [6, 5, 5], [38, 14, 2], [2, 20, 22], [45, 8, 18], [24, 28, 4]] // prettier-ignore
const PALE: Rgb[] = [
  [82, 80, 72],
  [78, 58, 16],
  [76, 42, 48],
  [40, 60, 74],
  [58, 74, 46],
]
const TABLES = ['wood', 'gingham', 'terrazzo', 'slate', 'marble', 'tiles'] as const
const SHEETS = ['plain', 'plain', 'ruled', 'squared', 'folded', 'printed'] as const

/** A smooth field of chance between 0 and 1: values at whole places, eased between. */
function field(seed: number): (x: number, y: number) => number {
  const roll = dice(seed)
  const values = Float32Array.from({ length: 4096 }, roll)
  const at = (x: number, y: number) => values[((x * 73 + y * 151) & 4095) >>> 0]!
  return (x, y) => {
    const [i, j] = [Math.floor(x), Math.floor(y)]
    const [u, v] = [x - i, y - j]
    const [s, t] = [u * u * (3 - 2 * u), v * v * (3 - 2 * v)]
    return (
      (at(i, j) * (1 - s) + at(i + 1, j) * s) * (1 - t) + (at(i, j + 1) * (1 - s) + at(i + 1, j + 1) * s) * t
    )
  }
}

/** The table's light at a place. */
function tableOf(kind: (typeof TABLES)[number], noise: (x: number, y: number) => number) {
  return (x: number, y: number): Rgb => {
    switch (kind) {
      case 'wood': {
        const v = 0.65 + 0.5 * noise(x * 0.02, y * 0.35) + 0.12 * noise(x * 0.3, y * 2)
        return [26 * v, 14 * v, 7 * v]
      }
      case 'gingham': {
        const v = (Math.floor(x / 9) & 1) + (Math.floor(y / 9) & 1)
        return [60 - 8 * v, 52 - 24 * v, 50 - 22 * v]
      }
      case 'terrazzo':
        return noise(x * 0.35, y * 0.35) > 0.72 ? [46, 42, 36] : [15, 16, 15]
      case 'slate': {
        const v = 0.7 + 0.6 * noise(x * 0.08, y * 0.08)
        return [9 * v, 10 * v, 11 * v]
      }
      case 'marble': {
        const v = 1 - 0.25 * Math.abs(Math.sin(0.03 * x + 0.02 * y + 3 * noise(x * 0.02, y * 0.02)))
        return [52 * v, 51 * v, 49 * v]
      }
      case 'tiles':
        return (x + 4000) % 40 < 2 || (y + 4000) % 40 < 2 ? [48, 46, 42] : [18, 26, 30]
    }
  }
}

/** What is printed, ruled or folded on a sheet: the share of its light that is left. Places from its middle, in mm. */
function sheetLook(kind: (typeof SHEETS)[number], width: number, height: number) {
  const edge = (x: number, y: number) => Math.min(width / 2 - Math.abs(x), height / 2 - Math.abs(y))
  return (x: number, y: number): Rgb => {
    switch (kind) {
      case 'ruled':
        return (y + 400) % 8 < 0.35 ? [0.72, 0.8, 0.92] : [1, 1, 1]
      case 'squared':
        return (y + 400) % 5 < 0.3 || (x + 400) % 5 < 0.3 ? [0.8, 0.86, 0.94] : [1, 1, 1]
      case 'folded': {
        const v =
          (x > 4 ? 0.955 : 1) *
          (y > -6 ? 1 : 0.93) *
          (Math.abs(x - 4) < 0.5 || Math.abs(y + 6) < 0.5 ? 0.9 : 1)
        return [v, v, v]
      }
      case 'printed': {
        // Three lines of a letter's head, a hand's breadth long.
        const line = y + height / 2 - 6
        const isInk =
          line > 0 &&
          line < 9 &&
          line % 3 < 1.7 &&
          Math.abs(x) < 0.38 * width &&
          (x * 1.7 + 9 * Math.sin(x)) % 2.2 > 0.9
        return isInk && edge(x, y) > 3 ? [0.12, 0.12, 0.14] : [1, 1, 1]
      }
      default:
        return [1, 1, 1]
    }
  }
}

/** Mean over a box, thrice: near enough to the bell of a lens. */
function soften(from: Float32Array, width: number, height: number, sigma: number): Float32Array {
  let values = from
  const side = Math.sqrt(4 * sigma * sigma + 1)
  const reach = (side - 1) / 2
  const [whole, part] = [Math.floor(reach), reach % 1]
  const weight = 1 / (1 + 2 * whole + 2 * part)
  for (let pass = 0; pass < 3; pass++)
    for (const down of [false, true]) {
      const to = new Float32Array(values.length)
      const [length, next] = down ? [height, 3 * width] : [width, 3]
      for (let y = 0; y < height; y++)
        for (let x = 0; x < width; x++) {
          const at = 3 * (y * width + x)
          const here = down ? y : x
          for (let c = 0; c < 3; c++) {
            let sum = values[at + c]!
            for (let k = 1; k <= whole + 1; k++) {
              const share = k <= whole ? 1 : part
              const before = at + c - Math.min(k, here) * next
              const after = at + c + Math.min(k, length - 1 - here) * next
              sum += share * (values[before]! + values[after]!)
            }
            to[at + c] = sum * weight
          }
        }
      values = to
    }
  return values
}

/** The picture of a number: the same each time. */
export function kitchen(number: number, wide = 720): Kitchen {
  const random = dice(7_919 * number + 101)
  const between = (least: number, most: number) => least + (most - least) * random()
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!
  const some = (share: number) => random() < share

  const sheet = some(0.08) ? 'card' : pick<SheetName>(['A4', 'A4', 'Letter', 'A5'])
  const beside = sheet === 'card'
  const size = SHEET_SIZES[sheet]
  let make = MAKES[number % MAKES.length]!
  let petals = 3 + ((number * 7) % 22)
  if (make === 'alternate') petals = 2 * Math.max(3, petals >> 1)
  if (make === 'mixed') petals = Math.max(5, petals)
  if (make === 'spike') petals = Math.max(8, petals)
  if (petals > 16 && make === 'mixed') make = 'scallop'
  const largest = Math.min(150, beside ? 120 : size.width - 22)
  const overTips = between(Math.min(largest - 5, Math.max(40, petals * 4)), largest)
  // Shells of many petals are shallow.
  const dip = petals > 15 ? between(0.78, 0.92) : between(0.52, 0.82)
  const motif = lay({
    ...{ make, petals, overTips, dip, turn: between(0, 6.28), random, stitch: between(2, 4.5) },
    ...{ relief: between(0.1, 0.6), bump: between(0.1, 0.7) },
  })
  const isDark = some(0.35)
  const paper: Rgb = isDark ? pick<Rgb>([[3, 3.2, 4], [5, 3.5, 3], [2, 4, 6]]) : pick<Rgb>([[80, 80, 78], [86, 86, 86], [74, 71, 62]]) // prettier-ignore
  const yarns = [pick(isDark ? PALE : DEEP), pick(isDark ? PALE : DEEP), pick(isDark ? PALE : DEEP)] as const
  const dye = pick(['plain', 'rings', 'flecked', 'changing'] as const)
  const kind = isDark ? pick(['wood', 'gingham', 'marble', 'tiles'] as const) : pick(TABLES)
  const noise = field(number + 5)
  const table = tableOf(kind, noise)
  const look = beside || isDark ? 'plain' : pick(SHEETS)
  const onSheet = sheetLook(look, size.width, size.height)
  const bow = some(0.3) ? between(-1, 1) : 0

  // The camera stands at `eye` and looks at a place near the sheet's middle, its head turned.
  const tall = Math.round((wide * 4) / 3)
  const [tilt, around, roll] = [
    (between(0, 34) * Math.PI) / 180,
    between(0, 6.28),
    between(-0.2, 0.2) + pick([0, 1.5708, 3.1416]),
  ]
  const gap = 8
  const span = beside ? { x: size.width + 2 * motif.most + gap, y: Math.max(size.height, 2 * motif.most) } : { x: size.width, y: size.height } // prettier-ignore
  const isLying = Math.abs(Math.sin(roll)) > 0.7
  const needs = isLying ? Math.max(span.y / wide, span.x / tall) : Math.max(span.x / wide, span.y / tall)
  const focal = between(0.72, 1.05) * tall
  const far = (needs * focal) / between(0.6, 0.74)
  const target = { x: between(-8, 8), y: between(-8, 8) }
  const eye = {
    x: target.x + far * Math.sin(tilt) * Math.cos(around),
    y: target.y + far * Math.sin(tilt) * Math.sin(around),
    z: far * Math.cos(tilt),
  }
  const forward = [(target.x - eye.x) / far, (target.y - eye.y) / far, -eye.z / far] as const
  // Right and down of a camera that looks straight down at first, leaned over by the smallest turn, then rolled.
  const lean = (vx: number, vy: number): readonly [number, number, number] => {
    const [ax, ay] = [-forward[1], forward[0]]
    const sine = Math.hypot(ax, ay)
    if (sine < 1e-9) return [vx, vy, 0]
    const [ux, uy] = [ax / sine, ay / sine]
    const [co, si] = [-forward[2], -sine]
    const dot = ux * vx + uy * vy
    return [vx * co + ux * dot * (1 - co), vy * co + uy * dot * (1 - co), (ux * vy - uy * vx) * si]
  }
  const right = lean(Math.cos(roll), Math.sin(roll))
  const down = lean(-Math.sin(roll), Math.cos(roll))
  const room = {
    x: Math.max(0, size.width / 2 - motif.most - 6),
    y: Math.max(0, size.height / 2 - motif.most - 6),
  }
  const laid = beside
    ? { x: span.x / 2 - motif.most, y: 0 }
    : { x: between(-room.x, room.x), y: between(-room.y, room.y) }
  const sheetX = beside ? -span.x / 2 + size.width / 2 : 0

  const lampTurn = between(0, 6.28)
  const fade = between(0, 0.35)
  const glow: Rgb = pick<Rgb>([[1, 1, 1], [1.05, 0.9, 0.68], [0.9, 0.98, 1.08]]) // prettier-ignore
  const hand = some(0.4) ? { x: between(-90, 90), y: between(-120, 120), turn: between(0, 6.28), depth: between(0.15, 0.45), soft: between(15, 50) } : null // prettier-ignore
  const drop = { x: 2.2 * Math.cos(lampTurn), y: 2.2 * Math.sin(lampTurn), depth: between(0.1, 0.45) }
  const lightAt = (x: number, y: number, into: Float32Array, at: number, by: number) => {
    const [mx, my] = [x - laid.x, y - laid.y]
    const r = Math.hypot(mx, my)
    let lit = by * (1 - fade * (0.5 + (x * Math.cos(lampTurn) + y * Math.sin(lampTurn)) / 420))
    if (hand) {
      const along = ((x - hand.x) * Math.cos(hand.turn) + (y - hand.y) * Math.sin(hand.turn)) / hand.soft
      lit *= 1 - hand.depth / (1 + Math.exp(-4 * along))
    }
    let colour: Rgb
    if (r < motif.most && motif.covers(mx, my)) {
      const own = yarns[dye === 'rings' ? Math.min(2, Math.floor((2.4 * r) / motif.most)) : 0]!
      const share =
        dye === 'flecked'
          ? noise(mx * 0.9, my * 0.9) > 0.7
            ? 0.6
            : 0
          : dye === 'changing'
            ? noise(mx * 0.05, my * 0.05)
            : 0
      colour = [0, 1, 2].map((c) => own[c]! * (1 - share) + yarns[1][c]! * share) as unknown as Rgb
      lit *= motif.stitched(mx, my)
    } else {
      const [sx, sy] = [x - sheetX, y]
      const bowed = bow * (1 - (2 * sy) ** 2 / size.height ** 2)
      const inX = size.width / 2 + bowed - Math.abs(sx)
      const inY = size.height / 2 - Math.abs(sy)
      if (inX > 0 && inY > 0) {
        const mark = onSheet(sx, sy)
        const own: Rgb = beside ? [70, 20, 24] : paper
        colour = [own[0] * mark[0], own[1] * mark[1], own[2] * mark[2]]
      } else {
        colour = beside ? paper : table(x, y)
        // The sheet's own shadow, a hair wide.
        if (inX > -1.2 && inY > -1.2) lit *= 0.8
      }
      const near = r < motif.most + 6
      if (near) {
        let under = 0
        for (let k = 1; k <= 3; k++) if (motif.covers(mx - (drop.x * k) / 3, my - (drop.y * k) / 3)) under++
        lit *= 1 - (drop.depth * under) / 3
      }
    }
    for (let c = 0; c < 3; c++) into[at + c]! += 0.01 * colour[c]! * glow[c]! * lit
  }
  const raw = new Float32Array(3 * wide * tall)
  const dim = between(0, 0.5)
  for (let row = 0; row < tall; row++)
    for (let column = 0; column < wide; column++)
      for (let part = 0; part < 3; part++) {
        // Three places of a pixel, none above another.
        const u = (column + (part - 1) / 3 - (wide - 1) / 2) / focal
        const v = (row + (((part * 2) % 3) - 1) / 3 - (tall - 1) / 2) / focal
        const dx = forward[0]! + u * right[0]! + v * down[0]!
        const dy = forward[1]! + u * right[1]! + v * down[1]!
        const dz = forward[2]! + u * right[2]! + v * down[2]!
        const t = -eye.z / dz
        lightAt(
          eye.x + t * dx,
          eye.y + t * dy,
          raw,
          3 * (row * wide + column),
          1 / 3 / (1 + dim * (u * u + v * v)),
        )
      }
  const seen = soften(raw, wide, tall, between(0.5, 1.2))
  const halo = some(0.5) ? between(0.2, 0.9) : 0
  const softer = halo > 0 ? soften(seen, wide, tall, between(1, 2.2)) : seen
  const [hiss, exposure] = [between(0.002, 0.012), between(0.8, 1.1)]
  const steep = between(0, 0.35)
  const byteOf = bytesOf((value) => {
    const shown = value > 0.0031308 ? 1.055 * value ** (1 / 2.4) - 0.055 : 12.92 * value
    return shown + steep * shown * (1 - shown) * (shown - 0.45)
  })
  const data = Buffer.alloc(4 * wide * tall, 255)
  for (let pixel = 0; pixel < wide * tall; pixel++)
    for (let c = 0; c < 3; c++) {
      const at = 3 * pixel + c
      const value = exposure * (seen[at]! + halo * (seen[at]! - softer[at]!))
      const noisy = value + hiss * 3.4 * (random() - 0.5) * Math.sqrt(0.03 + Math.max(0, value))
      data[4 * pixel + c] = byteOf(noisy)
    }
  const quality = Math.round(between(60, 92))
  const picture = decode(encode({ width: wide, height: tall, data }, quality).data, { useTArray: true })
  return {
    name: `${number} kitchen ${make} ${petals} ${sheet} ${look} ${kind} ${dye}`,
    sheet,
    motif,
    picture,
  }
}
