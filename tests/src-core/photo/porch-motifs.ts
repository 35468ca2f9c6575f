/**
 * Motifs of the porch, a fourth renderer of pictures: made of strands of yarn, one stitch after another, as a hook makes
 * them: a middle worked in a spiral, then petals of stitches that fan out, each as high as yarn lies there. What is seen
 * between the stitches is paper; the true measures are taken from the yarn itself.
 */

/** Numbers between 0 and 1, the same each time: a Weyl sequence, stirred. */
export function draws(seed: number): () => number {
  let state = Math.imul(seed ^ 0x51ed270b, 0x9e3779b1) >>> 0
  return () => {
    state = (state + 0x9e3779b9) >>> 0
    let word = state
    word = Math.imul(word ^ (word >>> 16), 0x85ebca6b)
    word = Math.imul(word ^ (word >>> 13), 0xc2b2ae35)
    return ((word ^ (word >>> 16)) >>> 0) / 4_294_967_296
  }
}

export const SHAPES = [
  'shell',
  'pointed',
  'leaf',
  'heart',
  'overlapping',
  'arches',
  'fan',
  'clusters',
] as const
export type Shape = (typeof SHAPES)[number]

/** A motif as a field of heights in mm, 0 where no yarn lies. */
export interface Crocheted {
  readonly shape: Shape
  readonly petals: number
  readonly overTips: number
  readonly overValleys: number
  readonly most: number
  readonly size: number
  readonly fine: number
  readonly height: Float32Array
  /** Which of the yarns lies on top, and how far along its strand, in mm. */
  readonly yarn: Uint8Array
  readonly along: Float32Array
}

export interface CrochetWish {
  readonly shape: Shape
  readonly petals: number
  readonly overTips: number
  /** Radius of the middle as a share of the tips. */
  readonly core: number
  /** Width of petals as a share of what they have. */
  readonly width: number
  readonly turn: number
  /** Radius of the yarn in mm. */
  readonly strand: number
  readonly uneven: number
  readonly yarns: number
  readonly random: () => number
}

type Spot = readonly [number, number]

/** Draws strands: capsules, thicker at one end, the higher one on top. */
class Board {
  readonly size: number
  readonly height: Float32Array
  readonly yarn: Uint8Array
  readonly along: Float32Array

  constructor(
    readonly fine: number,
    far: number,
  ) {
    this.size = 2 * Math.ceil(far * fine) + 1
    this.height = new Float32Array(this.size ** 2)
    this.yarn = new Uint8Array(this.size ** 2)
    this.along = new Float32Array(this.size ** 2)
  }

  strand([ax, ay]: Spot, [bx, by]: Spot, from: number, to: number, base: number, yarn: number) {
    const { fine, size } = this
    const half = (size - 1) / 2
    const thick = Math.max(from, to)
    const bound = (value: number) => Math.min(size - 1, Math.max(0, Math.round(half + value * fine)))
    const [x0, x1] = [bound(Math.min(ax, bx) - thick), bound(Math.max(ax, bx) + thick)]
    const [y0, y1] = [bound(Math.min(ay, by) - thick), bound(Math.max(ay, by) + thick)]
    const [dx, dy] = [bx - ax, by - ay]
    const length = dx * dx + dy * dy
    for (let row = y0; row <= y1; row++)
      for (let column = x0; column <= x1; column++) {
        const [px, py] = [(column - half) / fine - ax, (row - half) / fine - ay]
        const t = length > 0 ? Math.min(1, Math.max(0, (px * dx + py * dy) / length)) : 0
        const radius = from + t * (to - from)
        const off = (px - t * dx) ** 2 + (py - t * dy) ** 2
        if (off >= radius * radius) continue
        const high = base + Math.sqrt(radius * radius - off)
        const at = row * size + column
        if (high <= this.height[at]!) continue
        this.height[at] = high
        this.yarn[at] = yarn
        this.along[at] = t * Math.sqrt(length) + 1.7 * Math.sqrt(off)
      }
  }
}

/** The line along which the tops of a petal's stitches lie, `t` from −1 to 1: across and outwards as shares of half its width and of its length. */
function topOf(shape: Shape, t: number): Spot {
  switch (shape) {
    case 'pointed':
      return [
        Math.sign(t) * Math.abs(t) ** 0.9 * (1 - 0.1 * (1 - Math.abs(t))),
        1 - 0.85 * Math.abs(t) ** 1.25,
      ]
    case 'heart': {
      const lobe = Math.abs(t)
      return [
        Math.sin(1.75 * t),
        0.5 + 0.5 * Math.sin(Math.PI * Math.min(1, 0.26 + 0.74 * lobe)) - 0.5 * lobe ** 6,
      ]
    }
    case 'fan':
      return [t, 1 - 0.22 * t * t]
    default:
      return [Math.sin(1.7 * t) / Math.sin(1.7), 0.12 + 0.88 * Math.cos(1.45 * t)]
  }
}

/** Crochets a motif. */
export function crochet(wish: CrochetWish): Crocheted {
  const { shape, petals, turn, strand, random, yarns } = wish
  const tip = wish.overTips / 2
  const fine = Math.min(7, 420 / tip)
  const board = new Board(fine, 1.3 * tip + 2 * strand + 1)
  const core = wish.core * tip
  const at = (angle: number, r: number): Spot => [r * Math.sin(angle), -r * Math.cos(angle)]
  const shake = (by: number) => by * (random() - 0.5)

  // The middle: a spiral of stitches, each a post and the two loops of its top.
  const round = 2.6 * strand
  for (let r = 0.6 * strand, number = 0; r < core; r += round, number++) {
    const count = Math.max(6, Math.round((2 * Math.PI * (r + 0.6 * round)) / (1.75 * strand)))
    const yarn = yarns > 1 ? number % yarns : 0
    for (let k = 0; k < count; k++) {
      const angle = (2 * Math.PI * (k + 0.4 * number)) / count
      const foot = Math.min(core - 0.4 * strand, r + (round * k) / count)
      const head = Math.min(core, foot + round)
      board.strand(at(angle + shake(0.02), foot), at(angle, head), 1.05 * strand, 1.15 * strand, 0, yarn)
      const next = angle + (2 * Math.PI) / count
      board.strand(at(angle, head), at(next, head + shake(0.2 * strand)), 0.5 * strand, 0.5 * strand, 0.9 * strand, yarn) // prettier-ignore
    }
  }

  const sector = (2 * Math.PI) / petals
  for (let k = 0; k < petals; k++) {
    const long = tip * (1 + wish.uneven * (2 * random() - 1)) - 0.6 * strand
    const own = turn + k * sector + wish.uneven * sector * shake(1)
    const inner = shape === 'leaf' ? 0.55 * core : 0.92 * core
    const reach = long - inner
    // Half as wide as the sector has room for at the widest place.
    const widest = inner + (shape === 'leaf' ? 0.5 : shape === 'pointed' ? 0.25 : 0.45) * reach
    const room = wish.width * widest * Math.tan(Math.min(1.15, sector / 2))
    const half = Math.max(
      1.2 * strand,
      Math.min(room, shape === 'leaf' ? 0.3 * reach : 1.15 * reach) - 0.6 * strand,
    )
    const [c, s] = [Math.cos(own), Math.sin(own)]
    const put = ([across, out]: Spot): Spot => [out * s + across * c, -out * c + across * s]
    // Its feet stand on the rim of the middle.
    const standing = (across: number): Spot => {
      const turned = Math.min(0.9 * half, Math.abs(across)) / Math.max(half, core)
      const angle = Math.sign(across) * Math.asin(Math.min(1, turned))
      return put([0.93 * core * Math.sin(angle), 0.93 * core * Math.cos(angle)])
    }
    const yarn = yarns > 1 ? yarns - 1 : 0
    const over = shape === 'overlapping' ? 0.5 * strand * ((k % 2) + 1) : 0.2 * strand
    if (shape === 'leaf') {
      // Along a chain, stitches to both sides.
      const steps = Math.max(5, Math.round(reach / (1.5 * strand)))
      board.strand(put([0, inner]), put([0, long]), 0.8 * strand, 0.6 * strand, over + 0.6 * strand, yarn)
      let before: [Spot, Spot] | null = null
      for (let i = 0; i <= steps; i++) {
        const u = i / steps
        const wide = half * Math.sin(Math.PI * Math.min(1, 0.12 + 0.88 * u)) ** 0.75
        const sides = [-1, 1].map((side) => put([side * wide, inner + reach * Math.min(1, u + 0.06)])) as [
          Spot,
          Spot,
        ]
        for (const side of sides)
          board.strand(put([0, inner + reach * u]), side, strand, 0.95 * strand, over, yarn)
        if (before) for (const j of [0, 1] as const) board.strand(before[j], sides[j], 0.6 * strand, 0.6 * strand, over + 0.4 * strand, yarn) // prettier-ignore
        before = sides
      }
      continue
    }
    const most = shape === 'fan' ? 9 : shape === 'heart' ? 15 : 9
    const stitches =
      shape === 'arches'
        ? Math.max(8, Math.round((2.4 * (half + reach)) / (1.8 * strand)))
        : Math.max(5, Math.min(most, Math.round((2.2 * half + reach) / (1.9 * strand))))
    let before: Spot | null = null
    let last = 0
    for (let i = 0; i < stitches; i++) {
      const t = (2 * i) / (stitches - 1) - 1
      const [across, out] = topOf(shape, t)
      const flat: Spot = [half * across, inner + reach * out]
      const top = put(flat)
      if (shape !== 'arches') {
        // Posts lean apart: as thick as keeps them together, or a little less.
        const apart = last > 0 ? last : (2.6 * half) / stitches
        const thick = Math.max(0.9 * strand, (shape === 'clusters' ? 0.62 : 0.54) * apart)
        board.strand(standing(0.45 * half * t), top, Math.min(thick, 1.1 * strand), thick, over, yarn)
      }
      if (before) {
        last = Math.hypot(top[0] - before[0], top[1] - before[1])
        board.strand(before, top, 0.7 * strand, 0.7 * strand, over + 0.3 * strand, yarn)
      } else board.strand(standing(0.9 * half * across), top, 0.9 * strand, 0.8 * strand, over, yarn)
      if (i === stitches - 1) board.strand(standing(0.9 * half * across), top, 0.9 * strand, 0.8 * strand, over, yarn) // prettier-ignore
      // The head of the stitch.
      board.strand(top, top, 0.85 * strand, 0.85 * strand, over + 0.4 * strand, yarn)
      before = top
    }
    if (shape === 'pointed') {
      const top: Spot = [0, long]
      board.strand(put([0, inner + 0.9 * reach]), put(top), 0.8 * strand, 0.6 * strand, over + strand, yarn)
    }
    if (shape === 'overlapping' && k === petals - 1) break
  }
  return { shape, petals, ...measured(board, wish), ...{ size: board.size, fine, height: board.height } }
}

/** Tips and dips of the yarn, its holes filled, by how far out a place is that is on it. */
function measured(board: Board, { petals, turn }: CrochetWish) {
  const { size, fine, height, yarn, along } = board
  const half = (size - 1) / 2
  const COUNT = 2880
  const reach = Float64Array.from({ length: COUNT }, (_, at) => {
    const angle = turn + (2 * Math.PI * at) / COUNT
    for (let r = half; r > 0; r -= 0.5) {
      const [column, row] = [Math.round(half + r * Math.sin(angle)), Math.round(half - r * Math.cos(angle))]
      if (row >= 0 && column >= 0 && row < size && column < size && height[row * size + column]! > 0)
        return r / fine
    }
    return 0
  })
  const each = COUNT / petals
  const part = (from: number, to: number) =>
    Array.from(
      { length: Math.round(to) - Math.round(from) },
      (_, i) => reach[(Math.round(from) + i + COUNT) % COUNT]!,
    )
  const mean = (value: (k: number) => number) =>
    Array.from({ length: petals }, (_, k) => value(k)).reduce((sum, value) => sum + value, 0) / petals
  return {
    ...{ yarn, along, most: Math.max(...reach) },
    overTips: 2 * mean((k) => Math.max(...part((k - 0.4) * each, (k + 0.4) * each))),
    overValleys: 2 * mean((k) => Math.min(...part((k + 0.2) * each, (k + 0.8) * each))),
  }
}
