/** Paths as lines of points, for what has to keep clear of them. */
import type { Point } from '../../../shared-types/plan'
import type { Path } from '../figure'

const PIECES = 8
const FINE = 0.6

/** Each run of the path as points; curves in eight pieces, lines in pieces of at most `FINE` mm. */
export function flattenPath(path: Path): Point[][] {
  const runs: Point[][] = []
  let run: Point[] = []
  for (const segment of path) {
    const last = run[run.length - 1]
    switch (segment[0]) {
      case 'M':
        run = [{ x: segment[1], y: segment[2] }]
        runs.push(run)
        break
      case 'L':
        if (last) run.push(...lineTo(last, { x: segment[1], y: segment[2] }))
        break
      case 'C':
        if (last) run.push(...curveTo(last, segment))
        break
      case 'Z':
        if (last && run[0]) run.push(...lineTo(last, run[0]))
    }
  }
  return runs
}

function lineTo(a: Point, b: Point): Point[] {
  const pieces = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / FINE))
  return Array.from({ length: pieces }, (_, i) => {
    const t = (i + 1) / pieces
    return { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t }
  })
}

function curveTo(
  a: Point,
  [, x1, y1, x2, y2, x3, y3]: readonly ['C', number, number, number, number, number, number],
): Point[] {
  return Array.from({ length: PIECES }, (_, i) => {
    const t = (i + 1) / PIECES
    const s = 1 - t
    const mix = (p: number, q: number, r: number, u: number): number =>
      s * s * s * p + 3 * s * s * t * q + 3 * s * t * t * r + t * t * t * u
    return { x: mix(a.x, x1, x2, x3), y: mix(a.y, y1, y2, y3) }
  })
}
