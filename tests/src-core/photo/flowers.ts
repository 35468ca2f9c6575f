/** Shapes to be photographed: outlines as yes and no at a place (mm about the middle), with their true measures. */

/** Mulberry32: a small seeded generator. */
export function chance(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
}

export interface Shape {
  readonly petals: number
  readonly overTips: number
  readonly overValleys: number
  /** Farther than this from the middle is nothing of it. */
  readonly most: number
  readonly covers: (x: number, y: number) => boolean
}

export type Family = 'rounded' | 'overlapping' | 'keyhole'

/** A flower; `uneven` is how much its petals differ in length (share of the mean). */
export function flower(
  family: Family,
  petals: number,
  overTips: number,
  valleyShare: number,
  turn: number,
  uneven: number,
  random: () => number,
): Shape {
  const tip = overTips / 2
  const half = Math.PI / petals
  const lengths = Array.from({ length: petals }, () => tip * (1 + uneven * (2 * random() - 1)))
  const meanTip = lengths.reduce((sum, each) => sum + each, 0) / petals
  const growth = 1 + 1.6 * random()
  const sectorOf = (x: number, y: number) => {
    const angle = (((Math.atan2(x, -y) - turn) % (2 * Math.PI)) + 4 * Math.PI) % (2 * Math.PI)
    const petal = Math.floor(angle / (2 * half) + 0.5) % petals
    let off = angle - petal * 2 * half
    if (off > Math.PI) off -= 2 * Math.PI
    return { petal, off }
  }
  if (family === 'rounded') {
    const dip = tip * valleyShare
    return {
      petals,
      overTips: 2 * meanTip,
      overValleys: 2 * dip,
      most: Math.max(...lengths),
      covers: (x, y) => {
        const r = Math.hypot(x, y)
        if (r <= dip) return true
        const { petal, off } = sectorOf(x, y)
        const u = (r - dip) / (lengths[petal]! - dip)
        return u < 1 && Math.abs(off) < half * Math.sqrt(1 - u ** growth)
      },
    }
  }
  // Ellipses on the axes of the petals, over a disc.
  const disc = tip * valleyShare
  const inner = 0.35 * disc
  const centre = (length: number) => (inner + length) / 2
  const free = centre(tip) * Math.sin(half)
  const wide = family === 'keyhole' ? free - 0.6 - 0.03 * free : free * (1.05 + 0.15 * random())
  const inPetal = (length: number, off: number, r: number) =>
    ((r * Math.cos(off) - centre(length)) / ((length - inner) / 2)) ** 2 + ((r * Math.sin(off)) / wide) ** 2 <
    1
  const covers = (x: number, y: number) => {
    const r = Math.hypot(x, y)
    if (r <= disc) return true
    const { petal, off } = sectorOf(x, y)
    return [-1, 0, 1].some((by) => inPetal(lengths[(petal + by + petals) % petals]!, off - by * 2 * half, r))
  }
  // Its dips: outwards along the lines between petals until nothing is there.
  let sum = 0
  for (let petal = 0; petal < petals; petal++) {
    const angle = turn + (2 * petal + 1) * half
    let r = disc
    while (covers(r * Math.sin(angle), -r * Math.cos(angle)) && r < tip * 1.2) r += 0.02
    sum += r
  }
  return {
    petals,
    overTips: 2 * meanTip,
    overValleys: (2 * sum) / petals,
    most: Math.max(...lengths),
    covers,
  }
}

/** A regular polygon by its distance from side to side, its corners cut by a round of `rounding` mm. */
export function sided(sides: number, sideToSide: number, turn: number, rounding = 0): Shape {
  const apothem = sideToSide / 2
  const corner = (apothem - rounding) / Math.cos(Math.PI / sides) + rounding
  return {
    petals: sides,
    overTips: 2 * corner,
    overValleys: sideToSide,
    most: corner,
    covers: (x, y) => {
      const r = Math.hypot(x, y)
      if (r > corner) return false
      for (let side = 0; side < sides; side++) {
        const angle = turn + ((2 * side + 1) * Math.PI) / sides
        if (x * Math.sin(angle) - y * Math.cos(angle) > apothem) return false
      }
      return true
    },
  }
}

export const disc = (across: number): Shape => ({
  petals: 0,
  overTips: across,
  overValleys: across,
  most: across / 2,
  covers: (x, y) => Math.hypot(x, y) < across / 2,
})
