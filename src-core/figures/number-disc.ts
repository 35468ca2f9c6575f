/**
 * The disc in a motif that its number stands on. It may not hide the only parts by which colourways differ: where a
 * smaller disc does not help, what it hides is shown again as rings round it.
 */
import { parse } from 'culori'
import type { MotifAccount, Point } from '../../shared-types/plan'
import { COLOUR_CONSTANTS } from '../colour/constants'
import { colourDifference } from '../colour/legibility'
import type { FigureItem } from './figure'
import { drawPath, INK, PAPER } from './figure'
import { fitLabel, labelAt, labelFits, numberedScale, SMALLEST_TYPE, TYPE_STEP } from './lettering'
import type { MotifLabel } from './lettering'
import type { ColourwayMark } from './marks'
import { UNKNOWN_COLOUR } from './marks'
import { areasShown } from './parts-shown'
import { circlePath } from './path'

/** Width of a ring round a disc in printed mm: a colour is told at a glance from that on (judged on prints). */
export const RING_WIDTH = 0.9
/** A part is seen from so many printed mm², and from this share of its motif on (judged on prints). */
const LEAST_SHOWN = 3
const LEAST_SHARE = 0.06

/** Where a number stands: in a motif, in what there is of a half one, in a filler. */
export interface NumberPlace {
  /** As they lie about the motif's centre, in plan mm. */
  readonly layers: MotifAccount['layers']
  /** Middle of the disc, in plan mm from there. */
  readonly centre: Point
  /** Radii of the circle inside the valleys, and of the tips, in plan mm. */
  readonly inner: number
  readonly tip: number
  readonly digits: number
  readonly letters: number
  /** The colourways that must look different; none where no colours are printed. */
  readonly marks: readonly ColourwayMark[]
}

export interface NumberDisc {
  readonly label: MotifLabel
  /** Parts that are shown as rings round the disc, the outermost first. */
  readonly rings: readonly string[]
}

const colourOf = (mark: ColourwayMark, slot: string): string =>
  mark.slots.find((each) => each.slot === slot)?.colour ?? UNKNOWN_COLOUR

/** The parts by which two colourways differ: those that differ clearly, or, where none does, at all. */
function differing(one: ColourwayMark, other: ColourwayMark, slots: readonly string[]): string[] {
  const differences = slots.map((slot) => {
    const [a, b] = [parse(colourOf(one, slot)), parse(colourOf(other, slot))]
    return { slot, difference: a && b ? colourDifference(a, b) : 0 }
  })
  const least = differences.some(({ difference }) => difference >= COLOUR_CONSTANTS.closeDifference)
    ? COLOUR_CONSTANTS.closeDifference
    : Number.MIN_VALUE
  return differences.filter(({ difference }) => difference >= least).map(({ slot }) => slot)
}

/** Parts of which a disc of so many printed mm leaves too little to be seen. */
function hidden({ layers, centre }: NumberPlace, radius: number, scale: number): Set<string> {
  const shown = areasShown(layers, { centre, radius: radius / scale })
  const whole = [...areasShown(layers).values()].reduce((sum, area) => sum + area, 0)
  const least = Math.max(LEAST_SHOWN / scale ** 2, LEAST_SHARE * whole)
  return new Set([...shown].filter(([, area]) => area < least).map(([slot]) => slot))
}

/**
 * The hidden parts that must be shown so that no two colourways look alike, the one that tells most of them apart
 * first; `shown` are shown already.
 */
function missing(place: NumberPlace, radius: number, scale: number, shown: readonly string[]): string[] {
  const { marks, layers } = place
  if (marks.length < 2) return []
  const slots = [...new Set(layers.map(({ slot }) => slot))]
  const under = hidden(place, radius, scale)
  const isHidden = (slot: string): boolean => under.has(slot) && !shown.includes(slot)
  let alike = marks
    .flatMap((one, i) => marks.slice(i + 1).map((other) => differing(one, other, slots)))
    .filter((parts) => parts.length > 0 && parts.every(isHidden))
  const found: string[] = []
  while (alike.length > 0) {
    const counts = new Map<string, number>()
    for (const slot of alike.flat()) counts.set(slot, (counts.get(slot) ?? 0) + 1)
    const [best] = [...counts].reduce((a, b) => (b[1] > a[1] ? b : a))
    found.push(best)
    alike = alike.filter((parts) => !parts.includes(best))
  }
  return found
}

/** The rings that a disc needs; rings hide more than their disc, so that others may become needed. */
function ringsFor(place: NumberPlace, disc: number, scale: number): string[] {
  const rings: string[] = []
  for (;;) {
    const more = missing(place, disc + rings.length * RING_WIDTH, scale, rings)
    if (more.length === 0) break
    rings.push(...more)
  }
  const order = place.layers.map(({ slot }) => slot)
  return rings.sort((a, b) => order.indexOf(a) - order.indexOf(b))
}

/**
 * The largest number on a disc that hides no difference; else one with rings. Null where 7 pt has no room, or the
 * rings have none.
 */
export function fitNumber(place: NumberPlace, scale: number): NumberDisc | null {
  const { digits, letters } = place
  const [inner, tip] = [place.inner * scale, place.tip * scale]
  const largest = fitLabel(inner, tip, digits, letters)
  if (!largest) return null
  for (let size = largest.number; size >= SMALLEST_TYPE; size -= TYPE_STEP) {
    const label = labelAt(digits, size, letters)
    if (missing(place, label.disc, scale, []).length === 0) return { label, rings: [] }
  }
  for (let size = largest.number; size >= SMALLEST_TYPE; size -= TYPE_STEP) {
    const label = labelAt(digits, size, letters)
    const rings = ringsFor(place, label.disc, scale)
    if (labelFits(inner, tip, label.disc + rings.length * RING_WIDTH)) return { label, rings }
  }
  return null
}

/** The smallest scale, in printed mm per plan mm, at which a number fits at 7 pt with what its disc needs round it. */
export function scaleForNumber(place: NumberPlace): number {
  const { inner, tip, digits, letters } = place
  const scaleWith = (rings: number): number => numberedScale(inner, tip, digits, letters, rings * RING_WIDTH)
  const parts = new Set(place.layers.map(({ slot }) => slot)).size
  for (let rings = 0; rings < parts; rings++) if (fitNumber(place, scaleWith(rings))) return scaleWith(rings)
  return scaleWith(parts)
}

/** The radius of a disc with its rings, in printed mm. */
export const discReach = ({ label, rings }: NumberDisc): number => label.disc + rings.length * RING_WIDTH

/** A disc with its rings about a point; `colours` of the rings, the outermost first. */
export function discItems(x: number, y: number, radius: number, colours: readonly string[]): FigureItem[] {
  return [...colours, PAPER].map((fill, i) =>
    drawPath(circlePath(x, y, radius + (colours.length - i) * RING_WIDTH), {
      fill,
      stroke: INK,
      width: 0.15,
    }),
  )
}
