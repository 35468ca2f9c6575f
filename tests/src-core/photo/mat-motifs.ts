/**
 * Motifs for the cutting mat, a seventh renderer: closed lines (Bézier curves and straight sides), and how far each place
 * is from them. Petals, lace of arches with open middles, squares, hexagons and stars; true measures come from the lines.
 */

export const MAT_FORMS = ['shell', 'spoon', 'lace', 'point', 'shell', 'sides', 'lace', 'spoon'] as const
export type MatForm = (typeof MAT_FORMS)[number]

export interface MatMotif {
  readonly petals: number
  readonly overTips: number
  readonly overValleys: number
  readonly most: number
  /** How far outside the yarn a place is, in mm; within it, below 0. */
  readonly outside: (x: number, y: number) => number
  /** How far within the nearest petal's own edge a place is: small where two petals lie against each other. */
  readonly seam: (x: number, y: number) => number
}

type Line = readonly (readonly [number, number])[]

/** Distance to a closed line, below 0 inside. */
function distance(line: Line, x: number, y: number): number {
  let least = Infinity
  let within = false
  for (let at = 0, before = line.length - 1; at < line.length; before = at++) {
    const [ax, ay] = line[before]!
    const [bx, by] = line[at]!
    const [ex, ey, wx, wy] = [bx - ax, by - ay, x - ax, y - ay]
    const t = Math.min(1, Math.max(0, (wx * ex + wy * ey) / (ex * ex + ey * ey + 1e-12)))
    const off = (wx - t * ex) ** 2 + (wy - t * ey) ** 2
    if (off < least) least = off
    if (ay > y !== by > y && x < (ex * (y - ay)) / ey + ax) within = !within
  }
  return (within ? -1 : 1) * Math.sqrt(least)
}

/** A petal that points along x: half of it is a cubic Bézier curve, the other half its mirror. */
function petalLine(core: number, tip: number, wide: number, [full, blunt, pull]: readonly number[]): Line {
  const long = tip - core
  const points = [
    [core, 0.45 * wide],
    [core + full! * long, 1.25 * wide],
    [tip - pull! * long, blunt! * wide],
    [tip, 0],
  ] as const
  const half = Array.from({ length: 22 }, (_, k) => {
    const t = k / 21
    const weights = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t ** 3]
    return [0, 1].map((c) => points.reduce((sum, point, i) => sum + point[c]! * weights[i]!, 0)) as [
      number,
      number,
    ]
  })
  return [
    ...half,
    ...half
      .slice(0, -1)
      .reverse()
      .map(([x, y]) => [x, -y] as const),
  ]
}

export function matMotif(
  form: MatForm,
  asked: { petals: number; overTips: number; uneven: number },
  between: (least: number, most: number) => number,
): MatMotif {
  const turn = between(0, 2 * Math.PI)
  const tip = asked.overTips / 2
  const petals = form === 'sides' ? (asked.petals % 2 ? 4 : 6) : asked.petals
  const sector = Math.PI / petals
  const astray = (by: number) => between(-by, by)
  const many = Math.min(1, petals / 18)
  const core = tip * between(0.4 + 0.28 * many, 0.58 + 0.2 * many)
  const bulge = between(0.85, 1.1)
  const shape = {
    shell: [between(0.35, 0.6), between(0.9, 1.15), 0],
    spoon: [between(0.15, 0.3), between(1.2, 1.5), 0],
    lace: [between(0.3, 0.6), between(0.9, 1.2), 0],
    point: [between(0.2, 0.45), between(0.15, 0.4), between(0.15, 0.35)],
    sides: [0, 0, 0],
  }[form]
  const round = form === 'sides' ? between(1.5, 5) : 0
  const each: Line[] = Array.from({ length: petals }, (_, k) => {
    const far = tip * (1 + astray(asked.uneven))
    const middle = core + 0.55 * (far - core)
    const wide = Math.min(middle * Math.tan(Math.min(1, sector)) * bulge, 0.62 * (far - 0.6 * core)) * (1 + astray(asked.uneven)) // prettier-ignore
    const angle = turn + 2 * k * sector + astray(asked.uneven) * sector
    const [c, s] = [Math.cos(angle), Math.sin(angle)]
    return petalLine(0.75 * core, far, wide, shape).map(([x, y]) => [x * c - y * s, x * s + y * c] as const)
  })
  const corner = (tip - round) * 1
  const block: Line = Array.from({ length: petals }, (_, k) => {
    const far = corner * (1 + astray(0.6 * asked.uneven))
    return [far * Math.cos(turn + 2 * k * sector), far * Math.sin(turn + 2 * k * sector)] as const
  })
  const nearest = (x: number, y: number): number[] => {
    const about = Math.round((Math.atan2(y, x) - turn) / (2 * sector))
    return [-1, 0, 1].map((off) => distance(each[(((about + off) % petals) + petals) % petals]!, x, y))
  }
  const solid = (x: number, y: number): number =>
    form === 'sides' ? distance(block, x, y) - round : Math.min(Math.hypot(x, y) - core, ...nearest(x, y))
  const band = Math.max(2.2, 0.035 * tip)
  const bars = Math.round(between(1, 2))
  const outside = (x: number, y: number): number => {
    const off = solid(x, y)
    if (form !== 'lace' || off > -band) return off
    // Within the arches nothing is worked but a bar or two out to the rim.
    const r = Math.hypot(x, y)
    if (r < core - band) return r - core + band < -0.22 * core ? -2 : Math.min(-0.2, off)
    const along = ((((Math.atan2(y, x) - turn) / (2 * sector)) * bars) % 1) + 1.5
    const bar = (Math.abs((along % 1) - 0.5) * 2 * sector * r) / bars - 0.9
    const hole = Math.min(-off - band, r - core, bar)
    return hole > 0 ? hole : Math.max(hole, -2)
  }
  const RAYS = 1440
  const reach = Float64Array.from({ length: RAYS }, (_, at) => {
    const angle = turn + (at / RAYS) * 2 * Math.PI
    let r = tip * 1.15
    for (let off = 1; off > 0 && r > 0; r -= Math.max(0.01, 0.9 * off))
      off = solid(r * Math.cos(angle), r * Math.sin(angle))
    return r
  })
  const mean = (from: number, to: number, of: (...values: number[]) => number) => {
    let sum = 0
    for (let k = 0; k < petals; k++) {
      const part: number[] = []
      for (let i = Math.round(((k + from) * RAYS) / petals); i <= ((k + to) * RAYS) / petals; i++)
        part.push(reach[((i % RAYS) + RAYS) % RAYS]!)
      sum += of(...part)
    }
    return sum / petals
  }
  return {
    petals,
    overTips: 2 * mean(-0.4, 0.4, Math.max),
    overValleys: 2 * mean(0.2, 0.8, Math.min),
    most: Math.max(...reach),
    outside,
    seam: (x, y) => {
      if (form === 'sides') return 9
      const sorted = nearest(x, y).sort((a, b) => a - b)
      return Math.hypot(x, y) < core ? 9 : Math.abs(sorted[1]! - sorted[0]!)
    },
  }
}
