/**
 * A tenth renderer of pictures, of what phones do to them: a sheet that was folded and still stands up along its folds,
 * a corner of it under the shadow of the hand that holds the phone, two kinds of light, a hand that shakes on a curve;
 * then the phone's own work: it takes the noise out of colours by smearing them, puts light and dark parts nearer to each
 * other (which draws a halo round whatever is large), sharpens until edges have a rim, bends the tones, and saves half of
 * the colour each way in a JPEG of few bytes. Things are layers that stand up from the table; what the eye sees is looked
 * up in them from the top down.
 */
import { SHEET_SIZES } from '../../../src-core/photo/sheet-sizes'
import type { SheetName } from '../../../src-core/photo/sheet-sizes'
import { encodeJpeg } from '../../../src-main/photo/codecs'
import { decodePicture } from '../../../src-main/photo/decode'
import { blurred, FIELD, HALL_FORMS, hallMotif } from './hall-motifs'

type Rgb = readonly [number, number, number]
type Roll = () => number
type Between = (least: number, most: number) => number

interface Hall {
  readonly name: string
  readonly sheet: SheetName
  readonly motif: { readonly petals: number; readonly overTips: number; readonly overValleys: number }
  readonly picture: { width: number; height: number; data: Uint8Array | Uint8ClampedArray }
  /** The file that the phone saves. */
  readonly file: Uint8Array
}

const YARNS: Rgb[] = [[0.42, 0.05, 0.07], [0.05, 0.12, 0.32], [0.08, 0.2, 0.1], [0.5, 0.3, 0.04], [0.3, 0.08, 0.28], [0.05, 0.05, 0.06], [0.1, 0.3, 0.34], [0.45, 0.18, 0.2], [0.2, 0.12, 0.07]] // prettier-ignore
const PALE: Rgb[] = [[0.8, 0.74, 0.6], [0.82, 0.8, 0.76], [0.78, 0.55, 0.55], [0.55, 0.7, 0.78], [0.8, 0.72, 0.35]] // prettier-ignore
const WHITES: Rgb[] = [
  [0.82, 0.82, 0.82],
  [0.84, 0.81, 0.74],
  [0.76, 0.79, 0.83],
]
const DARKS: Rgb[] = [
  [0.035, 0.035, 0.04],
  [0.03, 0.045, 0.09],
  [0.05, 0.03, 0.03],
]
const GROUNDS = ['tiles', 'rush', 'felt', 'speckled', 'runner'] as const

/** A chance by xorshift (Marsaglia 2003), three shifts of one word. */
function shifted(seed: number): Roll {
  let word = (seed ^ 0x2545f491) >>> 0 || 1
  const next = () => {
    word ^= word << 13
    word >>>= 0
    word ^= word >>> 17
    word ^= word << 5
    word >>>= 0
    return word / 4_294_967_296
  }
  for (let at = 0; at < 30; at++) next()
  return next
}

/** Values of chance on a grid, mixed in between: rough or smooth by `each` mm. */
function cloudy(roll: Roll, each: number): (x: number, y: number) => number {
  const grid = Float32Array.from({ length: 64 * 64 }, () => roll() - 0.5)
  return (x, y) => {
    const [u, v] = [x / each + 640, y / each + 640]
    const [i, j] = [Math.floor(u), Math.floor(v)]
    const [s, t] = [u - i, v - j]
    const at = (p: number, q: number) => grid[((j + q) & 63) * 64 + ((i + p) & 63)]!
    return (at(0, 0) * (1 - s) + at(1, 0) * s) * (1 - t) + (at(0, 1) * (1 - s) + at(1, 1) * s) * t
  }
}

/** The table: its tone at a place of it in mm. */
function groundOf(kind: (typeof GROUNDS)[number], roll: Roll, between: Between) {
  const [own, other] = [0, 1].map(() => between(0.08, 0.5)) as [number, number]
  const tint: Rgb = [1 + between(-0.15, 0.2), 1, 1 - between(-0.1, 0.25)]
  const [fine, coarse] = [cloudy(roll, 0.9), cloudy(roll, 14)]
  const [size, lean] = [between(45, 110), between(-0.4, 0.4)]
  const [c, s] = [Math.cos(lean), Math.sin(lean)]
  const [ox, oy] = [between(0, size), between(0, size)]
  const tone = (x: number, y: number): number => {
    const [u, v] = [x * c - y * s + ox, x * s + y * c + oy]
    switch (kind) {
      case 'tiles': {
        const [i, j] = [Math.floor(u / size), Math.floor(v / size)]
        const seam = Math.min(u - i * size, v - j * size, (i + 1) * size - u, (j + 1) * size - v)
        return seam < 1.2 ? 0.6 * own : own * (1 + 0.25 * coarse(x + 31 * i, y + 17 * j) + 0.06 * (((i * 7 + j * 3) % 5) - 2)) // prettier-ignore
      }
      case 'rush': {
        const [p, q] = [Math.sin(u * 1.1), Math.sin(v * 1.1)]
        return own * (0.75 + 0.3 * Math.abs(p * q) + 0.2 * Math.max(p, q) + 0.15 * fine(x, y))
      }
      case 'speckled':
        return own * (1 + 0.9 * Math.max(0, fine(x * 0.7, y * 0.7) - 0.12) * 3 + 0.1 * coarse(x, y))
      case 'runner':
        return (Math.floor(u / (size / 4)) & 1 ? own : other) * (1 + 0.16 * Math.sin(v * 5) * Math.sin(u * 5)) // prettier-ignore
      default:
        return own * (1 + 0.28 * fine(x, y) + 0.12 * coarse(x, y))
    }
  }
  return { tone, tint }
}

/** Fingers and a phone: how far outside their shadow a place is, in mm. */
function handOf(x0: number, y0: number, from: number, between: Between) {
  const rods = Array.from({ length: 4 }, (_, k) => {
    const angle = from + between(-0.25, 0.25)
    const side = (k - 1.5) * between(15, 22)
    const [x, y] = [x0 - side * Math.sin(from), y0 + side * Math.cos(from)]
    return { x, y, c: Math.cos(angle), s: Math.sin(angle), end: between(5, 75), wide: between(8, 12) }
  })
  return (px: number, py: number): number => {
    let least = Infinity
    for (const { x, y, c, s, end, wide } of rods) {
      const [u, v] = [Math.max(0, (px - x) * c + (py - y) * s - end), (py - y) * c - (px - x) * s]
      least = Math.min(least, Math.sqrt(u * u + v * v) - wide)
    }
    return least
  }
}

const smooth = (t: number): number => {
  const held = Math.min(1, Math.max(0, t))
  return held * held * (3 - 2 * held)
}

/** Draws picture `number`, its longer side `long` pixels. */
export async function hall(number: number, long = 1040): Promise<Hall> {
  const roll = shifted(Math.imul(number + 11, 0x9e3779b1))
  const between: Between = (least, most) => least + roll() * (most - least)
  const pick = <T>(list: readonly T[]): T => list[Math.floor(roll() * list.length)]!
  const form = HALL_FORMS[number % HALL_FORMS.length]!
  const petals = form === 'scallop' ? 6 + Math.floor(roll() * 19) : form === 'shell' || form === 'heart' ? 3 + Math.floor(roll() * 8) : 3 + Math.floor(roll() * 14) // prettier-ignore
  const sheet = pick(['A4', 'A4', 'Letter', 'A5'] as const)
  const size = SHEET_SIZES[sheet]
  const motif = hallMotif(form, petals, between(40, sheet === 'A5' ? 105 : 150), between)
  const isDark = roll() < 0.3
  const paper = pick(isDark ? DARKS : WHITES)
  const yarns = Array.from({ length: 3 }, () => pick(isDark ? PALE : YARNS))
  const kind = pick(GROUNDS)
  const ground = groundOf(kind, roll, between)
  const room = { x: Math.max(0, size.width / 2 - motif.half - 4), y: Math.max(0, size.height / 2 - motif.half - 4) } // prettier-ignore
  const at = { x: between(-room.x, room.x), y: between(-room.y, room.y) }

  // Folds right across the sheet, in half or in thirds; both sides of one lean on it like a roof.
  const folds = roll() < 0.7 ? pick([[0], [-1 / 6, 1 / 6], [-1 / 6]]).map((share) => share * 2 * between(0.97, 1.03)) : [] // prettier-ignore
  const isAcross = roll() < 0.7
  const [stands, slope, sunk] = [between(0.3, 1.6), between(12, 40), between(0.01, 0.05)]
  const lamp = between(0, 2 * Math.PI)
  const [lx, ly] = [Math.cos(lamp), Math.sin(lamp)]
  const lines = folds.map((share) => (share * (isAcross ? size.height : size.width)) / 2)
  const liftAt = (x: number, y: number) => {
    let sum = 0
    for (const line of lines) sum += stands * Math.exp(-Math.abs((isAcross ? y : x) - line) / slope)
    return sum
  }
  const foldLight = (x: number, y: number) => {
    let by = 1
    for (const line of lines) {
      const off = (isAcross ? y : x) - line
      const lean = -Math.sign(off) * (stands / slope) * Math.exp(-Math.abs(off) / slope)
      by = by * (1 - 1.3 * lean * (isAcross ? ly : lx)) * (1 - sunk * Math.exp(-((off / 0.35) ** 2)))
    }
    return by
  }

  // Two lights, and the hand over a corner of the sheet: it takes one of them away.
  const [bend, falls, share] = [between(-0.25, 0.25), between(0.0002, 0.0012), between(0.35, 0.65)]
  const [warm, cold]: Rgb[] = [
    [1.08, 1, between(0.75, 0.9)],
    [between(0.85, 0.95), 1, 1.1],
  ]
  const hasHand = roll() < 0.6
  const [sx, sy] = [roll() < 0.5 ? -1 : 1, roll() < 0.5 ? -1 : 1]
  const hand = handOf((sx * size.width) / 2, (sy * size.height) / 2, Math.atan2(-sy, -sx) + between(-0.4, 0.4), between) // prettier-ignore
  const [dark, soft] = [hasHand ? between(0.4, 0.9) : 0, between(5, 16)]
  const lightAt = (x: number, y: number, into: Float64Array) => {
    const gone = dark > 0 ? 1 - dark * smooth(0.5 - hand(x, y) / soft) : 1
    const [lit, sky] = [share * gone * (1 + falls * 1.4 * (x * lx + y * ly)), (1 - share) * (1 + 0.0012 * bend * (x * ly - y * lx))] // prettier-ignore
    for (let c = 0; c < 3; c++) into[c] = lit * warm![c]! + sky * cold![c]!
  }

  // The motif's own light: slopes of its heights to the lamp, and less in its hollows; its shadow lies on the paper.
  const { half, side, yarn, high } = motif
  const open = blurred(high, side, Math.round(0.8 * FIELD))
  const shadow = blurred(yarn, side, Math.round(between(0.4, 1.4) * FIELD))
  const cast = between(0.6, 2.4)
  const [speckles, patches] = [cloudy(roll, 0.7), cloudy(roll, 5)]
  const [flecked, varied] = [between(0.04, 0.16), roll() < 0.25 ? 0.6 : 0.06]
  const placeOf = (x: number, y: number): number => {
    const [i, j] = [Math.floor((x - at.x + half) * FIELD), Math.floor((y - at.y + half) * FIELD)]
    return i < 1 || j < 1 || i >= side - 1 || j >= side - 1 ? -1 : j * side + i
  }
  const mixedAt = (field: Float32Array, x: number, y: number): number => {
    const [u, v] = [(x - at.x + half) * FIELD - 0.5, (y - at.y + half) * FIELD - 0.5]
    const [i, j] = [Math.floor(u), Math.floor(v)]
    if (i < 0 || j < 0 || i >= side - 1 || j >= side - 1) return 0
    const [s, t, p] = [u - i, v - j, j * side + i]
    return (field[p]! * (1 - s) + field[p + 1]! * s) * (1 - t) + (field[p + side]! * (1 - s) + field[p + side + 1]! * s) * t // prettier-ignore
  }
  const yarnLight = (x: number, y: number): number => {
    const p = placeOf(x, y)
    if (p < 0) return 1
    const [dx, dy] = [(high[p + 1]! - high[p - 1]!) * FIELD * 0.5, (high[p + side]! - high[p - side]!) * FIELD * 0.5] // prettier-ignore
    const facing = (1 + 0.55 * -(dx * lx + dy * ly)) / Math.sqrt(1 + 0.6 * (dx * dx + dy * dy))
    return (
      Math.max(0.25, 0.35 + 0.65 * facing) * Math.min(1.1, Math.max(0.6, 1 + 0.35 * (high[p]! - open[p]!)))
    )
  }
  const light = new Float64Array(3)
  /** Adds what is seen at a place of the table, the motif found standing at (mx, my). */
  const look = (mx: number, my: number, x: number, y: number, into: Float32Array, place: number): void => {
    const cover = mixedAt(yarn, mx, my)
    lightAt(x, y, light)
    const onSheet = Math.abs(x) < size.width / 2 && Math.abs(y) < size.height / 2
    if (cover < 1) {
      const shade = 1 - 0.38 * mixedAt(shadow, x - cast * lx, y - cast * ly) - 0.12 * mixedAt(shadow, x, y)
      const by = (1 - cover) * (onSheet ? foldLight(x, y) : ground.tone(x, y)) * shade
      const tone = onSheet ? paper : ground.tint
      for (let c = 0; c < 3; c++) into[place + c]! += by * tone[c]! * light[c]!
    }
    if (cover > 0) {
      const own = yarns[motif.round(mx - at.x, my - at.y)]!
      const by = cover * yarnLight(mx, my) * (1 + flecked * 2 * speckles(mx, my) + varied * patches(mx, my))
      for (let c = 0; c < 3; c++) into[place + c]! += by * own[c]! * light[c]!
    }
  }

  // Where the eye is: over the middle, leant, turned, the picture upright or lying.
  const isTall = roll() < 0.6
  const [wide, tall] = isTall ? [Math.round(0.75 * long), long] : [long, Math.round(0.75 * long)]
  const [nod, sway] = [between(-0.45, 0.45), between(-0.35, 0.35)]
  const spin = between(-0.2, 0.2) + (isTall ? 0 : Math.PI / 2)
  const focal = between(0.72, 0.95) * long
  const [cn, sn, cs, ss, cp, sp] = [Math.cos(nod), Math.sin(nod), Math.cos(sway), Math.sin(sway), Math.cos(spin), Math.sin(spin)] // prettier-ignore
  // Rows of the turn: spin about the line of sight, then nod, then sway.
  const rightOf: Rgb = [cs * cp, cs * sp, ss]
  const downOf: Rgb = [-cn * sp + sn * ss * cp, cn * cp + sn * ss * sp, -sn * cs]
  const alongOf: Rgb = [sn * sp + cn * ss * cp, -sn * cp + cn * ss * sp, -cn * cs]
  const away = ((size.height * focal) / long) * between(1.28, 1.5) * (sheet === 'A5' ? 1.06 : 1)
  const eye = alongOf.map((each) => -away * each) as unknown as Rgb
  const [k1, k2] = [between(-0.05, 0.03), between(-0.01, 0.01)]
  const seen = new Float32Array(3 * wide * tall)
  for (let row = 0; row < tall; row++)
    for (let column = 0; column < wide; column++)
      for (let part = 0; part < 4; part++) {
        const [u0, v0] = [(column + 0.25 + 0.5 * (part & 1) - wide / 2) / focal, (row + 0.25 + 0.5 * (part >> 1) - tall / 2) / focal] // prettier-ignore
        const off = u0 * u0 + v0 * v0
        const bent = 1 + k1 * off + k2 * off * off
        const [u, v] = [u0 * bent, v0 * bent]
        const dx = alongOf[0] + u * rightOf[0] + v * downOf[0]
        const dy = alongOf[1] + u * rightOf[1] + v * downOf[1]
        const dz = alongOf[2] + u * rightOf[2] + v * downOf[2]
        const base = -eye[2] / dz
        const [bx, by] = [eye[0] + base * dx, eye[1] + base * dy]
        const lift = Math.abs(bx) < size.width / 2 + 3 && Math.abs(by) < size.height / 2 + 3 ? liftAt(bx, by) : 0 // prettier-ignore
        const up = (lift - eye[2]) / dz
        const [x, y] = [eye[0] + up * dx, eye[1] + up * dy]
        // The yarn stands on the sheet, as high as it is halfway up its side.
        const stand = (lift + 0.9 - eye[2]) / dz
        look(eye[0] + stand * dx, eye[1] + stand * dy, x, y, seen, 3 * (row * wide + column))
      }
  const taken = phoned(seen, wide, tall, roll, between)
  const quality = Math.round(between(35, 80))
  const file = await encodeJpeg(taken, quality)
  const { overTips, overValleys } = motif
  return {
    name: `${number} hall ${form} ${motif.petals} ${sheet} ${isDark ? 'dark' : 'white'} ${kind}${folds.length > 0 ? ' folded' : ''}${hasHand ? ' hand' : ''}`, // prettier-ignore
    sheet,
    motif: { petals: motif.petals, overTips, overValleys },
    picture: await decodePicture(file),
    file,
  }
}

/** The hand shakes, the lens blurs, the chip hisses; then the phone makes of it what it thinks people like. */
function phoned(seen: Float32Array, wide: number, tall: number, roll: Roll, between: Between) {
  const channel = (c: number) => Float32Array.from({ length: wide * tall }, (_, at) => seen[3 * at + c]! / 4)
  const [shake, way, curl] = [between(0, 2.2), between(0, 2 * Math.PI), between(-1.2, 1.2)]
  const [blur, gain, hiss] = [between(0.5, 1.1), between(0.85, 1.15), between(0.004, 0.016)]
  const at = (x: number, y: number) => Math.min(tall - 1, Math.max(0, y)) * wide + Math.min(wide - 1, Math.max(0, x)) // prettier-ignore
  // One kernel of the path of the shake with a bell at each of its places.
  const kernel = new Map<number, number>()
  for (let k = 0; k < 9; k++) {
    const t = k / 8 - 0.5
    const [mx, my] = [shake * t * Math.cos(way + curl * t), shake * t * Math.sin(way + curl * t)]
    for (let j = -4; j <= 4; j++)
      for (let i = -4; i <= 4; i++) {
        const weight = Math.exp(-((i - mx) ** 2 + (j - my) ** 2) / (2 * blur * blur))
        if (weight > 0.002) kernel.set(16 * (j + 8) + i + 8, (kernel.get(16 * (j + 8) + i + 8) ?? 0) + weight)
      }
  }
  const across = Int32Array.from(kernel.keys(), (key) => (key & 15) - 8)
  const down = Int32Array.from(kernel.keys(), (key) => (key >> 4) - 8)
  const weights = Float64Array.from(kernel.values())
  // Nearly every place has all of its neighbours within the picture.
  const steps = across.map((i, k) => down[k]! * wide + i)
  const reach = Math.max(...across.map(Math.abs), ...down.map(Math.abs))
  const total = weights.reduce((sum, weight) => sum + weight, 0)
  const raw = [0, 1, 2].map((c) => {
    const own = channel(c)
    return own.map((_, place) => {
      const [x, y] = [place % wide, Math.floor(place / wide)]
      let sum = 0
      if (x >= reach && y >= reach && x < wide - reach && y < tall - reach)
        for (let k = 0; k < weights.length; k++) sum += weights[k]! * own[place + steps[k]!]!
      else
        for (let k = 0; k < weights.length; k++) sum += weights[k]! * own[at(x + across[k]!, y + down[k]!)]!
      const value = (gain * sum) / total
      const bell = roll() + roll() + roll() + roll() - 2
      return Math.max(1e-4, value + bell * 1.7 * hiss * Math.sqrt(0.02 + value))
    })
  })
  // Brightness and what is left of each colour, which is smeared.
  const bright = raw[0]!.map((r, p) => 0.3 * r + 0.59 * raw[1]![p]! + 0.11 * raw[2]![p]!)
  const smear = 1 + Math.floor(roll() * 3)
  const chroma = raw.map((each) => blurred(each.map((value, p) => value - bright[p]!), wide, smear)) // prettier-ignore
  // What is large comes nearer to the middle tones, what is small keeps its contrast.
  const [strength, radius] = [between(0.1, 0.42), Math.round(between(0.03, 0.09) * wide)]
  const logs = bright.map((value) => Math.log(Math.max(0.004, value)))
  const large = blurred(logs, wide, radius)
  const [detail, middle] = [between(1, 1.18), Math.log(0.3)]
  const toned = logs.map((log, p) => Math.exp(log - strength * (large[p]! - middle) + (detail - 1) * (log - large[p]!))) // prettier-ignore
  const [rim, amount] = [1 + Math.floor(roll() * 2), between(0.4, 1.5)]
  const curve = (value: number) => {
    const held = Math.min(1, Math.max(0, value)) ** (1 / 2.2)
    return held + contrast * held * (1 - held) * (2 * held - 1)
  }
  const contrast = between(0.1, 0.7)
  const tones = toned.map(curve)
  const soft = blurred(tones, wide, rim)
  const vivid = between(1.05, 1.4)
  const data = new Uint8Array(4 * wide * tall).fill(255)
  for (let p = 0; p < wide * tall; p++) {
    const sharp = tones[p]! + amount * (tones[p]! - soft[p]!)
    const by = toned[p]! / bright[p]!
    for (let c = 0; c < 3; c++) {
      const own = curve(toned[p]! + vivid * by * chroma[c]![p]!)
      data[4 * p + c] = Math.round(255 * Math.min(1, Math.max(0, own + sharp - tones[p]!)))
    }
  }
  return { width: wide, height: tall, data }
}
