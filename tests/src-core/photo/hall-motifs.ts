/**
 * Motifs for the hall, a tenth renderer: each petal is a chain of cubic Bézier curves, walked in even steps, its stitches
 * pushed out along it, and filled by scanlines into a field of the motif in mm. What is true is read off the plain curves
 * by casting rays at their sides; the field knows yarn, height and colour of each of its places.
 */

export const HALL_FORMS = ['leaf', 'paddle', 'shell', 'scallop', 'heart', 'turns', 'sided', 'drop'] as const
export type HallForm = (typeof HALL_FORMS)[number]
export type Between = (least: number, most: number) => number
type Point = readonly [number, number]

/** Places of the field to the mm. */
export const FIELD = 6

export interface HallMotif {
  readonly petals: number
  readonly overTips: number
  readonly overValleys: number
  /** Half the side of its field, in mm. */
  readonly half: number
  readonly side: number
  /** How much of each place of the field is yarn, and how high it stands there, in mm. */
  readonly yarn: Float32Array
  readonly high: Float32Array
  /** Which round of colour a place is of, 0 in the middle. */
  readonly round: (x: number, y: number) => number
}

/** Points along a chain of cubics `[start, control, control, end, control, control, end, …]`, a quarter of a mm apart. */
function walked(chain: readonly Point[]): Point[] {
  const points: Point[] = []
  for (let at = 0; at + 3 < chain.length; at += 3) {
    const [a, b, c, d] = chain.slice(at, at + 4) as unknown as readonly [Point, Point, Point, Point]
    const long = Math.hypot(b[0] - a[0], b[1] - a[1]) + Math.hypot(c[0] - b[0], c[1] - b[1]) + Math.hypot(d[0] - c[0], d[1] - c[1]) // prettier-ignore
    const count = Math.max(2, Math.ceil(long / 0.25))
    for (let i = 0; i < count; i++) {
      const t = i / count
      const s = 1 - t
      const [p, q, u, v] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t]
      points.push([p * a[0] + q * b[0] + u * c[0] + v * d[0], p * a[1] + q * b[1] + u * c[1] + v * d[1]])
    }
  }
  return points
}

/** The flank of a petal from its foot to its tip, along x, the tip on the axis: cubics. Its other one mirrors it. */
function flankOf(form: HallForm, foot: number, tip: number, room: number, between: Between): Point[] {
  const long = tip - foot
  const at = (share: number) => foot + share * long
  // Half of the sector at a distance from the middle, so that `1` touches the neighbour there.
  const wide = (share: number, by: number) => at(share) * Math.tan(room) * by
  switch (form) {
    case 'leaf': {
      const belly = wide(0.5, between(0.6, 0.95))
      return [[foot * 0.7, wide(0, 0.7)], [at(0.15), belly * 1.1], [at(0.55), belly * 1.15], [tip, 0]] // prettier-ignore
    }
    case 'drop': {
      const belly = Math.min(0.42 * long, wide(0.7, between(0.7, 0.95)))
      return [[foot * 0.7, wide(0, 0.5)], [at(0.35), wide(0.2, 0.5)], [at(0.62), belly * 1.35], [tip, 0]] // prettier-ignore
    }
    case 'paddle':
    case 'heart': {
      const belly = Math.min(0.4 * tip, wide(0.68, between(0.72, 0.98)))
      const stalk = wide(0.05, between(0.45, 0.7))
      const end: Point = form === 'heart' ? [tip - 0.1 * long, 0] : [tip, 0]
      // The lobe of a heart stands beyond its notch; what is farthest is found by walking it.
      const [top, beside] = form === 'heart' ? [tip + 0.05 * long, 0.34 * belly] : [tip, 0.6 * belly]
      return [[foot * 0.7, stalk], [at(0.2), stalk], [at(0.42), belly], [at(0.68), belly], [at(0.9), belly], [top, beside * 1.2], end] // prettier-ignore
    }
    case 'shell': {
      const belly = wide(0.72, between(0.8, 1.02))
      return [[foot * 0.7, wide(0, 0.55)], [at(0.3), wide(0.3, 0.7)], [at(0.55), belly], [at(0.74), belly], [at(0.93), belly], [tip, 0.55 * belly], [tip, 0]] // prettier-ignore
    }
    default: {
      const belly = wide(0.3, between(0.85, 1))
      return [[foot * 0.7, belly], [at(0.6), belly], [tip, 0.7 * belly], [tip, 0]] // prettier-ignore
    }
  }
}

/** A closed line of a motif with straight sides, its corners rounded, its sides hollow or full by a little. */
function sided(count: number, tip: number, between: Between): Point[] {
  const [round, bow] = [between(0.06, 0.16), between(-0.012, 0.012)]
  const corner = (k: number, far: number): Point => [far * Math.cos((2 * Math.PI * k) / count), far * Math.sin((2 * Math.PI * k) / count)] // prettier-ignore
  const mix = (a: Point, b: Point, t: number): Point => [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]
  const far = tip / (1 - 0.5 * round)
  const chain: Point[] = []
  for (let k = 0; k < count; k++) {
    const [before, own, next] = [corner(k - 1, far), corner(k, far), corner(k + 1, far)]
    const [from, to, end] = [mix(own, before, round), mix(own, next, round), mix(own, next, 1 - round)]
    const bent = (point: Point): Point => [point[0] * (1 + bow), point[1] * (1 + bow)]
    if (k === 0) chain.push(from)
    chain.push(mix(from, own, 0.667), mix(to, own, 0.667), to, bent(mix(to, end, 0.333)), bent(mix(to, end, 0.667)), end) // prettier-ignore
  }
  return walked(chain)
}

const CAST = 5400

/** How far out each of many rays last leaves one of the lines, seen from the middle. */
function castAt(lines: readonly (readonly Point[])[]): Float64Array {
  const reach = new Float64Array(CAST)
  for (const line of lines)
    line.forEach((from, at) => {
      const to = line[(at + 1) % line.length]!
      const [one, other] = [Math.atan2(from[1], from[0]), Math.atan2(to[1], to[0])]
      let by = other - one
      by -= 2 * Math.PI * Math.round(by / (2 * Math.PI))
      const [low, high] = [Math.min(one, one + by), Math.max(one, one + by)]
      for (let k = Math.ceil((low * CAST) / (2 * Math.PI)); k <= (high * CAST) / (2 * Math.PI); k++) {
        const angle = (2 * Math.PI * k) / CAST
        const [c, s] = [Math.cos(angle), Math.sin(angle)]
        const below = (to[0] - from[0]) * s - (to[1] - from[1]) * c
        const far = Math.abs(below) < 1e-9 ? Math.hypot(...from) : (from[1] * (to[0] - from[0]) - from[0] * (to[1] - from[1])) / below // prettier-ignore
        const index = ((k % CAST) + CAST) % CAST
        if (far > reach[index]!) reach[index] = far
      }
    })
  return reach
}

const mean = (values: readonly number[]) => values.reduce((sum, each) => sum + each, 0) / values.length

/** Pushes a line out where its stitches are and in between them, as far on average; `round` 1 where it runs clockwise. */
function stitched(line: readonly Point[], stitch: number, bump: number): Point[] {
  let along = 0
  return line.map(([x, y], at) => {
    const [px, py] = line[(at + line.length - 1) % line.length]!
    const [nx, ny] = line[(at + 1) % line.length]!
    along += Math.hypot(x - px, y - py)
    const long = Math.hypot(nx - px, ny - py) || 1
    const off = bump * (Math.abs(Math.sin((Math.PI * along) / stitch)) - 0.637)
    return [x + (off * (ny - py)) / long, y - (off * (nx - px)) / long]
  })
}

/** Fills a line into a field, four scanlines to a place. */
function fill(line: readonly Point[], half: number, side: number, yarn: Float32Array): void {
  const own = new Float32Array(yarn.length)
  const rows: number[][] = Array.from({ length: 4 * side }, () => [])
  line.forEach((from, at) => {
    const to = line[(at + 1) % line.length]!
    const [[ax, ay], [bx, by]] = (from[1] < to[1] ? [from, to] : [to, from]) as readonly [Point, Point]
    const row = (y: number) => (y + half) * FIELD * 4 - 0.5
    for (let k = Math.max(0, Math.ceil(row(ay))); k < row(by) && k < rows.length; k++) {
      const y = (k + 0.5) / (4 * FIELD) - half
      rows[k]!.push(((ax + ((y - ay) / (by - ay)) * (bx - ax)) + half) * FIELD) // prettier-ignore
    }
  })
  rows.forEach((cuts, k) => {
    cuts.sort((a, b) => a - b)
    const start = (k >> 2) * side
    for (let at = 0; at + 1 < cuts.length; at += 2)
      for (let column = Math.max(0, Math.floor(cuts[at]!)); column < Math.min(side, cuts[at + 1]!); column++)
        own[start + column]! += (Math.min(column + 1, cuts[at + 1]!) - Math.max(column, cuts[at]!)) / 4
  })
  own.forEach((each, at) => (yarn[at] = Math.max(yarn[at]!, Math.min(1, each))))
}

/** Lays a motif out: `asked` petals where the form has petals of any number. */
export function hallMotif(form: HallForm, asked: number, overTips: number, between: Between): HallMotif {
  const tip = overTips / 2
  const count =
    form === 'sided' ? [4, 6, 8][asked % 3]! : form === 'turns' ? 2 * Math.max(3, asked >> 1) : asked
  const room = Math.PI / count
  const turn = between(0, 2 * Math.PI)
  const core = form === 'scallop' ? between(0.66, 0.82) : between(0.34, 0.6)
  const uneven = between(0, 0.03)
  const short = between(0.8, 0.9)
  const shape = form === 'turns' ? (between(0, 1) < 0.5 ? 'leaf' : 'paddle') : form
  const seed = between(0, 1)
  // All petals alike but for what a hand makes of them: the same numbers each time.
  const again = () => {
    let state = seed
    return (least: number, most: number) => {
      state = (state * 997.13 + 0.317) % 1
      return least + state * (most - least)
    }
  }
  const disc = Array.from({ length: 720 }, (_, k): Point => [core * tip * Math.cos((k * Math.PI) / 360), core * tip * Math.sin((k * Math.PI) / 360)]) // prettier-ignore
  const rotated = (line: readonly Point[], angle: number): Point[] => {
    const [c, s] = [Math.cos(angle), Math.sin(angle)]
    return line.map(([x, y]) => [x * c - y * s, x * s + y * c])
  }
  const lines = form === 'sided' ? [rotated(sided(count, tip, between), turn)] : [disc]
  if (form !== 'sided')
    for (let k = 0; k < count; k++) {
      const far = tip * (1 + between(-1, 1) * uneven) * (form === 'turns' && k % 2 === 1 ? short : 1)
      const flank = walked(flankOf(shape, core * tip, far, Math.min(0.9, room), again()))
      const other = flank.map(([x, y]): Point => [x, -y])
      lines.push(
        rotated([...other, ...flank.reverse()], turn + 2 * room * k + between(-1, 1) * uneven * room),
      )
    }
  const [stitch, bump] = [between(1.6, 3.4), between(0.1, 0.4)]
  const worked = lines.map((line) => stitched(line, stitch, bump))
  const [plain, drawn] = [castAt(lines), castAt(worked)]
  const ends = (reach: Float64Array, about: number, of: (...values: number[]) => number) =>
    Array.from({ length: count }, (_, k) => {
      const middle = ((turn + 2 * room * (k + about)) / (2 * Math.PI)) * CAST
      const wide = (0.32 * CAST) / count
      const part: number[] = []
      for (let i = Math.round(middle - wide); i <= middle + wide; i++) part.push(reach[((i % CAST) + CAST) % CAST]!) // prettier-ignore
      return of(...part)
    })
  const closed = ends(drawn, 0.5, Math.min)
  const dips = ends(plain, 0.5, Math.min).map((dip, k) => (closed[k]! > dip + 1 ? closed[k]! : dip))
  const tips = ends(plain, 0, Math.max)
  const half = Math.max(...drawn) + 4
  const side = Math.ceil(2 * half * FIELD)
  const yarn = new Float32Array(side * side)
  for (const line of worked) fill(line, half, side, yarn)
  return {
    petals: count,
    overTips: 2 * (form === 'turns' ? mean(tips.filter((_, k) => k % 2 === 0)) : mean(tips)),
    overValleys: 2 * mean(dips),
    half,
    side,
    yarn,
    high: heightOf(yarn, half, side, stitch, between),
    round: (x, y) => Math.floor(Math.min(2.99, (3.2 * Math.hypot(x, y)) / tip)),
  }
}

/** How high the yarn stands: it falls off towards its edge, and rounds of stitches lie on it like grains of rice. */
function heightOf(
  yarn: Float32Array,
  half: number,
  side: number,
  stitch: number,
  between: Between,
): Float32Array {
  const [thick, relief, slant] = [between(1.6, 4), between(0.25, 0.7), between(-0.5, 0.5)]
  const fallen = blurred(yarn, side, Math.round(1.1 * FIELD))
  const high = new Float32Array(yarn.length)
  for (let row = 0; row < side; row++)
    for (let column = 0; column < side; column++) {
      const at = row * side + column
      if (yarn[at] === 0) continue
      const [x, y] = [(column + 0.5) / FIELD - half, (row + 0.5) / FIELD - half]
      const r = Math.hypot(x, y)
      const round = Math.floor(r / (1.3 * stitch))
      const up = r / (1.3 * stitch) - round - 0.5
      const stitches = Math.max(5, Math.round((2 * Math.PI * (round + 0.5) * 1.3 * stitch) / stitch))
      const about = ((Math.atan2(y, x) / (2 * Math.PI)) * stitches + slant * up + 0.5 * round + 1e4) % 1
      const grain = Math.max(0, 1 - (2 * (about - 0.5)) ** 2 - (1.8 * up) ** 2)
      high[at] = fallen[at]! ** 2 * thick + relief * Math.sqrt(grain)
    }
  return high
}

/** Means over squares of (2 by + 1)², twice, which is nearly a bell. */
export function blurred(
  values: Float32Array,
  wide: number,
  by: number,
  tall = values.length / wide,
): Float32Array {
  const pass = (from: Float32Array, lines: number, count: number, next: number, each: number) => {
    const to = new Float32Array(from.length)
    for (let l = 0; l < lines; l++) {
      let sum = 0
      for (let i = -2 * by; i < count; i++) {
        sum += from[l * each + Math.min(count - 1, Math.max(0, i + by)) * next]!
        if (i > 0) sum -= from[l * each + Math.min(count - 1, Math.max(0, i - by - 1)) * next]!
        if (i >= 0) to[l * each + i * next] = sum
      }
    }
    const many = 2 * by + 1
    for (let at = 0; at < to.length; at++) to[at] = to[at]! / many
    return to
  }
  let result = values
  if (by < 1) return result
  for (let round = 0; round < 2; round++)
    result = pass(pass(result, tall, wide, 1, wide), wide, tall, wide, 1)
  return result
}
