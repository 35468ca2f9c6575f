/**
 * A camera of the tests' own: a ray for each part of a pixel down to the table, the light there, the lens' blur,
 * noise, and the camera's curve. It shares no line with the finder.
 */
import { chance } from './flowers'
import type { Shape } from './flowers'
import { bytesOf } from './tones'

export type Colour = readonly [number, number, number]

export interface Scene {
  readonly shape: Shape
  /** The middle of the shape on the sheet, in mm from the sheet's middle. */
  readonly at: { readonly x: number; readonly y: number }
  readonly sheet: { readonly width: number; readonly height: number }
  /** Turn of the sheet in the picture, and the camera's tilt and its direction, in degrees. */
  readonly turn: number
  readonly tilt: number
  readonly tiltTowards: number
  readonly picture: { readonly width: number; readonly height: number }
  /** Share of the picture's width that the sheet takes. */
  readonly filling: number
  readonly paper: Colour
  readonly table: Colour
  readonly grain: number
  /** Yarns from the middle outwards. */
  readonly yarns: readonly Colour[]
  /** Light: how much weaker at the far side, colour of the lamp, depth and shift (mm) of the motif's shadow. */
  readonly fall: number
  readonly fallTowards: number
  readonly lamp: Colour
  readonly shadow: number
  readonly shadowBy: { readonly x: number; readonly y: number }
  /** Stitches: their width in mm, and how much they are light and dark. */
  readonly stitch: number
  readonly relief: number
  /** Standard deviation of the lens' blur, in pixels, and of the noise, of full light. */
  readonly blur: number
  readonly noise: number
  readonly seed: number
  /** A ruler of wood that lies level: its left end in mm from the sheet's middle, its length, its marks each 5 mm. */
  readonly ruler?: { readonly x: number; readonly y: number; readonly length: number }
}

const WOOD: Colour = [0.5, 0.33, 0.12]
const INK: Colour = [0.03, 0.03, 0.03]
const RULER_WIDE = 28

/** The ruler's colour at a place; null where it does not lie. Marks stand at its upper edge. */
function onWood({ ruler }: Scene, x: number, y: number): Colour | null {
  if (!ruler) return null
  const [along, down] = [x - ruler.x, y - ruler.y]
  if (along < -4 || along > ruler.length + 4 || down < 0 || down > RULER_WIDE) return null
  const mark = Math.round(along / 5)
  const isMark = Math.abs(along - 5 * mark) < 0.3 && down < (mark % 2 === 0 ? 8 : 5)
  return isMark && mark >= 0 && 5 * mark <= ruler.length ? INK : WOOD
}

const PARTS = 2

/** The grain of a table is one board of so many mm, laid again and again, that many of its places to a millimetre. */
const BOARD = 256
const PLACES = 2
const WAVES = 40

/** A board of waves that close at its edges, and their sum at each place. */
function boardOf(random: () => number): Float32Array {
  const side = BOARD * PLACES
  const board = new Float32Array(side * side)
  const whole = (about: number) => Math.round((about * BOARD) / (2 * Math.PI))
  for (let wave = 0; wave < WAVES; wave++) {
    const across = whole((random() - 0.5) * 0.9)
    const down = whole((random() - 0.5) * 0.9 * 4)
    const phase = random() * 6.283
    const turn = (by: number, at: number) => (2 * Math.PI * by * at) / side
    const cosine = Float32Array.from({ length: side }, (_, x) => Math.cos(turn(across, x) + phase))
    const sine = Float32Array.from({ length: side }, (_, x) => Math.sin(turn(across, x) + phase))
    for (let y = 0; y < side; y++) {
      const [c, s] = [Math.cos(turn(down, y)), Math.sin(turn(down, y))]
      for (let x = 0; x < side; x++) board[y * side + x]! += cosine[x]! * c - sine[x]! * s
    }
  }
  return board
}

const boardAt = (board: Float32Array, x: number, y: number): number => {
  const side = BOARD * PLACES
  // Its side is a power of two, so that the lower bits of a place are its place on the board.
  return board[(Math.floor(y * PLACES) & (side - 1)) * side + (Math.floor(x * PLACES) & (side - 1))]!
}

/** Takes the picture. */
export function photograph(scene: Scene): { width: number; height: number; data: Uint8Array } {
  const { width, height } = scene.picture
  const random = chance(scene.seed)
  const tilt = (scene.tilt * Math.PI) / 180
  const towards = (scene.tiltTowards * Math.PI) / 180
  const turn = (scene.turn * Math.PI) / 180
  const focal = 0.85 * Math.max(width, height)
  // How far off, so that the sheet takes its share of the picture.
  const sides = [scene.sheet.width, scene.sheet.height]
  const [c, s] = [Math.abs(Math.cos(turn)), Math.abs(Math.sin(turn))]
  const needs = Math.max((sides[0]! * c + sides[1]! * s) / width, (sides[0]! * s + sides[1]! * c) / height)
  const far = (focal * needs) / scene.filling
  // The camera looks at the middle of the sheet from `far` away, tilted about a level axis.
  const axis = { x: Math.cos(towards), y: Math.sin(towards) }
  const turned = (x: number, y: number, z: number) => {
    // Rodrigues' rotation about the level axis.
    const [co, si] = [Math.cos(tilt), Math.sin(tilt)]
    const dot = axis.x * x + axis.y * y
    return {
      x: x * co + axis.y * z * si + axis.x * dot * (1 - co),
      y: y * co - axis.x * z * si + axis.y * dot * (1 - co),
      z: z * co + (axis.x * y - axis.y * x) * si,
    }
  }
  const eye = turned(0, 0, -far)
  const light = new Float32Array(3 * width * height)
  const shade = shader(scene, boardOf(random), light)
  // A turn is linear: what it makes of three axes tells what it makes of every ray.
  const [across, down, ahead] = [turned(1, 0, 0), turned(0, 1, 0), turned(0, 0, 1)]
  const [cosine, sine] = [Math.cos(turn), Math.sin(turn)]
  for (let row = 0; row < height; row++)
    for (let column = 0; column < width; column++)
      for (let part = 0; part < PARTS * PARTS; part++) {
        const px = column + ((part % PARTS) + 0.5) / PARTS - 0.5 - (width - 1) / 2
        const py = row + (Math.floor(part / PARTS) + 0.5) / PARTS - 0.5 - (height - 1) / 2
        const [u, v] = [px / focal, py / focal]
        const t = -eye.z / (u * across.z + v * down.z + ahead.z)
        const tx = eye.x + t * (u * across.x + v * down.x + ahead.x)
        const ty = eye.y + t * (u * across.y + v * down.y + ahead.y)
        // On the sheet, about its middle.
        const x = tx * cosine + ty * sine
        const y = -tx * sine + ty * cosine
        const at = 3 * (row * width + column)
        shade(x, y, at)
      }
  const blurred = blur(light, width, height, scene.blur)
  const data = new Uint8Array(4 * width * height)
  const byteOf = bytesOf((seen) =>
    seen < 0.0031308 ? 12.92 * seen : 1.055 * Math.pow(seen, 1 / 2.4) - 0.055,
  )
  for (let at = 0; at < width * height; at++) {
    for (let channel = 0; channel < 3; channel++) {
      // The sum of three even chances is near enough to a bell.
      const hiss = (random() + random() + random() - 1.5) * 2 * scene.noise
      const value = blurred[3 * at + channel]! / PARTS ** 2
      data[4 * at + channel] = byteOf(value + hiss * Math.sqrt(0.05 + Math.max(0, value)))
    }
    data[4 * at + 3] = 255
  }
  return { width, height, data }
}

/** Where the light of a lamp comes from that is no point, in mm. */
const SOFT = [0, 1, 2].map((i) => ({ x: 1.2 * Math.cos(i * 2.094), y: 1.2 * Math.sin(i * 2.094) }))

/**
 * Adds the light of one place on the table. What is the same for all of the picture is worked out once, and a place
 * that lies well outside the shape is not asked about: millions of them are.
 */
function shader(scene: Scene, board: Float32Array, light: Float32Array) {
  const { sheet, shape, at, shadowBy, paper, lamp, yarns } = scene
  const [halfWide, halfHigh] = [sheet.width / 2, sheet.height / 2]
  const fall = (scene.fallTowards * Math.PI) / 180
  const [fallX, fallY] = [Math.cos(fall), Math.sin(fall)]
  const { most } = shape
  const beyond = (most * 1.001) ** 2
  const isOn = (x: number, y: number): boolean =>
    x * x + y * y < beyond && Math.hypot(x, y) < most && shape.covers(x, y)
  const [beforeX, beforeY] = [at.x + shadowBy.x, at.y + shadowBy.y]
  // Farther than this no part of the lamp is covered.
  const clear = (most * 1.001 + 3) ** 2
  return (x: number, y: number, into: number): void => {
    const mx = x - at.x
    const my = y - at.y
    const onSheet = Math.abs(x) < halfWide && Math.abs(y) < halfHigh
    let colour = paper
    let by = 1
    const wood = scene.ruler ? onWood(scene, x, y) : null
    if (isOn(mx, my)) {
      const r = Math.hypot(mx, my)
      colour = yarns[Math.min(yarns.length - 1, Math.floor((r / most) * yarns.length))]!
      // Stitches: bumps in rounds.
      const round = Math.floor(r / scene.stitch)
      const count = Math.max(6, Math.round((2 * Math.PI * (round + 0.5) * scene.stitch) / scene.stitch))
      const angle = Math.atan2(my, mx)
      by =
        1 + scene.relief * (Math.cos(angle * count) * 0.6 + Math.cos((2 * Math.PI * r) / scene.stitch) * 0.4)
    } else if (wood) colour = wood
    else if (!onSheet) {
      colour = scene.table
      by = 1 + (scene.grain * boardAt(board, x, y)) / 6
    }
    // The shadow: soft, of a motif a little above the ground.
    const [off, down] = [x - beforeX, y - beforeY]
    if ((by === 1 || !onSheet) && off * off + down * down < clear) {
      let covered = 0
      for (const soft of SOFT) if (isOn(mx - shadowBy.x + soft.x, my - shadowBy.y + soft.y)) covered++
      by *= 1 - (scene.shadow * covered) / 3
    }
    by *= 1 - scene.fall * (0.5 + (x * fallX + y * fallY) / 400)
    light[into]! += Math.max(0, colour[0] * by * lamp[0])
    light[into + 1]! += Math.max(0, colour[1] * by * lamp[1])
    light[into + 2]! += Math.max(0, colour[2] * by * lamp[2])
  }
}

/** A lens' blur: a bell, across and down. */
function blur(from: Float32Array, width: number, height: number, sigma: number): Float32Array {
  const reach = Math.ceil(3 * sigma)
  const bell = Array.from({ length: 2 * reach + 1 }, (_, at) =>
    Math.exp(-((at - reach) ** 2) / (2 * sigma * sigma)),
  )
  const sum = bell.reduce((all, each) => all + each, 0)
  const weights = Float64Array.from(bell, (each) => each / sum)
  const pass = (values: Float32Array, down: boolean) => {
    const result = new Float32Array(values.length)
    for (let row = 0; row < height; row++)
      for (let column = 0; column < width; column++) {
        const [place, last] = down ? [row, height - 1] : [column, width - 1]
        const [step, start] = down ? [3 * width, 3 * column] : [3, 3 * row * width]
        let red = 0
        let green = 0
        let blue = 0
        for (let at = -reach; at <= reach; at++) {
          const weight = weights[at + reach]!
          const from = start + step * Math.min(last, Math.max(0, place + at))
          red += weight * values[from]!
          green += weight * values[from + 1]!
          blue += weight * values[from + 2]!
        }
        const to = 3 * (row * width + column)
        result[to] = red
        result[to + 1] = green
        result[to + 2] = blue
      }
    return result
  }
  return pass(pass(from, false), true)
}
