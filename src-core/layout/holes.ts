/**
 * M27, M32: the openings between motifs. On a lattice they repeat, so a small patch is looked at: outlines are
 * grown until neighbours close at their meeting points, what their union encloses are the openings. The size
 * of each is the radius of the largest circle in it (pole of inaccessibility).
 */
import Flatbush from 'flatbush'
import polylabel from 'polylabel'
import type { HoleKind, Point } from '../../shared-types/plan'
import { boxOf, distance, distanceToEdge, moveOutline, reachOf, signedArea } from '../geometry/points'
import type { Outline } from '../geometry/points'
import { COARSE, grow, union } from '../geometry/polygons'
import type { Millimetres } from '../units/quantity'
import { layBlanket } from './blanket'
import type { BlanketCounts, Placement } from './blanket'
import { outlineAt } from './lattice'
import type { Lattice } from './lattice'
import { kindAt, rowPeriod } from './pattern'

/** Rows and columns of the patch: every kind of opening occurs in it, with all the motifs round it. */
const PATCH = { rows: 5, columns: 4 } as const
/** Openings narrower than this across are closed by the meeting points themselves, in mm. */
export const LEAST_ACROSS: Millimetres = 4
/** Grown this much beyond half of the gap to bridge, so that neighbours overlap rather than touch, in mm. */
export const CLOSED: Millimetres = 0.05

/** A kind of opening, about the centre of its first motif. */
export interface OpeningKind {
  readonly sides: number
  /** Of the largest circle that fits. */
  readonly radius: Millimetres
  /** Where the middle of that circle lies. */
  readonly pole: Point
  /** Its edge, about its first motif, where the motifs are grown by so much. */
  readonly contour: Outline
  readonly by: Millimetres
  /** The motifs round it, by row and place; the first of them at the origin. */
  readonly around: readonly Around[]
  /** Row of the first motif among those after which rows repeat, where they differ; else −1. */
  readonly phase: number
  /** Beside motifs that were put in by hand: no part of the pattern. */
  readonly byHand: boolean
}

export interface Around extends Point {
  /** Rows down and half column pitches to the right of the first motif. */
  readonly row: number
  readonly halves: number
  readonly even: boolean
  readonly kind: number
}

/** An opening of a blanket. */
export interface Opening {
  readonly kind: OpeningKind
  /** Indices of the motifs round it, as in `kind.around`. */
  readonly motifs: readonly number[]
}

/** Every opening of a blanket; `spread` is the largest gap that joins bridge, in mm. */
export function openingsOf(
  lattice: Lattice,
  counts: BlanketCounts,
  placements: readonly Placement[],
  spread: Millimetres,
): Opening[] {
  const places = new Map(placements.map((p, i) => [key(p.row, p.halves), i]))
  const period = 2 * counts.columns
  const at = (row: number, halves: number): number | undefined => {
    const here = places.get(key(row, halves))
    if (here !== undefined || !counts.inTheRound) return here
    return places.get(key(row, halves - period)) ?? places.get(key(row, halves + period))
  }
  const found: Opening[] = []
  const kinds = openingKinds(lattice, counts.arrangement, spread)
  const rows = rowPeriod(lattice.pattern)
  for (const p of placements)
    for (const kind of kinds) {
      if (kind.phase >= 0 && p.row % rows !== kind.phase) continue
      const motifs: number[] = []
      for (const { row, halves, kind: wanted } of kind.around) {
        const motif = at(p.row + row, p.halves + halves)
        if (motif === undefined || placements[motif]!.kind !== wanted) break
        if (lattice.extra.size > 0 && isMoved(lattice, p.row, p.row + row)) break
        motifs.push(motif)
      }
      if (motifs.length === kind.sides) found.push({ kind, motifs })
    }
  return [...found, ...openingsByHand(lattice, placements, spread)]
}

/** Whether rows stand farther from each other than in the pattern. */
const isMoved = ({ extra }: Lattice, from: number, to: number): boolean =>
  Array.from({ length: Math.abs(to - from) }, (_, i) => Math.min(from, to) + i).some((row) => extra.has(row))

/** Most motifs beside those put in by hand whose openings are looked for one by one. */
const MOST_BY_HAND = 1500

/** Openings beside motifs that the pattern does not have there, or between rows that these moved: each by itself. */
function openingsByHand(lattice: Lattice, placements: readonly Placement[], spread: Millimetres): Opening[] {
  const { pattern, extra, shapes } = lattice
  if (shapes.length === pattern.count && extra.size === 0) return []
  const isOwn = (p: Placement): boolean => p.kind !== kindAt(pattern, p.row, p.halves)
  const isUneven = (p: Placement): boolean => isOwn(p) || extra.has(p.row) || extra.has(p.row - 1)
  const reach = Math.max(...shapes.map(([odd]) => reachOf(odd)))
  const own = placements.filter(isUneven)
  const near = placements.filter((p) => own.some((q) => Math.hypot(p.x - q.x, p.y - q.y) < 3 * reach))
  if (near.length > MOST_BY_HAND) return []
  const index = new Map(placements.map((p, i) => [p.id, i]))
  const by = spread / 2 + CLOSED
  return lookAt(lattice, near, by).flatMap(({ motifs, contour }): Opening[] => {
    const rows = motifs.map(({ row }) => row)
    if (!motifs.some(isOwn) && !isMoved(lattice, Math.min(...rows), Math.max(...rows))) return []
    // What is cut out is no opening between motifs.
    if (motifs.length > MOST_SIDES) return []
    const kind = kindOf(motifs, contour, by, -1, true)
    return kind ? [{ kind, motifs: motifs.map(({ id }) => index.get(id)!) }] : []
  })
}

/** An opening with more motifs round it is a hole that was left. */
const MOST_SIDES = 6

/** An opening as a kind, about its first motif; null where it is too small. `by`: how far outlines were grown, in mm. */
function kindOf(
  motifs: readonly Placement[],
  contour: Outline,
  by: Millimetres,
  phase: number,
  byHand = false,
): OpeningKind | null {
  const ring = contour.map((point): [number, number] => [point.x, point.y])
  ring.push(ring[0]!)
  const pole = polylabel([ring], 0.01)
  const radius = pole.distance + by
  if (radius * 2 < LEAST_ACROSS) return null
  const first = motifs[0]!
  const around = motifs.map(({ row, halves, x, y, even, kind }) => ({
    row: row - first.row,
    halves: halves - first.halves,
    x: x - first.x,
    y: y - first.y,
    even,
    kind,
  }))
  const middle = { x: pole[0]! - first.x, y: pole[1]! - first.y }
  const edge = moveOutline(contour, -first.x, -first.y)
  return { sides: motifs.length, radius, pole: middle, contour: edge, by, around, phase, byHand }
}

/** Openings by kind, the largest first; those of the same size and number of sides are told together. */
export function holeKinds(openings: readonly Opening[]): HoleKind[] {
  const counts = new Map<OpeningKind, number>()
  for (const { kind } of openings) counts.set(kind, (counts.get(kind) ?? 0) + 1)
  const found: HoleKind[] = []
  for (const [{ sides, radius }, count] of counts) add(found, { sides, count, radius })
  return found.sort((a, b) => b.radius - a.radius)
}

/** Openings of a lattice seen so far: they do not depend on how many motifs there are. */
const seen = new WeakMap<Lattice, Map<string, readonly OpeningKind[]>>()

function openingKinds(
  lattice: Lattice,
  arrangement: BlanketCounts['arrangement'],
  spread: Millimetres,
): readonly OpeningKind[] {
  const known = seen.get(lattice) ?? new Map<string, readonly OpeningKind[]>()
  seen.set(lattice, known)
  const rounded = spread.toFixed(6)
  const name = `${arrangement} ${rounded}`
  let kinds = known.get(name)
  // As rounded, so that it is the same whichever of two plans that differ by less was there first.
  if (!kinds) known.set(name, (kinds = lookForKinds(lattice, arrangement, Number(rounded))))
  return kinds
}

function lookForKinds(
  lattice: Lattice,
  arrangement: BlanketCounts['arrangement'],
  spread: Millimetres,
): OpeningKind[] {
  const offset = arrangement !== 'straight-rows'
  const { pattern } = lattice
  const period = rowPeriod(pattern)
  const patch: BlanketCounts = {
    rows: PATCH.rows + (pattern.count > 1 ? period : 0),
    columns: PATCH.columns + (pattern.count > 1 && pattern.by === 'cell' ? pattern.count : 0),
    arrangement: offset ? 'offset-rows' : 'straight-rows',
    alternateRows: 'same',
    rings: 0,
    turn: lattice.turns[0],
    alternateTurn: lattice.turns[1] - lattice.turns[0],
    inTheRound: false,
  }
  const alternating = offset || lattice.turns[0] !== lattice.turns[1] || pattern.count > 1
  const by = spread / 2 + CLOSED
  const kinds = new Map<string, OpeningKind>()
  for (const { motifs, contour } of lookAt(lattice, layBlanket(lattice, patch).placements, by)) {
    const [first] = motifs as [Placement, ...Placement[]]
    const phase = alternating && arrangement !== 'rings' ? first.row % period : -1
    const at = ({ row, halves, kind }: Placement) => `${row - first.row},${halves - first.halves},${kind}`
    const name = `${phase} ${motifs.map(at).join(' ')}`
    // Most openings of the patch are of a kind that was measured already.
    if (kinds.has(name)) continue
    const kind = kindOf(motifs, contour, by, phase)
    if (kind) kinds.set(name, kind)
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

interface Seen {
  readonly motifs: readonly Placement[]
  readonly contour: Outline
}

/** What the motifs enclose, with those round it. */
function lookAt(lattice: Lattice, placements: readonly Placement[], by: Millimetres): Seen[] {
  const shapes = lattice.shapes.map(
    (shape) => shape.map((outline) => grow([outline], by, COARSE)[0]!) as [Outline, Outline],
  )
  const reaches = shapes.map((shape) => shape.map((outline) => reachOf(outline) + ON_OUTLINE))
  const outlines = placements.map((p) => moveOutline(outlineAt({ shapes }, p), p.x, p.y))
  if (outlines.length === 0) return []
  const tree = new Flatbush(outlines.length)
  for (const outline of outlines) {
    const { left, top, right, bottom } = boxOf(outline)
    tree.add(left, top, right, bottom)
  }
  tree.finish()
  const openings: Seen[] = []
  for (const contour of union(outlines)) {
    if (signedArea(contour) >= 0) continue
    const { left, top, right, bottom } = boxOf(contour)
    const near = tree.search(left - ON_OUTLINE, top - ON_OUTLINE, right + ON_OUTLINE, bottom + ON_OUTLINE)
    const motifs = near
      .map((i): [Placement, Outline] => [placements[i]!, outlines[i]!])
      .filter(([p, outline]) => bounds(outline, contour, p, reaches[p.kind]![p.even ? 1 : 0]!))
      .map(([p]) => p)
    if (motifs.length === 0) continue
    motifs.sort((a, b) => a.row - b.row || a.halves - b.halves)
    openings.push({ motifs, contour })
  }
  return openings
}

/** Farther apart than this a point does not lie on an outline: ten steps of the polygon library's grid, in mm. */
const ON_OUTLINE: Millimetres = 0.001

/** Whether a motif's outline forms part of a contour: one of the contour's points lies on one of its edges. */
function bounds(outline: Outline, contour: Outline, centre: Point, reach: Millimetres): boolean {
  return contour.some((p) => distance(p, centre) <= reach && liesOn(p, outline))
}

function liesOn(p: Point, outline: Outline): boolean {
  let a = outline[outline.length - 1]!
  for (const b of outline) {
    // Most edges are far away: their box tells, for a fraction of what the distance costs.
    if (
      p.x >= (a.x < b.x ? a.x : b.x) - ON_OUTLINE &&
      p.x <= (a.x < b.x ? b.x : a.x) + ON_OUTLINE &&
      p.y >= (a.y < b.y ? a.y : b.y) - ON_OUTLINE &&
      p.y <= (a.y < b.y ? b.y : a.y) + ON_OUTLINE &&
      distanceToEdge(p, a, b) <= ON_OUTLINE
    )
      return true
    a = b
  }
  return false
}
