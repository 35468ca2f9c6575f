/**
 * M27, M32: the openings between motifs. On a lattice they repeat, so a small patch is looked at: outlines are
 * grown until neighbours close at their meeting points, what their union encloses are the openings. The size
 * of each is the radius of the largest circle in it (pole of inaccessibility).
 */
import polylabel from 'polylabel'
import type { HoleKind } from '../../shared-types/plan'
import { moveOutline, signedArea } from '../geometry/points'
import type { Outline } from '../geometry/points'
import { grow, union } from '../geometry/polygons'
import type { Millimetres } from '../units/quantity'
import { layBlanket } from './blanket'
import type { BlanketCounts, Placement } from './blanket'
import type { Lattice } from './lattice'

/** Rows and columns of the patch: every kind of opening occurs in it, with all the motifs round it. */
const PATCH = { rows: 5, columns: 4 } as const
/** Openings narrower than this across are closed by the meeting points themselves, in mm. */
const LEAST_ACROSS: Millimetres = 4
/** Grown this much beyond half of the gap to bridge, so that neighbours overlap rather than touch, in mm. */
const OVERLAP: Millimetres = 0.05

interface Opening {
  readonly motifs: readonly Placement[]
  readonly radius: Millimetres
}

/** Openings between the motifs of a blanket, by kind; `spread` is the largest gap that joins bridge, in mm. */
export function holesOf(
  lattice: Lattice,
  counts: BlanketCounts,
  placements: readonly Placement[],
  spread: Millimetres,
): HoleKind[] {
  const places = new Set(placements.map((p) => key(p.row, p.halves)))
  const offset = counts.arrangement !== 'straight-rows'
  const patch: BlanketCounts = {
    ...counts,
    ...PATCH,
    arrangement: offset ? 'offset-rows' : 'straight-rows',
    alternateRows: 'same',
    alternateTurn: lattice.turns[1] - lattice.turns[0],
  }
  const openings = openingsOf(lattice, layBlanket(lattice, patch).placements, spread / 2 + OVERLAP)
  const kinds = new Map<
    string,
    { sides: number; radius: number; shape: [number, number][]; parity: number }
  >()
  for (const { motifs, radius } of openings) {
    const first = motifs[0]!
    const shape = motifs.map((m): [number, number] => [m.row - first.row, m.halves - first.halves])
    const parity = offset && counts.arrangement !== 'rings' ? first.row % 2 : -1
    const name = `${parity} ${shape.join(' ')}`
    if (!kinds.has(name)) kinds.set(name, { sides: motifs.length, radius, shape, parity })
  }
  const found: HoleKind[] = []
  for (const { sides, radius, shape, parity } of kinds.values()) {
    let count = 0
    for (const p of placements) {
      if (parity >= 0 && p.row % 2 !== parity) continue
      if (shape.every(([row, halves]) => places.has(key(p.row + row, p.halves + halves)))) count++
    }
    if (count > 0) add(found, { sides, count, radius })
  }
  return found.sort((a, b) => b.radius - a.radius)
}

const key = (row: number, halves: number): string => `${row}:${halves}`

/** Openings of the same size and kind are told together. */
function add(found: HoleKind[], hole: HoleKind): void {
  const like = found.findIndex((h) => h.sides === hole.sides && Math.abs(h.radius - hole.radius) < 0.01)
  if (like < 0) found.push(hole)
  else found[like] = { ...hole, count: found[like]!.count + hole.count }
}

function openingsOf(lattice: Lattice, placements: readonly Placement[], by: Millimetres): Opening[] {
  const [odd, even] = lattice.outlines.map((outline) => grow([outline], by)[0]!) as [Outline, Outline]
  const outlines = placements.map((p) => moveOutline(p.even ? even : odd, p.x, p.y))
  const openings: Opening[] = []
  for (const contour of union(outlines)) {
    if (signedArea(contour) >= 0) continue
    const ring = contour.map((point): [number, number] => [point.x, point.y])
    ring.push(ring[0]!)
    const pole = polylabel([ring], 0.01)
    const radius = pole.distance + by
    if (radius * 2 < LEAST_ACROSS) continue
    const motifs = placements.filter((p, i) => touches(outlines[i]!, contour, p))
    openings.push({ motifs: motifs.sort((a, b) => a.row - b.row || a.halves - b.halves), radius })
  }
  return openings
}

/** Whether a motif's outline forms part of a contour: one of the contour's points lies on it. */
function touches(outline: Outline, contour: Outline, centre: Placement): boolean {
  const reach =
    outline.reduce((most, p) => Math.max(most, Math.hypot(p.x - centre.x, p.y - centre.y)), 0) + 0.01
  const near = contour.filter((p) => Math.hypot(p.x - centre.x, p.y - centre.y) <= reach)
  return near.some((p) => outline.some((q) => Math.abs(q.x - p.x) < 0.001 && Math.abs(q.y - p.y) < 0.001))
}
