/**
 * An eleventh renderer of pictures, of places where people sit and crochet: a lawn under leaves, a café with lamps, a bed
 * by the window, a table in the evening. Motifs are laid stitch by stitch, cast shadows as wide as their lamp, and lie on
 * sheets that curl and were folded, or beside a card; the phone sees them by one colour at each place of its sensor.
 * Each ray from the eye goes down through the heights until it meets yarn, paper or table.
 */
import { SHEET_SIZES } from '../../../src-core/photo/sheet-sizes'
import type { SheetName } from '../../../src-core/photo/sheet-sizes'
import { encodeJpeg } from '../../../src-main/photo/codecs'
import { decodePicture } from '../../../src-main/photo/decode'
import { eased, groundOf, hills, ink, thingOf } from './garden-ground'
import type { GroundName, Thing } from './garden-ground'
import { Fall, handOver, lightOf, litBoard } from './garden-light'
import type { Light, Place } from './garden-light'
import { GARDEN_FORMS, gardenMotif } from './garden-motifs'
import { developed, phoneOf } from './garden-phone'
import { chance } from './garden-yarn'
import type { Chance, GardenYarn, Rgb } from './garden-yarn'

interface Taken {
  readonly name: string
  readonly sheet: SheetName
  readonly motif: { readonly petals: number; readonly overTips: number; readonly overValleys: number }
  readonly picture: { width: number; height: number; data: Uint8Array | Uint8ClampedArray }
  /** The file that the phone saves. */
  readonly file: Uint8Array
}

const STRONG = ['8c1d2f', '1f3f7a', '1e5a3a', 'c2571e', '5b2a6b', '2a2a30', '0f6b74', 'b3386b', '6b4423', 'd08a1c', '7a1f4a', '3d6b2a'].map(ink) // prettier-ignore
const PASTEL = ['e89ab0', '8fbfe0', '8fd0b0', 'e8c25a', 'c29ade', 'f0a37a'].map(ink)
const PALE = ['f4efe2', 'f2d9dd', 'd6e6f2', 'e6efd2', 'f0e0b0', 'e3d9f0', 'f5f5f5'].map(
  (code) => ink(code).map((part) => 0.8 * part) as unknown as Rgb,
)
const PAPERS = { white: ['f2f2ef', 'f6f4ee', 'eceff2'].map(ink), cream: ['f0e5c8', 'ece0cc'].map(ink), dark: ['23252b', '2a211e', '1b2a40', '3a1d2b', '1f3329', '151517'].map(ink) } as const // prettier-ignore
const PLACES: Record<Place, readonly GroundName[]> = {
  lawn: ['grass', 'grass', 'planks', 'gingham', 'stone', 'tiles'],
  café: ['veneer', 'stone', 'planks', 'tiles', 'veneer'],
  bed: ['quilt', 'quilt', 'knit', 'stripes', 'print'],
  evening: ['veneer', 'linen', 'print', 'gingham', 'planks', 'stripes'],
}

function yarnOf(own: Chance, shades: readonly Rgb[]): GardenYarn {
  const { between, roll, pick } = own
  const [one, two, three] = [pick(shades), pick(shades), pick(shades)]
  const kind = roll()
  const inks: readonly [Rgb, Rgb, Rgb] = kind < 0.36 ? [one, one, one] : kind < 0.55 ? [two, one, one] : kind < 0.68 ? [one, one, two] : [two, one, three] // prettier-ignore
  return {
    inks,
    passes: kind > 0.88 ? between(250, 900) : null,
    heather: roll() < 0.3 ? between(0.08, 0.35) : 0.02,
    other: pick(shades),
    plies: pick([2, 3, 4]),
    hairs: roll() < 0.15 ? between(5, 9) : between(0.6, 3),
  }
}

/** How high a sheet stands at each mm, and what its slopes have of both lamps. */
function sheetOf(own: Chance, width: number, height: number, isCard: boolean, { lamps }: Light) {
  const { between, roll } = own
  const [columns, rows] = [Math.ceil(width) + 3, Math.ceil(height) + 3]
  const [high, all] = [new Float32Array(columns * rows), new Float32Array(3 * columns * rows)]
  const hill = hills(own)
  const corners = [[-1, -1], [1, -1], [1, 1], [-1, 1]].map(([x, y]) => [x! * width / 2, y! * height / 2, roll() < 0.35 ? between(1, 6) : 0, between(35, 70)] as const) // prettier-ignore
  const folds = [roll() < 0.25, roll() < 0.25].map((is) => (is ? between(0.3, 1) : 0))
  const [crumple, sharp] = [roll() < 0.2 ? between(0.2, 0.5) : 0.06, between(4, 12)]
  for (let row = 0, at = 0; row < rows && !isCard; row++)
    for (let column = 0; column < columns; column++, at++) {
      const [x, y] = [column - 1 - width / 2, row - 1 - height / 2]
      let z = crumple * (hill(x / 24, y / 24) + 1)
      for (const [cx, cy, lift, far] of corners)
        z += lift * Math.max(0, 1 - Math.hypot(x - cx, y - cy) / far) ** 2
      z += folds[0]! * Math.exp(-Math.abs(x) / sharp) + folds[1]! * Math.exp(-Math.abs(y) / sharp)
      high[at] = z
    }
  lamps.forEach(({ to }, l) => {
    for (let at = 0; at < high.length; at++) {
      const [sx, sy] = [(high[at + 1] ?? 0) - high[at]!, (high[at + columns] ?? 0) - high[at]!]
      const isEdge = at % columns === columns - 1 || at >= high.length - columns
      const lean = isEdge ? to[2] : Math.max(0.1, (to[2] - sx * to[0] - sy * to[1]) / Math.hypot(1, sx, sy))
      all[3 * at] = high[at]!
      all[3 * at + 1 + l] = lean / to[2]
    }
  })
  return (x: number, y: number, into: Float32Array) => {
    const u = Math.min(columns - 1.01, Math.max(0, x + width / 2 + 1))
    const v = Math.min(rows - 1.01, Math.max(0, y + height / 2 + 1))
    const at = 3 * (Math.floor(v) * columns + Math.floor(u))
    const s = u % 1
    const t = v % 1
    for (let k = 0; k < 3; k++) {
      const upper = all[at + k]! * (1 - s) + all[at + 3 + k]! * s
      const lower = all[at + 3 * columns + k]! * (1 - s) + all[at + 3 * columns + 3 + k]! * s
      into[k] = upper * (1 - t) + lower * t
    }
  }
}

/** How much of a line a pixel sees. */
const seen = (off: number, wide: number, foot: number): number =>
  Math.max(0, Math.min(1, (0.5 * (wide + foot) - off) / foot)) * Math.min(1, wide / foot)

/** What is printed on a sheet, as how much of its light is left; or the face of a bank card. */
function printOf(own: Chance, isCard: boolean, isDark: boolean, width: number, height: number) {
  const { between, roll, pick } = own
  const hill = hills(own)
  if (isCard) {
    const [one, two] = [pick(['1d3f8f', '8f1d3a', '1f6f5b', '2a2a2e', 'd0d3d8', 'c98a1f'].map(ink)), pick(['3f7fd0', 'c23a5a', '5bb08f', '6a6a72', 'eef0f2', 'e8c25a'].map(ink))] // prettier-ignore
    return (x: number, y: number, _foot: number, into: Float32Array) => {
      const share = eased(-60, 60, x + y + 12 * Math.sin(x / 14))
      for (let c = 0; c < 3; c++) into[c] = one[c]! + share * (two[c]! - one[c]!)
      const isChip = Math.abs(y + 22) < 6 && Math.abs(x - 3) < 4.6
      const isText = (Math.abs(x + 8) < 2 && Math.abs(y) < 34 && (y + 200) % 4.2 < 2.6 && (y + 200) % 17 < 13) || (Math.abs(x + 17) < 1.2 && y < 0 && y > -34 && (y + 100) % 2.4 < 1.7) // prettier-ignore
      if (isChip) into.set([0.6, 0.48, 0.22])
      else if (isText) for (let c = 0; c < 3; c++) into[c] = 0.75 * into[c]! + 0.2
    }
  }
  const paper = pick(isDark ? PAPERS.dark : roll() < 0.75 ? PAPERS.white : PAPERS.cream)
  const kind = isDark ? 'plain' : pick(['plain', 'plain', 'plain', 'ruled', 'squared', 'dotted'] as const)
  const [each, thin, dark] = [kind === 'ruled' ? between(7, 9) : 5, between(0.15, 0.3), between(0.25, 0.6)]
  const [rule, margin] = [pick(['6f8fb0', '8a8a8a', '7fa0a8'].map(ink)), between(18, 30)]
  return (x: number, y: number, foot: number, into: Float32Array) => {
    const grain = 1 + 0.02 * hill(x * 1.1, y * 1.1) + 0.015 * hill(x / 30, y / 30)
    for (let c = 0; c < 3; c++) into[c] = paper[c]! * grain
    if (kind === 'plain') return
    const u = Math.abs(((x + 1000) % each) - each / 2)
    const v = Math.abs(((y + 1000) % each) - each / 2)
    let line = kind === 'dotted' ? seen(Math.hypot(u, v), 2.5 * thin, foot) : seen(v, thin, foot)
    if (kind === 'squared') line = Math.max(line, seen(u, thin, foot))
    if (y > height / 2 - 12 && kind === 'ruled') line = 0
    for (let c = 0; c < 3; c++) into[c]! *= 1 - dark * line * (1 - rule[c]!)
    const red = kind === 'ruled' ? seen(Math.abs(x + width / 2 - margin), 0.3, foot) : 0
    into[1]! *= 1 - 0.5 * red
    into[2]! *= 1 - 0.45 * red
  }
}

/** Where the eye is and what it sees: the points that must be in the picture fill so much of it. */
function cameraOf(own: Chance, points: readonly (readonly [number, number])[], isLong: boolean) {
  const { between, roll, bell } = own
  const long = Math.round(between(800, 1150)) * 2
  const short = Math.round(0.5 * long * (roll() < 0.85 ? 0.75 : roll() < 0.5 ? 0.5625 : 0.6667)) * 2
  const isUpright = roll() < 0.7
  const [wide, tall] = isUpright ? [short, long] : [long, short]
  const yaw =
    (isLong === isUpright ? 0 : 1.571) + (roll() < 0.12 ? 0.35 : 0.09) * bell() + (roll() < 0.5 ? 3.1416 : 0)
  const tilt = roll() < 0.75 ? between(0, 0.33) : between(0.33, 0.61)
  const focal = long * (roll() < 0.7 ? between(0.7, 0.8) : between(1.2, 1.6))
  const aside = yaw - 1.571 + (roll() < 0.8 ? 0.5 * bell() : between(0, 6.28))
  const fill = between(0.8, 0.95)
  const away = [Math.cos(aside) * Math.sin(tilt), Math.sin(aside) * Math.sin(tilt), Math.cos(tilt)] as const
  const dot = (a: readonly number[], b: readonly number[]) => a[0]! * b[0]! + a[1]! * b[1]! + a[2]! * b[2]!
  const ahead = away.map((part) => -part) as [number, number, number]
  const flat = [Math.cos(yaw), Math.sin(yaw), 0]
  const along = flat.map((part, c) => part - dot(flat, ahead) * ahead[c]!)
  const right = along.map((part) => part / Math.hypot(...along)) as [number, number, number]
  const down = [0, 1, 2].map((c) => ahead[(c + 1) % 3]! * right[(c + 2) % 3]! - ahead[(c + 2) % 3]! * right[(c + 1) % 3]!) as [number, number, number] // prettier-ignore
  const target: [number, number] = [0, 0]
  let far = 500
  for (let round = 0; round < 40; round++) {
    const eye = [target[0] + far * away[0], target[1] + far * away[1], far * away[2]] as const
    const seen = points.map(([x, y]) => {
      const to = [x - eye[0], y - eye[1], -eye[2]]
      return [(focal * dot(to, right)) / dot(to, ahead), (focal * dot(to, down)) / dot(to, ahead)] as const
    })
    const [xs, ys] = [seen.map(([x]) => x), seen.map(([, y]) => y)]
    const [left, most, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
    const [mx, my] = [(0.5 * (left + most) * far) / focal, (0.5 * (top + bottom) * far) / focal]
    target[0] += mx * right[0] + my * down[0]
    target[1] += mx * right[1] + my * down[1]
    far *= Math.max((most - left) / wide, (bottom - top) / tall) / fill
  }
  const spare = (1 - fill) * 0.3 * Math.min(wide, tall)
  const eye = [target[0] + far * away[0], target[1] + far * away[1], far * away[2]] as const
  const middle = [wide / 2 + spare * between(-0.8, 0.8), tall / 2 + spare * between(-0.8, 0.8)] as const
  return { wide, tall, focal, eye, ahead, right, down, tilt, middle, per: focal / far, bow: between(-0.02, 0.02), dim: between(0.1, 0.4) } // prettier-ignore
}

/** The picture of this number, and what is true of its motif. */
export async function garden(number: number): Promise<Taken> {
  const own = chance(number * 7919 + 104_729)
  const { between, roll, pick, bell } = own
  const sheet = pick(['A4', 'A4', 'Letter', 'A5', 'A5', 'card'] as const)
  const [isCard, { width, height }] = [sheet === 'card', SHEET_SIZES[sheet]]
  const form = GARDEN_FORMS[(number * 7 + Math.floor(number / 24)) % GARDEN_FORMS.length]!
  const petals = roll() < 0.35 ? pick([5, 6, 6, 8, 8, 12]) : 3 + Math.floor(22 * roll())
  const most = isCard ? 120 : Math.min(150, width - 26)
  const least = Math.min(most, Math.max(40, 4 * petals))
  const across = least + (most - least) * roll() ** 0.8
  const place = pick(['lawn', 'lawn', 'café', 'bed', 'evening'] as const)
  const isDark = roll() < 0.4
  const name = isCard
    ? pick(['veneer', 'linen', isDark ? 'quilt' : 'stone', 'veneer'] as const)
    : pick(PLACES[place])
  const ground = groundOf(name, isCard ? !isDark : isDark ? roll() < 0.8 : roll() < 0.12, own)
  const light = lightOf(place, own)
  const shades = isDark
    ? roll() < 0.75
      ? PALE
      : [...PASTEL, ...PALE]
    : roll() < 0.8
      ? STRONG
      : [...STRONG, ...PASTEL]
  const yarn = yarnOf(own, shades)

  const reach = across / 2 + 6
  const at: [number, number] = isCard
    ? [(roll() < 0.5 ? 1 : -1) * (width / 2 + reach + between(6, 20)), 8 * bell()]
    : [0.3 * bell() * Math.max(0, width / 2 - reach), 0.3 * bell() * Math.max(0, height / 2 - reach)]
  const card = [[-1, -1], [1, -1], [1, 1], [-1, 1]] as const // prettier-ignore
  const points = card.map(([x, y]) => [(x * width) / 2, (y * height) / 2] as const)
  if (isCard) points.push(...card.map(([x, y]) => [at[0] + x * reach, at[1] + y * reach] as const))
  const camera = cameraOf(own, points, !isCard)
  const per = Math.min(8.5, Math.max(5.5, 1.5 * camera.per))
  const motif = gardenMotif(form, petals, across, yarn, per, own)
  const { board } = motif
  const lit = litBoard(board, light, own)
  const hasHand = roll() < 0.3
  const fall = new Fall(light, hasHand ? handOver(own, width, height) : () => 0)
  const [sheetAt, print] = [
    sheetOf(own, width, height, isCard, light),
    printOf(own, isCard, isDark, width, height),
  ]
  const things = thingsOf(own, points, isCard ? [...at, reach] : null, yarn.inks[1])

  const { wide, tall, focal, eye, ahead, right, down, middle, bow, dim } = camera
  const planes = [0, 1, 2].map(() => new Float32Array(wide * tall)) as [
    Float32Array,
    Float32Array,
    Float32Array,
  ]
  const [colour, below, here, fell] = [new Float32Array(3), new Float32Array(3), new Float32Array(3), new Float32Array(3)] // prettier-ignore
  const [one, two] = light.lamps
  const top = board.high.reduce((high, z) => Math.max(high, z), 0)
  const [round, thick] = isCard ? [3.18, 0.8] : [0, 0.15]
  const long = Math.hypot(wide, tall) / 2
  /** How far inside the sheet. */
  const within = (x: number, y: number): number => {
    const u = Math.abs(x) - width / 2 + round
    const v = Math.abs(y) - height / 2 + round
    return u > 0 && v > 0 ? round - Math.hypot(u, v) : round - Math.max(u, v)
  }
  const table = (x: number, y: number) => {
    ground(x, y, colour)
    for (const thing of things) {
      if (Math.abs(x - thing.x) > thing.reach + 40 || Math.abs(y - thing.y) > thing.reach + 40) continue
      const inside = thing.inside(x, y)
      if (inside > 0) thing.paint(x, y, colour)
      else {
        const low = Math.min(12, thing.high) / Math.max(0.6, one.to[2])
        const dark =
          0.5 * eased(-0.5 * low - 1, 1, thing.inside(x + 0.5 * low * one.to[0], y + 0.5 * low * one.to[1]))
        for (let c = 0; c < 3; c++) colour[c]! *= 1 - dark
      }
    }
  }
  const pixel = (column: number, row: number, write: number) => {
    const px = (column - middle[0]!) / long
    const py = (row - middle[1]!) / long
    const r2 = px * px + py * py
    const lens = ((1 + bow * r2 * (1 - 0.6 * r2)) * long) / focal
    const u = px * lens
    const v = py * lens
    const dz = ahead[2] + u * right[2] + v * down[2]
    const slopeX = (ahead[0] + u * right[0] + v * down[0]) / dz
    const slopeY = (ahead[1] + u * right[1] + v * down[1]) / dz
    const x0 = eye[0] - slopeX * eye[2]
    const y0 = eye[1] - slopeY * eye[2]
    const foot = -eye[2] / dz / focal
    let x = x0
    let y = y0
    let cover = 0
    const near = within(x, y)
    if (near > -8) {
      sheetAt(x, y, here)
      x = x0 + slopeX * (here[0]! + thick)
      y = y0 + slopeY * (here[0]! + thick)
      cover = Math.min(1, Math.max(0, 0.5 + within(x, y) / foot))
    }
    let a = 1
    let b = 1
    let sky = 1
    if (cover < 1) {
      table(x0, y0)
      if (cover > 0) below.set(colour)
      else if (near > -14) {
        const lift = 0.6 + thick + (near > -8 ? here[0]! : 0)
        sky = 1 - 0.3 * eased(-2.5 * lift, 1, near)
        a = 1 - 0.85 * eased(-0.7, 0.7, within(x0 + (lift * one.to[0]) / one.to[2], y0 + (lift * one.to[1]) / one.to[2])) // prettier-ignore
        b = 1 - 0.85 * eased(-0.7, 0.7, within(x0 + (lift * two.to[0]) / two.to[2], y0 + (lift * two.to[1]) / two.to[2])) // prettier-ignore
      }
    }
    if (cover > 0) {
      print(x, y, foot, colour)
      if (cover < 1) for (let c = 0; c < 3; c++) colour[c] = below[c]! + cover * (colour[c]! - below[c]!)
      a = isCard ? 1 : here[1]!
      b = isCard ? 1 : here[2]!
    }
    fall.at(x, y, fell)
    const bx = x - at[0]
    const by = y - at[1]
    const fade = 1 - dim * r2
    if (Math.abs(bx) > board.half - 1 || Math.abs(by) > board.half - 1) {
      for (let c = 0; c < 3; c++)
        planes[c]![write] = fade * colour[c]! * (one.colour[c]! * fell[0]! * a + two.colour[c]! * fell[1]! * b + light.sky[c]! * fell[2]! * sky) // prettier-ignore
      return
    }
    const steps = Math.min(20, Math.max(1, Math.ceil(top * Math.hypot(slopeX, slopeY) * board.per)))
    for (let c = 0; c < 3; c++) planes[c]![write] = 0
    for (let sample = 0; sample < 3; sample++) {
      const fromX = bx + board.half + 0.33 * foot * (sample - 1)
      const fromY = by + board.half + 0.33 * foot * (((2 * sample) % 3) - 1)
      let cell = 0
      let isYarn = false
      let above = top
      for (let step = 0; step <= steps && !isYarn; step++) {
        const z = top * (1 - step / steps)
        const i = Math.min(board.side - 1, Math.max(0, Math.floor((fromX + slopeX * z) * board.per)))
        const j = Math.min(board.side - 1, Math.max(0, Math.floor((fromY + slopeY * z) * board.per)))
        cell = j * board.side + i
        isYarn = board.high[cell]! >= z && board.low[cell]! <= above
        above = z
      }
      // What lies under lifted yarn is in its shadow.
      const under = !isYarn && board.high[cell]! >= 0
      const hair = under ? 0 : board.hair[cell]!
      const la = under ? 0.1 * fell[0]! : lit[3 * cell]! * fell[0]! * (isYarn ? 1 : a)
      const lb = under ? 0.1 * fell[1]! : lit[3 * cell + 1]! * fell[1]! * (isYarn ? 1 : b)
      const ls = under ? 0.45 * fell[2]! : lit[3 * cell + 2]! * fell[2]! * sky
      for (let c = 0; c < 3; c++) {
        const shine = one.colour[c]! * la + two.colour[c]! * lb + light.sky[c]! * ls
        const bare = (isYarn ? board.tint[3 * cell + c]! : colour[c]!) * shine
        const fibre = hair > 0 ? board.tint[3 * cell + c]! * (0.5 * shine + 0.5 * (one.colour[c]! * fell[0]! + light.sky[c]!)) : 0 // prettier-ignore
        planes[c]![write]! += (fade / 3) * (bare + hair * 0.8 * (fibre - bare))
      }
    }
  }
  for (let row = 0, write = 0; row < tall; row++) for (let column = 0; column < wide; column++, write++) pixel(column + 0.5, row + 0.5, write) // prettier-ignore

  exposed(planes, between(0.85, 1.15))
  const taken = developed(planes, wide, tall, phoneOf(own, place === 'evening' || place === 'café'), own)
  const file = await encodeJpeg(taken, Math.round(between(70, 93)))
  return {
    name: `${number} garden ${form} ${motif.petals} ${sheet} ${isDark ? 'dark' : 'white'} ${place} ${light.name} ${name}${hasHand ? ' hand' : ''} ${Math.round((camera.tilt * 180) / Math.PI)}°`, // prettier-ignore
    sheet,
    motif: { petals: motif.petals, overTips: motif.overTips, overValleys: motif.overValleys },
    picture: await decodePicture(file),
    file,
  }
}

/** As much light as the phone lets in: middling on the whole, and hardly anything burnt out. */
function exposed(planes: readonly Float32Array[], by: number): void {
  const green = planes[1]!
  const few = Array.from({ length: 4000 }, (_, i) => green[Math.floor((i * green.length) / 4000)]!).sort((a, b) => a - b) // prettier-ignore
  const mean = few.reduce((sum, each) => sum + each, 0) / few.length
  const gain = by * Math.min(0.27 / mean, 0.75 / few[3880]!, 0.95 / few[3992]!)
  // White is what shines on average, by half.
  const light = planes.map((plane) =>
    few.reduce((sum, _, i) => sum + plane[Math.floor((i * plane.length) / 4000)]!, 0),
  )
  planes.forEach((plane, c) => {
    const balance = gain * (light[1]! / light[c]!) ** 0.5
    for (let at = 0; at < plane.length; at++) plane[at]! *= balance
  })
}

/** What lies about, off the sheet and the motif. */
function thingsOf(
  own: Chance,
  points: readonly (readonly [number, number])[],
  motif: readonly number[] | null,
  yarn: Rgb,
): Thing[] {
  // prettier-ignore
  const things: Thing[] = []
  const [right, low] = [Math.max(...points.map(([x]) => x)), Math.max(...points.map(([, y]) => y))]
  const left = Math.min(...points.map(([x]) => x))
  const count = own.roll() < 0.5 ? 0 : Math.ceil(3 * own.roll())
  for (let k = 0; k < count; k++) {
    const thing = thingOf(0, 0, yarn, own)
    const away = thing.reach + own.between(3, 25)
    const [x, y] = own.roll() < 0.5 ? [own.roll() < 0.5 ? right + away : left - away, own.between(-low, low)] : [own.between(left, right), (own.roll() < 0.5 ? 1 : -1) * (low + away)] // prettier-ignore
    if (motif && Math.hypot(x - motif[0]!, y - motif[1]!) < motif[2]! + thing.reach + 12) continue
    things.push({ ...thing, x, y, inside: (px, py) => thing.inside(px - x, py - y), paint: (px, py, into) => thing.paint(px - x, py - y, into) }) // prettier-ignore
  }
  return things
}
