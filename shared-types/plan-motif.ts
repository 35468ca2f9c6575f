/** The account of a motif: its size, shape and rounds, and the places where it can be joined. Lengths in mm. */
import type { Finding } from './finding'
import type { Point } from './plan'
import type { RoundShape, Ruler } from './project'

/**
 * Where an estimate comes from. `stated`: the page of its rounds says so, and nobody has measured one; `aimed`: worked
 * out from a measure for another gauge, and not measured since.
 */
export type Provenance = 'measured' | 'other-hook' | 'stated' | 'aimed' | 'gauge' | 'rule-of-thumb'

export type AnchorKind = 'tip' | 'shoulder' | 'valley' | 'corner' | 'side'

/** A place on a motif where a join can be made, about the motif's centre, before its turn. */
export interface Anchor {
  readonly id: string
  readonly kind: AnchorKind
  /** Number of the petal, corner or side, in working direction from 12 o'clock, from 1. */
  readonly petal: number
  readonly x: number
  readonly y: number
  /** Unit vector away from the motif. */
  readonly outward: Point
  /** The address in words: "petal 3", "between petals 2 and 3", "corner 1". */
  readonly address: string
}

export interface MeasuredRound {
  readonly number: number
  readonly outerRadius: number
  readonly stitches: number
  readonly flatness: number
  /** How it lies (M17); null for rounds that are not judged: the first two, petals, open loops. */
  readonly lies: Lie | null
}

export type Lie = 'flat' | 'may-cup' | 'cups' | 'may-ruffle' | 'ruffles'

/** What a figure with a length and a width is called; a leaf where nothing else is said. */
export type FigureForm =
  'oval' | 'heart' | 'block' | 'triangle' | 'half-circle' | 'half-hexagon' | 'half-octagon' | 'quarter-circle'

/** The account of one motif. `outline` is closed, clockwise on screen (y down), about the centre, unturned. */
export interface MotifAccount {
  readonly id: string
  readonly name: string
  readonly shape: 'petals' | 'round' | 'straight' | 'leaf'
  /** Of a figure with a length and a width (`leaf`): what it is, other than a leaf. */
  readonly form?: FigureForm
  /** What its rounds can be said to be, what they say by themselves first; absent where nothing is to be said. */
  readonly shapes?: readonly RoundShape[]
  /** Petals, or corners of a straight-sided motif; 0 for a round. */
  readonly petals: number
  /** Diameter through tips (corners), and through valleys (side to side). */
  readonly overTips: number
  readonly overValleys: number
  /** How a flower with an odd number of petals was measured; absent where nobody said it. */
  readonly ruler?: Ruler
  readonly range: { readonly low: number; readonly high: number }
  readonly provenance: Provenance
  readonly rounds: readonly MeasuredRound[]
  /** slot → stitch → count; empty for a measured motif. */
  readonly stitches: Readonly<Record<string, Readonly<Record<string, number>>>>
  /** slot → metres in one motif, where it is known. */
  readonly metres: Readonly<Record<string, number>>
  /** The same of the written rounds that a motif keeps while it goes by measures: they tell how its weight divides. */
  readonly written?: Readonly<Record<string, number>>
  readonly outline: readonly Point[]
  readonly anchors: readonly Anchor[]
  /** Colour sections for drawing, the outermost (the outline) first: each covers the middle of the one before. */
  readonly layers: readonly MotifLayer[]
  /** Of straight sides: what its last round counts along each; left out where its words do not tell. */
  readonly side?: MotifSide
  /** Of a round: what its last round makes to be joined in; left out where its words do not tell, or these are too many to count. */
  readonly spaces?: MotifSpaces
  readonly findings: readonly Finding[]
}

/** Spaces or picots that lie evenly round a motif. */
export interface MotifSpaces {
  readonly count: number
  /** Sign of a step in working direction, angles being clockwise. */
  readonly way: 1 | -1
  /** Direction of one of them, clockwise from the top, in radians. */
  readonly at: number
  /** Nothing of the last round is known: the edge is divided evenly by stitch markers, which are counted. */
  readonly marks?: true
}

/** A side from corner to corner. */
export interface MotifSide {
  /** Stitches, and chains between them. */
  readonly stitches: number
  /** Chains of the loop at a corner; 0 where it is a stitch. */
  readonly corner: number
  /** mm. */
  readonly length: number
}

/** A motif without a place of its own, of which some are made with each of another one. */
export interface MotifBeside {
  readonly motif: string
  /** The motif that it goes with. */
  readonly to: string
  /** How many with each of those, and in all; null where nobody said it. */
  readonly each: number | null
  readonly count: number | null
  /** What all of them are worked in; '' where there is no colourway for them. */
  readonly colourway: string
  readonly account: MotifAccount | null
}

export interface MotifLayer {
  readonly slot: string
  readonly outline: readonly Point[]
}
