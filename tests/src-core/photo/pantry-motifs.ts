/**
 * Lace for the pantry, a ninth renderer: every motif is cords along curves (trebles of a middle, chains of arches, rims of
 * fans) and picots, small rings of three chains. Its true measures are where rays from the middle leave the outermost
 * cord, all cords as thick as their yarn; drawn, a cord is a row of ovals, one to a stitch.
 */

export const LACES = ['arches', 'fans', 'net', 'leaves'] as const
export type Lace = (typeof LACES)[number]
export type Between = (least: number, most: number) => number
type Place = readonly [number, number]

/** Yarn along a line of places, `half` to each side of it, and which of the yarns it is. */
export interface Cord {
  readonly line: readonly Place[]
  readonly half: number
  readonly yarn: number
}

export interface LaceMotif {
  readonly cords: readonly Cord[]
  readonly petals: number
  readonly overTips: number
  readonly overValleys: number
  readonly most: number
}

const polar = (r: number, angle: number): Place => [r * Math.sin(angle), -r * Math.cos(angle)]
const curve = (count: number, at: (t: number) => Place): Place[] => Array.from({ length: count + 1 }, (_, k) => at(k / count)) // prettier-ignore

/** How far out a ray leaves a cord: the far root of a round-ended rod for each piece of its line; 0 where it misses. */
function leaves({ line, half }: Cord, angle: number): number {
  const [dx, dy] = polar(1, angle)
  let most = 0
  for (let k = 0; k < line.length; k++) {
    const [ax, ay] = line[k]!
    // Along the ray and off it.
    const [a, b] = [ax * dx + ay * dy, ax * dy - ay * dx]
    if (Math.abs(b) < half && a > 0) most = Math.max(most, a + Math.sqrt(half * half - b * b))
    const next = line[k + 1]
    if (!next) continue
    const [c, d] = [next[0] * dx + next[1] * dy, next[0] * dy - next[1] * dx]
    const long = Math.hypot(c - a, d - b)
    if (long < 1e-9 || Math.abs(d - b) < 1e-9) continue
    // Both sides of the rod, where they cross the ray within its length.
    for (const side of [-half, half]) {
      const [ox, oy] = [(-(d - b) / long) * side, ((c - a) / long) * side]
      const t = -(b + oy) / (d - b)
      if (t >= 0 && t <= 1) most = Math.max(most, a + ox + t * (c - a))
    }
  }
  return most
}

/** Directions to a petal in which rays are sent. */
const RAYS = 90

export function laceOf(lace: Lace, petals: number, overTips: number, between: Between): LaceMotif {
  const sector = (2 * Math.PI) / petals
  const tip = overTips / 2
  const half = Math.min(0.9, Math.max(0.42, tip * between(0.011, 0.019)))
  const uneven = between(0, 0.02)
  const shake = (by: number) => uneven * by * between(-1, 1)
  const turn = between(0, 2 * Math.PI)
  const picot = between(1.9, 2.5) * half
  // The more petals, the less room between them.
  const depth = between(0.12, 0.34) * Math.min(1, 11 / petals)
  const power = between(0.6, 1)
  const top = tip - 2 * picot
  const dip = top * (1 - depth)
  const cords: Cord[] = []

  // The middle: rounds of trebles that stand so close that they all but touch, each ended by a round of chains.
  const rounds = Math.max(2, Math.round(between(2.5, 4.5)))
  const inner = lace === 'arches' || lace === 'net' ? dip * between(0.6, 0.78) : dip * between(0.72, 0.86)
  for (let round = 0; round < rounds; round++) {
    const [from, to] = [(inner * round) / rounds, (inner * (round + 1)) / rounds]
    const count = Math.max(6, Math.round((2 * Math.PI * to) / (2.5 * half)))
    const yarn = round % 2
    for (let k = 0; k < count; k++) {
      const angle = turn + ((k + 0.5 * (round % 2)) / count) * 2 * Math.PI
      cords.push({ line: [polar(from, angle), polar(to, angle)], half: 0.95 * half, yarn })
    }
    cords.push({ line: curve(Math.max(24, 4 * petals), (t) => polar(to, 2 * Math.PI * t)), half, yarn })
  }
  const ring = (middle: Place): Cord => ({
    line: curve(12, (t) => [middle[0] + (picot - half) * Math.cos(6.2832 * t), middle[1] + (picot - half) * Math.sin(6.2832 * t)]), // prettier-ignore
    half: 0.85 * half,
    yarn: 2,
  })
  // Where petals meet, and how far each of them goes; neighbours share the place where they meet.
  const meets = Array.from({ length: petals }, (_, k) => ({
    angle: turn + (k - 0.5) * sector * (1 + 0) + shake(1) * sector,
    far: dip * (1 + shake(0.7)),
  }))
  const picots = [1, 3, 5].filter((count) => count === 1 || (count - 1) * 2.4 * picot < 0.55 * sector * top)
  const count = lace === 'leaves' ? 1 : picots[Math.floor(between(0, picots.length))]!
  for (let k = 0; k < petals; k++) {
    const [one, other] = [meets[k]!, meets[(k + 1) % petals]!]
    const end = other.angle + (k === petals - 1 ? 2 * Math.PI : 0)
    const far = top * (1 + shake(1)) - half
    const rim = (t: number): Place => {
      const base = one.far + (other.far - one.far) * t - half
      const rise = lace === 'leaves' ? (1 - Math.abs(2 * t - 1)) ** (0.55 + 0.5 * power) : Math.sin(Math.PI * t) ** power // prettier-ignore
      return polar(base + (far - base) * rise, one.angle + (end - one.angle) * t)
    }
    const yarn = 2
    if (lace === 'fans' || lace === 'leaves') {
      // Trebles side by side out to the rim.
      const arc = sector * top
      const trebles = Math.max(5, Math.round(arc / (1.7 * half)))
      for (let i = 0; i <= trebles; i++) {
        const [x, y] = rim(i / trebles)
        const r = Math.hypot(x, y)
        const by = Math.min(1, (0.94 * inner) / r)
        cords.push({ line: [[x * by, y * by], [x, y]], half, yarn: 1 }) // prettier-ignore
      }
    } else {
      // What holds the arch: a stitch from the middle to where arches meet.
      const [x, y] = rim(0)
      const by = inner / Math.hypot(x, y)
      cords.push({ line: [[x * by, y * by], [x, y]], half, yarn: 1 }) // prettier-ignore
      if (lace === 'net') {
        // A row of arches within, half a petal off.
        const low = inner + 0.75 * (one.far - inner)
        cords.push({ line: curve(16, (t) => polar(inner + (low - inner) * Math.sin(Math.PI * t) ** 0.7, one.angle + (t - 0.5) * sector)), half, yarn }) // prettier-ignore
      }
    }
    cords.push({ line: curve(36, rim), half, yarn })
    for (let i = 0; i < count; i++) {
      const t = 0.5 + (count === 1 ? 0 : (i / (count - 1) - 0.5) * 0.5)
      const [before, at, after] = [rim(t - 0.02), rim(t), rim(t + 0.02)]
      const [ux, uy] = [after[0] - before[0], after[1] - before[1]]
      const long = Math.hypot(ux, uy)
      const off = half + picot - 0.6 * half
      // The one at the top stands straight out.
      const [nx, ny] = t === 0.5 ? polar(1, (one.angle + end) / 2) : [uy / long, -ux / long]
      cords.push(ring([at[0] + off * nx, at[1] + off * ny]))
    }
  }
  const outer = cords.filter(({ line }) => line.some(([x, y]) => Math.hypot(x, y) > 0.5 * inner))
  const reach = Float64Array.from({ length: petals * RAYS }, (_, at) => {
    const angle = turn + (at / RAYS - 0.5) * sector
    const [dx, dy] = polar(1, angle)
    let most = 0
    for (const cord of outer) {
      // Cords on the other side are none of this ray's.
      const [x, y] = cord.line[cord.line.length >> 1]!
      if (cord.line.length < 24 + 1 && x * dx + y * dy < 0) continue
      most = Math.max(most, leaves(cord, angle))
    }
    return most
  })
  const of = (from: number, to: number, k: number, pick: (...values: number[]) => number) =>
    pick(...Array.from({ length: Math.round((to - from) * RAYS) + 1 }, (_, i) => reach[(Math.round((k + from) * RAYS) + i + petals * RAYS) % (petals * RAYS)]!)) // prettier-ignore
  const mean = (one: (k: number) => number) => meets.reduce((sum, _, k) => sum + one(k), 0) / petals
  return {
    ...{ cords, petals, most: Math.max(...reach) },
    overTips: 2 * mean((k) => of(0.15, 0.85, k, Math.max)),
    overValleys: 2 * mean((k) => of(-0.3, 0.3, k, Math.min)),
  }
}
