/**
 * What the phone of the garden makes of light: a lens that blurs, a hand that shakes, a sensor with one colour at each
 * place and noise, colours guessed between (after Malvar, He and Cutler 2004), noise taken out, tones bent, edges
 * sharpened.
 */
import type { Chance } from './garden-yarn'

export interface Phone {
  readonly blur: number
  /** So many pixels of a shake, and its way. */
  readonly shake: readonly [number, number]
  /** Electrons that a place holds when it is full, and noise of reading. */
  readonly well: number
  readonly read: number
  readonly smear: number
  readonly sharp: number
  readonly contrast: number
  readonly colour: number
  readonly cast: readonly [number, number, number]
}

export const phoneOf = ({ between, roll, bell }: Chance, dim: boolean): Phone => ({
  blur: between(0.45, 0.95) + (roll() < 0.12 ? between(0.3, 0.7) : 0),
  shake: [roll() < 0.2 ? between(1, 3) : 0, between(0, 3.14)],
  well: dim ? between(700, 2200) : between(2000, 9000),
  read: dim ? between(0.002, 0.005) : between(0.0008, 0.002),
  smear: between(0.3, 1),
  sharp: between(0.35, 1.1),
  contrast: between(0.05, 0.45),
  colour: between(1, 1.25),
  cast: [1 + 0.03 * bell(), 1, 1 + 0.035 * bell()],
})

function along(read: Float32Array, bell: readonly number[], step: number): Float32Array {
  const write = read.slice()
  const edge = (bell.length - 1) * step
  for (let at = edge; at < read.length - edge; at++) {
    let value = bell[0]! * read[at]!
    for (let k = 1, off = step; k < bell.length; k++, off += step)
      value += bell[k]! * (read[at - off]! + read[at + off]!)
    write[at] = value
  }
  return write
}

/** A bell of so many pixels, along rows and along columns. */
function softened(from: Float32Array, wide: number, by: number): Float32Array {
  const bell = Array.from({ length: Math.ceil(2.4 * by) + 1 }, (_, k) => Math.exp((-k * k) / (2 * by * by)))
  const sum = bell.reduce((all, each, k) => all + (k ? 2 : 1) * each, 0)
  const even = bell.map((each) => each / sum)
  return along(along(from, even, 1), even, wide)
}

/** A plane of one colour under a shake. */
function shaken(from: Float32Array, wide: number, [long, way]: readonly [number, number]): Float32Array {
  if (long === 0) return from
  const steps = [-1, -0.5, 0, 0.5, 1].map((t) => Math.round(0.5 * long * t * Math.cos(way)) + wide * Math.round(0.5 * long * t * Math.sin(way))) // prettier-ignore
  const to = from.slice()
  const edge = 4 * wide
  for (let at = edge; at < from.length - edge; at++) {
    let sum = 0
    for (const step of steps) sum += from[at + step]!
    to[at] = sum / steps.length
  }
  return to
}

/** Noise of light and of the sensor, over places of one colour each: red and blue in every second row and column. */
function sensed(
  planes: readonly Float32Array[],
  wide: number,
  tall: number,
  phone: Phone,
  own: Chance,
): Float32Array {
  const raw = new Float32Array(wide * tall)
  const bells = Float32Array.from({ length: 65536 }, () => own.bell())
  for (let row = 0; row < tall; row++) {
    let from = Math.floor(own.roll() * 65536)
    for (let column = 0; column < wide; column++) {
      const at = row * wide + column
      const c = row & 1 ? (column & 1 ? 2 : 1) : column & 1 ? 1 : 0
      const light = Math.max(0, planes[c]![at]!)
      from = (from + 1) & 65535
      raw[at] = light + bells[from]! * Math.sqrt(light / phone.well + phone.read * phone.read)
    }
  }
  return raw
}

/** The two colours that are missing at each place, from eight and more around it. */
function guessed(raw: Float32Array, wide: number, tall: number): Float32Array[] {
  const [red, green, blue] = [raw.slice(), raw.slice(), raw.slice()]
  for (let row = 2; row < tall - 2; row++)
    for (let column = 2; column < wide - 2; column++) {
      const at = row * wide + column
      const own = raw[at]!
      const beside = raw[at - 1]! + raw[at + 1]!
      const above = raw[at - wide]! + raw[at + wide]!
      const far = raw[at - 2]! + raw[at + 2]!
      const farther = raw[at - 2 * wide]! + raw[at + 2 * wide]!
      const slant = raw[at - wide - 1]! + raw[at - wide + 1]! + raw[at + wide - 1]! + raw[at + wide + 1]!
      if ((row & 1) === (column & 1)) {
        green[at] = (4 * own + 2 * (beside + above) - far - farther) / 8
        const other = (6 * own + 2 * slant - 1.5 * (far + farther)) / 8
        if (row & 1) red[at] = other
        else blue[at] = other
      } else {
        const flat = (5 * own + 4 * beside - slant - far + 0.5 * farther) / 8
        const steep = (5 * own + 4 * above - slant - farther + 0.5 * far) / 8
        red[at] = row & 1 ? steep : flat
        blue[at] = row & 1 ? flat : steep
      }
    }
  for (const plane of [red, green, blue]) {
    for (let row = 0; row < tall; row++)
      for (const [to, from] of [[0, 2], [1, 2], [wide - 1, wide - 3], [wide - 2, wide - 3]] as const) plane[row * wide + to] = plane[row * wide + from]! // prettier-ignore
    for (const [to, from] of [[0, 2], [1, 2], [tall - 1, tall - 3], [tall - 2, tall - 3]] as const) plane.copyWithin(to * wide, from * wide, (from + 1) * wide) // prettier-ignore
  }
  return [red, green, blue]
}

/** Means of (2 near + 1) along lines: `count` numbers of each, `step` apart. */
function averaged(
  read: Float32Array,
  lines: number,
  line: number,
  count: number,
  step: number,
  near: number,
): Float32Array {
  // prettier-ignore
  const write = new Float32Array(read.length)
  for (let i = 0; i < lines; i++) {
    const first = i * line
    const last = first + (count - 1) * step
    let sum = (near + 1) * read[first]!
    for (let k = 1; k <= near; k++) sum += read[first + k * step]!
    for (let k = 0, at = first; k < count; k++, at += step) {
      write[at] = sum / (2 * near + 1)
      sum += read[Math.min(last, at + (near + 1) * step)]! - read[Math.max(first, at - near * step)]!
    }
  }
  return write
}
const evened = (from: Float32Array, wide: number, tall: number, near: number): Float32Array =>
  averaged(averaged(from, tall, wide, wide, 1, near), wide, 1, tall, wide, near)

const bent = (curve: Float32Array, value: number): number =>
  curve[Math.min(4096, Math.max(0, Math.round(value * 2048)))]!

/** From amounts of light to what a file keeps. */
export function developed(
  light: readonly Float32Array[],
  wide: number,
  tall: number,
  phone: Phone,
  own: Chance,
): { width: number; height: number; data: Uint8ClampedArray } {
  const seen = light.map((plane) => shaken(softened(plane, wide, phone.blur), wide, phone.shake))
  const [red, green, blue] = guessed(sensed(seen, wide, tall, phone, own), wide, tall) as [Float32Array, Float32Array, Float32Array] // prettier-ignore
  // Tones are bent before noise is taken out: it is told by what the eye sees.
  const curve = new Float32Array(4097)
  for (let i = 0; i <= 4096; i++) {
    const kept = 1 - Math.exp(-1.9 * (i / 2048) - 0.9 * (i / 2048) ** 2)
    const eye = kept <= 0.0031308 ? 12.92 * kept : 1.055 * kept ** (1 / 2.4) - 0.055
    curve[i] = eye + phone.contrast * eye * (1 - eye) * (eye - 0.45)
  }
  const [luma, warm, cold] = [red, green, blue]
  for (let at = 0; at < green.length; at++) {
    const r = bent(curve, red[at]! * phone.cast[0])
    const g = bent(curve, green[at]!)
    const b = bent(curve, blue[at]! * phone.cast[2])
    const y = 0.299 * r + 0.587 * g + 0.114 * b
    luma[at] = y
    warm[at] = (r - y) * phone.colour
    cold[at] = (b - y) * phone.colour
  }
  const near = Math.round(1 + 2 * phone.smear)
  const [tint, shade] = [evened(warm, wide, tall, near), evened(cold, wide, tall, near)]
  // Light is evened among neighbours that are like it.
  const like = 0.9 / (0.012 + 1.1 / Math.sqrt(phone.well)) ** 2
  const calm = luma.slice()
  const steps = Int32Array.of(-wide - 1, -wide, -wide + 1, -1, 1, wide - 1, wide, wide + 1)
  for (let at = wide + 1; at < luma.length - wide - 1; at++) {
    const here = luma[at]!
    let sum = here
    let weight = 1
    for (let k = 0; k < 8; k++) {
      const off = luma[at + steps[k]!]! - here
      const share = phone.smear / (1 + like * off * off)
      sum += share * (here + off)
      weight += share
    }
    calm[at] = sum / weight
  }
  const around = softened(calm, wide, 1.3)
  const data = new Uint8ClampedArray(4 * wide * tall)
  for (let at = 0; at < calm.length; at++) {
    const edge = Math.min(0.12, Math.max(-0.12, calm[at]! - around[at]!))
    const y = calm[at]! + phone.sharp * edge
    const r = y + tint[at]!
    const b = y + shade[at]!
    data[4 * at] = 255 * r
    data[4 * at + 1] = (255 * (y - 0.299 * r - 0.114 * b)) / 0.587
    data[4 * at + 2] = 255 * b
    data[4 * at + 3] = 255
  }
  return { width: wide, height: tall, data }
}
