/**
 * M27, M32: the openings between motifs. On a lattice they repeat, so a small patch is looked at: outlines are
 * grown until neighbours close at their meeting points, what their union encloses are the openings. The size
 * of each is the radius of the largest circle in it (pole of inaccessibility).
 */
import polylabel from 'polylabel'
import type { HoleKind, Point } from '../../shared-types/plan'
import { distance, distanceToEdge, moveOutline, signedArea } from '../geometry/points'
import type { Outline } from '../geometry/points'
import { COARSE, grow, union } from '../geometry/polygons'
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
  const found: HoleKind[] = []
  for (const { sides, radius, shape, parity } of openingKinds(lattice, counts.arrangement, spread)) {
    let count = 0
    for (const p of placements) {
      if (parity >= 0 && p.row % 2 !== parity) continue
      if (shape.every(([row, halves]) => places.has(key(p.row + row, p.halves + halves)))) count++
    }
    if (count > 0) add(found, { sides, count, radius })
  }
  return found.sort((a, b) => b.radius - a.radius)
}

/** Openings of a lattice seen so far: they do not depend on how many motifs there are. */
const seen = new WeakMap<Lattice, Map<string, readonly OpeningKind[]>>()

interface OpeningKind {
  readonly sides: number
  readonly radius: Millimetres
  /** Rows and halves of the motifs round it, from the first of them. */
  readonly shape: readonly (readonly [number, number])[]
  /** Row parity of the first motif, where odd and even rows differ; else −1. */
  readonly parity: number
}

function openingKinds(
  lattice: Lattice,
  arrangement: BlanketCounts['arrangement'],
  spread: Millimetres,
): readonly OpeningKind[] {
  const known = seen.get(lattice) ?? new Map<string, readonly OpeningKind[]>()
  seen.set(lattice, known)
  const name = `${arrangement} ${spread.toFixed(6)}`
  let kinds = known.get(name)
  if (!kinds) known.set(name, (kinds = lookForKinds(lattice, arrangement, spread)))
  return kinds
}

function lookForKinds(
  lattice: Lattice,
  arrangement: BlanketCounts['arrangement'],
  spread: Millimetres,
): OpeningKind[] {
  const offset = arrangement !== 'straight-rows'
  const patch: BlanketCounts = {
    ...PATCH,
    arrangement: offset ? 'offset-rows' : 'straight-rows',
    alternateRows: 'same',
    rings: 0,
    turn: lattice.turns[0],
    alternateTurn: lattice.turns[1] - lattice.turns[0],
  }
  const openings = openingsOf(lattice, layBlanket(lattice, patch).placements, spread / 2 + OVERLAP)
  const kinds = new Map<string, OpeningKind>()
  for (const { motifs, radius } of openings) {
    const first = motifs[0]!
    const shape = motifs.map((m): [number, number] => [m.row - first.row, m.halves - first.halves])
    const parity = offset && arrangement !== 'rings' ? first.row % 2 : -1
    const name = `${parity} ${shape.join(' ')}`
    if (!kinds.has(name)) kinds.set(name, { sides: motifs.length, radius, shape, parity })
  }
  return [...kinds.values()]
}

const key = (row: number, halves: number): string => `${row}:${halves}`

/** Openings of the same size and kind are told together. */
function add(found: HoleKind[], hole: HoleKind): void {
  const like = found.findIndex((h) => h.sides === hole.sides && Math.abs(h.radius - hole.radius) < 0.01)
  if (like < 0) found.push(hole)
  else found[like] = { ...hole, count: found[like]!.count + hole.count }
}

function openingsOf(lattice: Lattice, placements: readonly Placement[], by: Millimetres): Opening[] {
  const [odd, even] = lattice.outlines.map((outline) => grow([outline], by, COARSE)[0]!) as [Outline, Outline]
  const outlines = placements.map((p) => moveOutline(p.even ? even : odd, p.x, p.y))
  const openings: Opening[] = []
  for (const contour of union(outlines)) {
    if (signedArea(contour) >= 0) continue
    const ring = contour.map((point): [number, number] => [point.x, point.y])
    ring.push(ring[0]!)
    const pole = polylabel([ring], 0.01)
    const radius = pole.distance + by
    if (radius * 2 < LEAST_ACROSS) continue
    const motifs = placements.filter((p, i) => bounds(outlines[i]!, contour, p))
    if (motifs.length === 0) continue
    openings.push({ motifs: motifs.sort((a, b) => a.row - b.row || a.halves - b.halves), radius })
  }
  return openings
}

/** Farther apart than this a point does not lie on an outline: ten steps of the polygon library's grid, in mm. */
const ON_OUTLINE: Millimetres = 0.001

/** Whether a motif's outline forms part of a contour: one of the contour's points lies on one of its edges. */
function bounds(outline: Outline, contour: Outline, centre: Point): boolean {
  const reach = outline.reduce((most, p) => Math.max(most, distance(p, centre)), 0) + ON_OUTLINE
  return contour.some(
    (p) =>
      distance(p, centre) <= reach &&
      outline.some((a, i) => distanceToEdge(p, a, outline[(i + 1) % outline.length]!) <= ON_OUTLINE),
  )
}
