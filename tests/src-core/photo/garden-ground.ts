/** What the sheets of the garden lie on: wood, cloth with patterns, grass, tiles, stone, beds; and what lies beside them. */
import type { Chance, Rgb } from './garden-yarn'

/** Writes the colour at a place of the table, in mm. */
export type Ground = (x: number, y: number, into: Float32Array) => void
export type GroundName = 'planks' | 'veneer' | 'gingham' | 'print' | 'stripes' | 'grass' | 'tiles' | 'stone' | 'quilt' | 'knit' | 'linen' // prettier-ignore

/** A colour as pages on screens write it, in amounts of light. */
export const ink = (code: string): Rgb => {
  const part = (at: number) => {
    const value = parseInt(code.slice(at, at + 2), 16) / 255
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4
  }
  return [part(0), part(2), part(4)]
}

/** Hills of chance on a ring of 256², about one to each unit; from -1 to 1. */
export function hills(own: Chance): (x: number, y: number) => number {
  const grid = Float32Array.from({ length: 65536 }, () => 2 * own.roll() - 1)
  return (x, y) => {
    const column = Math.floor(x)
    const row = Math.floor(y)
    const tx = x - column
    const ty = y - row
    const sx = tx * tx * (3 - 2 * tx)
    const sy = ty * ty * (3 - 2 * ty)
    const top = (row & 255) << 8
    const bottom = ((row + 1) & 255) << 8
    const left = column & 255
    const right = (column + 1) & 255
    const upper = grid[top | left]! + sx * (grid[top | right]! - grid[top | left]!)
    const lower = grid[bottom | left]! + sx * (grid[bottom | right]! - grid[bottom | left]!)
    return upper + sy * (lower - upper)
  }
}

export const eased = (from: number, to: number, value: number): number => {
  const t = Math.min(1, Math.max(0, (value - from) / (to - from)))
  return t * t * (3 - 2 * t)
}
const put = (into: Float32Array, colour: Rgb, light: number) => {
  into[0] = colour[0] * light
  into[1] = colour[1] * light
  into[2] = colour[2] * light
}
const mix = (into: Float32Array, colour: Rgb, share: number) => {
  for (let c = 0; c < 3; c++) into[c]! += share * (colour[c]! - into[c]!)
}

/** Blades of grass over each other, drawn once into a square that meets itself, and daisies or clover between. */
function lawn(own: Chance): Ground {
  const [side, per] = [900, 3.2]
  const cast = new Float32Array(3 * side * side)
  const greens = [ink('2f5a1c'), ink('44722a'), ink('5d8a33'), ink('86a04a'), ink('23401a'), ink('a39a5c')]
  for (let at = 0; at < side * side; at++) cast.set([0.02, 0.022, 0.012], 3 * at)
  const blades = 15_000
  for (let i = 0; i < blades; i++) {
    let [x, y, way] = [own.roll() * side, own.roll() * side, own.between(0, 6.28)]
    const [green, bend, wide, long] = [own.pick(greens), 0.012 * own.bell(), own.between(1.6, 4.6), own.between(25, 95)] // prettier-ignore
    const high = 0.25 + (0.75 * i) / blades
    for (let step = 0; step < long; step++, way += bend) {
      x += Math.cos(way)
      y += Math.sin(way)
      const half = 0.5 * wide * Math.min(1, 3 * (1 - step / long))
      for (let off = -half; off <= half; off += 0.8) {
        const column = ((Math.floor(x - off * Math.sin(way)) % side) + side) % side
        const row = ((Math.floor(y + off * Math.cos(way)) % side) + side) % side
        const light = high * (0.85 + (0.3 * off) / (half + 0.1)) * (0.7 + (0.3 * step) / long)
        for (let c = 0; c < 3; c++) cast[3 * (row * side + column) + c] = green[c]! * light
      }
    }
  }
  const warp = hills(own)
  return (x, y, into) => {
    const [u, v] = [(x + 22 * warp(x / 90, y / 90)) * per, (y + 22 * warp(x / 90 + 40, y / 90)) * per]
    const at =
      3 * ((((Math.floor(v) % side) + side) % side) * side + (((Math.floor(u) % side) + side) % side))
    const light = 1 + 0.18 * warp(x / 60 + 9, y / 60)
    into[0] = cast[at]! * light
    into[1] = cast[at + 1]! * light
    into[2] = cast[at + 2]! * light
  }
}

/** Threads over and under each other. */
const weave = (x: number, y: number, each: number): number => {
  const [u, v] = [(x * Math.PI) / each, (y * Math.PI) / each]
  return 0.8 + 0.2 * Math.sin(u) * Math.sin(v) * (Math.sin(u) * Math.sin(v) > 0 ? 1 : 0.4)
}

/** A ground of one kind, darker or lighter as the sheet asks for. */
export function groundOf(name: GroundName, isLight: boolean, own: Chance): Ground {
  const hill = hills(own)
  const { between, pick, roll } = own
  const [stain, away] = [between(-1, 1), between(0, 50)]
  const turn = between(-0.5, 0.5) + (roll() < 0.5 ? 1.57 : 0)
  const [c, s] = [Math.cos(turn), Math.sin(turn)]
  const each = between(0.7, 1.5)
  const soft = (x: number, y: number) =>
    1 + 0.1 * stain * hill(x / 130, y / 130) + 0.06 * hill(x / 47 + away, y / 47)
  if (name === 'grass') return lawn(own)
  if (name === 'planks' || name === 'veneer') {
    const wood = pick(isLight ? [ink('c9a878'), ink('b89a74'), ink('a9a296')] : [ink('6b4528'), ink('8a5f3a'), ink('4a3426'), ink('77695a')]) // prettier-ignore
    const vein: Rgb = [wood[0] * 0.42, wood[1] * 0.38, wood[2] * 0.36]
    const [board, gap, scale] = [
      name === 'planks' ? between(60, 120) : 4000,
      between(1.5, 5),
      between(0.7, 1.4),
    ]
    return (x0, y0, into) => {
      const [x, y] = [c * x0 + s * y0, c * y0 - s * x0 + 1733]
      const plank = Math.floor(y / board)
      const own0 = plank * 37.7
      const bow = y + 9 * hill(x / 210 + own0, y / 60) + 2 * hill(x / 40, y / 17 + own0)
      const rings = Math.sin(bow * 0.55 * scale + 2.5 * hill(x / 300 + own0, bow / 23))
      const pores = hill(x / 9 + own0, y * 2.1) * 0.5 + hill(x / 3.1, y * 3.7 + own0) * 0.5
      put(into, wood, (0.93 + 0.14 * Math.sin(own0 * 3.1)) * soft(x, y))
      mix(into, vein, 0.34 * eased(-0.2, 1, rings) + 0.3 * eased(0.1, 0.9, pores))
      if (name === 'planks') mix(into, [0.01, 0.009, 0.008], 0.92 * (1 - eased(0.4, 1, Math.abs(y - plank * board) / gap))) // prettier-ignore
    }
  }
  if (name === 'tiles') {
    const [glaze, other] = isLight ? [ink('cfc3ae'), ink('b7a58c')] : pick([['8a4f36', '743f2b'], ['3d5a63', '33505a'], ['5b5f57', '4d534f'], ['7a6a58', '6a5746']]).map(ink) as [Rgb, Rgb] // prettier-ignore
    const [size, joint, mortar] = [between(70, 150), between(2, 4.5), pick([ink('a79f92'), ink('5b5750')])]
    return (x0, y0, into) => {
      const [x, y] = [c * x0 + s * y0 + 5000, c * y0 - s * x0 + 5000]
      const [i, j] = [Math.floor(x / size), Math.floor(y / size)]
      const edge =
        Math.min(x - i * size, y - j * size, (i + 1) * size - x, (j + 1) * size - y) +
        0.4 * hill(x / 4, y / 4)
      put(into, glaze, 1 + 0.08 * Math.sin(i * 12.9 + j * 78.2))
      mix(into, other, 0.5 + 0.5 * hill(x / 26 + 17 * i, y / 31 + 7 * j))
      const grit = 0.06 * hill(x * 1.3, y * 1.3)
      for (let k = 0; k < 3; k++) into[k]! *= 1 + grit
      mix(into, mortar, 1 - eased(joint * 0.4, joint * 0.7, edge))
    }
  }
  if (name === 'stone') {
    const rock = isLight ? ink('b5b0a6') : pick([ink('5f6062'), ink('46423f'), ink('3b4a48')])
    const [speck, vein] = [pick([ink('d8d4cb'), ink('8f8a80')]), roll() < 0.5]
    return (x, y, into) => {
      const cloud = 0.5 * hill(x / 60, y / 60) + 0.3 * hill(x / 19, y / 19) + 0.2 * hill(x / 6, y / 6)
      put(into, rock, 1 + 0.18 * cloud + 0.1 * hill(x * 0.9, y * 0.9))
      mix(into, speck, 0.6 * eased(0.55, 0.8, hill(x / 1.7 + 50, y / 1.7)))
      if (vein) mix(into, speck, 0.5 * (1 - eased(0, 0.06, Math.abs(cloud - 0.1))))
    }
  }
  if (name === 'knit') {
    const [one, two] = isLight ? [ink('c8b9a6'), ink('a9b7b2')] : [pick([ink('7d2f3c'), ink('2f4a6b'), ink('3f5b43')]), pick([ink('b48a4a'), ink('4a3a4f')])] // prettier-ignore
    const [wide, tall, band] = [between(5, 8), between(4, 6), between(50, 110)]
    return (x0, y0, into) => {
      const [x, y] = [c * x0 + s * y0 + 3000, c * y0 - s * x0 + 3000]
      const u = (x / wide) % 1
      const leg = (y / tall + 0.9 * Math.abs(u - 0.5)) % 1
      const bump = Math.sin(Math.PI * leg) * Math.abs(Math.sin(2 * Math.PI * u))
      put(into, Math.floor(y / band) % 2 ? one : two, (0.4 + 0.6 * Math.sqrt(bump)) * soft(x, y) * (1 + 0.1 * hill(x * 2, y * 2))) // prettier-ignore
    }
  }
  const cloth = isLight ? pick([ink('d9ccb4'), ink('c7c9c4'), ink('d8b9a8')]) : pick([ink('34506b'), ink('6b3a3f'), ink('46543a'), ink('4b4a52'), ink('7d5a3c')]) // prettier-ignore
  const fold = (x: number, y: number) =>
    name === 'quilt' ? 1 + 0.3 * hill(x / 75, y / 110) + 0.14 * hill(x / 28 + 9, y / 60) : soft(x, y)
  const white = isLight ? ink('e6e0d2') : ink('cfc8b8')
  const strong = pick([ink('b3202c'), ink('1f4f8f'), ink('2c7044'), ink('c2702a'), ink('5a3a6e')])
  const [size, petals] = [between(14, 30), Math.floor(between(4, 7))]
  return (x0, y0, into) => {
    const [x1, y1] = [c * x0 + s * y0 + 4000, c * y0 - s * x0 + 4000]
    const [x, y] = [x1 + 3 * hill(x1 / 80, y1 / 80), y1 + 3 * hill(x1 / 80 + 31, y1 / 80)]
    const [i, j] = [Math.floor(x / size), Math.floor(y / size)]
    put(into, cloth, 1)
    if (name === 'gingham') {
      put(into, white, 1)
      mix(into, strong, 0.5 * (i & 1) + 0.5 * (j & 1))
    } else if (name === 'stripes' || (name === 'quilt' && size > 22))
      mix(into, white, i % 3 === 0 ? 0.85 : i % 3 === 1 && x / size - i < 0.3 ? 0.5 : 0) // prettier-ignore
    else if (name === 'print') {
      const shake = Math.sin(i * 127.1 + j * 311.7) * 43758.5
      const spin = shake - Math.floor(shake)
      const [px, py] = [x - (i + 0.3 + 0.4 * spin) * size, y - (j + 0.35 + 0.3 * ((spin * 7) % 1)) * size]
      const r = Math.hypot(px, py) / size
      const reach = 0.24 + 0.07 * Math.cos(petals * Math.atan2(py, px) + 6 * spin)
      if (spin > 0.25) mix(into, spin > 0.6 ? strong : white, 1 - eased(reach - 0.02, reach + 0.02, r))
      if (spin > 0.25) mix(into, ink('c9a23a'), 1 - eased(0.07, 0.1, r))
    }
    const light = weave(x, y, each) * fold(x1, y1) * (1 + 0.06 * hill(x * 1.7, y * 0.6))
    for (let k = 0; k < 3; k++) into[k]! *= light
  }
}

/** A thing on the table: how far inside it a place is, how high it stands, and its colour there. */
export interface Thing {
  readonly reach: number
  readonly x: number
  readonly y: number
  readonly high: number
  inside(x: number, y: number): number
  paint(x: number, y: number, into: Float32Array): void
}

/** A hook, a cup, a ball of yarn, a fallen leaf or a pencil, by its own middle. */
export function thingOf(x: number, y: number, yarn: Rgb, own: Chance): Thing {
  const { between, pick } = own
  const kind = pick(['hook', 'cup', 'ball', 'leaf', 'pencil'] as const)
  const way = between(0, 6.28)
  const [c, s] = [Math.cos(way), Math.sin(way)]
  const size = kind === 'cup' ? between(38, 46) : kind === 'ball' ? between(28, 45) : kind === 'leaf' ? between(16, 32) : between(65, 80) // prettier-ignore
  const thick = kind === 'hook' ? between(2, 4.5) : 3.6
  const [skin, fill] = [pick([ink('d8d3c8'), ink('7f9aa3'), ink('3b3f46'), ink('c98f5a'), ink('b9bcc2')]), pick([ink('3a2114'), ink('9c6b43')])] // prettier-ignore
  const [leaf, hill] = [pick([ink('b5832f'), ink('8a3f22'), ink('6f7f33')]), hills(own)]
  const local = (px: number, py: number): [number, number] => [
    c * (px - x) + s * (py - y),
    c * (py - y) - s * (px - x),
  ]
  return {
    ...{
      x,
      y,
      reach: size + 3,
      high: kind === 'cup' ? 40 : kind === 'ball' ? 25 : kind === 'leaf' ? 1 : thick,
    },
    inside: (px, py) => {
      const [u, v] = local(px, py)
      if (kind === 'cup' || kind === 'ball') return size - Math.hypot(u, v)
      if (kind === 'leaf') return 0.42 * size * (1 - (u / size) ** 2) - Math.abs(v) + 0.6 * hill(u / 2, v / 2)
      return Math.min(size - Math.abs(u), thick * (kind === 'hook' && u > size - 8 ? 0.7 : 1) - Math.abs(v))
    },
    paint: (px, py, into) => {
      const [u, v] = local(px, py)
      const r = Math.hypot(u, v) / size
      if (kind === 'cup') {
        put(into, r < 0.86 ? fill : skin, r < 0.86 ? 0.7 + 0.5 * eased(0.5, 0.86, r) : 0.8 + 0.3 * (u / size))
        return
      }
      const round = Math.sqrt(Math.max(0.05, 1 - (kind === 'ball' ? r * r : (v / thick) ** 2)))
      const wound = Math.sin((u * (r < 0.5 ? 0.5 : 1) + v * Math.sin(Math.floor(3 * r + u / 20))) * 1.7)
      if (kind === 'ball') put(into, yarn, round * (0.7 + 0.3 * wound))
      else if (kind === 'leaf')
        put(into, leaf, 0.8 + 0.3 * hill(u / 5, v / 5) - 0.3 * (Math.abs(v) < 0.6 ? 1 : 0))
      else put(into, skin, 0.4 + 0.7 * round)
    },
  }
}
