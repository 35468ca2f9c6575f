/**
 * A seventh renderer of pictures, apart from the others and from the finder: the world is painted as layers on one large
 * board (cutting mat with lines, wooden board or felt; the sheet; the motif of loops of yarn with a halo of fibres and
 * dark gaps; things that lie over the sheet's edge) under a yellow lamp near by and a window, and that board is seen
 * through a wide lens that bends lines outwards, by a phone that keeps JPEG of 60.
 */
import { decode, encode } from 'jpeg-js'
import { SHEET_SIZES } from '../../../src-core/photo/sheet-sizes'
import type { SheetName } from '../../../src-core/photo/sheet-sizes'
import { MAT_FORMS, matMotif } from './mat-motifs'
import { bytesOf } from './tones'

type Rgb = readonly [number, number, number]

export interface Mat {
  readonly name: string
  readonly sheet: SheetName
  readonly motif: { readonly petals: number; readonly overTips: number; readonly overValleys: number }
  readonly picture: { width: number; height: number; data: Uint8Array }
}

const STRONG: Rgb[] = [[0.42, 0.03, 0.08], [0.03, 0.1, 0.34], [0.04, 0.22, 0.12], [0.3, 0.06, 0.32], [0.6, 0.24, 0.03], [0.07, 0.07, 0.08], [0.2, 0.1, 0.05], [0.03, 0.28, 0.3], [0.55, 0.16, 0.3]] // prettier-ignore
const SOFT: Rgb[] = [[0.83, 0.81, 0.76], [0.84, 0.72, 0.36], [0.8, 0.56, 0.6], [0.55, 0.72, 0.82], [0.64, 0.78, 0.58]] // prettier-ignore
const TABLES = ['mat', 'board', 'felt'] as const
const GROUNDS: Record<(typeof TABLES)[number], Rgb[]> = {
  mat: [
    [0.03, 0.16, 0.11],
    [0.06, 0.09, 0.18],
    [0.2, 0.2, 0.21],
  ],
  board: [
    [0.42, 0.27, 0.13],
    [0.24, 0.14, 0.07],
    [0.52, 0.38, 0.22],
  ],
  felt: [
    [0.3, 0.05, 0.07],
    [0.26, 0.25, 0.24],
    [0.1, 0.2, 0.26],
  ],
}

/** A chance that runs on: Weyl's steps, stirred. */
function chances(seed: number): () => number {
  let word = BigInt(seed + 1) * 0x9e3779b97f4a7c15n
  return () => {
    word = BigInt.asUintN(64, word + 0xbf58476d1ce4e5b9n)
    let mixed = word
    mixed = BigInt.asUintN(64, (mixed ^ (mixed >> 30n)) * 0x94d049bb133111ebn)
    return Number(mixed >> 34n) / 2 ** 30
  }
}

/** A sheet of grain: values at lattice places, and straight lines between them. */
function grained(roll: () => number): (x: number, y: number) => number {
  const side = 64
  const values = Float32Array.from({ length: side * side }, roll)
  const at = (i: number, j: number) => values[(j & 63) * side + (i & 63)]!
  return (x, y) => {
    const [i, j] = [Math.floor(x), Math.floor(y)]
    const [u, v] = [x - i, y - j]
    return (at(i, j) * (1 - u) + at(i + 1, j) * u) * (1 - v) + (at(i, j + 1) * (1 - u) + at(i + 1, j + 1) * u) * v // prettier-ignore
  }
}

/** The board all is painted on: places across for so many mm. */
const ACROSS = 1500
const DOWN = 1950

/** The picture of a number: the same each time. */
export function mat(number: number, wide = 1000): Mat {
  const roll = chances(number * 7919)
  const between = (least: number, most: number) => least + (most - least) * roll()
  const pick = <T>(list: readonly T[]): T => list[Math.floor(roll() * list.length)]!
  const tall = Math.round((wide * 4) / 3)
  const sheet = (['A4', 'Letter', 'A5', 'A4', 'Letter'] as const)[number % 5]!
  const size = SHEET_SIZES[sheet]
  const form = MAT_FORMS[(number + Math.floor(number / 22)) % MAT_FORMS.length]!
  const petals = 3 + ((number * 9 + 4) % 22)
  const isDark = roll() < 0.4
  const motif = matMotif(
    form,
    {
      petals,
      overTips: between(Math.max(40, 4.5 * petals), Math.min(150, size.width - 24)),
      uneven: pick([0, 0.008, 0.016, 0.03]),
    },
    between,
  )
  const per = ACROSS / (2.1 * size.width)
  const kind = pick(TABLES)
  const ground = pick(GROUNDS[kind])
  const paper = isDark ? pick<Rgb>([[0.035, 0.035, 0.04], [0.02, 0.035, 0.07]]) : pick<Rgb>([[0.82, 0.82, 0.81], [0.78, 0.79, 0.82]]) // prettier-ignore
  const yarns = [pick(isDark ? SOFT : STRONG), pick(isDark ? SOFT : STRONG), pick(isDark ? SOFT : STRONG)]
  const rings = [between(0.2, 0.4), between(0.5, 0.8)]
  const room = (length: number) => Math.max(0, length / 2 - motif.most - 9)
  const at = { x: between(-1, 1) * room(size.width), y: between(-1, 1) * room(size.height) }
  const grain = grained(roll)
  const stitch = between(2.6, 4.6)
  const relief = between(0.12, 0.34)
  const gap = between(0.3, 0.8)

  // Layers: how much of a place is yarn, and the colour of all of it before light.
  const cover = new Float32Array(ACROSS * DOWN)
  const paint = new Float32Array(3 * ACROSS * DOWN)
  const onTable = (x: number, y: number): number => {
    if (kind === 'mat') {
      const near = (every: number, half: number) =>
        Math.min(Math.abs(x - every * Math.round(x / every)), Math.abs(y - every * Math.round(y / every))) <
        half
      return (near(50, 0.35) ? 2.6 : near(10, 0.18) ? 1.7 : 1) * (0.92 + 0.16 * grain(1.5 * x, 1.5 * y))
    }
    if (kind === 'board') return 0.72 + 0.4 * grain(x / 5 + 3 * grain(x / 60, y / 60), y / 70) + 0.12 * grain(2 * x, y / 5) // prettier-ignore
    return 0.7 + 0.35 * grain(2.2 * x, 2.2 * y) + 0.2 * grain(x / 9, y / 9)
  }
  for (let row = 0; row < DOWN; row++)
    for (let column = 0; column < ACROSS; column++) {
      const [x, y] = [(column + 0.5 - ACROSS / 2) / per, (row + 0.5 - DOWN / 2) / per]
      const into = row * ACROSS + column
      const edge = Math.max(Math.abs(x) - size.width / 2, Math.abs(y) - size.height / 2)
      const sheetHere = Math.min(1, Math.max(0, 0.5 - edge * per))
      // The sheet lies a little above the table: a thin dark line beside it.
      const lift = edge > 0 && edge < 1.2 ? 0.75 + 0.2 * edge : 1
      const table = sheetHere < 1 ? onTable(x, y) * lift : 0
      const fleck = 0.985 + 0.03 * grain(3 * x, 3 * y)
      for (let c = 0; c < 3; c++)
        paint[3 * into + c] = sheetHere * paper[c]! * fleck + (1 - sheetHere) * ground[c]! * table
      const [mx, my] = [x - at.x, y - at.y]
      if (Math.abs(mx) > motif.most + 4 || Math.abs(my) > motif.most + 4) continue
      const off = motif.outside(mx, my)
      if (off * per > 0.5) continue
      cover[into] = Math.min(1, 0.5 - off * per)
      // Loops: the strand of a stitch is a ring in its cell, and dark within and between.
      const r = Math.hypot(mx, my)
      const round = Math.floor(r / stitch)
      const count = Math.max(6, Math.round(2 * Math.PI * (round + 0.5)))
      const along = (Math.atan2(my, mx) / (2 * Math.PI)) * count + (round & 1) * 0.5
      const [u, v] = [2 * (along - Math.floor(along)) - 1, 2 * (r / stitch - round) - 1]
      const strand = Math.exp(-(((Math.hypot(u, 0.85 * v) - 0.72) / 0.33) ** 2))
      const seam = motif.seam(mx, my)
      const deep = 1 - gap * Math.exp(-((seam / 0.8) ** 2))
      const lit = (1 - relief + 1.7 * relief * strand - 0.25 * relief * v) * deep * (0.93 + 0.14 * grain(4 * mx, 4 * my)) // prettier-ignore
      const yarn = yarns[r < rings[0]! * motif.most ? 0 : r < rings[1]! * motif.most ? 1 : 2]!
      for (let c = 0; c < 3; c++)
        paint[3 * into + c] = (1 - cover[into]!) * paint[3 * into + c]! + cover[into]! * yarn[c]! * lit
    }
  const own = new Float32Array(cover)
  // Fibres stand off from the rim, thin and half seen.
  const fibres = Math.round(between(0, 26) * motif.most)
  const longest = between(0.6, 2)
  for (let fibre = 0; fibre < fibres; fibre++) {
    const angle = between(0, 2 * Math.PI)
    let r = motif.most + 1
    while (r > 0 && motif.outside(r * Math.cos(angle), r * Math.sin(angle)) > 0) r -= 0.25
    const [long, bend, way, dense] = [between(0.3, longest), between(-1, 1), angle + between(-1.2, 1.2), between(0.1, 0.4)] // prettier-ignore
    for (let t = 0; t < long; t += 0.5 / per) {
      const x = r * Math.cos(angle) + t * Math.cos(way + bend * t) + at.x
      const y = r * Math.sin(angle) + t * Math.sin(way + bend * t) + at.y
      const into = Math.floor(y * per + DOWN / 2) * ACROSS + Math.floor(x * per + ACROSS / 2)
      const some = dense * (1 - t / long) * (1 - own[into]!)
      cover[into] = Math.max(cover[into]!, some)
      for (let c = 0; c < 3; c++)
        paint[3 * into + c] = (1 - some) * paint[3 * into + c]! + some * yarns[2]![c]! * 1.1
    }
  }
  // Things over the sheet's edge: a pencil, a ball of yarn, a tape.
  const things: string[] = []
  for (let thing = 0; thing < pick([0, 1, 1, 2]); thing++) {
    const what = pick(['pencil', 'ball', 'tape'] as const)
    things.push(what)
    const side = Math.floor(between(0, 4))
    const along = between(-0.36, 0.36)
    const [ex, ey] = side % 2 ? [along * size.width, (side - 2) * 0.5 * size.height] : [(side - 1) * 0.5 * size.width, along * size.height] // prettier-ignore
    const turn = between(0, Math.PI)
    const [c, s] = [Math.cos(turn), Math.sin(turn)]
    const half = what === 'ball' ? [between(12, 22), 0] : what === 'tape' ? [between(30, 60), 7] : [between(35, 80), 3.4] // prettier-ignore
    const tone = pick<Rgb>([[0.6, 0.45, 0.05], [0.5, 0.05, 0.08], [0.1, 0.25, 0.45], [0.66, 0.62, 0.5]]) // prettier-ignore
    // It keeps off the motif.
    const push = what === 'ball' ? 1.2 : 1
    const [ox, oy] = [ex * push, ey * push]
    for (let row = 0; row < DOWN; row++)
      for (let column = 0; column < ACROSS; column++) {
        const [x, y] = [(column - ACROSS / 2) / per - ox, (row - DOWN / 2) / per - oy]
        if (Math.abs(x) > 90 || Math.abs(y) > 90) continue
        const [u, v] = [x * c + y * s, y * c - x * s]
        const isOn = what === 'ball' ? Math.hypot(x, y) < half[0]! : Math.abs(u) < half[0]! && Math.abs(v) < half[1]! // prettier-ignore
        if (!isOn || Math.hypot(x + ox - at.x, y + oy - at.y) < motif.most + 5) continue
        const into = row * ACROSS + column
        const lit = what === 'ball' ? 0.55 + 0.5 * Math.sqrt(1 - Math.hypot(x, y) / half[0]!) + 0.2 * Math.sin(1.6 * u + 0.2 * v * v) : what === 'tape' && Math.abs(u - 10 * Math.round(u / 10)) < 0.4 ? 0.3 : 1 - 0.3 * Math.abs(v / half[1]!) // prettier-ignore
        for (let k = 0; k < 3; k++) paint[3 * into + k] = tone[k]! * lit
      }
  }
  const lamp = { x: between(-1, 1) * size.width, y: between(-1, 1) * size.height, high: between(250, 600), weight: between(0.3, 0.75) } // prettier-ignore
  const sky = { towards: between(0, 2 * Math.PI), falls: between(0, 0.0016) }
  const dark = between(0.15, 0.6)
  const lifted = between(0.3, 1.6)
  const lampTone: Rgb = [1.25, 1, 0.62]
  const skyTone: Rgb = [0.92, 1, 1.12]
  const shaded = (row: number, column: number, dx: number, dy: number, soft: number): number => {
    let sum = 0
    for (let k = 0; k < 8; k++) {
      const j = Math.round(row + (dy + soft * Math.sin(k * 2.4) * ((k + 1) / 8)) * per)
      const i = Math.round(column + (dx + soft * Math.cos(k * 2.4) * ((k + 1) / 8)) * per)
      if (i >= 0 && j >= 0 && i < ACROSS && j < DOWN) sum += own[j * ACROSS + i]!
    }
    return sum / 8
  }
  for (let row = 0; row < DOWN; row++)
    for (let column = 0; column < ACROSS; column++) {
      const into = row * ACROSS + column
      const [x, y] = [(column - ACROSS / 2) / per, (row - DOWN / 2) / per]
      const [lx, ly] = [lamp.x - x, lamp.y - y]
      const far = lx * lx + ly * ly + lamp.high ** 2
      let fromLamp = lamp.weight * (lamp.high ** 2 / far) * Math.sqrt(lamp.high ** 2 / far)
      let fromSky = (1 - lamp.weight) * (1 - sky.falls * (x * Math.cos(sky.towards) + y * Math.sin(sky.towards))) // prettier-ignore
      if (own[into]! < 1 && Math.hypot(x - at.x, y - at.y) < motif.most + 8) {
        const open = 1 - own[into]!
        fromLamp *= 1 - open * dark * shaded(row, column, (lifted * lx) / lamp.high, (lifted * ly) / lamp.high, 0.7) // prettier-ignore
        fromSky *= 1 - open * dark * shaded(row, column, -lifted * Math.cos(sky.towards), -lifted * Math.sin(sky.towards), 2.5) // prettier-ignore
      }
      for (let c = 0; c < 3; c++) paint[3 * into + c]! *= fromLamp * lampTone[c]! + fromSky * skyTone[c]!
    }

  // The phone: from above, tilted about the picture's two axes one after the other, a wide lens.
  const [pitch, yaw, spin] = [between(-0.42, 0.42), between(-0.3, 0.3), between(-0.3, 0.3)]
  const focal = tall * between(0.6, 0.85)
  const barrel = between(0, 0.05)
  const need = Math.max(size.width / wide, size.height / tall)
  const high = focal * need * between(1.25, 1.6)
  const corner = (wide * wide + tall * tall) / 4
  const [cp, sp, cy, sy, cs, ss] = [Math.cos(pitch), Math.sin(pitch), Math.cos(yaw), Math.sin(yaw), Math.cos(spin), Math.sin(spin)] // prettier-ignore
  const turned = (x: number, y: number, z: number): readonly [number, number, number] => {
    const [x1, z1] = [x * cy + z * sy, z * cy - x * sy]
    const [y1, z2] = [y * cp + z1 * sp, z1 * cp - y * sp]
    return [x1 * cs - y1 * ss, x1 * ss + y1 * cs, z2]
  }
  // It stands where its middle ray meets the middle of the sheet.
  const middle = turned(0, 0, 1)
  const eye = [(-high * middle[0]) / middle[2], (-high * middle[1]) / middle[2]]
  const light = new Float32Array(3 * wide * tall)
  for (let row = 0; row < tall; row++)
    for (let column = 0; column < wide; column++)
      for (let part = 0; part < 4; part++) {
        const px = column + 0.25 + 0.5 * (part & 1) - wide / 2
        const py = row + 0.25 + 0.5 * (part >> 1) - tall / 2
        const bent = 1 + (barrel * (px * px + py * py)) / corner
        const ray = turned((px * bent) / focal, (py * bent) / focal, 1)
        const t = high / ray[2]
        const x = (eye[0]! + t * ray[0]) * per + ACROSS / 2 - 0.5
        const y = (eye[1]! + t * ray[1]) * per + DOWN / 2 - 0.5
        // Beyond the board's edge it is seen again, the other way round.
        const back = (value: number, most: number) => most - Math.abs((((value % (2 * most)) + 2 * most) % (2 * most)) - most) // prettier-ignore
        const [bx, by] = [back(x, ACROSS - 2), back(y, DOWN - 2)]
        const [i, j] = [Math.floor(bx), Math.floor(by)]
        const [u, v] = [bx - i, by - j]
        const from = 3 * (j * ACROSS + i)
        for (let c = 0; c < 3; c++)
          light[3 * (row * wide + column) + c]! +=
            ((paint[from + c]! * (1 - u) + paint[from + 3 + c]! * u) * (1 - v) +
              (paint[from + 3 * ACROSS + c]! * (1 - u) + paint[from + 3 * ACROSS + 3 + c]! * u) * v) /
            4
      }
  const [blur, hiss, exposure] = [Math.round(between(0, 2)), between(0.004, 0.016), between(0.85, 1.15)]
  const tilt = Math.round((Math.acos(Math.abs(middle[2])) * 180) / Math.PI)
  return {
    name: `${number} ${form} ${motif.petals} ${sheet} ${isDark ? 'dark' : 'white'} ${kind} ${things.join('+')} ${tilt}° b${barrel.toFixed(2)} fuzz ${fibres}x${longest.toFixed(1)}`, // prettier-ignore
    sheet,
    motif: { petals: motif.petals, overTips: motif.overTips, overValleys: motif.overValleys },
    picture: kept(light, wide, tall, { roll, blur, hiss, exposure }),
  }
}

/** Twice over three places for a blur, noise, the phone's curve, JPEG of 60. */
function kept(
  light: Float32Array,
  wide: number,
  tall: number,
  phone: { roll: () => number; blur: number; hiss: number; exposure: number },
): { width: number; height: number; data: Uint8Array } {
  let seen = light
  for (let round = 0; round < 2 * phone.blur; round++) {
    const step = round & 1 ? 3 * wide : 3
    const next = new Float32Array(seen.length)
    for (let at = 0; at < seen.length; at++)
      next[at] = (seen[Math.max(at % step, at - step)]! + 2 * seen[at]! + (seen[at + step] ?? seen[at]!)) / 4
    seen = next
  }
  const data = new Uint8Array(4 * wide * tall).fill(255)
  const byteOf = bytesOf((noisy) => noisy ** (1 / 2.2))
  // Noise is drawn from a bag: what makes it anew for each is slow.
  const bag = Float32Array.from({ length: 8191 }, () => phone.roll() + phone.roll() + phone.roll() - 1.5)
  for (let pixel = 0, drawn = 0; pixel < wide * tall; pixel++)
    for (let c = 0; c < 3; c++, drawn += 1 + (pixel % 7)) {
      const value = phone.exposure * seen[3 * pixel + c]!
      data[4 * pixel + c] = byteOf(value + 2 * phone.hiss * bag[drawn % 8191]! * Math.sqrt(0.05 + value))
    }
  return decode(encode({ width: wide, height: tall, data }, 60).data, { useTArray: true })
}
