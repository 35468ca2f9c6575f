/**
 * Motifs for the window sill, an eighth renderer: each is how far a place lies outside the union of plain figures
 * (ellipses, rods, pegs, boxes, straight-sided ones), whose true measures are read off rays before any stitch is worked.
 * Stitches are Vs in rows that follow the edge. Some motifs have no petals at all, and some no symmetry.
 */

export const SILL_FORMS = ['rosette', 'daisy', 'sides', 'clover', 'cog', 'disc', 'star', 'odd', 'rosette', 'daisy', 'cog', 'star'] as const // prettier-ignore
export type SillForm = (typeof SILL_FORMS)[number]
export type Between = (least: number, most: number) => number
type Figure = (x: number, y: number) => number

export interface SillMotif {
  readonly form: SillForm
  readonly petals: number
  readonly overTips: number
  readonly overValleys: number
  readonly most: number
  /** How far outside the yarn a place is, in mm, its stitches counted; within it, below 0. */
  readonly outside: Figure
  /** How high the yarn stands, 0 to 1, where V-shaped stitches lie in rows along the edge. */
  readonly relief: Figure
}

/** An ellipse about (c, 0): its value over its slope, which is its distance near the line. */
const ellipse =
  (c: number, a: number, b: number): Figure =>
  (x, y) => {
    const [u, v] = [(x - c) / a, y / b]
    const k = Math.hypot(u, v)
    return k < 1e-6 ? -Math.min(a, b) : (k * (k - 1)) / Math.hypot(u / a, v / b)
  }

/** A rod with round ends along x, `wide` to each side, or one that grows from `wide` to `end`. */
const rod =
  (from: number, to: number, wide: number, end = wide): Figure =>
  (x, y) => {
    const t = Math.min(1, Math.max(0, (x - from) / (to - from)))
    return Math.hypot(x - from - t * (to - from), y) - wide - t * (end - wide)
  }

/** A box from 0 to `to` along x, with rounded corners. */
const box =
  (to: number, wide: number, round: number): Figure =>
  (x, y) => {
    const [u, v] = [Math.max(x - to, -x) + round, Math.abs(y) - wide + round]
    return Math.min(Math.max(u, v), 0) + Math.hypot(Math.max(u, 0), Math.max(v, 0)) - round
  }

/** A straight line from a corner at (far, 0) to (near, half) in polar places, folded round the middle. */
const straight =
  (count: number, far: number, near: number, round: number): Figure =>
  (x, y) => {
    const half = Math.PI / count
    const angle = Math.atan2(y, x)
    const folded = Math.abs(angle - 2 * half * Math.round(angle / (2 * half)))
    const r = Math.hypot(x, y)
    const [px, py] = [r * Math.cos(folded), r * Math.sin(folded)]
    const [ex, ey] = [near * Math.cos(half) - far, near * Math.sin(half)]
    const long = Math.hypot(ex, ey)
    const t = Math.min(1, Math.max(0, ((px - far) * ex + py * ey) / (long * long)))
    const side = ((px - far) * ey - py * ex) / long
    const away = Math.hypot(px - far - t * ex, py - t * ey)
    return (side > 0 ? away : -away) - round
  }

const RAYS = 2880

/** Lays a motif out: `asked` petals where the form has petals of any number. */
export function sillMotif(form: SillForm, asked: number, overTips: number, between: Between): SillMotif {
  const tip = overTips / 2
  const count = form === 'sides' ? [4, 6, 8][asked % 3]! : form === 'clover' ? 3 + (asked % 6) : form === 'odd' || form === 'disc' ? 5 : asked // prettier-ignore
  const half = Math.PI / count
  const turn = between(0, 2 * Math.PI)
  const uneven = between(0, 0.025)
  const sine = Math.sin(half)
  const wide = between(0.8, 1.02)
  const core = between(0.42, 0.62)
  const [long, even] = [between(0.7, 1.1), between(0.62, 0.82)]
  const figureOf = (far: number): Figure => {
    switch (form) {
      case 'rosette': {
        // Half as broad as its sector has room for where it is broadest, or more: then petals lie over each other.
        const along = far * (1 - core) * 0.62
        return ellipse(far - along, along, Math.min(along * 1.3, (far - along) * Math.tan(Math.min(1, half)) * (wide + 0.12))) // prettier-ignore
      }
      case 'daisy': {
        const broad = Math.min(0.28 * far, core * 1.25 * far * sine)
        return rod(0, far - broad, broad)
      }
      case 'clover': {
        const lobe = Math.min(0.36 * far, (far * sine * wide) / (1 + sine))
        return rod(0, far - lobe, 0.35 * lobe, lobe)
      }
      case 'cog':
        return box(far, Math.min(0.4 * far, even * far * sine), Math.min(2.5, 0.3 * far * sine))
      default:
        return ellipse(0, far, far)
    }
  }
  const own = Array.from({ length: count }, (_, k) => {
    const angle = turn + 2 * half * k + between(-1, 1) * uneven * half
    return { c: Math.cos(angle), s: Math.sin(angle), is: figureOf(tip * (1 + between(-1, 1) * uneven)) }
  })
  const [c, s] = [Math.cos(turn), Math.sin(turn)]
  const turned =
    (figure: Figure): Figure =>
    (x, y) =>
      figure(x * c + y * s, y * c - x * s)
  const inner = form === 'cog' ? core + 0.2 : form === 'clover' ? 0.2 : core * 0.9
  const petals: Figure = (x, y) => {
    const about = Math.round((Math.atan2(y, x) - turn) / (2 * half))
    let least = Math.hypot(x, y) - inner * tip
    for (let by = -1; by <= 1; by++) {
      const each = own[(((about + by) % count) + count) % count]!
      least = Math.min(least, each.is(x * each.c + y * each.s, y * each.c - x * each.s))
    }
    return least
  }
  const round = between(1, 0.08 * tip)
  const [blob, arm, leg] = [ellipse(0.1 * tip, 0.62 * tip, 0.4 * tip), rod(0, 0.8 * tip * long, 0.3 * tip, 0.16 * tip), rod(0, 0.5 * tip, 0.2 * tip, 0.3 * tip)] // prettier-ignore
  const plain: Figure =
    form === 'sides'
      ? turned(straight(count, tip - round, (tip - round) * Math.cos(half), round))
      : form === 'star'
        ? turned(straight(count, tip - 0.5, tip * (1 - (1 - even) * Math.min(1.4, 6 * half)), 0.5))
        : form === 'odd'
          ? turned((x, y) => Math.min(blob(x, y), arm(0.3 * x + 0.95 * y, 0.95 * x - 0.3 * y), leg(-0.8 * x - 0.6 * y, 0.6 * x - 0.8 * y))) // prettier-ignore
          : form === 'disc'
            ? (x, y) => Math.hypot(x, y) - tip
            : petals

  const stitch = between(2.2, 4.2)
  const bump = between(0.1, 0.5)
  const knots = Math.max(10, Math.round((2 * Math.PI * 0.8 * tip) / stitch))
  // The edge goes out in the middle of each stitch and in between two, as far on average.
  const outside: Figure = (x, y) => plain(x, y) - bump * (Math.abs(Math.sin((Math.atan2(y, x) * knots) / 2)) - 0.637) // prettier-ignore
  const reachOf = (figure: Figure) =>
    Float64Array.from({ length: RAYS }, (_, at) => {
      const angle = turn + (at / RAYS) * 2 * Math.PI
      let r = 1.1 * tip
      for (let off = 1; off > 1e-3 && r > 0; r -= Math.max(0.004, 0.7 * off)) off = figure(r * Math.cos(angle), r * Math.sin(angle)) // prettier-ignore
      return r
    })
  const [reach, drawn] = [reachOf(plain), reachOf(outside)]
  const isWhole = form === 'disc' || form === 'odd'
  /** What is farthest or nearest of a line in a part of each sector. */
  const ends = (
    line: Float64Array,
    from: number,
    to: number,
    of: (...values: number[]) => number,
  ): number[] =>
    isWhole
      ? [of(...line)]
      : own.map((_, k) => {
          const part: number[] = []
          for (let i = Math.round(((k + from) * RAYS) / count); i <= ((k + to) * RAYS) / count; i++)
            part.push(line[((i % RAYS) + RAYS) % RAYS]!)
          return of(...part)
        })
  const mean = (values: readonly number[]) => values.reduce((sum, each) => sum + each, 0) / values.length
  // Stitches are no part of a measure, but where they close a cleft it is closed.
  const closed = ends(drawn, 0.2, 0.8, Math.min)
  const dips = ends(reach, 0.2, 0.8, Math.min).map((dip, k) => (closed[k]! > dip + 1 ? closed[k]! : dip))
  return {
    form,
    petals: isWhole ? 0 : count,
    overTips: 2 * mean(ends(reach, -0.4, 0.4, Math.max)),
    overValleys: 2 * mean(dips),
    most: 1.05 * Math.max(...reach),
    outside,
    relief: (x, y) => {
      const deep = -plain(x, y) / stitch
      const rows = deep - Math.floor(deep)
      const around = (Math.atan2(y, x) * Math.hypot(x, y)) / stitch
      const leg = around + 0.5 * Math.abs(2 * rows - 1)
      return Math.sqrt(Math.abs(Math.sin(Math.PI * leg))) * (1 - 0.6 * (2 * rows - 1) ** 2)
    },
  }
}
