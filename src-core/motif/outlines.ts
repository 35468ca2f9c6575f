/**
 * M16, smooth outlines of measured motifs: exact at tips (corners) and valleys (middles of sides), nothing
 * reaches beyond the tip radius. All run clockwise on paper about the motif's centre, petal 1 at 12 o'clock.
 */
import type { Point } from '../../shared-types/plan'
import { polar } from '../geometry/points'
import type { Outline } from '../geometry/points'
import type { Millimetres } from '../units/quantity'
import { OUTLINE_POINTS, PETAL_POWER } from './constants'

/** Points between one tip and the next, an even number so that the valley is a point too. */
const pointsPerPetal = (petals: number): number =>
  Math.min(48, Math.max(12, 2 * Math.round(OUTLINE_POINTS / petals / 2)))

/** Petals: `petals` lobes between the radius of the valleys and that of the tips. */
export function petalOutline(petals: number, tip: Millimetres, valley: Millimetres): Outline {
  const each = pointsPerPetal(petals)
  const outline: Point[] = []
  for (let i = 0; i < petals * each; i++) {
    const lobe = Math.abs(Math.cos((Math.PI * i) / each)) ** PETAL_POWER
    const radius = i % each === 0 ? tip : 2 * (i % each) === each ? valley : valley + (tip - valley) * lobe
    outline.push(polar(radius, (2 * Math.PI * i) / (petals * each)))
  }
  return outline
}

/** A circle. */
export const roundOutline = (radius: Millimetres): Outline =>
  Array.from({ length: OUTLINE_POINTS }, (_, i) => polar(radius, (2 * Math.PI * i) / OUTLINE_POINTS))

/**
 * A straight-sided motif with `sides` sides, the first corner in direction `first` (radians): half side to
 * side `apothem` and half point to point `corner`. Where both agree with a regular polygon the sides are
 * straight; else they bow smoothly so that both measures hold.
 */
export function sidedOutline(
  sides: number,
  apothem: Millimetres,
  corner: Millimetres,
  first: number,
): Outline {
  const half = Math.PI / sides
  const excess = corner - apothem / Math.cos(half)
  const perSide = Math.abs(excess) < 1e-9 * corner ? 2 : 16
  const outline: Point[] = []
  for (let i = 0; i < sides * perSide; i++) {
    const step = (i % perSide) / perSide
    const fromMiddle = Math.abs(step - 0.5) * 2
    const angle = half * fromMiddle
    // Measures that contradict each other would bulge beyond the corners.
    const radius =
      fromMiddle === 1 ? corner : Math.min(corner, apothem / Math.cos(angle) + excess * fromMiddle ** 4)
    outline.push(polar(radius, first + (2 * Math.PI * i) / (sides * perSide)))
  }
  return outline
}

/**
 * Straight sides between corners that are round: each is an arc about a place on the way to it, so wide that it reaches
 * `corner` mm and goes over into the sides; a circle where corners reach no farther than the sides.
 */
export function roundedOutline(
  sides: number,
  apothem: Millimetres,
  corner: Millimetres,
  first: number,
): Outline {
  const half = Math.PI / sides
  const slant = 1 / Math.cos(half)
  const arc = Math.min(apothem, (apothem * slant - corner) / (slant - 1))
  const from = (apothem - arc) * slant
  // From the corner, as seen from the middle, to where its arc goes over into the side.
  const straight = Math.atan2((apothem - arc) * Math.tan(half), apothem)
  const perSide = 24
  return Array.from({ length: sides * perSide }, (_, i) => {
    const off = Math.abs((i % perSide) / perSide - 0.5) * 2 * half
    const aside = half - off
    const across = from * Math.sin(aside)
    const radius =
      off <= straight
        ? apothem / Math.cos(off)
        : from * Math.cos(aside) + Math.sqrt(Math.max(0, arc ** 2 - across ** 2))
    return polar(radius, first + (2 * Math.PI * i) / (sides * perSide))
  })
}

/** A leaf: tip at 12 o'clock, stem end at 6 o'clock, widest a little below the middle. */
export function leafOutline(length: Millimetres, width: Millimetres): Outline {
  const steps = 36
  const side: Point[] = []
  for (let i = 0; i <= steps; i++) {
    const along = i / steps
    // sin(π t^0.85) is 1 once and 0 at both ends: full near the stem, drawn out towards the tip.
    const reach = i === 0 || i === steps ? 0 : Math.sin(Math.PI * (1 - along) ** LEAF_POWER)
    side.push({ x: (width / 2) * reach, y: length * (along - 0.5) })
  }
  const back = side.slice(1, -1).reverse()
  return [...side, ...back.map((point) => ({ x: -point.x, y: point.y }))]
}

/** Draws the widest place of a leaf towards its stem end (ours, chosen by eye). */
const LEAF_POWER = 0.85

/** Where a leaf is widest, measured down from its centre. */
export const leafWidest = (length: Millimetres): Millimetres => length * (0.5 - 0.5 ** (1 / LEAF_POWER))
