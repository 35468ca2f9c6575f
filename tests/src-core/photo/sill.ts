/**
 * An eighth renderer of pictures, apart from the others and from the finder: a motif with a height of its own on a
 * window sill, in low sun that casts one hard shadow, seen from the side by a lens that bends lines inwards, is sharp on
 * one side only, parts colours at the rim and grows dark there; a sensor that sees one colour in each pixel, a shaky
 * hand, and a phone that sharpens, tints and saves.
 */
import { decode, encode } from 'jpeg-js'
import { SHEET_SIZES } from '../../../src-core/photo/sheet-sizes'
import type { SheetName } from '../../../src-core/photo/sheet-sizes'
import { SILL_FORMS, sillMotif } from './sill-motifs'
import { bytesOf } from './tones'

type Rgb = readonly [number, number, number]

export interface Sill {
  readonly name: string
  readonly sheet: SheetName
  readonly motif: { readonly petals: number; readonly overTips: number; readonly overValleys: number }
  readonly picture: { width: number; height: number; data: Uint8Array }
}

const DARK: Rgb[] = [[0.35, 0.02, 0.04], [0.02, 0.06, 0.28], [0.03, 0.2, 0.05], [0.24, 0.04, 0.26], [0.04, 0.04, 0.045], [0.5, 0.17, 0.02], [0.02, 0.2, 0.24], [0.16, 0.08, 0.04]] // prettier-ignore
const LIGHT: Rgb[] = [[0.8, 0.77, 0.68], [0.78, 0.62, 0.2], [0.76, 0.45, 0.5], [0.42, 0.62, 0.76], [0.55, 0.72, 0.46], [0.7, 0.7, 0.72]] // prettier-ignore
const WHITE: Rgb[] = [[0.8, 0.8, 0.8], [0.74, 0.79, 0.84], [0.82, 0.76, 0.62], [0.8, 0.72, 0.72]] // prettier-ignore
const BLACK: Rgb[] = [[0.03, 0.03, 0.033], [0.02, 0.03, 0.09], [0.05, 0.02, 0.02], [0.02, 0.06, 0.05]] // prettier-ignore
const GROUNDS = ['stone', 'stripes', 'carpet', 'dots', 'cork'] as const

/** A chance by three words that stir each other (after Doty-Humphrey's small fast counter). */
function chances(seed: number): () => number {
  let [a, b, c, counter] = [0x1f123bb5 ^ seed, 0x5ca1ab1e + 97 * seed, seed | 1, 1]
  const next = () => {
    const sum = (a + b + counter++) | 0
    a = b ^ (b >>> 9)
    b = (c + (c << 3)) | 0
    c = ((c << 21) | (c >>> 11)) + sum
    return (sum >>> 0) / 2 ** 32
  }
  for (let i = 0; i < 16; i++) next()
  return next
}

/** Lumps of chance about whole places, eased between. */
function lumps(roll: () => number): (x: number, y: number) => number {
  const values = Float32Array.from({ length: 1 << 12 }, roll)
  const at = (i: number, j: number) => values[(Math.imul(i, 374761393) + Math.imul(j, 668265263)) >>> 20]!
  return (x, y) => {
    const [i, j] = [Math.floor(x), Math.floor(y)]
    const [u, v] = [0.5 - 0.5 * Math.cos(Math.PI * (x - i)), 0.5 - 0.5 * Math.cos(Math.PI * (y - j))]
    return (at(i, j) * (1 - u) + at(i + 1, j) * u) * (1 - v) + (at(i, j + 1) * (1 - u) + at(i + 1, j + 1) * u) * v // prettier-ignore
  }
}

/** The sill's own light at a place. */
function groundOf(
  kind: (typeof GROUNDS)[number],
  own: Rgb,
  other: Rgb,
  rough: (x: number, y: number) => number,
) {
  return (x: number, y: number): readonly [Rgb, number] => {
    switch (kind) {
      case 'stone':
        return [rough(x * 0.05, y * 0.05) + 0.4 * rough(x * 0.4, y * 0.4) > 0.95 ? other : own, 0.85 + 0.3 * rough(x * 1.3, y * 1.3)] // prettier-ignore
      case 'stripes':
        return [Math.floor((0.8 * x + 0.6 * y + 4000) / 14) % 3 ? own : other, 1]
      case 'carpet':
        return [own, 0.45 + 1.1 * rough(x * 1.1, y * 1.1) * (0.6 + 0.6 * rough(x * 0.1, y * 0.1))]
      case 'dots': {
        const [u, v] = [x / 22 - Math.round(x / 22), y / 22 - Math.round(y / 22)]
        return [u * u + v * v < 0.06 ? other : own, 1]
      }
      case 'cork':
        return [rough(x * 0.7, y * 0.9) > 0.68 ? other : own, 0.8 + 0.4 * rough(x * 0.3, y * 0.3)]
    }
  }
}

/** Places for a millimetre of the board the motif is worked on. */
const PER = 5

/** The picture of a number: the same each time. */
export function sill(number: number, wide = 1000): Sill {
  const roll = chances(number * 2654435761)
  const between = (least: number, most: number) => least + (most - least) * roll()
  const pick = <T>(list: readonly T[]): T => list[Math.floor(roll() * list.length)]!
  const tall = Math.round(wide * 0.75)
  const sheet = (['A4', 'A5', 'card', 'Letter', 'A5', 'A4'] as const)[(number + Math.floor(number / 12)) % 6]!
  const beside = sheet === 'card'
  const size = SHEET_SIZES[sheet]
  const form = SILL_FORMS[number % SILL_FORMS.length]!
  const petals = 3 + ((number * 5 + 2) % 22)
  const most = beside ? 110 : Math.min(150, size.width - 22)
  const motif = sillMotif(form, petals, between(Math.min(most, Math.max(40, 4.2 * petals)), most), between)

  const isDark = roll() < 0.45
  const paper = pick(beside ? WHITE : isDark ? BLACK : WHITE)
  const kind = pick(GROUNDS)
  const [own, other] = beside ? (isDark ? [[0.05, 0.05, 0.055], [0.07, 0.06, 0.05]] : [[0.5, 0.47, 0.42], [0.46, 0.44, 0.4]]) as [Rgb, Rgb] : isDark ? [pick<Rgb>([[0.42, 0.36, 0.28], [0.3, 0.32, 0.33]]), pick<Rgb>([[0.5, 0.2, 0.12], [0.6, 0.58, 0.5]])] : [pick<Rgb>([[0.12, 0.1, 0.08], [0.08, 0.14, 0.16], [0.2, 0.13, 0.07]]), pick<Rgb>([[0.3, 0.2, 0.1], [0.05, 0.05, 0.06]])] // prettier-ignore
  // A card lies on a plain cloth, the motif beside it.
  const ground = groundOf(beside ? 'carpet' : kind, own, other, lumps(roll))
  const faint = beside ? 0.12 : 1
  const yarns = [0, 1, 2].map(() => pick(isDark ? LIGHT : DARK))
  const rings = [between(0.25, 0.45), between(0.55, 0.85)]
  const tweed = between(0, 0.5)
  const fleck = lumps(roll)
  const at = beside
    ? { x: 0.5 * size.width + motif.most + between(8, 16), y: between(-10, 10) }
    : { x: between(-1, 1) * (size.width / 2 - motif.most - 6), y: between(-1, 1) * (size.height / 2 - motif.most - 6) } // prettier-ignore

  // The motif, worked on a board of its own.
  const side = Math.ceil(2 * PER * (motif.most + 4))
  const cover = new Float32Array(side * side)
  const high = new Float32Array(side * side)
  for (let row = 0; row < side; row++)
    for (let column = 0; column < side; column++) {
      const [x, y] = [(column - side / 2) / PER, (row - side / 2) / PER]
      const off = motif.outside(x, y)
      cover[row * side + column] = Math.min(1, Math.max(0, 0.5 - off * PER))
      // Yarn is round: its edge falls off within a millimetre.
      if (off < 0.2) high[row * side + column] = motif.relief(x, y) * Math.sqrt(Math.min(1, Math.max(0, -off) + 0.1)) // prettier-ignore
    }
  const on = (field: Float32Array, x: number, y: number): number => {
    const [i, j] = [Math.round((x - at.x) * PER + side / 2), Math.round((y - at.y) * PER + side / 2)]
    return i >= 0 && j >= 0 && i < side && j < side ? field[j * side + i]! : 0
  }

  // Low sun from one side, and the sky all round.
  const sun = { towards: between(0, 2 * Math.PI), steep: Math.tan((between(32, 68) * Math.PI) / 180), weight: between(0.25, 0.7) } // prettier-ignore
  const [sx, sy] = [Math.cos(sun.towards), Math.sin(sun.towards)]
  const [thick, depth] = [between(1.2, 2.6), between(0.35, 0.9)]
  const falls = between(0, 0.0018)
  const litBy = (x: number, y: number): number => {
    let dark = 0
    for (const aside of [-0.3, 0, 0.3]) {
      let seen = 0
      for (let step = 1; step <= 6; step++) {
        const far = (step / 6) * (thick / sun.steep)
        seen = Math.max(seen, on(cover, x + sx * far - sy * aside, y + sy * far + sx * aside))
      }
      dark += seen / 3
    }
    return dark
  }
  const colour = new Float64Array(3)
  const look = (x: number, y: number, lifted: boolean): boolean => {
    const sky = (1 - sun.weight) * (1 + falls * (x * sx + y * sy))
    const covered = on(cover, x, y)
    if (lifted) {
      if (covered < 0.5) return false
      const [h, dx, dy] = [on(high, x, y), on(high, x + 0.2, y), on(high, x, y + 0.2)]
      const slope = ((dx - h) * sx + (dy - h) * sy) * depth * -2.2
      const light =
        sky * (0.62 + 0.38 * h) + sun.weight * Math.max(0.15, Math.min(1.7, 0.85 + 0.3 * h + slope))
      const r = Math.hypot(x - at.x, y - at.y) / motif.most
      const yarn = yarns[r < rings[0]! ? 0 : r < rings[1]! ? 1 : 2]!
      const speck = 1 + tweed * (fleck(x * 1.2, y * 1.2) - 0.5)
      for (let c = 0; c < 3; c++) colour[c] = yarn[c]! * speck * light
      return true
    }
    const isSheet = Math.abs(x) < size.width / 2 && Math.abs(y) < size.height / 2
    let [tone, by]: readonly [Rgb, number] = [paper, 1]
    if (isSheet && beside) {
      // A stripe and a chip are printed on the card.
      if (Math.abs(y - 0.2 * size.height) < 4) by = 0.86
      else if (Math.abs(x + 24) < 6 && Math.abs(y + 6) < 4.5) tone = [0.6, 0.5, 0.25]
    } else if (!isSheet) {
      ;[tone, by] = ground(x, y)
      by = 1 + faint * (by - 1)
    }
    const near = (x - at.x) ** 2 + (y - at.y) ** 2 < (motif.most + 8) ** 2
    const light = sky * (near ? 1 - 0.25 * on(cover, x + 0.6 * sx, y + 0.6 * sy) : 1) + sun.weight * (near ? 1 - litBy(x, y) : 1) // prettier-ignore
    for (let c = 0; c < 3; c++) colour[c] = tone[c]! * by * light
    return false
  }

  // The lens: it looks at the middle of what lies there, from above and aside.
  const span = beside ? { x: at.x / 2 + motif.most / 2, wide: 2 * motif.most + size.width + 40, tall: 2 * motif.most + 30 } : { x: 0, wide: size.height, tall: size.width } // prettier-ignore
  const [tilt, towards, spin] = [between(0, 0.56), between(0, 2 * Math.PI), (beside ? 0 : Math.PI / 2) + between(-0.25, 0.25)] // prettier-ignore
  const focal = wide * between(0.75, 1.1)
  const [pinch, edge] = [between(-0.035, 0.01), between(0, 0.0012)]
  const high0 = focal * Math.max(span.wide / wide, span.tall / tall) * between(1.32, 1.6)
  const ax = [Math.cos(spin), Math.sin(spin)]
  const forward = [Math.sin(tilt) * Math.cos(towards), Math.sin(tilt) * Math.sin(towards), -Math.cos(tilt)]
  const middle = { x: beside ? span.x - 0.2 * size.width : 0, y: beside ? at.y / 2 : 0 }
  const eye = [middle.x - high0 * forward[0]!, middle.y - high0 * forward[1]!, high0 * Math.cos(tilt)]
  // Its right hand lies level with the sheet as far as the tilt allows; down is across both.
  const dot = ax[0]! * forward[0]! + ax[1]! * forward[1]!
  const bare = [ax[0]! - dot * forward[0]!, ax[1]! - dot * forward[1]!, -dot * forward[2]!]
  const norm = Math.hypot(...bare)
  const right = bare.map((each) => each / norm)
  const down = [forward[1]! * right[2]! - forward[2]! * right[1]!, forward[2]! * right[0]! - forward[0]! * right[2]!, forward[0]! * right[1]! - forward[1]! * right[0]!] // prettier-ignore
  const corner = (wide * wide + tall * tall) / 4
  const lift = 0.55 * thick
  const light = new Float32Array(3 * wide * tall)
  for (let row = 0; row < tall; row++)
    for (let column = 0; column < wide; column++)
      for (let part = 0; part < 4; part++) {
        const px = column + 0.25 + 0.5 * (part & 1) - wide / 2
        const py = row + 0.25 + 0.5 * (part >> 1) - tall / 2
        const off = (px * px + py * py) / corner
        const bent = 1 + pinch * off
        const [u, v] = [(px * bent) / focal, (py * bent) / focal]
        const rx = forward[0]! + u * right[0]! + v * down[0]!
        const ry = forward[1]! + u * right[1]! + v * down[1]!
        const rz = forward[2]! + u * right[2]! + v * down[2]!
        const over = (lift - eye[2]!) / rz
        const under = (0 - eye[2]!) / rz
        if (!look(eye[0]! + over * rx, eye[1]! + over * ry, true))
          look(eye[0]! + under * rx, eye[1]! + under * ry, false)
        const dim = (1 - 0.32 * off * off) / 4
        for (let c = 0; c < 3; c++) light[3 * (row * wide + column) + c]! += colour[c]! * dim
      }
  const degrees = Math.round((tilt * 180) / Math.PI)
  return {
    name: `${number} sill ${form} ${motif.petals} ${sheet} ${isDark ? 'dark' : 'white'} ${beside ? 'cloth' : kind} ${degrees}°`, // prettier-ignore
    sheet,
    motif: { petals: motif.petals, overTips: motif.overTips, overValleys: motif.overValleys },
    picture: seenBy(light, wide, tall, between, roll, edge),
  }
}

/** Sensor and phone: out of focus to one side, shaken, one colour for each pixel, sharpened, tinted, saved. */
function seenBy(
  light: Float32Array,
  wide: number,
  tall: number,
  between: (a: number, b: number) => number,
  roll: () => number,
  edge: number,
) {
  // prettier-ignore
  const [soft, shake, way, focus] = [between(0.3, 1.5), between(0, 1.6), between(0, Math.PI), between(0, 2 * Math.PI)] // prettier-ignore
  const at = (x: number, y: number, c: number) => light[3 * (Math.min(tall - 1, Math.max(0, Math.round(y))) * wide + Math.min(wide - 1, Math.max(0, Math.round(x)))) + c]! // prettier-ignore
  const raw = new Float32Array(wide * tall)
  const [hiss, gain] = [between(0.003, 0.014), between(0.85, 1.2)]
  const colourAt = (x: number, y: number) => ((x + y) & 1 ? 1 : y & 1 ? 2 : 0)
  // Nine looks into the spot that a place is blurred to: they turn alike wherever it is.
  const looks = Array.from({ length: 9 }, (_, k) => {
    const [angle, moved] = [2.4 * k, shake * (k / 8 - 0.5)]
    return [Math.sqrt((k + 0.5) / 9), Math.cos(angle), Math.sin(angle), moved * Math.cos(way), moved * Math.sin(way)] // prettier-ignore
  })
  const spot = Float64Array.from(looks.flat())
  const [fx, fy] = [Math.cos(focus), Math.sin(focus)]
  for (let y = 0; y < tall; y++)
    for (let x = 0; x < wide; x++) {
      const c = colourAt(x, y)
      // Red and blue are drawn a little larger and smaller.
      const by = 1 + (c - 1) * edge
      const [mx, my] = [wide / 2 + (x - wide / 2) * by, tall / 2 + (y - tall / 2) * by]
      const aside = ((x - wide / 2) * fx + (y - tall / 2) * fy) / wide
      const r = soft * (0.4 + Math.abs(aside + 0.2))
      let sum = 0
      for (let k = 0; k < spot.length; k += 5) {
        const far = r * spot[k]!
        sum += at(mx + far * spot[k + 1]! + spot[k + 3]!, my + far * spot[k + 2]! + spot[k + 4]!, c)
      }
      const value = (gain * sum) / 9
      raw[y * wide + x] = value + hiss * 2 * (roll() + roll() + roll() - 1.5) * Math.sqrt(0.03 + value)
    }
  const [warm, strong] = [between(-0.12, 0.12), between(0, 0.5)]
  const tint = [1 + warm, 1, 1 - warm]
  const full = new Float32Array(3 * wide * tall)
  const [sum, count] = [new Float64Array(3), new Float64Array(3)]
  for (let y = 0; y < tall; y++)
    for (let x = 0; x < wide; x++) {
      sum.fill(0)
      count.fill(0)
      for (let j = Math.max(0, y - 1); j <= Math.min(tall - 1, y + 1); j++)
        for (let i = Math.max(0, x - 1); i <= Math.min(wide - 1, x + 1); i++) {
          const c = colourAt(i, j)
          const weight = i === x && j === y ? 4 : i === x || j === y ? 2 : 1
          sum[c]! += weight * raw[j * wide + i]!
          count[c]! += weight
        }
      for (let c = 0; c < 3; c++) full[3 * (y * wide + x) + c] = (tint[c]! * sum[c]!) / count[c]!
    }
  const data = new Uint8Array(4 * wide * tall).fill(255)
  // The phone's curve: a little steeper in the middle than 1/2.2.
  const byteOf = bytesOf((sharp) => {
    const curved = sharp ** (1 / 2.2)
    return 0.88 * curved + 0.12 * curved * curved * (3 - 2 * curved)
  })
  for (let pixel = 0; pixel < wide * tall; pixel++)
    for (let c = 0; c < 3; c++) {
      const value = full[3 * pixel + c]!
      const beside = (full[3 * (pixel - 1) + c] ?? value) + (full[3 * (pixel + 1) + c] ?? value) + (full[3 * (pixel - wide) + c] ?? value) + (full[3 * (pixel + wide) + c] ?? value) // prettier-ignore
      data[4 * pixel + c] = byteOf(value + strong * (value - beside / 4))
    }
  return decode(encode({ width: wide, height: tall, data }, Math.round(between(55, 92))).data, {
    useTArray: true,
  })
}
