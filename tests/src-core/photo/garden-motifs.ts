/**
 * Motifs of the garden: every stitch is laid as strands of plied yarn, a post of two that cross and a loop over it, row
 * upon row between two curves, higher ones over lower ones. What a ruler says is read off the yarn that came of it.
 */

import { Board } from './garden-yarn'
import type { Chance, GardenYarn } from './garden-yarn'

type Curve = (u: number) => readonly [number, number]

/** Two dozen, as often as each is met. */
export const GARDEN_FORMS = [
  'rounded', 'pointed', 'shell', 'daisy', 'picot', 'rounded', 'square', 'layered', 'scallop', 'pointed', 'heart', 'round',
  'shell', 'rounded', 'daisy', 'picot', 'hexagon', 'leaf', 'rounded', 'picot', 'odd', 'layered', 'shell', 'leaf',
] as const // prettier-ignore
export type GardenForm = (typeof GARDEN_FORMS)[number]

/** Least and most of: dip to tip, how far petals open from each other, how full they stay to the end, and width at most. */
const HABITS = {
  rounded: [0.42, 0.62, 0.06, 0.16, 2.6, 4.5, 0.5],
  layered: [0.52, 0.64, 0.06, 0.14, 2.6, 4, 0.5],
  heart: [0.42, 0.54, 0.1, 0.18, 3, 4.5, 0.52],
  pointed: [0.36, 0.58, 0.04, 0.12, 1.5, 2.6, 0.42],
  leaf: [0.3, 0.45, 0.08, 0.2, 1.7, 2.6, 0.3],
  shell: [0.52, 0.7, 0.06, 0.14, 2.2, 3.6, 0.72],
  picot: [0.55, 0.74, 0.06, 0.14, 2, 3.2, 0.6],
  scallop: [0.7, 0.82, 0.05, 0.12, 1.9, 2.8, 0.7],
  daisy: [0.24, 0.42, 0.12, 0.26, 4, 7, 0.17],
} as const

export interface GardenMotif {
  readonly form: GardenForm
  readonly petals: number
  readonly overTips: number
  readonly overValleys: number
  readonly most: number
  readonly board: Board
}

/** Stitches of width `wide` from one curve to the next, in groups where they are worked so. */
function rowOf(
  board: Board,
  [inner, outer]: readonly [Curve, Curve],
  {
    wide,
    zone,
    closed,
    group,
    lift,
  }: { wide: number; zone: number; closed: boolean; group: number; lift: (x: number, y: number) => number },
  own: Chance,
): void {
  // prettier-ignore
  let long = 0
  for (let i = 0; i < 60; i++) {
    const [[ax, ay], [bx, by]] = [outer(i / 60), outer((i + 1) / 60)]
    long += Math.hypot(bx - ax, by - ay)
  }
  const count = Math.max(3, group * Math.round(long / wide / group))
  const thick = 0.29 * wide
  for (let i = 0; i < count; i++) {
    let u = (i + 0.5 + 0.12 * own.bell()) / count
    if (group > 1) {
      const middle = (Math.floor(i / group) + 0.5) * (group / count)
      u = middle + 0.8 * (u - middle)
    }
    const lean = closed ? 0.25 / count : 0
    const [[ax, ay], [bx, by]] = [
      inner(Math.min(1, Math.max(0, u - lean))),
      outer(Math.min(1, Math.max(0, u))),
    ]
    const tall = Math.hypot(bx - ax, by - ay) + 1e-6
    const [nx, ny] = [(by - ay) / tall, (ax - bx) / tall]
    const turns = Math.max(1, Math.round(tall / wide))
    for (const side of [-1, 1]) {
      const path: number[] = []
      for (let j = 0; j <= 2 * turns + 1; j++) {
        const t = j / (2 * turns + 1)
        const off = side * 0.2 * wide * Math.cos(Math.PI * t * turns)
        const [x, y] = [ax + t * (bx - ax) + off * nx, ay + t * (by - ay) + off * ny]
        path.push(x, y, lift(x, y) + 0.45 * thick * side * Math.sin(Math.PI * t * turns))
      }
      board.strand(path, thick, zone)
    }
    const each = 0.62 / count
    const [[px, py], [qx, qy]] = [outer(closed ? u - each : Math.max(0, u - each)), outer(closed ? u + each : Math.min(1, u + each))] // prettier-ignore
    const span = Math.hypot(qx - px, qy - py) + 1e-6
    const [mx, my] = [(qy - py) / span, (px - qx) / span]
    for (const side of [-1, 1]) {
      const path: number[] = []
      for (let j = 0; j <= 4; j++) {
        const off = side * 0.27 * wide * Math.sin((Math.PI * (j + 0.3)) / 4.6)
        const [x, y] = [px + (j / 4) * (qx - px) + off * mx, py + (j / 4) * (qy - py) + off * my]
        path.push(x, y, lift(x, y) + thick * (0.6 + 0.1 * j))
      }
      board.strand(path, 0.9 * thick, zone)
    }
  }
}

const ring =
  (radius: number): Curve =>
  (u) => [radius * Math.cos(6.28318 * u), radius * Math.sin(6.28318 * u)]
const apart = (from: Curve, to: Curve, t: number): Curve => (u) => {
  const [[ax, ay], [bx, by]] = [from(u), to(u)]
  return [ax + t * (bx - ax), ay + t * (by - ay)]
} // prettier-ignore

/** Straight sides between rounded corners, a little bowed. */
function sidesOf(count: number, tip: number, bow: number, round: number, turn: number, own: Chance): Curve {
  const reach: number[] = []
  const off = Array.from({ length: count }, () => 1 + 0.008 * own.bell())
  for (let i = 0; i < 720; i++) {
    const place = (i / 720) * count
    const [side, t] = [Math.floor(place), 2 * (place % 1) - 1]
    const half = Math.PI / count
    const straight = Math.cos(half) / Math.cos(half * t)
    const corner = ((straight / round) ** 20 + 1) ** -0.05
    const even = 0.5 * (1 + t) * off[(side + 1) % count]! + 0.5 * (1 - t) * off[side]!
    reach.push(tip * straight * corner * even * (1 + bow * (1 - t * t)))
  }
  return (u) => {
    const place = (((u % 1) + 1) % 1) * 720
    const r =
      reach[Math.floor(place) % 720]! * (1 - (place % 1)) +
      reach[(Math.floor(place) + 1) % 720]! * (place % 1)
    const angle = turn + 6.28318 * u
    return [r * Math.cos(angle), r * Math.sin(angle)]
  }
}

/** A line that comes back to itself, without symmetry: a few waves of chance and a deep bay. */
function oddOf(tip: number, own: Chance): Curve {
  const waves = [1, 2, 3, 4].map(
    (k) => [k, own.between(0.06, 0.2) / Math.sqrt(k), own.between(0, 6.28)] as const,
  )
  const [bay, deep, wide] = [own.between(0, 6.28), own.between(0.25, 0.42), own.between(0.35, 0.6)]
  const reach = (angle: number) => {
    const off = Math.atan2(Math.sin(angle - bay), Math.cos(angle - bay)) / wide
    return (
      waves.reduce((sum, [k, high, at]) => sum + high * Math.cos(k * angle + at), 1) -
      deep * Math.exp(-off * off)
    )
  }
  const most = Math.max(...Array.from({ length: 360 }, (_, i) => reach((i * Math.PI) / 180)))
  return (u) => {
    const r = (tip * reach(6.28318 * u)) / most
    return [r * Math.cos(6.28318 * u), r * Math.sin(6.28318 * u)]
  }
}

/** A motif worked in the form asked for, about `across` mm wide. */
export function gardenMotif(
  form: GardenForm,
  asked: number,
  across: number,
  yarn: GardenYarn,
  per: number,
  own: Chance,
): GardenMotif {
  // prettier-ignore
  const { between, bell } = own
  const whole = form === 'round' || form === 'odd'
  const count =
    form === 'square'
      ? 4
      : form === 'hexagon'
        ? 6
        : whole
          ? 0
          : form === 'heart'
            ? 3 + (asked % 6)
            : form === 'scallop'
              ? Math.max(9, asked)
              : asked
  const tip = across / 2
  const wide = Math.min(between(1.9, 4.6), across / 18, count > 6 ? (2 * Math.PI * tip) / count / 4.2 : 9)
  const thick = 0.29 * wide
  const board = new Board(1.1 * tip + 14, per, yarn, own)
  const [dome, puff, pulled, askew] = [between(0, 1), between(0, 0.3), between(0, 0.018), between(0, 3.14)]
  // Worsted yarn makes a fabric of about three mm.
  const lift = (x: number, y: number) => 0.8 * thick + puff + dome * Math.max(0, 1 - Math.hypot(x, y) / tip)
  const turn = between(0, 6.28)
  const tall = wide * between(1, 2.3)
  const grouped = own.roll() < 0.5 ? 3 : 1
  if (count === 0 || form === 'square' || form === 'hexagon') {
    const grown = tip - 0.45 * wide
    const line = form === 'odd' ? oddOf(grown, own) : form === 'round' ? sidesOf(7, grown, 0.1, 2, turn, own) : sidesOf(count, grown, 0.012 * bell(), count === 6 ? between(0.94, 1.1) : between(0.85, 1.1), turn, own) // prettier-ignore
    const outline: Curve = form === 'round' ? apart(line, ring(grown), 0.9) : line
    const rows = Math.max(3, Math.round((tip - 0.8 * wide) / tall))
    const first = (0.5 * wide) / tip
    for (let row = 0; row < rows; row++) {
      const [from, to] = [first + ((1 - first) * row) / rows, first + ((1 - first) * (row + 1)) / rows]
      const zone = row < 0.35 * rows ? 0 : row < rows - 1 ? 1 : 2
      const scaled = (by: number): Curve => (u) => [by * outline(u)[0], by * outline(u)[1]] // prettier-ignore
      rowOf(board, [scaled(from), scaled(to)], { wide, zone, closed: true, group: tall > 1.5 * wide && row > 0 ? grouped : 1, lift }, own) // prettier-ignore
    }
    const angles = Array.from({ length: count }, (_, k) => turn + (k * 2 * Math.PI) / count)
    board.halo()
    return { form, petals: count, ...measured(board, angles, form), most: 1.04 * tip, board }
  }

  const habit = HABITS[form as keyof typeof HABITS]
  const half = Math.PI / count
  const ends = form === 'picot' ? 1.3 * wide : 0
  const grown = tip - 0.45 * wide - ends
  const base = Math.min(
    0.88 * grown,
    Math.max(grown * between(habit[0], habit[1]), (1.05 * wide * count) / Math.PI),
  )
  const [open, full] = [between(habit[2], habit[3]), between(habit[4], habit[5])]
  const cap = tip * habit[6] * between(0.85, 1.1)
  const sharp = form === 'pointed' || form === 'leaf' ? between(0.75, 1) : 0.5
  const notch = form === 'heart' ? between(0.06, 0.13) : 0
  const [uneven, cup, spined] = [
    between(0.008, 0.032),
    between(0, 0.03) * tip,
    form === 'leaf' || form === 'daisy',
  ]
  const angles: number[] = []
  const petal = (k: number, grow: number, raise: number, zones: readonly [number, number]) => {
    const angle = angles[k]!
    const stretch = 1 + pulled * Math.cos(2 * (angle - askew))
    const [long, room, bend] = [
      grow * grown * stretch * (1 + uneven * bell()),
      1 + uneven * bell(),
      0.6 * uneven * bell(),
    ]
    const low = grow * base
    const outline = (u: number): readonly [number, number] => {
      const s = Math.sin(Math.PI * u)
      const y = low + (long - low) * s
      const full0 = Math.min(y * Math.tan(Math.min(half, 1.1)), grow * cap)
      const x = -Math.sign(Math.cos(Math.PI * u)) * room * full0 * (1 - open * Math.sqrt(s)) * Math.max(0, 1 - s ** full) ** sharp // prettier-ignore
      // It begins on the round that it is worked into.
      const drop = (low - Math.sqrt(low * low - Math.min(Math.abs(x), 0.9 * low) ** 2)) * (1 - s)
      return [
        x + bend * (y - low),
        y - drop - notch * (long - low) * Math.max(0, 1 - Math.abs(x) / (0.45 * full0)) ** 1.5,
      ]
    }
    const spine = (u: number): readonly [number, number] =>
      spined ? [0, low + (long - low) * (0.05 + 0.75 * Math.sin(Math.PI * u))] : [0, 0.92 * low]
    const placed = (line: Curve): Curve => (u) => {
      const [x, y] = line(u)
      return [y * Math.cos(angle) - x * Math.sin(angle), y * Math.sin(angle) + x * Math.cos(angle)]
    } // prettier-ignore
    const deep = spined ? Math.min(cap, long * Math.tan(half) * 0.7) : long - low
    const rows = Math.max(1, Math.round(deep / (spined ? wide : Math.max(tall, 1.2 * wide))))
    const own0 = cup * (0.3 + own.roll())
    const up = (x: number, y: number) =>
      lift(x, y) + raise + own0 * Math.max(0, Math.hypot(x, y) / long - 0.55) ** 2 * 4
    for (let row = 0; row < rows; row++) {
      const [from, to] = [row / rows, (row + 1) / rows].map((t) =>
        placed(apart(spine, outline, Math.max(0.06, t))),
      )
      rowOf(board, [from!, to!], { wide, zone: row === rows - 1 && rows > 1 ? zones[1] : zones[0], closed: false, group: 1, lift: up }, own) // prettier-ignore
    }
    if (ends > 0) {
      const path: number[] = []
      for (let j = 0; j <= 12; j++) {
        const [x, y] = placed(() => [bend * (long - low) + 0.5 * wide * Math.sin(j / 1.91), long + 0.75 * wide - 0.62 * wide * Math.cos(j / 1.91)])(0) // prettier-ignore
        path.push(x, y, up(x, y) + 0.3 * thick)
      }
      board.strand(path, 0.85 * thick, zones[1])
    }
  }
  const middle = (radius: number, raise: number, zone: number) => {
    const rows = Math.max(1, Math.round((radius - 0.4 * wide) / Math.max(1.1 * wide, tall * 0.8)))
    const from = 0.4 * wide
    for (let row = 0; row < rows; row++) {
      const [a, b] = [from + ((radius - from) * row) / rows, from + ((radius - from) * (row + 1)) / rows]
      rowOf(
        board,
        [ring(a), ring(b)],
        { wide, zone, closed: true, group: 1, lift: (x, y) => lift(x, y) + raise },
        own,
      )
    }
  }
  for (let k = 0; k < count; k++) angles.push(turn + 2 * half * (k + 0.035 * bell()))
  middle(0.97 * base, 0, 0)
  for (let k = 0; k < count; k++) petal(k, 1, 0.25 * thick * (k % 2), [1, 2])
  if (form === 'layered') {
    const [grow, shift] = [(base / grown) * between(0.84, 0.96), between(0, 1) < 0.5 ? half : 0]
    angles.forEach((angle, k) => (angles[k] = angle + shift))
    for (let k = 0; k < count; k++) petal(k, grow, 1.7 * thick, [2, 1])
    middle(0.9 * grow * base, 1.9 * thick, 0)
    angles.forEach((angle, k) => (angles[k] = angle - shift))
  }
  board.halo()
  return { form, petals: count, ...measured(board, angles, form), most: 1.06 * tip, board }
}

/**
 * What a ruler says of the yarn as it lies: from the middle to the farthest yarn of each petal, and to the nearest place
 * that is open to outside between two. What is narrower than 0.6 mm is closed to the eye.
 */
function measured({ side, half, per, high }: Board, angles: readonly number[], form: GardenForm) {
  const near = Math.max(1, Math.round(0.3 * per))
  const grown = (from: Uint8Array): Uint8Array => {
    const [rows, both] = [new Uint8Array(from.length), new Uint8Array(from.length)]
    for (const [read, write, step] of [
      [from, rows, 1],
      [rows, both, side],
    ] as const)
      // prettier-ignore
      for (let at = near * step; at < from.length - near * step; at++)
        if (read[at]) for (let k = -near; k <= near; k++) write[at + k * step] = 1
    return both
  }
  const thick = grown(Uint8Array.from(high, (z) => (z >= 0 ? 1 : 0)))
  const open = new Uint8Array(side * side)
  const stack = [0]
  while (stack.length > 0) {
    const at = stack.pop()!
    if (open[at] || thick[at]) continue
    open[at] = 1
    const column = at % side
    if (column > 0) stack.push(at - 1)
    if (column < side - 1) stack.push(at + 1)
    if (at >= side) stack.push(at - side)
    if (at < side * side - side) stack.push(at + side)
  }
  const outside = grown(open)
  const sum = { x: 0, y: 0, cells: 0 }
  for (let at = 0; at < outside.length; at++)
    if (!outside[at]) {
      sum.x += (at % side) + 0.5
      sum.y += Math.floor(at / side) + 0.5
      sum.cells++
    }
  const isOdd = form === 'odd'
  const [cx, cy] = isOdd ? [sum.x / sum.cells / per - half, sum.y / sum.cells / per - half] : [0, 0]
  if (form === 'round') {
    const across = 2 * Math.sqrt(sum.cells / Math.PI) / per // prettier-ignore
    return { overTips: across, overValleys: across }
  }
  const count = isOdd ? 1 : angles.length
  const [far, close] = [new Float64Array(count), new Float64Array(count).fill(1e9)]
  for (let at = side; at < outside.length - side; at++) {
    // Ends are where inside and outside meet.
    if (outside[at] === outside[at + 1] && outside[at] === outside[at + side] && outside[at] === outside[at - 1] && outside[at] === outside[at - side]) continue // prettier-ignore
    const [x, y] = [((at % side) + 0.5) / per - half - cx, (Math.floor(at / side) + 0.5) / per - half - cy]
    const place = isOdd
      ? 0
      : (((((Math.atan2(y, x) - angles[0]!) / (2 * Math.PI)) * count) % count) + count) % count
    const r = Math.hypot(x, y)
    const tipOf = Math.round(place) % count
    if (!outside[at]) far[tipOf] = Math.max(far[tipOf]!, r)
    else if (isOdd || Math.abs((place % 1) - 0.5) < 0.32)
      close[Math.floor(place)] = Math.min(close[Math.floor(place)]!, r)
  }
  const mean = (values: Float64Array) => values.reduce((all, each) => all + each, 0) / count
  return { overTips: 2 * mean(far), overValleys: 2 * mean(close) }
}
