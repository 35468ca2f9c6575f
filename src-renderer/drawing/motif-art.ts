/** One motif as paths in mm about its centre, at the level of detail that a scale asks for. */
import type { MotifAccount, Point } from '../../shared-types/plan'
import { simplify } from '../../src-core/geometry/simplify'

export interface MotifArt {
  /** A path for each layer, the outermost first. */
  readonly layers: readonly Path2D[]
  /** Lines on the outermost layer (between petals), and on the innermost (rounds). */
  readonly petalLines: Path2D | null
  readonly centreLines: Path2D | null
}

/** Largest distance in device pixels between an outline and its simpler drawing. */
const TOLERANCE = 0.2
/** The finest level simplifies by this many mm. */
const FINEST = 0.02

/** Paths of one motif by level of detail, made when first asked for. */
export class MotifArtist {
  readonly account: MotifAccount
  readonly #levels = new Map<number, MotifArt>()

  constructor(account: MotifAccount) {
    this.account = account
  }

  /** The art for a scale in device pixels per mm. */
  at(scale: number): MotifArt {
    const level = Math.max(0, Math.floor(Math.log2(TOLERANCE / scale / FINEST)))
    let art = this.#levels.get(level)
    if (!art) this.#levels.set(level, (art = makeArt(this.account, level === 0 ? 0 : FINEST * 2 ** level)))
    return art
  }
}

function makeArt(account: MotifAccount, tolerance: number): MotifArt {
  return {
    layers: account.layers.map(({ outline }) =>
      tolerance === 0 ? smoothPath(outline) : polygonPath(simplify(outline, tolerance)),
    ),
    petalLines: linesPath(petalLines(account)),
    centreLines: ringsPath(centreRings(account), tolerance),
  }
}

type Line = readonly [Point, Point]

/** Lines between petals: from each valley inwards, as far as the next layer or a third of the way. */
export function petalLines(account: MotifAccount): Line[] {
  if (account.shape !== 'petals') return []
  const inner = account.layers[1] ? meanRadius(account.layers[1].outline) : account.overValleys * 0.16
  return account.anchors
    .filter((anchor) => anchor.kind === 'valley')
    .flatMap((anchor): Line[] => {
      const radius = Math.hypot(anchor.x, anchor.y)
      if (radius <= inner * 1.05) return []
      const share = inner / radius
      return [
        [
          { x: anchor.x, y: anchor.y },
          { x: anchor.x * share, y: anchor.y * share },
        ],
      ]
    })
}

/** Contours of the rounds inside a motif, where they are known, and one in the heart of a centre. */
export function centreRings(account: MotifAccount): (readonly Point[])[] {
  const tip = account.overTips / 2
  const known = account.rounds
    .map((round) => round.outerRadius)
    .filter(
      (radius) => radius > 0 && radius < (account.shape === 'petals' ? account.overValleys / 2 : tip) * 0.97,
    )
  const last = account.layers[account.layers.length - 1]
  if (known.length === 0)
    return last && account.layers.length > 1
      ? [last.outline.map(({ x, y }) => ({ x: x * 0.5, y: y * 0.5 }))]
      : []
  if (account.shape === 'straight' || account.shape === 'leaf')
    return known.map((radius) =>
      account.layers[0]!.outline.map(({ x, y }) => ({ x: (x * radius) / tip, y: (y * radius) / tip })),
    )
  return known.map((radius) =>
    Array.from({ length: 48 }, (_, i) => ({
      x: radius * Math.sin((i * Math.PI) / 24),
      y: -radius * Math.cos((i * Math.PI) / 24),
    })),
  )
}

const meanRadius = (outline: readonly Point[]): number =>
  outline.reduce((sum, { x, y }) => sum + Math.hypot(x, y), 0) / Math.max(1, outline.length)

/** Under this bend in degrees a point of an outline lies on a curve; over it, it is a corner. */
const CORNER = 25

/** A closed path for looking closely: curves where the outline bends gently, corners where it has corners. */
function smoothPath(points: readonly Point[]): Path2D {
  const path = new Path2D()
  const at = (i: number) => points[(i + points.length) % points.length]!
  const half = (i: number) => ({ x: (at(i).x + at(i + 1).x) / 2, y: (at(i).y + at(i + 1).y) / 2 })
  const start = half(-1)
  path.moveTo(start.x, start.y)
  points.forEach((point, i) => {
    const before = at(i - 1)
    const after = at(i + 1)
    const next = half(i)
    const first = Math.atan2(point.y - before.y, point.x - before.x)
    const second = Math.atan2(after.y - point.y, after.x - point.x)
    const bend = Math.abs(Math.atan2(Math.sin(second - first), Math.cos(second - first)))
    if (bend * (180 / Math.PI) <= CORNER) path.quadraticCurveTo(point.x, point.y, next.x, next.y)
    else {
      path.lineTo(point.x, point.y)
      path.lineTo(next.x, next.y)
    }
  })
  path.closePath()
  return path
}

/** A closed path through points. */
function polygonPath(points: readonly Point[]): Path2D {
  const path = new Path2D()
  addPolygon(path, points)
  return path
}

function addPolygon(path: Path2D, points: readonly Point[]): void {
  points.forEach(({ x, y }, i) => (i === 0 ? path.moveTo(x, y) : path.lineTo(x, y)))
  path.closePath()
}

function linesPath(lines: readonly Line[]): Path2D | null {
  if (lines.length === 0) return null
  const path = new Path2D()
  for (const [a, b] of lines) {
    path.moveTo(a.x, a.y)
    path.lineTo(b.x, b.y)
  }
  return path
}

function ringsPath(rings: readonly (readonly Point[])[], tolerance: number): Path2D | null {
  if (rings.length === 0) return null
  const path = new Path2D()
  for (const ring of rings) addPolygon(path, simplify(ring, tolerance))
  return path
}
