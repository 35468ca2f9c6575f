/** M27: where the motifs round a filler come nearest to it: of places that face it alike, those spread most evenly. */
import type { Point } from '../../shared-types/plan'
import { directionOf, distance, distanceToEdge, nearestShare } from '../geometry/points'
import type { Outline } from '../geometry/points'
import type { Millimetres, Radians } from '../units/quantity'

/** Places that are farther by no more than this face the filler alike, in mm: its middle is found on a grid. */
const ALIKE: Millimetres = 0.05
/** A choice of places is more even than another when its steps, squared, come to so much less, in square radians. */
const MORE_EVEN = 0.01

/**
 * For each motif round a filler, about its middle, the place that comes nearest to it. Where two petals of a motif
 * face it alike, that of the two is taken with which the places of all lie most evenly round the filler.
 */
export function facingPoints(outlines: readonly Outline[]): Point[] {
  if (outlines.length === 0) return []
  const found = outlines.map(nearestPlaces)
  const round = outlines
    .map((_, motif) => motif)
    .sort((a, b) => directionOf(middleOf(found[a]!)) - directionOf(middleOf(found[b]!)))
  const even = evenRound(round.map((motif) => found[motif]!.map(directionOf)))
  const chosen = new Map(round.map((motif, i) => [motif, even[i]!]))
  return found.map((places, motif) => places[chosen.get(motif)!]!)
}

const middleOf = (points: readonly Point[]): Point => ({
  x: points.reduce((sum, { x }) => sum + x, 0) / points.length,
  y: points.reduce((sum, { y }) => sum + y, 0) / points.length,
})

/** Where an outline comes nearest to the origin, clockwise: one place for each petal that does. */
function nearestPlaces(outline: Outline): Point[] {
  const origin = { x: 0, y: 0 }
  const edges = outline.map((a, i) => {
    const b = outline[(i + 1) % outline.length]!
    return { a, b, far: distanceToEdge(origin, a, b) }
  })
  const least = Math.min(...edges.map(({ far }) => far))
  const edgeAt = (i: number) => edges[(i + edges.length) % edges.length]!
  const isNear = (far: Millimetres): boolean => far <= least + ALIKE
  // Edges that are near belong to one place where the corner between them is near, too.
  const goesOn = (i: number): boolean =>
    isNear(edgeAt(i - 1).far) && isNear(edgeAt(i).far) && isNear(distance(edgeAt(i).a, origin))
  const places: Point[] = []
  edges.forEach((first, i) => {
    if (!isNear(first.far) || goesOn(i)) return
    let nearest = first
    for (let next = i + 1; goesOn(next); next++)
      if (edgeAt(next).far < nearest.far - 1e-6) nearest = edgeAt(next)
    const share = nearestShare(origin, nearest.a, nearest.b)
    const { a, b } = nearest
    places.push({ x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share })
  })
  if (places.length === 0)
    return [outline.reduce((a, b) => (distance(b, origin) < distance(a, origin) ? b : a))]
  const from = directionOf(middleOf(places))
  return places.sort((a, b) => turned(directionOf(a) - from) - turned(directionOf(b) - from))
}

/** An angle from -180° up to 180°. */
const turned = (angle: Radians): Radians => Math.atan2(Math.sin(angle), Math.cos(angle))

/** Which of the directions of each motif, in their order round, make the most even steps: least squared in all. */
function evenRound(choices: readonly (readonly Radians[])[]): number[] {
  let best: { total: number; picks: number[] } | null = null
  for (const [first, start] of choices[0]!.entries()) {
    let ends = [{ total: 0, at: start, picks: [first] }]
    for (const directions of choices.slice(1))
      ends = directions.map((direction, pick) => {
        const least = ends
          .map(({ total, at, picks }) => ({ total: total + step(at, direction), picks }))
          .reduce((a, b) => (b.total < a.total - MORE_EVEN ? b : a))
        return { total: least.total, at: direction, picks: [...least.picks, pick] }
      })
    for (const { total, at, picks } of ends) {
      const closed = total + step(at, start)
      if (!best || closed < best.total - MORE_EVEN) best = { total: closed, picks }
    }
  }
  return best!.picks
}

/** The step onward from one direction to the next round, squared. */
function step(from: Radians, to: Radians): number {
  const onward = turned(to - from - Math.PI) + Math.PI
  return onward * onward
}
