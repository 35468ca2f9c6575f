/**
 * SVG path data (the text of a path's `d`) as polygons, safely: nothing but path data is read, sizes are limited
 * before anything is parsed, and every number is looked at. svgpath reads the grammar; arcs are laid here, since
 * turning them into cubics would lose a quarter of a millimetre on a metre.
 */
import svgpath from 'svgpath'
import type { Point } from '../../shared-types/plan'
import type { Millimetres } from '../units/quantity'
import type { Outline } from './points'

/** Longest text that is parsed. */
export const MOST_PATH_CHARACTERS = 100_000
/** Most corners that a path may come out with. */
export const MOST_PATH_POINTS = 5000
/** Largest coordinate in mm; a project is no larger than a few metres. */
export const MOST_COORDINATE = 100_000
/** Largest distance between a curve and its polygon, in mm. */
export const FLATNESS: Millimetres = 0.05

export type PathTrouble =
  | { readonly kind: 'empty' }
  | { readonly kind: 'too-long'; readonly characters: number }
  | { readonly kind: 'markup' }
  | { readonly kind: 'unreadable'; readonly at: number; readonly found: string }
  | { readonly kind: 'number' }
  | { readonly kind: 'too-many-points' }

interface SubPath {
  readonly points: Outline
  readonly closed: boolean
}

/** The pieces of a path in mm, each flattened, or why it cannot be read. */
export function readPath(text: string): { subPaths: SubPath[] } | { trouble: PathTrouble } {
  if (text.length > MOST_PATH_CHARACTERS) return { trouble: { kind: 'too-long', characters: text.length } }
  if (text.trim() === '') return { trouble: { kind: 'empty' } }
  if (/[<>&"'=]/.test(text)) return { trouble: { kind: 'markup' } }
  const stranger = /[^MmZzLlHhVvCcSsQqTtAaEe0-9+\-.,\s]/.exec(text)
  if (stranger) return { trouble: { kind: 'unreadable', at: stranger.index + 1, found: stranger[0] } }
  const path = svgpath(text) as ReturnType<typeof svgpath> & { readonly err: string }
  if (path.err) {
    const at = Number(/pos (\d+)/.exec(path.err)?.[1] ?? 0)
    return { trouble: { kind: 'unreadable', at: at + 1, found: text.slice(at, at + 1) || 'the end' } }
  }
  let usable = true
  path.iterate((segment) => {
    usable &&= segment.slice(1).every((value) => Math.abs(Number(value)) <= MOST_COORDINATE)
  })
  if (!usable) return { trouble: { kind: 'number' } }
  return new Flattener().read(path.abs().unshort())
}

class Flattener {
  private readonly subPaths: { points: Point[]; closed: boolean }[] = []
  private count = 0
  private full = false

  read(path: ReturnType<typeof svgpath>): { subPaths: SubPath[] } | { trouble: PathTrouble } {
    path.iterate((segment, _, x, y) => {
      if (this.full) return
      const from = { x, y }
      switch (segment[0]) {
        case 'M':
          this.subPaths.push({ points: [], closed: false })
          this.add([{ x: segment[1], y: segment[2] }])
          break
        case 'L':
          this.line(from, { x: segment[1], y: segment[2] })
          break
        case 'H':
          this.line(from, { x: segment[1], y })
          break
        case 'V':
          this.line(from, { x, y: segment[1] })
          break
        case 'C':
          this.bezier([from, ...pairs(segment.slice(1) as number[])])
          break
        case 'Q':
          this.bezier([from, ...pairs(segment.slice(1) as number[])])
          break
        case 'A':
          this.arc(from, segment.slice(1) as number[])
          break
        default:
          this.close()
      }
    })
    if (this.full) return { trouble: { kind: 'too-many-points' } }
    return {
      subPaths: this.subPaths.map(({ points, closed }) => ({
        points: tidy(points),
        closed: closed || same(points[0]!, points.at(-1)!),
      })),
    }
  }

  private add(points: readonly Point[]): void {
    this.count += points.length
    if (this.count > MOST_PATH_POINTS) this.full = true
    else this.subPaths.at(-1)?.points.push(...points)
  }

  /** After a closed piece the next one may begin without a move, where that one began. */
  private open(from: Point): void {
    if (this.subPaths.at(-1)?.closed !== true) return
    this.subPaths.push({ points: [from], closed: false })
  }

  private close(): void {
    const last = this.subPaths.at(-1)
    if (last) last.closed = true
  }

  private line(from: Point, to: Point): void {
    this.open(from)
    this.add([to])
  }

  /** A Bézier curve in equal steps of its parameter, as many as Wang's bound on its second differences asks for. */
  private bezier(control: readonly Point[]): void {
    this.open(control[0]!)
    const degree = control.length - 1
    let bend = 0
    for (let i = 0; i + 2 < control.length; i++) {
      const [a, b, c] = [control[i]!, control[i + 1]!, control[i + 2]!]
      bend = Math.max(bend, Math.hypot(a.x - 2 * b.x + c.x, a.y - 2 * b.y + c.y))
    }
    const steps = Math.max(1, Math.ceil(Math.sqrt((degree * (degree - 1) * bend) / (8 * FLATNESS))))
    this.steps(steps, (share) => casteljau(control, share), control[degree]!)
  }

  /** An elliptical arc by its centre (SVG 1.1, appendix F.6). */
  private arc(from: Point, [rx0, ry0, rotation, large, sweep, x, y]: readonly number[]): void {
    this.open(from)
    const to = { x: x!, y: y! }
    let rx = Math.abs(rx0!)
    let ry = Math.abs(ry0!)
    if (rx === 0 || ry === 0 || (from.x === to.x && from.y === to.y)) return this.add([to])
    const tilt = (rotation! * Math.PI) / 180
    const [cos, sin] = [Math.cos(tilt), Math.sin(tilt)]
    const dx = (from.x - to.x) / 2
    const dy = (from.y - to.y) / 2
    const px = cos * dx + sin * dy
    const py = -sin * dx + cos * dy
    const over = (px / rx) ** 2 + (py / ry) ** 2
    if (over > 1) {
      rx *= Math.sqrt(over)
      ry *= Math.sqrt(over)
    }
    const below = (rx * py) ** 2 + (ry * px) ** 2
    const root = Math.sqrt(Math.max(0, (rx * ry) ** 2 - below) / below) * (large === sweep ? -1 : 1)
    const cx = (root * rx * py) / ry
    const cy = (-root * ry * px) / rx
    const start = Math.atan2((py - cy) / ry, (px - cx) / rx)
    const end = Math.atan2((-py - cy) / ry, (-px - cx) / rx)
    let turn = end - start
    if (sweep === 1 && turn < 0) turn += 2 * Math.PI
    if (sweep === 0 && turn > 0) turn -= 2 * Math.PI
    const step = 2 * Math.acos(Math.max(0, 1 - FLATNESS / Math.max(rx, ry)))
    const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }
    this.steps(
      Math.max(1, Math.ceil(Math.abs(turn) / step)),
      (share) => {
        const ex = rx * Math.cos(start + share * turn) + cx
        const ey = ry * Math.sin(start + share * turn) + cy
        return { x: cos * ex - sin * ey + middle.x, y: sin * ex + cos * ey + middle.y }
      },
      to,
    )
  }

  private steps(count: number, at: (share: number) => Point, end: Point): void {
    if (this.count + count > MOST_PATH_POINTS) {
      this.full = true
      return
    }
    this.add(Array.from({ length: count }, (_, i) => (i + 1 === count ? end : at((i + 1) / count))))
  }
}

function pairs(values: readonly number[]): Point[] {
  const points: Point[] = []
  for (let i = 0; i + 1 < values.length; i += 2) points.push({ x: values[i]!, y: values[i + 1]! })
  return points
}

function casteljau(control: readonly Point[], share: number): Point {
  let points = control
  while (points.length > 1)
    points = points.slice(1).map((b, i) => {
      const a = points[i]!
      return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share }
    })
  return points[0]!
}

/** Corners nearer than this to the one before are the same corner, in mm. */
const SAME = 1e-6
const same = (a: Point, b: Point): boolean => Math.abs(a.x - b.x) < SAME && Math.abs(a.y - b.y) < SAME

/** The points without those that repeat the one before; a last one that comes back to the first goes too. */
export function tidy(points: readonly Point[]): Point[] {
  const kept = points.filter((point, i) => i === 0 || !same(point, points[i - 1]!))
  while (kept.length > 1 && same(kept[0]!, kept.at(-1)!)) kept.pop()
  return kept
}
