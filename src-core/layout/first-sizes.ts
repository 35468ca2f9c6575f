/**
 * Sizes that something new starts from, round in the units of who makes it: a new motif, a throw, a garland, a
 * panel. In mm. Where no source is named they are ours: middling, there to be replaced by what is measured.
 */
import type { OutlineKind, UnitSystem } from '../../shared-types/project'
import { MM_PER_INCH } from '../units/quantity'
import { DEFAULTS } from '../settled'

export interface FirstSizes {
  /** Tip to tip, across, side to side or length. */
  readonly motif: Readonly<Record<OutlineKind, number>>
  /** A throw over the knees (common practice, no source). */
  readonly blanket: { readonly width: number; readonly height: number }
  /** A triangle over the shoulders, and a bag or cowl (common practice, no source). */
  readonly shawl: { readonly width: number; readonly height: number }
  readonly bag: { readonly around: number; readonly height: number }
  /** Along a mantelpiece or over a window, with its ties. */
  readonly cord: { readonly length: number; readonly ties: number }
  /** The wall that swags hang on. */
  readonly wall: number
  /** Edge to edge on a cord; also a gap that is added to its sequence. */
  readonly spacing: number
  /** The front of a cushion, with what is taken into its seams and what items keep clear of each other. */
  readonly panel: { readonly across: number; readonly allowance: number }
  readonly clearance: number
  /** What is left at either end of a yarn to weave in. */
  readonly tail: number
  /** Between two points of a ruler in a photo: a mark that every ruler has. */
  readonly ruler: number
}

const inches = (count: number): number => count * MM_PER_INCH

const FIRST_SIZES: Readonly<Record<UnitSystem, FirstSizes>> = {
  metric: {
    motif: { petals: 80, round: 80, square: 100, hexagon: 90, octagon: 100, leaf: 60 },
    blanket: { width: 1000, height: 1300 },
    shawl: { width: 1600, height: 800 },
    bag: { around: 800, height: 350 },
    cord: { length: 2000, ties: 300 },
    wall: 2100,
    spacing: 40,
    panel: { across: 450, allowance: 15 },
    clearance: 5,
    tail: 150,
    ruler: 100,
  },
  imperial: {
    motif: {
      ...{ petals: inches(3), round: inches(3), square: inches(4) },
      ...{ hexagon: inches(3.5), octagon: inches(4), leaf: inches(2.5) },
    },
    blanket: { width: inches(40), height: inches(50) },
    shawl: { width: inches(64), height: inches(32) },
    bag: { around: inches(32), height: inches(14) },
    cord: { length: inches(72), ties: inches(12) },
    wall: inches(84),
    spacing: inches(1.5),
    panel: { across: inches(18), allowance: inches(0.5) },
    clearance: inches(0.25),
    tail: inches(6),
    ruler: inches(4),
  },
}

/** The first sizes of a project; metric where it does not say. */
export const firstSizes = (units: UnitSystem | undefined): FirstSizes => FIRST_SIZES[units ?? DEFAULTS.units]
