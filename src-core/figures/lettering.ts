/** How large the number and the letter in a motif can be printed. */
import { MM_PER_POINT } from './figure'

/** Nothing in print is smaller (points). */
export const SMALLEST_TYPE = 7

/**
 * Widths and heights of the shipped text face per em, read from its tables: tabular figures in semibold, and the
 * height of capitals and figures.
 */
export const FIGURE_WIDTH = 0.513
/** The widest capital (W in regular) per em. */
const CAPITAL_WIDTH = 0.786
export const CAPITAL_HEIGHT = 0.66

/** From the middle of capitals and figures of a type size (points) to their baseline, in mm. */
export const capitalDrop = (size: number): number => (size * CAPITAL_HEIGHT * MM_PER_POINT) / 2

/** A label in a motif: working number over colourway letter on a white disc. Sizes in points, lengths in mm. */
export interface MotifLabel {
  readonly number: number
  readonly letter: number
  readonly disc: number
  /** Baselines from the motif's centre. */
  readonly numberBaseline: number
  readonly letterBaseline: number
}

const LARGEST_TYPE = 10
/** Sizes of numbers differ by so many points. */
export const TYPE_STEP = 0.25

/** The label for numbers of so many digits and codes of so many letters (0: no letter) at a type size. */
export function labelAt(digits: number, size: number, letters: number): MotifLabel {
  const withLetter = letters > 0
  const letter = Math.max(SMALLEST_TYPE, size * 0.8)
  const numberHeight = size * CAPITAL_HEIGHT * MM_PER_POINT
  const letterHeight = withLetter ? letter * CAPITAL_HEIGHT * MM_PER_POINT : 0
  const gap = withLetter ? 0.26 * size * MM_PER_POINT : 0
  const height = numberHeight + gap + letterHeight
  const width =
    Math.max(digits * size * FIGURE_WIDTH, letters > 1 ? letters * letter * CAPITAL_WIDTH : 0) * MM_PER_POINT
  // The number's outer corners are round, and above them the disc is at its narrowest: 0.9 and 0.94 by eye.
  const disc = Math.hypot((width / 2) * 0.9, (height / 2) * 0.94) + 0.3
  return {
    number: size,
    letter,
    disc,
    numberBaseline: -height / 2 + numberHeight,
    letterBaseline: height / 2,
  }
}

/**
 * The radius about the centre that a disc may cover. Where petals reach well beyond it, it may cover most of the
 * middle; a square or a round needs a rim for its texture.
 */
const roomFor = (inner: number, tip: number): number => (tip > 1.25 * inner ? 0.95 * inner : 0.8 * inner)

/** Whether a disc with what is drawn round it fits a motif of this inner radius and tip radius, in printed mm. */
export const labelFits = (inner: number, tip: number, reach: number): boolean => reach <= roomFor(inner, tip)

/**
 * The largest label that fits a motif with this inner radius (the circle inside its valleys) and tip radius, both
 * in printed mm, or null when 7 pt does not fit.
 */
export function fitLabel(inner: number, tip: number, digits: number, letters: number): MotifLabel | null {
  const smallest = labelAt(digits, SMALLEST_TYPE, letters)
  if (!labelFits(inner, tip, smallest.disc)) return null
  let best = smallest
  for (let size = SMALLEST_TYPE + TYPE_STEP; size <= LARGEST_TYPE; size += TYPE_STEP) {
    const label = labelAt(digits, size, letters)
    if (label.disc > 0.64 * inner) break
    best = label
  }
  return best
}

/**
 * The smallest scale (printed mm per plan mm) at which the label fits at 7 pt with a little air, `rim` mm round its
 * disc included.
 */
export function numberedScale(inner: number, tip: number, digits: number, letters: number, rim = 0): number {
  return ((labelAt(digits, SMALLEST_TYPE, letters).disc + rim) * 1.02) / roomFor(inner, tip)
}
